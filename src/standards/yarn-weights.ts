/**
 * Yarn weight categories 0–7 of the US yarn trade association's standard yarn weight system ("guidelines only").
 * Read in copies: crochetonatrain.com/standard-yarn-weight-system (the older table), a US crochet magazine of
 * October 2018, p. 64 (issuhub.com, id 3342), a spinning magazine's chart (scribd.com/document/657653690); wraps per
 * inch in ihookdesign.com/what-is-wpi. At least three editions exist; they differ in categories 0, 6 and 7.
 */
export interface YarnWeight {
  readonly category: number;
  readonly name: string;
  readonly types: string;
  /** Single crochet (US) over 4 in; category 0 is stated in double crochet. */
  readonly stitchesPer4in: string;
  readonly hookMm: string;
  readonly hookUS: string;
  /**
   * A usual hook in mm: a size about the middle of the range, its one end where it has no other; for medium yarn the hook
   * of the published measurement of yarn per stitch (windchilde.com/bluedepth).
   */
  readonly usualHook: number;
  /** Wraps per inch, the ranges of the association's chart. They overlap: wraps do not decide a category. */
  readonly wpi: readonly [number, number];
  /** The ranges of a spinning magazine's chart, which do not overlap (scribd.com/document/657653690); unset where it has none. */
  readonly spinningWpi?: string;
  /** Yards in a pound, by the same chart. */
  readonly yardsPerPound?: readonly [number, number];
  /** Knitted stitches over 4 in, in stockinette (the same chart; 6 and 7 from memory). */
  readonly knitPer4in: string;
  /** Where sources or editions differ, said in words. */
  readonly note?: string;
}

export const YARN_WEIGHTS: readonly YarnWeight[] = [
  {
    category: 0,
    name: 'Lace',
    types: 'fingering, 10-count crochet thread',
    stitchesPer4in: '32–42 ⟦dc⟧',
    hookMm: 'steel 1.6–1.4; regular 2.25',
    hookUS: 'steel 6, 7, 8; regular B-1',
    usualHook: 2.25,
    wpi: [30, 40],
    spinningWpi: '18 and more',
    yardsPerPound: [2401, Infinity],
    knitPer4in: '33–40',
    note: 'A 2018 magazine copy prints hooks 1.5–2.25 mm (steel 8–1, B-1). The 2.25 mm is from memory.',
  },
  {
    category: 1,
    name: 'Super Fine',
    types: 'sock, fingering, baby',
    stitchesPer4in: '21–32',
    hookMm: '2.25–3.5',
    hookUS: 'B-1 to E-4',
    usualHook: 2.75,
    wpi: [14, 30],
    spinningWpi: '16–18',
    yardsPerPound: [1901, 2400],
    knitPer4in: '27–32',
  },
  {
    category: 2,
    name: 'Fine',
    types: 'sport, baby',
    stitchesPer4in: '16–20',
    hookMm: '3.5–4.5',
    hookUS: 'E-4 to 7',
    usualHook: 4,
    wpi: [12, 18],
    spinningWpi: '14–15',
    yardsPerPound: [1201, 1900],
    knitPer4in: '23–26',
  },
  {
    category: 3,
    name: 'Light',
    types: 'DK, light worsted',
    stitchesPer4in: '12–17',
    hookMm: '4.5–5.5',
    hookUS: '7 to I-9',
    usualHook: 5,
    wpi: [11, 15],
    spinningWpi: '12–13',
    yardsPerPound: [901, 1200],
    knitPer4in: '21–24',
  },
  {
    category: 4,
    name: 'Medium',
    types: 'worsted, afghan, aran',
    stitchesPer4in: '11–14',
    hookMm: '5.5–6.5',
    hookUS: 'I-9 to K-10 1/2',
    usualHook: 5,
    wpi: [9, 12],
    spinningWpi: '10–11',
    yardsPerPound: [601, 900],
    knitPer4in: '16–20',
  },
  {
    category: 5,
    name: 'Bulky',
    types: 'chunky, craft, rug',
    stitchesPer4in: '8–11',
    hookMm: '6.5–9',
    hookUS: 'K-10 1/2 to M-13',
    usualHook: 8,
    wpi: [6, 9],
    spinningWpi: '8–9',
    yardsPerPound: [401, 600],
    knitPer4in: '12–15',
  },
  {
    category: 6,
    name: 'Super Bulky',
    types: 'super bulky, roving',
    stitchesPer4in: '7–9',
    hookMm: '9–15',
    hookUS: 'M-13 to Q',
    usualHook: 12,
    wpi: [5, 6],
    spinningWpi: '7 and fewer',
    yardsPerPound: [0, 400],
    knitPer4in: '7–11',
    note:
      'Editions differ: 5–9 stitches on 9 mm and larger where there are seven categories; 6–9 on 9–16 mm in the first ' +
      'edition with eight; 7–9 on 9–15 mm now (the stitch count of the current edition is from memory).',
  },
  {
    category: 7,
    name: 'Jumbo',
    types: 'jumbo, roving',
    stitchesPer4in: '6 and fewer',
    hookMm: '15 and larger',
    hookUS: 'Q and larger',
    usualHook: 15,
    wpi: [1, 4],
    knitPer4in: '6 and fewer',
    note:
      'The first edition with this category printed 5 and fewer stitches on 16 mm and larger; the current stitch count is ' +
      'from memory.',
  },
];

/** Other names that a yarn's weight goes by, each with where it is said so, and what else it may mean. */
export interface YarnName {
  readonly name: string;
  readonly category: number;
  readonly source: string;
  /** Where the name has a second meaning, said in words. */
  readonly conflict?: string;
}

const BRITISH = 'common practice: a name of the UK trade';
const AUSTRALIAN = 'from memory: a name of the Australian trade, by plies';
const PLIES =
  'a ply is also just one of the strands a yarn is twisted of, in yarns of any thickness: the wraps or the band decide';

/**
 * Names of the trade that the association's table does not have. British names: common practice; names by plies: from memory. The
 * number of plies says nothing of the thickness by itself, so each of those carries its conflict.
 */
export const YARN_NAMES: readonly YarnName[] = [
  { name: 'double knitting', category: 3, source: BRITISH },
  { name: 'double knit', category: 3, source: BRITISH },
  { name: 'super chunky', category: 6, source: BRITISH },
  { name: 'thread', category: 0, source: 'the association’s table, which has 10-count crochet thread' },
  {
    name: 'crochet thread',
    category: 0,
    source: 'the association’s table, which has 10-count crochet thread',
  },
  { name: 'laceweight', category: 0, source: 'common practice' },
  { name: '2 ply', category: 0, source: AUSTRALIAN, conflict: PLIES },
  { name: '3 ply', category: 1, source: AUSTRALIAN, conflict: PLIES },
  {
    name: '4 ply',
    category: 1,
    source: `${BRITISH} for what the US calls fingering or sock`,
    conflict: 'in the US a yarn of four plies is usually worsted, category 4: the wraps or the band decide',
  },
  { name: '5 ply', category: 2, source: AUSTRALIAN, conflict: PLIES },
  { name: '8 ply', category: 3, source: AUSTRALIAN, conflict: PLIES },
  { name: '10 ply', category: 4, source: AUSTRALIAN, conflict: PLIES },
  { name: '12 ply', category: 5, source: AUSTRALIAN, conflict: PLIES },
];
