/**
 * The instructions re-read by a parser that knows only what a crocheter knows: a stitch is worked into a stitch, two in
 * one make one more, two together one fewer. Row by row it must eat exactly the row before and leave the count that the
 * instructions state and the plan has, so that words and plan can never disagree.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinRuns, rowsIn, spans } from '../../../src/core/stripes/colour-runs.ts';
import { lengths } from '../../../src/core/stripes/carrying.ts';
import { rowPlan, SHAPES, type RowPlan, type Shape } from '../../../src/core/rows/index.ts';
import { forReader, type Terms } from '../../../src/core/base/reader.ts';
import {
  loopsBeforePull,
  series,
  listLines,
  writeInstructions,
} from '../../../src/core/stripes/written-rows.ts';
import { STITCHES, type Stitch } from '../../../src/standards/stitches.ts';
import { TERMS } from '../../../src/standards/terms.ts';

/** A list of numbers, one a row: `7`, `7, 9`, `7, 9 … 23`. */
function unfold(text: string, many: number): number[] {
  const values = text.split(/, | … /).map(Number);
  if (!text.includes('…')) return values.length === 1 ? Array<number>(many).fill(values[0]!) : values;
  const [first, second, last] = values as [number, number, number];
  const out: number[] = [];
  for (let value = first; out.length < many; value += second - first) out.push(value);
  expect(out.at(-1)).toBe(last);
  return out;
}

interface Read {
  rows: number[];
  body: string;
  counts: number[];
}

const SERIES = String.raw`\d+(?:, \d+)*(?: … \d+)?`;
function readSteps(lines: readonly string[], stitch: string): Read[] {
  const found: Read[] = [];
  for (const line of lines) {
    const match = new RegExp(
      `^(?:Row|Round)s? (?:(\\d+)–(\\d+)|(${SERIES})): (.*)\\. \\((${SERIES}) (blocks?|${stitch})\\)$`,
    ).exec(line);
    if (!match) continue;
    const [, from, to, listed, body, counts] = match;
    let rows: number[];
    if (from !== undefined) {
      rows = Array.from({ length: Number(to) - Number(from) + 1 }, (_, index) => Number(from) + index);
    } else {
      const [first, second, last] = listed!.split(/, | … /).map(Number);
      const many = listed!.includes('…')
        ? (last! - first!) / (second! - first!) + 1
        : listed!.split(', ').length;
      rows = unfold(listed!, many);
    }
    found.push({ rows, body: body!, counts: unfold(counts!, rows.length) });
  }
  return found;
}

