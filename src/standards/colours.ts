/**
 * Colours: words for them, a palette for words that are not known, and what the published models of seeing need.
 */

/**
 * Plain colour words and how they are drawn, #rrggbb. Our own choice of middling yarn shades (a yarn called "red" is
 * seldom pure #ff0000); the hex of the very yarn, where a maker gives it, always goes first.
 */
export const COLOUR_WORDS: Readonly<Record<string, string>> = {
  white: '#fafaf7',
  snow: '#f6f8fa',
  ivory: '#f7f1de',
  cream: '#f3e7c4',
  ecru: '#e6dcc3',
  natural: '#e9e0cd',
  oatmeal: '#d9ccb4',
  linen: '#e3d8c6',
  beige: '#dcc9a6',
  sand: '#d8bf8f',
  camel: '#bd9257',
  tan: '#c39a6b',
  caramel: '#b5783a',
  toffee: '#96602e',
  brown: '#714a2c',
  chestnut: '#7a3b26',
  chocolate: '#4b2e20',
  coffee: '#574036',
  mushroom: '#a99a8b',
  taupe: '#8b7d70',
  grey: '#8c8f93',
  gray: '#8c8f93',
  silver: '#c3c7cb',
  slate: '#5b6874',
  charcoal: '#3b4046',
  black: '#1d1d1f',
  red: '#c42b31',
  scarlet: '#d3311f',
  crimson: '#a51b36',
  cherry: '#9c1630',
  brick: '#9d4330',
  rust: '#a9512a',
  terracotta: '#c4694a',
  burgundy: '#6d1b33',
  wine: '#6f2039',
  maroon: '#6b1f28',
  raspberry: '#b02a5b',
  coral: '#ee7a66',
  salmon: '#f1937e',
  peach: '#f7bd97',
  apricot: '#f3a765',
  orange: '#e8772b',
  pumpkin: '#d9692a',
  amber: '#e2a02c',
  mustard: '#c99b2a',
  ochre: '#bf8b32',
  gold: '#d2a53a',
  honey: '#dca742',
  yellow: '#f1cf3e',
  lemon: '#f6e26b',
  butter: '#f6e3a0',
  pink: '#ee9dbb',
  rose: '#d9788f',
  blush: '#efc4c1',
  fuchsia: '#c9307f',
  magenta: '#bb2d86',
  plum: '#6b335c',
  aubergine: '#482545',
  purple: '#6f4391',
  violet: '#7f56b0',
  lilac: '#c0a3d4',
  lavender: '#b3a5d6',
  heather: '#9a7fa0',
  mauve: '#b58aa5',
  blue: '#2f64ad',
  navy: '#22305c',
  indigo: '#363a80',
  royal: '#2c48a6',
  denim: '#4d6d94',
  sky: '#8fc3e6',
  duck: '#8fc0c4',
  ice: '#d3e6ee',
  turquoise: '#37b3b3',
  aqua: '#72cdc9',
  teal: '#1f7478',
  petrol: '#1d5463',
  green: '#3f8a4a',
  mint: '#aedfc2',
  sage: '#9aab87',
  moss: '#6f7d3c',
  olive: '#6c6b2c',
  lime: '#a8c93f',
  apple: '#8fb848',
  leaf: '#5a9440',
  fern: '#56803f',
  forest: '#25502f',
  emerald: '#1f8a5b',
  bottle: '#1d4a35',
  seafoam: '#9fd3bf',
};

/** Words that lighten or darken the colour word after them: how far towards white or black, as a share. */
export const SHADES: Readonly<Record<string, { readonly towards: string; readonly share: number }>> = {
  pale: { towards: '#ffffff', share: 0.55 },
  light: { towards: '#ffffff', share: 0.4 },
  soft: { towards: '#ffffff', share: 0.25 },
  deep: { towards: '#000000', share: 0.3 },
  dark: { towards: '#000000', share: 0.4 },
};

/**
 * For colour words that nobody knows ("Tuesday", "number 7"). Our own choice, held to at least 18 of CIEDE2000 between
 * any two by a test.
 */
export const PALETTE = [
  '#2f64ad',
  '#e2a02c',
  '#3f8a4a',
  '#b02a5b',
  '#72cdc9',
  '#714a2c',
  '#b3a5d6',
  '#cf4b26',
  '#22305c',
  '#f3e7c4',
  '#8c8f93',
  '#a8c93f',
] as const;

/**
 * Seeing with one kind of cone missing: matrices on linear sRGB, row by row, at full severity. Published: G. M. Machado,
 * M. M. Oliveira and L. A. F. Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
 * IEEE Transactions on Visualization and Computer Graphics 15(6), 2009; figures as carried by the library culori.
 */
export const COLOUR_VISION = {
  protanopia: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deuteranopia: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritanopia: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
} as const satisfies Record<string, readonly number[]>;

/** Linear sRGB to CIE XYZ under D65, row by row, and the white it belongs to (IEC 61966-2-1). */
export const SRGB_TO_XYZ = [
  0.4124564, 0.3575761, 0.1804375, 0.2126729, 0.7151522, 0.072175, 0.0193339, 0.119192, 0.9503041,
] as const;
export const D65 = [0.95047, 1, 1.08883] as const;

/** Shares of red, green and blue in relative luminance (WCAG 2, relative luminance). */
export const LUMINANCE = [0.2126, 0.7152, 0.0722] as const;
