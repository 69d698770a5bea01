/**
 * Shapes by the names that they go by: common practice. A “square” alone is none of them, as four are squares, and a mitred square is
 * another (its longest row lies along two sides).
 */
export const SHAPE_WORDS = {
  diagonal: ['diagonal square', 'diagonal squares', 'square on the diagonal', 'half and half square'],
  blocks: [
    'corner to corner',
    'c2c',
    'c2c square',
    'c2c blocks',
    'corner to corner blocks',
    'corner to corner square',
    'block',
    'blocks corner to corner',
    'diagonal blocks',
    'c2c rectangle',
  ],
  clusters: [
    'granny square',
    'granny',
    'granny squares',
    'grannies',
    'cluster',
    'cluster square',
    'square in clusters',
    'classic granny',
    'traditional granny',
  ],
  'solid-square': [
    'solid granny',
    'solid granny square',
    'solid',
    'solid squares',
    'solid square in rounds',
    'square in rounds',
    'square in the round',
  ],
  circle: ['round', 'circles', 'disc', 'disk', 'circular'],
  hexagon: ['hexagons', 'hex', 'hexie', 'hexies', 'hexagonal'],
  flat: ['flat piece', 'rectangle', 'strip', 'panel', 'straight', 'straight piece', 'flat rectangle'],
} as const satisfies Record<string, readonly string[]>;

/** Joins by the names that they go by: common practice. `dc` alone is none: it is single crochet in UK terms and another stitch in US ones. */
export const SEAM_WORDS = {
  whip: ['whip stitch', 'whipstitch', 'whipped', 'overcast', 'overcasting', 'sew', 'sewn', 'sewing'],
  'slip-stitch': ['slip', 'slip stitched', 'sl st', 'slst', 'ss', 'slip stitches'],
  'single-crochet': ['sc', 'single', 'us sc', 'uk dc', 'uk double crochet', 'single crochet join'],
} as const satisfies Record<string, readonly string[]>;
