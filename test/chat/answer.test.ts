import { describe, expect, it } from 'vitest';
import { figure, gather } from '../../src/chat/answer.ts';

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