/** Works one row over `before` stitches (or spaces, or chains); returns what it leaves. Fails unless it eats exactly those. */
function workRow(body: string, at: number, many: number, before: number, S: string): number {
  let eaten = 0;
  let made = 0;
  let text = body;
  const slot = (values: string) => unfold(values, many)[at]!;
  const rules: [RegExp, (...found: (string | undefined)[]) => void][] = [
    [
      /^\[(.*?)\] (\d+) times?/,
      (inside, times) => {
        for (let time = 0; time < Number(times); time++) {
          const outer = text;
          run(inside!);
          text = outer;
        }
      },
    ],
    [
      new RegExp(
        `^ch (\\d+), (\\d+) ${S} in the (\\w+) ch from the hook(?: \\(the (\\d+) skipped ch count as the first ${S}\\))?$`,
      ),
      (chain, stitches, nth, skipped) => {
        expect(before).toBe(0);
        const into = ['', 'first', 'second', 'third', 'fourth', 'fifth'].indexOf(nth!);
        expect(into).toBe(Number(chain)); // both go into the very first chain
        if (skipped !== undefined) expect(Number(skipped)).toBe(into - 1);
        made += Number(stitches) + (skipped === undefined ? 0 : 1);
      },
    ],
    [
      new RegExp(
        `^ch (\\d+), 1 ${S} in the (\\w+) ch from the hook and in each ch to the end(?: \\(the (\\d+) skipped ch count as the first ${S}\\))?$`,
      ),
      (chain, nth, skipped) => {
        const into = ['', 'first', 'second', 'third', 'fourth', 'fifth'].indexOf(nth!);
        made += Number(chain) - into + 1 + (skipped === undefined ? 0 : 1);
      },
    ],
    [
      new RegExp(`^ch \\d+, the \\d+ skipped ch count as the first ${S}$`),
      () => {
        made += 1;
      },
    ],
    [
      new RegExp(`^ch \\d+ \\(counts as the first ${S}\\), (\\d+)( more)? ${S} in the ring`),
      (more) => {
        made += 1 + Number(more);
      },
    ],
    [
      new RegExp(`^ch \\d+ \\(does not count\\), (\\d+) ${S} in the ring`),
      (more) => {
        made += Number(more);
      },
    ],
    [
      new RegExp(`^ch \\d+, (\\d+) ${S} in the ring`),
      (more) => {
        made += Number(more);
      },
    ],
    // Clusters: a space is eaten, three stitches each time.
    [
      new RegExp(
        `^sl st to the corner space, ch \\d+ \\((?:counts as the first ${S}|does not count)\\), (\\d)( more)? ${S}, ch 2 and 3 ${S} in the same space`,
      ),
      (n, more) => {
        eaten += 3;
        made += Number(n) + 3 + (more === undefined ? 0 : 1);
        expect(Number(n)).toBe(more === undefined ? 3 : 2);
      },
    ],
    [
      new RegExp(`^3 ${S} in each of the next (${SERIES}) spaces`),
      (n) => {
        eaten += 3 * slot(n!);
        made += 3 * slot(n!);
      },
    ],
    [
      new RegExp(`^3 ${S} in the next space`),
      () => {
        eaten += 3;
        made += 3;
      },
    ],
    [
      new RegExp(`^3 ${S}, ch 2 and 3 ${S} in the next corner space`),
      () => {
        eaten += 3;
        made += 6;
      },
    ],
    // Blocks.
    [
      /^1 new block/,
      () => {
        made += 1;
      },
    ],
    [/^sl st to the first chain space/, () => undefined],
    [
      /^1 block in each chain space to the (last|end)/,
      (to) => {
        const left = before - eaten - (to === 'last' ? 1 : 0);
        expect(left).toBeGreaterThanOrEqual(0);
        eaten += left;
        made += left;
      },
    ],
    [
      /^sl st in the last chain space/,
      () => {
        eaten += 1;
      },
    ],
    // Stitches.
    [
      new RegExp(`^ch \\d+ \\(counts as the first ${S}\\)`),
      () => {
        eaten += 1;
        made += 1;
      },
    ],
    [/^ch \d+ \(does not count\)/, () => undefined],
    [/^ch 2$/, () => undefined],
    [
      new RegExp(`^(\\d+) more ${S} in the same stitch`),
      (n) => {
        made += Number(n);
      },
    ],
    [
      new RegExp(`^(\\d+) ${S} in the (?:first|next|last) stitch`),
      (n) => {
        eaten += 1;
        made += Number(n);
      },
    ],
    [
      new RegExp(`^1 ${S} in each of the next (${SERIES}) stitches`),
      (n) => {
        eaten += slot(n!);
        made += slot(n!);
      },
    ],
    [
      new RegExp(`^1 ${S} in each stitch to the (?:last(?: (\\d))?|(end))`),
      (last, end) => {
        const left = before - eaten - (end !== undefined ? 0 : Number(last ?? 1));
        expect(left).toBeGreaterThanOrEqual(0);
        eaten += left;
        made += left;
      },
    ],
    [
      new RegExp(`^${S}(\\d)tog over (?:the (?:first |last )?)(\\d) stitches`),
      (n, over) => {
        expect(n).toBe(over);
        eaten += Number(n);
        made += 1;
      },
    ],
  ];
  function run(piece: string) {
    text = piece;
    while (text !== '') {
      const rule = rules.find(([pattern]) => pattern.test(text));
      if (!rule) throw new Error(`the parser cannot read “${text}”`);
      const [whole, ...found] = rule[0].exec(text)!;
      rule[1](...found);
      text = text.slice(whole.length).replace(/^, /, '');
    }
  }
  run(body);
  expect(eaten).toBe(before);
  return made;
}

function reread(plan: RowPlan, runs: Parameters<typeof writeInstructions>[1] = [], terms: Terms = 'US') {
  const lines = listLines(writeInstructions(plan, runs)).map((line) =>
    forReader(line, { units: 'metric', terms }),
  );
  expect(lines.join('\n')).not.toMatch(/[⟦⟧]|undefined|NaN/);
  const S = TERMS[plan.stitch][terms];
  const steps = readSteps(
    lines.map((line) => line.replaceAll(/\bss\b/g, 'sl st')),
    S,
  );
  const bodyOf = new Map<number, { step: Read; at: number }>();
  for (const step of steps)
    step.rows.forEach((row, at) => {
      expect(bodyOf.has(row)).toBe(false);
      bodyOf.set(row, { step, at });
    });
  expect([...bodyOf.keys()].sort((a, b) => a - b)).toEqual(plan.rows.map(({ row }) => row));
  let before = 0;
  for (const { row, count } of plan.rows) {
    const { step, at } = bodyOf.get(row)!;
    const made = workRow(step.body, at, step.rows.length, row === 1 ? 0 : before, S);
    expect([row, made]).toEqual([row, count]);
    expect(step.counts[at]).toBe(count);
    before = made;
  }
  return lines;
}

