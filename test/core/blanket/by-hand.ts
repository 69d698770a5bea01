/**
 * The pieces of an invented blanket in round numbers, so that what it takes can be added up with a pencil. A dark square takes 10.5 m
 * of moss and 4.3 m of sand, a light one 12.3 m of sand; they measure 10 cm, and a stitch of the border 0.75 cm.
 */
import type { Pieces } from '../../../src/core/blanket/pieces.ts';
import { planRows } from '../../../src/core/rows/index.ts';
import type { Yarn } from '../../../src/core/yarn/motif.ts';

const plan = planRows('diagonal', { size: 6, stitch: 'hdc' });

export const YARNS: readonly Yarn[] = [
  { colour: 'Moss', ball: { m: 100, g: 50 }, balls: 0.5, price: 4 },
  { colour: 'sand', ball: { m: 200, g: 100 }, balls: 2 },
  { colour: 'plum' },
];

export const BY_HAND: Pieces = {
  motifs: [
    {
      name: 'dark',
      plan,
      how: 'by-gauge',
      band: 15,
      stitches: 84,
      colours: [
        { colour: 'moss', stitches: 60, worked: 10, tails: 0.3, carried: 0.2 },
        { colour: 'sand', stitches: 24, worked: 4, tails: 0.3, carried: 0 },
      ],
      ends: 4,
      perStitch: 0.16,
      assumptions: [],
    },
    {
      name: 'light',
      plan,
      how: 'rough',
      band: 25,
      stitches: 84,
      colours: [{ colour: 'Sand', stitches: 84, worked: 12, tails: 0.3, carried: 0 }],
      ends: 2,
      perStitch: 0.14,
      assumptions: [],
    },
  ],
  side: 10,
  sideHow: 'measured',
  seam: { colour: 'MOSS', ratio: 3 },
  gauged: true,
  borderWeighed: false,
  border: {
    rounds: [
      { stitch: 'sc', colour: 'moss', perStitch: 0.03, weighed: false, height: 0.8 },
      { stitch: 'dc', colour: 'plum', perStitch: 0.05, weighed: false, height: 1.6 },
      { stitch: 'dc', colour: 'Plum', perStitch: 0.05, weighed: false, height: 1.6 },
    ],
    corner: 3,
    stitchWidth: 0.75,
    width: 4,
  },
  yarns: YARNS,
  colours: ['moss', 'sand', 'plum'],
  reserve: 10,
  assumptions: [],
};

/** The same with other yarns at hand, in metres; undefined where it is not known how much there is. */
export const withStock = (moss?: number, sand?: number, plum?: number): Pieces => ({
  ...BY_HAND,
  yarns: Object.entries({ moss, sand, plum }).map(([colour, metres]) => ({
    colour,
    ball: { m: 100, g: 50 },
    ...(metres === undefined ? {} : { balls: metres / 100 }),
  })),
});
