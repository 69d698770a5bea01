import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  colourOf,
  coloursOf,
  reckonContrast,
  measureDifference,
  HARD_TO_TELL,
  findHardToTell,
  chooseInk,
  findKindsHardToTell,
  mix,
  readHex,
  simulateSight,
  SIGHTS,
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
        expect(measureDifference(one, other)).toBeGreaterThanOrEqual(HARD_TO_TELL);
  });

  test('more names than colours still all get one', () => {
    const given = coloursOf(Array.from({ length: 40 }, (_, i) => ({ name: `skein ${i}x` })));
    expect(Object.values(given).every((hex) => /^#[0-9a-f]{6}$/.test(hex))).toBe(true);
  });

  test('the palette is well apart', () => {
    for (const [i, one] of PALETTE.entries())
      for (const other of PALETTE.slice(i + 1))
        expect(measureDifference(one, other), `${one} ${other}`).toBeGreaterThan(18);
  });
});

describe('telling colours apart', () => {
  test('the same colour twice is hard to tell for everyone, black and white for nobody', () => {
    const same = findHardToTell([
      { name: 'one', hex: '#6f7d3c' },
      { name: 'two', hex: '#6f7d3c' },
    ]);
    expect(same.map(({ sight }) => sight)).toEqual(['usual', 'protanopia', 'deuteranopia', 'tritanopia']);
    expect(same[0]).toMatchObject({ first: 'one', second: 'two', difference: 0, contrast: 1 });
    expect(
      findHardToTell([
        { name: 'ink', hex: '#000000' },
        { name: 'paper', hex: '#ffffff' },
      ]),
    ).toEqual([]);
  });

  test('a red and a green of like lightness are told apart by most, not without red or green cones', () => {
    const sights = findHardToTell([
      { name: 'brick', hex: '#a0522d' },
      { name: 'olive', hex: '#6b6b1e' },
    ]).map(({ sight }) => sight);
    expect(sights).not.toContain('usual');
    expect(sights).toContain('deuteranopia');
  });

  test('grey stays grey, whatever is missing', () => {
    for (const sight of ['protanopia', 'deuteranopia', 'tritanopia'] as const)
      expect(measureDifference(simulateSight('#808080', sight), '#808080')).toBeLessThan(1);
  });

  test('kinds differ when they differ anywhere along their rows', () => {
    const cream = { hex: '#f3e7c4', share: 0.5 };
    const navy = { hex: '#22305c', share: 0.5 };
    const light = { name: 'light', bands: [{ hex: '#f3e7c4', share: 1 }] };
    expect(findKindsHardToTell([light, { name: 'half', bands: [cream, navy] }])).toEqual([]);
    expect(
      findKindsHardToTell([
        { name: 'a', bands: [cream, navy] },
        { name: 'b', bands: [cream, { hex: '#22305c', share: 0.2 }, { hex: '#23315d', share: 0.3 }] },
      ]).length,
    ).toBe(4);
  });

  test('pieces of different looks are not compared', () => {
    const bands = [{ hex: '#f3e7c4', share: 1 }];
    expect(
      findKindsHardToTell([
        { name: 'a', look: 'circle', bands },
        { name: 'b', look: 'diagonal', bands },
      ]),
    ).toEqual([]);
  });

  test('the ink chosen for a ground is the easier one; black or white always reaches 4.5', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 0xffffff }), (n) => {
        const ground = `#${n.toString(16).padStart(6, '0')}`;
        const ink = chooseInk(ground);
        expect(reckonContrast(ground, ink)).toBeGreaterThanOrEqual(
          reckonContrast(ground, ink === '#ffffff' ? '#1d1d1f' : '#ffffff'),
        );
        expect(reckonContrast(ground, chooseInk(ground, '#000000', '#ffffff'))).toBeGreaterThan(4.5);
      }),
    );
  });
});

