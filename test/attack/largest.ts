/**
 * The largest that limits allow, saved and asked: for each question the lines that give it most to do. Invented data. Used
 * by the test that holds every answer to its share of the listening thread, and by the bench that names the slowest.
 */
import { readFileSync } from 'node:fs';
import { registry } from '../../commands/index.ts';
import type { Context } from '../../src/chat/context.ts';
import { ask } from '../../src/chat/ask.ts';
import { readLine, type RawOptions } from '../../src/chat/line.ts';
import { isRequired, metaOf } from '../../src/chat/options.ts';
import type { Route } from '../../src/chat/registry.ts';
import { MOST_COUNTS, MOST_KINDS, MOST_ROWS } from '../../src/core/base/limits.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { planRows, SHAPES } from '../../src/core/rows/index.ts';
import { planAlong } from '../../src/core/along/open.ts';
import { MOST_PARTS } from '../../src/core/along/propose.ts';
import { countLaid } from '../../src/core/blanket/layout.ts';
import { ALONG_VERSION, ALONGS, type AlongDoc } from '../../src/projects/along-schema.ts';
import { Alongs } from '../../src/projects/alongs.ts';
import { specOf } from '../../src/projects/blankets.ts';
import { Groups } from '../../src/projects/groups.ts';
import { GROUP_VERSION, GROUPS, type GroupDoc } from '../../src/projects/group-schema.ts';
import { MAKERS, Projects } from '../../src/projects/projects.ts';
import {
  KEPT_FOR_ORGANISER,
  MOST_COLOURS_OF_BLANKET,
  MOST_COLOURS_OF_KINDS,
  MOST_COLOURS_OF_MOTIF,
  MOST_EVENTS,
  MOST_EVENTS_OF_ALONG,
  MOST_OF_MAKER,
} from '../../src/projects/quotas.ts';
import {
  newMaker,
  type Blanket,
  type MakerDoc,
  type Motif,
  type Progress,
} from '../../src/projects/schema.ts';
import type { Kind, Store } from '../../src/projects/store.ts';
import { outgoing } from '../../src/rooms/discord/files.ts';
import { render, type Drawn } from '../../src/rooms/discord/render.ts';
import { serialOf } from '../../src/rooms/discord/buttons.ts';
import { askedAgain, personNamed } from '../../src/rooms/discord/typed.ts';

export interface Largest {
  /** Places of layouts, colour stretches and motifs that one maker has saved in all. */
  readonly cells: number;
  readonly stripes: number;
  readonly motifs: number;
  /** Events of a group blanket, and group blankets in the server. */
  readonly events: number;
  readonly groups: number;
  /** Events of a make-along. */
  readonly along: number;
}

/** As much of each as goes together into the documents: what room is left is history. */
export const LARGEST: Largest = {
  cells: 7_500,
  stripes: MOST_OF_MAKER.stripes,
  motifs: 100,
  events: MOST_EVENTS - KEPT_FOR_ORGANISER - 10,
  groups: 2,
  along: MOST_EVENTS_OF_ALONG - KEPT_FOR_ORGANISER - 10,
};

const COLUMNS = 50;
const ROWS = 50;
export const SERVER = '900000000000000001';
const CHANNEL = '900000000000000002';
/** A long season of a group blanket: so many take part. */
const MEMBERS = 400;
const NOW = new Date('2026-03-02T12:00:00Z');

const many = <T>(count: number, make: (index: number) => T): T[] =>
  Array.from({ length: count }, (_, n) => make(n));

/** A motif as large as there is, striped as often as it is to be. */
function motif(
  name: string,
  shape: Motif['shape'],
  stripes: number,
  colour: (stripe: number) => string,
): Motif {
  const rows = planRows(shape, { size: MOST_ROWS, ...(shape === 'flat' ? { otherSize: MOST_ROWS } : {}) })
    .rows.length;
  const runs = Math.max(1, Math.min(stripes, rows));
  return {
    name,
    shape,
    size: MOST_ROWS,
    ...(shape === 'flat' ? { otherSize: MOST_ROWS } : {}),
    stitch: 'hdc',
    hook: 5,
    gauge: { stitches: 13, rows: 10, over: 10 },
    runs: many(runs, (run) => ({
      colour: colour(run),
      rows: Math.floor(((run + 1) * rows) / runs) - Math.floor((run * rows) / runs),
    })),
    weight: 500,
    side: 90,
  };
}

