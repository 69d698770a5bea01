import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { forReader } from '../../src/core/base/reader.ts';
import { planRows, SHAPES, type RowPlan, type Shape } from '../../src/core/rows/index.ts';
import { writeRow } from '../../src/core/stripes/written-rows.ts';
import { drawChart, inSymbols, rowSpans } from '../../src/pictures/chart.ts';
import { turnsOf } from '../../src/pictures/chart-rounds.ts';
import { reachOf, sidesOf } from '../../src/pictures/chart-blocks.ts';
import { standsOn } from '../../src/pictures/chart-rows.ts';
import { STITCHES } from '../../src/standards/stitches.ts';
import { all, texts } from './views.ts';

const reader = { units: 'metric', terms: 'US' } as const;
const view = { title: 'Corner patch', reader };
const SMALL: readonly [Shape, number, number?][] = [
  ['diagonal', 5],
  ['flat', 12, 6],
  ['circle', 4],
  ['hexagon', 4],
  ['solid-square', 4],
  ['clusters', 4],
];

/** The stitches drawn in each row: symbols, and the chain that stands as one where it does. */
function drawn(svg: string, stitch: string, row: number): { stitches: number; chains: number } {
  const group =
    new RegExp(
      `<g class="stitches" data-row="${row}">(.*?)</g>(?=<g class="stitches"|<text|<circle class="round)`,
    ).exec(svg)?.[1] ?? '';
  return {
    stitches: all(group, new RegExp(`class="st-${stitch}"`, 'g')).length,
    chains: all(group, /class="st-chain"/g).length,
  };
}

/** A share of the way round, from 0 to 1, as text that can be compared. */
const onRound = (turn: number) => (((Math.round(turn * 1e6) % 1e6) + 1e6) % 1e6).toString();

