/** What becomes of motifs that are evened up, in words. */
import { gather } from '../../src/chat/answer.ts';
import { cm, count, m, num, t } from '../../src/core/base/reader.ts';
import type { Evened, Evening } from '../../src/core/edges/evening.ts';

/** `3 as they are, 1 pinned out, 2 with an edging (3.4 m), 1 left out` */
export function evenedWords({ counts: { asTheyAre, pinned, edged, leftOut }, yarn }: Evening): string {
  return gather(
    asTheyAre > 0 && `${num(asTheyAre)} as ${asTheyAre === 1 ? 'it is' : 'they are'}`,
    pinned > 0 && `${num(pinned)} pinned out`,
    edged > 0 && `${num(edged)} with an edging, ${m(yarn)} of yarn`,
    leftOut > 0 && `${num(leftOut)} left out`,
  ).join(', ');
}

/** A line for each thing that is to be done, with the motifs it is done to. */
export function evenedLines({ motifs, side: meant }: Evening, called: (motif: Evened) => string): string[] {
  const listed = (some: readonly Evened[]) => some.map(called).join(', ');
  const pinned = motifs.filter(({ pin, edging }) => pin && !edging);
  const leftOut = motifs.filter(({ leave }) => leave);
  const large = leftOut.filter(({ side }) => side > meant);
  const small = leftOut.filter(({ side }) => side < meant);
  const edgings = new Map<string, Evened[]>();
  for (const one of motifs) {
    if (!one.edging) continue;
    const { stitch, rounds, stitches, yarn, side } = one.edging;
    const says = `${count(rounds, 'round')} of ${t(stitch)}, ${count(stitches, 'stitch', 'stitches')} and ${m(yarn)} each, comes to ${cm(side)}${one.pin ? `, then pinned out to ${cm(meant)}` : ''}`;
    edgings.set(says, [...(edgings.get(says) ?? []), one]);
  }
  return gather(
    pinned.length > 0 && `Pin out to ${cm(meant)} when you block them: ${listed(pinned)}.`,
    [...edgings].map(([says, some]) => `${listed(some)}: ${says}.`),
    large.length > 0 &&
      `Too large, and nothing makes them smaller; use others, or all in a larger size: ${listed(large)}.`,
    small.length > 0 && `Too small for two rounds of edging: ${listed(small)}.`,
  );
}