const sizes: Record<Shape, number[]> = {
  diagonal: [1, 2, 3, 12, 41],
  blocks: [1, 2, 3, 9, 24],
  clusters: [1, 2, 3, 4, 12, 40],
  'solid-square': [1, 2, 3, 4, 5, 12, 40],
  circle: [1, 2, 3, 4, 12, 40],
  hexagon: [1, 2, 3, 4, 5, 9, 12, 40],
  flat: [1, 2, 3, 20],
};
const cases = SHAPES.flatMap((shape) => STITCHES.map((stitch) => [shape, stitch] as const));

describe('instructions re-read', () => {
  it.each(cases)('%s in %s, every size, in both terms', (shape: Shape, stitch: Stitch) => {
    for (const size of sizes[shape]) {
      for (const otherSize of shape === 'blocks' || shape === 'flat' ? [undefined, 1, 2, 13] : [undefined]) {
        const plan = rowPlan(shape, { size, otherSize, stitch });
        for (const terms of ['US', 'UK'] as const) reread(plan, [], terms);
      }
    }
  });

  it('with any colours: every stripe begins with its change, and what is cut or hangs is what was worked out', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SHAPES),
        fc.constantFrom(...STITCHES),
        fc
          .array(
            fc.record({
              colour: fc.constantFrom('moss', 'sand', 'clay'),
              rows: fc.integer({ min: 1, max: 6 }),
            }),
            { minLength: 1, maxLength: 8 },
          )
          .map(joinRuns),
        (shape, stitch, given) => {
          let runs = given;
          // A diagonal square and a square in blocks have an even or odd number of rows of their own.
          if (shape === 'diagonal' && rowsIn(runs) % 2 === 1)
            runs = joinRuns([...runs, { colour: 'moss', rows: 1 }]);
          const rows = rowsIn(runs);
          const plan =
            shape === 'diagonal'
              ? rowPlan(shape, { size: rows / 2, stitch })
              : shape === 'blocks'
                ? rowPlan(shape, {
                    size: Math.ceil((rows + 1) / 2),
                    otherSize: Math.floor((rows + 1) / 2),
                    stitch,
                  })
                : shape === 'flat'
                  ? rowPlan(shape, { size: 9, otherSize: rows, stitch })
                  : rowPlan(shape, { size: rows, stitch });
          expect(plan.rows.length).toBe(rows);
          const lines = reread(plan, runs);
          const changes = lines.filter((line) => line.startsWith('Change to '));
          expect(changes.length).toBe(runs.length - 1);
          const carried = lengths(plan, runs);
          expect(changes.filter((line) => line.includes('pick it up')).length).toBe(
            runs.length - carried.lengths.length,
          );
          // Every length but those still in use at the end is cut at a change, or hangs until it is fastened off.
          expect(changes.filter((line) => line.includes('; cut ')).length).toBe(
            carried.lengths.filter(({ toRow }) => toRow < rows).length,
          );
          expect(lines.at(-1)).toContain(`${carried.ends} ends to weave in`);
          for (const { from, colour } of spans(runs).slice(1)) {
            expect(
              changes.some(
                (line) =>
                  line.startsWith(`Change to ${colour} with the last pull of r`) &&
                  line.includes(` ${from - 1}: `),
              ),
            ).toBe(true);
          }
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('what a diagonal square says', () => {
  const lines = reread(rowPlan('diagonal', { size: 12 }));
  it('says what repeats once', () => {
    expect(lines.filter((line) => line.startsWith('Row'))).toEqual([
      'Row 1: ch 3, 2 hdc in the third ch from the hook (the 2 skipped ch count as the first hdc). (3 hdc)',
      'Rows 2–12: ch 2 (counts as the first hdc), 1 more hdc in the same stitch, 1 hdc in each stitch to the last, 2 hdc in the last stitch. (5, 7 … 25 hdc)',
      'Rows 13–23: ch 2 (does not count), hdc2tog over the first 2 stitches, 1 hdc in each stitch to the last 2, hdc2tog over the last 2 stitches. (23, 21 … 3 hdc)',
      'Row 24: ch 2 (does not count), hdc3tog over the 3 stitches. (1 hdc)',
    ]);
  });

  it('loops before the closing pull: 3, 5 and 7 for hdc (common practice)', () => {
    expect([1, 2, 3].map((n) => loopsBeforePull('hdc', n))).toEqual([3, 5, 7]);
    expect([1, 2, 3].map((n) => loopsBeforePull('sc', n))).toEqual([2, 3, 4]);
  });

  it('stays short however large the piece', () => {
    for (const shape of SHAPES) {
      const plan = rowPlan(shape, { size: 400, ...(shape === 'flat' ? { otherSize: 400 } : {}) });
      expect(listLines(writeInstructions(plan)).length).toBeLessThan(16);
    }
  });
});

it('a series is written as it is read', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 300, max: 900 }),
      fc.integer({ min: -9, max: 9 }),
      fc.integer({ min: 1, max: 30 }),
      (first, by, many) => {
        const values = Array.from({ length: many }, (_, index) => first + by * index);
        expect(unfold(series(values), many)).toEqual(values);
      },
    ),
  );
});
