/** How thick a yarn is: its name, its ply, its wraps per inch, its number on the band. */
import { YARN_NAMES } from '../tables.ts';
import { pastDash } from './amounts.ts';
import { listByFirst, listedAt } from './listed.ts';
import type { Phrase, Recogniser } from './phrase.ts';

const YARNS = listByFirst(YARN_NAMES);

/** The highest number of a category of yarn, as the Craft Yarn Council’s standard has them. */
const HIGHEST_CATEGORY = 7;

export const wraps: Recogniser = {
  example: ['it is 11 wraps per inch', 'yarn:11wpi'],
  read: (phrase, at) => {
    const token = phrase.tokens[at];
    if (token?.kind !== 'number' || !/^(wpi|wraps?)$/.test(phrase.text(at + 1))) return undefined;
    // 11 wraps per inch; 11 wraps to the inch
    const to = at + (phrase.text(at + 2) === 'per' ? 4 : phrase.text(at + 2) === 'to' ? 5 : 2);
    return phrase.put({
      kind: 'yarn',
      text: `${token.text}wpi`,
      value: token.value ?? NaN,
      from: at,
      to: Math.min(to, phrase.tokens.length),
      must: true,
    });
  },
};

export const ply: Recogniser = {
  example: ['an 8-ply cotton', 'yarn:8 ply'],
  read: (phrase, at) => {
    const token = phrase.tokens[at];
    const plyAt = pastDash((one) => phrase.text(one), at + 1);
    if (token?.kind !== 'number' || phrase.text(plyAt) !== 'ply') return undefined;
    return phrase.put({
      kind: 'yarn',
      text: `${token.text} ply`,
      value: token.value ?? NaN,
      from: at,
      to: plyAt + 1,
      must: true,
    });
  },
};

export const yarnName: Recogniser = {
  example: ['some double knitting', 'yarn:dk'],
  read: (phrase, at) => {
    const found = listedAt(YARNS, phrase, at);
    return found && phrase.put({ kind: 'yarn', text: found.value, from: at, to: found.to, must: false });
  },
};

/** Whether the words beside a number make a category of yarn of it. */
function isCategory(phrase: Phrase, at: number): boolean {
  const [before2, before, after, after2] = [at - 2, at - 1, at + 1, at + 2].map((one) => phrase.word(one));
  const says = (form: RegExp, word = '') => form.test(word);
  return (
    before === 'category' ||
    (before === 'weight' && before2 !== 'the') ||
    (before2 === 'category' && says(/^(number|no|#)$/, before)) ||
    (says(/^(size|number|no|#|weight|a)$/, before) && says(/^(yarn|wool|weight)$/, after)) ||
    (after === 'weight' && says(/^(yarn|wool)$/, after2)) ||
    (says(/^(yarn|wool)$/, before2) && says(/^(size|number|no|#)$/, before))
  );
}

export const yarnCategory: Recogniser = {
  example: ['category 4 yarn', 'yarn:4'],
  read: (phrase, at) => {
    const token = phrase.tokens[at];
    const { value = NaN } = token ?? {};
    if (token?.kind !== 'number' || !(value <= HIGHEST_CATEGORY) || !Number.isInteger(value))
      return undefined;
    if (!isCategory(phrase, at)) return undefined;
    const marked = /^(category|weight|number|no|size|#)$/.test(phrase.word(at - 1));
    return phrase.put({
      kind: 'yarn',
      text: token.text,
      value,
      from: marked ? at - 1 : at,
      to: at + 1,
      must: true,
    });
  },
};
