/** Two gauges held against each other: how far off the piece would be, and which hook would mend it. */
import { HOOKS, STEEL_HOOKS } from '../../standards/hooks.ts';
import { defined } from '../base/defined.ts';
import { isOffBy, percentOff } from '../base/percent-off.ts';
import type { Gauge } from '../base/quantity.ts';
import { formula, Working } from '../base/working.ts';

const COUNTS = 'derived: the pattern’s counts at the stitch width of the swatch';

export const SAME_LENGTH = formula({
  label: 'The wanted stitches, over the length of the swatch',
  formula: 'counted * length / over',
  given: { counted: '', length: 'cm', over: 'cm' },
  unit: '',
  source: 'derived: the same gauge counted over another length; 4 in is 10.16 cm, not 10',
});
export const PERCENT_OFF = percentOff('want', 'have', {
  label: 'Width, too wide (+) or too narrow (−), per cent',
  unit: '',
  source: COUNTS,
});
export const COMES_OUT = formula({
  label: 'Width it would come out',
  formula: 'width * want / have',
  given: { width: 'cm', want: '', have: '' },
  unit: 'cm',
  source: COUNTS,
});
export const HOOK_FOR = formula({
  label: 'Hook that would meet the gauge',
  formula: 'hook * have / want',
  given: { hook: 'mm', have: '', want: '' },
  unit: 'mm',
  source: 'common practice: stitch width goes roughly with the hook',
});

export const STILL_OFF = percentOff('tried', 'ideal', {
  label: 'Width with the hook to try, still too wide (+) or too narrow (−), per cent',
  unit: 'mm',
  source: 'common practice: stitch width goes roughly with the hook',
});

/** Off by more than this many per cent, the same hook is never advised. */
export const HOOK_STAYS_WITHIN = 3;
/**
 * A hook that would still leave the width more than this many per cent off does not mend it. Hooks stand about a tenth apart in
 * the usual sizes, so that half a step is left either way; the rest is how tightly one works.
 */
export const HOOK_MENDS_WITHIN = 8;

/**
 * A change of hook changes the gauge by so many per cent and no more: about a size and a half, sizes standing about a tenth apart
 * (common practice). What is farther off takes another yarn, or another number of stitches and rows.
 */
export const HOOK_REACHES_WITHIN = 15;

export interface GaugeComparison {
  /** Per cent; positive too wide. */
  readonly widthPercent: number;
  /** Per cent; positive too long. Unset where one of the gauges has no rows. */
  readonly heightPercent?: number;
  /** Both gauges over this length, in cm. */
  readonly over: number;
  readonly have: { readonly stitches: number; readonly rows?: number };
  readonly want: { readonly stitches: number; readonly rows?: number };
  /** What a piece meant to be `width` would measure, in cm. */
  readonly comesOut: number;
  /** The listed size to try; unset where no hook was given, or no listed one is smaller (or larger) than it. */
  readonly suggested?: HookAdvice;
  readonly working: Working;
}

export interface HookAdvice {
  readonly mm: number;
  /** True where the size is listed from memory, not read in a source. */
  readonly fromMemory: boolean;
  /** Per cent by which the width would still be off with it; positive too wide. */
  readonly stillOff: number;
  /** Whether a change of hook goes so far: about a size and a half. */
  readonly reaches: boolean;
}

/** Every listed hook, in mm: the usual ones, and the steel ones below them. */
const LISTED: readonly { readonly mm: number; readonly fromMemory?: boolean }[] = [
  ...HOOKS,
  ...STEEL_HOOKS.filter(({ mm }) => HOOKS.every((hook) => mm < hook.mm)),
];

/**
 * The hook to try when a swatch worked with `hook` mm has `have` stitches where `want` are wanted: the listed size
 * nearest to hook × have ÷ want. More than 3 % off it is never the same hook, and always one in the right direction;
 * undefined where none is listed there.
 */
export function suggestHook(
  hook: number,
  have: number,
  want: number,
  working: Working,
): HookAdvice | undefined {
  const ideal = working.do(HOOK_FOR, { hook, have, want });
  const stays = !isOffBy(want, have, HOOK_STAYS_WITHIN);
  const candidates = stays
    ? [{ mm: hook }, ...LISTED]
    : LISTED.filter(({ mm }) => (ideal > hook ? mm > hook : mm < hook));
  const [first, ...others] = candidates;
  if (first === undefined) return undefined;
  const away = ({ mm }: { readonly mm: number }) => Math.abs(mm - ideal);
  const nearest = others.reduce((best, one) => (away(one) < away(best) ? one : best), first);
  return {
    mm: nearest.mm,
    fromMemory: nearest.fromMemory ?? false,
    reaches: !isOffBy(ideal, hook, HOOK_REACHES_WITHIN),
    stillOff: working.do(STILL_OFF, { tried: nearest.mm, ideal }),
  };
}

/** Compares a swatch with a pattern's gauge; `width` is the width the pattern means, in cm. */
export function compareGauges(asked: {
  have: Gauge;
  want: Gauge;
  width: number;
  hook?: number | undefined;
}): GaugeComparison {
  const { have, want, width, hook } = asked;
  const working = new Working();
  const over = have.over;
  const stitches = working.do(SAME_LENGTH, { counted: want.stitches, length: over, over: want.over });
  const widthPercent = working.do(PERCENT_OFF, { want: stitches, have: have.stitches });
  let rows: { have: number; want: number; percent: number } | undefined;
  if (have.rows !== undefined && want.rows !== undefined) {
    const wanted = working.do(
      SAME_LENGTH,
      { counted: want.rows, length: over, over: want.over },
      'The wanted rows, over the same length',
    );
    const percent = working.do(
      PERCENT_OFF,
      { want: wanted, have: have.rows },
      'Height, too long (+) or too short (−), per cent',
    );
    rows = { have: have.rows, want: wanted, percent };
  }
  const comesOut = working.do(COMES_OUT, { width, want: stitches, have: have.stitches });
  const suggested = hook === undefined ? undefined : suggestHook(hook, have.stitches, stitches, working);
  return defined({
    widthPercent,
    over,
    have: defined({ stitches: have.stitches, rows: rows?.have }),
    want: defined({ stitches, rows: rows?.want }),
    comesOut,
    heightPercent: rows?.percent,
    suggested,
    working,
  });
}
