/**
 * How much may be saved: of one maker, of one group blanket, in one server. Far more than anybody needs, and little enough
 * that nobody can make the others wait. A limit is said at the change that would pass it; what is beyond it already, from
 * before there was one, stays and can be made less.
 */
import { looksLike } from '../core/base/nearest-name.ts';
import { Problem } from '../core/base/problem.ts';
import { count, num } from '../core/base/reader.ts';
import type { Entry } from './catalogue.ts';
import type { MakerDoc } from './schema.ts';

/** What a maker may keep in all her blankets and motifs together, the removed ones that can still come back among them. */
export const MOST_OF_MAKER = {
  /** Places of layouts. */
  cells: 10_000,
  /** Runs of rows in one colour. */
  stripes: 4_000,
  /** Colours of blankets. */
  colours: 400,
  /** Changes of her progress that are remembered; the oldest go first. */
  history: 3_000,
  /** Characters of her document; readings of the scale are limited motif by motif. */
  size: 500_000,
} as const satisfies Record<string, number>;

/**
 * Different colours in one motif, in all of one blanket, and in its kinds together, each kind's counted for itself: what
 * every question about its yarn goes through one by one.
 */
export const MOST_COLOURS_OF_MOTIF = 40;
export const MOST_COLOURS_OF_BLANKET = 60;
export const MOST_COLOURS_OF_KINDS = 260;

/** Opened by one maker within so many days, and in all of one server. */
export const MOST_OPENED = 10;
export const OPENED_WITHIN_DAYS = 30;
export const MOST_OF_SERVER = 500;

/** Events of one group blanket; the last of them are for whoever runs it, so that nobody can shut it for good. */
export const MOST_EVENTS = 6_000;
export const KEPT_FOR_ORGANISER = 600;
/** Events that one maker may cause in one group blanket: a thousand motifs, each pledged and handed in by itself. */
export const MOST_EVENTS_OF_MAKER = 2_000;
/**
 * Characters of all that happened to one group blanket or make-along: what nobody who makes one comes near, and little enough to be read whole
 * in a moment. Of these as well the last are for whoever runs it.
 */
export const MOST_CHARACTERS = 6_000_000;
export const CHARACTERS_FOR_ORGANISER = 600_000;
/** Makers who take part in one group blanket at once. */
export const MOST_MEMBERS = 400;

const MS_PER_DAY = 86_400_000;
const HINT = 'Remove something that is finished or not needed any more; an export keeps it for you.';

/** The most different colours that any one motif, any one blanket with its motifs, and all kinds of any one blanket have. */
function mostColours(doc: MakerDoc): { ofMotif: number; ofBlanket: number; ofKinds: number } {
  // Names that are the same whatever their capitals count once.
  const different = (names: readonly string[]) => new Set(names.map((name) => name.toLowerCase()));
  const named = new Map(
    doc.motifs.map(({ name, runs }) => [
      name.toLowerCase(),
      different([...new Set(runs.map(({ colour }) => colour))]),
    ]),
  );
  const most = { ofMotif: 0, ofBlanket: 0, ofKinds: 0 };
  for (const { size } of named.values()) most.ofMotif = Math.max(most.ofMotif, size);
  for (const { kinds, yarns } of doc.blankets) {
    const all = different(yarns.map(({ colour }) => colour));
    let counted = 0;
    for (const kind of kinds) {
      const colours = named.get(kind.toLowerCase());
      counted += colours?.size ?? 0;
      for (const colour of colours ?? []) all.add(colour);
    }
    most.ofBlanket = Math.max(most.ofBlanket, all.size);
    most.ofKinds = Math.max(most.ofKinds, counted);
  }
  return most;
}

type Saved = Record<
  'cells' | 'stripes' | 'colours' | 'history' | 'ofMotif' | 'ofBlanket' | 'ofKinds',
  number
>;

/** How much of each is kept. */
export function savedOf(doc: MakerDoc): Saved {
  const blankets = [...doc.blankets];
  const motifs = [...doc.motifs];
  for (const one of doc.bin) {
    if (one.kind !== 'motif') blankets.push(one.thing);
    else motifs.push(one.thing);
  }
  const sum = <T>(things: readonly T[], of: (thing: T) => number) =>
    things.reduce((all, thing) => all + of(thing), 0);
  return {
    cells: sum(blankets, ({ layout }) => layout.length),
    stripes: sum(motifs, ({ runs }) => runs.length),
    colours: sum(blankets, ({ yarns }) => yarns.length),
    history: sum(doc.progress, ({ history }) => history.length),
    ...mostColours(doc),
  };
}

