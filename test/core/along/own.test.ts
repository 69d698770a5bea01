/** Her own blanket and her numbers, work by work, shape by shape, each held to a figure reckoned here in another way. */
import { describe, expect, it } from 'vitest';
import type { AlongPlan, Part, Way, Work } from '../../../src/core/along/events.ts';
import { countOwnMotifs, reckonHoursLeft, reckonPart, SWATCH_SIDE } from '../../../src/core/along/numbers.ts';
import { alone, planAlong, type Pattern } from '../../../src/core/along/open.ts';
import { coloursOfPlan, layOwn, minutesOf, NO_WAY, ownPace, reckonOwn } from '../../../src/core/along/own.ts';
import { proposeParts } from '../../../src/core/along/propose.ts';
import { MOST_ROWS } from '../../../src/core/base/limits.ts';
import { Working } from '../../../src/core/base/working.ts';
import { countLaid, writeLaidBy } from '../../../src/core/blanket/layout.ts';
import type { MotifSpec } from '../../../src/core/yarn/motif.ts';
import { code, PATTERN, plan } from './scene.ts';

const FURROW = PATTERN.kinds[0]!;
const GAUGE = { stitches: 13, rows: 10, over: 10 };
const flat: MotifSpec = {
  name: 'plain',
  shape: 'flat',
  size: 20,
  otherSize: 15,
  stitch: 'sc',
  gauge: GAUGE,
  runs: [],
};
const solid: MotifSpec = {
  name: 'meadow',
  shape: 'solid-square',
  size: 7,
  stitch: 'dc',
  gauge: GAUGE,
  runs: [],
};
const blocks: MotifSpec = {
  name: 'steps',
  shape: 'blocks',
  size: 8,
  stitch: 'dc',
  side: 15.5,
  gauge: GAUGE,
  runs: [{ colour: 'moss', rows: 15 }],
};

/** A blanket of these kinds, so many of each, with a seam and a border. */
const pattern = (
  kinds: readonly MotifSpec[],
  counts: readonly number[],
  more: Partial<Pattern> = {},
): Pattern => ({
  ...alone(kinds[0]!),
  kinds,
  columns: 3,
  rows: 4,
  counts,
  joining: { method: 'whip', colour: 'sand' },
  border: {
    corner: 3,
    rounds: [
      { stitch: 'sc', colour: 'moss' },
      { stitch: 'sc', colour: 'sand' },
    ],
  },
  setting: writeLaidBy({ arrangement: 'scattered', setting: 'upright', seed: 3 }),
  ...more,
});
const planOf = (made: Pattern): AlongPlan => plan({ pattern: made });
const way = (more: Partial<Way>): Way => ({ ...NO_WAY, ...more });
const numbersOf = (of: AlongPlan, own: Way = NO_WAY) => {
  const made = reckonOwn(of, own);
  return of.parts.map((part) => ({ work: part.work, ...reckonPart(made, of.parts, part, new Working()) }));
};
const first = (of: AlongPlan, work: Work, own?: Way) => numbersOf(of, own).find((one) => one.work === work)!;

