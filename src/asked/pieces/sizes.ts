/** Sizes: two lengths by one another. */
import { merge, wordsBetween, type Joined, type Joiner } from './joining.ts';
import type { Piece } from './piece.ts';
import type { Phrase } from './phrase.ts';

const BY = /^(x|×|by|\*)$/;
/** What stands between two sides of a size. */
const BETWEEN =
  /^(wide|long|tall|high|deep|in|width|length|across|down|about|,|and|by|x|×|\*|a|of|approx|roughly|around|the|-)$/;
const MOST_BETWEEN = 5;

/** The token of “square” or “each way” behind a length. */
function squareBehind(phrase: Phrase, to: number): number | undefined {
  const at = phrase.word(to) === '-' ? to + 1 : to;
  const word = phrase.word(at);
  return word === 'square' || word === 'sq' || (word === 'each' && phrase.word(at + 1) === 'way')
    ? at
    : undefined;
}

/** Whether a length that is said to be square is one of a blanket, and not of a motif. */
function isOfBlanket(phrase: Phrase, pieces: readonly Piece[], { from }: Piece, squareAt: number): boolean {
  if (phrase.word(squareAt) === 'each') return true;
  if ([1, 2].some((ahead) => phrase.says('blanket', squareAt + ahead))) return true;
  if (/^(a|one|each|per|every)$/.test(phrase.word(from - 1))) return false;
  if (phrase.lastSaid(from, ['motif', 'blanket', 'block']) === 'blanket') return true;
  // “72 inches square, 9 inch motifs”: the motif has a length of its own.
  const other = pieces.some(
    (piece) =>
      piece.kind === 'length' &&
      piece.from !== from &&
      (phrase.says('motif', piece.to) || phrase.says('block', piece.to)),
  );
  return other && /^([,.;:–(-]|and|with|made|out|from|using)?$/.test(phrase.word(squareAt + 1));
}

/** A 60 inch square blanket, 90 cm each way. */
function squareSize(phrase: Phrase, pieces: readonly Piece[], a: Piece): Joined | undefined {
  if (a.kind !== 'length') return undefined;
  const at = squareBehind(phrase, a.to);
  if (at === undefined || !isOfBlanket(phrase, pieces, a, at)) return undefined;
  const to = at + (phrase.word(at) === 'each' ? 2 : 1);
  return { kind: 'dims', text: a.text, more: a.text, unit: a.unit ?? 'cm', parts: [a], from: a.from, to };
}

/** 4 ft x 5 ft; 50 in wide and 60 in long, the width first however it is said. */
function twoLengths(phrase: Phrase, a: Piece, b: Piece): Joined | undefined {
  if (a.kind !== 'length' || b.kind !== 'length' || (a.unit === 'mm') !== (b.unit === 'mm')) return undefined;
  const words = wordsBetween(phrase, a, b);
  if (words.length > MOST_BETWEEN || !words.every((one) => BETWEEN.test(one))) return undefined;
  const joined =
    words.some((one) => BY.test(one)) ||
    (words.some((one) => /^(wide|long|tall|high|across|width)$/.test(one)) &&
      words.some((one) => /^(and|by|,)$/.test(one)));
  if (!joined) return undefined;
  const turned =
    /^(long|tall|high|length|deep)$/.test(phrase.word(a.to)) &&
    /^(wide|across|width)$/.test(phrase.word(b.to));
  const [width, height] = turned ? [b, a] : [a, b];
  return {
    kind: 'dims',
    text: width.text,
    more: height.text,
    unit: a.unit ?? 'cm',
    parts: [a, b],
    from: a.from,
    to: b.to,
  };
}

const inUnit = (piece: Piece, unit: string): Piece => ({
  ...piece,
  kind: 'length',
  text: `${piece.text}${unit}`,
  unit,
});

/** 4 by 5 foot, 4ft by 5: the unit stands once. */
function sharedUnit(phrase: Phrase, a: Piece, b: Piece): Joined | undefined {
  const words = wordsBetween(phrase, a, b);
  const behind = a.kind === 'count' && b.kind === 'length';
  const before = a.kind === 'length' && b.kind === 'count';
  const unit = behind ? b.unit : before ? a.unit : undefined;
  if (unit === undefined) return undefined;
  const joined = behind
    ? words.length <= 3 &&
      words.some((one) => BY.test(one)) &&
      words.every((one) => /^(x|×|by|\*|wide|a|about)$/.test(one))
    : words.length === 1 && BY.test(words[0] ?? '') && b.nouns.length === 0;
  if (!joined) return undefined;
  const parts = [behind ? inUnit(a, unit) : a, behind ? b : inUnit(b, unit)] as const;
  return {
    kind: 'dims',
    text: parts[0].text,
    more: parts[1].text,
    unit,
    parts,
    from: a.from,
    to: b.to,
  };
}

export const sizes: Joiner = {
  example: ['a blanket of 4 by 5 foot', 'dims:4ft'],
  join: (found, phrase) => {
    let pieces = found;
    for (let index = 0; index < pieces.length; index++) {
      const [a, b] = [pieces[index], pieces[index + 1]];
      const made =
        a && (squareSize(phrase, pieces, a) ?? (b && (twoLengths(phrase, a, b) ?? sharedUnit(phrase, a, b))));
      if (made) pieces = merge(pieces, made);
    }
    return pieces;
  },
};
