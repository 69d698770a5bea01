/** The yarn in one stitch: from its size, from hook and yarn, or from a stitch of another height whose yarn is known. */
import { CHAIN_PER_LENGTH, SC_LOOPS, STITCH_ACROSS, STITCH_UP } from '../../standards/consumption.ts';
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { formula, type Working } from '../base/working.ts';
import { reckonRowHeight, reckonStitchWidth, type Worked } from '../size/stitch-size.ts';
import { findUsualHook, reckonThickness } from './thickness.ts';

const BY_SIZE =
  'fitted to published measurements of three makers (windchilde.com/bluedepth; interweave.com, “Yarn usage: knitting vs. crochet”; thesnugglery.net)';

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

export const UPRIGHT_BY_SIZE = formula({
  label: 'Yarn in the upright part of a stitch',
  formula: 'up * row_height / cm_per_m',
  given: { up: '', row_height: 'cm', cm_per_m: 'cm/m' },
  unit: 'm',
  source: BY_SIZE,
});
export const STITCH_BY_SIZE = formula({
  label: 'Yarn in a stitch, from its width and height',
  formula: 'across * stitch_width / cm_per_m + upright',
  given: { across: '', stitch_width: 'cm', cm_per_m: 'cm/m', upright: 'm' },
  unit: 'm',
  source: BY_SIZE,
});
export const CHAIN_BY_SIZE = formula({
  label: 'Yarn in a chain',
  formula: 'per_length * stitch_width / cm_per_m',
  given: { per_length: '', stitch_width: 'cm', cm_per_m: 'cm/m' },
  unit: 'm',
  source: 'one maker’s measurement, 25.5 in of yarn in 5 in of chain (windchilde.com/bluedepth)',
});
/** What is worked of one motif beside its stitches belongs in it too. */
export const YARN_WORKED_WHOLE = formula({
  label: 'Yarn worked, with chains, and the second upright where two are worked together',
  formula: 'stitches * stitch_yarn + chains * chain_yarn + together * upright',
  given: { stitches: '', stitch_yarn: 'm', chains: '', chain_yarn: 'm', together: '', upright: 'm' },
  unit: 'm',
  source: 'derived: everything that is worked, times the yarn in one',
});

export const MM_PER_M = 1000;
const CM_PER_M = 100;

/** The yarn in one stitch (mm) by the loops drawn over the hook (mm) with a yarn so thick (mm); right to about a quarter. */
export const reckonStitchYarn = (working: Working, stitch: Stitch, hook: number, thickness: number): number =>
  working.do(YARN_PER_STITCH, { loops: SC_LOOPS, ratio: STITCH_FACTS[stitch].yarn, hook, thickness });

/** What one stitch takes, in metres, with its parts where they are known by size. */
export interface StitchYarn {
  readonly stitch: number;
  /** A chain, and the upright part that is worked once more where two are worked together; 0 where only hook and yarn tell. */
  readonly chain: number;
  readonly upright: number;
  /** True where the gauge tells. */
  readonly bySize: boolean;
}

/**
 * The yarn in one stitch in metres: by its width and height where a gauge is known, right to about `GAUGED_BAND` per cent;
 * otherwise by hook and wraps per inch, right to about a quarter.
 */
export function reckonStitchMetres(
  working: Working,
  { wpi, label, ...worked }: Worked & { wpi: number; label?: string },
): StitchYarn {
  if (worked.gauge) {
    const width = reckonStitchWidth(worked, wpi, working);
    const height = reckonRowHeight(worked, width, working);
    const across = { across: STITCH_ACROSS, stitch_width: width, cm_per_m: CM_PER_M };
    const upright = working.do(UPRIGHT_BY_SIZE, { up: STITCH_UP, row_height: height, cm_per_m: CM_PER_M });
    return {
      stitch: working.do(STITCH_BY_SIZE, { ...across, upright }, label),
      chain: working.do(CHAIN_BY_SIZE, {
        per_length: CHAIN_PER_LENGTH,
        stitch_width: width,
        cm_per_m: CM_PER_M,
      }),
      upright,
      bySize: true,
    };
  }
  const hook = worked.hook ?? findUsualHook({ wpi }).mm;
  const stitch = working.do(
    YARN_OF_STITCHES,
    {
      stitches: 1,
      stitch_yarn: reckonStitchYarn(working, worked.stitch, hook, reckonThickness(working, wpi)),
      mm_per_m: MM_PER_M,
    },
    label,
  );
  return { stitch, chain: 0, upright: 0, bySize: false };
}

/** Metres in a stitch of another height, from a stitch whose yarn (m) is known. */
export const reckonOtherStitch = (perStitch: number, from: Stitch, to: Stitch, working: Working): number =>
  from === to
    ? perStitch
    : working.do(OTHER_STITCH, {
        stitch_yarn: perStitch,
        ratio: STITCH_FACTS[to].yarn,
        motif_ratio: STITCH_FACTS[from].yarn,
      });
