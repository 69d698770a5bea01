/**
 * Which group blankets (or make-alongs) there are and whom each names, without reading them: one small entry for each. An entry names every
 * maker whom its document names, perhaps more: it is written before a new one turns up there and after one is taken out. It
 * is made anew from the document where it is missing or damaged.
 */
import { defined } from '../core/base/defined.ts';
import * as z from 'zod';
import { lazily } from '../core/base/lazily.ts';
import type { Stamp } from '../core/base/history.ts';
import type { EventDoc } from './chronicles.ts';
import { firstOf } from './grown.ts';
import { NotSaved, Unreadable } from './not-saved.ts';
import type { Kind, Store } from './store.ts';

const entrySchema = lazily(() =>
  z.object({
    version: z.literal(1),
    id: z.string(),
    name: z.string(),
    server: z.string().exactOptional(),
    channel: z.string().exactOptional(),
    /** The channel that it came from into a thread. */
    from: z.string().exactOptional(),
    /** Who opened it, unless she is forgotten, and when. */
    opener: z.string().exactOptional(),
    opened: z.iso.datetime(),
    makers: z.array(z.string()),
  }),
);
export type Entry = z.infer<ReturnType<typeof entrySchema>>;

/** The entries of one kind of documents, in a folder of their own. */
export const entriesIn = (folder: string, called: string): Kind<Entry> => ({
  folder,
  called: `The entry of a ${called}`,
  version: 1,
  get schema() {
    return entrySchema();
  },
  migrations: {},
  builtBeside: true,
  derived: true,
});

/** What the catalogue must know of the documents that it is of. */
export interface Catalogued<Doc> {
  readonly docs: Kind<Doc>;
  readonly entries: Kind<Entry>;
  nameOf(doc: Doc): string | undefined;
  /** The makers whom an event names. */
  readonly idsIn: (event: never) => readonly string[];
}

/** So many entries are read at once. */
const AT_ONCE = 32;

function addTo(of: Map<string, Set<string>>, id: string, makers: readonly string[]): void {
  for (const maker of makers) {
    const ids = of.get(maker) ?? new Set();
    of.set(maker, ids.add(id));
  }
}

export class Catalogue<Doc extends EventDoc<Stamp>> {
  /** Which documents name each maker, perhaps more, as long as nobody else can have changed any. */
  private named:
    | { readonly alone: unknown; readonly of: Map<string, Set<string>>; readonly read: Promise<void> }
    | undefined;

  constructor(
    private readonly store: Store,
    private readonly kind: Catalogued<Doc>,
  ) {}

  /** The entry of a document; made anew where there is none. Undefined where there is no document, or it cannot be read. */
  async entry(id: string): Promise<Entry | undefined> {
    return (await this.store.read(this.kind.entries, id)) ?? (await this.madeAnew(id));
  }

  /** Entries of all documents whose ids begin so, those that cannot be read among them where an entry is left. */
  async entries(prefix = ''): Promise<Entry[]> {
    const ids = await this.store.ids(this.kind.docs, prefix);
    const found: Entry[] = [];
    for (let from = 0; from < ids.length; from += AT_ONCE) {
      const some = await Promise.all(ids.slice(from, from + AT_ONCE).map((id) => this.entry(id)));
      for (const entry of some) if (entry) found.push(entry);
    }
    return found;
  }

  /** Entries of the documents that name a maker. */
  async naming(maker: string): Promise<Entry[]> {
    const ids = await this.idsNaming(maker);
    const found = ids ? await Promise.all(ids.map((id) => this.entry(id))) : await this.entries();
    return found.flatMap((entry) => (entry?.makers.includes(maker) === true ? [entry] : []));
  }

  /** The documents that name a maker, perhaps more; undefined where others may have changed some of which this process knows nothing. */
  private async idsNaming(maker: string): Promise<string[] | undefined> {
    const { alone } = this.store;
    if (alone === undefined) return undefined;
    if (this.named?.alone !== alone) {
      // Read once. Whoever is noted meanwhile is added there as well.
      const of = new Map<string, Set<string>>();
      this.named = { alone, of, read: this.readAll(of) };
    }
    const { named } = this;
    try {
      await named.read;
    } catch (error) {
      if (this.named === named) this.named = undefined;
      throw error;
    }
    return [...(named.of.get(maker) ?? [])];
  }

  private async readAll(of: Map<string, Set<string>>): Promise<void> {
    for (const { id, makers } of await this.entries()) addTo(of, id, makers);
  }

  /** Sees to it that an entry names so many makers, before the document does. Returns all that it names. */
  async note(doc: Doc, makers: readonly string[]): Promise<ReadonlySet<string>> {
    return this.store.change(this.kind.entries, doc.id, (entry) => {
      const all = new Set([...(entry?.makers ?? []), ...makers]);
      const stays =
        all.size === entry?.makers.length && entry.channel === doc.channel && entry.from === doc.thread?.from;
      const keep = stays ? entry : { ...this.entryOf(doc), makers: [...all] };
      if (this.named) addTo(this.named.of, doc.id, makers);
      return { keep, tell: all };
    });
  }

  /** Takes a maker out of an entry, after she was taken out of the document. */
  async forget(id: string, maker: string): Promise<void> {
    await this.store.change(this.kind.entries, id, (entry) => {
      if (!entry?.makers.includes(maker)) return { keep: undefined, tell: undefined };
      const { opener, ...rest } = entry;
      const keep = {
        ...rest,
        ...(opener === undefined || opener === maker ? {} : { opener }),
        makers: entry.makers.filter((one) => one !== maker),
      };
      return { keep, tell: undefined, forgets: true };
    });
  }

  private async madeAnew(id: string): Promise<Entry | undefined> {
    let doc: Doc | undefined;
    try {
      doc = await this.store.read(this.kind.docs, id);
    } catch (error) {
      // Whom it names is not known then; it stops nobody else.
      if (error instanceof Unreadable) return undefined;
      throw error;
    }
    if (!doc) return undefined;
    const makers = [...new Set(doc.events.flatMap(this.kind.idsIn as (event: Stamp) => readonly string[]))];
    // Where another process holds the folder it does without being written.
    await this.note(doc, makers).catch((error: unknown) => {
      if (!(error instanceof NotSaved)) throw error;
    });
    return { ...this.entryOf(doc), makers };
  }

  private entryOf(doc: Doc): Omit<Entry, 'makers'> {
    const first = firstOf(doc);
    return {
      version: 1,
      id: doc.id,
      name: this.kind.nameOf(doc) ?? doc.id,
      ...defined({ server: doc.server }),
      ...defined({ channel: doc.channel }),
      ...(doc.thread === undefined ? {} : { from: doc.thread.from }),
      ...(first === undefined ? {} : { opener: first.by }),
      opened: first?.at ?? new Date(0).toISOString(),
    };
  }
}
