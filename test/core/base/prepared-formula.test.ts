/** Formulas are evaluated by functions made of mathjs's tree: what they give is what mathjs gives, to the last bit. */
import fc from 'fast-check';
import { all, create } from 'mathjs/number';
import { describe, expect, it } from 'vitest';
import { prepare } from '../../../src/core/base/prepared-formula.ts';
import { everyFormula } from '../every-formula.ts';

// The whole of mathjs, as it comes.
const math = create(all ?? {});

/** Numbers as they are typed, as they are reckoned, halves of decimals, and such as nobody means. */
const numbers = fc.oneof(
  fc.integer({ min: 0, max: 400 }),
  fc.integer({ min: -50, max: 2_000_000 }).map((n) => n / 2),
  fc.integer({ min: -10_000, max: 10_000_000 }).map((n) => n / 1_000),
  fc.integer({ min: 0, max: 2_000_000_000 }).map((n) => (n + 0.5) / 1e6),
  fc.double({ min: 0.01, max: 500, noNaN: true }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.constantFrom(0, -0, 1, 100, 0.5, 1.0000000000001, 2.9999999999999, 1e-7, 1e21, 0.1 + 0.2),
);

function alike(formula: string, names: readonly string[], numRuns: number): void {
  const theirs = math.compile(formula);
  const { run } = prepare(formula);
  fc.assert(
    fc.property(fc.tuple(...names.map(() => numbers)), (drawn) => {
      const values = Object.fromEntries(names.map((name, at) => [name, drawn[at] ?? 0]));
      const ours = run(values);
      const wanted: unknown = theirs.evaluate({ ...values });
      if (!Object.is(ours, wanted)) throw new Error(`${formula} gives ${ours}, mathjs ${String(wanted)}`);
    }),
    { numRuns },
  );
}

const formulas = await everyFormula();

describe('evaluated as by mathjs', () => {
  it.each([...formulas])('%s', (_, { formula, given }) => {
    alike(formula, Object.keys(given), 200);
  });

  it.each([
    'round(x, 6)',
    'round(x, 2)',
    'round(x)',
    'ceil(x)',
    'floor(x)',
    'ceil(round(x, 6))',
    'ceil(x, 2)',
    'floor(x, 3)',
    'max(x, y)',
    'min(x, y, 3)',
    'max(x)',
    'x ^ 2 - -y',
    'mod(x, y)',
    'atan2(x, y) * 180 / pi',
    // Nothing that a formula has needed so far.
    'x > y ? x : y',
  ])('%s', (formula) => {
    alike(formula, ['x', 'y'], 3_000);
  });
});

it('misses what it is not handed, and says what', () => {
  expect(() => prepare('2 * rows').run({})).toThrow('rows');
});
