/** The faults that `npm run mutate` puts into sources: which they are, and that each acts when it is switched on. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { transform } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { formulaMutants, instrument } from '../../tools/mutate/mutants.ts';
import { withTable, type Score } from '../../tools/mutate/score.ts';
import { makeWatch, type Watch } from '../../tools/mutate/watch.ts';

describe('a formula', () => {
  it('is changed in one operator, constant or function at a time', () => {
    expect(formulaMutants('2 * row + 1')).toEqual([
      '2 * row - 1',
      '2 / row + 1',
      '3 * row + 1',
      '2 * row + 2',
    ]);
    expect(formulaMutants('sqrt(a^2 + b) / c')).toEqual([
      'sqrt(a ^ 2 + b) * c',
      '(a ^ 2 + b) / c',
      'sqrt(a ^ 2 - b) / c',
      'sqrt(a * 2 + b) / c',
      'sqrt(a ^ 3 + b) / c',
    ]);
    expect(formulaMutants('max(1, ceil(-x))')).toEqual([
      'min(1, ceil(-x))',
      'max(2, ceil(-x))',
      'max(1, floor(-x))',
      'max(1, ceil(x))',
    ]);
  });
});

describe('a source', () => {
  const SOURCE = `
    const formula = (declared: { formula: string; given: { a: string }; unit: string }) => declared;
    export const TWICE = formula({ formula: '2 * a', given: { a: 'cm' }, unit: '' });
    export const positive = (a: number): boolean => a > 0;
  `;
  const shared = globalThis as { __loopwrightMutants?: Watch };

  it('holds all its mutants, and each acts alone', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'mutants-'));
    try {
      const file = join(folder, 'source.ts');
      writeFileSync(file, SOURCE);
      const { text, mutants } = await instrument(file, 'x-');
      const texts = mutants.flatMap(({ id, formula }) =>
        formula === undefined ? [] : [[id, formula] as const],
      );
      const watch = makeWatch(new Map(texts));
      shared.__loopwrightMutants = watch;
      const { code } = await transform(text, { loader: 'ts', format: 'esm' });
      const loaded = (await import(`data:text/javascript,${encodeURIComponent(code)}`)) as {
        TWICE: { formula: string; given: { a: string }; unit: string };
        positive: (a: number) => boolean;
      };
      const with_ = <T>(change: string, see: () => T) => {
        watch.active = mutants.find(({ replacement }) => replacement === change)!.id;
        const seen = see();
        watch.active = undefined;
        return seen;
      };
      const zero = () => loaded.positive(0);
      expect([zero(), with_('a >= 0', zero), with_('a <= 0', zero), with_('true', zero)]).toEqual([
        false,
        true,
        true,
        true,
      ]);
      const { TWICE } = loaded;
      expect([TWICE.formula, with_('2 / a', () => TWICE.formula)]).toEqual(['2 * a', '2 / a']);
      expect([TWICE.given.a, with_(`a: ''`, () => TWICE.given.a)]).toEqual(['cm', '']);
      expect([TWICE.unit, with_(`unit: 'cm'`, () => TWICE.unit)]).toEqual(['', 'cm']);
      expect(mutants.find(({ replacement }) => replacement === 'a >= 0')).toMatchObject({
        line: 4,
        original: 'a > 0',
        kind: 'EqualityOperator',
      });
    } finally {
      delete shared.__loopwrightMutants;
      rmSync(folder, { recursive: true });
    }
  });
});

describe('the table of faults', () => {
  const measured = (file: string, byTests: number): Score => ({
    file: `src/core/${file}`,
    mutants: 8,
    byTests,
    byTypes: 1,
    formulas: 0,
    formulasKilled: 0,
    left: [],
  });
  const empty =
    'Before.\n\n<!-- faults: written by `npm run mutate -- --table FILE…` -->\n<!-- end of faults -->\n\nAfter.\n';
  const sources = ['src/core/rows/flat.ts', 'src/core/base/sum.ts', 'src/core/rows/plan.ts'];
  const rows = (page: string) => page.split('\n').filter((line) => line.includes('.ts |'));

  it('takes in what was measured, in order, and leaves the rest as it was', () => {
    const first = withTable(empty, [measured('rows/flat.ts', 5), measured('base/sum.ts', 6)], sources);
    expect(rows(first)).toEqual([
      '| base/sum.ts | 8 | 6 | 1 | 87 % |  |',
      '| rows/flat.ts | 8 | 5 | 1 | 75 % |  |',
    ]);
    const second = withTable(first, [measured('rows/plan.ts', 7), measured('rows/flat.ts', 6)], sources);
    expect(rows(second)).toEqual([
      '| base/sum.ts | 8 | 6 | 1 | 87 % |  |',
      '| rows/flat.ts | 8 | 6 | 1 | 87 % |  |',
      '| rows/plan.ts | 8 | 7 | 1 | 100 % |  |',
    ]);
    // Judged by some of the tests alone, the share can only be larger.
    expect(rows(withTable(second, [measured('rows/plan.ts', 6)], sources, true))).toContain(
      '| rows/plan.ts | 8 | 6 | 1 | ≥ 87 % |  |',
    );
    expect(second.startsWith('Before.\n\n<!--') && second.endsWith('-->\n\nAfter.\n')).toBe(true);
  });

  it('drops the row of a file that is gone, and writes into no page that has no place for it', () => {
    const page = withTable(empty, [measured('rows/flat.ts', 5), measured('base/sum.ts', 6)], sources);
    expect(rows(withTable(page, [], ['src/core/base/sum.ts']))).toEqual([
      '| base/sum.ts | 8 | 6 | 1 | 87 % |  |',
    ]);
    expect(() => withTable('Nothing.', [], sources)).toThrow('place');
  });
});
