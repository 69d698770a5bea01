/** Stitches by their names, in US or UK terms where it is said whose. */
import { STITCH_WORDS } from '../tables.ts';
import { listByFirst, listedAt } from './listed.ts';
import type { Phrase, Recogniser } from './phrase.ts';

const STITCHES = listByFirst(STITCH_WORDS);

const BRITISH = /^(uk|british)$/;
const AMERICAN = /^(us|american|usa)$/;

/** `uk dc`, `dc (UK)`, `dc in uk`: whose terms it is in. Of what stands before, `led` is part of the name. */
function whoseTerms(phrase: Phrase, at: number, to: number): { whose: '' | 'US ' | 'UK '; led: boolean } {
  const before = phrase.word(at - 1);
  const after = phrase.word(to);
  if (BRITISH.test(before)) return { whose: 'UK ', led: true };
  // “the rest of us dc”
  if (AMERICAN.test(before) && !/^(of|in)$/.test(phrase.word(at - 2))) return { whose: 'US ', led: true };
  const behind = after === '(' || after === 'in' ? phrase.word(to + 1) : after;
  return BRITISH.test(behind) ? { whose: 'UK ', led: AMERICAN.test(before) } : { whose: '', led: false };
}

export const stitch: Recogniser = {
  example: ['in uk half trebles', 'stitch:UK htr'],
  read: (phrase, at) => {
    const found = listedAt(STITCHES, phrase, at);
    if (!found) return undefined;
    const { whose, led } = whoseTerms(phrase, at, found.to);
    return phrase.put({
      kind: 'stitch',
      text: `${whose}${found.value}`,
      from: led ? at - 1 : at,
      to: found.to,
      must: false,
    });
  },
};
