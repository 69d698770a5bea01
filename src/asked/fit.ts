/** Which piece of a phrase belongs to which option of a question. */
import type { Asked } from '../chat/asked.ts';
import { Fitting, type Stage } from './fit/fitting.ts';
import { fillFromPieces } from './fit/offers.ts';
import { fillChoices, fillFromWords, fillNames } from './fit/said.ts';
import type { Slot } from './fit/slots.ts';
import { fillRounds, fillSquareSwatch, fillTerm } from './fit/special.ts';
import { fillWhereCountsBegin, useHeldAgainst, useHowMany } from './fit/spoken-for.ts';
import { fillTwoGauges } from './fit/two-gauges.ts';
import type { Heard } from './heard.ts';
import type { Piece } from './pieces/piece.ts';

/** What fills options, what is surest first. */
const FILLS: readonly Stage[] = [
  fillFromWords,
  fillNames,
  fillChoices,
  fillTwoGauges,
  fillFromPieces,
  fillSquareSwatch,
  fillRounds,
  fillTerm,
];

/** What is left over and needs no place. */
const SPOKEN_FOR: readonly Stage[] = [useHowMany, fillWhereCountsBegin, useHeldAgainst];

/** Words that go by more than one name are a small loss: a stitch that a question has no use for. */
const UNHEEDED = 0.4;

export interface Fitted {
  readonly options: Readonly<Record<string, string>>;
  readonly extras: Readonly<Record<string, string>>;
  /** Pieces with numbers that found no place. */
  readonly unplaced: readonly Piece[];
  /** Names of saved things that found no place. */
  readonly unnamed: number;
  /** How well it fits altogether. */
  readonly score: number;
  /** What is said of how it was read. */
  readonly assumed: readonly string[];
}

/** What a phrase says of a question's options. */
export function fit(heard: Heard, asked: Asked, slots: readonly Slot[]): Fitted {
  const fitting = new Fitting(heard, asked, slots);
  for (const fill of FILLS) fill(fitting);
  const texts = fitting.texts();
  for (const use of SPOKEN_FOR) use(fitting);
  const { options, extras, unnamed, score, assumed } = fitting;
  const left = fitting.pieces.filter((piece) => !fitting.isUsed(piece));
  const unplaced = left.filter((piece) => piece.must && piece.kind !== 'name' && !texts.has(piece.text));
  const unheeded = left.filter(({ must, kind }) => !must && /^(stitch|yarn|hook)$/.test(kind)).length;
  return { options, extras, unplaced, unnamed, score: score - unheeded * UNHEEDED, assumed };
}
