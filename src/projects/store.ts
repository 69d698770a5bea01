/** Where documents are kept. Three stores stand behind this: files in a folder, a PostgreSQL, and memory for the tests. */
import type { z } from 'zod';
import type { Problem } from '../core/base/problem.ts';

/** A kind of document: its folder, its shape, and how to bring an older version up to date. */
export interface Kind<T> {
  readonly folder: string;
  /** What a document of it is, as the beginning of a sentence to whom it belongs: `What is saved of you`. */
  readonly called: string;
  /** The newest version; every document carries its own under `version`. */
  readonly version: number;
  readonly schema: z.ZodType<T>;
  /** Step by step: `migrations[1]` makes version 2 of version 1. */
  readonly migrations: Readonly<Record<number, (older: Record<string, unknown>) => Record<string, unknown>>>;
  /**
   * True where no change alters the document it is handed, but builds another beside it: then the store need not make a copy
   * for each change.
   */
  readonly builtBeside?: boolean;
  /**
   * Where each document has a list that is only added to: every entry of it is kept by itself, so that adding one costs the same
   * however many there are. Such a kind is built beside.
   */
  readonly grows?: Grows;
  /**
   * True where all that a document says is made from other documents: no copy is kept of it, and one that cannot be read is
   * taken for one that is not there.
   */
  readonly derived?: boolean;
  /** How long a document may be; a change that makes it longer is refused, one that leaves less than there was is not. */
  readonly most?: { readonly characters: number; readonly refuse: (characters: number) => Problem };
}

/** What of a document is a list that is only ever added to, and what is not. */
export interface Grows {
  readonly list: 'events';
  /** One entry of the list. */
  readonly item: z.ZodType;
  /** All of the document but the list. */
  readonly head: z.ZodType;
}

/** What a change comes to. */
export interface Changed<T, R> {
  /**
   * Undefined leaves everything as it was. Of a document that grows, what is handed back with the list that it was handed has
   * its list left as it is.
   */
  readonly keep: T | undefined;
  /** Entries that are added to the list of a document that grows; nothing else of it changes then. */
  readonly add?: readonly unknown[];
  readonly tell: R;
  /** True where what is not kept must be gone: no copy of the document as it was stays behind. */
  readonly forgets?: boolean;
}

export interface Store {
  /**
   * The document as it stands, or undefined. Everybody is handed the same one, frozen: a long one is not copied for each
   * question.
   * Rejects with Unreadable, a Problem, where it is there and cannot be read whole.
   */
  read<T>(kind: Kind<T>, id: string): Promise<T | undefined>;
  /**
   * Changes a document: `change` is handed a copy, unless the kind is built beside (undefined where there is none yet), and
   * returns what to keep and what to tell. When the promise resolves the change is on the disk. Whatever `change`
   * throws leaves the document as it was. One change at a time for each document, in the order of asking. Where several processes
   * share what is kept it is asked again with what another one wrote first: it does nothing but return what comes of what it is handed.
   * Rejects with NotSaved, a Problem, when the disk will not have it: nothing has changed then. A document that cannot be
   * read whole is never taken for one that is not there: such a change is rejected with Unreadable.
   */
  change<T, R>(kind: Kind<T>, id: string, change: (doc: T | undefined) => Changed<T, R>): Promise<R>;
  /** Removes a document and every copy of it, readable or not, in its turn among the changes. Rejects as `change` does. */
  erase(kind: Kind<unknown>, id: string): Promise<void>;
  /** The ids of all documents of a kind that begin so, those that cannot be read among them. */
  ids(kind: Kind<unknown>, prefix?: string): Promise<string[]>;
  /** True where other processes may change what is kept at any moment. */
  readonly inCommon?: boolean;
  /**
   * The same as long as nobody but this process can have changed anything since: what was learnt from documents then holds.
   * Undefined where others may.
   */
  readonly alone?: unknown;
  /** True while what is kept is out of reach of this process: what it asked last did not get through. */
  readonly away?: boolean;
  /** Changes that wait to be written. */
  readonly waiting: number;
  /** Documents that were asked for and cannot be read whole, until they are mended or erased. */
  readonly unreadable: number;
  /** Waits for what is being written and lets go of the folder. */
  close(): Promise<void>;
}

/** Ids stand in file names: anything else is refused before it touches a path. */
export const SAFE_ID = /^[a-z0-9][a-z0-9_.-]{0,99}$/;

/** The same, frozen to the ground. What is frozen already is taken to be so throughout. */
export function frozen<T>(value: T): T {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return value;
  for (const part of Object.values(value)) frozen(part);
  return Object.freeze(value);
}
