/** Which hook to try: said in one way, wherever something comes out too large or too small. */
import { HOOK_MENDS_WITHIN, type HookAdvice } from '../../src/core/size/compare-gauges.ts';
import { mm, num } from '../../src/core/base/reader.ts';
import { BLOCKING_MENDS } from '../../src/standards/tolerances.ts';

/** Less than the smallest part that is shown. */
export const asMeant = (percent: number) => Math.abs(percent) < 0.05;

/** `3.4 % too wide` */
export const offWords = (percent: number, more: string, less: string) =>
  asMeant(percent) ? 'as meant' : `${num(Math.abs(percent), 1)} % too ${percent > 0 ? more : less}`;

/**
 * A clause that says which hook to try. `off` in per cent, positive where the work comes out too large; `hook` in mm, where it
 * is known; `advice` is unset where no hook is listed that way.
 */
export function hookWords(
  { off, hook, advice }: { off: number; hook: number | undefined; advice: HookAdvice | undefined },
  [more, less]: readonly [string, string],
): string {
  const way = off > 0 ? 'smaller' : 'larger';
  if (hook === undefined) return `try a ${way} hook`;
  if (advice === undefined) return `no ${way} hook is listed here, so it takes another yarn`;
  if (advice.mm === hook) return `stay with ${mm(hook)}`;
  if (!advice.reaches)
    return `no hook reaches so far (about a size and a half): it takes a ${off > 0 ? 'thinner' : 'thicker'} yarn, or ${off > 0 ? 'fewer' : 'more'} stitches and rows`;
  return Math.abs(advice.stillOff) > HOOK_MENDS_WITHIN
    ? `the nearest ${way} hook, ${mm(advice.mm)}, would still leave it ${offWords(advice.stillOff, more, less)}, so it takes another yarn`
    : `try ${mm(advice.mm)} instead of ${mm(hook)}`;
}

/** What can be done with a finished piece of another size than `wanted`; `off` in per cent, positive too large. */
export function mendWords({ off, blocks }: { off: number; blocks: boolean }, wanted: string): string {
  if (off > 0)
    return 'Blocking makes nothing smaller, and felting never makes it even: a last round worked tighter, with a smaller hook, draws it in a little (common practice).';
  return blocks
    ? `Pin it out to ${wanted} when you block it: a few per cent can be stretched (common practice).`
    : `More than about ${BLOCKING_MENDS} % does not pin out (common practice): one more round, or an edging, makes it larger.`;
}

/** What is said when a hook was left out and one usual for the yarn is taken. */
export const usualHookWords = ({ mm: hook, name }: { mm: number; name: string }) =>
  `A hook of ${mm(hook)}, usual for ${name} yarn, as none was given.`;
