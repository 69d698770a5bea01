/** What the rule that keeps arithmetic out of commands reports, and what it lets be. */
import { Linter } from 'eslint';
import ts from 'typescript';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';
import { noReckoning } from '../../tools/lint/no-reckoning.js';

const FILE = 'command.ts';

/** The little that the snippets take for granted, instead of a whole library of types. */
const GIVEN = `
interface Numbers { length: number; sort(by: (a: number, b: number) => number): Numbers; reduce(by: (all: number, one: number) => number): number }
declare const Math: { abs(n: number): number; max(...n: number[]): number; round(n: number): number };
declare const width: number, height: number, word: string, list: Numbers;
`;

/** The expressions that the rule reports in a line of a command. */
function reportedIn(line: string): string[] {
  const code = GIVEN + line;
  const source = ts.createSourceFile(FILE, code, ts.ScriptTarget.Latest, true);
  const host: ts.CompilerHost = {
    ...ts.createCompilerHost({}),
    getSourceFile: (name) => (name === FILE ? source : undefined),
    fileExists: (name) => name === FILE,
    getCurrentDirectory: () => '',
  };
  const program = ts.createProgram([FILE], { noLib: true, strict: true, types: [] }, host);
  const config = {
    files: ['**/*.ts'],
    languageOptions: { parser: tseslint.parser, parserOptions: { programs: [program] } },
    plugins: { house: { rules: { 'no-reckoning': noReckoning } } },
    rules: { 'house/no-reckoning': 'error' },
  } as Linter.Config;
  return new Linter().verify(code, config, FILE).map(({ ruleId, message }) => {
    expect(ruleId, message).toBe('house/no-reckoning');
    return /: (.+) belongs/.exec(message)?.[1] ?? message;
  });
}

describe('the rule against reckoning in commands', () => {
  it.each([
    'width * height',
    'width / 2',
    '100 * width',
    'width % 2',
    'width ** 2',
    'width + height',
    'width - height',
    'width - 2',
    'list.length - 2',
    'Math.max',
    'Math.round',
  ])('reports %s', (expression) => {
    expect(reportedIn(`export const found = ${expression};`)).toEqual([expression]);
  });

  it('reports a sum, however it is added up', () => {
    expect(reportedIn('list.reduce((all, one) => all + one);')).toEqual(['all + one']);
    expect(reportedIn('let all = 0; all += width;')).toEqual(['all += width']);
    expect(reportedIn('let all = 1; all *= width;')).toEqual(['all *= width']);
  });

  it('reports a difference inside what is no order', () => {
    expect(reportedIn('list.reduce((a, b) => a - b);')).toEqual(['a - b']);
  });

  it.each([
    ['one more', 'width + 1'],
    ['one less', 'list.length - 1'],
    ['one more than', '1 + width'],
    ['words put together', "word + ' rows'"],
    ['words with a number in them', 'word + width'],
    ['an amount without its sign', 'Math.abs(width)'],
    ['the sign alone', '-width'],
    ['the order of numbers', 'list.sort((a, b) => a - b)'],
    ['comparing', 'width > height'],
    ['counting on', 'list.length'],
  ])('lets %s be', (_, expression) => {
    expect(reportedIn(`export const found = ${expression};`)).toEqual([]);
  });
});
