/** A phrase while its pieces find their places among the options of a question. */
import type { Asked } from '../../chat/asked.ts';
import type { Heard } from '../heard.ts';
import type { Piece } from '../pieces/piece.ts';
import type { Slot } from './slots.ts';
import { usable } from './usable.ts';

/** One of the ways in which options are filled. */
export type Stage = (fitting: Fitting) => void;

export class Fitting {
  readonly heard: Heard;
  readonly asked: Asked;
  readonly slots: readonly Slot[];
  readonly pieces: readonly Piece[];
  readonly options: Record<string, string> = {};
  readonly extras: Record<string, string> = {};
  /** What is said of how it was read. */
  readonly assumed: string[] = [];
  /** Names of saved things that found no place. */
  unnamed = 0;
  /** How well it fits so far. */
  score = 0;
  readonly #used = new Set<Piece>();

  constructor(heard: Heard, asked: Asked, slots: readonly Slot[]) {
    this.heard = heard;
    this.asked = asked;
    this.slots = slots;
    this.pieces = usable(heard, slots, asked);
  }

  put(name: string, text: string): void {
    const isExtra = this.asked.extras !== undefined && Object.hasOwn(this.asked.extras, name);
    if (isExtra) this.extras[name] = text;
    else this.options[name] = text;
  }

  isFilled(name: string): boolean {
    return Object.hasOwn(this.options, name) || Object.hasOwn(this.extras, name);
  }

  /** The slot that takes such pieces, unless it is filled. */
  open(takes: string): Slot | undefined {
    const slot = this.slots.find((one) => one.takes === takes);
    return slot && !this.isFilled(slot.name) ? slot : undefined;
  }

  use(piece: Piece): void {
    this.#used.add(piece);
  }

  isUsed(piece: Piece): boolean {
    return this.#used.has(piece);
  }

  /** Every text that an option was filled with, whole and in its parts. */
  texts(): ReadonlySet<string> {
    const values = [...Object.values(this.options), ...Object.values(this.extras)];
    return new Set(values.flatMap((value) => [value, ...value.split(/[ /x]/)]));
  }
}
