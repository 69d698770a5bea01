/**
 * What every question must answer to its example, figure by figure, and to further lines where an example does not bring a figure
 * out. Nothing here is read off the program: a value is worked out from the craft, in the expression beside its key.
 */

export type Unit = '' | 'cm' | 'm' | 'g' | 'mm' | '%' | '°';

export interface Value {
  readonly value: number;
  readonly unit: Unit;
}

export interface Expected {
  /** The options it is asked with; the question's own example where they are left out. */
  readonly line?: string;
  /** What is asked beforehand, after what the question itself needs. */
  readonly before?: readonly string[];
  /** Every figure of the answer; one without a unit is a bare number. */
  readonly figures: Readonly<Record<string, number | Value>>;
  /** Parts of the data for programs: what stands in lines and tables and is no figure. */
  readonly data?: unknown;
}

const of =
  (unit: Unit) =>
  (value: number): Value => ({ value, unit });
const cm = of('cm');
const m = of('m');
const g = of('g');
const mm = of('mm');
const percent = of('%');
const degrees = of('°');

// ─── The diagonal square of 12 rising rows that most examples are about ───

/** 3, 5, 7 … 25 stitches while it grows, then 23 … 3, 1. */
const ROWS = [3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23, 25, 23, 21, 19, 17, 15, 13, 11, 9, 7, 5, 3, 1];
const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);
const upTo = (row: number) => sum(ROWS.slice(0, row));
const ALL = upTo(24); // 312

/** At 13 stitches and 10 rows over 10 cm. */
const WIDE = 10 / 13;
const HIGH = 10 / 10;
/** Two diagonals, each halved, are the legs of a right-angled triangle whose longest side is the edge. */
const sideOf = (size: number) => Math.hypot(((2 * size + 1) * WIDE) / 2, (2 * size * HIGH) / 2);
const SIDE = sideOf(12);

// ─── Yarn, estimated from the gauge ───

/** Yarn in a stitch: 2.32 times its width and 7.52 times its height, as fitted to published measurements; in a chain 5.1 times its width. */
const stitchYarn = (wide: number, high: number) => (2.32 * wide + 7.52 * high) / 100;
const EACH = stitchYarn(WIDE, HIGH);
const CHAIN = (5.1 * WIDE) / 100;
/** Of two stitches worked together each is as high as a stitch; one of them is counted. */
const TOGETHER = (7.52 * HIGH) / 100;
/** 15 cm at each end. */
const TAILS = 2 * 0.15;

/** Rows 1 to 12 hold one chain; each later row turns with 2 chains and takes two together at both of its ends. */
const worked = (stitches: number, laterRows: number, begins: boolean) =>
  stitches * EACH + (Number(begins) + 2 * laterRows) * CHAIN + 2 * laterRows * TOGETHER;

/** Moss and sand of the moss square: rows 5–6, 11–12 and 17–18 are sand. */
const SAND_ROWS = [5, 6, 11, 12, 17, 18];
const SAND_STITCHES = sum(SAND_ROWS.map((row) => ROWS[row - 1] ?? 0)); // 100
const MOSS_STITCHES = ALL - SAND_STITCHES; // 212
const MOSS_OF_MOSS = worked(MOSS_STITCHES, 10, true);
const SAND_OF_MOSS = worked(SAND_STITCHES, 2, false);
/** Moss climbs past three stripes of 2 rows, sand past two of 4. */
const MOSS_CARRIED = (6 * HIGH) / 100;
const SAND_CARRIED = (8 * HIGH) / 100;
/** The sand square, and both kinds of the group blanket, change colour after row 12. */
const FIRST_HALF = worked(upTo(12), 0, true);
const SECOND_HALF = worked(ALL - upTo(12), 12, false);
const RESERVED = 1.1;
const FIRST = FIRST_HALF + TAILS;
const SECOND = SECOND_HALF + TAILS;

/**
 * What is left open, in m, of makers' motifs in one colour, so many of so many metres each, while nothing is weighed: hands differ
 * by 12 %, one hand's motifs by 4 %, the estimate from the gauge is right to 15 %, which is two standard deviations.
 */
const left = (...lists: readonly (readonly [motifs: number, each: number])[]) => {
  const all = sum(lists.map(([motifs, each]) => motifs * each));
  return Math.hypot(
    ...lists.map(([motifs, each]) => 0.12 * motifs * each),
    ...lists.map(([motifs, each]) => 0.04 * each * Math.sqrt(motifs)),
    0.075 * all,
  );
};
/** The 95 % point of the normal distribution (any table of it: 1.645). */
const ONCE_IN_TWENTY = 1.6448536269514722;
const bought = (...lists: readonly (readonly [motifs: number, each: number])[]) =>
  sum(lists.map(([motifs, each]) => motifs * each)) + ONCE_IN_TWENTY * left(...lists);
const reserved = (buy: number, expected: number) => percent(100 * (buy / expected - 1));
const balls = (metres: number) => Math.ceil(metres / 170);

// ─── Seams and border of such squares ───

/** Medium yarn, 10.5 wraps to the inch, in mm. */
const THICK = 25.4 / 10.5;
/** Whip stitch over its length: two slanting strands a stitch apart and a strand in from both edges, two ways through 1.5 strands. */
const whip = (pitch: number) => (2 * Math.hypot(2 * THICK, pitch / 2) + 2 * 1.5 * THICK) / pitch;
/** Motifs side by side have a seam between each two; so have those under each other. */
const seams = (columns: number, rows: number, side = SIDE) =>
  (side * ((columns - 1) * rows + (rows - 1) * columns)) / 100;
/** Strands of 1.5 m, 30 cm of which are tails, in seams of a motif's side and of a strip's. */
const strandCount = (columns: number, rows: number, side: number, ratio: number) =>
  (columns - 1) * rows * Math.ceil(((side / 100) * ratio) / 1.2) +
  (rows - 1) * Math.ceil(((side / 100) * columns * ratio) / 1.2);