function blanket(name: string, kinds: readonly string[], colours: readonly string[]): Blanket {
  return {
    name,
    kinds: [...kinds],
    columns: COLUMNS,
    rows: ROWS,
    layout: many(COLUMNS * ROWS, (cell) => ({ kind: (cell * 7) % kinds.length, turn: cell % 4 })),
    setting: 'rows',
    joining: { method: 'whip', colour: colours[0] ?? 'moss' },
    border: {
      rounds: many(30, (round) => ({
        stitch: 'hdc' as const,
        colour: colours[round % colours.length] ?? 'moss',
      })),
      corner: 3,
    },
    yarns: colours.slice(0, 60).map((colour) => ({ colour, ball: { m: 170, g: 100 }, price: 4.5, balls: 3 })),
    reserve: 10,
  };
}

export const BLANKET = 'largest blanket of all';

/** A maker whose motifs have as many stripes as there may be, each of a colour of its own or of a few. */
function maker(id: string, { cells, stripes, motifs }: Largest, colours: number): MakerDoc {
  const striped = Math.floor(stripes / motifs);
  const called = many(colours, (n) => `colour ${n}`);
  // As many colours in each kind of a blanket as all of them may have together; in the other motifs as one may have.
  const inOne = (n: number) =>
    n < MOST_KINDS ? Math.floor(MOST_COLOURS_OF_KINDS / MOST_KINDS) : MOST_COLOURS_OF_MOTIF;
  const made = many(motifs, (n) =>
    motif(
      `motif ${n}`,
      motifs <= MOST_KINDS ? 'diagonal' : (SHAPES[n % SHAPES.length] ?? 'diagonal'),
      striped,
      (stripe) => called[(7 * n + (stripe % inOne(n))) % colours] ?? 'moss',
    ),
  );
  const kinds = made.slice(0, MOST_KINDS).map(({ name }) => name);
  const blankets = many(Math.floor(cells / (COLUMNS * ROWS)), (n) =>
    blanket(n === 0 ? BLANKET : `blanket ${n}`, kinds, called),
  );
  const doc: MakerDoc = {
    ...newMaker(id, 'rowan'),
    motifs: made,
    blankets,
    current: { motif: 'motif 0', blanket: BLANKET },
    progress: kinds.map((motif) => ({ motif, blanket: BLANKET, row: 400, made: 20, history: [] })),
  };
  // What is left of her room is the history of her rows.
  const change = (n: number): Progress['history'][number] => ({
    at: new Date(NOW.getTime() - n * 3_600_000).toISOString(),
    did: 'row',
    row: n % 400,
    made: 0,
  });
  const left = MOST_OF_MAKER.size - JSON.stringify(doc).length - 1_000;
  const changes = Math.min(
    MOST_OF_MAKER.history,
    Math.floor(left / (JSON.stringify(change(399)).length + 1)),
  );
  if (changes < 0) throw new Error(`${id} has ${-left} characters more than can be kept`);
  const each = Math.floor(changes / kinds.length);
  return {
    ...doc,
    progress: doc.progress.map((one) => ({ ...one, history: many(each, (n) => change(each - n)) })),
  };
}

/** A group blanket with a long history: makers join, pledge, hand in; half is accepted. */
function group(name: string, doc: MakerDoc, events: number): GroupDoc {
  const saved = doc.blankets[0]!;
  const at = (n: number) => new Date(NOW.getTime() - (events - n) * 60_000).toISOString();
  const all: Record<string, unknown>[] = [];
  const add = (event: object, by = 'rowan') => {
    if (all.length < events) all.push({ ...event, by, at: at(all.length), once: `press ${all.length}` });
  };
  const kinds = saved.kinds.map((kind, index) => ({
    ...doc.motifs.find((one) => one.name === kind)!,
    quota: saved.layout.filter((cell) => cell.kind === index).length,
    spares: 0,
  }));
  const parts = { ...saved, setting: undefined };
  add({
    did: 'opened',
    name: 'rowan',
    plan: { ...parts, name, kinds, side: 90, tolerance: 3, joinable: 'anyone', closes: '2031-05-31' },
  });
  const members = many(
    Math.min(MEMBERS, Math.floor(events / 10)),
    (n) => `7000000000000000${String(n).padStart(3, '0')}`,
  );
  for (const [n, id] of members.entries())
    add({ did: 'joined', maker: id, name: `maker ${n}`, perWeek: 2, colours: [] }, id);
  let piece = 0;
  const open = kinds.map(({ quota }) => quota);
  for (let turn = 0; all.length < events; turn += 1) {
    const id = members[turn % members.length] ?? 'rowan';
    const kind = turn % kinds.length;
    if ((open[kind] ?? 0) > 1 && turn % 3 === 0 && piece < 1_200) {
      open[kind] = (open[kind] ?? 0) - 1;
      add({ did: 'pledged', maker: id, kind, motifs: 1 }, id);
      add({ did: 'handed-in', maker: id, kind, motifs: 1, side: 89 + (turn % 5) / 2 }, id);
      piece += 1;
      if (turn % 2 === 0) add({ did: 'accepted', pieces: [piece] });
    } else {
      add({ did: 'pledged', maker: id, kind, motifs: 1 }, id);
      add({ did: 'released', maker: id, kind, motifs: 1 }, id);
    }
  }
  return { version: GROUP_VERSION, id: '', server: SERVER, edition: 0, events: all } as unknown as GroupDoc;
}

