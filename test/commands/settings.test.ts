import { describe, expect, it } from 'vitest';
import { MAKERS, Projects } from '../../src/projects/projects.ts';
import { newMaker, type MakerDoc } from '../../src/projects/schema.ts';
import { atOneGo } from '../core/group/at-one-go.ts';
import { readExport, writeElsewhere, writeExport } from '../../src/projects/export.ts';
import { MemoryStore } from '../../src/projects/memory.ts';
import { asking } from '../asking.ts';

const moss = { name: 'Moss', shape: 'diagonal', size: 12, stitch: 'hdc', runs: [] } as const;
const throwOf = (kinds: string[]) => ({
  name: 'Allotment throw',
  kinds,
  columns: 2,
  rows: 1,
  layout: [
    { kind: 0, turn: 0 },
    { kind: 0, turn: 1 },
  ],
  setting: 'plain',
  joining: { method: 'whip' as const },
  border: { rounds: [], corner: 3 },
  yarns: [],
  reserve: 10,
});

const withThings = async (room: ReturnType<typeof asking>, id = 'rowan') =>
  room.projects.changeMaker(id, id, (doc) => {
    doc.motifs = [{ ...moss, runs: [] }];
    doc.blankets = [throwOf(['Moss'])];
    doc.current = { motif: 'Moss' };
  });

describe('/settings change', () => {
  it('answers from then on in the new ways, the very answer included', async () => {
    const room = asking();
    expect((await room.ask('rowan: /settings change units:imperial')).headline).toContain('imperial');
    expect((await room.ask('rowan: /settings show')).data.settings).toEqual({
      units: 'imperial',
      terms: 'US',
    });
    // Another maker's ways are her own.
    expect((await room.ask('hazel: /settings show')).data.settings.units).toBe('metric');
    await room.ask('rowan: /settings change terms:UK');
    expect((await room.ask('rowan: /settings show')).data.settings).toMatchObject({
      units: 'imperial',
      terms: 'UK',
    });
  });

  it('leaves who sees her answers unset until she says it, and again when she says so', async () => {
    const room = asking();
    const seen = async () => (await room.ask('/settings show')).data.settings.answers as unknown;
    // What she never chose is not told of.
    expect((await room.ask('/settings change terms:UK')).headline).toBe(
      'From now on: metric units, UK terms.',
    );
    expect(await seen()).toBeUndefined();
    await room.ask('/settings change answers:everyone');
    expect(await seen()).toBe('everyone');
    await room.ask('/settings change units:imperial');
    expect(await seen()).toBe('everyone');
    expect((await room.ask('/settings change answers:usual')).lines).toEqual([
      'Who sees your answers goes by the place again.',
    ]);
    expect(await seen()).toBeUndefined();
  });

  it('asks what to change where nothing is named', async () => {
    expect(await asking().ask('/settings change')).toMatchObject({ ok: false });
  });
});

describe('/settings server', () => {
  it('says in a terminal that there is no server, and keeps nothing', async () => {
    const room = asking();
    expect((await room.ask('/settings server')).headline).toContain('no server here');
    expect(await room.ask('/settings server craft:asker')).toMatchObject({
      ok: false,
      code: 'no-server-here',
    });
  });
});