describe('her motifs', () => {
  it('keep the size of the pattern where only her hook or ball is another, and lose what the teacher weighed', () => {
    const weighed = planOf(pattern([{ ...FURROW, weight: 30, hook: 5 }], [12]));
    const hooked = reckonOwn(weighed, way({ hook: 4.5 }));
    expect(hooked.spec.kinds[0]).toMatchObject({ hook: 4.5, size: 12, side: hooked.kinds[0]!.patternSide });
    expect(hooked.spec.kinds[0]).not.toHaveProperty('weight');
    expect(hooked.spec.kinds[0]).not.toHaveProperty('gauge');
    expect(reckonOwn(weighed, way({ ball: { m: 170, g: 100 } })).spec.kinds[0]).toMatchObject({ hook: 5 });
    expect(reckonOwn(weighed, NO_WAY).spec.kinds[0]).toMatchObject({ weight: 30, hook: 5 });
  });

  it('are as large as she measured, the others in the same proportion', () => {
    const two = planOf(pattern([FURROW, solid], [6, 6]));
    const teacher = reckonOwn(two, NO_WAY).kinds.map(({ side }) => side);
    const hers = reckonOwn(two, way({ side: 17 }));
    expect(hers.kinds[0]!.side).toBe(17);
    expect(hers.kinds[1]!.side).toBeCloseTo((teacher[1]! * 17) / teacher[0]!, 9);
    // Measured, the rows stay those of the pattern, and so does its gauge until she gives hers.
    expect(hers.spec.kinds.map(({ size, gauge }) => [size, gauge])).toEqual([
      [12, GAUGE],
      [7, GAUGE],
    ]);
    const own = { stitches: 15, rows: 12, over: 10 };
    expect(reckonOwn(two, way({ side: 17, gauge: own })).spec.kinds[0]?.gauge).toEqual(own);
  });

  it('of a flat piece have the stitches and rows that come nearest', () => {
    // 20 stitches of 10/13 cm are 15.38 cm; at 16 × 18 over 10 cm that is 24.6 stitches and 27.7 rows.
    const own = reckonOwn(
      planOf(pattern([flat], [12])),
      way({ gauge: { stitches: 16, rows: 18, over: 10 } }),
    );
    expect(own.spec.kinds[0]).toMatchObject({ size: 25, otherSize: 28 });
  });

  it('in rounds have the rounds that come nearest, one at least, and none more than are worked', () => {
    // 7 rounds of 1 cm on both sides are 14 cm; of 10/14 cm they are 9.8, ten.
    const rounds = (rows: number) =>
      reckonOwn(planOf(pattern([solid], [12])), way({ gauge: { stitches: 18, rows, over: 10 } })).spec
        .kinds[0]?.size;
    expect(rounds(14)).toBe(10);
    expect(rounds(0.5)).toBe(1);
    expect(rounds(90_000)).toBe(MOST_ROWS);
  });

  it('corner to corner are told by their side alone', () => {
    const own = reckonOwn(
      planOf(pattern([blocks], [12])),
      way({ gauge: { stitches: 18, rows: 14, over: 10 } }),
    );
    expect(own.spec.kinds[0]).toMatchObject({
      size: 8,
      side: 15.5,
      gauge: { stitches: 18, rows: 14, over: 10 },
    });
    expect(own.notes).toContain('slanting');
  });

  it('of another stitch differ from her gauge as the pattern’s differ', () => {
    const tall: MotifSpec = { ...FURROW, name: 'trellis', gauge: { stitches: 24, rows: 12, over: 20 } };
    const own = reckonOwn(
      planOf(pattern([FURROW, tall], [6, 6])),
      way({ gauge: { stitches: 15.6, rows: 12, over: 10 } }),
    );
    // The pattern: 13 and 12 stitches, 10 and 6 rows over 10 cm. Hers: 15.6 stitches and 12 rows in the first.
    const { stitches, rows, over } = own.spec.kinds[1]!.gauge!;
    expect([stitches / over, rows! / over]).toEqual([expect.closeTo(1.44, 9), expect.closeTo(0.72, 9)]);
    // The same gauge counted over another length is no other stitch.
    const same: MotifSpec = { ...FURROW, name: 'trellis', gauge: { stitches: 26, rows: 20, over: 20 } };
    const alike = reckonOwn(
      planOf(pattern([FURROW, same], [6, 6])),
      way({ gauge: { stitches: 15, rows: 12, over: 10 } }),
    );
    expect(alike.spec.kinds[1]!.gauge).toEqual({ stitches: 15, rows: 12, over: 10 });
    for (const other of [
      { stitches: 13, rows: 8, over: 10 },
      { stitches: 11, rows: 10, over: 10 },
    ]) {
      const odd = reckonOwn(
        planOf(pattern([FURROW, { ...FURROW, name: 'trellis', gauge: other }], [6, 6])),
        way({ gauge: { stitches: 15, rows: 12, over: 10 } }),
      );
      expect(odd.spec.kinds[1]!.gauge).not.toEqual({ stitches: 15, rows: 12, over: 10 });
    }
  });

  it('keep their stripes’ shares of the rows, and drop one that has no row left', () => {
    const striped: MotifSpec = {
      ...FURROW,
      runs: [
        { colour: 'moss', rows: 1 },
        { colour: 'sand', rows: 23 },
      ],
    };
    const made = (stitches: number, rows: number) =>
      reckonOwn(planOf(pattern([striped], [12])), way({ gauge: { stitches, rows, over: 10 } })).spec
        .kinds[0]!;
    expect(made(13, 10).runs).toEqual(striped.runs);
    const small = made(6, 5);
    expect(small.runs).toEqual([{ colour: 'sand', rows: 2 * small.size }]);
    const large = made(26, 20);
    expect(large.runs.map(({ rows }) => rows)).toEqual([2, 2 * large.size - 2]);
    expect(
      reckonOwn(
        planOf(pattern([{ ...FURROW, runs: [] }], [12])),
        way({ gauge: { stitches: 26, rows: 20, over: 10 } }),
      ).spec.kinds[0]?.runs,
    ).toEqual([]);
  });

  it('are in her colours, two of the pattern’s being one of hers where she says so', () => {
    const of = planOf(pattern([FURROW, solid], [6, 6]));
    expect(coloursOfPlan(of)).toEqual(['moss', 'sand', 'meadow']);
    const teal = (hers: string) =>
      ['moss', 'sand', 'meadow'].map((one, index) => ({ of: one, hers: index === 1 ? hers : 'teal' }));
    const own = reckonOwn(of, way({ colours: teal('Teal') }));
    expect(own.spec.kinds[0]?.runs).toEqual([{ colour: 'teal', rows: 24 }]);
    expect(own.spec.kinds[1]?.runs).toEqual([{ colour: 'teal', rows: 7 }]);
    expect(own.spec.yarns.map(({ colour }) => colour)).toEqual(['teal']);
    const two = reckonOwn(of, way({ colours: teal('cream'), ball: { m: 170, g: 100 } }));
    expect(two.spec.joining).toEqual({ method: 'whip', colour: 'cream' });
    expect(two.spec.border.rounds).toEqual([
      { stitch: 'sc', colour: 'teal' },
      { stitch: 'sc', colour: 'cream' },
    ]);
    expect(two.spec.yarns).toEqual([
      { colour: 'teal', ball: { m: 170, g: 100 } },
      { colour: 'cream', ball: { m: 170, g: 100 } },
    ]);
    // One of one unnamed colour stays so where its colour stays.
    expect(
      reckonOwn(of, way({ colours: [{ of: 'moss', hers: 'teal' }] })).spec.kinds.map(({ runs }) => runs),
    ).toEqual([
      [
        { colour: 'teal', rows: 12 },
        { colour: 'sand', rows: 12 },
      ],
      [],
    ]);
    const plain = planOf(pattern([{ ...FURROW, runs: [] }], [12], { joining: { method: 'whip' } }));
    expect(reckonOwn(plain, NO_WAY).spec.joining).toEqual({ method: 'whip' });
    expect(reckonOwn(plain, NO_WAY).spec.yarns).toEqual([{ colour: 'furrow' }]);
    // A yarn that was named for something else is hers as well.
    const named = planOf(pattern([FURROW], [12], { yarns: [{ colour: 'rose', ball: { m: 50, g: 25 } }] }));
    expect(reckonOwn(named, NO_WAY).spec.yarns).toEqual([
      { colour: 'moss' },
      { colour: 'sand' },
      { colour: 'rose', ball: { m: 50, g: 25 } },
    ]);
  });

  it('say what they rest on', () => {
    const notes = (more: Partial<Way>) => [...reckonOwn(plan(), way(more)).notes];
    expect(notes({})).toEqual(['no-gauge', 'no-ball', 'no-pace']);
    expect(notes({ gauge: GAUGE })).toEqual(['no-ball', 'no-pace']);
    expect(notes({ side: 15 })).toEqual(['no-ball', 'no-pace']);
    expect(notes({ ball: { m: 170, g: 100 } })).toEqual(['no-gauge', 'no-pace']);
    expect(notes({ perMinute: 12 })).toEqual(['no-gauge', 'no-ball']);
    const mixed = planOf(pattern([FURROW, blocks], [6, 6]));
    expect(reckonOwn(mixed, way({ gauge: GAUGE })).notes).toContain('slanting');
    expect(reckonOwn(mixed, NO_WAY).notes).not.toContain('slanting');
    expect(reckonOwn(plan(), NO_WAY)).toMatchObject({ spec: { reserve: 10 } });
    expect(NO_WAY.named).toBe(false);
  });

  it('take as long as she says, in stitches a minute and back', () => {
    // 12 rising rows of a diagonal square are 2 × 12² + 1 − … stitches: 3, 5 … 25 … 1 sum to 312.
    expect(ownPace(plan(), NO_WAY, 26)).toBeCloseTo(312 / 26, 9);
    const own = reckonOwn(plan(), way({ perMinute: 12 }));
    expect(minutesOf(own, FURROW)).toBe(26);
    expect(minutesOf(reckonOwn(plan(), NO_WAY), FURROW)).toBeUndefined();
  });
});