/** A make-along of the largest blanket in as many parts as there may be: all take part, are done with parts, stuck at others. */
function along(name: string, doc: MakerDoc, events: number): AlongDoc {
  const saved = doc.blankets[0]!;
  const at = (n: number) => new Date(NOW.getTime() - (events - n) * 60_000).toISOString();
  const all: Record<string, unknown>[] = [];
  const add = (event: object, by: string = MAKERS_OF_MUCH.deep) => {
    if (all.length < events) all.push({ ...event, by, at: at(all.length), once: `press ${all.length}` });
  };
  const day = (n: number) =>
    new Date(Date.parse('2026-01-01') + Math.floor(n / 2) * 86_400_000).toISOString().slice(0, 10);
  const works = ['swatch', 'first square', 'squares', 'ends', 'laying out', 'joining', 'border', 'tea'];
  const plan = planAlong({
    pattern: {
      ...specOf(doc, saved),
      columns: saved.columns,
      rows: saved.rows,
      counts: countLaid(saved.layout, saved.kinds.length),
      setting: saved.setting,
    },
    name,
    starts: undefined,
    every: 1,
    shares: undefined,
    list: many(MOST_PARTS, (n) => `${day(n)} ${works[n % works.length] ?? 'tea'} ${n}`).join(';'),
    hour: 9,
    zone: 'Europe/Berlin',
    today: '2026-01-01',
  });
  add({ did: 'opened', name: 'rowan', plan });
  const members = [
    ...Object.values(MAKERS_OF_MUCH),
    ...many(MEMBERS - 2, (n) => `7000000000000000${String(n).padStart(3, '0')}`),
  ];
  for (const [n, id] of members.entries())
    add(
      {
        did: 'joined',
        name: `maker ${n}`,
        gauge: { stitches: 12 + (n % 9), rows: 9 + (n % 7), over: 10 },
        ball: { m: 170, g: 100 },
        colours: many(40, (colour) => ({ of: `colour ${colour}`, hers: `own ${colour} of ${n}` })),
        width: 4_000 + n,
        height: 4_000,
        named: true,
      },
      id,
    );
  for (let turn = 0; all.length < events; turn += 1) {
    const id = members[turn % members.length]!;
    const part = 1 + (Math.floor(turn / members.length) % MOST_PARTS);
    if (turn % 3 === 0)
      add(
        {
          did: 'stuck',
          part,
          row: 1 + (turn % 397),
          slip: 'increase-missed',
          counts: [3, 5],
          words: 'x'.repeat(200),
          help: true,
        },
        id,
      );
    else add({ did: 'done', part }, id);
  }
  return {
    version: ALONG_VERSION,
    id: Alongs.idOf(SERVER, name),
    server: SERVER,
    channel: CHANNEL,
    edition: 0,
    events: all,
  } as unknown as AlongDoc;
}

/** Makers who have saved as much as there may be, each in another way. */
export const MAKERS_OF_MUCH = { deep: '100000000000000001', many: '100000000000000002' } as const;

