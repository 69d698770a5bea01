/** Her own blanket of a make-along among what she has saved: the same numbers by every question, and nothing of hers lost. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asking, type Asking } from '../asking.ts';
import { countLaid } from '../../src/core/blanket/layout.ts';
import { reckonMaterials } from '../../src/core/blanket/materials.ts';
import { piecesOf } from '../../src/core/blanket/pieces.ts';
import { reckonOwn } from '../../src/core/along/own.ts';
import { specOf } from '../../src/projects/blankets.ts';
import { Working } from '../../src/core/base/working.ts';

async function all(room: Asking, ...lines: readonly string[]): Promise<void> {
  for (const line of lines) expect(await room.ask(line), line).toMatchObject({ ok: true });
}

async function opened(...arranged: readonly string[]): Promise<Asking> {
  const room = asking();
  await all(
    room,
    'ines: /motif define name:furrow shape:diagonal size:12 colours:"12 rows moss, 12 rows sand" gauge:13x10',
    'ines: /motif define name:meadow shape:solid-square size:7 gauge:13x10',
    `ines: /blanket start name:"Bean rows" kinds:"furrow, meadow" columns:4 rows:5 border:"sc hdc" joining:slip-stitch ${arranged.join(' ')}`,
    'ines: /along open blanket:"Bean rows" name:class starts:2026-03-09',
  );
  return room;
}
const docOf = (room: Asking, maker: string) => room.projects.maker(maker, maker);
const ownOf = async (room: Asking, maker: string) => {
  const [found] = await room.projects.alongs.of(undefined);
  return reckonOwn(found!.state.plan, found!.state.members.get(maker)!);
};
/** What all of it takes, reckoned anew from what is saved. */
async function savedMaterials(room: Asking, maker: string, name: string) {
  const doc = await docOf(room, maker);
  const blanket = doc.blankets.find((one) => one.name === name)!;
  const counts = countLaid(blanket.layout, blanket.kinds.length);
  return {
    counts,
    ...reckonMaterials(piecesOf(specOf(doc, blanket), new Working()), { ...blanket, counts }, new Working()),
  };
}

