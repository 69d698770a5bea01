import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Problem } from '../../../src/core/base/problem.ts';
import { findKindCalled } from '../../../src/core/blanket/by-kind.ts';
import {
  ARRANGEMENTS,
  checkSize,
  countLaid,
  countKinds,
  cutIntoRows,
  isOffMiddle,
  lay,
  letter,
  markMade,
  readLaidBy,
  swapPlaces,
  turnAt,
  writeLaidBy,
  type Laying,
} from '../../../src/core/blanket/layout.ts';
import { writeMap, readCountsByKind, readMap } from '../../../src/core/blanket/map.ts';
import { SETTING_KEYS, type SettingKey } from '../../../src/standards/settings.ts';
import { refused } from '../../refused.ts';

const laid = (setting: SettingKey, columns: number, rows: number) =>
  lay({ columns, rows, kinds: 1, laid: { arrangement: 'plain', setting, seed: 1 } });

/** The four triangles of a place, clockwise from the top: true where dark. Turn 0 has its dark half at the top left. */
const DARK: readonly (readonly [boolean, boolean, boolean, boolean])[] = [
  [true, false, false, true],
  [true, true, false, false],
  [false, true, true, false],
  [false, false, true, true],
];

/** Connected patches of one shade, by walking over sides that two places share and over the middles of places. */
function patches(
  setting: SettingKey,
  columns: number,
  rows: number,
): Map<number, { dark: boolean; parts: number[] }> {
  const cells = laid(setting, columns, rows);
  const shade = (part: number) => DARK[cells[part >> 2]!.turn]![part & 3]!;
  const parent = Array.from({ length: cells.length * 4 }, (_, part) => part);
  const root = (part: number): number =>
    parent[part] === part ? part : (parent[part] = root(parent[part]!));
  const join = (a: number, b: number) => {
    if (shade(a) === shade(b)) parent[root(a)] = root(b);
  };
  cells.forEach((_, place) => {
    for (let side = 0; side < 4; side++) join(place * 4 + side, place * 4 + ((side + 1) % 4));
    if (place % columns < columns - 1) join(place * 4 + 1, (place + 1) * 4 + 3);
    if (place + columns < cells.length) join(place * 4 + 2, (place + columns) * 4);
  });
  const found = new Map<number, { dark: boolean; parts: number[] }>();
  parent.forEach((_, part) => {
    const patch = found.get(root(part)) ?? { dark: shade(part), parts: [] };
    patch.parts.push(part);
    found.set(root(part), patch);
  });
  return found;
}
const sizes = (setting: SettingKey, columns: number, rows: number) =>
  [...patches(setting, columns, rows).values()].map(({ parts }) => parts.length / 2).sort((a, b) => a - b);

