export interface ShapeNames {
  /** Said anywhere, they name the shape; the first is the one that is shown. */
  readonly names: readonly string[];
  /** Everyday words: they name it only where a shape is asked for. */
  readonly alone: readonly string[];
  /** Names that begin like another shape’s, or are another’s to some: they name it only in the middle of a sentence. */
  readonly within?: readonly string[];
}

/**
 * Shapes by the names that they go by: common practice. A “square” alone is none of them, as four are squares. A mitred square is
 * to some another one, whose longest row lies along two sides: it is no choice of the option.
 */
export const SHAPE_NAMES = {
  diagonal: {
    names: ['diagonal square', 'diagonal squares'],
    alone: ['square on the diagonal', 'half and half square'],
    within: [
      'diagonal box square',
      'mitred square',
      'mitered square',
      'mitred squares',
      'mitered squares',
      'mitre square',
      'miter square',
      'corner start square',
      'corner start',
      'corner started square',
      'corner out square',
      'corner out',
      'bias square',
      'bias squares',
      'on the diagonal',
      'diagonal',
      'mitred',
      'mitered',
      'dishcloth square',
    ],
  },
  blocks: {
    names: ['corner to corner', 'c2c', 'corner 2 corner', 'c 2 c', 'ctc'],
    alone: [
      'c2c square',
      'c2c blocks',
      'corner to corner blocks',
      'corner to corner square',
      'block',
      'blocks corner to corner',
      'diagonal blocks',
      'c2c rectangle',
    ],
  },
  clusters: {
    names: ['granny square', 'granny', 'granny squares', 'grannies', 'classic granny', 'grannys', "granny's"],
    alone: ['cluster', 'cluster square', 'square in clusters', 'traditional granny'],
  },
  'solid-square': {
    names: [
      'solid granny',
      'solid granny square',
      'solid squares',
      'solid square',
      'solid grannies',
      'solid granny squares',
      'filled granny square',
      'filled square',
    ],
    alone: ['solid', 'solid square in rounds', 'square in rounds', 'square in the round'],
  },
  circle: {
    names: ['disc', 'circle', 'circles', 'flat circle', 'mandala', 'round coaster', 'coaster'],
    alone: ['round', 'disk', 'circular'],
    within: ['granny circle', 'granny circles'],
  },
  hexagon: {
    names: ['hexie', 'hexies', 'hexagon', 'hexagons', 'hex', 'hexi', 'hexy', 'hexi s'],
    alone: ['hexagonal'],
    within: ['granny hexagon', 'granny hexagons', 'hexagon granny'],
  },
  flat: {
    names: [
      'flat piece',
      'flat rectangle',
      'flat blanket',
      'flat panel',
      'flat scarf',
      'plain rectangle',
      'scarf',
      'flat strip',
    ],
    alone: ['rectangle', 'strip', 'panel', 'straight', 'straight piece'],
  },
} as const satisfies Record<string, ShapeNames>;

/** Joins by the names that they go by: common practice. `dc` alone is none: it is single crochet in UK terms and another stitch in US ones. */
export const SEAM_WORDS = {
  whip: ['whip stitch', 'whipstitch', 'whipped', 'overcast', 'overcasting', 'sew', 'sewn', 'sewing'],
  'slip-stitch': ['slip', 'slip stitched', 'sl st', 'slst', 'ss', 'slip stitches'],
  'single-crochet': ['sc', 'single', 'us sc', 'uk dc', 'uk double crochet', 'single crochet join'],
} as const satisfies Record<string, readonly string[]>;
