import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { registry } from '../../../commands/index.ts';
import {
  evaluate,
  formula,
  formulaText,
  readerOf,
  reckonForReader,
  workedText,
  writeStep,
  substitute,
  Working,
  type Step,
} from '../../../src/core/base/working.ts';
import { speak } from '../../../src/core/base/prepared-formula.ts';
import type { Reader } from '../../../src/core/base/reader.ts';
import { asking } from '../../asking.ts';

const METRIC: Reader = { units: 'metric', terms: 'US' };
const IMPERIAL: Reader = { units: 'imperial', terms: 'US' };

const SIDE = formula({
  label: 'Side',
  formula: 'sqrt(across^2 + along^2) / 2',
  given: { across: 'cm', along: 'cm' },
  unit: 'cm',
  source: 'derived',
});
const LENGTH = formula({
  label: 'Yarn',
  formula: 'weight * per_gram',
  given: { weight: 'g', per_gram: 'm/g' },
  unit: 'm',
  source: 'derived',
});
const ALONE = formula({
  label: 'Stitches',
  formula: 'stitches',
  given: { stitches: '' },
  unit: '',
  source: 'derived',
});

let written = 0;
/** The same formula with blanks behind it: what was parsed once is remembered by its text, and these tests are to see it parsed. */
const anew = (text: string) => `${text}${' '.repeat(++written)}`;

const step = (working: Working): Step => working.steps[0]!;

describe('a step', () => {
  it('is computed from the very formula that is shown', () => {
    const working = new Working();
    expect(working.do(SIDE, { across: 6, along: 8 })).toBe(5);
    expect(writeStep(step(working), METRIC)).toBe(
      '√(across² + along²) ÷ 2 = √((6 cm)² + (8 cm)²) ÷ 2 = 5 cm',
    );
  });

  it('is worked again in the reader’s own units', () => {
    const working = new Working();
    working.do(SIDE, { across: 2.54 * 6, along: 2.54 * 8 });
    expect(writeStep(step(working), IMPERIAL)).toContain('= 5 in');
  });

  it('says a single value once', () => {
    const working = new Working();
    working.do(ALONE, { stitches: 12 });
    expect(writeStep(step(working), METRIC)).toBe('stitches = 12');
  });

  it('is written in marks of school, what guards its rounding left out, the whole rounded at the end', () => {
    const shown = (formula: string, values: Record<string, number>, unit: Step['unit'] = '') =>
      writeStep(
        {
          label: '',
          formula: anew(formula),
          with: values,
          units: { yarn: 'm', ball: 'm', side: 'cm' },
          result: evaluate(formula, values),
          unit,
          source: '',
        },
        METRIC,
      );
    expect(shown('ceil(round(yarn / ball, 6))', { yarn: 1056, ball: 100 })).toBe(
      'yarn ÷ ball = 1056 m ÷ 100 m = 10.56, so 11',
    );
    expect(shown('ceil(round(yarn / ball, 6))', { yarn: 300, ball: 100 })).toBe(
      'yarn ÷ ball = 300 m ÷ 100 m = 3',
    );
    expect(shown('floor(yarn / ball)', { yarn: 199, ball: 100 })).toContain('= 1.99, so 1');
    expect(shown('mod(plus - 1, multiple) + 1', { plus: 9, multiple: 6 })).toBe(
      'the rest of (plus - 1) ÷ multiple + 1 = the rest of (9 - 1) ÷ 6 + 1 = 3',
    );
    expect(shown('abs(side - 3)', { side: 1 }, 'cm')).toBe('|side - 3| = |1 cm - 3| = 2 cm');
    expect(shown('max(0, ceil(round(yarn / ball, 6)))', { yarn: 150, ball: 100 })).toContain(
      'the greatest of (0, round up(150 m ÷ 100 m)) = 2',
    );
  });

  it('evaluates to its result again when its values are written in, in both units', () => {
    const value = fc.double({ min: 0.01, max: 5000, noNaN: true });
    fc.assert(
      fc.property(value, value, (a, b) => {
        const working = new Working();
        working.do(SIDE, { across: a, along: b });
        working.do(LENGTH, { weight: a, per_gram: b });
        for (const one of working.steps)
          expect(evaluate(substitute(one, METRIC, 'full'), {})).toBeCloseTo(one.result, 6);
        const [, yarn] = working.steps;
        expect(evaluate(substitute(yarn!, IMPERIAL, 'full'), {}) * 0.9144).toBeCloseTo(yarn!.result, 4);
      }),
      { numRuns: 100 },
    );
  });

  it('is a fault of ours when it gives no number', () => {
    expect(() => evaluate('1 / x', { x: 0 })).toThrow(/gave Infinity/);
    expect(() => evaluate('sqrt(x)', { x: -1 })).toThrow();
  });
});

