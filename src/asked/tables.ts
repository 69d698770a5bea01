/** Names and units as people spell them, beyond what the readers of options take: each with what the readers take. */
import { SIZE_NAMES } from '../core/lookup/size.ts';
import { TERM_WORDS } from '../core/lookup/term.ts';
import { SIZE_WORDS } from '../standards/sizes.ts';

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

/** Names of shapes in the trade, longest first. */
export const SHAPE_WORDS: readonly (readonly [string, string])[] = [
  ...[
    'solid granny square',
    'solid granny',
    'solid square',
    'solid squares',
    'solid grannies',
    'solid granny squares',
    'filled granny square',
    'filled square',
  ].map((name) => [name, 'solid-square'] as const),
  ...['corner to corner', 'corner 2 corner', 'c2c', 'c 2 c', 'ctc'].map((name) => [name, 'blocks'] as const),
  ...[
    'diagonal square',
    'diagonal squares',
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
  ].map((name) => [name, 'diagonal'] as const),
  ...['classic granny', 'granny square', 'granny squares', 'granny', 'grannies', 'grannys', "granny's"].map(
    (name) => [name, 'clusters'] as const,
  ),
  ...[
    'granny hexagon',
    'granny hexagons',
    'hexagon granny',
    'hexagon',
    'hexagons',
    'hexie',
    'hexies',
    'hexi',
    'hexy',
    'hexi s',
    'hex',
  ].map((name) => [name, 'hexagon'] as const),
  ...[
    'granny circle',
    'granny circles',
    'flat circle',
    'circle',
    'circles',
    'disc',
    'mandala',
    'round coaster',
    'coaster',
  ].map((name) => [name, 'circle'] as const),
  ...[
    'flat blanket',
    'flat piece',
    'flat panel',
    'flat rectangle',
    'flat scarf',
    'plain rectangle',
    'scarf',
    'flat strip',
  ].map((name) => [name, 'flat'] as const),
];

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
