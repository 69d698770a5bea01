/**
 * What the events of one busy document come to, kept beside them and moved on by each: the state, and what is asked of the past at
 * every press. A press looks at what is new; what is taken back is reckoned again from a state before it.
 */
import { takenBack, type Stamp } from '../core/base/history.ts';
import { entriesSince, lengthOf, type Entries } from './grown.ts';

/** The rules by which events follow from one another, and whom one names. */
export interface Rules<E extends Stamp, State> {
  readonly idsIn: (event: E) => readonly string[];
  goOn(before: State | undefined, known: number, more: readonly E[], undone: ReadonlySet<number>): State;
}

/** A state to go on from. */
interface Stand<State> {
  /** Of how many events it is. */
  readonly at: number;
  /** Of how many events it is known which were taken back. */
  readonly asOf: number;
  readonly state: State;
}

/** So many events at least lie between two states that are kept, and so many are kept. */
const APART = 500;
const MOST_STANDS = 6;
/** Events that are looked at in one piece. */
const PIECE = 500;

/** What is asked of everything that happened. */
export interface Past {
  /** The presses that were done. */
  readonly presses: ReadonlySet<string>;
  /** Everybody whom an event names, and how many are by each. */
  readonly makers: ReadonlySet<string>;
  readonly by: ReadonlyMap<string, number>;
  /** How long all of it is, in characters. */
  readonly characters: number;
  /** Makers named by these events or before them who are not listed. */
  notIn(listed: ReadonlySet<string>, more: readonly unknown[]): readonly string[];
}

const firstOf = (undone: ReadonlySet<number>) => [...undone].reduce((a, b) => Math.min(a, b), Infinity);

export class Live<E extends Stamp, State> implements Past {
  presses = new Set<string>();
  makers = new Set<string>();
  by = new Map<string, number>();
  characters = 0;
  private counted = 0;
  /** Ascending; the last is the latest state that there is. */
  private stands: Stand<State>[] = [];
  /** Who is known to be listed: everybody who is counted. */
  private allIn: ReadonlySet<string> | undefined;

  constructor(
    /** The list that it is of: whatever is not of this one is of another Live. */
    readonly entries: Entries,
    private readonly rules: Rules<E, State>,
  ) {}

  /** The state of a document of this list. Throws BrokenHistory where its events do not follow from one another. */
  *reckon(doc: object): Generator<void, State> {
    const length = lengthOf(doc);
    const stand = this.standFor(doc, []);
    const more = entriesSince(doc, stand?.at ?? 0) as readonly E[];
    const undone = takenBack(more);
    let state = stand?.state;
    let at = stand?.at ?? 0;
    for (let from = 0; from < more.length || state === undefined; from += PIECE) {
      if (from > 0) yield;
      const piece = more.slice(from, from + PIECE);
      state = this.rules.goOn(state, at, piece, undone);
      at += piece.length;
      this.keep(at, state, length);
    }
    return state;
  }

  /** The state after more events of a document, without a word to anybody. Throws BrokenHistory likewise. */
  after(doc: object, state: State, add: readonly E[]): State {
    const undone = takenBack(add);
    if (undone.size === 0) return this.rules.goOn(state, lengthOf(doc), add, undone);
    const stand = this.standFor(doc, add);
    const more = [...(entriesSince(doc, stand?.at ?? 0) as readonly E[]), ...add];
    return this.rules.goOn(stand?.state, stand?.at ?? 0, more, takenBack(more));
  }

  /**
   * Notes a state of the first `at` events that is further than those there are, in which is left out what the first `asOf` took
   * back.
   */
  keep(at: number, state: State, asOf = at): void {
    if (at <= (this.stands.at(-1)?.at ?? 0)) return;
    // The latest makes room for the next, but for one now and then.
    const before = this.stands.at(-2);
    if (this.stands.length > 1 && at - (before?.at ?? 0) < APART) this.stands.pop();
    this.stands.push({ at, asOf, state });
    if (this.stands.length > MOST_STANDS) this.stands.splice(1, 1);
  }

  /** Whether all that happened in a document is counted, and maybe what came after it. */
  counts(doc: object): boolean {
    return this.counted >= lengthOf(doc);
  }

  /** Counts what is new. Those that were never written after all are counted no more. */
  *count(doc: object): Generator<void, Past> {
    const length = lengthOf(doc);
    if (this.counted > length) {
      this.presses = new Set();
      this.makers = new Set();
      this.by = new Map();
      this.characters = 0;
      this.allIn = undefined;
      this.counted = 0;
    }
    while (this.counted < length) {
      const piece = entriesSince(doc, this.counted).slice(0, PIECE) as readonly E[];
      for (const event of piece) {
        this.presses.add(event.once);
        this.characters += JSON.stringify(event).length;
        this.by.set(event.by, (this.by.get(event.by) ?? 0) + 1);
        for (const maker of this.rules.idsIn(event)) {
          if (this.allIn?.has(maker) === false) this.allIn = undefined;
          this.makers.add(maker);
        }
      }
      this.counted += piece.length;
      if (this.counted < length) yield;
    }
    return this;
  }

  notIn(listed: ReadonlySet<string>, more: readonly E[]): readonly string[] {
    const added = more.flatMap((event) => this.rules.idsIn(event));
    const asked = this.allIn === listed ? added : [...this.makers, ...added];
    const missing = [...new Set(asked)].filter((maker) => !listed.has(maker));
    if (missing.length === 0) this.allIn = listed;
    return missing;
  }

  /** The latest state that has nothing in it of what a document with some more events takes back. */
  private standFor(doc: object, add: readonly E[]): Stand<State> | undefined {
    const length = lengthOf(doc);
    return this.stands.findLast(({ at, asOf }) => {
      if (at > length || asOf > length) return false;
      const later = takenBack([...(entriesSince(doc, asOf) as readonly E[]), ...add]);
      return later.size === 0 || firstOf(later) >= at;
    });
  }
}
