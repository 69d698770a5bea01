import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawBlanket } from '../../src/pictures/blanket.ts';
import { bandsOf, motif } from '../../src/pictures/motif.ts';
import { all, blanketOf, KINDS, texts } from './views.ts';

const cellsOf = (svg: string) =>
  [
    ...svg.matchAll(
      /<use class="cell" data-kind="(\d+)" data-turn="(\d)"(?: data-state="(\w+)")?[^>]*transform="([^"]*)"/g,
    ),
  ].map(([, kind, turn, state, transform]) => ({
    kind: Number(kind),
    turn: Number(turn),
    state,
    transform: transform!,
  }));

describe('the blanket', () => {
  test('holds every cell with its kind, its turning and its number', () => {
    const view = blanketOf(3, 4);
    const { svg } = drawBlanket(view);
    const cells = cellsOf(svg);
    expect(cells.map(({ kind, turn }) => ({ kind, turn }))).toEqual(
      view.cells.map(({ kind, turn }) => ({ kind, turn })),
    );
    for (const { turn, transform } of cells)
      expect(transform.includes('rotate') ? Number(/rotate\((\d+)/.exec(transform)![1]) : 0).toBe(90 * turn);
    expect(texts(svg, 'number')).toEqual(Array.from({ length: 12 }, (_, index) => String(index + 1)));
    expect(texts(svg, 'letter')).toEqual(view.cells.map(({ kind }) => (kind === 0 ? 'A' : 'B')));
  });

  test('has a legend of every kind with its count and colours, the border and the size', () => {
    const { svg, alt } = drawBlanket(blanketOf(3, 4));
    expect(texts(svg, 'legend-name')).toEqual(['Corner patch', 'Steps']);
    expect(texts(svg, 'legend-count')).toEqual(['× 6', '× 6']);
    expect(texts(svg, 'colour')).toEqual(['moss', 'cream', 'teal', 'mustard']);
    expect(all(svg, /class="border"/g)).toHaveLength(2);
    expect(texts(svg, 'border-words').join(' ')).toBe(
      'Border, from the inside: 1 round of hdc in moss, 1 round of dc in cream',
    );
    expect(texts(svg, 'size')).toEqual(['12 motifs, 3 across and 4 down, 51 × 66 cm']);
    expect(alt).toContain('12 motifs, 3 across and 4 down, 51 × 66 cm');
    expect(alt).toContain('A, Corner patch: diagonal square in moss and cream, × 6.');
    expect(alt).toContain('Row 1: A B A1. Row 2: B1 A2 B2.');
  });

  test('speaks the reader’s own units and terms', () => {
    const { svg, alt } = drawBlanket(blanketOf(3, 4, { reader: { units: 'imperial', terms: 'UK' } }));
    expect(texts(svg, 'size')[0]).toContain('20.1 × 26 in');
    expect(alt).toContain('1 round of htr in moss, 1 round of tr in cream');
  });

  test('tells what is made from what is not without a colour', () => {
    const view = blanketOf(4, 4);
    const { svg, alt } = drawBlanket({
      ...view,
      cells: view.cells.map((cell, index) => ({ ...cell, done: index < 5 })),
    });
    expect(cellsOf(svg).map(({ state }) => state)).toEqual([
      ...Array<string>(5).fill('made'),
      ...Array<string>(11).fill('open'),
    ]);
    expect(all(svg, /class="tick"/g)).toHaveLength(5);
    expect(/class="veil-open" d="([^"]*)"/.exec(svg)![1]!.match(/z/g)).toHaveLength(11);
    expect(texts(svg, 'legend-count')).toEqual(['3 of 8 made', '2 of 8 made']);
    expect(alt).toContain('5 of 16 motifs made');
  });

  test('many small cells keep their letters; numbers give way to marks at the edges, and the alt text says so', () => {
    const { svg, alt } = drawBlanket(blanketOf(20, 25));
    expect(texts(svg, 'letter')).toHaveLength(500);
    expect(texts(svg, 'number')).toHaveLength(0);
    expect(texts(svg, 'column')).toEqual(['1', '5', '10', '15', '20']);
    expect(texts(svg, 'row')).toEqual(['1', '5', '10', '15', '20', '25']);
    expect(alt).toContain('too small for numbers');
  });

  test('on a phone every word is at least 10 pixels high and every cell’s letter at least 7', () => {
    for (const [columns, rows] of [
      [3, 4],
      [6, 8],
      [20, 25],
    ] as const) {
      const { svg, width } = drawBlanket(blanketOf(columns, rows));
      const shown = 400 / width;
      for (const [, size, role] of svg.matchAll(/font-size="([\d.]+)"[^>]*class="([\w-]+)"/g))
        expect(Number(size) * shown, role).toBeGreaterThanOrEqual(
          role === 'letter' ? 7 : role === 'column' || role === 'row' ? 9.8 : 10,
        );
    }
  });

  test('everything lies on the page, whatever the size', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 0, max: 30 }),
        (columns, rows, rounds) => {
          const border = Array.from({ length: rounds }, () => ({ colour: 'moss', stitch: 'sc' as const }));
          const { svg, alt, width, height } = drawBlanket(blanketOf(columns, rows, { border }));
          expect(alt.length).toBeLessThanOrEqual(1024);
          for (const [, x, y, w, h] of svg.matchAll(
            /<rect x="([-\d.]+)" y="([-\d.]+)" width="([-\d.]+)" height="([-\d.]+)" class="border"/g,
          )) {
            expect(Number(x)).toBeGreaterThanOrEqual(0);
            expect(Number(x) + Number(w)).toBeLessThanOrEqual(width);
            expect(Number(y)).toBeGreaterThan(0);
            expect(Number(y) + Number(h)).toBeLessThan(height);
          }
          for (const [, x, y] of svg.matchAll(/<text x="([-\d.]+)" y="([-\d.]+)"/g)) {
            expect(Number(x)).toBeGreaterThanOrEqual(0);
            expect(Number(x)).toBeLessThanOrEqual(width);
            expect(Number(y)).toBeLessThan(height);
          }
        },
      ),
      { numRuns: 40 },
    );
  });

  test('a name cannot write into the drawing', () => {
    const kinds = [{ ...KINDS[0]!, name: '</text><script>"&' }, KINDS[1]!];
    const { svg } = drawBlanket(blanketOf(2, 2, { title: '<svg onload="x">', kinds }));
    expect(svg).not.toContain('<script');
    expect(svg).not.toContain('<svg onload');
    expect(texts(svg, 'title')).toEqual(['&lt;svg onload=&quot;x&quot;&gt;']);
  });

  test('twenty-six kinds are all in the legend, each colour named once', () => {
    const kinds = Array.from({ length: 26 }, (_, index) => ({
      ...KINDS[index % KINDS.length]!,
      letter: String.fromCharCode(65 + index),
      name: `Kind ${index + 1}`,
    }));
    const { svg } = drawBlanket(blanketOf(10, 10, { kinds }));
    expect(texts(svg, 'legend-letter')).toHaveLength(26);
    expect(texts(svg, 'colour')).toEqual([
      'moss',
      'cream',
      'teal',
      'mustard',
      'rust',
      'plum',
      'orange',
      'sky',
      'one colour',
    ]);
  });
});

