import { describe, expect, it } from 'vitest';
import { figure, gather, show } from '../../src/chat/answer.ts';
import { evaluate, formula, Working, writeOut, type Step } from '../../src/core/base/working.ts';
import type { Reader } from '../../src/core/base/reader.ts';

describe('what an answer is made of', () => {
  it('leaves out what is undefined or false, keeps nothing and zero, and takes lists apart', () => {
    expect(gather<string | number>('a', undefined, false, ['b', 'c'], [], '', 0)).toEqual([
      'a',
      'b',
      'c',
      '',
      0,
    ]);
    expect(gather(figure('rows', 'Rows', 9), figure('weight', 'Weight', undefined, 'g'))).toEqual([
      { key: 'rows', label: 'Rows', value: 9, unit: '' },
    ]);
    expect(figure('weight', 'Weight', 0, 'g')).toEqual({
      key: 'weight',
      label: 'Weight',
      value: 0,
      unit: 'g',
    });
  });
});

const ROWS = formula({
  label: 'Height',
  formula: 'rows * row_height',
  given: { rows: '', row_height: 'cm' },
  unit: 'cm',
  source: 'derived: each row is as high as the next',
});

describe('a shown answer', () => {
  const reader: Reader = { units: 'imperial', terms: 'UK' };

  it('writes its working out when somebody looks, and no sooner', () => {
    const { steps } = new Working();
    let looked = 0;
    const step: Step = {
      ...ROWS,
      with: { rows: 12, row_height: 2.54 },
      units: ROWS.given,
      get result() {
        looked += 1;
        return evaluate(ROWS.formula, { rows: 12, row_height: 2.54 });
      },
    };
    const { working } = show({ headline: 'Twelve rows.', working: [...steps, step] }, reader);
    expect([working.length, looked]).toEqual([1, 0]);
    const [shown] = working;
    expect(shown?.result).toBe(30.48);
    expect(shown).toMatchObject(writeOut(step, reader));
    expect(shown).toMatchObject({ label: 'Height', unit: 'cm', formula: 'rows * row_height' });
  });

  it('says its data in her ways when a program asks for it', () => {
    const shown = show(
      { headline: '', data: { side: '⟦2.54 cm⟧', kinds: [{ stitch: '⟦hdc⟧', rows: 3 }] } },
      reader,
    );
    expect(shown.data?.()).toEqual({ side: '1 in', kinds: [{ stitch: 'htr', rows: 3 }] });
  });
});