/** A border of sc and hdc: two thirds of a row of hdc and a whole one high. */
const BORDER = (2 / 3) * HIGH + HIGH;
/** The first round has a stitch for every stitch that the edge is wide, each later one 2 more along every side; 3 in each corner. */
const borderSides = (columns: number, rows: number, round: number) => {
  const along = (motifs: number) => Math.round((motifs * SIDE) / WIDE) + 2 * (round - 1);
  return { across: along(columns), down: along(rows) };
};
const borderRound = (columns: number, rows: number, round: number) => {
  const { across, down } = borderSides(columns, rows, round);
  return 2 * (across + down) + 4 * 3;
};
/** sc as high as it is wide, hdc one and a half times. */
const borderYarn = (columns: number, rows: number) =>
  borderRound(columns, rows, 1) * stitchYarn(WIDE, WIDE) +
  borderRound(columns, rows, 2) * stitchYarn(WIDE, 1.5 * WIDE);

/** The garden throw of so many motifs, half of each kind: what its colours take, each with its motifs, tails, carried strands. */
const garden = (columns: number, rows: number, reserve = RESERVED) => {
  const each = (columns * rows) / 2;
  const seamTails = strandCount(columns, rows, SIDE, whip(10 * WIDE)) * TAILS;
  const seamYarn = seams(columns, rows) * whip(10 * WIDE);
  const parts = {
    moss: {
      tails: each * TAILS + seamTails + TAILS,
      rest: each * (MOSS_OF_MOSS + MOSS_CARRIED) + seamYarn + borderYarn(columns, rows),
    },
    sand: { tails: 2 * each * TAILS, rest: each * (SAND_OF_MOSS + SAND_CARRIED + FIRST_HALF) },
    clay: { tails: each * TAILS, rest: each * SECOND_HALF },
  };
  // All but the tails is estimated from a gauge, right to 15 %.
  const need = ({ tails, rest }: { tails: number; rest: number }) => ({
    total: (tails + rest) * reserve,
    high: (tails + rest * 1.15) * reserve,
  });
  const [moss, sand, clay] = [need(parts.moss), need(parts.sand), need(parts.clay)];
  return { moss, sand, clay, all: moss.total + sand.total + clay.total };
};
const PLANNED = garden(4, 5);
const HALF_EACH = { motifs: 20, columns: 4, rows: 5, kind_a: 10, kind_b: 10, touches: 0 };
const GARDEN_SIZE = { width: cm(4 * SIDE + 2 * BORDER), height: cm(5 * SIDE + 2 * BORDER) };

// ─── One motif of 18 g on a scale of whole grams ───

/** Motifs differ by 4 % as a rule; the scale rounds, which is off by a step over √12, root mean square. */
const DIFFERS = 0.04 * 18;
/** Two standard deviations either way. */
const WEIGHED_BAND = (100 * 2 * Math.hypot(DIFFERS, 1 / Math.sqrt(12))) / 18;

// ─── Odds of a group blanket’s end ───

/** The area under f from 0 to `to`, by Simpson’s rule. */
const area = (f: (x: number) => number, to: number, parts = 4000) => {
  const step = to / parts;
  let all = f(0) + f(to);
  for (let part = 1; part < parts; part++) all += (part % 2 === 1 ? 4 : 2) * f(part * step);
  return (all * step) / 3;
};
/**
 * Parcels come at a rate of which `came` in `days` are known: the chance that `more` have come after `after` days is the incomplete
 * beta function of more and came + 1/2 (a gamma prior of the rate, Jeffreys’).
 */
const chance = (after: number, { more, came, days }: { more: number; came: number; days: number }) => {
  // The part beyond, with x = 1 − y² in place of x, so that the root at 1 does no harm.
  const beyond = (y: number) => (1 - y * y) ** (more - 1) * y ** (2 * came);
  return 1 - area(beyond, Math.sqrt(days / (after + days))) / area(beyond, 1);
};
/** After how many days it is as likely as that. */
const daysUntil = (likely: number, known: Parameters<typeof chance>[1]) => {
  let [low, high] = [0, 10_000];
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (chance(middle, known) < likely) low = middle;
    else high = middle;
  }
  return low;
};
/** Two motifs came in one parcel, and two makers said three a week: as much as one more parcel of 2. Ten motifs are to come. */
const PACE = { more: (10 + (2 - 1) / 2) / 2, came: 1, days: (2 / 3) * 7 };
/** From noon of the tests’ day to the end of the closing day. */
const DAYS_LEFT = (Date.UTC(2031, 5, 1) - Date.UTC(2026, 2, 2, 12)) / 86_400_000;

// ─── A make-along of the group's blanket: 3 columns, 4 rows, half of each kind; hers at 15 stitches and 12 rows over 10 cm ───

const HER_WIDE = 10 / 15;
const HER_HIGH = 10 / 12;
/** 13, 14 and 15 rising rows come to 14.2, 15.2 and 16.3 cm: 14 are nearest to the pattern’s 15.4. */
const HER_SIZE = 14;
const HER_SIDE = Math.hypot(((2 * HER_SIZE + 1) * HER_WIDE) / 2, (2 * HER_SIZE * HER_HIGH) / 2);
/** 3 + 5 + … + 29 and 27 + 25 + … + 1: the odd numbers up to an nth come to n². */
const HER_FIRST = 15 ** 2 - 1;
const HER_SECOND = 14 ** 2;
const HER_STITCH = stitchYarn(HER_WIDE, HER_HIGH);
const HER_CHAIN = (5.1 * HER_WIDE) / 100;
const HER_TOGETHER = (7.52 * HER_HIGH) / 100;
/** Of one motif: the first colour with one chain, the other with 14 turns of 2 chains and two ends of two together; tails with both. */
const HER_FIRST_HALF = HER_FIRST * HER_STITCH + HER_CHAIN + TAILS;
const HER_SECOND_HALF = HER_SECOND * HER_STITCH + 28 * HER_CHAIN + 28 * HER_TOGETHER + TAILS;
const HER_SEAMS = seams(3, 4, HER_SIDE);
const HER_STRANDS = strandCount(3, 4, HER_SIDE, whip(10 * HER_WIDE));
const HER_MOSS = 12 * HER_FIRST_HALF + HER_SEAMS * whip(10 * HER_WIDE) + HER_STRANDS * TAILS;
const HER_ALL = {
  size: HER_SIZE,
  side: cm(HER_SIDE),
  columns: 3,
  rows: 4,
  width: cm(3 * HER_SIDE),
  height: cm(4 * HER_SIDE),
  yarn_total: m((HER_MOSS + 12 * HER_SECOND_HALF) * RESERVED),
  balls: balls(HER_MOSS * RESERVED) + 2 * balls(6 * HER_SECOND_HALF * RESERVED),
};
/** The pattern’s own: a square of 4 furrow with a border of one round of sc. */
const EDGED_ROUND = 2 * (2 * Math.round((2 * SIDE) / WIDE)) + 4 * 3;
const EDGED_BORDER = EDGED_ROUND * stitchYarn(WIDE, WIDE);
const EDGED_HIGH = (2 / 3) * HIGH;

