import { describe, expect, it } from 'vitest';
import { Working } from '../../../src/core/base/working.ts';
import { findUneven } from '../../../src/core/size/easing.ts';
import { asking } from '../../asking.ts';

const uneven = (...sides: number[]) =>
  findUneven(
    sides.map((side, index) => ({ name: `kind ${index}`, side })),
    new Working(),
  );

describe('motifs of different size side by side', () => {
  it('are alike as far as seams forgive: 3 %, either way', () => {
    expect(uneven()).toBeUndefined();
    expect(uneven(15)).toBeUndefined();
    expect(uneven(15, 15.45, 14.55)).toBeUndefined();
    expect(uneven(15, 15.46)).toMatchObject({ name: 'kind 1', side: 15.46 });
    expect(uneven(15, 14.54)).toMatchObject({ name: 'kind 1', side: 14.54 });
  });

  it('lets those meet that blocking brings together, and no others', () => {
    const first = { name: 'tall', side: 17 };
    const small = { name: 'small', side: 16.3 };
    expect(findUneven([first, small], new Working())).toMatchObject({ name: 'small' });
    expect(findUneven([first, { ...small, pinned: 16.9 }], new Working())).toBeUndefined();
    expect(findUneven([{ ...small, pinned: 16.9 }, first], new Working())).toBeUndefined();
    // Pinned out it would not fit another of its own size, but nobody has to pin it out there.
    expect(findUneven([{ ...small, pinned: 16.9 }, small], new Working())).toBeUndefined();
    expect(
      findUneven(
        [
          { ...first, side: 18 },
          { ...small, pinned: 16.9 },
        ],
        new Working(),
      ),
    ).toMatchObject({
      side: 16.3,
    });
  });

  it('say which differs most from the first, by how much, and how much a seam eases', () => {
    const found = uneven(15, 15.6, 14, 16, 14.1)!;
    expect(found).toMatchObject({ name: 'kind 2', beside: { name: 'kind 0', side: 15 } });
    expect(found.ease).toBeCloseTo(1, 9);
    expect(found.eases).toBeCloseTo(0.45, 9);
  });
});

describe('said wherever they are laid', () => {
  const LINES = [
    '/motif define name:furrow shape:diagonal size:12 gauge:13x10',
    '/motif weigh name:furrow side:15cm',
    '/motif define name:trellis shape:diagonal size:12 gauge:13x10',
    '/motif weigh name:trellis side:16.5cm',
  ];
  const START = '/blanket start name:throw kinds:"furrow, trellis" columns:4 rows:4';
  it.each([
    [START],
    ['/blanket show', START],
    ['/blanket layout', START],
    ['/blanket kinds', START],
    ['/blanket materials', START],
    ['/together open', START],
  ])('%s', async (line, ...before) => {
    const { ask } = asking();
    for (const one of [...LINES, ...before]) expect(await ask(one)).toMatchObject({ ok: true });
    expect((await ask(line)).cautions.join(' ')).toContain(
      'trellis measures 16.5 cm beside 15 cm of furrow: 1.5 cm to ease into every seam between them',
    );
    await ask('/motif weigh name:trellis side:15.2cm');
    if (line === '/blanket show') expect((await ask(line)).cautions.join(' ')).not.toContain('to ease');
  });
});

describe('what is no square', () => {
  it.each([
    ['shape:flat size:10 other_size:30 gauge:13x10', 'is 7.69 cm wide and 30 cm high: no square'],
    ['shape:blocks size:3 other_size:5 gauge:13x10', 'is 3 × 5 blocks: no square'],
  ])('%s stays none once a side is measured', async (how, says) => {
    const { ask } = asking();
    expect(await ask(`/motif define name:oblong ${how}`)).toMatchObject({ ok: true });
    const measured = await ask('/motif weigh side:15cm');
    expect(measured.lines!.join(' ')).toContain(says);
    expect(await ask('/blanket start name:throw kinds:oblong width:120cm height:150cm')).toMatchObject({
      ok: false,
      code: 'motif-not-square',
    });
  });

  it('a square piece is taken as it was measured', async () => {
    const { ask } = asking();
    await ask('/motif define name:patch shape:flat size:13 other_size:10 gauge:13x10');
    expect((await ask('/motif weigh side:10.2cm')).lines ?? []).toEqual([]);
    expect(
      (await ask('/blanket start name:throw kinds:patch width:102cm height:51cm')).figures,
    ).toMatchObject({ columns: { value: 10 }, rows: { value: 5 } });
  });
});

describe('what is too large or too small', () => {
  const weighed = async (side: string, hook = '') => {
    const { ask } = asking();
    await ask('/motif define name:furrow shape:diagonal size:12 gauge:13x10 hook:5mm');
    const { lines, cautions } = await ask(`/motif weigh side:${side}${hook}`);
    return [...lines!, ...cautions].join(' ');
  };
  it('pins out what is a little too small, and never promises that blocking makes anything smaller', async () => {
    // By its gauge 15.38 cm.
    expect(await weighed('15.3cm')).toContain('near enough');
    const small = await weighed('14.8cm');
    expect(small).toContain('Pin it out to 15.4 cm');
    expect(small).toContain('Steam');
    const tiny = await weighed('14cm');
    expect(tiny).toContain('does not pin out');
    expect(tiny).toContain('try 5.5 mm instead of 5 mm');
    for (const side of ['15.9cm', '17cm']) {
      const large = await weighed(side);
      expect(large).toContain('Blocking makes nothing smaller, and felting never');
      expect(large).toContain('For the next one, try 4.');
      expect(large).not.toMatch(/Steam|Pin it/);
    }
  });
});
