import { describe, expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { isRequired, opt } from '../../src/chat/options.ts';
import { readyOptions, takes } from '../../src/chat/ready-options.ts';

describe('An option that is ready to be read', () => {
  it('is what it is declared to be where it is left out, for every option of every question', () => {
    let seen = 0;
    for (const { path, question } of registry.routes)
      for (const { name, leftOut } of readyOptions(question.options).all) {
        const option = question.options[name]!;
        expect(leftOut === undefined, `${path} ${name}`).toBe(isRequired(option));
        expect(leftOut?.value, `${path} ${name}`).toBe(option.leftOut);
        seen += 1;
      }
    expect(seen).toBeGreaterThan(300);
  });

  it('is read the same whether it may be left out or not', () => {
    const needed = opt.whole('How many rows', { max: 40 });
    const options = { needed, optional: needed.optional(), usual: needed.default(7) };
    const { all } = readyOptions(options);
    for (const option of all) {
      expect(option.read('12')).toBe(12);
      expect(['41', '2.5', '', 'moss'].filter((text) => takes(option, text))).toEqual([]);
    }
    expect(all.map(({ leftOut }) => leftOut)).toEqual([
      undefined,
      { value: undefined, took: undefined },
      { value: 7, took: 'usual: 7, as none was given.' },
    ]);
  });
});
