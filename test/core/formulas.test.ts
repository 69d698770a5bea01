/**
 * Every formula of the core, worked a second time: in units that nobody uses, where a hidden one would show; and in plain
 * steps from what it is said to be, by counting, adding up or proportion where the formula multiplies out.
 */
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Unit } from '../../src/core/base/reader.ts';
import { evaluate } from '../../src/core/base/working.ts';
import { everyFormula } from './every-formula.ts';

const formulas = await everyFormula();
const CORE = new URL('../../src/core/', import.meta.url);

it('finds all that are declared', () => {
  const declared = readdirSync(CORE, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map(
      (file) =>
        readFileSync(new URL(file, CORE), 'utf8').match(/^export const [A-Z_]+ = (formula|percentOff)\(/gm)
          ?.length ?? 0,
    )
    .reduce((sum, one) => sum + one, 0);
  expect(formulas.size).toBe(declared);
});

/**
 * How many of a unit made up for this test make one of ours. No two are alike, so that a length taken for another one shows too; a
 * reader's inches, yards and ounces leave millimetres as they are and would not show those.
 */
const MADE_UP: Readonly<Record<string, number>> = { cm: 0.71, m: 1.9, mm: 0.43, g: 2.6 };
const inMadeUp = (unit: Unit): number => {
  const [over = '', under = ''] = unit.split('/');
  return (MADE_UP[over] ?? 1) / (MADE_UP[under] ?? 1);
};

// Read in the tests, not while they are collected: a fault in a formula then acts without loading all of this anew.
describe.each([...formulas])('%s', (_, declared) => {
  it('says what it is and where it comes from', () => {
    const { label, source } = declared;
    expect(label).toMatch(/^[A-Z]/);
    expect(source).toMatch(/published|derived|common practice|from memory|measure|Garwood/);
  });

  it('is the same in any units', () => {
    const { formula, given, unit } = declared;
    let held = 0;
    fc.assert(
      fc.property(
        fc.record(
          Object.fromEntries(
            Object.keys(given).map((name) => [name, fc.double({ min: 0.3, max: 97, noNaN: true })]),
          ),
        ),
        (values) => {
          const own = Object.fromEntries(
            Object.entries(values).map(([name, value]) => [name, value * inMadeUp(given[name] ?? '')]),
          );
          let results: [number, number];
          try {
            results = [evaluate(formula, values), evaluate(formula, own)];
          } catch {
            return; // no value of the formula there, as the root of a negative number
          }
          held++;
          const expected = results[0] * inMadeUp(unit);
          expect(Math.abs(results[1] - expected)).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(expected)));
        },
      ),
      { numRuns: 60 },
    );
    expect(held).toBeGreaterThan(20);
  });
});

/** Numbers for one trial. */
interface Draw {
  readonly whole: (least: number, most: number) => number;
  readonly real: (least: number, most: number) => number;
}
type Trial = (draw: Draw) => readonly [given: Readonly<Record<string, number>>, result: number];

const upTo = (n: number) => Array.from({ length: n }, (_, index) => index + 1);
const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);
/** What a proportion gives: `of` to what, as `to` is to `from`. */
const inProportion = (of: number, from: number, to: number) => of / (from / to);
/** Per cent by which `is` is more than `should`. */
const percentOver = (is: number, should: number) => ((is - should) / should) * 100;
/** So many per cent more, added on. */
const withPercent = (of: number, percent: number) => of + (of / 100) * percent;
/** The fewest whole ones that hold it; a millionth over is none. */
const fewestHolding = (of: number, one: number) => {
  let many = 0;
  while (many * one < of - one * 5e-7) many++;
  return many;
};

/** Counts of the diagonal square: 3, then two more a row, then two fewer. */
const diagonalRow = (size: number, row: number) => {
  let count = 3;
  for (let at = 2; at <= row; at++) count += at <= size ? 2 : -2;
  return count;
};
/** Blocks of each row of a rectangle, corner to corner: the cells of a grid along one diagonal. */
const blocksIn = (size: number, other: number, row: number) =>
  sum(upTo(size).map((x) => upTo(other).filter((y) => x + y - 1 === row).length));
/** A round of the solid square: four sides that gain what a corner adds, from one stitch with corners all round. */
const solidRound = (corner: number, round: number) => {
  let count = 4 * (corner - 1) - 4;
  for (let at = 2; at <= round; at++) count += 4 * corner - 4;
  return count;
};
/** Seams between the places of a grid, counted one by one. */
const sidesOf = (columns: number, rows: number) =>
  sum(upTo(rows).flatMap((row) => upTo(columns).map((column) => (column > 1 ? 1 : 0) + (row > 1 ? 1 : 0))));
const degrees = (opposite: number, adjacent: number) => (Math.atan2(opposite, adjacent) / Math.PI) * 180;
const hypotenuse = Math.hypot;

