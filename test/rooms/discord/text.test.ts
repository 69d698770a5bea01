/** Texts are looked over quickly; what comes out is what the slow way would give. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { asFilledIn, asTyped, escaped, oneLine, unquoted } from '../../../src/rooms/discord/text.ts';

const pieces = fc.constantFrom(
  ...[
    'a',
    'b1',
    '.',
    ' ',
    '  ',
    '\t',
    '\n',
    ':',
    '//',
    '*',
    '_',
    '@',
    '<',
    '>',
    '#',
    '- ',
    '1. ',
    'é',
    '😀',
    '\u200b',
  ],
  ...[
    '\u202e',
    '\u0007',
    '\u0085',
    '\u00a0',
    '\ud800',
    '\udc00',
    '\\',
    '`',
    '…',
    '⟦',
    '⟧',
    '\ufeff',
    '\u2028',
    '編み',
  ],
);
const texts = fc.array(pieces, { maxLength: 20 }).map((all) => all.join(''));

const bare = (text: string) =>
  text
    .replace(/[^\P{Cc}\n]|\p{Cs}/gu, ' ')
    .replace(/[\u200b\u200e\u200f\u202a-\u202e\u2060-\u2069\ufeff]/g, '')
    .replace(/⟦[^⟧…]*(?=…?$)/, '');

it('one line is one line, with single spaces and nothing hidden', () => {
  fc.assert(
    fc.property(texts, (text) => {
      expect(oneLine(text)).toBe(bare(text).replace(/\s+/g, ' ').trim());
    }),
  );
});

it('escapes points between letters, marks and addresses', () => {
  fc.assert(
    fc.property(texts, (text) => {
      const slowly = bare(text)
        .replace(/[\\*_~|`[\]<@]/g, '\\$&')
        .replace(/^(\s*)([>#+-])/gm, '$1\\$2')
        .replace(/^(\s*\d{1,9})([.)])(?=\s)/gm, '$1\\$2')
        .replace(/:(?=\/\/)/g, '\\:')
        .replace(/(?<=[\p{L}\p{N}])\.(?=\p{L}{2})/gu, '\\.');
      expect(escaped(text)).toBe(slowly);
    }),
  );
});

describe('quotes around what is typed into a form', () => {
  it.each([
    ['"moss square"', 'moss square'],
    ['“moss square”', 'moss square'],
    ['„moss square“', 'moss square'],
    ["'moss square'", 'moss square'],
    ['‘moss square’', 'moss square'],
    [' "moss" ', 'moss'],
    ['"13x10 over 4in"', '13x10 over 4in'],
    ['"48""', '48"'],
    ['"5\'6""', '5\'6"'],
    ["'don't stop'", "don't stop"],
    ['""moss""', '"moss"'],
  ])('are taken off: %s', (typed, meant) => expect(unquoted(typed)).toBe(meant));

  it.each([
    '48"',
    '"',
    '""',
    "'tis",
    '"a" and "b"',
    "'a' and 'b'",
    'the "big" one',
    '"a',
    '“a" or "b”',
    'moss',
    '',
  ])('are left where they are no pair around the whole: %s', (typed) => expect(unquoted(typed)).toBe(typed));

  it('are put around an offer that would lose its own', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom('"', '“', '”', "'", 'a', ' ', '4') })),
        (name) => {
          const value = name.trim();
          expect(unquoted(asTyped(value))).toBe(value);
        },
      ),
    );
  });

  it('are not shown in an example', () => {
    expect(asFilledIn('/motif define name:"moss square" size:12 colours:"4 rows moss, 2 rows sand"')).toBe(
      '/motif define name:moss square size:12 colours:4 rows moss, 2 rows sand',
    );
  });
});
