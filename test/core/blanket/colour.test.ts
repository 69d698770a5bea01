import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  colourOf,
  coloursOf,
  contrast,
  difference,
  HARD_TO_TELL,
  hardToTell,
  inkOn,
  kindsHardToTell,
  mix,
  readHex,
  seenWith,
  wordColour,
} from '../../../src/core/blanket/colour.ts';
import { COLOUR_WORDS, PALETTE } from '../../../src/standards/colours.ts';

describe('reading a colour', () => {
  test('hex in every usual spelling', () => {
    expect(readHex('#A1B2C3')).toBe('#a1b2c3');
    expect(readHex(' a1b2c3 ')).toBe('#a1b2c3');
    expect(readHex('#fa0')).toBe('#ffaa00');
    for (const none of ['', '#12', '#12345', '#1234567', '#gggggg', 'moss'])
      expect(readHex(none)).toBeUndefined();
  });

  test('words, with and without a shade', () => {
    expect(wordColour('Moss')).toBe(COLOUR_WORDS['moss']);
    expect(wordColour('forest green')).toBe(COLOUR_WORDS['green']);
    expect(wordColour('pale moss')).toBe(mix(COLOUR_WORDS['moss']!, '#ffffff', 0.55));
    expect(wordColour('constructor')).toBeUndefined();
    expect(wordColour('Tuesday')).toBeUndefined();
  });

  test('her own hex goes first, a hex that cannot be read does not', () => {
    expect(colourOf('moss', '#123456')).toBe('#123456');
    expect(colourOf('moss', 'greenish')).toBe(COLOUR_WORDS['moss']);
  });

  test('any name at all gets a colour, always the same', () => {
    fc.assert(
      fc.property(fc.string(), (name) => {
        expect(colourOf(name)).toMatch(/^#[0-9a-f]{6}$/);
        expect(colourOf(name)).toBe(colourOf(name));
      }),
    );
  });

  test('unknown names of one piece get colours that can be told apart, while the palette lasts', () => {
    const names = ['Tuesday', 'Wednesday', 'number 7', 'the odd one', 'gift', 'aunt', 'moss'];
    const given = coloursOf(names.map((name) => ({ name })));
    expect(Object.keys(given).sort()).toEqual([...names].sort());
    expect(given['moss']).toBe(COLOUR_WORDS['moss']);
    const hexes = Object.values(given);
    for (const [i, one] of hexes.entries())
      for (const other of hexes.slice(i + 1))
        expect(difference(one, other)).toBeGreaterThanOrEqual(HARD_TO_TELL);
  });

  test('more names than colours still all get one', () => {
    const given = coloursOf(Array.from({ length: 40 }, (_, i) => ({ name: `skein ${i}x` })));
    expect(Object.values(given).every((hex) => /^#[0-9a-f]{6}$/.test(hex))).toBe(true);
  });

  test('the palette is well apart', () => {
    for (const [i, one] of PALETTE.entries())
      for (const other of PALETTE.slice(i + 1))
        expect(difference(one, other), `${one} ${other}`).toBeGreaterThan(18);
  });
});

describe('telling colours apart', () => {
  test('the same colour twice is hard to tell for everyone, black and white for nobody', () => {
    const same = hardToTell([
      { name: 'one', hex: '#6f7d3c' },
      { name: 'two', hex: '#6f7d3c' },
    ]);
    expect(same.map(({ sight }) => sight)).toEqual(['usual', 'protanopia', 'deuteranopia', 'tritanopia']);
    expect(same[0]).toMatchObject({ first: 'one', second: 'two', difference: 0, contrast: 1 });
    expect(
      hardToTell([
        { name: 'ink', hex: '#000000' },
        { name: 'paper', hex: '#ffffff' },
      ]),
    ).toEqual([]);
  });

  test('a red and a green of like lightness are told apart by most, not without red or green cones', () => {
    const sights = hardToTell([
      { name: 'brick', hex: '#a0522d' },
      { name: 'olive', hex: '#6b6b1e' },
    ]).map(({ sight }) => sight);
    expect(sights).not.toContain('usual');
    expect(sights).toContain('deuteranopia');
  });

  test('grey stays grey, whatever is missing', () => {
    for (const sight of ['protanopia', 'deuteranopia', 'tritanopia'] as const)
      expect(difference(seenWith('#808080', sight), '#808080')).toBeLessThan(1);
  });

  test('kinds differ when they differ anywhere along their rows', () => {
    const cream = { hex: '#f3e7c4', share: 0.5 };
    const navy = { hex: '#22305c', share: 0.5 };
    const light = { name: 'light', bands: [{ hex: '#f3e7c4', share: 1 }] };
    expect(kindsHardToTell([light, { name: 'half', bands: [cream, navy] }])).toEqual([]);
    expect(
      kindsHardToTell([
        { name: 'a', bands: [cream, navy] },
        { name: 'b', bands: [cream, { hex: '#22305c', share: 0.2 }, { hex: '#23315d', share: 0.3 }] },
      ]).length,
    ).toBe(4);
  });

  test('pieces of different looks are not compared', () => {
    const bands = [{ hex: '#f3e7c4', share: 1 }];
    expect(
      kindsHardToTell([
        { name: 'a', look: 'circle', bands },
        { name: 'b', look: 'diagonal', bands },
      ]),
    ).toEqual([]);
  });

  test('the ink chosen for a ground is the easier one; black or white always reaches 4.5', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (n) => {
        const ground = `#${n.toString(16).padStart(6, '0')}`;
        const ink = inkOn(ground);
        expect(contrast(ground, ink)).toBeGreaterThanOrEqual(
          contrast(ground, ink === '#ffffff' ? '#1d1d1f' : '#ffffff'),
        );
        expect(contrast(ground, inkOn(ground, '#000000', '#ffffff'))).toBeGreaterThan(4.5);
      }),
    );
  });
});