describe('/settings export and import', () => {
  it('give everything back as it was, to whoever hands it in', async () => {
    const room = asking();
    await withThings(room);
    await room.ask('rowan: /settings change units:imperial answers:me');
    const before = await room.projects.maker('rowan', 'rowan');
    await room.ask('rowan: /settings export');
    await room.ask('rowan: /settings erase confirm:yes');
    expect(await room.projects.knows('rowan')).toBe(false);
    // Nothing is in its way, so it is taken at once.
    expect(await room.ask('rowan: /settings import file:loopwright-export.json')).toMatchObject({
      ok: true,
      data: { imported: true },
    });
    expect(await room.projects.maker('rowan', 'rowan')).toEqual(before);
    // Handed in by somebody else it becomes hers.
    await room.ask('hazel: /settings import file:loopwright-export.json');
    expect(await room.projects.maker('hazel', 'hazel')).toEqual({ ...before, id: 'hazel', name: 'hazel' });
  });

  it('ask before they replace anything', async () => {
    const room = asking();
    await withThings(room);
    await room.ask('rowan: /settings export');
    await room.projects.changeMaker('rowan', 'rowan', (doc) => {
      doc.blankets = [];
    });
    const first = await room.ask('rowan: /settings import file:loopwright-export.json');
    expect(first).toMatchObject({ ok: true, data: { imported: false } });
    expect(first.lines?.join(' ')).toContain('1 blanket');
    expect((await room.projects.maker('rowan', 'rowan')).blankets).toEqual([]);
    await room.ask('rowan: /settings import file:loopwright-export.json replace:yes');
    expect((await room.projects.maker('rowan', 'rowan')).blankets).toHaveLength(1);
  });

  const good = (): MakerDoc => ({
    ...newMaker('rowan', 'Rowan'),
    motifs: [{ ...moss, runs: [] }],
    blankets: [throwOf(['Moss'])],
  });
  // eslint-disable-next-line @typescript-eslint/no-explicit-any -- taken apart in ways that no type allows
  const file = (change: (doc: any) => void) => {
    const doc = JSON.parse(writeExport(good()));
    change(doc);
    return JSON.stringify(doc);
  };

  it.each<[string, string, RegExp]>([
    ['nothing', '', /not JSON/],
    ['no JSON', '{"format":', /not JSON/],
    ['deep nesting', '['.repeat(200_000), /not JSON/],
    ['another JSON', '{"name":"left-pad","version":1}', /not an export/],
    ['null', 'null', /not an export/],
    ['a list', '[1,2]', /not an export/],
    ['no version', file((doc) => delete doc['version']), /no version/],
    ['a newer version', file((doc) => (doc['version'] = 99)), /version 99, newer/],
    ['a negative size', file((doc) => (doc['motifs'][0].size = -3)), /motifs\.0\.size/],
    ['a name of 5,000', file((doc) => (doc['motifs'][0].name = 'x'.repeat(5000))), /motifs\.0\.name/],
    ['1e308 for a weight', file((doc) => (doc['motifs'][0].weight = '1e308')), /motifs\.0\.weight/],
    [
      'a weight of 1e308',
      file((doc) => (doc['motifs'][0].weight = 1e308)),
      /motifs\[1\]\.weight: .*not a weight/,
    ],
    [
      'a weight beyond the craft',
      file((doc) => (doc['motifs'][0].weight = 100_001)),
      /motifs\[1\]\.weight: .*100 kg/,
    ],
    ['a side of nothing', file((doc) => (doc['motifs'][0].side = 1e-9)), /motifs\[1\]\.side/],
    ['a hook that nobody makes', file((doc) => (doc['motifs'][0].hook = 300)), /motifs\[1\]\.hook: No hook/],
    [
      'a gauge that cannot be crocheted',
      file((doc) => (doc['motifs'][0].gauge = { stitches: 1e6, over: 10 })),
      /motifs\[1\]\.gauge/,
    ],
    [
      'a ball of no yarn',
      file((doc) => (doc['blankets'][0].yarns = [{ colour: 'moss', ball: { m: 1, g: 100_000 } }])),
      /blankets\[1\]\.yarns\[1\]\.ball/,
    ],
    [
      'a price of no money',
      file((doc) => (doc['blankets'][0].yarns = [{ colour: 'moss', price: 1e300 }])),
      /blankets\[1\]\.yarns\[1\]\.price/,
    ],
    [
      'stripes beyond the last row',
      file((doc) => (doc['motifs'][0].runs = [{ colour: 'moss', rows: 700 }])),
      /motifs\[1\]\.runs: 700 rows/,
    ],
    [
      'a row beyond the last',
      file((doc) => (doc['progress'] = [{ motif: 'Moss', row: 790, made: 0, history: [] }])),
      /progress\[1\]\.row: 790 is beyond row 24/,
    ],
    [
      'more colours than may be kept',
      file((doc) => {
        const yarns = Array.from({ length: 60 }, (_, index) => ({ colour: `colour ${index}` }));
        doc['blankets'] = Array.from({ length: 20 }, (_, index) => ({
          ...throwOf(['Moss']),
          name: `throw ${index}`,
          yarns,
        }));
      }),
      /1,?200 colours in all your blankets together; 400 can be kept/,
    ],
    [
      'more places than may be kept',
      file((doc) => {
        const layout = Array.from({ length: 2500 }, () => ({ kind: 0, turn: 0 }));
        doc['blankets'] = Array.from({ length: 11 }, (_, index) => ({
          ...throwOf(['Moss']),
          name: `throw ${index}`,
          columns: 50,
          rows: 50,
          layout,
        }));
      }),
      /27,500 places in all your blankets together; 10,000 can be kept/,
    ],
    [
      'more stripes than may be kept',
      file((doc) => {
        const runs = Array.from({ length: 800 }, (_, index) => ({ colour: `c${index % 9}`, rows: 1 }));
        doc['motifs'] = Array.from({ length: 13 }, (_, index) => ({
          ...moss,
          name: index === 0 ? 'Moss' : `moss ${index}`,
          size: 400,
          runs,
        }));
      }),
      /10,400 stripes in all your motifs together; 4,?000 can be kept/,
    ],
    [
      'the file about groups',
      atOneGo(writeElsewhere({ groups: [{ id: 'here.x', events: [] }] }))[0] ?? '',
      /what is kept of you in groups/,
    ],
    ['a motif that is not there', file((doc) => (doc['blankets'][0].kinds = ['Sand'])), /motif Sand/],
    ['a kind that is not there', file((doc) => (doc['blankets'][0].layout[1].kind = 4)), /layout/],
    ['a layout with a hole', file((doc) => void (doc['blankets'][0].layout.length = 1)), /blankets/],
    [
      'one name twice',
      file((doc) => void (doc['motifs'][1] = { ...moss, name: 'MOSS' })),
      /MOSS is in that file twice/,
    ],
  ])('refuse %s in words, and nothing is half taken', async (_what, text, words) => {
    const room = asking();
    await withThings(room);
    const before = await room.projects.maker('rowan', 'rowan');
    room.files.push({ name: 'mine.json', content: text });
    const answer = await room.ask('rowan: /settings import file:mine.json replace:yes');
    expect(room.faults).toEqual([]);
    expect(answer).toMatchObject({ ok: false, option: 'file' });
    expect(answer.problem).toMatch(words);
    expect(answer.hint.length).toBeGreaterThan(0);
    expect(await room.projects.maker('rowan', 'rowan')).toEqual(before);
  });

  it('gives what is kept in groups in parts where it is long, and nothing of it twice', () => {
    const groups = Array.from({ length: 30 }, (_, n) => ({
      id: `here.${n}`,
      events: [{ did: 'x'.repeat(90) }],
    }));
    const files = atOneGo(writeElsewhere({ groups }, 500));
    expect(files.length).toBeGreaterThan(5);
    for (const content of files) expect(content.length).toBeLessThan(800);
    const read = files.flatMap((content) => (JSON.parse(content) as { groups: { id: string }[] }).groups);
    expect(read).toEqual(groups);
    expect(atOneGo(writeElsewhere({ groups }))).toHaveLength(1);
    expect(atOneGo(writeElsewhere({}))).toEqual([]);
  });

  it('take no token, control character or foreign key from a file', () => {
    const text = file((doc) => {
      doc['motifs'][0].name = 'Mo\u001b[31mss⟦120 cm⟧\u202e';
      doc['blankets'][0].kinds = ['Mo\u001b[31mss⟦120 cm⟧\u202e'];
      doc['extra'] = { anything: 1 };
    }).replace('{', '{"__proto__":{"polluted":1},');
    const doc = readExport(text, 'me', 'Me');
    expect(JSON.stringify(doc)).not.toMatch(/[\p{Cc}\p{Cf}⟦⟧]|extra|polluted/u);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  });
});

