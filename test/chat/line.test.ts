import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST_LINE, readLine, writeLine } from '../../src/chat/line.ts';
import { Problem } from '../../src/core/base/problem.ts';

const word = fc.stringMatching(/^[a-z][a-z0-9-]{0,12}$/);
const name = fc.stringMatching(/^[a-z][a-z0-9_]{0,12}$/);
const value = fc.oneof(
  fc.string({ minLength: 1, maxLength: 40 }),
  fc.string({
    unit: fc.constantFrom('"', '“', '\\', ' ', ':', 'a', 'shape:', '//', '“”'),
    minLength: 1,
    maxLength: 8,
  }),
);

describe('a typed line', () => {
  it('is read back as it was written', () => {
    fc.assert(
      fc.property(
        fc.array(word, { minLength: 1, maxLength: 2 }),
        fc.dictionary(name, value, { maxKeys: 5 }),
        (words, options) => {
          const line = { words, options: { ...options } };
          expect(readLine(writeLine(line))).toEqual(line);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('is read back whatever a name is made of, one character or among others', () => {
    const back = (options: Readonly<Record<string, string>>) =>
      readLine(writeLine({ words: ['together', 'board'], options })).options;
    for (let code = 0; code <= 0xffff; code++) {
      const alone = String.fromCharCode(code);
      const among = `Bean ${alone}row${alone} throw`;
      const read = back({ alone, among });
      if (read['alone'] !== alone || read['among'] !== among) expect.fail(`U+${code.toString(16)}`);
    }
    expect(back({ name: 'Bean “row” throw' })).toEqual({ name: 'Bean “row” throw' });
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1, maxLength: 60 }), (name) => {
        expect(back({ name })).toEqual({ name });
      }),
    );
  });

  it('is read or refused in words, whatever it is', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 80 }), (text) => {
        try {
          readLine(text);
        } catch (error) {
          expect(error).toBeInstanceOf(Problem);
        }
      }),
      { numRuns: 300 },
    );
  });

  it('lets unquoted words belong to the option before', () => {
    expect(readLine('/border rounds across:120 rounds:hdc dc hdc corner:3')).toEqual({
      words: ['border', 'rounds'],
      options: { across: '120', rounds: 'hdc dc hdc', corner: '3' },
    });
  });

  it('takes curly quotes and addresses', () => {
    expect(readLine('/motif save name:“hen and chicks” note:https://example.org').options).toEqual({
      name: 'hen and chicks',
      note: 'https://example.org',
    });
  });

  it('takes the name of an option in any case, and single quotes around a value', () => {
    expect(
      readLine(`/stitches row Shape:flat SIZE:3 width:'48"' name:'hen and chicks' by:'tis`).options,
    ).toEqual({ shape: 'flat', size: '3', width: '48"', name: 'hen and chicks', by: "'tis" });
    expect(readLine('/settings import file:C:\\me.json').options).toEqual({ file: 'C:\\me.json' });
    expect(readLine('/motif save note:HTTPS://example.org').options).toEqual({ note: 'HTTPS://example.org' });
  });

  it.each([
    ['/stitches row "shape', 'question'],
    ["/stitches row size:''", 'size'],
    ['/stitches row Size:1 size:2', 'size'],
    ['/stitches row shape:"diagonal', 'shape'],
    ['/stitches row size:12 size:13', 'size'],
    ['/stitches row size:', 'size'],
    ['/stitches row shape: size:12', 'shape'],
  ])('%s is refused', (text, option) => {
    let problem: unknown;
    try {
      readLine(text);
    } catch (error) {
      problem = error;
    }
    expect(problem).toMatchObject({ option });
  });

  it('is not read when it is longer than sense', () => {
    expect(() => readLine(`/stitches row ${'x'.repeat(LONGEST_LINE)}`)).toThrow(
      expect.objectContaining({ option: 'question' }),
    );
  });
});
