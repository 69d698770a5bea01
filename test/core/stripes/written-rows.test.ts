/**
 * The instructions re-read by a parser that knows only what a crocheter knows: a stitch is worked into a stitch, two in
 * one make one more, two together one fewer. Row by row it must eat exactly the row before and leave the count that the
 * instructions state and the plan has, so that words and plan can never disagree.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinRuns, countRows, listSpans } from '../../../src/core/stripes/colour-runs.ts';
import { cutLengths } from '../../../src/core/stripes/carrying.ts';
import { planRows, SHAPES, type RowPlan, type Shape } from '../../../src/core/rows/index.ts';
import { forReader, type Terms } from '../../../src/core/base/reader.ts';
import {
  countLoops,
  rowsIn,
  writeSeries,
  listLines,
  writeInstructions,
  writeRow,
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
        const plan = planRows(shape, { size, otherSize, stitch });
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
          if (shape === 'diagonal' && countRows(runs) % 2 === 1)
            runs = joinRuns([...runs, { colour: 'moss', rows: 1 }]);
          const rows = countRows(runs);
          const plan =
            shape === 'diagonal'
              ? planRows(shape, { size: rows / 2, stitch })
              : shape === 'blocks'
                ? planRows(shape, {
                    size: Math.ceil((rows + 1) / 2),
                    otherSize: Math.floor((rows + 1) / 2),
                    stitch,
                  })
                : shape === 'flat'
                  ? planRows(shape, { size: 9, otherSize: rows, stitch })
                  : planRows(shape, { size: rows, stitch });
          expect(plan.rows.length).toBe(rows);
          const lines = reread(plan, runs);
          const changes = lines.filter((line) => line.startsWith('Change to '));
          expect(changes.length).toBe(runs.length - 1);
          const carried = cutLengths(plan, runs);
          expect(changes.filter((line) => line.includes('pick it up')).length).toBe(
            runs.length - carried.lengths.length,
          );
          // Every length but those still in use at the end is cut at a change, or hangs until it is fastened off.
          expect(changes.filter((line) => line.includes('; cut ')).length).toBe(
            carried.lengths.filter(({ toRow }) => toRow < rows).length,
          );
          expect(lines.at(-1)).toContain(`${carried.ends} ends to weave in`);
          for (const { from, colour } of listSpans(runs).slice(1)) {
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
  const lines = reread(planRows('diagonal', { size: 12 }));
  it('says what repeats once', () => {
    expect(lines.filter((line) => line.startsWith('Row'))).toEqual([
      'Row 1: ch 3, 2 hdc in the third ch from the hook (the 2 skipped ch count as the first hdc). (3 hdc)',
      'Rows 2–12: ch 2 (counts as the first hdc), 1 more hdc in the same stitch, 1 hdc in each stitch to the last, 2 hdc in the last stitch. (5, 7 … 25 hdc)',
      'Rows 13–23: ch 2 (does not count), hdc2tog over the first 2 stitches, 1 hdc in each stitch to the last 2, hdc2tog over the last 2 stitches. (23, 21 … 3 hdc)',
      'Row 24: ch 2 (does not count), hdc3tog over the 3 stitches. (1 hdc)',
    ]);
  });

  it('loops before the closing pull: 3, 5 and 7 for hdc (common practice)', () => {
    expect([1, 2, 3].map((n) => countLoops('hdc', n))).toEqual([3, 5, 7]);
    expect([1, 2, 3].map((n) => countLoops('sc', n))).toEqual([2, 3, 4]);
  });

  it('stays short however large the piece', () => {
    for (const shape of SHAPES) {
      const plan = planRows(shape, { size: 400, ...(shape === 'flat' ? { otherSize: 400 } : {}) });
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
        expect(unfold(writeSeries(values), many)).toEqual(values);
      },
    ),
  );
});

/** The lines of a plan, its tokens in US terms. */
const linesOf = (plan: RowPlan, runs: Parameters<typeof writeInstructions>[1] = []) => {
  const { before, steps, after } = writeInstructions(plan, runs);
  const shown = (line: string) => forReader(line, { units: 'metric', terms: 'US' });
  return {
    before: before.map(shown),
    steps: steps.map((step) => shown('change' in step ? step.change : step.text)),
    after: after.map(shown),
  };
};