/** Saves it all. */
export async function saveLargest(store: Store, largest: Largest): Promise<Projects> {
  const projects = new Projects(store);
  const deep = maker(MAKERS_OF_MUCH.deep, { ...largest, motifs: MOST_KINDS }, MOST_COLOURS_OF_BLANKET);
  const wide = maker(MAKERS_OF_MUCH.many, largest, 60);
  for (const doc of [deep, wide]) await store.change(MAKERS, doc.id, () => ({ keep: doc, tell: undefined }));
  for (let n = 0; n < largest.groups; n += 1) {
    const name = n === 0 ? BLANKET : `group ${n}`;
    const doc = {
      ...group(name, n === 0 ? deep : small(deep), n === 0 ? largest.events : 20),
      id: Groups.idOf(SERVER, name),
    };
    if (n === 0) Object.assign(doc, { channel: CHANNEL });
    await store.change(GROUPS, doc.id, () => ({ keep: doc, tell: undefined }));
  }
  const made = along(BLANKET, deep, largest.along);
  await store.change(ALONGS, made.id, () => ({ keep: made, tell: undefined }));
  return projects;
}

/** The same blanket in plain motifs: most groups have no stripes. */
const small = (doc: MakerDoc): MakerDoc => ({
  ...doc,
  motifs: doc.motifs.map((one) => ({ ...one, runs: [] })),
});

export interface Asked {
  readonly route: Route;
  readonly options: RawOptions;
  readonly by: string;
}

/** Values that give an option most to do. */
function heaviest(route: Route, name: string, schema: Route['question']['options'][string]): string[] {
  const { kind, choices, max, maxLength, example, says } = metaOf(schema);
  if (kind === 'file' || kind === 'photo') return [];
  if (
    name === 'name' ||
    name === 'blanket' ||
    (/blanket/i.test(says) && kind === 'text' && !/border/.test(name))
  ) {
    if (route.command.name === 'motif' || (route.command.name === 'progress' && name === 'motif'))
      return ['motif 0'];
    if (/^(together|host|blanket|along)$/.test(route.command.name) || name === 'blanket') return [BLANKET];
  }
  if (name === 'motif' && kind === 'text') return ['motif 0'];
  if (name === 'kind') return ['motif 0'];
  if (name === 'kinds') return [many(MOST_KINDS, (n) => `motif ${n}`).join(', ')];
  if (name === 'counts')
    return [many(MOST_COUNTS, (n) => n + 1).join(' '), many(300, (n) => n + 1 + (n % 7)).join(' ')];
  if (choices) return choices.map(({ value }) => value);
  if (kind === 'integer' || kind === 'number') return [String(max ?? 10_000), '400', '1'];
  if (kind === 'length') return ['100m', '1cm'];
  if (kind === 'weight') return ['100kg'];
  if (kind === 'gauge') return ['100x100 over 1cm', '1x1 over 10cm'];
  if (kind === 'stitches') return ['hdc '.repeat(40).trim()];
  const room = Math.min(maxLength ?? 100, 2_000);
  return [
    example,
    `${example} `
      .repeat(Math.ceil(room / (example.length + 1)))
      .slice(0, room)
      .trim(),
    '9'.repeat(Math.min(room, 400)),
  ];
}

/** Lines for every question: the least that it needs, each option at its most, all of them at their most. */
export function lines(routes: readonly Route[] = registry.routes): Asked[] {
  return routes.flatMap((route) => {
    const { question, path } = route;
    const example = readLine(`/${path} ${question.example}`).options;
    const needed: Record<string, string> = {};
    const most: Record<string, string> = {};
    const variants: RawOptions[] = [];
    for (const [name, schema] of Object.entries(question.options)) {
      const [first = example[name]] = heaviest(route, name, schema);
      if (isRequired(schema)) needed[name] = first ?? '';
      if (first !== undefined) most[name] = first;
    }
    variants.push(needed, { ...example, ...pick(most, ['name', 'blanket', 'motif', 'kind']) }, most);
    for (const [name, schema] of Object.entries(question.options))
      for (const value of heaviest(route, name, schema)) {
        variants.push({ ...needed, [name]: value });
        variants.push({ ...most, [name]: value });
      }
    const seen = new Set<string>();
    return variants
      .filter((options) => {
        const key = JSON.stringify(options);
        return !seen.has(key) && seen.add(key);
      })
      .flatMap((options) => Object.values(MAKERS_OF_MUCH).map((by) => ({ route, options, by })));
  });
}

const pick = (from: Record<string, string>, names: readonly string[]) =>
  Object.fromEntries(Object.entries(from).filter(([name]) => names.includes(name)));