describe('her blanket', () => {
  it('is the pattern’s size unless she wishes another, one side of it or both', () => {
    const side = reckonOwn(plan(), NO_WAY).kinds[0]!.side;
    const extent = (more: Partial<Way>) => {
      const own = reckonOwn(plan(), way(more));
      return [own.extent.columns, own.extent.rows, countOwnMotifs(own)];
    };
    expect(extent({})).toEqual([3, 4, 12]);
    expect(extent({ width: 5 * side })).toEqual([5, 4, 20]);
    expect(extent({ height: 2 * side })).toEqual([3, 2, 6]);
    expect(reckonOwn(plan(), way({ width: 5 * side })).offPercent).toBeCloseTo(0, 6);
    expect(reckonOwn(plan(), NO_WAY)).not.toHaveProperty('offPercent');
    expect(() => reckonOwn(plan(), way({ gauge: { stitches: 13, over: 10 } }))).toThrow(
      code('gauge-rows-missing'),
    );
  });

  it('is laid as the pattern is, and by counts alone where its own were changed by hand', () => {
    const kinds = [FURROW, solid];
    const laid = (
      arrangement: 'checked' | 'stripes' | 'scattered' | 'typed',
      counts: number[],
      more: Partial<Way> = {},
    ) => {
      const of = planOf(
        pattern(kinds, counts, { setting: writeLaidBy({ arrangement, setting: 'upright', seed: 3 }) }),
      );
      const own = reckonOwn(of, way(more));
      const cells = layOwn(of, own);
      expect(countLaid(cells, 2)).toEqual(own.extent.counts);
      return cells.map(({ kind }) => kind).join('');
    };
    expect(laid('checked', [6, 6])).toBe('010101010101');
    expect(laid('stripes', [6, 6])).toBe('000111000111');
    // Other counts than a checked one has.
    expect(laid('checked', [9, 3]).length).toBe(12);
    laid('checked', [12, 0]);
    laid('scattered', [8, 4], { width: 100 });
    laid('typed', [7, 5], { height: 100 });
  });
});

