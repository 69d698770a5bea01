/** Multiples of a stitch pattern: so many stitches, and so many over. */
import { defined } from '../../core/base/defined.ts';
import { countAt } from './counts.ts';
import type { Phrase, Recogniser } from './phrase.ts';

const isPlus = (word: string) => /^(plus|\+)$/.test(word);

/** Behind a number, past the stitches that it counts. */
const pastStitches = (phrase: Phrase, at: number) =>
  /^(stitch|stitches|sts|st)$/.test(phrase.word(at + 1)) ? at + 2 : at + 1;

/** Whether a multiple was spoken of shortly before. */
const isLedByRepeat = (phrase: Phrase, at: number) =>
  [1, 2, 3, 4].some((back) => phrase.says('repeat', at - back)) &&
  !phrase.pieces.some(({ kind }) => kind === 'multiple');

/** The token of the number in “, plus 2” that follows upon a multiple. */
function plusBehind(phrase: Phrase, start: number): number | undefined {
  const at = /^[,(]$/.test(phrase.word(start)) ? start + 1 : start;
  if (!isPlus(phrase.word(at))) return undefined;
  const number = /^(a|an|another|extra|of)$/.test(phrase.word(at + 1)) ? at + 2 : at + 1;
  return phrase.isNumber(number) ? number : undefined;
}

/** 8 + 2; multiple of 8 and 2 */
export const multiplePlus: Recogniser = {
  example: ['chain 8 + 2', 'multiple:8'],
  read: (phrase, at) => {
    const token = phrase.number(at);
    const plusAt = pastStitches(phrase, at);
    const more = phrase.number(plusAt + 1);
    if (!token || !more) return undefined;
    const word = phrase.word(plusAt);
    if (!isPlus(word) && !(/^(add|and)$/.test(word) && isLedByRepeat(phrase, at))) return undefined;
    return phrase.put({
      kind: 'multiple',
      text: token.text,
      more: more.text,
      from: at,
      to: plusAt + 2,
      must: true,
    });
  },
};

export const multiple: Recogniser = {
  example: ['in multiples of 6', 'multiple:6'],
  read: (phrase, at) => {
    const token = phrase.number(at);
    if (!token || !isLedByRepeat(phrase, at) || phrase.isNumber(at + 1)) return undefined;
    // “a repeat near 100 stitches” is a wish.
    if (/^(near|about|around|roughly|approx|approximately|to)$/.test(phrase.word(at - 1))) return undefined;
    const plus = plusBehind(phrase, pastStitches(phrase, at));
    return phrase.put({
      kind: 'multiple',
      text: token.text,
      value: token.value ?? NaN,
      from: at,
      to: (plus ?? at) + 1,
      must: true,
      ...defined({
        more: plus === undefined ? undefined : phrase.text(plus),
        parts: plus === undefined ? [countAt(phrase, at)] : undefined,
      }),
    });
  },
};

export const stitchRepeat: Recogniser = {
  example: ['an 8-stitch repeat', 'multiple:8'],
  read: (phrase, at) => {
    const token = phrase.number(at);
    if (!token || !/^(stitch|stitches|sts?|-)$/.test(phrase.word(at + 1)) || isPlus(phrase.word(at - 1)))
      return undefined;
    let said = [at + 1, at + 2, at + 3].find((one) => phrase.says('repeat', one));
    if (said === undefined) return undefined;
    while (phrase.says('repeat', said + 1)) said++;
    const plus = plusBehind(phrase, said + 1);
    return phrase.put({
      kind: 'multiple',
      text: token.text,
      value: token.value ?? NaN,
      from: at,
      to: (plus ?? said) + 1,
      must: true,
      ...defined({ more: plus === undefined ? undefined : phrase.text(plus) }),
    });
  },
};
