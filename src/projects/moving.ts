/** Takes everything that is saved from one store to another, document by document, and compares what came of it. */
import { ALONG_ENTRIES, ALONGS } from './along-schema.ts';
import { GROUP_ENTRIES, GROUPS } from './group-schema.ts';
import { isGrowing } from './grown.ts';
import { ANSWERS } from './latest-answers.ts';
import { NotSaved } from './not-saved.ts';
import { MAKERS } from './projects.ts';
import { SERVERS } from './servers.ts';
import type { Kind, Store } from './store.ts';
import { TOLD } from './told.ts';

interface Moved {
  readonly kind: Kind<unknown>;
  /** What is made from its documents and goes before each. */
  readonly entries?: Kind<unknown>;
}

/** What is moved. What is not is good for a moment only: claims, paces, what was registered. */
export const MOVED: readonly Moved[] = [
  { kind: MAKERS },
  { kind: SERVERS },
  { kind: GROUPS, entries: GROUP_ENTRIES },
  { kind: ALONGS, entries: ALONG_ENTRIES },
  { kind: TOLD },
  { kind: ANSWERS },
];

/** What became of a document. */
export const OUTCOMES = ['moved', 'same', 'older', 'replaced', 'otherwise', 'unreadable'] as const;
/**
 * `moved`: it was not there. `same`: it was there. `older`: what was there was an earlier state of it, and is it now. `otherwise`: what was
 * there is another, and stays. `replaced`: the same, and it does not. `unreadable`: it cannot be read here, or what is there cannot.
 */
export type Outcome = (typeof OUTCOMES)[number];

export interface MovedKind {
  readonly folder: string;
  /** How many there are here. */
  readonly all: number;
  readonly counts: Readonly<Record<Outcome, number>>;
  /** Those that stayed behind, with why. */
  readonly left: readonly { readonly id: string; readonly outcome: Outcome }[];
}

export interface Moving {
  /** What is another there is replaced by what is here. */
  readonly replaces: boolean;
  /** Told how far it is. */
  readonly progress: (folder: string, done: number, all: number) => void;
  /** Aborted where it is to stop: what was moved stays moved. */
  readonly stop?: AbortSignal;
}

/** So many are under way at once. */
const AT_ONCE = 32;

async function inParts<T>(all: readonly T[], stop: AbortSignal | undefined, work: (one: T) => Promise<void>) {
  for (let from = 0; from < all.length; from += AT_ONCE) {
    if (stop?.aborted === true)
      throw new NotSaved('stopped', 'It was stopped before all was moved.', 'Ask again: it goes on.');
    await Promise.all(all.slice(from, from + AT_ONCE).map(work));
  }
}

/** Names in one order: a database keeps those of what it does not know otherwise than they were written. */
const inOrder = (_: string, part: unknown): unknown =>
  typeof part === 'object' && part !== null && !Array.isArray(part)
    ? Object.fromEntries(Object.entries(part).sort(([one], [other]) => (one < other ? -1 : 1)))
    : part;
const textOf = (said: unknown) => JSON.stringify(said, inOrder);

/** The same kind of documents, of any length: what is saved already is not refused. */
function ofAnyLength({ most: _, ...kind }: Kind<unknown>): Kind<unknown> {
  return kind;
}

/** Whether a document that grows has all that another has, and more. */
function goesOn(here: unknown, there: unknown): boolean {
  const [more, less] = [here, there] as { edition?: number; events: readonly unknown[] }[];
  return (
    more !== undefined &&
    less !== undefined &&
    more.edition === less.edition &&
    more.events.length > less.events.length &&
    less.events.every((event, index) => textOf(event) === textOf(more.events[index]))
  );
}

function outcomeOf(kind: Kind<unknown>, here: unknown, there: unknown, replaces: boolean): Outcome {
  if (there === undefined) return 'moved';
  if (textOf(here) === textOf(there)) return 'same';
  if (isGrowing(kind) && goesOn(here, there)) return 'older';
  return replaces ? 'replaced' : 'otherwise';
}

const WRITES: readonly Outcome[] = ['moved', 'older', 'replaced'];

const isUnreadable = (error: unknown) => error instanceof NotSaved && error.code.includes('document');

async function moveOne(
  { kind, entries }: Moved,
  id: string,
  from: Store,
  to: Store,
  replaces: boolean,
): Promise<Outcome> {
  try {
    const here = await from.read(kind, id);
    // Erased since it was listed.
    if (here === undefined) return 'same';
    const first = outcomeOf(kind, here, await to.read(kind, id), replaces);
    if (!WRITES.includes(first)) return first;
    if (entries) {
      // It names every maker whom the document names, before the document does.
      const entry = await from.read(entries, id);
      if (entry === undefined) await to.erase(entries, id);
      else await to.change(entries, id, () => ({ keep: entry, tell: undefined }));
    }
    return await to.change(ofAnyLength(kind), id, (there) => {
      const outcome = outcomeOf(kind, here, there, replaces);
      return { keep: WRITES.includes(outcome) ? here : undefined, tell: outcome };
    });
  } catch (error) {
    if (isUnreadable(error)) return 'unreadable';
    throw error;
  }
}

/** Moves everything; what was moved before, whole or in part, is found and left. Rejects as the stores do. */
export async function moveAll(
  from: Store,
  to: Store,
  { replaces, progress, stop }: Moving,
): Promise<MovedKind[]> {
  const moved: MovedKind[] = [];
  for (const one of MOVED) {
    const { folder } = one.kind;
    const ids = (await from.ids(one.kind)).sort();
    const counts = Object.fromEntries(OUTCOMES.map((outcome) => [outcome, 0])) as Record<Outcome, number>;
    const left: { id: string; outcome: Outcome }[] = [];
    let done = 0;
    progress(folder, 0, ids.length);
    await inParts(ids, stop, async (id) => {
      const outcome = await moveOne(one, id, from, to, replaces);
      // What is made from other documents may be otherwise.
      const stays = outcome === 'unreadable' || (outcome === 'otherwise' && one.kind.derived !== true);
      counts[outcome]++;
      if (stays) left.push({ id, outcome });
      progress(folder, ++done, ids.length);
    });
    moved.push({ folder, all: ids.length, counts, left });
  }
  return moved;
}

export interface Compared {
  readonly equal: number;
  /** Those that are not the same, as folder/id. */
  readonly unequal: readonly string[];
}

/** Compares every document here with that there. */
export async function compareAll(
  from: Store,
  to: Store,
  { progress, stop }: Pick<Moving, 'progress' | 'stop'>,
): Promise<Compared> {
  let equal = 0;
  const unequal: string[] = [];
  for (const { kind } of MOVED) {
    const ids = await from.ids(kind);
    let done = 0;
    await inParts(ids, stop, async (id) => {
      const [here, there] = await Promise.all(
        [from, to].map((store) =>
          store.read(kind, id).catch((error: unknown) => {
            if (isUnreadable(error)) return undefined;
            throw error;
          }),
        ),
      );
      if (here !== undefined && textOf(here) === textOf(there)) equal++;
      else unequal.push(`${kind.folder}/${id}`);
      progress(kind.folder, ++done, ids.length);
    });
  }
  return { equal, unequal: unequal.sort() };
}
