import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { registry } from '../../../commands/index.ts';
import {
  evaluate,
  formula,
  stepLine,
  substituted,
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
    expect(stepLine(step(working), METRIC)).toBe('√(across^2 + along^2) ÷ 2 = √(6 ^ 2 + 8 ^ 2) ÷ 2 = 5 cm');
  });

  it('is worked again in the reader’s own units', () => {
    const working = new Working();
    working.do(SIDE, { across: 2.54 * 6, along: 2.54 * 8 });
    expect(stepLine(step(working), IMPERIAL)).toContain('= 5 in');
  });

  it('says a single value once', () => {
    const working = new Working();
    working.do(ALONE, { stitches: 12 });
    expect(stepLine(step(working), METRIC)).toBe('stitches = 12');
  });

  it('evaluates to its result again when its values are written in, in both units', () => {
    const value = fc.double({ min: 0.01, max: 5000, noNaN: true });
    fc.assert(
      fc.property(value, value, (a, b) => {
        const working = new Working();
        working.do(SIDE, { across: a, along: b });
        working.do(LENGTH, { weight: a, per_gram: b });
        for (const one of working.steps)
          expect(evaluate(substituted(one, METRIC, 'full'), {})).toBeCloseTo(one.result, 6);
        const [, yarn] = working.steps;
        expect(evaluate(substituted(yarn!, IMPERIAL, 'full'), {}) * 0.9144).toBeCloseTo(yarn!.result, 4);
      }),
      { numRuns: 100 },
    );
  });

  it('is a fault of ours when it gives no number', () => {
    expect(() => evaluate('1 / x', { x: 0 })).toThrow(/gave Infinity/);
    expect(() => evaluate('sqrt(x)', { x: -1 })).toThrow();
  });
});

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
      }
    }
    expect(seen).toBeGreaterThan(10);
  });
});
