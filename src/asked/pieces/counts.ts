/** Counts: one, from one to another, or several in a row. */
import { nounsFrom } from './nouns.ts';
import type { Piece } from './piece.ts';
import type { Phrase, Recogniser } from './phrase.ts';
import { runFrom } from './runs.ts';

/** The number at a token as a count of what stands behind it. */
export function countAt(phrase: Phrase, at: number, nouns = nounsFrom(phrase, at + 1)): Piece {
  const token = phrase.tokens[at];
  return {
    kind: 'count',
    text: phrase.text(at),
    value: token?.value ?? NaN,
    nouns,
    from: at,
    to: at + 1,
    must: token?.loose !== true,
  };
}

/** The last of them says what all count. */
export const severalCounts: Recogniser = {
  example: ['my rows have 3, 5, 7 and 8 stitches', 'counts:3 5 7 8'],
  read: (phrase, at) => {
    if (!phrase.isNumber(at)) return undefined;
    const members = runFrom(phrase, at);
    const last = members.at(-1) ?? at;
    // Two numbers with nothing between, 150 four-round grannies, are no list.
    if (members.length < 2 || (members.length === 2 && last === at + 1)) return undefined;
    const nouns = nounsFrom(phrase, last + 1);
    return phrase.put({
      kind: 'counts',
      text: members.map((one) => phrase.text(one)).join(' '),
      from: at,
      to: last + 1,
      must: true,
      nouns,
      parts: members.map((one) => countAt(phrase, one, nouns)),
    });
  },
};

export const range: Recogniser = {
  example: ['3 to 6 rounds', 'counts:3-6'],
  read: (phrase, at) => {
    const [first, last] = [phrase.number(at), phrase.number(at + 2)];
    if (!first || !last || last.ordinal || !/^(to|-|–)$/.test(phrase.word(at + 1))) return undefined;
    const nouns = nounsFrom(phrase, at + 3);
    return phrase.put({
      kind: 'counts',
      text: `${first.text}-${last.text}`,
      from: at,
      to: at + 3,
      must: true,
      nouns,
      parts: [countAt(phrase, at, nouns), countAt(phrase, at + 2, nouns)],
    });
  },
};

export const count: Recogniser = {
  example: ['80 of these', 'count:80'],
  read: (phrase, at) => (phrase.isNumber(at) ? phrase.put(countAt(phrase, at)) : undefined),
};
