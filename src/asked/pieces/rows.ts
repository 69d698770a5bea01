/** Which row or round: one by its number or its place, some of them from one to another. */
import type { SenseName } from '../words.ts';
import type { Phrase, Recogniser } from './phrase.ts';
import { runFrom } from './runs.ts';

const rowsOrRounds = (word: string): SenseName[] => [word === 'rows' ? 'row' : 'round'];

/** Where counts begin, and where they end. */
export const rowSpan: Recogniser = {
  example: ['rows 1 to 5 came out', 'row:1'],
  read: (phrase, at) => {
    const [first, last] = [phrase.number(at), phrase.number(at + 2)];
    const word = phrase.word(at - 1);
    if (
      !first ||
      !last ||
      !/^(rows|rounds|rnds)$/.test(word) ||
      !/^(to|-|–|through|till|until)$/.test(phrase.word(at + 1)) ||
      !((first.value ?? NaN) < (last.value ?? NaN))
    )
      return undefined;
    return phrase.put({
      kind: 'row',
      text: first.text,
      more: last.text,
      value: first.value ?? NaN,
      from: at - 1,
      to: at + 3,
      must: true,
      nouns: rowsOrRounds(word),
    });
  },
};

/** “12 rows 9”: the word belongs to the number before it. */
const isCounted = (phrase: Phrase, marked: number) =>
  phrase.tokens[marked - 1]?.kind === 'number' && !phrase.isTaken(marked - 1);

/** row 9; row number 9; row #9 */
export const row: Recogniser = {
  example: ['stitches in row number 9', 'row:9'],
  read: (phrase, at) => {
    const token = phrase.number(at);
    if (!token) return undefined;
    const marked =
      /^(number|no|#|nr|to|is)$/.test(phrase.word(at - 1)) && /^(row|round|rnd)$/.test(phrase.word(at - 2))
        ? at - 2
        : at - 1;
    const word = phrase.word(marked);
    if (!/^(rows?|rounds?|rnds?|rnd|rd|r)$/.test(word) || /^(x|×|by|and)$/.test(phrase.word(at + 1)))
      return undefined;
    if (marked === at - 1 && isCounted(phrase, marked)) return undefined;
    // “the last round is 150 stitches”
    if (phrase.word(at - 1) === 'is' && /^(st|sts|stitch|stitches)$/.test(phrase.word(at + 1)))
      return undefined;
    return phrase.put({
      kind: 'row',
      text: token.text,
      value: token.value ?? NaN,
      from: marked,
      to: at + 1,
      must: true,
      nouns: [/^r(ou)?n?d/.test(word) ? 'round' : 'row'],
    });
  },
};

/** The 9th row. The 9th of anything else is no amount. */
export const ordinal: Recogniser = {
  example: ['on the ninth round', 'row:9'],
  read: (phrase, at) => {
    const token = phrase.number(at);
    if (!token?.ordinal) return undefined;
    const isRound = phrase.says('round', at + 1);
    const isRow = isRound || phrase.says('row', at + 1);
    return phrase.put({
      kind: isRow ? 'row' : 'aside',
      text: token.text,
      value: token.value ?? NaN,
      from: at,
      to: isRow ? at + 2 : at + 1,
      must: isRow,
      nouns: isRow ? [isRound ? 'round' : 'row'] : [],
    });
  },
};

/** “in rows 5 and 9” names two rows, and counts nothing. */
export const twoRows: Recogniser = {
  example: ['in rows 5 and 9', 'row:5'],
  read: (phrase, at) => {
    const token = phrase.number(at);
    const word = phrase.word(at - 1);
    if (!token || !/^(rows|rounds|rnds)$/.test(word)) return undefined;
    const members = runFrom(phrase, at);
    const [, second] = members;
    if (members.length !== 2 || second === undefined || second === at + 1) return undefined;
    return phrase.put({
      kind: 'row',
      text: token.text,
      more: `and ${phrase.text(second)}`,
      from: at - 1,
      to: second + 1,
      must: true,
      nouns: rowsOrRounds(word),
    });
  },
};