describe('a motif', () => {
  test('every shape draws every one of its colours', () => {
    for (const kind of KINDS) {
      const drawn = motif(kind, {});
      for (const { hex } of bandsOf(kind, {})) expect(drawn, kind.shape).toContain(`fill="${hex}"`);
    }
  });

  test('a diagonal square begins in the top left corner and turns half-way', () => {
    const first = motif(KINDS[0]!, { moss: '#010203', cream: '#ffeedd' });
    expect(/<path d="([^"]*)" fill="#010203"/.exec(first)![1]).toBe('M0 0L100 0L0 100Z');
  });

  test('blocks climb in steps: half the rows are the blocks above the diagonal', () => {
    const kind = {
      ...KINDS[1]!,
      size: 2,
      runs: [
        { colour: 'moss', rows: 1 },
        { colour: 'sand', rows: 2 },
      ],
    };
    expect(/<path d="([^"]*)" fill="#010203"/.exec(motif(kind, { moss: '#010203' }))![1]).toBe(
      'M0 0L0 50L50 50L50 0L100 0L100 0Z',
    );
  });

  test('colours cover the rows in proportion, the last going on to the end', () => {
    const bands = bandsOf(
      {
        ...KINDS[0]!,
        runs: [
          { colour: 'a', rows: 6 },
          { colour: 'b', rows: 3 },
        ],
      },
      {},
    );
    expect(bands.map(({ from, to }) => [from, to])).toEqual([
      [0, 0.25],
      [0.25, 1],
    ]);
    const long = bandsOf(
      {
        ...KINDS[3]!,
        runs: [
          { colour: 'a', rows: 300 },
          { colour: 'b', rows: 3 },
        ],
      },
      {},
    );
    expect(long.map(({ colour, to }) => [colour, to])).toEqual([['a', 1]]);
  });
});