describe('her own blanket of a make-along, saved', () => {
  it('comes to the same yarn, size and counts by itself, whatever she makes it with', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.record(
          {
            gauge: fc
              .tuple(fc.integer({ min: 9, max: 24 }), fc.integer({ min: 7, max: 24 }))
              .map(([stitches, rows]) => `${stitches}x${rows}`),
            ball: fc.constantFrom('170m/100g', '125m/50g'),
            colours: fc.constantFrom('"teal, cream, rose"', '"moss=teal"', '"teal, teal, teal"'),
            width: fc.integer({ min: 60, max: 200 }).map((width) => `${width}cm`),
            hook: fc.constantFrom('4mm', '5.5mm'),
            minutes: fc.integer({ min: 20, max: 90 }).map(String),
          },
          { requiredKeys: [] },
        ),
        fc.constantFrom('arrange:checked', 'arrange:scattered', 'arrange:stripes'),
        async (way, arranged) => {
          const room = await opened(arranged);
          const said = Object.entries(way).map(([name, text]) => `${name}:${text}`);
          await all(room, `rowan: /along join ${said.join(' ')}`, 'rowan: /along save');
          const own = await ownOf(room, 'rowan');
          const saved = await savedMaterials(room, 'rowan', 'class');
          expect(saved.counts).toEqual(own.extent.counts);
          expect(saved.total).toBeCloseTo(own.materials.total, 9);
          expect([saved.width, saved.height, saved.balls]).toEqual([
            own.materials.width,
            own.materials.height,
            own.materials.balls,
          ]);
          expect(saved.colours.map(({ colour }) => colour)).toEqual(
            own.materials.colours.map(({ colour }) => colour),
          );
        },
      ),
      { numRuns: 8 },
    );
  });

  it('is what progress, handouts and yarn are asked of', async () => {
    const room = await opened();
    await all(
      room,
      'rowan: /along join gauge:15x12 ball:170m/100g colours:"teal, cream, rose"',
      'rowan: /along save as:"My rows"',
      'rowan: /progress next from_row:0',
      'rowan: /progress finished',
      'rowan: /blanket handout',
      'rowan: /blanket materials',
      'rowan: /motif words',
    );
    const own = await ownOf(room, 'rowan');
    expect(await room.ask('rowan: /progress show')).toMatchObject({ ok: true, data: { motif: 'furrow' } });
    expect(await room.figure('rowan: /blanket materials', 'yarn_total')).toBeCloseTo(own.materials.total, 6);
    // Nobody else's saved things are touched.
    expect((await docOf(room, 'ines')).motifs.map(({ name, size }) => [name, size])).toEqual([
      ['furrow', 12],
      ['meadow', 7],
    ]);
  });

  it('leaves motifs of hers alone that are called the same, and says how its own are called', async () => {
    const room = await opened();
    await all(room, 'ines: /along join gauge:15x12');
    const said = await room.ask('ines: /along save');
    expect(said.data).toEqual({ blanket: 'class', motifs: ['furrow 2', 'meadow 2'] });
    expect(said.lines?.join(' ')).toContain('Its furrow is kept as furrow 2');
    const doc = await docOf(room, 'ines');
    expect(doc.motifs.find(({ name }) => name === 'furrow')?.size).toBe(12);
    // A motif of one colour without a name keeps the colour that it had, whatever it is called.
    expect(doc.motifs.find(({ name }) => name === 'meadow 2')?.runs.map(({ colour }) => colour)).toEqual([
      'meadow',
    ]);
    const own = await ownOf(room, 'ines');
    expect((await savedMaterials(room, 'ines', 'class')).total).toBeCloseTo(own.materials.total, 9);
  });

  it('uses motifs that are just so already, and is kept twice by no button that is pressed twice', async () => {
    const room = await opened();
    await all(room, 'ines: /along join', 'ines: /along save');
    const doc = await docOf(room, 'ines');
    // As the teacher makes it; the one of one colour says it now.
    expect(doc.blankets.map(({ name, kinds }) => [name, kinds])).toEqual([
      ['Bean rows', ['furrow', 'meadow']],
      ['class', ['furrow', 'meadow 2']],
    ]);
    expect(await room.ask('ines: /along save')).toMatchObject({
      ok: false,
      code: 'own-blanket-there',
      option: 'as',
    });
  });

  it('is kept anew where her gauge is another, in its place, and comes back by undo', async () => {
    const room = await opened();
    await all(
      room,
      'rowan: /along join gauge:15x12',
      'rowan: /along save',
      'rowan: /motif weigh name:furrow weight:14g',
      'rowan: /along join gauge:18x15',
    );
    const before = await docOf(room, 'rowan');
    await all(room, 'rowan: /along save replace:yes');
    const own = await ownOf(room, 'rowan');
    const after = await docOf(room, 'rowan');
    expect(after.motifs).toHaveLength(2);
    expect(after.blankets).toHaveLength(1);
    expect((await savedMaterials(room, 'rowan', 'class')).counts).toEqual(own.extent.counts);
    expect(after.motifs.map(({ size }) => size)).toEqual(own.spec.kinds.map(({ size }) => size));
    expect(after.motifs.map(({ size }) => size)).not.toEqual(before.motifs.map(({ size }) => size));
    await all(room, 'rowan: /motif undo name:furrow');
    expect((await docOf(room, 'rowan')).motifs.find(({ name }) => name === 'furrow')?.weight).toBe(14);
  });

  it('is no place of a motif that something else of hers is made of', async () => {
    const room = await opened();
    await all(
      room,
      'rowan: /along join gauge:15x12',
      'rowan: /along save',
      'rowan: /blanket start name:"Pram rug" kinds:furrow columns:2 rows:2',
      'rowan: /along join gauge:18x15',
      'rowan: /along save replace:yes',
    );
    const doc = await docOf(room, 'rowan');
    expect(doc.blankets.map(({ name, kinds }) => [name, kinds])).toEqual([
      ['class', ['furrow 2', 'meadow']],
      ['Pram rug', ['furrow']],
    ]);
  });

  it('is a motif alone where that is what is made along', async () => {
    const room = asking();
    await all(
      room,
      'ines: /motif define name:furrow shape:diagonal size:12 gauge:13x10',
      'ines: /along open motif:furrow name:class starts:2026-03-09',
      'rowan: /along join gauge:15x12 minutes:40',
    );
    expect(await room.ask('rowan: /along save')).toMatchObject({
      ok: true,
      data: { blanket: null, motifs: ['furrow'] },
    });
    const doc = await docOf(room, 'rowan');
    expect(doc.blankets).toEqual([]);
    expect(doc.motifs).toMatchObject([{ name: 'furrow', size: 14, minutes: 40 }]);
    await all(room, 'rowan: /along join gauge:18x15', 'rowan: /along save replace:yes');
    expect((await docOf(room, 'rowan')).motifs).toHaveLength(1);
  });

  it('is nobody’s who takes no part, and too much for nobody', async () => {
    const room = await opened();
    expect(await room.ask('fern: /along save')).toMatchObject({ ok: false, code: 'not-making-along' });
    expect((await docOf(room, 'fern')).motifs).toEqual([]);
  });
});

describe('what can be made along', () => {
  it.each([
    ['diagonal size:12', true],
    ['clusters size:5', true],
    ['solid-square size:6', true],
    ['flat size:20 other_size:15', true],
    ['hexagon size:6', false],
    ['circle size:6', false],
  ])('shape:%s: %s', async (shape, taken) => {
    const room = asking();
    await all(room, `/motif define name:one shape:${shape} gauge:13x10`);
    const said = await room.ask('/along open motif:one starts:2026-03-09');
    if (!taken) {
      expect(said).toMatchObject({ ok: false, code: 'not-for-along', option: 'motif' });
      return;
    }
    expect(said, said.problem).toMatchObject({ ok: true });
    await all(room, 'rowan: /along join gauge:15x12', 'rowan: /along save');
  });

  it('corner to corner as well, by its measured side', async () => {
    const room = asking();
    await all(
      room,
      '/motif define name:one shape:blocks size:8 gauge:13x10',
      '/motif weigh name:one side:15cm',
      '/along open motif:one starts:2026-03-09',
      'rowan: /along join side:14cm',
      'rowan: /along save',
    );
    expect((await docOf(room, 'rowan')).motifs).toMatchObject([{ name: 'one', shape: 'blocks', side: 14 }]);
  });
});
