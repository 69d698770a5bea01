/** What commands ask of the saved things. */
import type { Elsewhere, Forgotten } from './elsewhere.ts';
import { Alongs } from './alongs.ts';
import { Groups } from './groups.ts';
import { namesHer } from './forgetting.ts';
import { LatestAnswers } from './latest-answers.ts';
import { Unreadable } from './not-saved.ts';
import { keepWithin, MOST_OF_MAKER, savedOf, tooMuchSaved } from './quotas.ts';
import {
  DEFAULT_SETTINGS,
  keepReadings,
  MAKER_VERSION,
  makerSchema,
  newMaker,
  unchosen,
  type MakerDoc,
  type Settings,
} from './schema.ts';
import { Servers } from './servers.ts';
import type { Kind, Store } from './store.ts';
import { Told } from './told.ts';

export const MAKERS: Kind<MakerDoc> = {
  folder: 'makers',
  called: 'What is saved of you',
  version: MAKER_VERSION,
  get schema() {
    return makerSchema();
  },
  migrations: { 1: keepReadings, 2: unchosen, 3: (older) => older },
  builtBeside: true,
  most: { characters: MOST_OF_MAKER.size, refuse: tooMuchSaved },
};

/** How many of a maker's latest changes are remembered, so that one that arrives twice is done once. */
const REMEMBERED_CHANGES = 50;

/** How many people of whom nothing is saved are remembered with their units. */
const MOST_NEW = 5000;

/** Her document to be changed: all of it can be but what stands in its lists, which is replaced. */
const draftOf = (saved: MakerDoc): MakerDoc => ({
  ...saved,
  settings: { ...saved.settings },
  motifs: [...saved.motifs],
  blankets: [...saved.blankets],
  current: { ...saved.current },
  progress: [...saved.progress],
  bin: [...saved.bin],
  done: [...saved.done],
});

type Ways = Pick<Settings, 'units' | 'terms'>;
const DAY_MS = 24 * 60 * 60 * 1000;

export class Projects {
  private readonly elsewhere: Elsewhere[] = [];

  /** Blankets that groups make. */
  readonly groups: Groups;

  /** What the managers of servers chose for them. */
  readonly servers: Servers;

  /** What a class makes along with its teacher, everybody her own. */
  readonly alongs: Alongs;

  /** What cannot be asked again, for whoever wants to see its working. */
  readonly answers: LatestAnswers;

  /** Units and terms of people of whom nothing is saved yet, the latest last; whether they were told of them. */
  private readonly first = new Map<string, { readonly ways: Ways; told: boolean }>();

  /** When people were last told something of whom nothing is saved. */
  private readonly told: Told;

  constructor(readonly store: Store) {
    this.groups = new Groups(store);
    this.servers = new Servers(store);
    this.told = new Told(store);
    this.keepElsewhere(this.groups);
    this.alongs = new Alongs(store);
    this.keepElsewhere(this.alongs);
    this.keepElsewhere(this.told);
    this.answers = new LatestAnswers(store);
    this.keepElsewhere(this.answers);
  }

  /** Whatever else keeps something of a maker is named here, so that export and erasure reach it. */
  keepElsewhere(place: Elsewhere): void {
    this.elsewhere.push(place);
  }

  /**
   * Begins somebody of whom nothing is saved with these units and terms: they hold until she saves something, and are saved with it. What
   * comes back says once whether she is still to be told.
   */
  async beginWith(id: string, ways: Ways): Promise<() => boolean> {
    if (await this.knows(id).catch(() => true)) return () => false;
    const known = this.first.get(id) ?? { ways, told: false };
    this.first.delete(id);
    this.first.set(id, known);
    const [oldest] = this.first.keys();
    if (this.first.size > MOST_NEW && oldest !== undefined) this.first.delete(oldest);
    return () => {
      const untold = !known.told;
      known.told = true;
      return untold;
    };
  }

  private begun(id: string, name: string): MakerDoc {
    const doc = newMaker(id, name);
    return { ...doc, settings: { ...doc.settings, ...this.first.get(id)?.ways } };
  }

  /** A maker's document; a fresh one, not yet saved, where there is none. */
  async maker(id: string, name: string): Promise<MakerDoc> {
    return (await this.store.read(MAKERS, id)) ?? this.begun(id, name);
  }

  /** Her units, her terms, who sees her answers if she chose it; the usual ones where nothing is saved of her, or it cannot be read. */
  async settings(id: string): Promise<Settings> {
    const kept = await this.keptOf(id);
    return kept === undefined || kept instanceof Unreadable
      ? { ...DEFAULT_SETTINGS, ...this.first.get(id)?.ways }
      : kept.settings;
  }

  /** The same without what only this process knows of her: for what everybody sees, whichever process shows it. */
  async savedSettings(id: string): Promise<Settings> {
    const kept = await this.keptOf(id);
    return kept === undefined || kept instanceof Unreadable ? { ...DEFAULT_SETTINGS } : kept.settings;
  }

