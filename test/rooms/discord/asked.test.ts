import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readAsked, writeAsked } from '../../../src/rooms/discord/asked.ts';

const question = fc.constantFrom('resize', 'together pledge', 'stitches row');
const name = fc.oneof(
  fc.stringMatching(/^[a-z][a-z0-9_]{0,12}$/),
  fc.constantFrom('constructor', 'toString'.toLowerCase()),
);
const value = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.string({
    unit: fc.constantFrom(';', '~', ' ', ':', '"', '”', '\\', '\n', '\0', '\u202e', '\ud800', 'a'),
  }),
);

describe('a question as values', () => {
  it('is read back exactly as it was written, whatever is in it', () => {
    fc.assert(
      fc.property(question, fc.dictionary(name, value, { noNullPrototype: true }), (question, options) => {
        const asked = { question, options };
        expect(readAsked(writeAsked(asked))).toEqual(asked);
      }),
      { numRuns: 1_000 },
    );
  });

  it('holds nothing that the platform trims, hides or refuses', () => {
    fc.assert(
      fc.property(fc.dictionary(name, value, { noNullPrototype: true }), (options) => {
        const text = writeAsked({ question: 'resize', options });
        expect(text).toBe(text.trim());
        expect(text).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}]/u);
      }),
    );
  });

  it('is no other text than those that were written: what is read is written the same', () => {
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ unit: 'binary' }),
          fc.stringMatching(/^[a-z ]{1,9}(;[a-z]{0,3}[ a-z~0-9;]{0,9}){0,4}$/),
        ),
        (text) => {
          const asked = readAsked(text);
          if (asked !== undefined) expect(writeAsked(asked)).toBe(text);
        },
      ),
      { numRuns: 1_000 },
    );
  });

  it.each([
    '',
    '/together pledge name:Shore',
    'together pledge;name a;name b',
    'together pledge;name',
    'together pledge;__proto__ a',
    'together pledge;name ~0041',
    'together pledge;name a~',
    'together pledge;name a;',
    ' together pledge',
    '#0',
  ])('%j is none', (text) => expect(readAsked(text)).toBeUndefined());
});
