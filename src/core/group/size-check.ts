/** A finished motif's side against the wanted one: does it pass, will blocking serve, which hook would mend it. */
import { BLOCKING_MENDS } from '../../standards/tolerances.ts';
import { defined } from '../base/defined.ts';
import { isOffBy, percentOff } from '../base/percent-off.ts';
import { Working } from '../base/working.ts';
import { suggestHook, type HookAdvice } from '../size/compare-gauges.ts';
import { TO_EASE } from '../size/easing.ts';
import type { GroupPlan } from './events.ts';

export const SIDE_OFF = percentOff('side', 'wanted', { label: 'Off the wanted side, per cent', unit: 'cm' });
export interface SizeCheck {
  /** Per cent; positive too large. */
  readonly percent: number;
  /** What is said only of a side beyond the tolerance of the blanket. */
  readonly flagged?: {
    /** Whether it can be pinned out: blocking makes a few per cent larger, and nothing smaller. */
    readonly blocks: boolean;
    /** cm to be eased into every seam, if it is left as it is. */
    readonly ease: number;
    /** The hook to try; unset where none was named, or none is listed that way. */
    readonly hook?: HookAdvice;
  };
  readonly working: Working;
}

/** Checks a side in cm; `hook` in mm, where it is known. */
export function checkSide(
  { side: wanted, tolerance }: Pick<GroupPlan, 'side' | 'tolerance'>,
  side: number,
  hook: number | undefined,
): SizeCheck {
  const working = new Working();
  const percent = working.do(SIDE_OFF, { side, wanted });
  if (!isOffBy(side, wanted, tolerance)) return { percent, working };
  const flagged = defined({
    blocks: side < wanted && !isOffBy(side, wanted, BLOCKING_MENDS),
    ease: working.do(TO_EASE, { side, wanted }),
    hook: hook === undefined ? undefined : suggestHook(hook, wanted, side, working),
  });
  return { percent, flagged, working };
}
