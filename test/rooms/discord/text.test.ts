/** Texts are looked over quickly; what comes out is what the slow way would give. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { escaped, oneLine } from '../../../src/rooms/discord/text.ts';

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
