/** How near words stand to a piece of a phrase. */
import type { Heard } from '../heard.ts';
import type { Piece } from '../pieces/piece.ts';
import type { SenseName } from '../words.ts';

/** How far a sense stands from a piece, in words; other sentences are far away. */
function distanceTo(heard: Heard, from: number, to: number, sense: { from: number; to: number }): number {
  const before = sense.to <= from;
  if (!before && sense.from < to) return 0;
  const [begins, ends] = before ? [sense.to, from] : [to, sense.from];
  let steps = ends - begins;
  for (let at = begins; at < ends; at++) {
    const token = heard.tokens[at];
    if (token?.kind === 'mark' && /^[,;:]$/.test(token.text)) steps += 2;
    if (/^(and|but|so|with)$/.test(token?.text ?? '')) steps += 1;
    if (heard.mood.sentence[at] !== heard.mood.sentence[at + 1]) steps += 4;
  }
  return steps;
}

/** Whether one of the words that lead to an option stands right before a piece. */
export function leads(heard: Heard, piece: Piece, lead: string | undefined): boolean {
  if (lead === undefined) return false;
  const forms = lead.split(' ').map((word) => ` ${word.replaceAll('_', ' ')}`);
  for (let at = piece.from - 1; at >= 0; at--) {
    const before = ` ${heard.words.slice(Math.max(0, at - 4), at + 1).join(' ')}`;
    if (forms.some((form) => before.endsWith(form))) return true;
    if (!/^(a|an|the|about|round|row|of)$/.test(heard.words[at] ?? '')) return false;
  }
  return false;
}

/** Whether it is asked how many there are of one of these; “how many do I need” is asked of anything. */
export const isAsked = (heard: Heard, nouns: readonly SenseName[]) =>
  heard.goals.some(
    ({ by, senses }) =>
      by === 'how-many' && (senses.length === 0 || senses.some((sense) => nouns.includes(sense))),
  );

/** How strongly some senses stand near a piece: 2 beside it, fading with the words between. */
export function nearness(
  heard: Heard,
  piece: Pick<Piece, 'from' | 'to'>,
  senses: readonly SenseName[],
): number {
  let best = 0;
  for (const sense of senses)
    for (const one of heard.present.get(sense) ?? []) {
      // What follows close is nearer than what was said before.
      const behind = one.from >= piece.to;
      const far = distanceTo(heard, piece.from, piece.to, one) + (behind ? 0 : 0.5);
      best = Math.max(best, 2 / (1 + far / 2.5));
    }
  return best;
}