const WORDS = {
  cells: { option: 'columns', one: 'place', of: 'in all your blankets together' },
  stripes: { option: 'colours', one: 'stripe', of: 'in all your motifs together' },
  colours: { option: 'colour', one: 'colour', of: 'in all your blankets together' },
} as const satisfies Partial<Record<keyof Saved, Record<'option' | 'one' | 'of', string>>>;

/**
 * Lets go of what goes by itself (the oldest of what was removed, the oldest of her history) where there is too much, and
 * throws a Problem where there is still too much of something, and more than `before`.
 */
export function keepWithin(doc: MakerDoc, before: Saved | undefined): void {
  let saved = savedOf(doc);
  const isOver = () =>
    (['cells', 'stripes', 'colours'] as const).some((what) => saved[what] > MOST_OF_MAKER[what]);
  // The latest that was removed stays: it is what somebody wants back.
  while (isOver() && doc.bin.length > 1) {
    // What was before a change goes before what was removed.
    const before = doc.bin.findIndex(({ kind }) => kind === 'blanket-before');
    doc.bin.splice(Math.max(0, before), 1);
    saved = savedOf(doc);
  }
  if (saved.history > MOST_OF_MAKER.history) trimHistory(doc, saved.history - MOST_OF_MAKER.history);
  for (const what of ['cells', 'stripes', 'colours'] as const) {
    const most = MOST_OF_MAKER[what];
    if (saved[what] <= most || saved[what] <= (before?.[what] ?? 0)) continue;
    const { option, one, of } = WORDS[what];
    throw new Problem(
      `too-many-${what}`,
      `That would come to ${num(saved[what])} ${one}s ${of}; ${num(most)} can be kept.`,
      { option, hint: HINT, facts: { most, asked: saved[what] } },
    );
  }
  keepColoursWithin(saved, before);
}

/** Throws a Problem where one motif or one blanket has too many different colours, and more than any had before. */
function keepColoursWithin(saved: Saved, before: Saved | undefined): void {
  for (const [what, most, of] of [
    ['ofMotif', MOST_COLOURS_OF_MOTIF, 'one motif'],
    ['ofBlanket', MOST_COLOURS_OF_BLANKET, 'one blanket, its motifs’ among them'],
    ['ofKinds', MOST_COLOURS_OF_KINDS, 'all kinds of one blanket, each kind’s counted for itself'],
  ] as const) {
    if (saved[what] <= most || saved[what] <= (before?.[what] ?? 0)) continue;
    throw new Problem(
      'too-many-colours',
      `That would be ${num(saved[what])} different colours in ${of}; ${num(most)} can be kept.`,
      {
        option: what === 'ofMotif' ? 'colours' : 'kinds',
        hint: 'Call near shades by one name, or take fewer.',
        facts: { most, asked: saved[what] },
      },
    );
  }
}

/** Sums up the oldest changes of the longest histories. */
function trimHistory(doc: MakerDoc, tooMany: number): void {
  let left = tooMany;
  for (const progress of [...doc.progress].sort((a, b) => b.history.length - a.history.length)) {
    const drop = Math.min(left, Math.ceil(progress.history.length / 2));
    const last = progress.history[drop - 1];
    if (drop <= 0 || !last) return;
    doc.progress[doc.progress.indexOf(progress)] = {
      ...progress,
      before: { row: last.row, made: last.made },
      history: progress.history.slice(drop),
    };
    left -= drop;
  }
}

/** The Problem for a document that would become longer than it may be. */
export const tooMuchSaved = (size: number): Problem =>
  new Problem(
    'too-much-saved',
    `What is saved of you would come to ${num(Math.ceil(size / 1000))} thousand characters; ${num(MOST_OF_MAKER.size / 1000)} thousand can be kept.`,
    { hint: HINT, facts: { most: MOST_OF_MAKER.size, asked: size } },
  );

/** How much of one kind may be opened and may happen, and how it is called. */
export interface Limits {
  /** As people say it: `group blanket`. */
  readonly called: string;
  /** Said of one that is at hand: `blanket`. */
  readonly short: string;
  readonly code: string;
  readonly members: number;
  readonly events: number;
  /** The last of them, kept for whoever runs it. */
  readonly kept: number;
  readonly eventsOfMaker: number;
  /** Characters of all events, and the last of them, kept for whoever runs it. */
  readonly characters: number;
  readonly keptCharacters: number;
}

export const OF_GROUPS: Limits = {
  called: 'group blanket',
  short: 'blanket',
  code: 'group',
  members: MOST_MEMBERS,
  events: MOST_EVENTS,
  kept: KEPT_FOR_ORGANISER,
  eventsOfMaker: MOST_EVENTS_OF_MAKER,
  characters: MOST_CHARACTERS,
  keptCharacters: CHARACTERS_FOR_ORGANISER,
};