describe('one row by itself', () => {
  it.each(cases)('%s in %s can be worked, and has its change of colour', (shape, stitch) => {
    for (const size of [1, 2, 5]) {
      const plan = planRows(shape, { size, stitch, ...(shape === 'flat' ? { otherSize: 7 } : {}) });
      const rows = plan.rows.length;
      const half = Math.ceil(rows / 2);
      const runs = joinRuns([
        { colour: 'moss', rows: half },
        ...(rows > half ? [{ colour: 'sand', rows: rows - half }] : []),
      ]);
      const changes = writeInstructions(plan, runs).steps.flatMap((step) => ('change' in step ? [step] : []));
      let before = 0;
      for (const { row, count } of plan.rows) {
        const { text, change } = writeRow(plan, runs, row);
        expect(text).toMatch(/\.$/);
        const body = forReader(text, { units: 'metric', terms: 'US' }).slice(0, -1);
        expect(workRow(body, 0, 1, before, stitch)).toBe(count);
        // The very first row only begins with its colour: nothing is changed.
        expect(change).toBe(row === 1 ? undefined : changes.find(({ from }) => from === row)?.change);
        before = count;
      }
    }
  });
});

describe('corners', () => {
  /** Into which stitch of the round below each stitch goes, in order. */
  function worked(body: string): number[] {
    const into: number[] = [];
    let at = -1;
    const work = (text: string): void => {
      const rules: [RegExp, (...found: string[]) => void][] = [
        [
          /^\[(.*?)\] (\d+) times?/,
          (inside, times) => Array.from({ length: Number(times) }, () => work(inside)),
        ],
        [/^ch \d+ \(does not count\)/, () => undefined],
        [/^ch \d+ \(counts as the first \w+\)/, () => into.push(++at)],
        [/^(\d+) more \w+ in the same stitch/, (n) => into.push(...Array<number>(Number(n)).fill(at))],
        [/^(\d+) \w+ in the next stitch/, (n) => into.push(...Array<number>(Number(n)).fill(++at))],
        [
          /^1 \w+ in each of the next (\d+) stitches/,
          (n) => Array.from({ length: Number(n) }, () => into.push(++at)),
        ],
      ];
      for (let left = text; left !== '';) {
        const rule = rules.find(([pattern]) => pattern.test(left));
        if (!rule) throw new Error(`cannot work “${left}”`);
        const [whole, ...found] = rule[0].exec(left)!;
        rule[1](...found);
        left = left.slice(whole.length).replace(/^, /, '');
      }
    };
    work(body);
    return into;
  }

  it.each(
    STITCHES.flatMap((stitch) =>
      (['hexagon', 'solid-square'] as const).map((shape) => [shape, stitch] as const),
    ),
  )('of a %s in %s sit on the middle of the corner below, in every round', (shape, stitch) => {
    const plan = planRows(shape, { size: 14, stitch });
    let middles: number[] = [];
    for (const { row } of plan.rows.slice(1)) {
      const into = worked(
        forReader(writeRow(plan, [], row).text, { units: 'metric', terms: 'US' }).slice(0, -1),
      );
      const corners = [...new Set(into)].filter((below) => into.filter((one) => one === below).length > 1);
      expect(corners).toHaveLength(shape === 'hexagon' ? 6 : 4);
      if (row > 2)
        corners.forEach((below, index) => expect(Math.abs(below - middles[index]!)).toBeLessThanOrEqual(0.5));
      middles = corners.map((below) => (into.indexOf(below) + into.lastIndexOf(below)) / 2);
    }
  });

  it('of a circle there are none: every section begins with its increase, one above the other', () => {
    expect(linesOf(planRows('circle', { size: 4, stitch: 'sc' })).steps).toEqual([
      'Round 1: ch 1 (does not count), 6 sc in the ring. (6 sc)',
      'Round 2: ch 1 (does not count), 2 sc in the next stitch, [2 sc in the next stitch] 5 times. (12 sc)',
      'Rounds 3–4: ch 1 (does not count), 2 sc in the next stitch, [1 sc in each of the next 1, 2 stitches, 2 sc in the next stitch] 5 times, 1 sc in each of the next 1, 2 stitches. (18, 24 sc)',
    ]);
    expect(linesOf(planRows('circle', { size: 3, stitch: 'dc' })).steps.at(-1)).toBe(
      'Round 3: ch 3 (counts as the first dc), 1 more dc in the same stitch, [1 dc in the next stitch, 2 dc in the next stitch] 11 times, 1 dc in the next stitch. (36 dc)',
    );
  });
});