describe('her numbers for a part', () => {
  const of = planOf(pattern([FURROW, solid], [8, 4]));
  const own = reckonOwn(of, NO_WAY);

  it('of a swatch are as many as its gauge has on it', () => {
    expect(first(of, 'swatch').swatch).toEqual({ stitches: 20, rows: 15 });
    expect(first(of, 'swatch', way({ gauge: { stitches: 20, rows: 22, over: 15 } })).swatch).toEqual({
      stitches: (SWATCH_SIDE * 20) / 15,
      rows: 22,
    });
    const measured = planOf(pattern([{ ...FURROW, gauge: { stitches: 13, over: 10 }, side: 15 }], [12]));
    expect(first(measured, 'swatch')).toEqual({ work: 'swatch' });
  });

  it('of the first motif are its rows, the yarn of one whole motif, and the hours of its rows', () => {
    const halves = numbersOf(of).filter(({ work }) => work === 'first');
    expect(halves.map(({ rows }) => [rows?.from, rows?.to])).toEqual([
      [1, 12],
      [13, 24],
    ]);
    const one = own.materials.colours.filter(({ motifs }) => motifs > 0);
    expect(one.map(({ colour }) => colour)).toEqual(['moss', 'sand', 'meadow']);
    for (const half of halves) expect(half.colours?.map(({ colour }) => colour)).toEqual(['moss', 'sand']);
    // 3 + 5 + … + 25 = 168 stitches, the others 144, at fifteen a minute.
    expect(halves.map(({ stitches, hours }) => [stitches, hours])).toEqual([
      [168, 168 / 15 / 60],
      [144, 144 / 15 / 60],
    ]);
    expect(numbersOf(of, way({ perMinute: 30 })).find(({ work }) => work === 'first')?.hours).toBeCloseTo(
      168 / 30 / 60,
      9,
    );
    // More parts than rows: what is over holds nothing.
    const parts: Part[] = Array.from({ length: 30 }, (_, index) => ({
      id: index + 1,
      title: 'x',
      from: '2031-01-06',
      work: 'first',
    }));
    const small = reckonOwn(of, NO_WAY);
    const shares = parts.map((part) => reckonPart(small, parts, part, new Working()).rows);
    expect(shares.filter((rows) => rows === undefined)).toHaveLength(30 - 24);
    expect(shares.flatMap((rows) => rows?.counts ?? [])).toHaveLength(24);
  });

  it('of the motifs hold each once, but for the one that has parts of its own', () => {
    const shares = numbersOf(of).filter(({ work }) => work === 'motifs');
    const sumOf = (kind: number) => shares.reduce((all, { motifs }) => all + (motifs?.[kind] ?? 0), 0);
    expect([sumOf(0), sumOf(1)]).toEqual([7, 4]);
    const solidStitches = reckonPart(
      own,
      of.parts,
      of.parts.find(({ work }) => work === 'motifs')!,
      new Working(),
    );
    expect(solidStitches.stitches).toBe(
      solidStitches.motifs![0]! * 312 + solidStitches.motifs![1]! * ownStitches(solid),
    );
    const without = of.parts.filter(({ work }) => work !== 'first');
    const all = without
      .filter(({ work }) => work === 'motifs')
      .map((part) => reckonPart(own, without, part, new Working()));
    expect(all.reduce((sum, { motifsInAll = 0 }) => sum + motifsInAll, 0)).toBe(12);
    // No yarn of a colour that is in none of them.
    const [share] = shares;
    expect(share?.motifs?.[1]).toBe(0);
    expect(share?.colours?.map(({ colour }) => colour)).toEqual(['moss', 'sand']);
  });

  it('of ends, seams and border are those of all of it', () => {
    expect(first(of, 'ends')).toEqual({
      work: 'ends',
      ends: own.materials.ends,
      // Motifs of two colours have four, those of one have two.
      endsIn: { motifs: 40, later: own.materials.ends - 40 },
    });
    const sand = own.materials.colours.find(({ colour }) => colour === 'sand')!;
    expect(sand.seams).toBeGreaterThan(0);
    expect(first(of, 'joining')).toEqual({
      work: 'joining',
      seams: own.materials.seams,
      seamLength: own.materials.seamLength,
      yarn: sand.seams,
      strands: [{ colour: 'sand', metres: sand.seams }],
    });
    const border = first(of, 'border');
    expect(border.border).toEqual(own.materials.border);
    expect(border.yarn).toBeCloseTo(
      own.materials.border.reduce((sum, { metres }) => sum + metres, 0),
      9,
    );
    expect(first(of, 'laying-out')).toEqual({ work: 'laying-out' });
  });

  it('leave her the hours of the parts that she is not done with', () => {
    const left = (...done: number[]) =>
      reckonHoursLeft(
        own,
        { parts: of.parts, done: new Map(done.map((part) => [part, new Set(['rowan'])])) },
        'rowan',
        new Working(),
      );
    const all = numbersOf(of).reduce((sum, { hours = 0 }) => sum + hours, 0);
    expect(left()).toBeCloseTo(all, 9);
    expect(left(2)).toBeCloseTo(all - 168 / 15 / 60, 9);
    expect(left(...of.parts.map(({ id }) => id))).toBe(0);
    expect(
      reckonHoursLeft(
        own,
        { parts: of.parts, done: new Map([[2, new Set(['ash'])]]) },
        'rowan',
        new Working(),
      ),
    ).toBeCloseTo(all, 9);
  });
});

