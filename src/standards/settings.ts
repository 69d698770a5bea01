/**
 * Settings of squares split corner to corner into a dark and a light half. The turnings alone make the picture.
 *
 * Names: Barn Raising (American Folk Art Museum, caption at quilting.craftgossip.com, 2009; McKissick Museum, University of
 * South Carolina, 1998.09.112.02); Straight Furrow (Living History Farms, lhf.org; quiltersinfo.com, "Log cabin quilt");
 * Streak of Lightning, Light and Dark (International Quilt Museum, 1997.007.0127, which also says why re-setting alone
 * changes the pattern); Pinwheel (roundtheblocks.blogspot.com, 2011); Broken Dishes (thesewingdirectory.co.uk, "Broken
 * dishes, pinwheel and hour glass blocks"); Flying Geese (2hot2knit.blogspot.com, 2011). Zigzag: from memory.
 */

/** How a setting is laid: a tile that repeats, or a quarter that is mirrored about the middle of the blanket. */
export interface Setting {
  readonly name: string;
  /** What is seen, in words. */
  readonly says: string;
  /** Where its shape comes from; the source of the name stands above. */
  readonly shape: string;
  /**
   * Quarter turns clockwise, row by row, repeated over the blanket. Turn 0: the dark half lies at the top left;
   * 1: top right; 2: bottom right; 3: bottom left.
   */
  readonly tile: readonly (readonly number[])[];
  /** True where the tile fills the lower right quarter from the middle outwards and the others mirror it. */
  readonly mirrored?: true;
}

export const SETTINGS = {
  upright: {
    name: 'Upright',
    says: 'every motif the same way up',
    shape: 'no turning at all',
    tile: [[0]],
  },
  'barn-raising': {
    name: 'Barn Raising',
    says: 'diamonds, one around the other, dark and light in turn, about the middle',
    shape: 'published: dark and light halves form concentric diamonds',
    tile: [
      [0, 2],
      [2, 0],
    ],
    mirrored: true,
  },
  'straight-furrow': {
    name: 'Straight Furrow',
    says: 'straight bands, dark and light in turn, running slantwise across',
    shape: 'from memory: parallel diagonal bands',
    tile: [
      [0, 2],
      [2, 0],
    ],
  },
  'streak-of-lightning': {
    name: 'Streak of Lightning',
    says: 'zigzag bands, dark and light in turn, running from side to side',
    shape: 'from memory: zigzag bands',
    tile: [
      [0, 1],
      [2, 3],
    ],
  },
  'light-and-dark': {
    name: 'Light and Dark',
    says: 'diamonds side by side, dark and light in turn',
    shape: 'published: diamonds alternating light and dark',
    tile: [
      [2, 3],
      [1, 0],
    ],
  },
  pinwheel: {
    name: 'Pinwheel',
    says: 'four-bladed wheels, each of four motifs, turning clockwise',
    shape: 'published: four split squares, each a quarter turn from the last',
    tile: [
      [1, 2],
      [0, 3],
    ],
  },
  'broken-dishes': {
    name: 'Broken Dishes',
    says: 'blocks of four motifs, dark at the top and bottom, light at the sides',
    shape: 'published as another turning of the pinwheel’s four pieces; which one, from memory',
    tile: [
      [1, 0],
      [2, 3],
    ],
  },
  zigzag: {
    name: 'Zigzag',
    says: 'bands that run from top to bottom and turn with every row',
    shape: 'from memory, name and shape: rows alternately mirrored',
    tile: [[0], [3]],
  },
  'flying-geese': {
    name: 'Flying Geese',
    says: 'dark triangles in columns, all pointing up, each of two motifs',
    shape: 'from memory: two split squares side by side, pointing one way',
    tile: [[2, 3]],
  },
} as const satisfies Record<string, Setting>;

export type SettingKey = keyof typeof SETTINGS;
export const SETTING_KEYS = Object.keys(SETTINGS) as SettingKey[];
