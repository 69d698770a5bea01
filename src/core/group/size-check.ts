/** A finished motif's side against the wanted one: does it pass, will blocking serve, which hook would mend it. */
import { caution } from '../../standards/care.ts';
import { HOOK_MENDS_WITHIN, hookFor } from '../size/compare-gauges.ts';
import { cm, mm, num, t } from '../base/reader.ts';
import { formula, Working } from '../base/working.ts';
import type { GroupPlan } from './events.ts';

export const SIDE_OFF = formula({
  label: 'Off the wanted side, per cent',
  formula: '100 * (side / wanted - 1)',
  given: { side: 'cm', wanted: 'cm' },
  unit: '',
  source: 'derived',
});
export const TO_EASE = formula({
  label: 'To be eased into every seam',
  formula: 'abs(side - wanted)',
  given: { side: 'cm', wanted: 'cm' },
  unit: 'cm',
  source: 'derived: the longer edge is gathered to the shorter',
});

/** Blocking moves a side by about this many per cent and no more (common practice: a few per cent). */
export const BLOCKS_WITHIN = 5;

export interface SizeCheck {
  /** Per cent; positive too large. */
  readonly percent: number;
  /** Beyond the tolerance of the blanket. */
  readonly flagged: boolean;
  /** A clause that says what to do: "3.4 % too large; …". */
  readonly sentence: string;
  readonly lines: readonly string[];
  /** mm; where a hook was named. */
  readonly hook?: number;
  readonly cautions: readonly string[];
  readonly working: Working;
}

/** Checks a side in cm; `hook` in mm, where it is known. */
export function sizeCheck(
  plan: Pick<GroupPlan, 'side' | 'tolerance'>,
  side: number,
  hook: number | undefined,
): SizeCheck {
  const working = new Working();
  const percent = working.do(SIDE_OFF, { side, wanted: plan.side });
  const off = Math.abs(percent);
  const flagged = off > plan.tolerance;
  const way = percent > 0 ? 'too large' : 'too small';
  const said = `${num(off, 1)} % ${way}`;
  if (!flagged) {
    const sentence = off < 0.05 ? 'just the wanted size' : `${said}, within the tolerance`;
    return { percent, flagged, sentence, lines: [], cautions: [], working };
  }
  const ease = working.do(TO_EASE, { side, wanted: plan.side });
  const blocks = off <= BLOCKS_WITHIN;
  const tried = hook === undefined ? undefined : hookFor(hook, plan.side, side, working);
  const hookLine =
    tried === undefined
      ? `For the next one, a ${percent > 0 ? 'smaller' : 'larger'} hook: half a millimetre is about one step (common practice).`
      : tried.mm === hook
        ? `The next one on the same hook, a little ${percent > 0 ? 'tighter' : 'looser'}.`
        : Math.abs(tried.stillOff) > HOOK_MENDS_WITHIN
          ? `The nearest ${percent > 0 ? 'smaller' : 'larger'} hook, ${mm(tried.mm)}, would leave it ${num(Math.abs(tried.stillOff), 1)} % too ${tried.stillOff > 0 ? 'large' : 'small'}: it takes another yarn.`
          : `For the next one, try ${mm(tried.mm)} in place of ${mm(hook ?? 0)}.`;
  return {
    percent,
    flagged,
    sentence: `${said}; ${blocks ? 'blocking will bring it in' : 'more than blocking can mend'}`,
    lines: [
      blocks
        ? `Block it to ${cm(plan.side)}: a few per cent can be pinned out (common practice).`
        : `More than about ${BLOCKS_WITHIN} % does not block away (common practice).`,
      `Left as it is, ${cm(ease)} would have to be eased into every seam, and the seam puckers.`,
      hookLine,
      `It is the ${t('gauge')} that differs, not the counting: the motif may have every stitch.`,
    ],
    ...(tried === undefined ? {} : { hook: tried.mm }),
    cautions: blocks ? [caution('heat')] : [],
    working,
  };
}
