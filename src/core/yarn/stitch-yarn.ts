/** The yarn in one stitch: from hook and yarn, or from a stitch of another height whose yarn is known. */
import { SC_LOOPS, USUAL_YARN } from '../../standards/consumption.ts';
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { CM_PER_INCH, G_PER_POUND, M_PER_YARD } from '../../standards/units.ts';
import { WRAPS_BY_LENGTH } from '../../standards/yarn-thickness.ts';
import { YARN_WEIGHTS, type YarnWeight } from '../../standards/yarn-weights.ts';
import type { Ball } from '../base/quantity.ts';
import type { YarnThickness } from '../base/trade-words.ts';
import { formula, type Working } from '../base/working.ts';

export const YARN_THICKNESS = formula({
  label: 'Thickness of the yarn',
  formula: 'inch / wraps',
  given: { inch: 'mm', wraps: '' },
  unit: 'mm',
  source: 'derived: an inch of yarn wound side by side, shared among its wraps',
});
export const YARN_PER_STITCH = formula({
  label: 'Yarn in a stitch',
  formula: 'loops * ratio * pi * (hook + thickness)',
  given: { loops: '', ratio: '', hook: 'mm', thickness: 'mm' },
  unit: 'mm',
  source:
    'derived: loops drawn over the hook, about 3.2 a ⟦sc⟧, fitted to two published hand measurements; ratios of the ' +
    'stitches from one maker’s measurement (windchilde.com/bluedepth)',
});
export const YARN_OF_STITCHES = formula({
  label: 'Yarn in one motif',
  formula: 'stitches * stitch_yarn / mm_per_m',
  given: { stitches: '', stitch_yarn: 'mm', mm_per_m: 'mm/m' },
  unit: 'm',
  source: 'derived: stitches times the yarn in one',
});
export const YARN_WORKED = formula({
  label: 'Yarn worked',
  formula: 'stitches * stitch_yarn',
  given: { stitches: '', stitch_yarn: 'm' },
  unit: 'm',
  source: 'derived: stitches, times the yarn in one',
});
export const OTHER_STITCH = formula({
  label: 'Yarn in a stitch of another height',
  formula: 'stitch_yarn * ratio / motif_ratio',
  given: { stitch_yarn: 'm', ratio: '', motif_ratio: '' },
  unit: 'm',
  source: 'published ratios of the stitches, one maker’s measurement (windchilde.com/bluedepth)',
});

export const MM_PER_M = 1000;

/** A yarn's thickness in mm from its wraps per inch. */
export const reckonThickness = (working: Working, wpi: number): number =>
  working.do(YARN_THICKNESS, { inch: CM_PER_INCH * 10, wraps: wpi });

/** The yarn in one stitch (mm) by the loops drawn over the hook (mm) with a yarn so thick (mm); right to about a quarter. */
export const reckonStitchYarn = (working: Working, stitch: Stitch, hook: number, thickness: number): number =>
  working.do(YARN_PER_STITCH, { loops: SC_LOOPS, ratio: STITCH_FACTS[stitch].yarn, hook, thickness });

/** The same in metres, with the yarn's wraps per inch. */
export const reckonStitchMetres = (
  working: Working,
  { stitch, hook, wpi, label }: { stitch: Stitch; hook: number; wpi: number; label?: string },
): number =>
  working.do(
    YARN_OF_STITCHES,
    {
      stitches: 1,
      stitch_yarn: reckonStitchYarn(working, stitch, hook, reckonThickness(working, wpi)),
      mm_per_m: MM_PER_M,
    },
    label,
  );

/** Metres in a stitch of another height, from a stitch whose yarn (m) is known. */
export const reckonOtherStitch = (perStitch: number, from: Stitch, to: Stitch, working: Working): number =>
  from === to
    ? perStitch
    : working.do(OTHER_STITCH, {
        stitch_yarn: perStitch,
        ratio: STITCH_FACTS[to].yarn,
        motif_ratio: STITCH_FACTS[from].yarn,
      });

/** Wraps per inch of a yarn from its ball band; the usual yarn's where there is none. */
export function wpiOf(ball: Ball | undefined): number {
  if (!ball) return USUAL_YARN.thickness.wpi;
  const yardsPerPound = (ball.m / M_PER_YARD / ball.g) * G_PER_POUND;
  return WRAPS_BY_LENGTH.find((row) => yardsPerPound >= row.yardsPerPound)?.wpi ?? USUAL_YARN.thickness.wpi;
}

/**
 * A usual hook in mm for a yarn, and the name of its category: the one it was read from, or the one whose published wraps
 * per inch it is nearest to the middle of.
 */
export function findUsualHook({ wpi, category }: YarnThickness): { mm: number; name: string } {
  const off = ({ wpi: [from, to] }: YarnWeight) => Math.abs((from + to) / 2 - wpi);
  const yarnWeight =
    YARN_WEIGHTS.find((yarn) => yarn.category === category) ??
    YARN_WEIGHTS.reduce((best, yarn) => (off(yarn) < off(best) ? yarn : best));
  return { mm: yarnWeight.usualHook, name: yarnWeight.name.toLowerCase() };
}
