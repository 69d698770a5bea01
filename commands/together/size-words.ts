/** What is said of a side that was handed in. */
import { cm, num, t } from '../../src/core/base/reader.ts';
import type { SizeCheck } from '../../src/core/group/size-check.ts';
import { asMeant, hookWords, mendWords } from '../shared/hook-words.ts';

const offBy = (percent: number) =>
  `${num(Math.abs(percent), 1)} % ${percent > 0 ? 'too large' : 'too small'}`;

/** A clause: `3.4 % too small; it can be pinned out`. */
export function sideWords({ percent, flagged }: SizeCheck): string {
  if (!flagged) return asMeant(percent) ? 'just the wanted size' : `${offBy(percent)}, within the tolerance`;
  const blocking = flagged.blocks
    ? 'it can be pinned out'
    : percent > 0
      ? 'blocking makes nothing smaller'
      : 'more than blocking can mend';
  return `${offBy(percent)}; ${blocking}`;
}

/** What to do with a side that is beyond the tolerance; `wanted` in cm, `hook` in mm where it is known. */
export function sideLines(
  { percent, flagged }: SizeCheck,
  wanted: number,
  hook: number | undefined,
): string[] {
  if (!flagged) return [];
  const { blocks, ease, hook: advice } = flagged;
  const next = hookWords({ off: percent, hook, advice }, ['large', 'small']);
  const more =
    hook === undefined
      ? ': half a millimetre is about one step (common practice)'
      : advice?.mm === hook
        ? ` and work a little ${percent > 0 ? 'tighter' : 'looser'}`
        : '';
  return [
    mendWords({ off: percent, blocks }, cm(wanted)),
    `Left as it is, ${cm(ease)} would have to be eased into every seam, and the seam puckers.`,
    `For the next one, ${next}${more}.`,
    `It is the ${t('gauge')} that differs, not the counting: the motif may have every stitch.`,
  ];
}
