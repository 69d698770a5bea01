import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenUp } from '../../../src/core/edges/evening.ts';
import { readLengths } from '../../../src/core/base/lists.ts';
import { Working } from '../../../src/core/base/working.ts';
import { asking } from '../../asking.ts';
import { refused } from '../../refused.ts';

/** 10 stitches over 10 cm: a stitch is 1 cm wide, a round of sc 1 cm high, of hdc 1.5, of dc 2, of tr 3. */
const GAUGE = { stitches: 10, over: 10 };
const even = (sides: readonly number[], meant?: number, working = new Working()) =>
  evenUp(sides, { meant, gauge: GAUGE, hook: 5, wpi: 10.5 }, working);
const one = (side: number, meant: number) => even([side], meant).motifs[0]!;

describe('evening up', () => {
  it('leaves what seams forgive, and pins out what blocking mends', () => {
    for (const side of [20, 20.6, 19.4])
      expect(one(side, 20)).toEqual({ index: 0, side, pin: false, leave: false });
    for (const side of [19.39, 19])
      expect(one(side, 20)).toEqual({ index: 0, side, pin: true, leave: false });
  });

  it('gives the edging that takes least yarn and needs no pins, else the least that needs them', () => {
    // One round of sc adds 2 cm, of hdc 3, two of sc and one of dc 4, one of tr 6.
    expect(one(18, 20)).toMatchObject({ pin: false, edging: { stitch: 'sc', rounds: 1, side: 20 } });
    expect(one(17, 20)).toMatchObject({ pin: false, edging: { stitch: 'hdc', rounds: 1, side: 20 } });
    expect(one(16, 20)).toMatchObject({ edging: { stitch: 'dc', rounds: 1, side: 20 } });
    expect(one(14, 20)).toMatchObject({ edging: { stitch: 'tr', rounds: 1, side: 20 } });
    // Of large ones more than one edging would do: 59 cm with hdc is near enough to 60, for less yarn than dc.
    expect(one(56, 60)).toMatchObject({ pin: false, edging: { stitch: 'hdc', rounds: 1, side: 59 } });
    // 15.1 cm: 19.1 with dc is pinned to 20; hdc twice is 21.1, too large.
    expect(one(15.1, 20)).toMatchObject({ pin: true, edging: { stitch: 'dc', rounds: 1 } });
  });

  it('counts the edging round the motif, three in each corner, and its yarn', () => {
    const { edging } = one(18, 20);
    // Four sides of 18 and four corners of three; 2.32 × 1 cm and 7.52 × 1 cm in a stitch (standards, fitted).
    expect(edging!.stitches).toBe(4 * (18 + 3));
    expect(edging!.yarn).toBeCloseTo((84 * (2.32 + 7.52)) / 100, 9);
    // As many as lie nearest to flat: 19 on 18.6 cm.
    expect(one(18.6, 20.6).edging!.stitches).toBe(4 * (19 + 3));
    const working = new Working();
    even([20, 18], 20, working);
    expect(working.steps.map(({ label }) => label)).toContain(
      'Stitches of the edging round one motif, motif 2',
    );
    const twice = one(12, 20).edging!;
    // 8 cm: two rounds of dc; the second has two more on each side.
    expect(twice).toMatchObject({ stitch: 'dc', rounds: 2, stitches: 4 * (12 + 3) + 4 * (14 + 3), side: 20 });
  });

  it('leaves out what is too large, and what two rounds do not fill', () => {
    expect(one(20.61, 20)).toEqual({ index: 0, side: 20.61, pin: false, leave: true });
    expect(one(5, 20)).toMatchObject({ leave: true, pin: false });
    expect(one(5, 20).edging).toBeUndefined();
  });

  it('meets in the side of one of them in which most meet, of those where least is edged, then least pinned', () => {
    // In 15 cm all but 17 meet; in 17 the small ones are edged, and all meet.
    expect(even([15, 15, 15, 17])).toMatchObject({
      side: 17,
      counts: { leftOut: 0, edged: 3, asTheyAre: 1 },
    });
    expect(even([15, 15.2, 15.4])).toMatchObject({ side: 15, yarn: 0, counts: { asTheyAre: 3, pinned: 0 } });
    // In whatever order they lie, of several that are as good the smallest.
    expect(even([15.4, 15.2, 15]).side).toBe(15);
    // In 8 cm, 8.24 and 8.45 one is left out; only in 8.24 nothing is edged, for 5.7 cm is what is left out there.
    expect(even([5.7, 8, 8.24, 8.45])).toMatchObject({ side: 8.24, yarn: 0, counts: { leftOut: 1 } });
    // 14.6 beside 15.2 is 4 % off: in 15 both are within 3 %.
    expect(even([14.6, 15, 15.2]).side).toBe(15);
    expect(even([]).motifs).toEqual([]);
  });

  it('brings whatever it does not leave out to where a seam or pins mend the rest, for its yarn and no more', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.integer({ min: 80, max: 260 }).map((mm) => mm / 10),
          { minLength: 1, maxLength: 12 },
        ),
        fc.option(
          fc.integer({ min: 80, max: 260 }).map((mm) => mm / 10),
          { nil: undefined },
        ),
        (sides, meant) => {
          const working = new Working();
          const { side, motifs, yarn, counts } = even(sides, meant, working);
          expect(meant === undefined ? sides : [meant]).toContain(side);
          for (const { side: own, edging, pin, leave } of motifs) {
            const off = 100 * ((edging?.side ?? own) / side - 1);
            if (leave) expect(edging).toBeUndefined();
            else expect(pin ? off >= -5.0001 && off < -2.9999 : Math.abs(off) <= 3.0001).toBe(true);
          }
          expect(motifs.reduce((sum, { edging }) => sum + (edging?.yarn ?? 0), 0)).toBeCloseTo(yarn, 9);
          expect(counts.asTheyAre + counts.pinned + counts.edged + counts.leftOut).toBe(sides.length);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('a list of lengths', () => {
  it('takes the unit that is named behind a number, else the reader’s', () => {
    expect(readLengths('14.2 15 and 15.6cm', 'in', 'sides')).toEqual([14.2, 15, 15.6]);
    expect(readLengths('6, 6.5', 'in', 'sides')).toEqual([15.24, 16.51]);
    expect(readLengths('150 mm, 15 cm 6"', 'cm', 'sides')).toEqual([15, 15, 15.24]);
  });
  it('refuses what is none', () => {
    for (const text of ['large and small', '', '15 16 x'])
      expect(() => readLengths(text, 'cm', 'sides')).toThrow(refused('no-lengths', { option: 'sides' }));
    expect(readLengths('15.25 6″', 'cm', 'sides')).toEqual([15.25 * 2.54, 15.24]);
    expect(readLengths(Array.from({ length: 200 }, () => '15').join(' '), 'cm', 'sides')).toHaveLength(200);
    const many = Array.from({ length: 201 }, () => '15').join(' ');
    expect(() => readLengths(many, 'cm', 'sides')).toThrow(
      refused('too-many-lengths', { facts: { most: 200, given: 201 } }),
    );
  });
});

describe('/border even', () => {
  it('says what is done to which, in her own units', async () => {
    const { ask } = asking();
    const said = await ask('/border even sides:"13.2 14.4 15 15.2 17cm" wanted:15cm gauge:13');
    expect(said.headline).toMatch(
      /^They meet at 15 cm: 2 as they are, 1 pinned out, 1 with an edging, 6.06 m/,
    );
    const lines = said.lines!.join(' ');
    expect(lines).toContain('Pin out to 15 cm when you block them: 14.4 cm.');
    expect(lines).toMatch(/13\.2 cm: 1 round of sc, 80 stitches and 6\.06 m each/);
    expect(lines).toContain('nothing makes them smaller; use others, or all in a larger size: 17 cm.');
    await ask('wren: /settings change units:imperial');
    expect((await ask('wren: /border even sides:"6 6 6.1" gauge:"13 over 4in"')).headline).toBe(
      'They meet at 6 in: 3 as they are.',
    );
  });
  it('is said of a group’s motifs by their numbers, where they are put together', async () => {
    const { ask } = asking();
    for (const line of [
      '/motif define name:furrow shape:diagonal size:12 gauge:13x10 hook:5mm',
      '/blanket start name:rows kinds:furrow columns:3 rows:2',
      '/together open side:15cm',
      ...['15cm', '14.4cm', '13.2cm', '15.1cm', '16.4cm', '15cm'].map(
        (side) => `/together handin kind:furrow side:${side} confirm:yes`,
      ),
      '/host accept motifs:1-6 confirm:yes',
    ])
      expect(await ask(line)).toMatchObject({ ok: true });
    const put = await ask('/host assemble');
    const lines = put.lines!.join(' ');
    expect(lines).toContain('To make them meet at 15 cm: 3 as they are, 1 pinned out, 1 with an edging');
    expect(lines).toContain('Pin out to 15 cm when you block them: #2.');
    expect(lines).toMatch(/#3: 1 round of sc, 80 stitches/);
    expect(lines).toContain('or all in a larger size: #5.');
    expect(put.figures['edging_yarn']!.value).toBeGreaterThan(5);
  });
  it('is asked in plain words', async () => {
    const said = await asking().ask('even up my squares: they measure 14.2, 15 and 15.6 cm');
    expect(said.read_as).toContain('/border even sides:');
  });
});