describe('settings', () => {
  it('lay diamonds one around the other for barn raising: rings of one shade, each eight halves longer than the last', () => {
    // 8 by 8: the diamond in the middle has 4 halves, the next ring 12, then 20, 28; the corners are cut off beyond.
    const rings = [...patches('barn-raising', 8, 8).values()].map(({ dark, parts }) => ({
      dark,
      halves: parts.length / 2,
    }));
    for (const [dark, halves] of [
      [true, 4],
      [false, 12],
      [true, 20],
      [false, 28],
    ] as const)
      expect(rings).toContainEqual({ dark, halves });
  });

  it('lay barn raising the same from every side', () => {
    const columns = 6;
    const rows = 10;
    const mirror = [1, 0, 3, 2];
    const flip = [3, 2, 1, 0];
    for (let column = 0; column < columns; column++)
      for (let row = 0; row < rows; row++) {
        const turn = turnAt('barn-raising', column, row, columns, rows);
        expect(turnAt('barn-raising', columns - 1 - column, row, columns, rows)).toBe(mirror[turn]);
        expect(turnAt('barn-raising', column, rows - 1 - row, columns, rows)).toBe(flip[turn]);
      }
  });

  it('lay straight furrow in bands: as many as slanting lines, none meeting another of its shade', () => {
    // 6 by 6: 12 slanting bands, as long as the lines they lie on.
    expect(sizes('straight-furrow', 6, 6)).toEqual([1, 1, 3, 3, 5, 5, 7, 7, 9, 9, 11, 11]);
  });

  it('lay streak of lightning in bands from edge to edge', () => {
    const found = [...patches('streak-of-lightning', 6, 4).values()];
    // Every whole band holds two halves a column, and crosses all columns.
    const whole = found.filter(({ parts }) => parts.length / 2 === 12);
    expect(whole.length).toBe(3);
    for (const { parts } of whole) expect(new Set(parts.map((part) => (part >> 2) % 6)).size).toBe(6);
  });

  it('lay light and dark in diamonds of four halves', () => {
    const inner = [...patches('light-and-dark', 8, 8).values()].filter(({ parts }) => parts.length === 8);
    // 16 dark diamonds, one a block of four, and 9 light ones where four blocks meet.
    expect(inner.filter(({ dark }) => dark)).toHaveLength(16);
    expect(inner.filter(({ dark }) => !dark)).toHaveLength(9);
  });

  it('turn the pinwheel by a quarter from one motif to the next', () => {
    const [topLeft, topRight, bottomLeft, bottomRight] = laid('pinwheel', 2, 2).map(({ turn }) => turn);
    expect(
      [topRight, bottomRight, bottomLeft].map((turn, step) => (turn! - topLeft! - step - 1 + 8) % 4),
    ).toEqual([0, 0, 0]);
    // All four blades meet in the middle: no two touch along a side.
    expect(sizes('pinwheel', 2, 2)).toEqual([1, 1, 1, 1, 1, 1, 1, 1]);
  });

  it('lay broken dishes from the same four pieces, paired', () => {
    expect(new Set(laid('broken-dishes', 2, 2).map(({ turn }) => turn))).toEqual(
      new Set(laid('pinwheel', 2, 2).map(({ turn }) => turn)),
    );
    expect(sizes('broken-dishes', 2, 2)).toEqual([2, 2, 2, 2]);
  });

  it('are continued by another size', () => {
    for (const setting of SETTING_KEYS.filter((key) => key !== 'barn-raising'))
      for (let row = 0; row < 4; row++)
        for (let column = 0; column < 5; column++)
          expect(turnAt(setting, column, row, 5, 4)).toBe(turnAt(setting, column, row, 20, 25));
  });
});

describe('kinds', () => {
  const layings = fc
    .record({
      columns: fc.integer({ min: 1, max: 14 }),
      rows: fc.integer({ min: 1, max: 14 }),
      kinds: fc.integer({ min: 1, max: 6 }),
      arrangement: fc.constantFrom(...ARRANGEMENTS),
      setting: fc.constantFrom(...SETTING_KEYS),
      seed: fc.integer({ min: 1, max: 9999 }),
    })
    .map(({ columns, rows, kinds, ...by }): Laying => ({ columns, rows, kinds, laid: by }));

  it('are counted without laying them as they are when laid', () => {
    fc.assert(
      fc.property(layings, (laying) => {
        const layout = lay(laying);
        expect(layout).toHaveLength(laying.columns * laying.rows);
        expect(countLaid(layout, laying.kinds)).toEqual(countKinds(laying));
      }),
      { numRuns: 200 },
    );
  });

  it('are laid the same way again by the same seed, and another way by another', () => {
    const by = (seed: number): Laying => ({
      columns: 9,
      rows: 11,
      kinds: 4,
      laid: { arrangement: 'scattered', setting: 'upright', seed },
    });
    expect(lay(by(3))).toEqual(lay(by(3)));
    expect(lay(by(3))).not.toEqual(lay(by(4)));
  });

  it('lie beside their like nowhere in a checked blanket of two or more', () => {
    for (const kinds of [2, 3, 5]) {
      const layout = lay({
        columns: 7,
        rows: 6,
        kinds,
        laid: { arrangement: 'checked', setting: 'upright', seed: 1 },
      });
      layout.forEach(({ kind }, place) => {
        if (place % 7 < 6) expect(layout[place + 1]!.kind).not.toBe(kind);
        if (place < 35) expect(layout[place + 7]!.kind).not.toBe(kind);
      });
    }
  });

  it('are written down and read back', () => {
    for (const arrangement of ARRANGEMENTS)
      for (const setting of SETTING_KEYS) {
        const by = { arrangement, setting, seed: 9999 };
        expect(writeLaidBy(by).length).toBeLessThanOrEqual(40);
        expect(readLaidBy(writeLaidBy(by))).toEqual(by);
      }
    expect(readLaidBy('something else')).toMatchObject({ arrangement: 'typed', setting: 'upright' });
  });
});