describe('a colour for a name', () => {
  /** The palette turned to where a name begins: its letters as digits to the base 31, after a 7, by whole-number arithmetic. */
  const turnedFor = (name: string) => {
    const letters = [...name.trim().toLowerCase()].map((one) => BigInt(one.codePointAt(0)!));
    const value = letters.reduce(
      (sum, one, at) => sum + one * 31n ** BigInt(letters.length - 1 - at),
      7n * 31n ** BigInt(letters.length),
    );
    const from = Number((value % 1_000_003n) % BigInt(PALETTE.length));
    return PALETTE.map((_, index) => PALETTE[(from + index) % PALETTE.length]!);
  };

  test('that says none depends on its letters alone, whatever their capitals, for good', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 12 }), (name) => {
        fc.pre(readHex(name) === undefined && wordColour(name) === undefined);
        expect(colourOf(name)).toBe(turnedFor(name)[0]);
      }),
      { numRuns: 50 },
    );
    expect(colourOf(' Tuesday ')).toBe(colourOf('tuesday'));
  });

  test('of one piece is the first of its palette that is apart from all others, or the farthest', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 999 }), { minLength: 1, maxLength: 20 }),
        fc.array(fc.constantFrom('moss', 'navy', 'cream', 'rust', '#2f64ad', '#e2a02c'), { maxLength: 4 }),
        (unknown, known) => {
          const names = [...unknown.map((n) => `skein ${n}x`), ...known];
          const used = [...new Set(known.map((name) => colourOf(name)))];
          const given = coloursOf([...names, ...names].map((name) => ({ name })));
          const away = (hex: string) => Math.min(...used.map((other) => measureDifference(hex, other)));
          for (const name of names.slice(0, unknown.length)) {
            const choices = turnedFor(name);
            const most = Math.max(...choices.map(away));
            const expected =
              choices.find((hex) => away(hex) >= HARD_TO_TELL) ?? choices.find((hex) => away(hex) === most)!;
            expect(given[name]).toBe(expected);
            used.push(expected);
          }
          for (const name of known) expect(given[name]).toBe(colourOf(name));
        },
      ),
      { numRuns: 25 },
    );
  });

  test('goes by its hex, its own name as hex, its word, in this order', () => {
    const given = coloursOf([
      { name: 'moss', hex: '#123456' },
      { name: '#ABC' },
      { name: 'pale moss', hex: 'greenish' },
      { name: '__proto__' },
    ]);
    expect(given).toMatchObject({ moss: '#123456', '#ABC': '#aabbcc', 'pale moss': wordColour('pale moss') });
    expect(given['__proto__']).toMatch(/^#/);
    expect(colourOf('#ABC')).toBe('#aabbcc');
    // Said twice, the first word of it counts.
    expect(
      coloursOf([
        { name: 'gift', hex: '#111111' },
        { name: 'gift', hex: '#222222' },
      ])['gift'],
    ).toBe('#111111');
  });

  test('takes the last colour of a name, and a shade wherever it stands', () => {
    expect(wordColour('moss green')).toBe(COLOUR_WORDS['green']);
    expect(wordColour('green moss')).toBe(COLOUR_WORDS['moss']);
    expect(wordColour('moss, pale')).toBe(wordColour('pale-moss'));
    expect(wordColour('dark moss')).toBe(mix(COLOUR_WORDS['moss']!, '#000000', 0.4));
    expect(wordColour('pale')).toBeUndefined();
  });

  test('is mixed channel by channel', () => {
    expect(mix('#000000', '#ffffff', 0.5)).toBe('#808080');
    expect(mix('#102030', '#506070', 0.25)).toBe('#203040');
    expect([mix('#102030', '#506070', 0), mix('#102030', '#506070', 1)]).toEqual(['#102030', '#506070']);
    expect(() => mix('moss', '#000000', 0.5)).toThrow('moss is not a colour');
  });

  test('seen with all cones is itself', () => {
    expect(simulateSight('#ABC', 'usual')).toBe('#aabbcc');
    expect(simulateSight('#123456', 'usual')).toBe('#123456');
  });

  test('reads its letters dark on what is light, and light on what is dark', () => {
    expect([chooseInk('#ffffff'), chooseInk('#000000'), chooseInk('#fff', '#111111', '#eeeeee')]).toEqual([
      '#1d1d1f',
      '#ffffff',
      '#111111',
    ]);
  });
});

describe('kinds side by side', () => {
  const NEAR = ['#f3e7c4', '#f1e4c0', '#22305c', '#23315d', '#a0522d', '#6b6b1e'];
  /** Twelfths of a piece, each in a colour. */
  const twelfths = fc.array(fc.constantFrom(...NEAR), { minLength: 12, maxLength: 12 });
  const bandsOf = (rows: readonly string[]) => {
    const bands: { hex: string; share: number }[] = [];
    for (const hex of rows) {
      const last = bands.at(-1);
      if (last?.hex === hex) last.share += 1 / 12;
      else bands.push({ hex, share: 1 / 12 });
    }
    return bands;
  };

  test('are alike for whom no twelfth of them differs', () => {
    fc.assert(
      fc.property(twelfths, fc.array(fc.nat(5), { minLength: 12, maxLength: 12 }), (one, swaps) => {
        // Mostly the same, here and there a neighbour of the colour.
        const other = one.map((hex, at) => (swaps[at] === 0 ? NEAR[NEAR.indexOf(hex) ^ 1]! : hex));
        const found = findKindsHardToTell([
          { name: 'one', bands: bandsOf(one) },
          { name: 'other', bands: bandsOf(other) },
        ]);
        const expected = SIGHTS.flatMap((sight) => {
          const seen = one.map(
            (hex, at) => [simulateSight(hex, sight), simulateSight(other[at]!, sight)] as const,
          );
          const apart = Math.max(...seen.map(([a, b]) => measureDifference(a, b)));
          const ratio = Math.max(...seen.map(([a, b]) => reckonContrast(a, b)));
          return apart < HARD_TO_TELL
            ? [{ first: 'one', second: 'other', sight, difference: apart, contrast: ratio }]
            : [];
        });
        expect(found).toEqual(expected);
      }),
      { numRuns: 40 },
    );
  });

  test('are told pair by pair, those of other looks left out', () => {
    const bands = [{ hex: '#f3e7c4', share: 1 }];
    const found = findKindsHardToTell(
      [['a', 'square'], ['b', 'square'], ['c', 'circle'], ['d', 'square'], ['e']].map(
        ([name = '', look]) => ({
          name,
          ...(look === undefined ? {} : { look }),
          bands,
        }),
      ),
    );
    expect(found.filter(({ sight }) => sight === 'usual').map(({ first, second }) => first + second)).toEqual(
      ['ab', 'ad', 'bd'],
    );
    expect(
      findKindsHardToTell([
        { name: 'a', bands },
        { name: 'b', bands: [] },
      ]),
    ).toHaveLength(4);
  });

  test('are compared up to sixty colours', () => {
    const names = Array.from({ length: 62 }, (_, index) => ({
      name: `${index}`,
      hex: index === 0 || index >= 59 ? '#f3e7c4' : '#22305c',
    }));
    const cream = findHardToTell(names).filter(({ first, sight }) => first === '0' && sight === 'usual');
    expect(cream.map(({ second }) => second)).toEqual(['59']);
  });
});