  /** Her document; why it cannot be read, where it is there and cannot be; undefined where nothing is saved of her. */
  async keptOf(id: string): Promise<MakerDoc | Unreadable | undefined> {
    try {
      return await this.store.read(MAKERS, id);
    } catch (error) {
      if (error instanceof Unreadable) return error;
      throw error;
    }
  }

  /** Whether anything is saved of her. */
  async knows(id: string): Promise<boolean> {
    return (await this.store.read(MAKERS, id)) !== undefined;
  }

  /** Whether anything is saved of her, or she is named in the group blanket or the make-along of these ids. */
  async isKnown(
    id: string,
    where: { readonly board?: string | undefined; readonly along?: string | undefined },
  ): Promise<boolean> {
    if ((await this.keptOf(id)) !== undefined) return true;
    const { board, along } = where;
    if (board !== undefined && (await this.groups.mayName(board, id))) return true;
    return along !== undefined && (await this.alongs.mayName(along, id));
  }

  /**
   * Changes a maker's document: `change` works on a draft, in whose lists things are put, left out and replaced but never altered, and
   * returns what to tell; whatever it throws leaves everything as it was. Resolves when it is on the disk.
   */
  async changeMaker<R>(id: string, name: string, change: (doc: MakerDoc) => R): Promise<R> {
    return this.store.change(MAKERS, id, (saved) => {
      const doc = saved ? draftOf(saved) : this.begun(id, name);
      const before = saved && savedOf(saved);
      const tell = change(doc);
      keepWithin(doc, before);
      return { keep: doc, tell };
    });
  }

  /**
   * The same for a press that may arrive twice: a change whose key (`context.once`) was done already changes nothing and
   * tells what was told then. What is told must be plain data, at most 4,000 characters as JSON. `doc` is the document as
   * it is on the disk then: an answer that looked it up anew could fail after the change is done.
   */
  async changeMakerOnce<R>(
    id: string,
    name: string,
    once: string,
    change: (doc: MakerDoc) => R,
  ): Promise<{ readonly tell: R; readonly again: boolean; readonly doc: MakerDoc }> {
    return this.changeMaker(id, name, (doc) => {
      const done = doc.done.find((earlier) => earlier.once === once);
      if (done) return { tell: JSON.parse(done.said) as R, again: true, doc };
      const tell = change(doc);
      doc.done = [...doc.done, { once, said: JSON.stringify(tell ?? null) }].slice(-REMEMBERED_CHANGES);
      return { tell, again: false, doc };
    });
  }

  /** How somebody may be told something now: not, if she would not have it or was told something within a day. */
  async mayTell(id: string, now: Date): Promise<'here' | 'privately' | 'not'> {
    const kept = await this.keptOf(id);
    if (kept instanceof Unreadable) return 'not';
    const lately = [kept?.told, await this.told.last(id)].some(
      (told) => told !== undefined && now.getTime() - Date.parse(told) < DAY_MS,
    );
    return lately ? 'not' : (kept?.settings.tell ?? 'here');
  }

  /** Notes that somebody was told something. Nothing is kept of her where she erased everything meanwhile. */
  async noteTold(id: string, now: Date): Promise<void> {
    if (!(await this.knows(id))) {
      if ((await this.groups.names(id)) || (await this.alongs.names(id))) await this.told.note(id, now);
      return;
    }
    await this.store.change(MAKERS, id, (doc) => ({
      keep: doc && { ...doc, told: now.toISOString() },
      tell: undefined,
    }));
  }

  /** What is kept of a maker outside her own document, in words. */
  async saysElsewhere(id: string): Promise<readonly string[]> {
    return (await Promise.all(this.elsewhere.map((place) => place.says(id)))).flat();
  }

  /** The same in full. */
  async collectElsewhere(id: string): Promise<Record<string, unknown>> {
    const parts = await Promise.all(this.elsewhere.map((place) => place.collect(id)));
    return Object.assign({}, ...parts) as Record<string, unknown>;
  }

  /** Every name under which she is saved, as far as it can be read. */
  private async namesOf(id: string): Promise<readonly string[]> {
    const kept = await this.keptOf(id);
    const own = kept === undefined || kept instanceof Unreadable ? [] : [kept.name];
    return [...own, ...(await this.groups.calls(id)), ...(await this.alongs.calls(id))];
  }

  /**
   * Removes everything that is kept of a maker, and says what else went and what could not be reached. Her own document goes
   * last, so that she can ask again if this breaks off.
   */
  async eraseMaker(id: string): Promise<Forgotten> {
    // As long as her names are known: asked again, this finds less of them.
    await this.answers.unname(namesHer(id, await this.namesOf(id)));
    const removed: string[] = [];
    const left: string[] = [];
    for (const place of this.elsewhere) {
      const forgotten = await place.forget(id);
      removed.push(...forgotten.removed);
      left.push(...forgotten.left);
    }
    await this.store.erase(MAKERS, id);
    this.first.delete(id);
    return { removed, left };
  }
}
