/** A phrase while its pieces are read. */
import type { Said } from '../lexicon.ts';
import { sensesIn } from '../lexicon.ts';
import type { Token } from '../tokens.ts';
import type { SenseName } from '../words.ts';
import type { NameFound, Piece } from './piece.ts';

/** Reads one matter, and nothing else. */
export interface Recogniser {
  /** A phrase that it reads, and what comes of it: the piece’s kind and text. */
  readonly example: readonly [phrase: string, piece: string];
  /** Puts the piece that stands at a token; returns the token behind it, undefined where none of its kind stands there. */
  readonly read: (phrase: Phrase, at: number) => number | undefined;
}

/** A piece to be put down; most count nothing. */
type NewPiece = Omit<Piece, 'nouns'> & Partial<Pick<Piece, 'nouns'>>;

/** Its tokens and what they mean, with what was found so far. Places outside it hold nothing. */
export class Phrase {
  readonly tokens: readonly Token[];
  /** The tokens’ words as they are meant, misspelt ones mended. */
  readonly words: readonly string[];
  readonly said: readonly Said[];
  readonly pieces: Piece[] = [];
  readonly names: NameFound[] = [];
  readonly #senses: readonly SenseName[][];
  readonly #taken: boolean[];

  constructor(tokens: readonly Token[], words: readonly string[]) {
    this.tokens = tokens;
    this.words = words;
    this.said = sensesIn(words, tokens);
    this.#senses = tokens.map(() => []);
    for (const { sense, from, to } of this.said)
      for (let at = from; at < to; at++) this.#senses[at]?.push(sense);
    this.#taken = tokens.map(() => false);
  }

  word(at: number): string {
    return this.words[at] ?? '';
  }

  /** A token as it was typed. */
  text(at: number): string {
    return this.tokens[at]?.text ?? '';
  }

  /** The words of some tokens, the last one left out. */
  between(from: number, to: number): readonly string[] {
    return this.words.slice(from, to);
  }

  sensesAt(at: number): readonly SenseName[] {
    return this.#senses[at] ?? [];
  }

  says(sense: SenseName, at: number): boolean {
    return this.sensesAt(at).includes(sense);
  }

  /** Whether a sense is said at most so many tokens away. */
  saysNear(sense: SenseName, at: number, within: number): boolean {
    return this.said.some((one) => one.sense === sense && Math.abs(one.from - at) <= within);
  }

  /** Which of some senses was said last before a token. */
  lastSaid(before: number, among: readonly SenseName[]): SenseName | undefined {
    for (let at = before - 1; at >= 0; at--) {
      const found = this.sensesAt(at).find((sense) => among.includes(sense));
      if (found !== undefined) return found;
    }
    return undefined;
  }

  /** Whether a token belongs to a piece already. */
  isTaken(at: number): boolean {
    return this.#taken[at] === true;
  }

  inShape(at: number): boolean {
    return this.pieces.some(({ kind, from, to }) => kind === 'shape' && from <= at && at < to);
  }

  /** The number at a token, unless it belongs to something already. */
  number(at: number): Token | undefined {
    const token = this.tokens[at];
    return token?.kind === 'number' && !this.isTaken(at) && !this.inShape(at) ? token : undefined;
  }

  isNumber(at: number): boolean {
    return this.number(at) !== undefined;
  }

  pieceAt(at: number): Piece | undefined {
    return this.pieces.find(({ from }) => from === at);
  }

  /** Takes tokens for a piece or a name. */
  take(from: number, to: number): void {
    for (let at = from; at < to; at++) this.#taken[at] = true;
  }

  /** Puts a piece down and takes its tokens; returns the token behind it. */
  put(piece: NewPiece): number {
    this.take(piece.from, piece.to);
    this.pieces.push({ nouns: [], ...piece });
    return piece.to;
  }

  /** Puts a piece down whose words stay readable as what they name: squares, hexagons. */
  putOver(piece: NewPiece): number {
    this.pieces.push({ nouns: [], ...piece });
    return piece.to;
  }
}

/** Reads a phrase from left to right, at each token with the first that finds something there. */
export function readThrough(phrase: Phrase, recognisers: readonly Recogniser[]): void {
  let at = 0;
  while (at < phrase.tokens.length) {
    let next: number | undefined;
    if (!phrase.isTaken(at))
      for (const { read } of recognisers) {
        next = read(phrase, at);
        if (next !== undefined) break;
      }
    at = next ?? at + 1;
  }
}