describe('stitch by stitch', () => {
  test.each(SMALL)('%s: every row has as many symbols as the plan has stitches', (shape, size, otherSize) => {
    for (const stitch of STITCHES) {
      const plan = planRows(shape, { size, otherSize, stitch });
      if (!inSymbols(plan)) continue;
      const { svg } = drawChart(plan, [], view);
      for (const { row, count, decreases } of plan.rows) {
        const now = drawn(svg, stitch, row);
        const standing = stitch !== 'sc' && decreases === 0 ? 1 : 0;
        expect(now.stitches + standing, `${stitch} row ${row}`).toBe(count);
        expect(now.chains).toBe(1 + (shape === 'clusters' ? 4 : 0));
      }
    }
  });

  test('every stitch of a row is worked into: none of the row before is left out', () => {
    for (const [count, before] of [
      [7, 5],
      [5, 7],
      [1, 3],
      [9, 9],
      [3, 1],
    ] as const) {
      const feet = standsOn(count, before);
      expect(feet).toHaveLength(count);
      expect([...new Set(feet.flat())].sort((a, b) => a - b)).toEqual(
        Array.from({ length: before }, (_, index) => index),
      );
    }
  });

  test('in rounds too: as many places are worked into as the round before has stitches', () => {
    for (const shape of ['circle', 'hexagon', 'solid-square'] as const)
      for (const stitch of STITCHES)
        for (let row = 2; row <= 6; row++) {
          const plan = planRows(shape, { size: 6, stitch });
          const heads = turnsOf(plan, row - 1).map(({ head }) => onRound(head));
          const feet = turnsOf(plan, row).map(({ foot }) => onRound(foot));
          expect([...new Set(feet)].sort(), `${shape} ${stitch} ${row}`).toEqual([...new Set(heads)].sort());
        }
  });

  /** For every stitch of a round, as its words say: the stitch or space of the round before that it goes into, from its beginning. */
  function wordsGoInto(plan: RowPlan, row: number): number[] {
    const said = forReader(writeRow(plan, [], row).text, { units: 'metric', terms: 'US' }).slice(0, -1);
    const body = said.replaceAll(/\[(.*?)\] (\d+) times/g, (_, inside: string, times: string) =>
      Array<string>(Number(times)).fill(inside).join(', '),
    );
    const into: number[] = [];
    let at = 0;
    const work = (stitches: number) => into.push(...Array<number>(stitches).fill(at));
    const rules: [RegExp, (many: number) => void][] = [
      [/^sl st to the corner space, /, () => undefined],
      [/^ch \d \(does not count\)/, () => undefined],
      // The cluster begun with a chain, the corner’s chains, and its second cluster.
      [
        /^ch \d \(counts as the first \w+\), 2 more \w+, ch 2 and 3 \w+ in the same space/,
        () => (work(6), at++),
      ],
      [/^3 \w+, ch 2 and 3 \w+ in the (?:same|next corner) space/, () => (work(6), at++)],
      [
        /^3 \w+ in each of the next (\d+) spaces/,
        (many) => {
          for (let n = 0; n < many; n++, at++) work(3);
        },
      ],
      [/^3 \w+ in the next space/, () => (work(3), at++)],
      [
        /^ch \d \(counts as the first \w+\), (\d) more \w+ in the same stitch/,
        (more) => (work(1 + more), at++),
      ],
      [/^ch \d \(counts as the first \w+\)/, () => (work(1), at++)],
      [
        /^1 \w+ in each of the next (\d+) stitches/,
        (many) => {
          for (let n = 0; n < many; n++, at++) work(1);
        },
      ],
      [/^(\d+) \w+ in the next stitch/, (many) => (work(many), at++)],
    ];
    for (let text = body; text !== ''; text = text.replace(/^, /, '')) {
      const rule = rules.find(([pattern]) => pattern.test(text));
      if (!rule) throw new Error(`cannot read “${text}”`);
      rule[1](Number(rule[0].exec(text)![1] ?? 0));
      text = text.replace(rule[0], '');
    }
    return into;
  }

  /** The same of the chart: places are counted from where the round before begins. */
  function chartGoesInto(plan: RowPlan, row: number): number[] {
    const below = turnsOf(plan, row - 1).map(({ head }) => head);
    const gap = 1 / (4 * (row - 1));
    // A space lies half-way between a cluster’s middle stitch and the next one’s.
    const places =
      plan.shape === 'clusters' ? below.filter((_, at) => at % 3 === 1).map((head) => head + gap / 2) : below;
    const order = new Map(places.map((place, at) => [onRound(place), at]));
    return turnsOf(plan, row).map(({ foot }) => order.get(onRound(foot))!);
  }

  test.each(['clusters', 'solid-square', 'hexagon', 'circle'] as const)(
    '%s: a round begins where its words begin it, and every stitch of it goes where they say',
    (shape) => {
      for (const stitch of STITCHES)
        for (let row = 2; row <= 8; row++) {
          const plan = planRows(shape, { size: 8, stitch });
          expect(chartGoesInto(plan, row), `${stitch}, round ${row}`).toEqual(wordsGoInto(plan, row));
        }
    },
  );

  test('symbols are explained in the reader’s own terms', () => {
    const plan = planRows('circle', { size: 4, stitch: 'dc' });
    expect(texts(drawChart(plan, [], view).svg, 'symbol')).toEqual(['ch', 'dc', '2 dc in one', 'sl st']);
    expect(
      texts(drawChart(plan, [], { ...view, reader: { units: 'metric', terms: 'UK' } }).svg, 'symbol'),
    ).toEqual(['ch', 'tr', '2 tr in one', 'ss']);
    const keyOf = (shape: Shape, size: number, stitch: 'sc' | 'dc') =>
      texts(drawChart(planRows(shape, { size, stitch }), [], view).svg, 'symbol');
    expect(keyOf('diagonal', 5, 'sc')).toEqual(['ch', 'sc', '2 sc in one', 'sc2tog', 'sc3tog']);
    // Corners of a solid square: five dc, three sc; nothing is increased in a flat piece.
    expect(keyOf('solid-square', 4, 'dc')).toContain('5 dc in one');
    expect(keyOf('solid-square', 4, 'sc')).toContain('3 sc in one');
    expect(keyOf('flat', 8, 'dc')).toEqual(['ch', 'dc']);
  });

  test('stitches that share a place are each led to it by a leg, others are not', () => {
    const { svg } = drawChart(planRows('diagonal', { size: 3, stitch: 'sc' }), [], view);
    const strokes = (row: number) => {
      const group = new RegExp(`<g class="stitches" data-row="${row}">(.*?)</g>(?=<g|<text)`).exec(svg)![1]!;
      return [...group.matchAll(/class="st-sc" d="([^"]*)"/g)].map(([, d = '']) => d.match(/M/g)!.length);
    };
    // Two strokes are a cross; a third is the leg. Row 2: two on the first stitch, one between, two on the last.
    expect(strokes(2)).toEqual([3, 3, 2, 3, 3]);
    expect(strokes(1)).toEqual([3, 3, 3]);
  });
});