describe('/settings erase', () => {
  it('says what would go, and erases only when that is confirmed', async () => {
    const room = asking();
    await withThings(room);
    const asked = await room.ask('rowan: /settings erase');
    expect(asked).toMatchObject({ ok: true, data: { erased: false } });
    expect(asked.lines?.join(' ')).toMatch(/1 motif.*1 blanket/s);
    expect(await room.projects.knows('rowan')).toBe(true);
    expect(await room.ask('rowan: /settings erase confirm:no')).toMatchObject({ data: { erased: false } });
    expect(await room.ask('rowan: /settings erase confirm:yes')).toMatchObject({ data: { erased: true } });
    expect(await room.projects.store.read(MAKERS, 'rowan')).toBeUndefined();
    expect(await room.ask('rowan: /settings erase confirm:yes')).toMatchObject({
      ok: true,
      headline: 'Nothing is kept about you.',
    });
  });
});

describe('a change that arrives twice', () => {
  it('is done once and told again', async () => {
    const projects = new Projects(new MemoryStore());
    const press = () =>
      projects.changeMakerOnce('rowan', 'Rowan', 'press-1', (doc) => {
        doc.motifs.push({ ...moss, runs: [], name: `Moss ${doc.motifs.length}` });
        return { motifs: doc.motifs.length };
      });
    const [first, second] = await Promise.all([press(), press()]);
    expect(first).toMatchObject({ tell: { motifs: 1 }, again: false });
    expect(second).toMatchObject({ tell: { motifs: 1 }, again: true });
    expect((await projects.maker('rowan', 'Rowan')).motifs).toHaveLength(1);
    // The list is bounded: it holds the latest.
    for (let i = 0; i < 70; i++) await projects.changeMakerOnce('rowan', 'Rowan', `other-${i}`, () => i);
    expect((await projects.maker('rowan', 'Rowan')).done).toHaveLength(50);
  });
});