let asked = 0;
/** Asks as the Discord room does, all but the platform and the pictures' encoder; the message, false where it was refused. */
export async function answerAsDiscord(
  projects: Projects,
  { route, options, by }: Asked,
  toPng: (svg: string) => Promise<Uint8Array> = () => Promise.resolve(new Uint8Array()),
): Promise<Drawn | false> {
  asked += 1;
  const id = String(800_000_000_000_000_000n + BigInt(asked));
  const { settings } = await projects.maker(by, 'rowan');
  const context: Context = {
    maker: { id: by, name: 'rowan' },
    reader: settings,
    place: { server: SERVER, channel: CHANNEL, manager: true },
    now: NOW,
    once: id,
    whois: personNamed,
    projects,
  };
  try {
    const shown = await ask(route, options, context);
    const { notes } = await outgoing(shown.files, {
      makers: { toPng, toPdf: () => Promise.resolve(new Uint8Array()) },
      fault: String,
    });
    return render(shown, {
      again: askedAgain(route, options, context.reader),
      asker: by,
      serial: serialOf(id),
      open: true,
      sharable: true,
      notes,
    });
  } catch (error) {
    if (error instanceof Problem) return false;
    throw error;
  }
}

const SCHEDULED = '/proc/thread-self/schedstat';
let counts = true;
/** ms for which this thread was at work; by the clock where the system does not say. */
function worked(): number {
  if (counts)
    try {
      return Number(readFileSync(SCHEDULED, 'utf8').split(' ')[0]) / 1e6;
    } catch {
      counts = false;
    }
  return performance.now();
}

/** The longest time, in ms of this thread's work, for which one thing kept it while `run` ran: between two turns of its loop. */
export async function longestHold(run: () => Promise<unknown>): Promise<number> {
  let longest = 0;
  let last = worked();
  let going = true;
  const turn = () => {
    const now = worked();
    longest = Math.max(longest, now - last);
    last = now;
    if (going) setImmediate(turn);
  };
  setImmediate(turn);
  await new Promise((begun) => setImmediate(begun));
  last = worked();
  longest = 0;
  try {
    await run();
  } finally {
    longest = Math.max(longest, worked() - last);
    going = false;
  }
  return longest;
}

/** What one reading and writing of a fixed document took on the machine on which the bound was set, in ms. */
const USUAL_MS = 8;
/** How many times slower this machine is just now than that one; at least 1. */
export function slowness(): number {
  const doc = many(4_000, (n) => ({ name: `motif ${n}`, runs: [n, n + 1, { colour: 'moss', rows: n % 7 }] }));
  const times = many(7, () => {
    const from = worked();
    for (let n = 0; n < 3; n += 1) JSON.parse(JSON.stringify(doc));
    return worked() - from;
  }).sort((a, b) => a - b);
  return Math.max(1, (times[3] ?? USUAL_MS) / USUAL_MS);
}

export interface Held {
  readonly path: string;
  /** ms in one piece: the middle of several where the first time it was long. */
  readonly ms: number;
  readonly options: RawOptions;
}

/** Puts a document back where it is another than it is now. */
async function keptOf<T>(store: Store, kind: Kind<T>, id: string): Promise<() => Promise<void>> {
  const was = await store.read(kind, id);
  let last = was;
  return async () => {
    if ((await store.read(kind, id)) === last) return;
    await store.change(kind, id, () => ({ keep: was, tell: undefined }));
    last = await store.read(kind, id);
  };
}

const AGAIN = 4;
/** How long each of these lines keeps the thread; what it changed is put back. Anything over `over` ms is asked again. */
export async function holds(projects: Projects, all: readonly Asked[], over: number): Promise<Held[]> {
  const { store } = projects;
  const kept = [
    await keptOf(store, MAKERS, MAKERS_OF_MUCH.deep),
    await keptOf(store, MAKERS, MAKERS_OF_MUCH.many),
    await keptOf(store, GROUPS, Groups.idOf(SERVER, BLANKET)),
    await keptOf(store, ALONGS, Alongs.idOf(SERVER, BLANKET)),
  ];
  const putBack = async () => {
    for (const back of kept) await back();
  };
  const found: Held[] = [];
  for (const asked of all) {
    const once = async () => {
      const ms = await longestHold(() => answerAsDiscord(projects, asked));
      if (asked.route.question.changes === true) await putBack();
      return ms;
    };
    const times = [await once()];
    if ((times[0] ?? 0) > over) for (let n = 0; n < AGAIN; n += 1) times.push(await once());
    times.sort((a, b) => a - b);
    found.push({ path: asked.route.path, ms: times[times.length >> 1] ?? 0, options: asked.options });
  }
  return found.sort((a, b) => b.ms - a.ms);
}