/** How far apart two points of a path are, over all of it: across and up. */
function spanOf(path: string): { wide: number; high: number } {
  const points = [...path.matchAll(/[ML]?(-?[\d.]+) (-?[\d.]+)/g)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  );
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return { wide: Math.max(...xs) - Math.min(...xs), high: Math.max(...ys) - Math.min(...ys) };
}
const grounds = (svg: string) =>
  [...svg.matchAll(/<path class="row"[^>]* d="([^"]*)"/g)].map(([, d = '']) => d);

describe('in blocks', () => {
  /** Blocks as they are set: a cell of the grid for each, row by row, the first corner at 0, 0. */
  const cells = (right: number, left: number, row: number) =>
    Array.from({ length: right }, (_, i) => [i, row - 1 - i] as const).filter(([, j]) => j >= 0 && j < left);

  test.each([
    [3, 5],
    [5, 3],
    [4, 6],
    [1, 7],
    [6, 6],
  ])('%i × %i are a rectangle: every block beside those that it touches', (size, otherSize) => {
    const plan = planRows('blocks', { size, otherSize });
    const sides = sidesOf(plan);
    expect([sides.left, sides.right].sort()).toEqual([size, otherSize].sort());
    for (const { row, count } of plan.rows) {
      const [first, last] = reachOf(sides, row);
      const centres = cells(sides.right, sides.left, row).map(([i, j]) => i - j);
      expect([Math.min(...centres), Math.max(...centres)]).toEqual([first, last]);
      expect((last - first) / 2 + 1).toBe(count);
    }
    const drawn = grounds(drawChart(plan, [], view).svg);
    expect(drawn.map((path) => path.match(/M/g)!.length)).toEqual(plan.rows.map(({ count }) => count));
    // A square standing on a corner, and so is each of its blocks.
    const block = spanOf(drawn[0]!);
    expect(block.wide).toBeCloseTo(block.high, 6);
  });

  test('it leans to the side at which the row after the widest begins with a new block', () => {
    // Three rows rise; row 4 begins at the left.
    expect(sidesOf(planRows('blocks', { size: 3, otherSize: 5 }))).toEqual({ right: 3, left: 5 });
    expect(sidesOf(planRows('blocks', { size: 6, otherSize: 4 }))).toEqual({ right: 6, left: 4 });
  });

  test('many are drawn as bands that together are the piece', () => {
    const { svg } = drawChart(planRows('blocks', { size: 150, otherSize: 50 }), [], view);
    const points = grounds(svg).flatMap((path) =>
      [...path.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const),
    );
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    const [wide, high] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
    expect(wide / high).toBeCloseTo(1, 1);
  });
});

describe('row by row', () => {
  test('numbers change sides with the work and counts stand in the middle', () => {
    const plan = planRows('diagonal', { size: 12 });
    const { svg } = drawChart(plan, [{ colour: 'moss', rows: 24 }], view);
    expect(texts(svg, 'row-number')).toEqual(plan.rows.map(({ row }) => String(row)));
    expect(texts(svg, 'row-count')).toEqual(plan.rows.map(({ count }) => String(count)));
    const xs = [...svg.matchAll(/<text x="([\d.]+)"[^>]*class="row-number"/g)].map(([, x]) => Number(x));
    const middle = [...svg.matchAll(/<text x="([\d.]+)"[^>]*class="row-count"/g)].map(([, x]) => Number(x));
    for (const [index, x] of xs.entries()) expect(x > middle[index]!).toBe(index % 2 === 0);
  });

  test('colours are told by the rows that they cover, in words', () => {
    const runs = [
      { colour: 'moss', rows: 4 },
      { colour: 'sand', rows: 2 },
      { colour: 'moss', rows: 2 },
    ];
    const { svg, alt } = drawChart(planRows('diagonal', { size: 12 }), runs, view);
    expect(texts(svg, 'colour')).toEqual(['moss: rows 1–4 and 7–24', 'sand: rows 5–6']);
    expect(alt).toContain('Diagonal square: 24 rows, 312 stitches in hdc, widest 25 in row 12.');
    expect(alt).toContain('moss: rows 1–4 and 7–24.');
    expect(rowSpans([1, 2, 3, 7, 9, 10])).toBe('1–3, 7 and 9–10');
  });

  test('finished rows are ticked and the next is marked', () => {
    const { svg, alt } = drawChart(planRows('diagonal', { size: 12 }), [], { ...view, done: 9 });
    const numbers = texts(svg, 'row-number');
    expect(numbers.filter((shown) => shown.endsWith('✓'))).toHaveLength(9);
    expect(numbers[9]).toBe('▶10');
    expect(all(svg, /data-done="true"/g)).toHaveLength(9);
    expect(alt).toContain('9 of 24 rows done.');
    const rounds = drawChart(planRows('circle', { size: 4 }), [], { ...view, done: 2 }).svg;
    expect(all(rounds, /class="round-(done|next)"/g)).toEqual(['done', 'done', 'next']);
  });
});

