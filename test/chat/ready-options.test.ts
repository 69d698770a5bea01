import { describe, expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { isRequired } from '../../src/chat/options.ts';
import { readyOptions, type ReadyOption } from '../../src/chat/ready-options.ts';
import { Problem } from '../../src/core/base/problem.ts';

const TEXTS = [
  '',
  ' ',
  '0',
  '-1',
  '12',
  '2.5',
  '1,000',
  'yes',
  'all',
  'id12',
  'moss',
  '120cm',
  '13x10',
  '170m/100g',
  'US hdc',
];

/** What is read, or the code of what is wrong. */
function read({ read: reader }: ReadyOption, text: string): unknown {
  try {
    return { value: reader(text) };
  } catch (problem) {
    if (!(problem instanceof Problem)) throw problem;
    return { code: problem.code, says: problem.message };
  }
}

describe('An option that is ready to be read', () => {
  it('is read as its declaration reads it, for every option of every question', () => {
    const seen = new Set<unknown>();
    for (const { path, question } of registry.routes) {
      for (const option of readyOptions(question.options).all) {
        const schema = question.options[option.name]!;
        if (seen.has(schema)) continue;
        seen.add(schema);
        for (const text of [option.meta.example, ...TEXTS]) {
          const { success, data, error } = schema.safeParse(text);
          const [issue] = error?.issues ?? [];
          const problem: unknown = issue?.code === 'custom' ? issue.params?.['problem'] : undefined;
          const { code, message } = problem instanceof Problem ? problem : { code: 'none', message: 'none' };
          const declared = success ? { value: data } : { code, says: message };
          expect(read(option, text), `${path} ${option.name}:${text}`).toEqual(declared);
        }
        const leftOut = schema.safeParse(undefined);
        expect(option.leftOut?.value, `${path} ${option.name}`).toEqual(leftOut.data);
        expect(option.leftOut === undefined, `${path} ${option.name}`).toBe(!leftOut.success);
        expect(isRequired(schema)).toBe(!leftOut.success);
      }
    }
    expect(seen.size).toBeGreaterThan(100);
  });
});
