/**
 * Documents with a list that is only ever added to, as they were at one length of it. Adding to one makes another that shares
 * the list; nobody who holds the first sees it longer. The list is made into an array when somebody first asks for it, so that
 * adding one entry to fifty thousand looks at one.
 */
import type * as z from 'zod';
import { frozen, type Changed, type Grows, type Kind } from './store.ts';

/** A kind whose documents grow. */
export type GrowingKind<T = unknown> = Kind<T> & { readonly grows: Grows };
export const isGrowing = <T>(kind: Kind<T>): kind is GrowingKind<T> => kind.grows !== undefined;

/** Entries in the order in which they were added: what stands here once stays. Two documents that share one begin alike. */
export interface Entries {
  readonly items: readonly unknown[];
}

interface Adding {
  readonly items: unknown[];
  /** The longest document that was made of it last. */
  latest?: object;
}

/** So many of the entries are a document's, and what it says beside them. */
interface Place {
  readonly head: Readonly<Record<string, unknown>>;
  readonly list: Adding;
  readonly length: number;
}

const places = new WeakMap<object, Place>();
/** Arrays that were handed out: a document with another head keeps the array it was handed. */
const handedOut = new WeakMap<object, Omit<Place, 'head'>>();
/** Entries that were checked already: they are never changed, so nobody need check them again. */
const checked = new WeakSet<object>();

export const isChecked = (entry: unknown): boolean =>
  typeof entry === 'object' && entry !== null && checked.has(entry);
export function noteChecked<T extends object>(entry: T): T {
  checked.add(entry);
  return entry;
}

/** An entry as it is kept: checked once and frozen. Throws what the schema throws. */
export function checkedEntry({ grows }: GrowingKind, entry: unknown): object {
  if (isChecked(entry)) return frozen(entry as object);
  return frozen(noteChecked((grows.item as z.ZodType<object>).parse(entry)));
}

function viewOf(name: string, head: Place['head'], list: Adding, length: number): object {
  let array: readonly unknown[] | undefined;
  const doc = Object.defineProperty({ ...head }, name, {
    enumerable: true,
    get() {
      if (array === undefined) {
        array = Object.freeze(list.items.slice(0, length));
        handedOut.set(array, { list, length });
      }
      return array;
    },
  });
  places.set(doc, { head, list, length });
  return Object.freeze(doc);
}

/** All of a document but its list. */
function headOf(name: string, doc: object): Record<string, unknown> {
  const head: Record<string, unknown> = {};
  for (const key of Object.keys(doc)) if (key !== name) head[key] = (doc as Record<string, unknown>)[key];
  return head;
}

function placeOf(name: string, doc: object): Place {
  const known = places.get(doc);
  if (known) return known;
  const array = (doc as Record<string, unknown>)[name] as readonly unknown[];
  const { list, length } = handedOut.get(array) ?? { list: { items: [...array] }, length: array.length };
  const place = { head: headOf(name, doc), list, length };
  if (Object.isFrozen(doc)) places.set(doc, place);
  return place;
}

const LIST = 'events' satisfies Grows['list'];

/** The entries that a document is of; the same object as long as nothing but adding happened to it. */
export const entriesOf = (doc: object): Entries => placeOf(LIST, doc).list;
/** How many there are in it. */
export const lengthOf = (doc: object): number => placeOf(LIST, doc).length;
/** What it says beside them. */
export const headIn = (doc: object): Readonly<Record<string, unknown>> => placeOf(LIST, doc).head;

/** The first of them, without making them into an array. */
export const firstOf = <Entry>(doc: { readonly [LIST]: readonly Entry[] }): Entry | undefined =>
  placeOf(LIST, doc).list.items[0] as Entry | undefined;

/** Those of its entries that come after the first `known`. */
export function entriesSince(doc: object, known: number): readonly unknown[] {
  const { list, length } = placeOf(LIST, doc);
  return list.items.slice(known, length);
}

/** A document of what was read: its head, and its entries, each of them checked. */
export const docOf = <T>(kind: GrowingKind<T>, head: object, entries: readonly unknown[]): T =>
  viewOf(
    kind.grows.list,
    frozen(headOf(kind.grows.list, head)),
    { items: [...entries] },
    entries.length,
  ) as T;

/**
 * A document with more entries, each of them checked. Where these were added to its list already it is the same document as
 * then; where others were, which came to nothing, it has a list of its own from here on.
 */
export function grown<T extends object>(doc: T, more: readonly unknown[]): T {
  const { head, list, length } = placeOf(LIST, doc);
  if (more.length === 0) return doc;
  const added = list.items.length - length;
  const latest = list.latest && places.get(list.latest);
  if (added === 0) list.items.push(...more);
  else if (added < more.length || more.some((entry, index) => list.items[length + index] !== entry))
    return grown(viewOf(LIST, head, { items: list.items.slice(0, length) }, length) as T, more);
  else if (latest?.head === head && latest.length === length + more.length) return list.latest as T;
  const after = viewOf(LIST, head, list, length + more.length);
  list.latest = after;
  return after as T;
}

/** What a change of a document makes of it. */
export type Into<T> =
  | { readonly is: 'same'; readonly doc: T | undefined }
  /** Entries were added, and nothing else. */
  | { readonly is: 'grown'; readonly doc: T; readonly added: readonly object[] }
  /** What it says beside its list is otherwise. */
  | { readonly is: 'otherwise'; readonly doc: T }
  /** All of it is to be written. */
  | { readonly is: 'anew'; readonly doc: T };

/** Throws what the schemas throw: nothing that does not fit is kept. */
export function changedInto<T extends object>(
  kind: GrowingKind<T>,
  before: T | undefined,
  { keep, add = [] }: Pick<Changed<T, unknown>, 'keep' | 'add'>,
): Into<T> {
  const { list: name, head: headSchema } = kind.grows;
  if (add.length > 0) {
    if (before === undefined || (keep !== undefined && keep !== before))
      throw new Error(`${kind.folder}: entries are added to a document as it is`);
    const added = add.map((entry) => checkedEntry(kind, entry));
    return { is: 'grown', doc: grown(before, added), added };
  }
  if (keep === undefined || keep === before) return { is: 'same', doc: before };
  const place = placeOf(name, keep);
  const was = before && placeOf(name, before);
  if (was && place.list === was.list && place.length === was.length) {
    const head = frozen(headSchema.parse(place.head) as Record<string, unknown>);
    return { is: 'otherwise', doc: viewOf(name, head, was.list, was.length) as T };
  }
  const whole = kind.schema.parse(keep) as unknown as Record<string, unknown>;
  const entries = (whole[name] as readonly unknown[]).map((entry) => checkedEntry(kind, entry));
  return { is: 'anew', doc: docOf(kind, whole, entries) };
}
