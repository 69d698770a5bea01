/** Which group blankets name a maker is known without reading them all; what cannot be read concerns only its own. */
import { appendFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { pledge } from '../../src/core/group/rules.ts';
import { realDisk, type Disk } from '../../src/projects/disk.ts';
import { FileStore } from '../../src/projects/file-store.ts';
import { GROUPS } from '../../src/projects/group-schema.ts';
import { Groups } from '../../src/projects/groups.ts';
import { Projects } from '../../src/projects/projects.ts';
import { newMaker } from '../../src/projects/schema.ts';
import { groupPlan } from '../core/group/plan.ts';
import { newFolder, tree } from './kinds.ts';
import { refused } from '../refused.ts';

const SERVER = '7';
const at = new Date('2026-03-02T12:00:00Z');
const asker = (id: string) => ({ id, name: `Maker ${id}`, manager: false, managed: true });

const open: FileStore[] = [];
afterEach(async () => {
  for (const store of open.splice(0)) await store.close();
});

/** What is read from the folder while it is asked, by name. */
const reads = new Set<string>();
async function projectsIn(folder: string): Promise<Projects> {
  const readText: Disk['readText'] = (path) => {
    reads.add(path.slice(folder.length + 1));
    return realDisk.readText(path);
  };
  const readdir = ((path: string) => {
    if (!path.includes('writing')) reads.add(`names in ${path.slice(folder.length + 1)}`);
    return realDisk.readdir(path);
  }) as unknown as Disk['readdir'];
  const store = await FileStore.open({ folder, stays: true, disk: { ...realDisk, readText, readdir } });
  open.push(store);
  return new Projects(store);
}

async function ended(): Promise<void> {
  for (const store of open.splice(0)) await store.close();
  reads.clear();
}

let presses = 0;
const press = (by: string) => ({ by, name: `Maker ${by}`, at, once: `press-${presses++}` });

/** Blankets of these names, each with its own members. */
async function season(folder: string, names: Readonly<Record<string, readonly string[]>>): Promise<void> {
  const { groups } = await projectsIn(folder);
  for (const [name, makers] of Object.entries(names)) {
    await groups.open(
      { server: SERVER, channel: '9' },
      { ...groupPlan({ quotas: [20], columns: 1 }), name },
      press(`runs-${makers[0] ?? ''}`),
    );
    for (const maker of makers)
      await groups.happen(Groups.idOf(SERVER, name), press(maker), (state) =>
        pledge(state, asker(maker), 0, 1),
      );
  }
  await ended();
}

const fileOf = (folder: string, name: string) => join(folder, 'groups', `${Groups.idOf(SERVER, name)}.json`);
const listOf = (path: string) => path.replace(/json$/, 'events.jsonl');
const eventsIn = (path: string) =>
  readFileSync(path, 'utf8')
    .trimEnd()
    .split('\n')
    .flatMap((line) => JSON.parse(line) as unknown);

describe('the catalogue of group blankets', () => {
  it('names whom each names, so that nothing is read but a maker’s own', async () => {
    const folder = newFolder();
    await season(folder, { Furrow: ['rowan'], Trellis: ['rowan', 'hazel'], Bean: ['wren'], Pea: ['wren'] });
    const projects = await projectsIn(folder);
    expect(await projects.saysElsewhere('hazel')).toEqual(['a part in the group blanket Trellis']);
    expect(Object.keys(await projects.collectElsewhere('hazel'))).toEqual(['groups']);
    await projects.eraseMaker('hazel');
    expect([...reads].filter((path) => path.startsWith('groups'))).toEqual([
      'groups/7.trellis.json',
      'groups/7.trellis.events.jsonl',
    ]);
    expect(await projects.saysElsewhere('hazel')).toEqual([]);
    expect(await projects.saysElsewhere('rowan')).toHaveLength(2);
    expect((await projects.groups.listed(SERVER)).map(({ name, channel }) => [name, channel])).toEqual(
      ['Bean', 'Furrow', 'Pea', 'Trellis'].map((name) => [name, '9']),
    );
  });

  it('is listed once, and afterwards only a maker’s own are read of her, whatever happens meanwhile', async () => {
    const folder = newFolder();
    await season(folder, { Furrow: ['rowan'], Trellis: ['rowan', 'hazel'], Bean: ['wren'], Pea: ['wren'] });
    const projects = await projectsIn(folder);
    await projects.saysElsewhere('wren');
    expect([...reads].sort()).toEqual(expect.arrayContaining(['names in alongs', 'names in groups']));
    reads.clear();
    expect(await projects.saysElsewhere('hazel')).toEqual(['a part in the group blanket Trellis']);
    expect(await projects.saysElsewhere('nobody')).toEqual([]);
    expect((await projects.groups.listed(SERVER)).map(({ name }) => name)).toHaveLength(4);
    expect((await projects.groups.named(SERVER, 'Furrow'))?.state.members.has('rowan')).toBe(true);
    expect([...reads].filter((path) => /^(groups|catalogue|names)/.test(path))).toEqual([
      'groups/7.trellis.json',
      'groups/7.trellis.events.jsonl',
      'groups/7.furrow.json',
      'groups/7.furrow.events.jsonl',
    ]);
    // Whoever comes, is forgotten, or opens another is known at once.
    await projects.groups.happen(Groups.idOf(SERVER, 'Bean'), press('hazel'), (state) =>
      pledge(state, asker('hazel'), 0, 1),
    );
    await projects.groups.open(
      { server: SERVER },
      { ...groupPlan({ quotas: [3], columns: 1 }), name: 'Sorrel' },
      press('hazel'),
    );
    await projects.groups.forget('wren');
    expect((await projects.saysElsewhere('hazel')).toSorted()).toEqual([
      'a part in the group blanket Bean',
      'a part in the group blanket Trellis',
      expect.stringContaining('the running of the group blanket Sorrel'),
    ]);
    expect(await projects.saysElsewhere('wren')).toEqual([]);
    expect((await projects.groups.listed(SERVER)).map(({ name }) => name)).toContain('Sorrel');
    await projects.store.erase(GROUPS, Groups.idOf(SERVER, 'Sorrel'));
    expect(await projects.store.ids(GROUPS, `${SERVER}.`)).toHaveLength(4);
    // What was moved aside of whoever is forgotten is looked for, and nothing else.
    expect([...reads].filter((path) => /^names in (groups|catalogue)$/.test(path))).toEqual([]);
  });

  it.each<[string, (folder: string) => void]>([
    ['is missing', (folder) => rmSync(join(folder, 'catalogue'), { recursive: true })],
    ['lacks an entry', (folder) => rmSync(join(folder, 'catalogue/7.trellis.json'))],
    [
      'has an entry that is cut short',
      (folder) => writeFileSync(join(folder, 'catalogue/7.trellis.json'), '{"vers'),
    ],
    [
      'has an entry of something else',
      (folder) => writeFileSync(join(folder, 'catalogue/7.trellis.json'), '{"version":1}'),
    ],
    [
      'has an entry of a newer version',
      (folder) => writeFileSync(join(folder, 'catalogue/7.trellis.json'), '{"version":9}'),
    ],
    [
      'knows a blanket that is gone',
      (folder) =>
        writeFileSync(
          join(folder, 'catalogue/7.gone.json'),
          readFileSync(join(folder, 'catalogue/7.bean.json')),
        ),
    ],
  ])('is made anew from the blankets where it %s', async (_what, spoil) => {
    const folder = newFolder();
    await season(folder, { Furrow: ['rowan'], Trellis: ['rowan', 'hazel'], Bean: ['wren'] });
    const before = JSON.parse(readFileSync(join(folder, 'catalogue/7.trellis.json'), 'utf8')) as {
      makers: string[];
    };
    spoil(folder);
    const projects = await projectsIn(folder);
    for (const [maker, parts] of [
      ['hazel', 1],
      ['rowan', 2],
      ['wren', 1],
      ['runs-rowan', 2],
      ['nobody', 0],
    ] as const)
      expect(await projects.saysElsewhere(maker)).toHaveLength(parts);
    const after = JSON.parse(readFileSync(join(folder, 'catalogue/7.trellis.json'), 'utf8')) as {
      makers: string[];
    };
    expect({ ...after, makers: after.makers.sort() }).toEqual({ ...before, makers: before.makers.sort() });
    await projects.eraseMaker('hazel');
    await ended();
    for (const path of tree(folder)) expect(readFileSync(join(folder, path), 'utf8')).not.toMatch(/hazel/);
  });

  it('learns of whom a blanket names that was put there by hand, at its next change', async () => {
    const folder = newFolder();
    await season(folder, { Trellis: ['rowan'] });
    const list = listOf(fileOf(folder, 'Trellis'));
    writeFileSync(list, readFileSync(list, 'utf8').replaceAll('rowan', 'linden'));
    const projects = await projectsIn(folder);
    await projects.groups.happen(Groups.idOf(SERVER, 'Trellis'), press('wren'), (state) =>
      pledge(state, asker('wren'), 0, 1),
    );
    expect(await projects.saysElsewhere('linden')).toHaveLength(1);
    expect(await projects.saysElsewhere('rowan')).toEqual([]);
  });
});

describe.each<[string, string, (path: string) => void]>([
  [
    'damaged',
    'damaged-document',
    (path) =>
      [path, path.replace(/([^/]+)$/, 'previous/$1')].forEach((file) =>
        writeFileSync(file, '{"version":1,"na'),
      ),
  ],
  ['of a newer version', 'newer-document', (path) => writeFileSync(path, '{"version":99}')],
  [
    'with a history that cannot be',
    'history-broken',
    (path) => {
      const last = eventsIn(listOf(path)).at(-1) as object;
      appendFileSync(listOf(path), `${JSON.stringify({ ...last, did: 'accepted', pieces: [400] })}\n`);
    },
  ],
])('a group blanket that is %s', (_what, code, spoil) => {
  const spoilt = async () => {
    const folder = newFolder();
    await season(folder, { Trellis: ['rowan', 'hazel'], Bean: ['wren', 'rowan'] });
    spoil(fileOf(folder, 'Trellis'));
    return { folder, projects: await projectsIn(folder) };
  };

  it('concerns its own members, and nobody else', async () => {
    const { projects } = await spoilt();
    expect(await projects.saysElsewhere('wren')).toEqual(['a part in the group blanket Bean']);
    expect(JSON.stringify(await projects.collectElsewhere('wren'))).not.toContain('trellis');
    expect(await projects.eraseMaker('wren')).toEqual({
      removed: ['a part in the group blanket Bean'],
      left: [],
    });
    expect((await projects.groups.of(SERVER)).map(({ state }) => state.plan.name)).toEqual(['Bean']);
    expect(await projects.groups.unshown()).toEqual(['7.bean']);
    // Hers are told: what there is, that it cannot be read, and what erasing does not reach.
    expect(await projects.saysElsewhere('rowan')).toEqual([
      'a part in the group blanket Bean',
      'a part in the group blanket Trellis, which cannot be read now',
    ]);
    expect(JSON.stringify(await projects.collectElsewhere('rowan'))).toContain('unreadable');
    const { removed, left } = await projects.eraseMaker('rowan');
    expect(removed).toEqual(['a part in the group blanket Bean']);
    expect(left).toEqual([expect.stringMatching(/Trellis.*whoever runs this has the file/)]);
  });

  it('keeps its name: nobody opens another in its place', async () => {
    const { folder, projects } = await spoilt();
    const before = readFileSync(fileOf(folder, 'Trellis'), 'utf8');
    const again = projects.groups.open(
      { server: SERVER },
      { ...groupPlan({ quotas: [1], columns: 1 }), name: 'trellis' },
      press('wren'),
    );
    await expect(again).rejects.toMatchObject({ code: 'group-name-taken', option: 'name' });
    await expect(projects.groups.named(SERVER, 'Trellis')).rejects.toThrow(refused(code));
    expect(readFileSync(fileOf(folder, 'Trellis'), 'utf8')).toBe(before);
  });
});

it('a group blanket of the earlier version is read whole, and its members are known', async () => {
  const folder = newFolder();
  mkdirSync(join(folder, 'groups'));
  const old = readFileSync(new URL('fixtures/group-version-1.json', import.meta.url), 'utf8');
  writeFileSync(join(folder, 'groups/here.allotment.json'), old);
  const projects = await projectsIn(folder);
  const { state, doc } = (await projects.groups.named(undefined, 'Allotment'))!;
  const { events } = JSON.parse(old) as { events: unknown[] };
  expect(doc.events).toEqual(events);
  expect(state.tally).toEqual([
    { pledged: 2, handedIn: 1, accepted: 1 },
    { pledged: 1, handedIn: 0, accepted: 0 },
  ]);
  expect(state.organiser).toBe('rowan');
  expect(await projects.saysElsewhere('rowan')).toEqual([
    expect.stringContaining('the running of the group blanket Allotment'),
  ]);
  expect(await projects.saysElsewhere('hazel')).toEqual(['a part in the group blanket Allotment']);
  // Read, it stays as it was; changed, it is of the version that older programs leave alone.
  expect(readFileSync(join(folder, 'groups/here.allotment.json'), 'utf8')).toBe(old);
  await projects.groups.happen('here.allotment', press('hazel'), (now) => pledge(now, asker('hazel'), 0, 1));
  const kept = JSON.parse(readFileSync(join(folder, 'groups/here.allotment.json'), 'utf8')) as {
    version: number;
  };
  expect(kept.version).toBe(6);
  expect(kept).not.toHaveProperty('events');
  const kinds = eventsIn(join(folder, 'groups/here.allotment.events.jsonl'));
  expect(kinds.slice(0, events.length)).toEqual(events);
  expect(kinds).toHaveLength(events.length + 1);
  // The copy before is the old one, whole.
  expect(readFileSync(join(folder, 'groups/previous/here.allotment.json'), 'utf8')).toBe(old);
});

it('a maker’s document of the earlier version is read whole', async () => {
  const folder = newFolder();
  mkdirSync(join(folder, 'makers'));
  const old = readFileSync(new URL('fixtures/maker-version-1.json', import.meta.url), 'utf8');
  writeFileSync(join(folder, 'makers/ines.json'), old);
  const projects = await projectsIn(folder);
  // What a motif weighs was read once, in whole grams as far as anybody knows.
  const { motifs, settings, ...rest } = JSON.parse(old) as {
    motifs: { weight?: number }[];
    settings: { answers: string };
  };
  const weighed = motifs.map((motif) =>
    motif.weight === undefined
      ? motif
      : { ...motif, weighings: [{ weight: motif.weight, motifs: 1, step: 1 }] },
  );
  expect(weighed.filter((motif) => 'weighings' in motif)).toHaveLength(1);
  // “Everyone” stood there for all who had not chosen.
  expect(settings.answers).toBe('everyone');
  expect(await projects.maker('ines', 'Ines')).toEqual({
    ...rest,
    version: 4,
    settings: { units: 'imperial', terms: 'UK' },
    motifs: weighed,
  });
});

it('a maker’s document of version 2 keeps that she alone sees her answers', async () => {
  const folder = newFolder();
  mkdirSync(join(folder, 'makers'));
  const old = {
    ...newMaker('ines', 'Ines'),
    version: 2,
    settings: { units: 'metric', terms: 'US', answers: 'me' },
  };
  writeFileSync(join(folder, 'makers/ines.json'), JSON.stringify(old));
  const projects = await projectsIn(folder);
  expect(await projects.settings('ines')).toEqual({ units: 'metric', terms: 'US', answers: 'me' });
});

it('a maker’s document of version 3 is read as it is', async () => {
  const folder = newFolder();
  mkdirSync(join(folder, 'makers'));
  const motif = { name: 'furrow', shape: 'diagonal', size: 12, stitch: 'hdc', runs: [] };
  const old = { ...newMaker('ines', 'Ines'), version: 3, motifs: [motif] };
  writeFileSync(join(folder, 'makers/ines.json'), JSON.stringify(old));
  const projects = await projectsIn(folder);
  expect(await projects.maker('ines', 'Ines')).toEqual({ ...old, version: 4 });
});

it.each([4, 5])(
  'a group blanket of version %i, from before its events had a file, is read as it is',
  async (version) => {
    const folder = newFolder();
    await season(folder, { Throw: ['m1'] });
    const id = Groups.idOf(SERVER, 'Throw');
    const file = join(folder, 'groups', `${id}.json`);
    const events = eventsIn(listOf(file));
    const now = { ...(JSON.parse(readFileSync(file, 'utf8')) as Record<string, unknown>), events };
    writeFileSync(file, JSON.stringify({ ...now, version }));
    rmSync(listOf(file));
    const projects = await projectsIn(folder);
    expect(await projects.groups.read(id)).toEqual({ ...now, version: 6 });
  },
);