describe('a step, mark by mark', () => {
  const stepOf = (
    text: string,
    values: Record<string, number>,
    units: Step['units'] = {},
    unit: Step['unit'] = '',
  ): Step => ({
    label: '',
    formula: anew(text),
    with: values,
    units,
    result: evaluate(text, values),
    unit,
    source: '',
  });
  it.each<[string, Record<string, number>, string]>([
    ['pi * side^3', { side: 2 }, 'π × side³ = π × (2 cm)³ = 25.133'],
    ['side^4 - 1', { side: 2 }, 'side^4 - 1 = (2 cm)^4 - 1 = 15'],
    ['rows^2', { rows: 3 }, 'rows² = 3² = 9'],
    ['rows^2', { rows: -3 }, 'rows² = (-3)² = 9'],
    ['sqrt(side) + 1', { side: 4 }, '√(side) + 1 = √(4 cm) + 1 = 3'],
    ['abs(rows) * 2', { rows: -4 }, '|rows| × 2 = |(-4)| × 2 = 8'],
    // What is raised further on is not this one.
    ['side + 2^2', { side: 2 }, 'side + 2² = 2 cm + 2² = 6'],
    ['-side', { side: 3 }, '-side = -3 cm = -3'],
    ['rows + side', { rows: -1, side: -2 }, 'rows + side = (-1) + (-2 cm) = -3'],
    ['atan(side / 2)', { side: 2 }, 'arctan(side ÷ 2) = arctan(2 cm ÷ 2) = 0.7854'],
    ['atan2(side, rows)', { side: 2, rows: 2 }, 'arctan(side, rows) = arctan(2 cm, 2) = 0.7854'],
    ['min(side, 3)', { side: 5 }, 'the least of (side, 3) = the least of (5 cm, 3) = 3'],
    ['max(side, 3)', { side: 5 }, 'the greatest of (side, 3) = the greatest of (5 cm, 3) = 5'],
    ['mod(rows, 4)', { rows: 7 }, 'the rest of rows ÷ 4 = the rest of 7 ÷ 4 = 3'],
    ['round(rows / 4)', { rows: 7 }, 'rows ÷ 4 = 7 ÷ 4 = 1.75, so 2'],
    ['2 * (rows_done + 1)', { rows_done: 7 }, '2 × (rows done + 1) = 2 × (7 + 1) = 16'],
    ['2 * 3', {}, '2 × 3 = 6'],
  ])('%s', (text, values, shown) => {
    expect(writeStep(stepOf(text, values, { side: 'cm' }), METRIC)).toBe(shown);
  });

  it('has digits enough to go on with, and no commas', () => {
    const shown = (x: number) => workedText(stepOf('1 * x', { x }), METRIC).split(' = ')[1];
    expect([0.123456, 0.99996, 1.23456, 99.12345, 100.126, 12_345.678, 0].map(shown)).toEqual([
      '0.1235',
      '1',
      '1.235',
      '99.123',
      '100.13',
      '12345.68',
      '0',
    ]);
    expect(substitute(stepOf('a - b', { a: -0.123456, b: 2.5 }), METRIC, 'full')).toBe('(-0.123456) - 2.5');
  });

  it('says what is told by the metre, and a ratio that is a name, in the reader’s own units', () => {
    const cost = stepOf('price * yarn', { price: 2, yarn: 3 }, { price: '/m', yarn: 'm' });
    expect(workedText(cost, METRIC)).toBe('2 per m × 3 m = 6');
    expect(workedText(cost, IMPERIAL)).toBe('1.829 per yd × 3.281 yd = 6');
    const ratio = stepOf(
      'yarn * cm_per_m / in_one',
      { yarn: 3, cm_per_m: 100, in_one: 4 },
      { yarn: 'm', cm_per_m: 'cm/m', in_one: '' },
      'cm',
    );
    expect(formulaText(ratio, METRIC)).toBe('yarn × cm per m ÷ in one');
    expect(formulaText(ratio, IMPERIAL)).toBe('yarn × in per yd ÷ in one');
    // A ratio of another name keeps it.
    const named = stepOf('weight * per_gram', { weight: 2, per_gram: 3 }, { weight: 'g', per_gram: 'm/g' });
    expect(formulaText(named, IMPERIAL)).toBe('weight × per gram');
    expect(reckonForReader(ratio, METRIC)).toBe(75);
    expect(reckonForReader(ratio, IMPERIAL)).toBeCloseTo(75 / 2.54, 9);
    expect(speak('in_one_of_two')).toBe('in one of two');
  });

  it('is in the units that were typed, with what comes of it in her own', () => {
    const typed: Reader = { ...IMPERIAL, typed: new Map([['100 g', 'metric']]) };
    const twice = stepOf('weight * 2', { weight: 100 }, { weight: 'g' }, 'g');
    expect(readerOf(twice, typed)).toEqual({ units: 'metric', terms: 'US' });
    expect(workedText(twice, typed)).toBe('100 g × 2 = 200 g = 7.055 oz');
    expect(writeStep(twice, typed)).toBe('weight × 2 = 100 g × 2 = 200 g = 7.055 oz');
    // A count has no units, and needs none of hers behind it.
    const counted = stepOf('weight / 50', { weight: 100 }, { weight: 'g' });
    expect(workedText(counted, typed)).toBe('100 g ÷ 50 = 2');
    // Nothing was typed so, or in her own units.
    for (const reader of [
      IMPERIAL,
      { ...IMPERIAL, typed: new Map() },
      { ...IMPERIAL, typed: new Map([['99 g', 'metric'] as const]) },
      { ...IMPERIAL, typed: new Map([['100 g', 'imperial'] as const]) },
    ]) {
      expect(readerOf(twice, reader)).toBe(reader);
      expect(workedText(twice, reader)).toBe('3.527 oz × 2 = 7.055 oz');
    }
  });
});