const NONE: readonly Expected[] = [{ figures: {} }];

export const FIGURES: Readonly<Record<string, readonly Expected[]>> = {
  // ─── stitches ───
  'stitches row': [
    { figures: { stitches: 2 * 9 + 1, rows: 24, widest: 25, widest_row: 12, so_far: upTo(9), total: ALL } },
    {
      // 10 × 8 blocks: diagonals of 1, 2 … 8, 8, 8 and back; row 12 is the sixth from the end of 17.
      line: 'shape:blocks size:10 other_size:8 row:12',
      figures: {
        blocks: 6,
        rows: 17,
        widest: 8,
        widest_row: 8,
        so_far: 80 - (5 + 4 + 3 + 2 + 1),
        total: 10 * 8,
      },
    },
  ],
  'stitches which': [
    // 14 rising rows: row 9 has 2 × 9 + 1, and so has the one as far from the end, 28 − 9.
    { figures: { row: 9, other_row: 28 - 9 }, data: { rows: [9, 19] } },
    { line: 'shape:diagonal size:14 stitches:20', figures: { below: 19, above: 21 } },
  ],
  'stitches check': [
    { figures: { first_wrong_row: 4, expected: ROWS[3] ?? 0, counted: 8, difference: 8 - 9 } },
    {
      // The counts of rows 5 to 7, taken for those of 4 to 6.
      line: 'shape:diagonal size:12 counts:"11 13 15" from_row:4',
      figures: { first_wrong_row: 4, expected: 9, counted: 11, difference: 2, likely_row: 7 },
    },
  ],
  'stitches spread': [
    { figures: { changes: 48 - 40 }, data: { change: 'increase', runs: Array(8).fill((40 - 8) / 8) } },
  ],
  'stitches repeat': [
    { figures: { below: 106, above: 106, nearest: 12 * 8 + 10, repeats: 12, foundation_chain: 106 + 1 } },
    {
      // 80 cm are 104 stitches; 11 × 8 + 10 and 12 × 8 + 10 lie about them, the second nearer.
      line: 'multiple:8 plus:10 gauge:13x10 width:80cm',
      figures: {
        below: 98,
        above: 106,
        nearest: 106,
        repeats: 12,
        foundation_chain: 107,
        width: cm(106 * WIDE),
      },
      data: { neighbours: { below: { width: 98 * WIDE } } },
    },
  ],

  // ─── gauge ───
  'gauge compare': [
    {
      figures: {
        width_percent: percent(100 * (13 / 14 - 1)),
        height_percent: percent(0),
        // 5 × 14 ÷ 13 = 5.38, the nearest that is sold.
        suggested_hook: mm(5.5),
        still_off: percent(100 * ((5.5 * 13) / (5 * 14) - 1)),
        comes_out: cm((120 * 13) / 14),
      },
    },
  ],
  'gauge shape': [
    {
      figures: {
        across: cm(25 * WIDE),
        along: cm(24 * HIGH),
        blocked_side: cm(SIDE),
        // The half angle’s tangent is one half diagonal over the other.
        corner_angle: degrees((2 * Math.atan2(25 * WIDE, 24 * HIGH) * 180) / Math.PI),
      },
      // 1.3 stitches a row at each end: 1, 2, 3, 5, 6, 7, 9, 10, 11, 13, 14, 15 in all.
      data: { increases: [1, 1, 1, 2, 1, 1, 2, 1, 1, 2, 1, 1] },
    },
  ],
  'gauge size': [{ figures: { size: 12, side: cm(SIDE), pattern_side: cm(SIDE) } }],

  // ─── yardage ───
  'yardage weighed': [
    {
      figures: {
        yarn_each: m(18 * 1.7),
        yarn_total: m(80 * 18 * 1.7 * RESERVED),
        balls: Math.ceil((80 * 18 * RESERVED) / 100),
      },
    },
  ],
  'yardage swatch': [
    {
      // 120 × 160 cm are 85 1/3 swatches of 15 × 15 cm.
      figures: {
        weight_total: g(14 * (85 + 1 / 3) * RESERVED),
        yarn_total: m(14 * (85 + 1 / 3) * RESERVED * 1.7),
        balls: 14,
      },
    },
  ],
  'yardage rough': [
    (() => {
      // 3.2 loops about hook and yarn for a sc, 1.48 of it for a hdc, 312 of them; right to 25 %.
      const each = (312 * 3.2 * 1.48 * Math.PI * (5 + THICK)) / 1000;
      return {
        figures: {
          yarn_each: m(each),
          yarn_low: m(0.75 * each),
          yarn_high: m(1.25 * each),
          yarn_total: m(80 * each * RESERVED),
          balls: Math.ceil((80 * each * RESERVED) / 170),
        },
      };
    })(),
    (() => {
      // By gauge 15 % either way, chains counted in.
      const each = worked(ALL, 12, true);
      return {
        line: 'shape:diagonal size:12 stitch:hdc gauge:13x10 motifs:1 reserve:0',
        figures: {
          yarn_each: m(each),
          yarn_low: m(0.85 * each),
          yarn_high: m(1.15 * each),
          yarn_total: m(each),
        },
      };
    })(),
  ],
  'yardage makes': [
    // 26 times 13 are 338.
    { figures: { motifs: 26, weight_left: g(350), weight_over: g(12) } },
    {
      line: 'left:"2 skeins" each:18g ball:170m/100g',
      figures: { motifs: 11, weight_left: g(200), weight_over: g(2) },
    },
  ],
  'yardage left': [
    {
      // 8.35 m beyond the tail are 85 stitches after the 48 of six rows: rows 7 to 10 take 15 + 17 + 19 + 21, row 11 no more.
      figures: {
        last_row: 10,
        spare: m(8.5 - ((upTo(10) - upTo(6)) * 30.6) / ALL),
        yarn_left: m(5 * 1.7),
        yarn_each: m(18 * 1.7),
      },
    },
    {
      line: 'left:50g ball:170m/100g shape:diagonal size:12 each:18g done_row:6',
      // 59.1 m are left: one motif and its tail, and not a second.
      figures: {
        last_row: 24,
        spare: m(85 - ((ALL - upTo(6)) * 30.6) / ALL),
        yarn_left: m(85),
        yarn_each: m(30.6),
        more_motifs: 1,
      },
    },
  ],
  'yardage swap': [
    {
      figures: {
        yarn_total: m(9 * 170),
        new_balls: Math.ceil((9 * 170) / 125),
        spare: m(13 * 125 - 9 * 170),
        weight: g(9 * 100),
        new_weight: g(13 * 50),
      },
    },
  ],

  // ─── resize ───
  resize: [
    {
      figures: {
        motifs: 8 * 11,
        columns: 8,
        rows: 11,
        size: 11,
        side: cm(sideOf(11)),
        width: cm(8 * sideOf(11) + 8),
        height: cm(11 * sideOf(11) + 8),
        ends: 88 * 2,
        off_percent: percent(
          (100 * Math.abs(8 * sideOf(11) + 8 - 120)) / 120 +
            (100 * Math.abs(11 * sideOf(11) + 8 - 160)) / 160,
        ),
      },
    },
  ],
  ask: [
    {
      figures: {
        motifs: 7 * 10,
        columns: 7,
        rows: 10,
        side: cm(15),
        width: cm(7 * 15 + 2 * 4),
        height: cm(10 * 15 + 2 * 4),
        ends: 70 * 2,
        off_percent: percent((100 * 7) / 120 + (100 * 2) / 160),
      },
    },
  ],

  // ─── border and joining ───
  'border spacing': [
    {
      // 168 and 224 lie flat; of 6n + 1 the nearest are 169 and 223.
      figures: { across: 28 * 6 + 1, down: 37 * 6 + 1, round_total: 2 * (169 + 223) + 4 * 3 },
      data: {
        per_motif_across: [...Array<number>(7).fill(21), 22],
        per_motif_down: [20, 20, 20, 21, 20, 20, 20, 21, 20, 20, 21],
      },
    },
    {
      // A row of hdc takes one and a half along its end.
      line: 'width:120cm height:160cm gauge:14 corner:4 shape:diagonal size:12 stitch:hdc',
      figures: { across: 168, down: 224, round_total: 2 * (168 + 224) + 4 * 4, motif_edge: 12 * 1.5 },
    },
    {
      line: 'width:120cm height:160cm gauge:14 shape:flat size:20 other_size:14 stitch:hdc',
      figures: { across: 168, down: 224, round_total: 796, motif_across: 20, motif_down: 14 * 1.5 },
    },
  ],
  'border even': [
    {
      // 13 stitches over 10 cm: a round of sc is as high as a stitch is wide and brings 13.2 to 14.7 cm; 14.4 is pinned out, 17 too large.
      figures: {
        side: cm(15),
        as_they_are: 2,
        pinned: 1,
        edged: 1,
        left_out: 1,
        yarn: m((4 * (17 + 3) * (10 / 13) * (2.32 + 7.52)) / 100),
      },
    },
  ],
  'border rounds': [
    {
      // Two stitches more along every side, round by round; 3 in each of the 4 corners.
      figures: {
        round_total: 2 * (173 + 227) + 12,
        across: 169 + 2 + 2,
        down: 223 + 2 + 2,
        stitches: 796 + 804 + 812,
      },
      data: {
        rounds: [
          { stitch: 'sc', total: 796 },
          { stitch: 'hdc', total: 804 },
          { stitch: 'sc', total: 812 },
        ],
      },
    },
  ],
  joining: [
    {
      // A stitch of medium yarn is 0.965 of hook and yarn wide (12.5 stitches over 4 in on 6 mm).
      figures: {
        seam_length: m(seams(8, 11, 15)),
        yarn: m(seams(8, 11, 15) * whip((101.6 / 12.5 / (6 + THICK)) * (5 + THICK))),
        tails: m(strandCount(8, 11, 15, whip((101.6 / 12.5 / (6 + THICK)) * (5 + THICK))) * TAILS),
        seams: 7 * 11 + 10,
        // A seam of 15 cm takes one strand of 1.5 m, 1.2 m of it sewn; one of 120 cm as many as its yarn fills.
        strands: 7 * 11 + 10 * Math.ceil((1.2 * whip((101.6 / 12.5 / (6 + THICK)) * (5 + THICK))) / 1.2),
      },
    },
  ],

  // ─── motif ───
  'motif define': [{ figures: { rows: 24, total: ALL, ends: 2 * 2 } }],
  'motif choose': NONE,
  'motif show': [
    { figures: { rows: 24, total: ALL, ends: 4 } },
    {
      before: [
        '/motif define name:gauged shape:diagonal size:12 gauge:13x10',
        '/motif weigh name:gauged weight:18g side:15.2cm minutes:45',
      ],
      line: 'name:gauged',
      figures: {
        rows: 24,
        total: ALL,
        ends: 2,
        weight: g(18),
        side: cm(15.2),
        blocked_side: cm(SIDE),
        minutes: 45,
      },
    },
  ],
  'motif list': [{ figures: { motifs: 1 } }],
  'motif words': [{ figures: { rows: 24, total: ALL, ends: 4 }, data: { counts: ROWS } }],
  'motif chart': NONE,
  'motif handout': [
    { figures: { rows: 24, total: ALL, ends: 4 } },
    {
      before: ['/motif define name:gauged shape:diagonal size:12 gauge:13x10'],
      line: 'name:gauged',
      figures: { rows: 24, total: ALL, ends: 2, side: cm(SIDE) },
    },
  ],
  'motif colours': [{ figures: { colours: 2 } }],
  'motif weigh': [
    {
      figures: {
        weight: g(18),
        weighed: 1,
        spread: g(DIFFERS),
        band: percent(WEIGHED_BAND),
        weight_per_stitch: g(18 / ALL),
        yarn_each: m(18 * 1.7),
        side: cm(15.2),
        blocked_side: cm(SIDE),
        side_percent: percent(100 * (15.2 / SIDE - 1)),
      },
    },
  ],
  'motif remove': NONE,
  'motif undo': NONE,

  // ─── blanket ───
  'blanket start': [{ figures: { ...HALF_EACH, ...GARDEN_SIZE } }],
  'blanket show': [{ figures: { ...HALF_EACH, made: 0, ...GARDEN_SIZE } }],
  'blanket kinds': [{ figures: HALF_EACH }],
  // Of 31 sides between places, 12 squares of one kind leave 4 at the least with their own kind.
  'blanket layout': [{ figures: { ...HALF_EACH, kind_a: 12, kind_b: 8, touches: 4 } }],
  'blanket swap': [{ figures: HALF_EACH }],
  'blanket colours': [{ figures: { colours: 3 } }],
  'blanket change': [{ figures: { border_rounds: 3, reserve: percent(10) } }],
  'blanket materials': [
    {
      // One ball of moss is there; sand and clay have none named.
      figures: {
        yarn_total: m(PLANNED.all),
        balls: Math.ceil(PLANNED.moss.total / 170),
        to_buy: Math.ceil(PLANNED.moss.total / 170 - 1),
        weight: g((PLANNED.moss.total * 100) / 170),
        cost: 2 * 4.5,
        // Two colours in a motif are 4 ends; a strand has 2, the border of one colour 2.
        ends: 20 * 4 + 2 * strandCount(4, 5, SIDE, whip(10 * WIDE)) + 2,
        seam_length: m(seams(4, 5)),
        ...GARDEN_SIZE,
        hours: (20 * 45) / 60,
      },
      data: {
        colours: [
          { colour: 'moss', ...PLANNED.moss, border: borderYarn(4, 5) },
          { colour: 'sand', ...PLANNED.sand },
          { colour: 'clay', ...PLANNED.clay },
        ],
        border: [
          { stitch: 'sc', ...borderSides(4, 5, 1), stitches: 2 * (80 + 100) + 12 },
          { stitch: 'hdc', ...borderSides(4, 5, 2), stitches: 2 * (82 + 102) + 12 },
        ],
      },
    },
  ],
  'blanket fit': [
    (() => {
      // As planned it lacks 1.2 m of moss. 3 × 6 would be more than 4 × 4, out of proportion though.
      const made = garden(4, 4);
      const [moss, sand, clay] = [2 * 170, 2 * 170, 1.5 * 170];
      return {
        figures: {
          motifs: 16,
          columns: 4,
          rows: 4,
          kind_a: 8,
          kind_b: 8,
          width: cm(4 * SIDE + 2 * BORDER),
          height: cm(4 * SIDE + 2 * BORDER),
          // How many sizes the search looks at on its way down: as it is, not worked out here.
          tried: 35,
        },
        data: {
          first_out: 'moss',
          spare: [
            { colour: 'moss', atHand: moss, need: made.moss.total, left: moss - made.moss.total },
            { colour: 'sand', atHand: sand, need: made.sand.total, left: sand - made.sand.total },
            { colour: 'clay', atHand: clay, need: made.clay.total, left: clay - made.clay.total },
          ],
          lacking: [{ colour: 'moss', short: PLANNED.moss.total - moss }],
          any_shape: { columns: 3, rows: 6, counts: [9, 9] },
          same_columns: null,
        },
      };
    })(),
    {
      // Twice as wide for its height is 25 % and more off: within 100 % it may be 3 × 6.
      line: 'name:"garden throw" stretch:100',
      figures: {
        motifs: 18,
        columns: 3,
        rows: 6,
        kind_a: 9,
        kind_b: 9,
        width: cm(3 * SIDE + 2 * BORDER),
        height: cm(6 * SIDE + 2 * BORDER),
        tried: 35,
      },
    },
    {
      // In its own proportions not even one of 4 × 5; with its columns as they are it would be 4 × 4.
      line: 'name:"garden throw" stretch:1',
      figures: { motifs: 0, columns: 0, rows: 0, tried: 35 },
      data: {
        any_shape: { columns: 3, rows: 6 },
        same_columns: { columns: 4, rows: 4 },
        spare: [{ need: garden(3, 6).moss.total }, {}, {}],
      },
    },
    {
      // With nothing kept in reserve the yarn is enough for the plan; of 21 places out of proportion the odd one goes to the kind that can be made.
      line: 'name:"garden throw" reserve:0',
      figures: { motifs: 20, columns: 4, rows: 5, kind_a: 10, kind_b: 10, ...GARDEN_SIZE, tried: 33 },
      data: { spare: [{ need: garden(4, 5, 1).moss.total }, {}, {}], lacking: [] },
    },
    (() => {
      // Motifs and their tails alone, with the reserve: whole motifs that the scarcest of their colours makes.
      const moss = (MOSS_OF_MOSS + MOSS_CARRIED + TAILS) * RESERVED;
      const sandOfMoss = (SAND_OF_MOSS + SAND_CARRIED + TAILS) * RESERVED;
      const sandOfSand = (FIRST_HALF + TAILS) * RESERVED;
      const clay = (SECOND_HALF + TAILS) * RESERVED;
      return {
        line: 'name:"garden throw" each:yes',
        figures: {
          together: Math.floor(Math.min(340 / moss, 340 / (sandOfMoss + sandOfSand), 255 / clay)),
          alone_a: Math.floor(Math.min(340 / moss, 340 / sandOfMoss)),
          alone_b: Math.floor(Math.min(340 / sandOfSand, 255 / clay)),
        },
      };
    })(),
  ],
  'blanket scale': [
    {
      figures: {
        motifs: 48,
        columns: 6,
        rows: 8,
        kind_a: 24,
        kind_b: 24,
        width: cm(6 * SIDE + 2 * BORDER),
        height: cm(8 * SIDE + 2 * BORDER),
        yarn_total: m(garden(6, 8).all),
      },
      data: {
        before: { yarn_total: PLANNED.all, border: [372, 380] },
        after: {
          border: [borderRound(6, 8, 1), borderRound(6, 8, 2)],
          ends: 48 * 4 + 2 * strandCount(6, 8, SIDE, whip(10 * WIDE)) + 2,
        },
      },
    },
    (() => {
      const { moss, sand, clay, all } = garden(6, 8);
      const [width, height] = [6 * SIDE + 2 * BORDER, 8 * SIDE + 2 * BORDER];
      return {
        before: [
          '/blanket colours colour:moss ball:170m/100g',
          '/blanket colours colour:sand ball:170m/100g',
          '/blanket colours colour:clay ball:125m/50g',
        ],
        line: 'width:100cm height:130cm',
        figures: {
          motifs: 48,
          columns: 6,
          rows: 8,
          kind_a: 24,
          kind_b: 24,
          width: cm(width),
          height: cm(height),
          yarn_total: m(all),
          balls: Math.ceil(moss.total / 170) + Math.ceil(sand.total / 170) + Math.ceil(clay.total / 125),
          off: percent(100 - width + (100 * (130 - height)) / 130),
        },
      };
    })(),
  ],
  'blanket picture': [
    { figures: { motifs: 20 } },
    { before: ['/progress at motif:"moss square" row:2 made:3'], figures: { motifs: 20, made: 3 } },
  ],
  'blanket handout': [
    {
      figures: {
        motifs: 20,
        yarn_total: m(PLANNED.all),
        ends: 20 * 4 + 2 * strandCount(4, 5, SIDE, whip(10 * WIDE)) + 2,
        ...GARDEN_SIZE,
      },
    },
  ],
  'blanket list': [{ figures: { blankets: 1 } }],
  'blanket choose': NONE,
  'blanket remove': NONE,
  'blanket undo': NONE,

  // ─── progress ───
  'progress next': [{ figures: { row: 1, rows: 24, made: 0, next_row: 2, next_count: 5 } }],
  'progress back': [{ figures: { row: 5 - 1, rows: 24, made: 0, next_row: 5, next_count: 11 } }],
  'progress at': [{ figures: { row: 6, rows: 24, made: 0, next_row: 7, next_count: 15 } }],
  'progress counted': [
    {
      // 7 and 9 are those of rows 3 and 4; row 5 has 11.
      figures: {
        row: 5,
        rows: 24,
        made: 0,
        next_row: 6,
        next_count: 13,
        first_wrong_row: 5,
        expected: 11,
        counted: 10,
        difference: 10 - 11,
      },
    },
  ],
  'progress finished': [
    { figures: { row: 0, rows: 24, made: 0 + 1, next_row: 1, next_count: 3 } },
    {
      before: [
        '/motif define name:"sand square" shape:diagonal size:12',
        '/blanket start name:"garden throw" kinds:"moss square, sand square" columns:4 rows:5',
      ],
      line: 'motif:"moss square"',
      figures: { row: 0, rows: 24, made: 1, next_row: 1, next_count: 3, needed: 10, to_make: 10 - 1 },
    },
  ],
  'progress show': [
    {
      // Five rows are 35 stitches; of the 277 to come rows 6, 11–12 and 17–18 are sand. 18 g are shared evenly over 312.
      figures: {
        row: 5,
        rows: 24,
        made: 3,
        next_row: 6,
        next_count: 13,
        percent: percent((100 * 35) / ALL),
        to_come: ALL - 35,
        weight_to_come: g((18 * 277) / ALL),
        band: percent(WEIGHED_BAND),
        yarn_to_come: m((18 * 1.7 * 277) / ALL),
        spare_weight: g(40 - (18 * (277 - 13 - 23 - 25 - 15 - 13)) / ALL),
        hours: ((277 / ALL) * 50) / 60,
        pace: ALL / 50,
      },
      data: {
        colours: [
          { colour: 'moss', stitches: 188 },
          { colour: 'sand', stitches: 89 },
        ],
      },
    },
    {
      before: ['/blanket start name:"garden throw" kinds:"moss square" columns:4 rows:5'],
      line: 'motif:"moss square" ball:170m/100g',
      // 17 of 20 are not finished, and of one of these 35 stitches are done.
      figures: {
        row: 5,
        rows: 24,
        made: 3,
        next_row: 6,
        next_count: 13,
        percent: percent((100 * 35) / ALL),
        needed: 20,
        to_make: 17,
        to_come: 17 * ALL - 35,
        blanket_made: 3,
        blanket_motifs: 20,
        weight_to_come: g((18 * (17 * ALL - 35)) / ALL),
        band: percent(WEIGHED_BAND),
        yarn_to_come: m((18 * 1.7 * (17 * ALL - 35)) / ALL),
      },
    },
    {
      // As `/yardage left`: the same 5 g from row 6 on.
      before: [
        '/motif define name:plain shape:diagonal size:12',
        '/motif weigh name:plain weight:18g',
        '/progress at motif:plain row:6',
      ],
      line: 'motif:plain left:5g ball:170m/100g',
      figures: {
        row: 6,
        rows: 24,
        made: 0,
        next_row: 7,
        next_count: 15,
        percent: percent((100 * 48) / ALL),
        to_come: ALL - 48,
        weight_to_come: g((18 * 264) / ALL),
        band: percent(WEIGHED_BAND),
        yarn_to_come: m((30.6 * 264) / ALL),
        spare_weight: g(5 - (18 * 264) / ALL),
        last_row: 10,
        spare: m(8.5 - ((upTo(10) - upTo(6)) * 30.6) / ALL),
      },
    },
  ],
  'progress undo': [{ figures: { row: 0, rows: 24, made: 0, next_row: 1, next_count: 3 } }],

  // ─── lookup ───
  // UK dc is the US sc, US dc the UK tr.
  'lookup term': [
    { figures: { meanings: 2 } },
    // Two sc along the end of a dc row; 53 and 102 inches of yarn over the same row.
    { line: 'term:"sc vs dc"', figures: { times_as_tall: 2, times_the_yarn: 1.92 } },
  ],
  'lookup hook': [
    // 7 mm, US 7 (and the old UK 7, both 4.5 mm), US steel 7.
    { figures: { hooks: 3 } },
    { line: 'hook:5mm', figures: { hook: mm(5), hooks: 1 } },
  ],
  'lookup yarn': [
    // 12 wraps lie in the ranges of fine, light and medium yarn.
    { figures: { categories: 3 }, data: { categories: [2, 3, 4] } },
    { line: 'yarn:4', figures: { category: 4, wraps_low: 9, wraps_high: 12 } },
  ],
  // 60 × 80 in.
  'lookup size': [{ figures: { width: cm(60 * 2.54), height: cm(80 * 2.54) } }],
  'lookup care': NONE,

  // ─── together ───
  // Six cells of each kind and one spare.
  'together open': [{ figures: { motifs: 2 * (6 + 1), side: cm(SIDE) } }],
  'together list': NONE,
  'host announce': NONE,
  'together board': [
    { figures: { accepted: 0, handed_in: 0, pledged: 2, open: 14 - 2, wanted: 12, spares: 2 } },
  ],
  'together motif': [{ figures: { rows: 24, total: ALL, ends: 4, side: cm(SIDE) } }],
  'together handout': [{ figures: { accepted: 0, pledged: 2, open: 14 - 2, wanted: 12, makers: 2 } }],
  'together join': NONE,
  'together leave': NONE,
  'host invite': NONE,
  'together pledge': [{ figures: { pledged: 2, open: 7 - 2 } }],
  'together giveback': [{ figures: { pledged: 2 - 1 } }],
  'together mine': [{ figures: { pledged: 2, handed_in: 0, accepted: 0 } }],
  'together maker': [{ figures: { pledged: 2, handed_in: 0, accepted: 0 } }],
  'together keep': [{ figures: { pledged: 2 } }],
  'together handin': [
    { figures: { handed_in: 1, off: percent(100 * (15.8 / SIDE - 1)) } },
    { line: 'kind:furrow motifs:2 weight:50g', figures: { handed_in: 2, weight: g(25) } },
    {
      // A tenth too large: 5 mm × 15.38 ÷ 17 = 4.52, the nearest that is sold.
      line: 'kind:furrow side:17cm hook:5mm',
      figures: { handed_in: 1, off: percent(100 * (17 / SIDE - 1)), suggested_hook: mm(4.5) },
    },
  ],
  'host accept': [{ figures: { accepted: 1 } }],
  'host return': NONE,
  'host remind': NONE,
  'host shares': [{ figures: { shared: 12, unplaced: 0 } }],
  'together pace': [
    {
      figures: {
        handed_in: 2,
        to_come: 12 - 2,
        per_week: 2 * 7,
        per_week_expected: (10 * 7) / daysUntil(0.5, PACE),
        per_week_needed: (10 * 7) / DAYS_LEFT,
        early: daysUntil(0.1, PACE),
        likely: daysUntil(0.5, PACE),
        late: daysUntil(0.9, PACE),
        chance: percent(100 * chance(DAYS_LEFT, PACE)),
      },
    },
  ],
  'host parcels': NONE,
  'together yarn': [
    // Two of one kind, one of the other: both have moss in their first half.
    {
      figures: {
        yarn_total: m(bought([2, FIRST], [1, FIRST]) + bought([2, SECOND]) + bought([1, SECOND])),
        yarn_flat: m(3 * (FIRST + SECOND) * RESERVED),
        reserve: reserved(bought([2, FIRST]) + bought([2, SECOND]), 2 * (FIRST + SECOND)),
        reserve_together: reserved(
          bought([2, FIRST], [1, FIRST]) + bought([2, SECOND]) + bought([1, SECOND]),
          3 * (FIRST + SECOND),
        ),
        band: percent((100 * 2 * left([2, FIRST + SECOND])) / (2 * (FIRST + SECOND))),
        band_together: percent(
          (100 * 2 * left([2, FIRST + SECOND], [1, FIRST + SECOND])) / (3 * (FIRST + SECOND)),
        ),
      },
      data: { mine: [{ metres: bought([2, FIRST]) }, { metres: bought([2, SECOND]) }] },
    },
    {
      before: [
        '/blanket colours name:"Bean rows" colour:moss ball:170m/100g',
        '/blanket colours name:"Bean rows" colour:sand ball:170m/100g',
        '/blanket colours name:"Bean rows" colour:plum ball:170m/100g',
        '/together open name:"Leaf rows" spares:0 closes:2031-05-31',
        '/together pledge name:"Leaf rows" kind:furrow motifs:4',
        'rowan: /together pledge name:"Leaf rows" kind:trellis motifs:5',
      ],
      line: 'name:"Leaf rows"',
      figures: {
        yarn_total: m(bought([4, FIRST], [5, FIRST]) + bought([4, SECOND]) + bought([5, SECOND])),
        yarn_flat: m(9 * (FIRST + SECOND) * RESERVED),
        reserve: reserved(bought([4, FIRST]) + bought([4, SECOND]), 4 * (FIRST + SECOND)),
        reserve_together: reserved(
          bought([4, FIRST], [5, FIRST]) + bought([4, SECOND]) + bought([5, SECOND]),
          9 * (FIRST + SECOND),
        ),
        band: percent((100 * 2 * left([4, FIRST + SECOND])) / (4 * (FIRST + SECOND))),
        band_together: percent(
          (100 * 2 * left([4, FIRST + SECOND], [5, FIRST + SECOND])) / (9 * (FIRST + SECOND)),
        ),
        balls_each:
          balls(bought([4, FIRST])) +
          balls(bought([4, SECOND])) +
          balls(bought([5, FIRST])) +
          balls(bought([5, SECOND])),
        balls_together:
          balls(bought([4, FIRST], [5, FIRST])) + balls(bought([4, SECOND])) + balls(bought([5, SECOND])),
      },
    },
  ],
  'host assemble': [
    {
      // Every seam joins a furrow to a trellis of 15.2 cm: 17 seams. In order of arrival the furrows of 15.1 cm have 2, 2 and 4 of
      // them, those of 14.8 cm the other 9; the best is to give the latter the places that have fewest, 2, 2 and 3. They are more than
      // 3 % off and are pinned out to the wanted side before they are laid.
      figures: {
        missing: 0,
        neighbours_differ: cm(Math.sqrt((7 * (SIDE - 15.2) ** 2 + 10 * 0.1 ** 2) / 17)),
        by_arrival: cm(Math.sqrt((9 * (SIDE - 15.2) ** 2 + 8 * 0.1 ** 2) / 17)),
        seam_length: m(seams(3, 4)),
        seam_yarn: m(seams(3, 4) * whip(10 * WIDE)),
        edging_yarn: m(0),
        width: cm(3 * SIDE),
        height: cm(4 * SIDE),
      },
    },
    {
      before: [
        '/blanket change name:"Bean rows" border:"sc hdc"',
        '/together open name:"Leaf rows" spares:0 closes:2031-05-31',
        '/together handin name:"Leaf rows" kind:furrow motifs:6 side:15cm confirm:yes',
        '/host accept name:"Leaf rows" motifs:1-6',
      ],
      line: 'name:"Leaf rows"',
      figures: {
        missing: 6,
        neighbours_differ: cm(0),
        by_arrival: cm(0),
        seam_length: m(seams(3, 4)),
        seam_yarn: m(seams(3, 4) * whip(10 * WIDE)),
        edging_yarn: m(0),
        border_yarn: m(borderYarn(3, 4)),
        round_total: borderRound(3, 4, 2),
        width: cm(3 * SIDE + 2 * BORDER),
        height: cm(4 * SIDE + 2 * BORDER),
      },
      data: {
        border: [
          { ...borderSides(3, 4, 1), total: 292 },
          { ...borderSides(3, 4, 2), total: 300 },
        ],
      },
    },
  ],
  'host close': NONE,
  'host reopen': NONE,
  'together handover': NONE,
  'host bar': [{ figures: { released: 2 } }],
  'together undo': NONE,
  // Opened, pledged for, and one who pledged has joined by that.
  'together history': [{ figures: { events: 3 } }],

  // ─── settings and help ───
  'settings show': NONE,
  'settings change': NONE,
  'settings server': NONE,
  'settings export': NONE,
  'settings import': NONE,
  'settings erase': NONE,
  'together calendar': [{ figures: { days: 2 } }],
  // ─── along ───
  'along open': [
    {
      figures: { parts: 8 },
      // Eight Mondays.
      data: {
        parts: ['01-06', '01-13', '01-20', '01-27', '02-03', '02-10', '02-17', '02-24'].map((day, index) => ({
          number: index + 1,
          from: `2031-${day}`,
        })),
      },
    },
  ],
  'along plan': [{ figures: { parts: 8 } }],
  'along part': NONE,
  'along list': [{ figures: { alongs: 1 } }],
  'along join': [
    {
      figures: {
        size: HER_SIZE,
        side: HER_ALL.side,
        width: HER_ALL.width,
        height: HER_ALL.height,
        yarn_total: HER_ALL.yarn_total,
        balls: HER_ALL.balls,
      },
    },
  ],
  'along save': [
    {
      figures: {
        motifs: 12,
        width: HER_ALL.width,
        height: HER_ALL.height,
        yarn_total: HER_ALL.yarn_total,
      },
      data: { blanket: 'My bean rows', motifs: ['furrow 2', 'trellis 2'] },
    },
  ],
  'along leave': NONE,
  'along mine': [
    {
      // The first 14 of 28 rows hold 224 of 420 stitches, nearer to half than 13 of them, 195.
      figures: {
        ...HER_ALL,
        row_from: 1,
        row_to: 14,
        stitches: HER_FIRST,
        yarn: m((HER_FIRST_HALF + HER_SECOND_HALF) * RESERVED),
        hours: HER_FIRST / 15 / 60,
      },
      data: {
        part: 2,
        rows: { from: 1, to: 14, counts: [3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23, 25, 27, 29] },
      },
    },
    { line: 'part:1', figures: { ...HER_ALL, swatch_stitches: 23, swatch_rows: 18 } },
    {
      // 11 motifs are left after the first, all of as many stitches; of two parts one has 5.
      line: 'part:4',
      figures: {
        ...HER_ALL,
        motifs: 5,
        stitches: 5 * (HER_FIRST + HER_SECOND),
        yarn: m(5 * (HER_FIRST_HALF + HER_SECOND_HALF) * RESERVED),
        hours: (5 * (HER_FIRST + HER_SECOND)) / 15 / 60,
      },
      data: {
        kinds: [
          { name: 'furrow', motifs: 5 },
          { name: 'trellis', motifs: 0 },
        ],
      },
    },
    { line: 'part:6', figures: { ...HER_ALL, ends: 12 * 4 + 2 * HER_STRANDS } },
    {
      line: 'part:8',
      figures: {
        ...HER_ALL,
        seams: 2 * 4 + 3,
        seam_length: m(HER_SEAMS),
        yarn: m(HER_SEAMS * whip(10 * HER_WIDE)),
      },
    },
    {
      before: [
        '/blanket start name:edged kinds:furrow columns:2 rows:2 border:sc',
        '/along open blanket:edged starts:2031-01-06',
        '/along join name:edged',
      ],
      line: 'part:8 name:edged',
      figures: {
        size: 12,
        side: cm(SIDE),
        columns: 2,
        rows: 2,
        width: cm(2 * SIDE + 2 * EDGED_HIGH),
        height: cm(2 * SIDE + 2 * EDGED_HIGH),
        round_total: EDGED_ROUND,
        yarn: m(EDGED_BORDER),
        yarn_total: m(
          (4 * (FIRST + SECOND) +
            seams(2, 2) * whip(10 * WIDE) +
            strandCount(2, 2, SIDE, whip(10 * WIDE)) * TAILS +
            EDGED_BORDER +
            TAILS) *
            RESERVED,
        ),
      },
    },
  ],
  'along done': [{ figures: { done: 1, makers: 1 }, data: { part: 1, next: 2 } }],
  'along stuck': [
    { figures: { first_wrong_row: 7, expected: 2 * 7 + 1, counted: 14, difference: 14 - 15 } },
    { line: 'part:2 row:7', figures: { expected: 2 * 7 + 1 } },
  ],
  'along show': [
    {
      figures: { makers: 1, parts: 8, given_out: 0 },
      data: {
        parts: [1, 2, 3, 4, 5, 6, 7, 8].map((number) => ({
          number,
          done: number === 1 ? 1 : 0,
          stuck: 0,
          not_begun: number === 1 ? 0 : 1,
        })),
      },
    },
  ],
  'along pace': [
    {
      // The first motif and eleven more, at fifteen stitches a minute.
      figures: {
        given_out: 0,
        done: 0,
        behind: 0,
        middle: 0,
        up_to_date: 1,
        hours_left: (12 * (HER_FIRST + HER_SECOND)) / 15 / 60,
      },
    },
  ],
  'along calendar': [{ figures: { days: 8 } }],
  'along troubles': [
    {
      figures: { places: 2, helped: 1 },
      data: {
        troubles: [
          { part: 2, row: 3, slip: null, makers: 1 },
          { part: 2, row: 7, slip: 'increase-missed', makers: 1 },
        ],
      },
    },
  ],
  'along due': [{ figures: { given_out: 0 } }],
  'along handover': NONE,
  'along close': NONE,
  'along undo': NONE,
  'along history': [{ figures: { things: 1 } }],
  // What lessons ask and answer is held to second solutions of its own.
  'lesson list': NONE,
  'lesson start': NONE,
  'lesson answer': NONE,
  'lesson hint': NONE,
  'lesson next': NONE,
  'lesson where': NONE,
  'lesson stop': NONE,
  help: NONE,
};
