/** How large one stitch comes out: by the gauge, or by hook and yarn where no gauge is known. */
import { WIDTH_OF_LOOP } from '../../standards/consumption.ts';
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import type { Gauge } from '../base/quantity.ts';
import { formula, type Working } from '../base/working.ts';
import { findUsualHook, reckonThickness } from '../yarn/thickness.ts';
import { ROW_HEIGHT, STITCH_WIDTH } from './blocking.ts';

/** How something is worked: the stitch, the hook in mm, the gauge, as far as they are known. */
export interface Worked {
  readonly stitch: Stitch;
  readonly hook?: number | undefined;
  readonly gauge?: Gauge | undefined;
}

export const USUAL_PITCH = formula({
  label: 'From stitch to stitch along the seam',
  formula: 'width_of_loop * (hook + thickness)',
  given: { width_of_loop: '', hook: 'mm', thickness: 'mm' },
  unit: 'mm',
  source:
    'derived: a stitch’s width grows with hook and yarn, fitted to the published medium yarn (11–14 ⟦sc⟧ over 4 in on ' +
    '5.5–6.5 mm)',
});
export const TALLER = formula({
  label: 'Height of a row',
  formula: 'stitch_width * height_to_width',
  given: { stitch_width: 'cm', height_to_width: '' },
  unit: 'cm',
  source:
    'derived: one ⟦sc⟧ about as tall as wide; others in the published proportions of their row ends (1, 2 and 3 ⟦sc⟧ per ⟦sc⟧, ⟦dc⟧ and ⟦tr⟧ row)',
});
export const IN_CM = formula({
  label: 'The same in centimetres',
  formula: 'pitch / mm_per_cm',
  given: { pitch: 'mm', mm_per_cm: 'mm/cm' },
  unit: 'cm',
  source: 'derived',
});

const MM_PER_CM = 10;

/** Width of a stitch in cm: from the gauge, or from yarn (wraps per inch) and hook, a usual one where none is known. */
export function reckonStitchWidth(worked: Worked, wpi: number, working: Working): number {
  if (worked.gauge)
    return working.do(STITCH_WIDTH, { over: worked.gauge.over, stitches: worked.gauge.stitches });
  const pitch = working.do(
    USUAL_PITCH,
    {
      width_of_loop: WIDTH_OF_LOOP,
      hook: worked.hook ?? findUsualHook({ wpi }).mm,
      thickness: reckonThickness(working, wpi),
    },
    'Width of a stitch',
  );
  return working.do(IN_CM, { pitch, mm_per_cm: MM_PER_CM });
}

/** Height of a row in cm: from the gauge, or from the stitch's width and how tall it is. */
export function reckonRowHeight(worked: Worked, width: number, working: Working): number {
  if (worked.gauge?.rows !== undefined)
    return working.do(ROW_HEIGHT, { over: worked.gauge.over, rows: worked.gauge.rows });
  return reckonTaller(worked.stitch, width, working);
}

/** Height in cm of a row of a stitch, from how wide it is (cm) and how tall for its width. */
export const reckonTaller = (stitch: Stitch, width: number, working: Working): number =>
  working.do(TALLER, { stitch_width: width, height_to_width: STITCH_FACTS[stitch].height });