describe('a map of one’s own', () => {
  it('is read with its turns, and written back', () => {
    const map = readMap('A0 b1 A/B2 A3 A', 2);
    expect(map).toMatchObject({ columns: 3, rows: 2 });
    expect(map.layout.map(({ kind, turn }) => [kind, turn])).toEqual([
      [0, 0],
      [1, 1],
      [0, 0],
      [1, 2],
      [0, 3],
      [0, 0],
    ]);
    expect(writeMap(map.layout, map.columns)).toEqual(['A0 B1 A0', 'B2 A3 A0']);
  });

  it('is read back whatever it holds', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 8 }),
        fc.array(fc.record({ kind: fc.integer({ min: 0, max: 25 }), turn: fc.integer({ min: 0, max: 3 }) }), {
          minLength: 8,
          maxLength: 64,
        }),
        (columns, cells) => {
          const layout = cells.slice(0, cells.length - (cells.length % columns));
          expect(readMap(writeMap(layout, columns).join('/'), 26).layout).toEqual(layout);
        },
      ),
      { numRuns: 100 },
    );
  });

  it.each([
    ['AB/A', 'map-uneven', { row: 2, needed: 2, given: 1 }],
    ['AB//AB', 'map-unreadable', { row: 2 }],
    ['AC/AB', 'no-such-kind', { row: 1, kind: 'C', kinds: 2 }],
    ['A4', 'map-unreadable', { row: 1 }],
    ['', 'map-empty', {}],
    ['A'.repeat(101), 'blanket-too-large', { columns: 101, rows: 1, most_along: 100, most: 2500 }],
  ])('is refused where it does not fit: %.8s', (text, code, facts) => {
    expect(() => readMap(text, 2)).toThrow(refused(code, { facts }));
  });
});

describe('two places', () => {
  const { layout } = readMap('AB/BA', 2);
  it('change about, and back', () => {
    expect(writeMap(swapPlaces(layout, 1, 2), 2)).toEqual(['BA', 'BA']);
    expect(swapPlaces(swapPlaces(layout, 1, 4), 1, 4)).toEqual(layout);
  });
  it('must both be there', () => {
    expect(() => swapPlaces(layout, 1, 5)).toThrow(
      refused('no-such-place', { option: 'b', facts: { place: 5, places: 4 } }),
    );
    expect(() => swapPlaces(layout, 0, 1)).toThrow(refused('no-such-place', { option: 'a' }));
    expect(() => swapPlaces(layout, 2, 2)).toThrow(refused('same-place', { option: 'b' }));
  });
});

describe('counts by kind', () => {
  const names = ['moss', 'sand 2', 'clay'];
  it('are read by letter or by name', () => {
    expect(readCountsByKind('A 12, B 8', names)).toEqual([12, 8, 0]);
    expect(readCountsByKind('clay: 3; sand 2 x 7', names)).toEqual([0, 7, 3]);
    expect(readCountsByKind('a12,c3', names)).toEqual([12, 0, 3]);
  });
  it.each([
    ['D 4', 'no-such-kind'],
    ['A', 'count-unreadable'],
    ['A 3, A 4', 'kind-twice'],
    ['heather 4', 'no-such-kind'],
    ['', 'count-unreadable'],
  ])('are refused where they do not fit: %s', (text, code) => {
    expect(() => readCountsByKind(text, names)).toThrow(refused(code, { option: 'counts' }));
  });
});

