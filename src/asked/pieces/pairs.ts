/** Two numbers by one another: a size without its unit, a layout, a gauge. */
import { measureAt } from './measures.ts';
import { nounsFrom } from './nouns.ts';
import type { Piece } from './piece.ts';
import type { Phrase, Recogniser } from './phrase.ts';

/** The most stitches and rows that a pair is read as a gauge of. */
const MOST_OF_A_GAUGE = 40;

/** 8 x 11, 8 by 11, 8 squares by 11 */
function pairAt(phrase: Phrase, at: number): Piece | undefined {
  const token = phrase.number(at);
  const by = phrase.says('motif', at + 1) || phrase.says('block', at + 1) ? at + 2 : at + 1;
  const second = phrase.number(by + 1);
  if (!token || !second || second.ordinal || !/^(x|×|by|\*)$/.test(phrase.word(by))) return undefined;
  return {
    kind: 'pair',
    text: token.text,
    more: second.text,
    from: at,
    to: by + 2,
    must: true,
    nouns: nounsFrom(phrase, by === at + 1 ? at + 3 : at + 1),
  };
}

/** “a 12 row square at 13x10” says a gauge; “comes out at 50 x 60” a size. */
function isGauge(phrase: Phrase, { from, to, nouns }: Piece): boolean {
  if (phrase.word(from - 1) !== 'at' || nouns.length > 0) return false;
  const before = phrase.word(from - 2);
  if (/^(out|comes?|finish(es|ed)?|measures?)$/.test(before)) return false;
  if (/^(be|is|it)$/.test(before) && !phrase.said.some(({ sense }) => sense === 'row' || sense === 'gauge'))
    return false;
  const few = (at: number) => (phrase.tokens[at]?.value ?? 99) <= MOST_OF_A_GAUGE;
  return few(from) && few(to - 1) && measureAt(phrase, to - 1) === undefined;
}

export const gaugePair: Recogniser = {
  example: ['a 12 row square at 13x10', 'gauge:13x10'],
  read: (phrase, at) => {
    const pair = pairAt(phrase, at);
    if (!pair || !isGauge(phrase, pair)) return undefined;
    const text = `${pair.text}x${pair.more ?? ''}`;
    return phrase.put({ ...pair, kind: 'gauge', text, unit: 'at', parts: [pair] });
  },
};

export const pair: Recogniser = {
  example: ['8 squares by 11', 'pair:8'],
  read: (phrase, at) => {
    const found = pairAt(phrase, at);
    return found && phrase.put(found);
  },
};