/** Events of one make-along: everybody is done with every part, stuck now and then. Events that one maker may cause in it. */
export const MOST_EVENTS_OF_ALONG = 8_000;
export const MOST_EVENTS_OF_LEARNER = 400;

/**
 * What is noted of posting the parts of one make-along: each is claimed and posted, a refused one tried again for months, and one that its
 * teacher takes back posted anew. Beyond that nothing more of it is posted.
 */
export const MOST_EVENTS_OF_POSTS = 1_600;

/** Throws a Problem where so much was noted of posting already. */
export function mayPost(noted: number): void {
  if (noted < MOST_EVENTS_OF_POSTS) return;
  throw new Problem(
    'too-many-posts',
    `Parts of this make-along were posted, or tried to be, so often that nothing more of it is posted.`,
    {
      hint: 'Look at its parts with everybody’s own numbers as before; another make-along can be opened for what is left.',
      facts: { most: MOST_EVENTS_OF_POSTS, noted },
    },
  );
}

export const OF_ALONGS: Limits = {
  called: 'make-along',
  short: 'make-along',
  code: 'along',
  members: MOST_MEMBERS,
  events: MOST_EVENTS_OF_ALONG,
  kept: KEPT_FOR_ORGANISER,
  eventsOfMaker: MOST_EVENTS_OF_LEARNER,
  characters: MOST_CHARACTERS,
  keptCharacters: CHARACTERS_FOR_ORGANISER,
};

/** Throws a Problem where a server has too many of them, one of a name that looks the same, or one maker opened too many of late. */
export function mayOpen(
  entries: readonly Entry[],
  { by, at, called: name }: { readonly by: string; readonly at: Date; readonly called: string },
  { called, code }: Pick<Limits, 'called' | 'code'>,
): void {
  // Pledges meant for one would land in the other.
  const alike = entries.find((entry) => looksLike(entry.name, name));
  if (alike)
    throw new Problem(
      `${code}-name-looks-taken`,
      `There is a ${called} here whose name looks the same, ${alike.name}.`,
      {
        option: 'name',
        hint: 'Give this one a name that nobody takes for the other.',
      },
    );
  if (entries.length >= MOST_OF_SERVER)
    throw new Problem(
      `too-many-${code}s`,
      `There are ${num(entries.length)} ${called}s here, and no more can be kept.`,
      { hint: 'Go on with one of those there are.', facts: { most: MOST_OF_SERVER } },
    );
  const since = at.getTime() - OPENED_WITHIN_DAYS * MS_PER_DAY;
  const hers = entries.filter(({ opener, opened }) => opener === by && Date.parse(opened) > since);
  if (hers.length >= MOST_OPENED)
    throw new Problem(
      `opened-too-many-${code}s`,
      `You have opened ${count(hers.length, called)} within ${count(OPENED_WITHIN_DAYS, 'day')}, as many as one maker can.`,
      {
        hint: 'Go on with one of those, or let somebody else open it.',
        facts: { most: MOST_OPENED, days: OPENED_WITHIN_DAYS },
      },
    );
}

/** What is to happen, and to what. */
export interface Happens {
  /** How many events there were, and how many more there would be. */
  readonly events: number;
  readonly happens: number;
  /** How many of those there were are by a maker. */
  readonly eventsBy: (maker: string) => number;
  /** How long all of it would be then, in characters. */
  readonly characters: number;
  /** Who take part, and how many more would. */
  readonly members: number;
  readonly joins: number;
  /** Whether whoever does it runs it. */
  readonly runs: boolean;
  readonly by: string;
}

/** Throws a Problem where too many would take part, or it has had too many events, or too many by one maker. */
export function mayHappen(
  { events: before, happens, eventsBy, characters, members, joins, runs, by }: Happens,
  { short, ...limits }: Limits,
): void {
  if (joins > 0 && members + joins > limits.members)
    throw new Problem(
      'too-many-members',
      `${count(members, 'maker')} take part in this ${short}, as many as can.`,
      { hint: 'Somebody who leaves makes room.', facts: { most: limits.members } },
    );
  const events = before + happens;
  const most = limits.events - (runs ? 0 : limits.kept);
  const long = characters > limits.characters - (runs ? 0 : limits.keptCharacters);
  if (events > most || long)
    throw new Problem(
      'too-many-events',
      `So much has happened to this ${short} (${count(before, 'thing')}) that no more can be kept of it.`,
      { hint: 'Whoever runs it can close it and open another one for what is left.', facts: { most } },
    );
  if (!runs && eventsBy(by) + happens > limits.eventsOfMaker)
    throw new Problem(
      'too-many-events-of-maker',
      `You have changed this ${short} ${count(limits.eventsOfMaker, 'time')}, as often as one maker can.`,
      { hint: 'Whoever runs it can go on for you.', facts: { most: limits.eventsOfMaker } },
    );
}
