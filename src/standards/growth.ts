/** How fast a piece worked in rounds may grow and still lie flat, stitch by stitch. */
import type { Stitch } from './stitches.ts';

export const CIRCLE_GROWTH_SOURCE =
  'published: 6 sc, 8 hdc, 12 dc more a round (craftymaria.blogspot.com, "Getting your circles flat"); ' +
  'tr 12 to 14 (mkcarroll.com, 2009), though 2π × height ÷ width would give more';

/** Increases a round that keep a circle flat. */
export const CIRCLE_GROWTH: Readonly<Record<Stitch, number>> = { sc: 6, hdc: 8, dc: 12, tr: 14 };
/** Increases a round that keep a hexagon flat: the multiple of six nearest to 4√3 × height ÷ width (derived). */
export const HEXAGON_GROWTH: Readonly<Record<Stitch, number>> = { sc: 6, hdc: 12, dc: 12, tr: 18 };

/** Stitches worked into each corner stitch so that the square lies flat: 3 and 5 are published, 4 and 7 derived (8·h/w = 4(k − 1)). */
export const CORNER_FOR: Readonly<Record<Stitch, number>> = { sc: 3, hdc: 4, dc: 5, tr: 7 };
