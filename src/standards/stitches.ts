/** Stitches in US terms, from the shortest to the tallest. */
export const STITCHES = ['sc', 'hdc', 'dc', 'tr'] as const;
export type Stitch = (typeof STITCHES)[number];

interface StitchFacts {
  /** Row height over that of sc. */
  readonly height: number;
  /** Chains at the start of a row. */
  readonly turningChain: number;
  /** Whether the turning chain stands as the first stitch. */
  readonly chainCounts: boolean;
  /** Chains to make beyond the number of stitches wanted, the skipped chains counting where they do. */
  readonly foundationExtra: number;
  /** Yarn over that of one sc. */
  readonly yarn: number;
}

/**
 * Heights: published, one, two and three sc per sc, dc and tr row end (carol-mycrochetpage.blogspot.com, "Picot
 * edging", 2009); hdc 1.5 from memory (3 per 2 rows). Turning chains: Dummies (Wiley), "How to crochet a turning
 * chain"; for hdc teachers differ, here it counts. Foundation chains: crochetcabana.com, "Multiples" (sc, dc);
 * forum.knittinghelp.com/t/72046 (hdc); tr from memory. Yarn: one maker's measurement, sc 53, hdc 78.5, dc 102 inches
 * over the same row (windchilde.com/bluedepth); tr derived from equal-yarn strips (thesnugglery.net).
 */
export const STITCH_FACTS: Readonly<Record<Stitch, StitchFacts>> = {
  sc: { height: 1, turningChain: 1, chainCounts: false, foundationExtra: 1, yarn: 1 },
  hdc: { height: 1.5, turningChain: 2, chainCounts: true, foundationExtra: 1, yarn: 1.48 },
  dc: { height: 2, turningChain: 3, chainCounts: true, foundationExtra: 2, yarn: 1.92 },
  tr: { height: 3, turningChain: 4, chainCounts: true, foundationExtra: 3, yarn: 2.9 },
};
