import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { altText, drawable, escaped, fitted, lines, text, widthOf } from '../../src/pictures/drawing.ts';
import { FONT } from '../../src/pictures/font.ts';

const { resolve } = createRequire(import.meta.url);

/** What a TrueType file says of itself: which letters it has, and how wide they are, in ems (OpenType, tables cmap, hmtx, head, hhea). */
function typeface(file: string) {
  const bytes = readFileSync(resolve(file));
  const tables = new Map(
    Array.from({ length: bytes.readUInt16BE(4) }, (_, index) => {
      const at = 12 + 16 * index;
      return [bytes.toString('latin1', at, at + 4), bytes.readUInt32BE(at + 8)] as const;
    }),
  );
  const cmap = tables.get('cmap')!;
  const glyphs = new Map<number, number>();
  for (let index = 0; index < bytes.readUInt16BE(cmap + 2); index++) {
    const sub = cmap + bytes.readUInt32BE(cmap + 8 + 8 * index);
    if (bytes.readUInt16BE(sub) !== 12) continue;
    for (let group = 0; group < bytes.readUInt32BE(sub + 12); group++) {
      const at = sub + 16 + 12 * group;
      for (let code = bytes.readUInt32BE(at); code <= bytes.readUInt32BE(at + 4); code++)
        glyphs.set(code, bytes.readUInt32BE(at + 8) + code - bytes.readUInt32BE(at));
    }
  }
  const em = bytes.readUInt16BE(tables.get('head')! + 18);
  const wide = bytes.readUInt16BE(tables.get('hhea')! + 34);
  const width = (code: number) =>
    bytes.readUInt16BE(tables.get('hmtx')! + 4 * Math.min(glyphs.get(code) ?? 0, wide - 1)) / em;
  return { has: (code: number) => glyphs.has(code), width };
}
const [regular, bold] = FONT.files.map(typeface) as [
  ReturnType<typeof typeface>,
  ReturnType<typeof typeface>,
];

describe('text that survives the typeface', () => {
  test('every letter that is let through is in the typeface, regular and bold', () => {
    let through = 0;
    // Every letter of the first blocks, then every seventh: the tables of what is let through end far below.
    for (let code = 0x20; code < 0x20000; code += code < 0x3000 ? 1 : 7) {
      if (code >= 0xd800 && code <= 0xdfff) continue;
      // Marks that join the letter before them are tried on one.
      for (const char of drawable(`a${String.fromCodePoint(code)}`)) {
        const at = char.codePointAt(0)!;
        if (!regular.has(at) || !bold.has(at))
          expect.fail(`U+${at.toString(16)} came through from U+${code.toString(16)}`);
      }
      if (drawable(String.fromCodePoint(code)) === String.fromCodePoint(code)) through++;
    }
    expect(through).toBeGreaterThan(2000);
  });

  test('emoji and letters that it lacks become one plain box each; the rest stays', () => {
    expect(drawable('Zoë’s moss')).toBe('Zoë’s moss');
    expect(drawable('yarn 🧶')).toBe('yarn ▢');
    expect(drawable('👩‍👩‍👧 quilt')).toBe('▢ quilt');
    expect(drawable('毛糸')).toBe('▢▢');
    expect(drawable('Мох і пісок')).toBe('Мох і пісок');
    expect(drawable('two\nlines\tand\u0000 more')).toBe('two lines and more');
    expect(drawable('⟦hdc⟧')).toBe('hdc');
  });

  test('whatever is typed, what is drawn is well-formed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (typed) => {
        const drawn = text(0, 0, typed, { size: 22 });
        expect(drawn.match(/<[^>]*>/g)).toHaveLength(2);
        expect(drawn).not.toMatch(
          /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|&(?!amp;|lt;|gt;|quot;|#39;)/,
        );
      }),
    );
  });

  test('tags and quotes are only ever letters', () => {
    expect(escaped(`<b a="1">'&`)).toBe('&lt;b a=&quot;1&quot;&gt;&#39;&amp;');
  });
});

describe('text that fits', () => {
  const words = fc.string({
    unit: fc.constantFrom(...'abcdefghijklmnopqrstuvwxyzABCDEMW 0123456789,.–()'),
    minLength: 3,
  });

  test('the width that is reckoned with is not less than the typeface’s own', () => {
    fc.assert(
      fc.property(words, fc.boolean(), (typed, heavy) => {
        const face = heavy ? bold : regular;
        const own = [...typed].reduce((sum, char) => sum + face.width(char.codePointAt(0)!), 0) * 22;
        expect(widthOf(typed, 22, heavy)).toBeGreaterThan(own * 0.94);
      }),
    );
  });

  test('fitted text fits, and is left alone where it does', () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 60, max: 400 }), (typed, width) => {
        const shown = fitted(typed, width, 22);
        expect(widthOf(shown, 22)).toBeLessThanOrEqual(width);
        if (widthOf(typed, 22) <= width) expect(shown).toBe(typed);
      }),
    );
  });

  test('broken lines hold every word', () => {
    expect(lines('one two three', 10_000, 22)).toEqual(['one two three']);
    expect(lines('one two three', 75, 22).join(' ')).toBe('one two three');
    expect(lines('one two three', 75, 22).length).toBe(3);
  });

  test('alt text leaves out what no longer fits and stays within 1,024', () => {
    expect(altText(['One.', 'x'.repeat(1100), 'Two.'])).toBe('One. Two.');
    expect(altText(['x'.repeat(3000)]).length).toBe(1024);
  });
});
