/** What becomes of a document by the changes that wait for it: each on what the one before left, all of them written together. */
import { changedInto, headIn, isGrowing, lengthOf, type GrowingKind } from '../grown.ts';
import { frozen, type Changed, type Kind } from '../store.ts';
import { toJsonb } from './jsonb.ts';
import type { Written } from './statements.ts';

/** A document as it stood in the database when somebody last looked. */
export interface Kept {
  /** The mark of the change that wrote it; undefined where there is none. */
  readonly version: string | undefined;
  readonly list: string | undefined;
  /** Frozen: everybody who reads is handed the same one. Undefined where there is none, or none that can be read. */
  readonly doc: object | undefined;
  /** How long it is in all, about, in characters. */
  readonly size: number;
  /** True where its row is of an earlier version: it is written from the beginning before anything is added. */
  readonly older: boolean;
  /** What is bad about its row, where the copy before it serves. */
  readonly bad?: string;
}

/** A change that waits; undefined erases the document. */
export interface Waiting {
  readonly change: ((doc: unknown) => Changed<unknown, unknown>) | undefined;
  readonly resolve: (tell: unknown) => void;
  readonly reject: (error: unknown) => void;
}

/** What is to be written, and who is told what then. */
export interface Draft {
  readonly doc: object | undefined;
  /** Undefined where nothing is to be written. */
  readonly write: Omit<Written, 'folder' | 'id' | 'mark'> | undefined;
  readonly forgets: boolean;
  readonly size: number;
  readonly answer: () => void;
}

const textOf = (doc: unknown) => (doc === undefined ? '' : JSON.stringify(doc));

/** Throws what the kind says of a text that is longer than it may be and than it was. */
function within({ most }: Kind<unknown>, text: string, before: string): string {
  if (most && text.length > most.characters && text.length > before.length) throw most.refuse(text.length);
  return text;
}

/** Lets changes be made one after the other; what one throws is its own. */
function inTurn(
  together: readonly Waiting[],
  make: (changed: Changed<unknown, unknown> | undefined, handed: unknown) => void,
  hand: () => unknown,
): { readonly forgets: boolean; readonly answer: () => void } {
  let forgets = false;
  const answers: (() => void)[] = [];
  for (const { change, resolve, reject } of together) {
    try {
      const handed = hand();
      const changed = change?.(handed);
      make(changed, handed);
      forgets ||= changed?.forgets ?? false;
      answers.push(() => resolve(changed?.tell));
    } catch (error) {
      answers.push(() => reject(error));
    }
  }
  return {
    forgets,
    answer: () => {
      for (const tell of answers) tell();
    },
  };
}

const previousOf = (kind: Kind<unknown>, forgets: boolean, headChanged: boolean): Written['previous'] =>
  forgets || kind.derived ? 'none' : headChanged ? 'head' : 'stays';

/** A document that is written as one. */
function whole(kind: Kind<unknown>, kept: Kept, together: readonly Waiting[]): Draft {
  let doc: object | undefined = kept.doc;
  let text: string | undefined;
  const before = kept.doc;
  const inTurnOf = inTurn(
    together,
    (changed, handed) => {
      const keep = changed?.keep;
      if (keep === undefined || (kind.builtBeside === true && keep === handed)) return;
      const checked = kind.schema.parse(keep) as object;
      if (kind.builtBeside && !kind.most) doc = checked;
      else {
        const was = (text ??= textOf(doc));
        text = within(kind, textOf(checked), was);
        if (text !== was) doc = checked;
      }
    },
    // A copy of one's own, so that nobody else sees what is done to it.
    () => (kind.builtBeside || doc === undefined ? doc : JSON.parse((text ??= textOf(doc)))),
  );
  const { forgets, answer } = inTurnOf;
  const changed = doc !== before && textOf(doc) !== textOf(before);
  const head = changed ? toJsonb(frozen(doc)) : undefined;
  return {
    doc: changed ? doc : before,
    write:
      changed || (forgets && kept.version !== undefined)
        ? {
            head,
            previous: previousOf(kind, forgets, changed),
            anew: kept.version === undefined,
            entries: 0,
            added: undefined,
            addedCount: 0,
          }
        : undefined,
    forgets,
    size: head?.length ?? kept.size,
    answer,
  };
}

/** A document whose list only grows. */
function growing(kind: GrowingKind<object>, kept: Kept, together: readonly Waiting[]): Draft {
  let doc = kept.doc;
  const became = new Set<'same' | 'grown' | 'otherwise' | 'anew'>();
  const added: object[] = [];
  const { forgets, answer } = inTurn(
    together,
    (changed) => {
      if (changed === undefined) return;
      const into = changedInto(kind, doc, changed as Changed<object, unknown>);
      doc = into.doc;
      became.add(into.is);
      if (into.is === 'grown') added.push(...into.added);
    },
    () => doc,
  );
  const touched = became.has('grown') || became.has('otherwise') || became.has('anew');
  if (doc === undefined || (!touched && !(forgets && kept.version !== undefined)))
    return { doc, write: undefined, forgets, size: kept.size, answer };
  const all = touched && (became.has('anew') || kept.older || kept.version === undefined);
  const entries = all ? (doc as { readonly events: readonly object[] }).events : added;
  const head = all || became.has('otherwise') ? toJsonb(headIn(doc)) : undefined;
  const text = entries.length === 0 ? undefined : toJsonb(entries);
  const grown = (head?.length ?? 0) + (text?.length ?? 0);
  return {
    doc,
    write: {
      head,
      previous: previousOf(kind, forgets, head !== undefined),
      anew: all,
      entries: lengthOf(doc),
      added: text,
      addedCount: entries.length,
    },
    forgets,
    size: all ? grown : kept.size + grown,
    answer,
  };
}

/** Nothing is told before it is written: the draft says whom to answer, once it is. */
export const drafted = (kind: Kind<unknown>, kept: Kept, together: readonly Waiting[]): Draft =>
  isGrowing(kind) ? growing(kind as GrowingKind<object>, kept, together) : whole(kind, kept, together);