/** Reads a shown step back: its numbers put in, what they come to, and that rounded where it is. */
function readAgain(shown: string) {
  const formula = shown
    .replace(/ (cm|mm|m|g)(\/(cm|mm|m|g))?(?![\p{L}\d])/gu, '')
    .replaceAll('×', '*')
    .replaceAll('÷', '/')
    .replaceAll('²', '^2')
    .replaceAll('√', 'sqrt')
    .replaceAll('π', 'pi')
    .replaceAll('arctan', 'atan')
    .replace(/\|([^|]*)\|/g, 'abs($1)')
    .replace(/the rest of (\([^()]*\)|\S+) \/ (\S+)/g, 'mod($1, $2)')
    .replaceAll('the greatest of (', 'max(')
    .replaceAll('the least of (', 'min(')
    .replaceAll('round up(', 'ceil(')
    .replaceAll('round down(', 'floor(');
  const parts = formula.split(' = ');
  const [before = '', result = before] = (parts.at(-1) ?? '').split(', so ');
  const filled =
    parts.length > 1 && !/[a-z]{2} [a-z]/.test(parts.at(-2) ?? '') ? (parts.at(-2) ?? '') : before;
  const value = (text: string) => (/^[a-z ]+$/.test(text) ? Number(before) : evaluate(text, {}));
  return { filled: value(filled), before: Number(before), result: Number(result) };
}

// Shown steps are read by people: written in, each must come to the figure that is said.
describe('every question’s working', () => {
  it('comes to its result when its values are put in', async () => {
    let seen = 0;
    for (const { path, question } of registry.routes) {
      const room = asking();
      for (const line of question.before ?? []) await room.ask(line);
      const { working } = await room.ask(`/${path} ${question.example}`);
      for (const one of working) {
        seen++;
        expect(evaluate(one.formula, one.with), `/${path}: ${one.label}`).toBe(one.result);
        expect(one.shown).toContain('=');
        // What is written down comes to what is said, as far as its digits go.
        const { filled, before, result } = readAgain(one.shown);
        expect(Math.abs(filled - before), `/${path}: ${one.shown}`).toBeLessThan(
          Math.max(0.05, Math.abs(before) * 0.005),
        );
        expect(Math.abs(result - one.result)).toBeLessThan(Math.max(0.001, Math.abs(one.result) * 0.005));
      }
    }
    expect(seen).toBeGreaterThan(10);
  });
});