describe('rows in blocks', () => {
  const rows = (size: number, otherSize: number) => linesOf(planRows('blocks', { size, otherSize })).steps;
  const GAINS = '1 new block, 1 block in each chain space to the last, sl st in the last chain space.';
  const LOSES = 'sl st to the first chain space, 1 block in each chain space to the end.';

  it('that keep their number gain at one edge and lose at the other: by turns at their beginning and at their end', () => {
    expect(rows(3, 8)).toEqual([
      'Row 1: 1 new block. (1 block)',
      'Rows 2–3: 1 new block, 1 block in each chain space to the end. (2, 3 blocks)',
      ...[4, 5, 6, 7, 8].map((row) => `Row ${row}: ${row % 2 === 0 ? GAINS : LOSES} (3 blocks)`),
      'Rows 9–10: sl st to the first chain space, 1 block in each chain space to the last, sl st in the last chain space. (2, 1 blocks)',
    ]);
  });

  it('are said two by two where there are three of each, what is left by itself', () => {
    expect(rows(3, 9).slice(2, -1)).toEqual([
      `Rows 4, 6, 8: ${GAINS} (3 blocks)`,
      `Rows 5, 7, 9: ${LOSES} (3 blocks)`,
    ]);
    expect(rows(3, 12).slice(2, -1)).toEqual([
      `Rows 4, 6 … 10: ${GAINS} (3 blocks)`,
      `Rows 5, 7 … 11: ${LOSES} (3 blocks)`,
      `Row 12: ${GAINS} (3 blocks)`,
    ]);
    expect(rows(1, 7)).toEqual([
      'Row 1: 1 new block. (1 block)',
      `Rows 2, 4, 6: ${GAINS} (1 block)`,
      `Rows 3, 5, 7: ${LOSES} (1 block)`,
    ]);
  });
});

describe('what is said before the rows', () => {
  it.each(cases)('%s in %s: every short word that is used, and no other', (shape, stitch) => {
    const { before, steps } = linesOf(
      planRows(shape, { size: 4, stitch, ...(shape === 'flat' ? { otherSize: 4 } : {}) }),
    );
    const used = [...steps, ...before.slice(1)].join(' ');
    const explained = before[0]!.split('; ').map((one) => one.split(': ')[0]!);
    expect(explained).toEqual([
      'ch',
      ...(used.includes('sl st') ? ['sl st'] : []),
      stitch,
      ...(used.includes('2tog') ? [`${stitch}2tog, ${stitch}3tog`] : []),
    ]);
  });

  it.each(cases)('%s in %s: how it is begun, turned and joined, and what its chains are', (shape, stitch) => {
    const { before, steps } = linesOf(
      planRows(shape, { size: 4, stitch, ...(shape === 'flat' ? { otherSize: 4 } : {}) }),
    );
    const used = steps.join(' ');
    const notes = before.slice(1).join(' ');
    expect(notes.includes('Begin with a ring')).toBe(used.includes('in the ring'));
    expect(notes.includes('Turn at the end of every row.')).toBe(used.includes('Row'));
    expect(notes.includes('A new block: ')).toBe(used.includes('1 new block'));
    // In rows the next row must know the chain for a stitch; in joined rounds nothing is worked into it.
    const inRows = used.includes('Row') && shape !== 'blocks';
    expect(notes.includes('goes into its top')).toBe(inRows && used.includes('counts as the first'));
    expect(notes.includes('left unworked')).toBe(
      used.includes('counts as the first') && used.includes('does not count'),
    );
    expect(notes.includes('Loops on the hook')).toBe(used.includes('tog'));
    expect(notes.includes('Each corner sits')).toBe(shape === 'hexagon' || shape === 'solid-square');
  });

  it('tells the chains of a block: three to work into, and those that are skipped', () => {
    const told = STITCHES.map((stitch) =>
      /A new block: ch (\d), 1 \w+ in the (\w+) ch/.exec(
        linesOf(planRows('blocks', { size: 2, stitch })).before[1]!,
      )!,
    );
    expect(told.map(([, chain, into]) => [chain, into])).toEqual([
      ['4', 'second'],
      ['5', 'third'],
      ['6', 'fourth'],
      ['7', 'fifth'],
    ]);
  });

  it('counts the loops before the closing pull', () => {
    expect(linesOf(planRows('diagonal', { size: 3 })).before.at(-1)).toBe(
      'Loops on the hook before the closing pull: hdc 3, two together 5, three together 7 (common practice).',
    );
  });
});

