/** Stitch counts that suit a pattern repeat: the neighbours of a wish, the chain to begin with, the widths they make. */
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { defined } from '../base/defined.ts';
import { Problem } from '../base/problem.ts';
import { SAMPLE_WIDTH } from '../base/samples.ts';
import type { Gauge } from '../base/quantity.ts';
import { cm } from '../base/reader.ts';
import { formula, Working } from '../base/working.ts';
import { STITCHES_WANTED, WIDTH_MADE } from './width.ts';

const ONCE = 'published: so many repeats, the plus added once (crochetcabana.com, "Multiples")';

export const REPEATS_BELOW = formula({
  label: 'Whole repeats that fit',
  formula: 'floor((near - plus) / multiple)',
  given: { near: '', plus: '', multiple: '' },
  unit: '',
  source: ONCE,
});
export const REPEATED = formula({
  label: 'Stitches',
  formula: 'repeats * multiple + plus',
  given: { repeats: '', multiple: '', plus: '' },
  unit: '',
  source: ONCE,
});
export const FOUNDATION_CHAIN = formula({
  label: 'Foundation chain',
  formula: 'stitches + extra',
  given: { stitches: '', extra: '' },
  unit: '',
  source:
    'published: one chain more for sc, two for dc (crochetcabana.com, "Multiples"), one for hdc where the skipped ' +
    'chains count (forum.knittinghelp.com/t/72046); three for tr from memory',
});
export const FIRST_INTO = formula({
  label: 'First stitch into this chain from the hook',
  formula: 'turning_chain + 1',
  given: { turning_chain: '' },
  unit: '',
  source: 'published: turning chains 1, 2, 3, 4 (Dummies (Wiley), "How to crochet a turning chain")',
});

export interface RepeatNeighbour {
  readonly stitches: number;
  readonly repeats: number;
  /** In cm; unset where no gauge was given. */
  readonly width?: number;
}

export interface Repeat {
  readonly near: number;
  readonly below: RepeatNeighbour;
  readonly above: RepeatNeighbour;
  readonly nearest: RepeatNeighbour;
  /** True where below and above are equally near. */
  readonly tied: boolean;
  readonly foundationChain: number;
  /** Which chain from the hook the first stitch goes into. */
  readonly firstInto: number;
  readonly working: Working;
}

interface RepeatAsked {
  readonly multiple: number;
  readonly plus: number;
  readonly near?: number | undefined;
  readonly width?: number | undefined;
  readonly gauge?: Gauge | undefined;
}

/**
 * The counts `multiple · k + plus` around a wished count, or around the count that makes a wished width. `nearest`
 * has at least one repeat; of two equally near the wider is taken.
 *
 * Throws Problem: wish-missing, wish-given-twice, gauge-missing, too-few-stitches (fewer than the plus).
 *
 * @example
 * findRepeat({ multiple: 15, plus: 1, near: 100, stitch: 'sc' }).nearest // → { stitches: 106, repeats: 7 }
 */
export function findRepeat(asked: RepeatAsked & { stitch: Stitch }): Repeat {
  const { multiple, plus, gauge, stitch } = asked;
  const working = new Working();
  const near = wished(asked, working);
  refuseBelowPlus(asked, near);
  const neighbour = (repeats: number, called: string): RepeatNeighbour => {
    const stitches = working.do(REPEATED, { repeats, multiple, plus }, called);
    const width =
      gauge &&
      working.do(
        WIDTH_MADE,
        { count: stitches, over: gauge.over, stitches: gauge.stitches },
        `Width of ${stitches}`,
      );
    return defined({ stitches, repeats, width });
  };
  const fit = working.do(REPEATS_BELOW, { near, plus, multiple });
  const below = neighbour(fit, 'Stitches, at or below');
  const above = below.stitches === near ? below : neighbour(fit + 1, 'Stitches, above');
  const less = near - below.stitches;
  const more = above.stitches - near;
  const nearest =
    below.repeats >= 1 && less < more ? below : above.repeats >= 1 ? above : neighbour(1, 'One repeat');
  const { foundationExtra, turningChain } = STITCH_FACTS[stitch];
  const foundationChain = working.do(FOUNDATION_CHAIN, {
    stitches: nearest.stitches,
    extra: foundationExtra,
  });
  const firstInto = working.do(FIRST_INTO, { turning_chain: turningChain });
  const tied = below !== above && less === more && below.repeats >= 1;
  return { near, below, above, nearest, tied, foundationChain, firstInto, working };
}

/** Refuses a wish that not even the plus fits into. Throws Problem: too-few-stitches. */
function refuseBelowPlus(asked: RepeatAsked, near: number): void {
  const { multiple, plus, gauge } = asked;
  if (near >= plus) return;
  throw new Problem(
    'too-few-stitches',
    `The plus alone is ${plus} stitches, more than the ${Math.round(near * 10) / 10} wished for.`,
    {
      option: asked.near === undefined ? 'width' : 'near',
      hint:
        asked.near === undefined && gauge
          ? `One repeat is the least: width:${Math.ceil(((plus + multiple) * gauge.over) / gauge.stitches)}cm or more.`
          : `One repeat is the least: near:${plus + multiple} or more.`,
      facts: { needed: plus + multiple, given: near },
    },
  );
}

/** The count that is wished for, itself or by its width. Throws Problem: wish-missing, wish-given-twice, gauge-missing. */
function wished({ near, width, gauge }: RepeatAsked, working: Working): number {
  if (near !== undefined && width !== undefined)
    throw new Problem('wish-given-twice', 'Both a count and a width are wished for.', {
      option: 'width',
      hint: 'Give near, or width with gauge.',
    });
  if (near !== undefined) return near;
  if (width === undefined)
    throw new Problem('wish-missing', 'Neither a count nor a width is wished for.', {
      option: 'near',
      hint: `Give near:100, or ${SAMPLE_WIDTH} gauge:13x10.`,
    });
  if (gauge === undefined)
    throw new Problem('gauge-missing', `How many stitches make ${cm(width)} depends on the gauge.`, {
      option: 'gauge',
      hint: 'Give gauge:13x10, or the count itself with near.',
    });
  return working.do(STITCHES_WANTED, { width, stitches: gauge.stitches, over: gauge.over });
}