/** Each formula a second time. The handbook's chapter stands where it is from there. */
const SECOND: Readonly<Record<string, Trial>> = {
  // Blankets (chapters 4 and 8).
  QUOTA: ({ whole }) => {
    const [places, share, others] = [whole(1, 400), whole(1, 50), whole(1, 50)];
    return [
      { places, share, shares_total: share + others },
      places - inProportion(places, share + others, others),
    ];
  },
  SPARE: ({ real }) => {
    const [yarn, left] = [real(1, 500), real(-50, 50)];
    return [{ at_hand: yarn + left, yarn }, left];
  },
  ALL_ENDS: ({ whole }) => {
    const [in_motifs, seams, in_border] = [whole(0, 500), whole(0, 90), whole(0, 20)];
    return [{ in_motifs, seams, in_border }, sum([in_motifs, seams, seams, in_border])];
  },
  COLOUR_TOTAL: ({ real }) => {
    const [motifs, tails, carried, seams, border] = [
      real(1, 900),
      real(0, 30),
      real(0, 9),
      real(0, 80),
      real(0, 60),
    ];
    const reserve = real(0, 30);
    const parts = [motifs, tails, carried, seams, border];
    return [
      { motifs, tails, carried, seams, border, reserve },
      sum(parts.map((part) => withPercent(part, reserve))),
    ];
  },
  BEFORE_FIRST: ({ real }) => {
    const [others, border, reserve] = [real(1, 900), real(0, 90), real(0, 30)];
    return [
      { total: withPercent(others, reserve) + withPercent(border, reserve), border, reserve },
      withPercent(others, reserve),
    ];
  },
  COST: ({ whole, real }) => {
    const [to_buy, price] = [whole(0, 30), real(1, 20)];
    return [{ to_buy, price }, sum(upTo(to_buy).map(() => price))];
  },
  FOR_ALL: ({ whole, real }) => {
    const [each, motifs] = [real(1, 40), whole(1, 90)];
    return [{ each, motifs }, sum(upTo(motifs).map(() => each))];
  },
  HIGH_TOTAL: ({ real }) => {
    const [yarn, more, reserve] = [real(0, 900), real(0, 90), real(0, 20)];
    return [{ yarn, more, reserve }, withPercent(yarn, reserve) + withPercent(more, reserve)];
  },
  MORE_AT_MOST: ({ real }) => {
    const [yarn, band] = [real(0, 900), real(1, 30)];
    return [{ yarn, band }, withPercent(yarn, band) - yarn];
  },
  TO_BUY: ({ whole, real }) => {
    const [ball_length, at_hand, yarn] = [real(50, 300), whole(0, 9), real(0, 2000)];
    return [{ yarn, ball_length, at_hand }, Math.max(0, fewestHolding(yarn, ball_length) - at_hand)];
  },
  WEIGHT_OF_YARN: ({ real }) => {
    const [yarn, ball_weight, ball_length] = [real(1, 900), real(25, 200), real(50, 400)];
    return [{ yarn, ball_weight, ball_length }, inProportion(ball_weight, ball_length, yarn)];
  },
  NEAREST_NUMBER: ({ real, whole }) => {
    const [number, each] = [whole(1, 90), real(0.3, 2)];
    // So many and not quite half of another more or less.
    return [{ wished: sum(upTo(number).map(() => each)) + each * real(-0.49, 0.49), each }, number];
  },
  OWN_GAUGE: ({ real }) => {
    const [pattern, hers, first] = [real(0.5, 3), real(0.5, 3), real(0.5, 3)];
    return [{ pattern, hers, first }, inProportion(pattern, first, hers)];
  },
  SWATCH_COUNT: ({ real }) => {
    const [length, counted, over] = [real(10, 20), real(8, 30), real(5, 15)];
    // The fewest that are at least as long.
    return [{ length, counted, over }, fewestHolding(length, over / counted)];
  },
  WHOLE_MOTIFS: ({ real, whole }) => {
    const [each, reserve, many] = [real(1, 40), real(0, 20), whole(0, 90)];
    const one = withPercent(each, reserve);
    return [{ at_hand: one * (many + real(0.01, 0.99)), each, reserve }, many];
  },
  MOTIFS_BY_WEIGHT: ({ real, whole }) => {
    const [each, many] = [real(1, 40), whole(0, 90)];
    return [{ left: each * (many + real(0.01, 0.99)), each }, many];
  },
  WEIGHT_OVER: ({ real, whole }) => {
    const [each, motifs, over] = [real(1, 40), whole(0, 90), real(0, 5)];
    return [{ left: sum(upTo(motifs).map(() => each)) + over, motifs, each }, over];
  },
  WEIGHT_OF_BALLS: ({ real, whole }) => {
    const [balls, ball_weight] = [whole(1, 60), real(20, 200)];
    return [{ balls, ball_weight }, sum(upTo(balls).map(() => ball_weight))];
  },
  HEIGHT_OF_ROUND: ({ real }) => {
    const [row_height, height, motif_height] = [real(0.3, 2), real(1, 3), real(1, 3)];
    return [{ row_height, height, motif_height }, inProportion(row_height, motif_height, height)];
  },
  FEWEST_TOUCHES: ({ whole }) => {
    const [kept_apart, touches] = [whole(0, 90), whole(0, 30)];
    return [{ sides: kept_apart + touches, kept_apart }, touches];
  },
  HALF_THE_PLACES: ({ whole }) => {
    const [columns, rows] = [whole(1, 30), whole(1, 30)];
    // The places of one colour of a chessboard, the first corner's.
    const black = sum(
      upTo(rows).map((row) => upTo(columns).filter((column) => (row + column) % 2 === 0).length),
    );
    return [{ columns, rows }, black];
  },
  SIDES: ({ whole }) => {
    const [columns, rows] = [whole(1, 30), whole(1, 30)];
    return [{ columns, rows }, sidesOf(columns, rows)];
  },
  // Borders (chapter 5).
  FEWEST: ({ whole }) => {
    const [multiple, plus] = [whole(1, 20), whole(0, 60)];
    let fewest = 1;
    while ((fewest - plus) % multiple !== 0) fewest++;
    return [{ plus, multiple }, fewest];
  },
  FLAT_GROWTH: ({ real }) => {
    const [width, height] = [real(0.3, 2), real(0.3, 2)];
    // The side of a square grows by a height at either end, in stitches; there are four sides.
    return [{ height_to_width: height / width }, sum(upTo(4).map(() => (height + height) / width))];
  },
  FROM_FLAT: ({ real, whole }) => {
    const [exact, counted] = [real(4, 300), whole(4, 300)];
    return [{ counted, exact }, percentOver(counted, exact)];
  },
  GROWTH: ({ whole }) => {
    const [corner, sideOf] = [whole(1, 9), whole(1, 90)];
    // Corner stitches become part of the sides, but for the middle one, which holds the next corner.
    return [{ corner }, 4 * (sideOf + corner - 1 + corner) - 4 * (sideOf + corner)];
  },
  NEAREST_SUITING: ({ real, whole }) => {
    const [multiple, plus, exact] = [whole(1, 12), whole(0, 12), real(0, 200)];
    let fewest = 1;
    while ((fewest - plus) % multiple !== 0) fewest++;
    let best = fewest;
    for (let count = fewest; count < 300; count += multiple)
      if (Math.abs(count - exact) < Math.abs(best - exact)) best = count;
    return [{ fewest, multiple, exact, plus }, best];
  },
  ROUND_TOTAL: ({ whole }) => {
    const [across, down, corner] = [whole(1, 300), whole(1, 300), whole(1, 9)];
    return [{ across, down, corner }, sum([across, corner, down, corner, across, corner, down, corner])];
  },
  SIDE_AFTER: ({ whole }) => {
    const [first, corner, round_number] = [whole(1, 300), whole(1, 9), whole(1, 12)];
    let at = first;
    for (let round = 2; round <= round_number; round++) at += corner - 1;
    return [{ side: first, corner, round_number }, at];
  },
  ALONG_ROW_ENDS: ({ whole }) => {
    const [row_ends, rate] = [whole(1, 200), whole(1, 3)];
    return [{ row_ends, rate }, sum(upTo(row_ends).map(() => rate))];
  },
  ALONG_STITCHES: ({ whole }) => {
    const stitches = whole(1, 200);
    return [{ stitches }, stitches];
  },
  SIDE_OF_ROUND: ({ whole }) => {
    const one = whole(1, 200);
    return [{ last_round: one + one + one + one }, one];
  },
  EDGED_SIDE: ({ real, whole }) => {
    const [side, rounds, height] = [real(5, 30), whole(1, 3), real(0.3, 2)];
    return [{ side, rounds, height }, side + sum(upTo(rounds).map(() => height + height))];
  },
  EDGING_STITCHES: ({ real, whole }) => {
    const [rounds, stitch_width, corner, along] = [whole(1, 3), real(0.3, 2), whole(1, 5), whole(5, 40)];
    const side = (along + real(-0.45, 0.45)) * stitch_width;
    // Round by round: four sides that gain what a corner adds, and four corners.
    const each = upTo(rounds).map((round) => 4 * (along + (corner - 1) * (round - 1) + corner));
    return [{ rounds, side, stitch_width, corner }, sum(each)];
  },
  EDGING_YARN: ({ real, whole }) => {
    const [stitches, stitch_yarn] = [whole(1, 200), real(0.01, 0.2)];
    return [{ stitches, stitch_yarn }, sum(upTo(stitches).map(() => stitch_yarn))];
  },
  // Seams (chapter 4).
  GAUGED_PITCH: ({ real, whole }) => {
    const [over, stitches] = [real(5, 20), whole(5, 40)];
    return [{ over, mm_per_cm: 10, stitches }, (over / stitches) * 10];
  },
  IN_STRANDS: ({ whole, real }) => {
    const [strands, thickness] = [whole(1, 6), real(0.5, 6)];
    return [{ strands, thickness }, sum(upTo(strands).map(() => thickness))];
  },
  IN_MM: ({ real }) => {
    const mm = real(5, 90);
    return [{ stitch_yarn: mm / 1000, mm_per_m: 1000 }, mm];
  },
  PER_LENGTH: ({ real }) => {
    const [pitch, times] = [real(2, 9), real(1, 6)];
    return [{ stitch_yarn: pitch * times, pitch }, times];
  },
  SEAMS: ({ whole }) => {
    const [columns, rows] = [whole(1, 30), whole(1, 30)];
    // Within each row the motifs are joined to the next; then each row is joined whole to the next.
    return [{ columns, rows }, sum(upTo(rows).map((row) => columns - 1 + (row > 1 ? 1 : 0)))];
  },
  SEAM_LENGTH: ({ whole, real }) => {
    const [columns, rows, one] = [whole(1, 20), whole(1, 20), real(5, 30)];
    return [{ side: one, columns, rows, cm_per_m: 100 }, (sidesOf(columns, rows) * one) / 100];
  },
  SEAM_TAILS: ({ whole, real }) => {
    const [seams, tail] = [whole(0, 90), real(0.1, 0.3)];
    return [{ seams, tail }, sum(upTo(seams).map(() => tail + tail))];
  },
  SEWING_STRANDS: ({ whole, real }) => {
    const [seams, ratio, many] = [whole(1, 40), real(1, 6), whole(1, 9)];
    // So many whole strands of 1.5 m but for their tails, the last one not used up.
    const seam = ((many - real(0.05, 0.95)) * (1.5 - 0.3) * 100) / ratio;
    return [{ seams, seam, ratio, cm_per_m: 100, strand: 1.5, tail: 0.15 }, sum(upTo(seams).map(() => many))];
  },
  SEAM_YARN: ({ real }) => {
    const [seam, ratio] = [real(1, 60), real(1, 6)];
    return [{ seam, ratio }, inProportion(seam, 1, ratio)];
  },
  SLIP_STITCH_SHARE: ({ real }) => {
    const [single_crochet, chain, measured_single_crochet] = [real(2, 4), real(1, 4), real(2, 6)];
    return [
      { single_crochet, chain, measured_single_crochet },
      inProportion(chain, measured_single_crochet, single_crochet),
    ];
  },
  USUAL_PITCH: ({ real }) => {
    const [width_of_loop, hook, thickness] = [real(0.5, 2), real(2, 9), real(0.5, 5)];
    return [{ width_of_loop, hook, thickness }, width_of_loop * hook + width_of_loop * thickness];
  },
  WHIP_STITCH: ({ real }) => {
    const [bite, pitch, fabric] = [real(1, 6), real(2, 9), real(0.5, 6)];
    // Over and under, each slanting by half a pitch from one edge's bite to the other's; through the fabric twice.
    return [{ bite, pitch, fabric }, hypotenuse(bite + bite, pitch / 2) * 2 + fabric + fabric];
  },
  // A group's blanket (chapter 9).
  BUY: ({ real }) => {
    const [yarn, quantile, open] = [real(1, 900), real(1, 3), real(0, 90)];
    return [{ yarn, quantile, open }, yarn + inProportion(quantile, 1, open)];
  },
  BUYING_BAND: ({ real }) => {
    const [limits, open, expected] = [real(1, 3), real(0, 90), real(1, 900)];
    return [{ limits, open, expected }, percentOver(expected + limits * open, expected)];
  },
  EASES: ({ real }) => {
    const [wanted, forgiven] = [real(5, 30), real(1, 9)];
    return [{ wanted, forgiven }, withPercent(wanted, forgiven) - wanted];
  },
  HANDS_DIFFER: ({ real, whole }) => {
    const [counts, usual, more] = [whole(1, 9), real(1, 20), whole(0, 40)];
    const [apart, error] = [real(0, 90), real(0, 90)];
    const own = apart > error ? (apart - error) * (apart + error) : 0;
    const squares = sum(upTo(counts).map(() => usual * usual)) + own;
    return [{ counts, usual, apart, error, more }, Math.sqrt(squares / (more + counts))];
  },
  GROUP_OPEN: ({ real }) => {
    const [one, other] = [real(1, 20), real(1, 20)];
    const trust_in_reckoned = 1 / (one * one);
    const trust_in_weighed = 1 / (other * other);
    // Two resistances side by side.
    return [{ trust_in_reckoned, trust_in_weighed }, (one * other) / hypotenuse(one, other)];
  },
  GROUP_USE: ({ real }) => {
    const [mean, trust_in_reckoned, trust_in_weighed] = [real(50, 150), real(0.1, 5), real(0.1, 5)];
    const given = { trust_in_reckoned, weighed: mean * trust_in_weighed, trust_in_weighed };
    const share = trust_in_weighed / (trust_in_reckoned + trust_in_weighed);
    return [given, 100 + share * (mean - 100)];
  },
  HER_USE: ({ real }) => {
    const [group, trust, hers] = [real(50, 150), real(0, 1), real(50, 150)];
    return [{ group, trust, hers }, trust * hers + (1 - trust) * group];
  },
  LEFT_OPEN: ({ real }) => {
    const [by_makers, by_motifs, by_estimate] = [real(0, 90), real(0, 90), real(0, 90)];
    return [{ by_makers, by_motifs, by_estimate }, hypotenuse(by_makers, by_motifs, by_estimate)];
  },
  OPEN_OF_MAKERS: ({ real }) => {
    const [differ, own, group_open, shared] = [real(1, 20), real(1, 900), real(1, 20), real(1, 900)];
    return [
      { differ, own, group_open, shared },
      hypotenuse(withPercent(own, differ) - own, withPercent(shared, group_open) - shared),
    ];
  },
  RECKONED_OPEN: ({ real }) => {
    const [yarn, percent] = [real(1, 900), real(1, 25)];
    return [{ unsure: inProportion(percent, 1, yarn), yarn }, percent];
  },
  RESERVE: ({ real }) => {
    const [to_buy, expected] = [real(1, 900), real(1, 900)];
    return [{ to_buy, expected }, percentOver(to_buy, expected)];
  },
  TRUST: ({ real }) => {
    const [differ, error] = [real(1, 20), real(1, 20)];
    return [{ differ, error }, 1 - (error * error) / (differ * differ + error * error)];
  },
  CHANCE_F: ({ real, whole }) => {
    const [days_left, parcels, days, more] = [real(1, 90), whole(1, 40), real(1, 90), real(1, 40)];
    // The rate that is needed over the rate so far, turned over.
    return [{ days_left, parcels, days, more }, (parcels + 0.5) / days / (more / days_left)];
  },
  DAYS_TO_GO: ({ real, whole }) => {
    const [days, more, parcels, f_value] = [real(1, 90), real(1, 40), whole(1, 40), real(0.2, 4)];
    return [{ days, more, parcels, f_value }, f_value * (more / ((parcels + 0.5) / days))];
  },
  DAYS_AT_WORK: ({ real }) => {
    // Two makers of the same pace, one of whom has not begun: half the days of the other.
    const [said, days] = [real(1, 20), real(1, 90)];
    return [{ said_days: said * days, said: 2 * said }, days / 2];
  },
  DAYS_TOLD: ({ real }) => {
    const [at_work, said_counts, each, said] = [real(1, 90), real(1, 9), real(1, 4), real(1, 20)];
    return [
      { at_work, said_counts, each, days_a_week: 7, said },
      at_work + ((said_counts * each) / said) * 7,
    ];
  },
  MOTIFS_EACH: ({ real, whole }) => {
    const [parcels, each] = [whole(1, 40), real(1, 6)];
    return [{ done: each * parcels, parcels }, each];
  },
  EXPECTED_RATE: ({ real }) => {
    const [weeks, rate] = [real(1, 20), real(1, 20)];
    return [{ to_come: rate * weeks, middle: weeks * 7, days_a_week: 7 }, rate];
  },
  NEEDED_RATE: ({ real }) => {
    const [weeks, rate] = [real(1, 20), real(1, 20)];
    return [{ to_come: rate * weeks, days_left: weeks * 7, days_a_week: 7 }, rate];
  },
  PARCELS: ({ whole, real }) => {
    const [parcels, each] = [whole(1, 40), real(1, 6)];
    // Parcels all alike are just so many.
    return [{ done: parcels * each, squares: sum(upTo(parcels).map(() => each * each)) }, parcels];
  },
  PARCELS_ALIKE: ({ real }) => {
    const [alike, scatter] = [real(1, 30), real(1, 4)];
    return [{ parcels: alike * scatter, scatter }, alike];
  },
  PARCELS_TOLD: ({ whole, real }) => {
    const [came, parcels, said_counts] = [whole(1, 30), real(1, 30), real(1, 6)];
    const starts = whole(0, came);
    return [
      { parcels, counted: came - starts, came, said_counts },
      parcels - (starts * parcels) / came + said_counts,
    ];
  },
  PARCELS_TO_COME: ({ real }) => {
    const [to_come, each] = [real(1, 90), real(1, 6)];
    // The last parcel is whole: on average it brings half of what it has beyond one too many.
    return [{ to_come, each }, to_come / each + 0.5 - 0.5 / each];
  },
  RATE: ({ real }) => {
    const [weeks, rate] = [real(1, 20), real(1, 20)];
    return [{ done: rate * weeks, days: weeks * 7, days_a_week: 7 }, rate];
  },
  WEEKS_SCATTER: ({ real }) => {
    const [off, done, parcels, chance_alone] = [real(1, 200), real(5, 60), real(2, 20), real(0.7, 30)];
    return [{ off, done, parcels, chance_alone }, Math.max(1, (off * parcels) / (done * chance_alone))];
  },
  WANTED_OF_KIND: ({ whole }) => {
    const [cells, spares] = [whole(1, 90), whole(0, 9)];
    return [{ cells, spares }, upTo(cells).length + upTo(spares).length];
  },
  CAN_MAKE: ({ real }) => {
    const [a_week, weeks] = [real(0.5, 9), real(0.5, 20)];
    return [{ a_week, days_left: weeks * 7, days_a_week: 7 }, a_week * weeks];
  },
  MEAN_GAP: ({ real, whole }) => {
    const [gap, seams] = [real(0.1, 3), whole(1, 60)];
    // Gaps that are all alike have that one for their mean.
    return [{ root_of_squares: Math.sqrt(sum(upTo(seams).map(() => gap * gap))), seams }, gap];
  },
  'group SIDE_OFF': ({ real }) => {
    const [measured, wanted] = [real(8, 30), real(8, 30)];
    return [{ side: measured, wanted }, percentOver(measured, wanted)];
  },
  TO_EASE: ({ real }) => {
    const [wanted, off] = [real(8, 30), real(-3, 3)];
    return [{ side: wanted + off, wanted }, off < 0 ? -off : off];
  },
  // Looked up, counted.
  METRES_PER_GRAM: ({ real }) => {
    const [weight, each] = [real(25, 200), real(0.5, 9)];
    return [{ length: each * weight, weight }, each];
  },
  DIFFERENCE: ({ whole }) => {
    const [expected, off] = [whole(1, 90), whole(-9, 9)];
    return [{ counted: expected + off, expected }, off];
  },
  // Row plans (chapter 2).
  BLOCKS_IN_ROW: ({ whole }) => {
    const [size, other_size] = [whole(1, 15), whole(1, 15)];
    const row = whole(1, size + other_size - 1);
    return [{ row, size, other_size }, blocksIn(size, other_size, row)];
  },
  BLOCKS_RISING: ({ whole }) => {
    const row = whole(1, 60);
    return [{ row }, sum(upTo(row))];
  },
  BLOCKS_LEVEL: ({ whole }) => {
    const short = whole(1, 12);
    const long = short + whole(0, 12);
    const row = whole(short, long);
    return [{ short, row }, sum(upTo(row).map((at) => blocksIn(short, long, at)))];
  },
  BLOCKS_FALLING: ({ whole }) => {
    const [size, other_size] = [whole(1, 12), whole(1, 12)];
    const rows = size + other_size - 1;
    const row = whole(Math.max(size, other_size), rows);
    return [{ size, other_size, rows, row }, sum(upTo(row).map((at) => blocksIn(size, other_size, at)))];
  },
  CLUSTER_STITCHES: ({ whole }) => {
    const round_number = whole(1, 40);
    // Four sides, a cluster more on each a round, three stitches each.
    return [{ round_number }, sum(upTo(round_number).flatMap(() => [3, 3, 3, 3]))];
  },
  CLUSTER_SO_FAR: ({ whole }) => {
    const round_number = whole(1, 40);
    return [{ round_number }, sum(upTo(round_number).map((round) => 12 * round))];
  },
  RISING_COUNT: ({ whole }) => {
    const row = whole(1, 60);
    return [{ row }, diagonalRow(60, row)];
  },
  FALLING_COUNT: ({ whole }) => {
    const size = whole(1, 40);
    const row = whole(size + 1, 2 * size);
    return [{ size, row }, diagonalRow(size, row)];
  },
  RISING_SO_FAR: ({ whole }) => {
    const row = whole(1, 60);
    return [{ row }, sum(upTo(row).map((at) => diagonalRow(60, at)))];
  },
  FALLING_SO_FAR: ({ whole }) => {
    const size = whole(1, 40);
    const row = whole(size, 2 * size);
    return [{ size, row }, sum(upTo(row).map((at) => diagonalRow(size, at)))];
  },
  FLAT_COUNT: ({ whole }) => {
    const stitches = whole(1, 200);
    return [{ stitches }, stitches];
  },
  FLAT_SO_FAR: ({ whole }) => {
    const [stitches, rows_done] = [whole(1, 200), whole(1, 90)];
    return [{ stitches, rows_done }, sum(upTo(rows_done).map(() => stitches))];
  },
  REPEATS_BELOW: ({ whole, real }) => {
    const [multiple, plus, repeats] = [whole(1, 20), whole(0, 20), whole(0, 40)];
    return [{ near: repeats * multiple + plus + real(0, multiple * 0.99), plus, multiple }, repeats];
  },
  REPEATED: ({ whole }) => {
    const [repeats, multiple, plus] = [whole(0, 40), whole(1, 20), whole(0, 20)];
    return [{ repeats, multiple, plus }, sum(upTo(repeats).map(() => multiple)) + plus];
  },
  FOUNDATION_CHAIN: ({ whole }) => {
    const [stitches, extra] = [whole(1, 200), whole(1, 3)];
    return [{ stitches, extra }, upTo(stitches).length + upTo(extra).length];
  },
  FIRST_INTO: ({ whole }) => {
    const turning_chain = whole(1, 4);
    // The first chain behind those that are skipped.
    return [{ turning_chain }, upTo(9).find((chain) => chain > turning_chain)!];
  },
  CIRCLE_COUNT: ({ whole }) => {
    const [increases, round_number] = [whole(4, 18), whole(1, 40)];
    return [{ increases, round_number }, sum(upTo(round_number).map(() => increases))];
  },
  HEXAGON_COUNT: ({ whole }) => {
    const [first, increases, round_number] = [whole(4, 18), whole(4, 18), whole(1, 40)];
    let count = first;
    for (let round = 2; round <= round_number; round++) count += increases;
    return [{ first, increases, round_number }, count];
  },
  ROUND_SO_FAR: ({ whole }) => {
    const [increases, round_number] = [whole(4, 18), whole(1, 40)];
    return [{ increases, round_number }, sum(upTo(round_number).map((round) => increases * round))];
  },
  SOLID_COUNT: ({ whole }) => {
    const [corner, round_number] = [whole(2, 9), whole(1, 40)];
    return [{ corner, round_number }, solidRound(corner, round_number)];
  },
  SOLID_SO_FAR: ({ whole }) => {
    const [corner, round_number] = [whole(2, 9), whole(1, 40)];
    return [{ corner, round_number }, sum(upTo(round_number).map((round) => solidRound(corner, round)))];
  },
  // Even spacing (chapter 6).
  CHANGES: ({ whole }) => {
    const [from, change] = [whole(20, 200), whole(-20, 20)];
    return [{ to: from + change, from }, change < 0 ? -change : change];
  },
  PLAIN: ({ whole }) => {
    const [eaten, changes, plain] = [whole(1, 2), whole(1, 40), whole(0, 90)];
    return [{ from: sum([plain, ...upTo(changes).map(() => eaten)]), eaten, changes }, plain];
  },
  RUN: ({ whole }) => {
    const [runs, run] = [whole(1, 30), whole(0, 20)];
    return [{ plain: run * runs + whole(0, runs - 1), runs }, run];
  },
  LONGER: ({ whole }) => {
    const [runs, run] = [whole(1, 30), whole(0, 20)];
    const longer = whole(0, runs - 1);
    return [{ plain: run * runs + longer, runs }, longer];
  },
  LEFT: ({ whole }) => {
    const [plain, leaves, changes] = [whole(0, 90), whole(1, 2), whole(1, 40)];
    return [{ plain, leaves, changes }, sum([plain, ...upTo(changes).map(() => leaves)])];
  },
  STITCHES_WANTED: ({ real, whole }) => {
    const [width, stitches, over] = [real(10, 200), whole(5, 40), real(5, 20)];
    return [{ width, stitches, over }, inProportion(stitches, over, width)];
  },
  WIDTH_MADE: ({ real, whole }) => {
    const [count, stitches, over] = [whole(5, 300), whole(5, 40), real(5, 20)];
    return [{ count, over, stitches }, inProportion(over, stitches, count)];
  },
  // Gauge and the diamond (chapters 1 and 3).
  STITCH_WIDTH: ({ real, whole }) => {
    const [each, stitches] = [real(0.3, 2), whole(5, 40)];
    return [{ over: sum(upTo(stitches).map(() => each)), stitches }, each];
  },
  ROW_HEIGHT: ({ real, whole }) => {
    const [each, rows] = [real(0.3, 2), whole(5, 40)];
    return [{ over: sum(upTo(rows).map(() => each)), rows }, each];
  },
  ACROSS: ({ real, whole }) => {
    const [size, stitch_width] = [whole(1, 40), real(0.3, 2)];
    return [{ size, stitch_width }, diagonalRow(size, size) * stitch_width];
  },
  ALONG: ({ real, whole }) => {
    const [size, row_height] = [whole(1, 40), real(0.3, 2)];
    return [{ size, row_height }, sum(upTo(size).map(() => row_height + row_height))];
  },
  BLOCKED_SIDE: ({ real }) => {
    const [across, along] = [real(5, 40), real(5, 40)];
    // An edge is the hypotenuse over half of either diagonal.
    return [{ across, along }, hypotenuse(across / 2, along / 2)];
  },
  CORNER_ANGLE: ({ real }) => {
    const [across, along] = [real(5, 40), real(5, 40)];
    return [{ across, along }, degrees(across / 2, along / 2) + degrees(across / 2, along / 2)];
  },
  PULL: ({ real }) => {
    const [across, along] = [real(5, 40), real(5, 40)];
    const one = hypotenuse(across / 2, along / 2);
    // The diagonal of the square that it is pulled to, over what it was.
    return [{ side: one, across }, percentOver(hypotenuse(one, one), across)];
  },
  SQUARE_SIDE: ({ real }) => {
    const one = real(5, 40);
    return [{ along: hypotenuse(one, one) }, one];
  },
  STEP_OUT: ({ real }) => {
    const [stitch_width, out] = [real(0.3, 2), real(0.5, 3)];
    return [{ row_height: stitch_width * out, stitch_width }, out];
  },
  PERCENT_OFF: ({ real }) => {
    const [have, want] = [real(5, 40), real(5, 40)];
    // Worked to the same counts it is as many times as wide as her stitches are, which go the other way.
    return [{ want, have }, percentOver(1 / have, 1 / want)];
  },
  HOOK_FOR: ({ real }) => {
    const [hook, have, want] = [real(2, 9), real(5, 40), real(5, 40)];
    // Stitches are as wide as the hook makes them.
    return [{ hook, have, want }, inProportion(hook, 1 / have, 1 / want)];
  },
  STILL_OFF: ({ real }) => {
    const [tried, ideal] = [real(2, 9), real(2, 9)];
    return [{ tried, ideal }, percentOver(tried, ideal)];
  },
  SAME_LENGTH: ({ real, whole }) => {
    const [counted, length, over] = [whole(5, 40), real(5, 20), real(5, 20)];
    return [{ counted, length, over }, inProportion(counted, over, length)];
  },
  COMES_OUT: ({ real }) => {
    const [width, want, have] = [real(20, 200), real(5, 40), real(5, 40)];
    const stitches = want * width;
    return [{ width, want, have }, stitches / have];
  },
  BLANKET_LENGTH: ({ real, whole }) => {
    const [motifs_along, one, border] = [whole(1, 20), real(5, 30), real(0, 9)];
    return [{ motifs_along, side: one, border }, sum([border, ...upTo(motifs_along).map(() => one), border])];
  },
  MOTIFS: ({ whole }) => {
    const [columns, rows] = [whole(1, 30), whole(1, 30)];
    return [{ columns, rows }, upTo(rows).flatMap(() => upTo(columns)).length];
  },
  ENDS: ({ whole }) => {
    const [motifs, ends_a_motif] = [whole(1, 90), whole(2, 12)];
    return [{ motifs, ends_a_motif }, sum(upTo(motifs).map(() => ends_a_motif))];
  },
  WEIGHT_OF_ALL: ({ real, whole }) => {
    const [each_weight, motifs, reserve] = [real(5, 40), whole(1, 90), real(0, 30)];
    return [{ each_weight, motifs, reserve }, withPercent(sum(upTo(motifs).map(() => each_weight)), reserve)];
  },
  BALLS_BY_WEIGHT: ({ real }) => {
    const [weight, ball_weight] = [real(20, 2000), real(20, 200)];
    return [{ weight, ball_weight }, fewestHolding(weight, ball_weight)];
  },
  ENDS_OF_LENGTHS: ({ whole }) => {
    const lengths = whole(1, 90);
    return [{ lengths }, sum(upTo(lengths).map(() => 1 + 1))];
  },
  STITCHES_SEEN: ({ whole }) => {
    const [tops, chain_counted] = [whole(1, 90), whole(0, 1)];
    return [{ tops, chain_counted }, [...upTo(tops), ...upTo(chain_counted)].length];
  },
  STILL_OPEN: ({ whole }) => {
    const [open, pledged, waiting, accepted] = [whole(0, 30), whole(0, 30), whole(0, 30), whole(0, 30)];
    const spares = whole(0, open);
    // Whoever is wanted is in one of the four.
    const cells = sum([open, pledged, waiting, accepted]) - spares;
    return [{ cells, spares, pledged, waiting, accepted }, open];
  },
  OFF: ({ real }) => {
    const [width, wished_width, height, wished_height] = [
      real(50, 200),
      real(50, 200),
      real(50, 200),
      real(50, 200),
    ];
    const off = (is: number, wished: number) => Math.abs(percentOver(is, wished));
    return [
      { width, wished_width, height, wished_height },
      off(width, wished_width) + off(height, wished_height),
    ];
  },
  OFF_WISH: ({ real }) => {
    const [one, wished] = [real(5, 40), real(5, 40)];
    return [{ side: one, wished }, percentOver(one, wished)];
  },
  SIDE_FOR_LENGTH: ({ real, whole }) => {
    const [motifs_along, one, border] = [whole(1, 20), real(5, 30), real(0, 9)];
    return [
      { length: sum([border, ...upTo(motifs_along).map(() => one), border]), border, motifs_along },
      one,
    ];
  },
  // Yarn (chapter 4).
  CARRIED_STRAND: ({ real, whole }) => {
    const [rows_carried, row_height] = [whole(0, 60), real(0.3, 2)];
    return [{ rows_carried, row_height, cm_per_m: 100 }, sum(upTo(rows_carried).map(() => row_height / 100))];
  },
  WHOLE_BALLS: ({ real }) => {
    const [yarn, ball_length] = [real(1, 3000), real(50, 400)];
    return [{ yarn, ball_length }, fewestHolding(yarn, ball_length)];
  },
  YARN_OF_BALLS: ({ real, whole }) => {
    const [balls, ball_length] = [whole(1, 30), real(50, 400)];
    return [{ balls, ball_length }, sum(upTo(balls).map(() => ball_length))];
  },
  YARN_OF_WEIGHT: ({ real }) => {
    const [weight, ball_length, ball_weight] = [real(1, 900), real(50, 400), real(25, 200)];
    return [{ weight, ball_length, ball_weight }, inProportion(ball_length, ball_weight, weight)];
  },
  YARN_WITH_RESERVE: ({ real, whole }) => {
    const [each, motifs, reserve] = [real(1, 40), whole(1, 90), real(0, 30)];
    return [{ each, motifs, reserve }, sum(upTo(motifs).map(() => withPercent(each, reserve)))];
  },
  IN_REACH: ({ real, whole }) => {
    const [share, tail, stitches] = [real(10, 60), real(0.1, 0.3), whole(0, 400)];
    return [{ yarn_left: tail + (stitches * share) / 1000, tail, mm_per_m: 1000, share }, stitches];
  },
  MORE_MOTIFS: ({ real, whole }) => {
    const [tail, motif_yarn] = [real(0.1, 0.3), real(1, 20)];
    // Well off the point where one more would just do: there the last digit of the machine's arithmetic decides.
    const spare = Math.max(0, tail + (whole(-1, 9) + real(0.01, 0.99)) * (motif_yarn + tail));
    // Begins with one tail kept back, ends each with another.
    let [left, more] = [spare - tail, 0];
    while (left >= motif_yarn + tail) [left, more] = [left - motif_yarn - tail, more + 1];
    return [{ spare, tail, motif_yarn }, more];
  },
  SHARE_AT_TURN: ({ whole }) => {
    const size = whole(1, 60);
    const rows = upTo(2 * size).map((row) => diagonalRow(size, row));
    return [{ size }, (100 * sum(rows.slice(0, size))) / sum(rows)];
  },
  SHARE_PER_STITCH: ({ real, whole }) => {
    const [each, motif_count] = [real(10, 60), whole(10, 900)];
    return [{ motif_yarn: (each * motif_count) / 1000, mm_per_m: 1000, motif_count }, each];
  },
  YARN_SPARE: ({ real, whole }) => {
    const [yarn_left, done_before, more, share] = [real(5, 90), whole(0, 300), whole(0, 300), real(10, 60)];
    return [
      { yarn_left, done_after: done_before + more, done_before, share, mm_per_m: 1000 },
      yarn_left - sum(upTo(more).map(() => share / 1000)),
    ];
  },
  'yarn SIDE_OFF': ({ real }) => {
    const [measured, expected] = [real(8, 30), real(8, 30)];
    return [{ measured, expected }, percentOver(measured, expected)];
  },
  WEIGHT_PER_STITCH: ({ real, whole }) => {
    const [each, in_one] = [real(0.01, 0.2), whole(10, 900)];
    return [{ weight: each * in_one, in_one }, each];
  },
  YARN_IN_STITCH: ({ real, whole }) => {
    const [each, in_one] = [real(1, 6), whole(10, 900)];
    return [{ yarn: (each * in_one) / 100, cm_per_m: 100, in_one }, each];
  },
  IN_CM: ({ real }) => {
    const cm = real(0.3, 2);
    return [{ pitch: cm * 10, mm_per_cm: 10 }, cm];
  },
  PIECE_ALONG: ({ real, whole }) => {
    const [number_of, each] = [whole(1, 200), real(0.3, 2)];
    return [{ number_of, each }, sum(upTo(number_of).map(() => each))];
  },
  ROUND_SIDE: ({ real, whole }) => {
    const [rounds, row_height] = [whole(1, 40), real(0.3, 2)];
    // From the middle out, both ways.
    return [{ rounds, row_height }, sum(upTo(rounds).map(() => row_height + row_height))];
  },
  TIMES_AS_TALL: ({ real }) => {
    const [shorter, times] = [real(1, 3), real(1, 3)];
    return [{ taller: inProportion(shorter, 1, times), shorter }, times];
  },
  TIMES_THE_YARN: ({ real }) => {
    const [shorter, times] = [real(1, 3), real(1, 3)];
    return [{ taller: inProportion(shorter, 1, times), shorter }, times];
  },
  TALLER: ({ real }) => {
    const [stitch_width, height] = [real(0.3, 2), real(0.3, 3)];
    return [{ stitch_width, height_to_width: height / stitch_width }, height];
  },
  TAILS: ({ real, whole }) => {
    const [lengths, tail] = [whole(1, 20), real(0.1, 0.3)];
    return [{ lengths, tail }, sum(upTo(lengths).map(() => tail + tail))];
  },
  WEIGHT_A_STITCH_LENGTH: ({ real, whole }) => {
    const [stitches, ball_weight, ball_length] = [whole(10, 900), real(25, 200), real(50, 400)];
    return [{ stitches, ball_weight, ball_length }, sum(upTo(stitches).map(() => ball_weight / ball_length))];
  },
  WEIGHED_STITCH: ({ real, whole }) => {
    // Colours of two weights of yarn, each so many stitches of the same length: their weights add up to the motif's.
    const [length, first, second] = [real(0.01, 0.06), whole(10, 400), whole(10, 400)];
    const [thin, thick] = [real(0.2, 0.5), real(0.5, 2)];
    const weight = first * length * thin + second * length * thick;
    return [{ weight, weight_of_all: first * thin + second * thick }, length];
  },
  PACE: ({ real }) => {
    const [minutes, pace] = [real(1, 90), real(2, 40)];
    return [{ stitches: minutes * pace, minutes }, pace];
  },
  HOURS: ({ real }) => {
    const [hours, pace] = [real(0.1, 90), real(2, 40)];
    return [{ stitches: hours * 60 * pace, pace, minutes_per_hour: 60 }, hours];
  },
  HIGH_END: ({ real }) => {
    const [each, band] = [real(1, 40), real(5, 30)];
    return [{ each, band }, withPercent(each, band)];
  },
  LOW_END: ({ real }) => {
    const [each, band] = [real(1, 40), real(5, 30)];
    // As far below as the high end is above.
    return [{ each, band }, each - (withPercent(each, band) - each)];
  },
  STITCHES_OF_BLOCKS: ({ whole }) => {
    const [blocks, stitches_a_block] = [whole(1, 90), whole(3, 6)];
    return [{ blocks, stitches_a_block }, sum(upTo(blocks).map(() => stitches_a_block))];
  },
  PERCENT_DONE: ({ whole }) => {
    const in_one = whole(10, 900);
    const done = whole(0, in_one);
    return [{ done, in_one }, 100 - ((in_one - done) / in_one) * 100];
  },
  SPARE_WEIGHT: ({ real }) => {
    const [to_come, spare] = [real(1, 400), real(-90, 90)];
    return [{ left: to_come + spare, to_come }, spare];
  },
  STITCHES_TO_COME: ({ whole }) => {
    const [motifs_to_come, in_one] = [whole(1, 60), whole(10, 400)];
    const done_of_one = whole(0, in_one);
    return [
      { motifs_to_come, in_one, done_of_one },
      sum(upTo(motifs_to_come).map((motif) => in_one - (motif === 1 ? done_of_one : 0))),
    ];
  },
  // What the scale tells.
  MEAN_WEIGHT: ({ real, whole }) => {
    const each = upTo(whole(1, 9)).map(() => real(5, 30));
    return [{ weight: sum(each), motifs: each.length }, sum(each.map((one) => one / each.length))];
  },
  MEAN_ERROR: ({ real, whole }) => {
    const [motifs, spread, scale_error] = [whole(1, 9), real(0.1, 3), real(0.1, 1)];
    const all = sum(upTo(motifs).map(() => spread * spread)) + scale_error * scale_error;
    return [{ motifs, spread, scale_error }, Math.sqrt(all) / motifs];
  },
  SCALE_ERROR: ({ real, whole }) => {
    const [step, readings] = [real(0.1, 5), whole(1, 20)];
    // The mean square of what is evenly spread over a step: the integral of x² from −½ to ½.
    const meanSquare = (step * step * (0.5 ** 3 - (-0.5) ** 3)) / 3;
    return [{ step, readings }, Math.sqrt(sum(upTo(readings).map(() => meanSquare)))];
  },
  SPREAD_OF_ONE: ({ real, whole }) => {
    const [counts, usual, mean, readings] = [whole(1, 9), real(1, 9), real(5, 30), whole(1, 20)];
    const [apart, scale_error] = [real(0.1, 5), real(0.1, 5)];
    const one = withPercent(mean, usual) - mean;
    const own = apart > scale_error ? (apart - scale_error) * (apart + scale_error) : 0;
    const squares = sum(upTo(counts).map(() => one * one)) + own;
    return [
      { counts, usual, mean, apart, scale_error, readings },
      Math.sqrt(squares / (counts + (readings - 1))),
    ];
  },
  TWIN_BAND: ({ real }) => {
    const [weighed, other_stitch] = [real(1, 30), real(1, 30)];
    return [{ weighed, other_stitch }, hypotenuse(weighed, other_stitch)];
  },
  WEIGHING_BAND: ({ real }) => {
    const [limits, error, mean] = [real(1, 3), real(0.1, 3), real(5, 30)];
    return [{ limits, error, mean }, percentOver(mean + error * limits, mean)];
  },
  YARN_TO_COME: ({ real, whole }) => {
    const [stitch, in_one, to_come] = [real(0.01, 0.1), whole(1, 400), whole(0, 400)];
    return [{ each: stitch * in_one, to_come, in_one }, sum(upTo(to_come).map(() => stitch))];
  },
  WEIGHT_TO_COME: ({ real, whole }) => {
    const [weight, to_come, in_one] = [real(5, 60), whole(0, 9000), whole(10, 900)];
    return [{ weight, to_come, in_one }, inProportion(weight, in_one, to_come)];
  },
  CHAIN_BY_SIZE: ({ real }) => {
    const [chain, per_length] = [real(0.3, 2), real(3, 6)];
    return [{ per_length, stitch_width: chain, cm_per_m: 100 }, inProportion(per_length, 1, chain / 100)];
  },
  UPRIGHT_BY_SIZE: ({ real }) => {
    const [row, up] = [real(0.3, 3), real(2, 5)];
    return [{ up, row_height: row, cm_per_m: 100 }, inProportion(up, 1, row / 100)];
  },
  STITCH_BY_SIZE: ({ real }) => {
    const [stitch, across, upright] = [real(0.3, 2), real(1, 5), real(0.01, 0.1)];
    return [
      { across, stitch_width: stitch, cm_per_m: 100, upright },
      inProportion(across, 1, stitch / 100) + upright,
    ];
  },
  YARN_WORKED_WHOLE: ({ real, whole }) => {
    const [stitches, chains, together] = [whole(1, 400), whole(0, 60), whole(0, 60)];
    const [stitch_yarn, chain_yarn, upright] = [real(0.01, 0.06), real(0.005, 0.02), real(0.01, 0.05)];
    return [
      { stitches, stitch_yarn, chains, chain_yarn, together, upright },
      sum([
        ...upTo(stitches).map(() => stitch_yarn),
        ...upTo(chains).map(() => chain_yarn),
        ...upTo(together).map(() => upright),
      ]),
    ];
  },
  OTHER_STITCH: ({ real }) => {
    const [stitch_yarn, ratio, motif_ratio] = [real(0.01, 0.06), real(1, 3), real(1, 3)];
    return [{ stitch_yarn, ratio, motif_ratio }, inProportion(stitch_yarn, motif_ratio, ratio)];
  },
  YARN_OF_STITCHES: ({ real, whole }) => {
    const [stitches, stitch_yarn] = [whole(1, 900), real(10, 60)];
    return [{ stitches, stitch_yarn, mm_per_m: 1000 }, sum(upTo(stitches).map(() => stitch_yarn / 1000))];
  },
  YARN_PER_STITCH: ({ real }) => {
    const [loops, ratio, hook, thickness] = [real(2, 4), real(1, 3), real(2, 9), real(0.5, 5)];
    // So many loops, each round the hook through the middle of the yarn: π times their diameter.
    const radius = hook / 2 + thickness / 2;
    return [{ loops, ratio, hook, thickness }, loops * ratio * 2 * Math.PI * radius];
  },
  YARN_THICKNESS: ({ real }) => {
    const wraps = real(4, 20);
    return [{ inch: 25.4, wraps }, 25.4 / wraps];
  },
  YARN_WORKED: ({ real, whole }) => {
    const [stitches, stitch_yarn] = [whole(1, 900), real(0.01, 0.06)];
    return [{ stitches, stitch_yarn }, sum(upTo(stitches).map(() => stitch_yarn))];
  },
  SPARE_OF_BALLS: ({ real, whole }) => {
    const [new_balls, ball_length, yarn] = [whole(1, 20), real(50, 400), real(10, 900)];
    return [{ new_balls, ball_length, yarn }, sum(upTo(new_balls).map(() => ball_length)) - yarn];
  },
  TEX: ({ real }) => {
    const [metres, tex] = [real(50, 400), real(100, 900)];
    // Grams that a thousand metres weigh.
    return [{ grams: (tex / 1000) * metres, metres, kilometre: 1000 }, tex];
  },
  TEX_CHANGE: ({ real }) => {
    const [new_tex, old_tex] = [real(100, 900), real(100, 900)];
    return [{ new_tex, old_tex }, percentOver(new_tex, old_tex)];
  },
  SCALE_DOUBT: ({ real }) => {
    const [half_step, weight] = [real(0.05, 1), real(5, 60)];
    return [{ half_step, weight }, percentOver(weight + half_step, weight)];
  },
  WEIGHT_OF_AREA: ({ real }) => {
    const [swatch_width, swatch_height, each] = [real(8, 20), real(8, 20), real(0.01, 0.2)];
    const [width, height] = [real(50, 200), real(50, 200)];
    return [
      { weight: each * swatch_width * swatch_height, width, height, swatch_width, swatch_height },
      each * width * height,
    ];
  },
  WEIGHT_WITH_RESERVE: ({ real }) => {
    const [weight, reserve] = [real(5, 900), real(0, 30)];
    return [{ weight, reserve }, withPercent(weight, reserve)];
  },
};

describe('worked a second way', () => {
  it('is every formula', () => {
    expect(Object.keys(SECOND).sort()).toEqual([...formulas.keys()].sort());
  });

  it.each(Object.entries(SECOND))('%s', (key, trial) => {
    const { formula, given } = formulas.get(key)!;
    fc.assert(
      fc.property(
        fc.infiniteStream(fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true })),
        (stream) => {
          const next = () => stream.next().value as number;
          const draw: Draw = {
            whole: (least, most) => least + Math.floor(next() * (most - least + 1)),
            real: (least, most) => least + next() * (most - least),
          };
          const [values, result] = trial(draw);
          expect(Object.keys(values).sort()).toEqual(Object.keys(given).sort());
          const got = evaluate(formula, values);
          expect(Math.abs(got - result), JSON.stringify(values)).toBeLessThanOrEqual(
            1e-6 * Math.max(1, Math.abs(result)),
          );
        },
      ),
      { numRuns: 40 },
    );
  });
});
