/**
 * Which group blankets there are and whom each names, without reading them: one small entry for each. An entry names every
 * maker whom its blanket names, perhaps more: it is written before a new one turns up there and after one is taken out. It
 * is made anew from the blanket where it is missing or damaged.
 */
import * as z from 'zod';
import { idsIn } from './group-forgetting.ts';
import { GROUPS, type GroupDoc } from './group-schema.ts';
import { NotSaved, Unreadable } from './not-saved.ts';
import type { Kind, Store } from './store.ts';

const entrySchema = z.object({
  version: z.literal(1),
  id: z.string(),
  name: z.string(),
  server: z.string().exactOptional(),
  channel: z.string().exactOptional(),
  /** Who opened it, unless she is forgotten, and when. */
  opener: z.string().exactOptional(),
  opened: z.iso.datetime(),
  makers: z.array(z.string()),
});
export type Entry = z.infer<typeof entrySchema>;

export const ENTRIES: Kind<Entry> = {
  folder: 'catalogue',
  called: 'The entry of a group blanket',
  version: 1,
  schema: entrySchema,
  migrations: {},
  builtBeside: true,
  derived: true,
};

/** So many entries are read at once. */
const AT_ONCE = 32;

/** Everybody whom a group's events name. */
export const makersIn = (doc: GroupDoc): Set<string> => new Set(doc.events.flatMap(idsIn));

export class Catalogue {
  constructor(private readonly store: Store) {}

  /** The entry of a blanket; made anew where there is none. Undefined where there is no blanket, or it cannot be read. */
  async entry(id: string): Promise<Entry | undefined> {
    return (await this.store.read(ENTRIES, id)) ?? (await this.madeAnew(id));
  }

  /** Entries of all blankets whose ids begin so, those that cannot be read among them where an entry is left. */
  async entries(prefix = ''): Promise<Entry[]> {
    const ids = await this.store.ids(GROUPS, prefix);
    const found: Entry[] = [];
    for (let from = 0; from < ids.length; from += AT_ONCE) {
      const some = await Promise.all(ids.slice(from, from + AT_ONCE).map((id) => this.entry(id)));
      for (const entry of some) if (entry) found.push(entry);
    }
    return found;
  }

  /** Entries of the blankets that name a maker. */
  async naming(maker: string): Promise<Entry[]> {
    return (await this.entries()).filter(({ makers }) => makers.includes(maker));
  }

  /** Sees to it that an entry names so many makers, before the blanket does. Returns all that it names. */
  async note(doc: GroupDoc, makers: Iterable<string>): Promise<ReadonlySet<string>> {
    return this.store.change(ENTRIES, doc.id, (entry) => {
      const all = new Set([...(entry?.makers ?? []), ...makers]);
      const stays = entry && all.size === entry.makers.length && entry.channel === doc.channel;
      const keep = stays ? entry : { ...entryOf(doc), makers: [...all] };
      return { keep, tell: all };
    });
  }

  /** Takes a maker out of an entry, after she was taken out of the blanket. */
  async forget(id: string, maker: string): Promise<void> {
    await this.store.change(ENTRIES, id, (entry) => {
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
    let doc: GroupDoc | undefined;
    try {
      doc = await this.store.read(GROUPS, id);
    } catch (error) {
      // Whom it names is not known then; it stops nobody else.
      if (error instanceof Unreadable) return undefined;
      throw error;
    }
    if (!doc) return undefined;
    const makers = makersIn(doc);
    // Where another process holds the folder it does without being written.
    await this.note(doc, makers).catch((error: unknown) => {
      if (!(error instanceof NotSaved)) throw error;
    });
    return { ...entryOf(doc), makers: [...makers] };
  }
}

function entryOf(doc: GroupDoc): Omit<Entry, 'makers'> {
  const [first] = doc.events;
  return {
    version: 1,
    id: doc.id,
    name: first?.did === 'opened' ? first.plan.name : doc.id,
    ...(doc.server === undefined ? {} : { server: doc.server }),
    ...(doc.channel === undefined ? {} : { channel: doc.channel }),
    ...(first === undefined ? {} : { opener: first.by }),
    opened: first?.at ?? new Date(0).toISOString(),
  };
}