describe('changes of colour', () => {
  const run = (rows: number, colour: string) => ({ colour, rows });

  it('in rows say where the old colour hangs, and where the new one is taken up', () => {
    const plan = planRows('flat', { size: 10, otherSize: 8 });
    const { steps, after } = linesOf(plan, [run(2, 'moss'), run(2, 'sand'), run(2, 'moss'), run(2, 'sand')]);
    expect(steps.filter((line) => !line.startsWith('Row'))).toEqual([
      'Begin with moss.',
      'Change to sand with the last pull of row 2: join it, leaving 15 cm; let moss hang at the edge where row 2 ended.',
      'Change to moss with the last pull of row 4: pick it up where it hangs since row 2, past 2 rows, without pulling it tight; let sand hang at the edge where row 4 ended.',
      'Change to sand with the last pull of row 6: pick it up where it hangs since row 4, past 2 rows, without pulling it tight; cut moss, leaving 15 cm.',
    ]);
    expect(after).toEqual(['Fasten off, leaving 15 cm; 4 ends to weave in, each in three passes.']);
    expect(steps.filter((line) => line.startsWith('Row'))).toHaveLength(5);
  });

  it('in rounds are made at the join', () => {
    const plan = planRows('circle', { size: 3 });
    expect(linesOf(plan, [run(1, 'moss'), run(1, 'sand'), run(1, 'moss')]).steps[2]).toBe(
      'Change to sand with the last pull of round 1: join it, leaving 15 cm; let moss hang at the join.',
    );
  });

  it('are looked for in the length that is worked with, not in an earlier one of the colour', () => {
    // Moss is cut at row 2 and joined anew at row 8: sand hangs only there.
    const plan = planRows('flat', { size: 10, otherSize: 12 });
    const { steps } = linesOf(plan, [run(2, 'moss'), run(5, 'sand'), run(3, 'moss'), run(2, 'sand')]);
    expect(steps.filter((line) => line.startsWith('Change'))).toEqual([
      'Change to sand with the last pull of row 2: join it, leaving 15 cm; cut moss, leaving 15 cm.',
      'Change to moss with the last pull of row 7: join it, leaving 15 cm; cut sand, leaving 15 cm.',
      'Change to sand with the last pull of row 10: join it, leaving 15 cm; cut moss, leaving 15 cm.',
    ]);
  });
});

it('a series of few numbers names them all', () => {
  expect(
    [[7], [7, 7, 7], [7, 9], [7, 9, 11], [7, 9, 11, 13], []].map((values) => writeSeries(values)),
  ).toEqual(['7', '7', '7, 9', '7, 9, 11', '7, 9 … 13', '0']);
});

describe('the rows that an instruction says', () => {
  it('are those that its words name, each row in one of them', () => {
    for (const shape of SHAPES)
      for (const size of [1, 2, 5, 12]) {
        const plan = planRows(shape, { size, otherSize: shape === 'flat' ? 4 : undefined });
        const { steps } = writeInstructions(plan);
        const said = steps.flatMap((step) => ('change' in step ? [] : [step]));
        for (const step of said) {
          const [read] = readSteps([forReader(step.text, { units: 'metric', terms: 'US' })], plan.stitch);
          expect(
            rowsIn(plan, step).map(({ row }) => row),
            step.text,
          ).toEqual(read!.rows);
        }
        const rows = said.flatMap((step) => rowsIn(plan, step).map(({ row }) => row));
        expect(rows.sort((a, b) => a - b)).toEqual(plan.rows.map(({ row }) => row));
      }
  });
});