/** 7 rounds of a solid square: 12, 28, 44 … for a tall stitch with two chains at each corner; summed off its plan elsewhere. */
const ownStitches = (motif: MotifSpec) => {
  const of = planOf(pattern([motif], [12]));
  const parts = of.parts.filter(({ work }) => work === 'first');
  const own = reckonOwn(of, NO_WAY);
  return parts.reduce((sum, part) => sum + (reckonPart(own, of.parts, part, new Working()).stitches ?? 0), 0);
};

describe('opening from what is saved', () => {
  it('takes no circle and no hexagon, by whichever option it came', () => {
    const hexagon: MotifSpec = { ...FURROW, name: 'hexie', shape: 'hexagon', size: 5, runs: [] };
    const circle: MotifSpec = { ...hexagon, name: 'moon', shape: 'circle' };
    const open = (made: Pattern) => () => planOf(made);
    expect(open(alone(hexagon))).toThrow(
      expect.objectContaining({
        code: 'not-for-along',
        option: 'motif',
        facts: { motif: 'hexie', shape: 'hexagon' },
      }),
    );
    expect(open(alone(circle))).toThrow(expect.objectContaining({ option: 'motif' }));
    expect(open(pattern([FURROW, circle], [6, 6]))).toThrow(
      expect.objectContaining({ option: 'blanket', facts: { motif: 'moon', shape: 'circle' } }),
    );
    expect(open(alone(FURROW))).not.toThrow();
    expect(alone(FURROW)).toMatchObject({ columns: 1, rows: 1, counts: [1] });
  });

  it('begins today at the earliest, and is told by days once', () => {
    const opened = (more: Partial<Parameters<typeof planAlong>[0]>) => () => plan(more);
    expect(opened({ starts: '2031-01-01', today: '2031-01-01' })).not.toThrow();
    expect(opened({ starts: '2031-01-01', today: '2031-01-02' })).toThrow(
      expect.objectContaining({ code: 'day-passed', facts: { starts: '2031-01-01' } }),
    );
    expect(opened({ list: '2031-02-01 swatch' })).toThrow(code('parts-given-twice'));
    expect(opened({ list: '2031-02-01 swatch', starts: undefined })).not.toThrow();
    // The last part, not the first, is to be near: 8 parts 92 days apart from 9 years ahead.
    expect(opened({ starts: '2039-12-01', every: 92, today: '2031-01-01' })).toThrow(
      expect.objectContaining({ code: 'day-too-far', option: 'every' }),
    );
    expect(opened({ starts: '2041-01-01', every: 1, today: '2031-01-01', list: undefined })).toThrow(
      code('day-too-far'),
    );
    expect(opened({ starts: '2040-12-25', every: 1, today: '2031-01-01' })).not.toThrow();
  });
});