describe('a layout', () => {
  const by = (arrangement: (typeof ARRANGEMENTS)[number]) =>
    ({ arrangement, setting: 'upright', seed: 1 }) as const;
  const kindsOf = (arrangement: (typeof ARRANGEMENTS)[number], kinds: number) =>
    lay({ columns: 3, rows: 3, kinds, laid: by(arrangement) }).map(({ kind }) => kind);

  it('lays kinds in turn: along slanting lines, or row by row, or only the first', () => {
    expect(kindsOf('checked', 3)).toEqual([0, 1, 2, 1, 2, 0, 2, 0, 1]);
    expect(kindsOf('stripes', 2)).toEqual([0, 0, 0, 1, 1, 1, 0, 0, 0]);
    expect(kindsOf('plain', 2)).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0]);
  });

  it('shares free kinds by what is said, or equally', () => {
    const shares = (given?: number[]) =>
      countKinds({ columns: 3, rows: 4, kinds: 2, laid: by('scattered'), shares: given });
    expect([shares(), shares([3, 1]), shares([0, 1])]).toEqual([
      [6, 6],
      [9, 3],
      [0, 12],
    ]);
  });

  it('is as large as is laid out here, and no larger', () => {
    expect(() => checkSize(100, 25)).not.toThrow();
    expect(() => checkSize(25, 100)).not.toThrow();
    for (const [columns, rows, option] of [
      [101, 1, 'columns'],
      [1, 101, 'rows'],
      [100, 26, 'rows'],
      [51, 50, 'rows'],
      [101, 101, 'columns'],
    ] as const)
      expect(() => checkSize(columns, rows)).toThrow(
        refused('blanket-too-large', { option, facts: { columns, rows, most_along: 100, most: 2500 } }),
      );
    expect(() => lay({ columns: 101, rows: 1, kinds: 1, laid: by('plain') })).toThrow(
      refused('blanket-too-large'),
    );
  });

  it('is read back from what was laid, what cannot be read being a map of one’s own', () => {
    const own = { arrangement: 'typed', setting: 'upright', seed: 1 };
    expect(readLaidBy('checked pinwheel 7')).toEqual({
      arrangement: 'checked',
      setting: 'pinwheel',
      seed: 7,
    });
    expect(readLaidBy('stripes random 123456')).toEqual({
      arrangement: 'stripes',
      setting: 'upright',
      turnings: 'random',
      seed: 123456,
    });
    for (const text of [
      '',
      'sideways',
      'sideways across 12a',
      'typed upright 1234567',
      'typed upright x1',
      'typed upright',
    ])
      expect(readLaidBy(text)).toEqual(own);
  });

  it('says how many of each kind it holds, and which places are made: the first of each kind', () => {
    const { layout } = readMap('AAB/BAB', 3);
    expect(countLaid(layout, 3)).toEqual([3, 3, 0]);
    expect(markMade(layout, [2, 1])).toEqual([true, true, true, false, false, false]);
    expect(markMade(layout, [0, 9])).toEqual([false, false, true, true, false, true]);
    expect(markMade(layout, [])).toEqual(layout.map(() => false));
    expect(cutIntoRows([1, 2, 3, 4, 5], 2)).toEqual([[1, 2], [3, 4], [5]]);
    expect(cutIntoRows([1, 2, 3, 4], 2)).toEqual([
      [1, 2],
      [3, 4],
    ]);
  });

  it('lays barn raising about the place in the middle where that is one, half a motif off', () => {
    const off = (setting: SettingKey, columns: number, rows: number) =>
      isOffMiddle({ setting }, { columns, rows });
    expect([off('barn-raising', 4, 4), off('barn-raising', 5, 4), off('barn-raising', 4, 5)]).toEqual([
      false,
      true,
      true,
    ]);
    expect(off('pinwheel', 5, 5)).toBe(false);
    // Of seven columns the middle lies behind the fourth: the fourth and the fifth mirror each other, the third and the sixth …
    const mirror = [1, 0, 3, 2];
    const flip = [3, 2, 1, 0];
    for (let column = 1; column < 7; column++)
      for (let row = 1; row < 5; row++) {
        const turn = turnAt('barn-raising', column, row, 7, 5);
        expect(turnAt('barn-raising', 7 - column, row, 7, 5)).toBe(mirror[turn]);
        expect(turnAt('barn-raising', column, 5 - row, 7, 5)).toBe(flip[turn]);
      }
  });

  it('lets two places change, the last among them', () => {
    const { layout } = readMap('AB', 2);
    expect(writeMap(swapPlaces(layout, 1, 2), 2)).toEqual(['BA']);
    expect(() => swapPlaces(layout, 3, 1)).toThrow(
      refused('no-such-place', {
        option: 'a',
        hint: 'Places are numbered row by row from the top left, 1 to 2.',
        facts: { place: 3, places: 2 },
      }),
    );
  });
});

