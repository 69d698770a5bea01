import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { registry } from '../../../commands/index.ts';
import {
  evaluate,
  formula,
  writeStep,
  substitute,
  Working,
  type Step,
} from '../../../src/core/base/working.ts';
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
    const written = (formula: string, values: Record<string, number>, unit: Step['unit'] = '') =>
      writeStep(
        {
          label: '',
          formula,
          with: values,
          units: { yarn: 'm', ball: 'm', side: 'cm' },
          result: evaluate(formula, values),
          unit,
          source: '',
        },
        METRIC,
      );
    expect(written('ceil(round(yarn / ball, 6))', { yarn: 1056, ball: 100 })).toBe(
      'yarn ÷ ball = 1056 m ÷ 100 m = 10.56, so 11',
    );
    expect(written('ceil(round(yarn / ball, 6))', { yarn: 300, ball: 100 })).toBe(
      'yarn ÷ ball = 300 m ÷ 100 m = 3',
    );
    expect(written('floor(yarn / ball)', { yarn: 199, ball: 100 })).toContain('= 1.99, so 1');
    expect(written('mod(plus - 1, multiple) + 1', { plus: 9, multiple: 6 })).toBe(
      'the rest of (plus - 1) ÷ multiple + 1 = the rest of (9 - 1) ÷ 6 + 1 = 3',
    );
    expect(written('abs(side - 3)', { side: 1 }, 'cm')).toBe('|side - 3| = |1 cm - 3| = 2 cm');
    expect(written('max(0, ceil(round(yarn / ball, 6)))', { yarn: 150, ball: 100 })).toContain(
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
