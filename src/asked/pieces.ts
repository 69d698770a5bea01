/**
 * What a phrase holds that an option could take: amounts with their units, balls, gauges, hooks, stitches, shapes, counts and
 * what they count. A piece says only what stands there; which option it belongs to is decided for each question.
 */
import type { DayFound } from './days.ts';
import type { Said } from './lexicon.ts';
import { minutes, money, percentage } from './pieces/amounts.ts';
import { aside, offBy, shouldBe } from './pieces/asides.ts';
import { balls } from './pieces/balls.ts';
import { count, range, severalCounts } from './pieces/counts.ts';
import { putDays } from './pieces/days.ts';
import { gauges } from './pieces/gauges.ts';
import { letter, numberBeside, numberedLetter, ownedNumber } from './pieces/hooks.ts';
import type { Joiner } from './pieces/joining.ts';
import { feetAndInches, measure } from './pieces/measures.ts';
import { countOneOfAKind, findNames, quotedName } from './pieces/names.ts';
import { gaugePair, pair } from './pieces/pairs.ts';
import { Phrase, readThrough, type Recogniser } from './pieces/phrase.ts';
import type { KnownName, NameFound, Piece } from './pieces/piece.ts';
import { multiple, multiplePlus, stitchRepeat } from './pieces/repeats.ts';
import { ordinal, row, rowSpan, twoRows } from './pieces/rows.ts';
import { otherShape, shape } from './pieces/shapes.ts';
import { sizes } from './pieces/sizes.ts';
import { stitch } from './pieces/stitches.ts';
import { usualSize } from './pieces/usual-sizes.ts';
import { ply, wraps, yarnCategory, yarnName } from './pieces/yarns.ts';
import type { Token } from './tokens.ts';

/** The phrase is gone through once for each list; at a token the first that finds something has it. */
export const PASSES: readonly (readonly Recogniser[])[] = [
  [quotedName],
  // What says by itself what it is.
  [
    money,
    percentage,
    wraps,
    ply,
    feetAndInches,
    measure,
    minutes,
    shouldBe,
    offBy,
    aside,
    otherShape,
    shape,
    stitch,
    yarnName,
    usualSize,
  ],
  // What is told by the words beside it.
  [numberedLetter, letter, ownedNumber, numberBeside],
  [yarnCategory],
  // Numbers that are left.
  [
    rowSpan,
    row,
    ordinal,
    multiplePlus,
    multiple,
    stitchRepeat,
    gaugePair,
    pair,
    twoRows,
    severalCounts,
    range,
    count,
  ],
];

/** What belongs together, the close-knit first. */
export const JOINERS: readonly Joiner[] = [gauges, balls, sizes];

export interface Pieces {
  readonly pieces: readonly Piece[];
  readonly names: readonly NameFound[];
  readonly said: readonly Said[];
}

/** Everything in the tokens that an option could take; `words` are the tokens' words as they are meant. */
export function piecesOf(
  tokens: readonly Token[],
  words: readonly string[],
  known: readonly KnownName[] = [],
  days: readonly DayFound[] = [],
  passes = PASSES,
): Pieces {
  const phrase = new Phrase(tokens, words);
  findNames(phrase, known);
  putDays(phrase, days);
  for (const recognisers of passes) readThrough(phrase, recognisers);
  countOneOfAKind(phrase);
  let pieces: readonly Piece[] = phrase.pieces.sort((a, b) => a.from - b.from);
  for (const { join } of JOINERS) pieces = join(pieces, phrase);
  return { pieces, names: phrase.names, said: phrase.said };
}