describe('a map that is typed', () => {
  it('may have blanks, commas, lines and a last stroke', () => {
    const kinds = (text: string) => writeMap(readMap(text, 2).layout, readMap(text, 2).columns);
    for (const text of ['AB/BA', 'ab/ba/', 'A, B / B, A', 'A B\nB A\n'])
      expect(kinds(text)).toEqual(['AB', 'BA']);
    expect(readMap('AB/BA/BB', 2)).toMatchObject({ columns: 2, rows: 3 });
    expect(writeMap(readMap('A0B0', 2).layout, 2)).toEqual(['AB']);
  });

  it.each([
    ['AB//AB', 2, 'Row 2 of the map is empty.', undefined],
    ['A!', 2, 'Row 1 of the map, “A!”, cannot be read.', undefined],
    [
      'AB/ABA',
      2,
      'Row 2 of the map has 3 places, the first row 2.',
      'Give every row the same number of places.',
    ],
    [
      'AB',
      1,
      'Row 1 of the map names kind B, and there is none.',
      'This blanket has one kind, A. Add kinds first.',
    ],
    ['AD', 3, 'Row 1 of the map names kind D, and there is none.', 'Use A to C, or add kinds first.'],
    ['/', 2, 'Row 1 of the map is empty.', undefined],
  ])('says of %j what is wrong', (text, kinds, message, hint) => {
    expect(() => readMap(text, kinds)).toThrow(
      expect.objectContaining({ message, option: 'map', ...(hint === undefined ? {} : { hint }) }),
    );
  });

  it('takes a kind by its name, its letter or a beginning that is its own', () => {
    const names = ['moss square', 'moon', 'b', 'sand square'];
    expect(
      ['Moss Square', 'A', 'd', 'B', 'sand', 'moss'].map((typed) => findKindCalled(typed, names)),
    ).toEqual([0, 0, 3, 2, 3, 0]);
    expect(['mo', 'E', 'fern', '', '1'].map((typed) => findKindCalled(typed, names))).toEqual([
      -1, -1, -1, -1, -1,
    ]);
    expect([letter(0), letter(25)]).toEqual(['A', 'Z']);
  });

  it('says which kinds there are where one is not', () => {
    const names = ['moss', 'sand'];
    expect(() => readCountsByKind('fern 3', names)).toThrow(
      refused('no-such-kind', { hint: 'Its kinds are A (moss), B (sand).', facts: { kind: 'fern' } }),
    );
    expect(() => readCountsByKind('A 3, moss 2', names)).toThrow(
      refused('kind-twice', {
        message: 'Kind A is given twice.',
        hint: 'Write each kind with its number, like A 12, B 8.',
        facts: { kind: 'A' },
      }),
    );
    expect(() => readCountsByKind('x', ['moss'])).toThrow(
      refused('count-unreadable', { hint: 'Write each kind with its number, like A 20.' }),
    );
    expect(readCountsByKind('sand × 7, A=12', names)).toEqual([12, 7]);
    expect(readCountsByKind('B : 0', names)).toEqual([0, 0]);
    expect(readCountsByKind(' a3 ; b 12 ', names)).toEqual([3, 12]);
    // A name that is a number of letters more, or a number that is more than four digits, is none.
    for (const none of ['a3b', '1a3', 'a3 x', 'A 12345', 'A 3pcs', '-A 3'])
      expect(() => readCountsByKind(none, names), none).toThrow(Problem);
    expect(() => readCountsByKind(' ? ', names)).toThrow(
      refused('count-unreadable', { message: '“?” is not a kind with its number.' }),
    );
    expect(['ab', 'a1', '1b'].map((typed) => findKindCalled(typed, names))).toEqual([-1, -1, -1]);
    expect(findKindCalled('a', ['b', 'a'])).toBe(1);
    expect(findKindCalled('b', ['b', 'a'])).toBe(0);
  });
});
