/** Names and units as people spell them, beyond what the readers of options take: each with what the readers take. */
import { SIZE_NAMES } from '../core/lookup/size.ts';
import { TERM_WORDS } from '../core/lookup/term.ts';
import { SIZE_WORDS } from '../standards/sizes.ts';
import { SHAPE_NAMES, type ShapeNames } from '../standards/trade-names.ts';

export const UNIT_OF_LENGTH = new Map<string, string>(
  Object.entries({
    mm: 'mm millimetre millimetres millimeter millimeters mil mils',
    cm: 'cm cms centimetre centimetres centimeter centimeters centimetres',
    m: 'm metre metres meter meters mtr mtrs mts',
    in: 'in ins inch inches " inchs',
    ft: "ft foot feet '",
    yd: 'yd yds yard yards',
  }).flatMap(([unit, words]) => words.split(' ').map((word) => [word, unit] as const)),
);
export const UNIT_OF_WEIGHT = new Map<string, string>(
  Object.entries({
    g: 'g gr gram grams gramme grammes gm gms grm',
    kg: 'kg kgs kilo kilos kilogram kilograms',
    oz: 'oz ozs ounce ounces',
    lb: 'lb lbs pound pounds',
  }).flatMap(([unit, words]) => words.split(' ').map((word) => [word, unit] as const)),
);
export const CM: Readonly<Record<string, number>> = {
  mm: 0.1,
  cm: 1,
  m: 100,
  in: 2.54,
  ft: 30.48,
  yd: 91.44,
};

/** Names of shapes as they are read in a sentence. */
export const SHAPE_WORDS: readonly (readonly [string, string])[] = Object.entries<ShapeNames>(
  SHAPE_NAMES,
).flatMap(([shape, { names, within = [] }]) => [...names, ...within].map((name) => [name, shape] as const));

export const STITCH_WORDS: readonly (readonly [string, string])[] = [
  ['half double crochet', 'hdc'],
  ['half double crochets', 'hdc'],
  ['half doubles', 'hdc'],
  ['half double', 'hdc'],
  ['half treble crochet', 'htr'],
  ['half trebles', 'htr'],
  ['half treble', 'htr'],
  ['double treble', 'dtr'],
  ['single crochet', 'sc'],
  ['single crochets', 'sc'],
  ['double crochet', 'dc'],
  ['double crochets', 'dc'],
  ['treble crochet', 'tr'],
  ['triple crochet', 'tr'],
  ['trebles', 'tr'],
  ['treble', 'tr'],
  ['hdc', 'hdc'],
  ['hdcs', 'hdc'],
  ['htr', 'htr'],
  ['htrs', 'htr'],
  ['dtr', 'dtr'],
  ['scs', 'sc'],
  ['sc', 'sc'],
  ['dcs', 'dc'],
  ['dc', 'dc'],
  ['trs', 'tr'],
  ['tr', 'tr'],
];

export const YARN_NAMES: readonly (readonly [string, string])[] = [
  ['double knitting', 'dk'],
  ['double knit', 'dk'],
  ['dk', 'dk'],
  ['light worsted', 'light worsted'],
  ['worsted', 'worsted'],
  ['aran', 'aran'],
  ['super chunky', 'super bulky'],
  ['super bulky', 'super bulky'],
  ['chunky', 'chunky'],
  ['bulky', 'bulky'],
  ['super fine', 'super fine'],
  ['fingering', 'fingering'],
  ['sport weight', 'sport'],
  ['sportweight', 'sport'],
  ['sport', 'sport'],
  ['sock weight', 'sock'],
  ['sock yarn', 'sock'],
  ['lace weight', 'lace'],
  ['laceweight', 'lace'],
  ['jumbo', 'jumbo'],
  ['medium weight', 'medium'],
];

/** Every word of these tables, and of the tables of terms and sizes: none of them is a misspelt other one. */
export const TABLE_WORDS: ReadonlySet<string> = new Set(
  [
    ...UNIT_OF_LENGTH.keys(),
    ...UNIT_OF_WEIGHT.keys(),
    ...[...SHAPE_WORDS, ...STITCH_WORDS, ...YARN_NAMES].map(([name]) => name),
    ...TERM_WORDS,
    ...SIZE_NAMES,
    ...Object.keys(SIZE_WORDS),
  ].flatMap((name) => name.toLowerCase().split(/[^\p{L}]+/u)),
);