describe('the parts that are proposed', () => {
  const proposed = (made: Pattern, shares?: number) =>
    proposeParts({ blanket: made, ...made, starts: '2031-01-06', every: 7, shares }).map(
      ({ title }) => title,
    );

  it('follow from the work there is', () => {
    expect(proposed(alone(FURROW))).toEqual([
      'Swatch',
      'The first furrow, first half',
      'The first furrow, second half',
      'Ends',
    ]);
    expect(proposed(alone({ ...solid, size: 3 }))).toEqual(['Swatch', 'The first meadow', 'Ends']);
    expect(proposed(alone({ ...solid, size: 4 }))).toHaveLength(4);
    // A title has as much room as a name.
    const long = 'x'.repeat(60 - 'The first , second half'.length);
    expect(proposed(alone({ ...FURROW, name: long }))[2]).toBe(`The first ${long}, second half`);
    expect(proposed(alone({ ...FURROW, name: `${long}x` }))[2]).toBe('The first motif, second half');
    expect(
      proposed(pattern([FURROW], [2], { columns: 2, rows: 1, border: { corner: 3, rounds: [] } })),
    ).toEqual([
      'Swatch',
      'The first furrow, first half',
      'The first furrow, second half',
      'The other motifs',
      'Ends',
      'Laying out',
      'Joining',
    ]);
    expect(proposed(pattern([FURROW], [12])).slice(-3)).toEqual(['Laying out', 'Joining', 'Border']);
  });

  it('share the motifs by their stitches, or as often as is said, never over more parts than there are', () => {
    const shares = (made: Pattern, asked?: number) =>
      proposed(made, asked).filter((title) => title.startsWith('Motifs,'));
    // 12 × 312 stitches are two parts of 3,600.
    expect(shares(pattern([FURROW], [12]))).toEqual(['Motifs, first share', 'Motifs, second share']);
    expect(shares(pattern([FURROW], [12], { columns: 40, rows: 30, counts: [1200] }))).toHaveLength(26);
    expect(shares(pattern([FURROW], [12]), 10)).toHaveLength(10);
    expect(shares(pattern([FURROW], [12]), 10).slice(-2)).toEqual([
      'Motifs, 9th share',
      'Motifs, 10th share',
    ]);
    expect(shares(pattern([FURROW], [3], { columns: 3, rows: 1 }), 10)).toHaveLength(2);
    // Blocks are reckoned as stitches: 64 of them would be one part otherwise.
    expect(shares(pattern([{ ...blocks, size: 20 }], [12], { counts: [12] })).length).toBeGreaterThan(3);
  });
});
