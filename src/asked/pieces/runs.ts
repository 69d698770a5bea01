/** Numbers one after another. */
import type { Phrase } from './phrase.ts';

/** So many may be parted by a slash; what is longer is something else. */
const MOST_SLASHED = 20;

/** Where the next member of a run may stand: behind a joint of at most three marks and words. */
function pastJoint(phrase: Phrase, end: number): number {
  let next = end + 1;
  while (
    next - end <= 3 &&
    /^(,|;|and|then|&|\/|-|–|to)$/.test(phrase.word(next)) &&
    (next === end + 1 || !/^(to|-|–|\/)$/.test(phrase.word(next)))
  )
    next++;
  return next;
}

/** The tokens of a run of whole numbers: `3 5 7 8`, `3, 5, 7 and 8`, `3 then 5 then 7`. A single number is a run of one. */
export function runFrom(phrase: Phrase, at: number): number[] {
  const members = [at];
  if (!Number.isInteger(phrase.tokens[at]?.value)) return members;
  for (;;) {
    const end = members.at(-1) ?? at;
    const next = pastJoint(phrase, end);
    const joints = phrase.between(end + 1, next);
    if (joints.some((joint) => /^(to|-|–)$/.test(joint))) return members;
    if (joints.includes('/') && members.length > MOST_SLASHED) return members;
    const number = phrase.number(next);
    if (!number || number.ordinal || !Number.isInteger(number.value)) return members;
    // 8 x 11 begins something else.
    if (/^(x|×|by|\*)$/.test(phrase.word(next + 1)) && phrase.isNumber(next + 2)) return members;
    members.push(next);
  }
}
