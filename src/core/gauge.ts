/** Two gauges held against each other: how far off the piece would be, and which hook would mend it. */
import { HOOKS } from '../standards/hooks.ts';
import type { Gauge } from './quantity.ts';
import { formula, Working } from './working.ts';

const COUNTS = 'derived: the pattern’s counts at the stitch width of the swatch';

export const SAME_LENGTH = formula({
  label: 'The wanted stitches, over the length of the swatch',
  formula: 'counted * length / over',
  given: { counted: '', length: 'cm', over: 'cm' },
  unit: '',
  source: 'derived: the same gauge counted over another length; 4 in is 10.16 cm, not 10',
});
export const PERCENT_OFF = formula({
  label: 'Width, too wide (+) or too narrow (−), per cent',
  formula: '100 * (want / have - 1)',
  given: { want: '', have: '' },
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

/** Off by more than this many per cent, the same hook is never advised. */
export const HOOK_STAYS_WITHIN = 3;

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
  /** In mm, from the published sizes; unset where no hook was given. */
  readonly suggestedHook?: number;
  readonly working: Working;
}

/** Hook sizes read in a source, smallest first, in mm. */
const PUBLISHED_HOOKS = HOOKS.filter((hook) => hook.fromMemory !== true).map((hook) => hook.mm);

/** The published hook nearest to a size in mm, among those that `may` be chosen; undefined where none may. */
function nearestHook(mm: number, may: (mm: number) => boolean = () => true): number | undefined {
  return PUBLISHED_HOOKS.filter(may).reduce<number | undefined>(
    (best, one) => (best === undefined || Math.abs(one - mm) < Math.abs(best - mm) ? one : best),
    undefined,
  );
}

/**
 * The hook to try when a swatch worked with `hook` mm has `have` stitches where `want` are wanted: the published
 * size nearest to hook × have ÷ want, and never the same hook when more than 3 % off.
 */
export function hookFor(hook: number, have: number, want: number, working: Working): number | undefined {
  const ideal = working.do(HOOK_FOR, { hook, have, want });
  const off = 100 * (want / have - 1);
  if (Math.abs(off) <= HOOK_STAYS_WITHIN) {
    const nearest = nearestHook(ideal);
    return nearest !== undefined && Math.abs(nearest - ideal) < Math.abs(hook - ideal) ? nearest : hook;
  }
  return nearestHook(ideal, (mm) => (ideal > hook ? mm > hook : mm < hook));
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
  const suggestedHook = hook === undefined ? undefined : hookFor(hook, have.stitches, stitches, working);
  return {
    widthPercent,
    over,
    have: { stitches: have.stitches, ...(rows && { rows: rows.have }) },
    want: { stitches, ...(rows && { rows: rows.want }) },
    comesOut,
    ...(rows && { heightPercent: rows.percent }),
    ...(suggestedHook === undefined ? {} : { suggestedHook }),
    working,
  };
}