test('any shape of any size is drawn on its page, with alt text that fits', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...SHAPES),
      fc.integer({ min: 1, max: 200 }),
      fc.constantFrom(...STITCHES),
      fc.option(fc.nat(400), { nil: undefined }),
      (shape, size, stitch, done) => {
        const plan = planRows(shape, { size, stitch, otherSize: shape === 'flat' ? 9 : undefined });
        const { svg, alt, width, height } = drawChart(plan, [{ colour: 'moss', rows: 3 }], { ...view, done });
        expect(alt.length).toBeLessThanOrEqual(1024);
        expect(svg).not.toMatch(/NaN|Infinity|undefined/);
        expect(width).toBe(800);
        expect(height).toBeLessThan(2000);
        expect(all(svg, /<path class="row"/g)).toHaveLength(plan.rows.length);
      },
    ),
    { numRuns: 60 },
  );
});

describe('for every hand', () => {
  const plan = planRows('diagonal', { size: 5, stitch: 'dc' });
  const left = { ...view, reader: { ...reader, hand: 'left' } as const };

  test('a chart for the left hand is the other one in a mirror, its letters left as they are', () => {
    const [right, mirrored] = [drawChart(plan, [], view).svg, drawChart(plan, [], left).svg];
    expect(mirrored).toContain('<g class="mirrored" transform="translate(');
    expect(right).not.toContain('mirrored');
    const places = (svg: string) =>
      [...svg.matchAll(/<text [^>]*class="row-number">/g)].map(([tag]) => ({
        x: Number(/ x="([\d.]+)"/.exec(tag)?.[1]),
        end: tag.includes('text-anchor="end"'),
      }));
    const [before, after] = [places(right), places(mirrored)];
    expect(after).toHaveLength(plan.rows.length);
    // Every number stands as far from the other edge, and ends where it began.
    const sums = before.map(({ x }, at) => x + after[at]!.x);
    expect(Math.max(...sums) - Math.min(...sums)).toBeLessThan(0.1);
    expect(after.map(({ end }) => end)).toEqual(before.map(({ end }) => !end));
    expect(texts(mirrored, 'note').join(' ')).toContain('odd rows run from left to right');
    expect(texts(right, 'note').join(' ')).toContain('odd rows run from right to left');
  });
});

describe('true to the gauge', () => {
  const size = (svg: string) => {
    const [, d = ''] = /class="row" data-row="5"[^>]*? d="([^"]*)"/.exec(svg) ?? [];
    const points = [...d.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(
      ([, x, y]) => [Number(x), Number(y)] as const,
    );
    const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
    return { wide: Math.max(...xs) - Math.min(...xs), high: Math.max(...ys) - Math.min(...ys) };
  };

  test.each([
    [13, 10],
    [14, 16],
    [20, 9],
  ])('a stitch of %i by %i over 10 cm is as high for its width as it is in the hand', (stitches, rows) => {
    const plan = planRows('flat', { size: 12, otherSize: 10, stitch: 'hdc' });
    const true_ = { stitch: 10 / stitches, row: 10 / rows };
    const { svg } = drawChart(plan, [], { ...view, true: true_ });
    const { wide, high } = size(svg);
    expect(high / (wide / 12)).toBeCloseTo(stitches / rows, 1);
    // The measure under it is as long as that many cm are in the chart.
    const [, long = ''] = /class="measure" d="M[^h]*h([\d.]+)/.exec(svg) ?? [];
    const [said = ''] = texts(svg, 'measure');
    expect(Number(long) / Number.parseFloat(said)).toBeCloseTo(wide / 12 / true_.stitch, 0);
    expect(texts(drawChart(plan, [], view).svg, 'measure')).toEqual([]);
  });
});
