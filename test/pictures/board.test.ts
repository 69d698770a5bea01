import fc from 'fast-check';
import { expect, test } from 'vitest';
import { barWords, cellStates, drawBoard, type BoardView } from '../../src/pictures/board.ts';
import { all, blanketOf, KINDS, texts } from './views.ts';

const board = (more: Partial<BoardView> = {}): BoardView => {
  const { cells, ...rest } = blanketOf(4, 4);
  return {
    ...rest,
    cells: cells.map(({ kind, turn }) => ({ kind, turn })),
    tallies: [
      { wanted: 9, made: 3, waiting: 0, pledged: 2 },
      { wanted: 8, made: 0, waiting: 0, pledged: 8 },
    ],
    ...more,
  };
};

test('the board fills up by kind: made first, then pledged, in reading order', () => {
  const { svg, alt } = drawBoard(board());
  const states = all(svg, /class="cell"[^>]*data-state="(\w+)"/g);
  expect(states.filter((_, index) => index % 2 === 0)).toEqual([
    'made',
    'made',
    'made',
    'pledged',
    'pledged',
    'open',
    'open',
    'open',
  ]);
  expect(states.filter((_, index) => index % 2 === 1)).toEqual(Array(8).fill('pledged'));
  expect(alt).toContain('3 made, 10 pledged, 4 open of 17');
  expect(alt).toContain('A, Corner patch (diagonal square): 3 made, 2 pledged, 4 open of 9 motifs.');
});

test('the three states differ in pattern: full, hatched, pale', () => {
  const { svg } = drawBoard(board());
  expect(svg).toContain('<pattern id="pledged"');
  expect(/<path d="([^"]*)" fill="url\(#pledged\)"/.exec(svg)![1]!.match(/z/g)).toHaveLength(10);
  expect(/class="veil-open" d="([^"]*)"/.exec(svg)![1]!.match(/z/g)).toHaveLength(3);
  expect(all(svg, /class="tick"/g)).toHaveLength(3);
  expect(texts(svg, 'key')).toEqual(['made', 'pledged', 'open']);
});

test('bars are as long as their numbers', () => {
  const { svg } = drawBoard(board());
  const widths = (state: string) =>
    all(svg, new RegExp(`width="([\\d.]+)" height="[\\d.]+" class="bar-${state}"`, 'g')).map(Number);
  // The first of each is the key's box.
  const [, whole] = widths('open');
  expect(widths('made')[1]! / whole!).toBeCloseTo(3 / 9, 2);
  expect(widths('pledged')[1]! / whole!).toBeCloseTo(2 / 9, 2);
  expect(widths('pledged')[2]! / whole!).toBeCloseTo(1, 2);
  expect(texts(svg, 'kind-count')).toEqual([
    '3 made, 2 pledged, 4 open of 9 motifs',
    '0 made, 8 pledged, 0 open of 8 motifs',
  ]);
});

test('what is handed in and not accepted is not made: dotted, and said apart', () => {
  const { svg, alt } = drawBoard(
    board({
      tallies: [
        { wanted: 9, made: 3, waiting: 2, pledged: 1 },
        { wanted: 8, made: 0, waiting: 0, pledged: 8 },
      ],
    }),
  );
  expect(alt).toContain('3 made, 2 waiting, 9 pledged, 3 open of 17.');
  expect(alt).toContain('3 made, 2 waiting, 1 pledged, 3 open of 9 motifs.');
  expect(alt).toContain('those that wait to be accepted dotted');
  const states = all(svg, /class="cell"[^>]*data-state="(\w+)"/g);
  expect(states.filter((_, index) => index % 2 === 0)).toEqual([
    ...['made', 'made', 'made', 'waiting', 'waiting', 'pledged', 'open', 'open'],
  ]);
  expect(all(svg, /class="tick"/g)).toHaveLength(3);
  expect(svg).toContain('<pattern id="waiting"');
  expect(/class="veil-waiting" d="([^"]*)"/.exec(svg)![1]!.match(/z/g)).toHaveLength(2);
  expect(texts(svg, 'key')).toEqual(['made', 'waiting', 'pledged', 'open']);
  // Its stretch begins where what is made ends, and what is pledged begins where it ends.
  const bar = (state: string) =>
    [
      ...svg.matchAll(
        new RegExp(`x="([\\d.]+)" y="[\\d.]+" width="([\\d.]+)" height="[\\d.]+" class="bar-${state}"`, 'g'),
      ),
    ]
      .map(([, x, width]) => ({ x: Number(x), width: Number(width) }))
      .at(1)!;
  const [made, waiting, pledged] = [bar('made'), bar('waiting'), bar('pledged')];
  expect(waiting.x).toBeCloseTo(made.x + made.width, 1);
  expect(pledged.x).toBeCloseTo(waiting.x + waiting.width, 1);
});

test('a kind of which none is wanted, and one motif, are said in words', () => {
  expect(barWords({ wanted: 0, made: 0, waiting: 0, pledged: 0 })).toBe('none wanted');
  expect(barWords({ wanted: 1, made: 0, waiting: 0, pledged: 1 })).toBe(
    '0 made, 1 pledged, 0 open of 1 motif',
  );
});

test('given states stand, and no kind shows more than its tally', () => {
  const states = fc.constantFrom(
    'made' as const,
    'waiting' as const,
    'pledged' as const,
    'open' as const,
    undefined,
  );
  fc.assert(
    fc.property(
      fc.array(fc.record({ kind: fc.integer({ min: 0, max: 1 }), turn: fc.constant(0), state: states })),
      fc.array(
        fc.record({ wanted: fc.nat(30), made: fc.nat(10), waiting: fc.nat(10), pledged: fc.nat(10) }),
        {
          minLength: 2,
          maxLength: 2,
        },
      ),
      (cells, tallies) => {
        const out = cellStates(cells, tallies);
        for (const [index, { state }] of cells.entries())
          if (state !== undefined) expect(out[index]).toBe(state);
        for (const kind of [0, 1])
          for (const state of ['made', 'waiting', 'pledged'] as const) {
            const given = cells.filter((cell) => cell.kind === kind && cell.state === state).length;
            const shown = out.filter((now, index) => cells[index]!.kind === kind && now === state).length;
            expect(shown).toBeLessThanOrEqual(Math.max(given, tallies[kind]![state]));
          }
      },
    ),
  );
});

test('a maker’s mark takes the place of the number', () => {
  const view = board({ kinds: KINDS.slice(0, 2), note: 'Closes on 30 November.' });
  const { svg } = drawBoard({
    ...view,
    cells: view.cells.map((cell, index) => (index === 0 ? { ...cell, mark: 'RW' } : cell)),
  });
  expect(texts(svg, 'number').slice(0, 2)).toEqual(['RW', '2']);
  expect(texts(svg, 'note')[0]).toBe('Closes on 30 November.');
});
