/**
 * Stitches by all their names, and the abbreviations of written patterns.
 *
 * Names side by side: sugarplumcrochet.wordpress.com, "decoding crochet patterns"; mkcarroll.com, 2009;
 * funcrochetdesigns.com, "Crochet terms by country" (double treble). One yarn over fewer in the US name:
 * interweave.com, "Converting British crochet patterns", 2017. Chart symbols: dailyhandmade.com/?p=2036. How each is
 * worked: common practice.
 */
import { TERMS } from './terms.ts';

export interface StitchName {
  /** Abbreviations and names, the usual one first. */
  readonly US: readonly string[];
  readonly UK: readonly string[];
  /** How it is worked, without a name that could be taken for another stitch. */
  readonly how: string;
  readonly symbol?: string;
  readonly source: string;
  /** Where an older or another use gives the name a second meaning. */
  readonly trap?: string;
}

const SIDE_BY_SIDE = 'sugarplumcrochet.wordpress.com, “decoding crochet patterns”; interweave.com, 2017';

export const STITCH_NAMES: readonly StitchName[] = [
  {
    US: [TERMS.ch.US, 'chain'],
    UK: [TERMS.ch.UK, 'chain'],
    how: 'yarn over, pull through the loop on the hook',
    symbol: 'open oval',
    source: SIDE_BY_SIDE,
  },
  {
    US: [TERMS['sl st'].US, 'slip stitch', 'ss'],
    UK: [TERMS['sl st'].UK, 'slip stitch', 'sl st'],
    how: 'hook in, yarn over, pull through everything at once',
    symbol: 'filled dot or oval',
    source: `${SIDE_BY_SIDE}; “ss” in a UK magazine of 2020`,
    trap: 'Very old patterns call this one “single crochet”, and a term table still prints it so for the UK (FrancophonIA/crochet_terms): if the work never grows taller, this is what is meant.',
  },
  {
    US: [TERMS.sc.US, 'single crochet', 'single'],
    UK: [TERMS.sc.UK, 'double crochet'],
    how: 'hook in, yarn over and pull a loop up, yarn over and through both loops',
    symbol: '× or +',
    source: SIDE_BY_SIDE,
    trap: 'In very old patterns “single crochet” is the slip stitch (FrancophonIA/crochet_terms still prints it).',
  },
  {
    US: [TERMS.hdc.US, 'half double crochet', 'half double'],
    UK: [TERMS.hdc.UK, 'half treble', 'half treble crochet'],
    how: 'yarn over, hook in and pull a loop up, yarn over and through all three loops',
    symbol: 'plain T',
    source: SIDE_BY_SIDE,
  },
  {
    US: [TERMS.dc.US, 'double crochet'],
    UK: [TERMS.dc.UK, 'treble', 'treble crochet'],
    how: 'yarn over, hook in and pull a loop up, then yarn over and through two loops, twice',
    symbol: 'T with one slash',
    source: SIDE_BY_SIDE,
  },
  {
    US: [TERMS.tr.US, 'treble', 'triple', 'treble crochet', 'triple crochet'],
    UK: [TERMS.tr.UK, 'double treble'],
    how: 'yarn over twice, hook in and pull a loop up, then yarn over and through two loops, three times',
    symbol: 'T with two slashes',
    source: SIDE_BY_SIDE,
  },
  {
    US: [TERMS.dtr.US, 'double treble'],
    UK: [TERMS.dtr.UK, 'triple treble', 'ttr'],
    how: 'yarn over three times, hook in and pull a loop up, then yarn over and through two loops, four times',
    symbol: 'T with three slashes (from memory)',
    source: 'funcrochetdesigns.com, “Crochet terms by country”',
  },
  {
    US: ['gauge'],
    UK: ['tension'],
    how: 'how many stitches and rows fill a length',
    source: 'agoodhooker.blogspot.com/p/yarns.html',
  },
  {
    US: ['yo', 'yarn over'],
    UK: ['yoh', 'yarn over hook', 'yrh', 'yarn round hook'],
    how: 'lay the yarn over the hook',
    source: 'from memory: the US trade association’s booklet, p. 2',
  },
  {
    US: ['sk', 'skip'],
    UK: ['miss'],
    how: 'pass over a stitch without working into it',
    source: 'from memory: the US trade association’s booklet, p. 2',
  },
];

/** Said of the whole table below. */
export const ABBREVIATIONS_SOURCE =
  'from memory: the US trade association’s booklet, p. 1; most also at danceswithwools.net, 16 September 2022';

/** Abbreviations that mean the same in the US and the UK, or belong to no stitch. */
export const ABBREVIATIONS: readonly { readonly short: string; readonly means: string }[] = [
  { short: 'beg', means: 'begin, beginning' },
  { short: 'bet', means: 'between' },
  { short: 'BL', means: 'back loop' },
  { short: 'BLO', means: 'back loop only' },
  { short: 'BP', means: 'back post: round the stem, from behind' },
  { short: 'CC', means: 'contrasting colour' },
  { short: 'ch-sp', means: 'chain space: the gap under chains' },
  { short: 'CL', means: 'cluster' },
  { short: 'cont', means: 'continue' },
  { short: 'dc2tog', means: 'two together: two of them closed as one (which stitch depends on whose terms)' },
  { short: 'dec', means: 'decrease: one stitch fewer' },
  { short: 'FL', means: 'front loop' },
  { short: 'FLO', means: 'front loop only' },
  { short: 'FP', means: 'front post: round the stem, from in front' },
  { short: 'inc', means: 'increase: one stitch more' },
  { short: 'lp', means: 'loop' },
  { short: 'MC', means: 'main colour' },
  { short: 'pat', means: 'pattern' },
  { short: 'pm', means: 'place marker' },
  { short: 'prev', means: 'previous' },
  { short: 'rem', means: 'remaining' },
  { short: 'rep', means: 'repeat' },
  { short: 'rnd', means: 'round' },
  { short: 'RS', means: 'right side' },
  { short: 'sc2tog', means: 'two US single crochet closed as one: one stitch fewer' },
  { short: 'sp', means: 'space' },
  { short: 'st', means: 'stitch' },
  { short: 't-ch', means: 'turning chain' },
  { short: 'tch', means: 'turning chain' },
  { short: 'tbl', means: 'through the back loop' },
  { short: 'tog', means: 'together' },
  { short: 'WS', means: 'wrong side' },
  { short: '*', means: 'repeat from the asterisk' },
  { short: '[ ]', means: 'work what is in the brackets the stated number of times' },
  { short: '( )', means: 'work what is in the brackets as one group, in one place' },
];

/** `ch-5` and `ch 5`: a loop that is there, and chains to be made. Source: reference.com, "What do stitch abbreviations mean". */
export const CHAIN_LOOP_SOURCE = 'reference.com, “What do stitch abbreviations mean”';

/** Words that this program's own answers and instructions use, beside those of the tables above. Common practice. */
export const CRAFT_WORDS: readonly { readonly names: readonly string[]; readonly means: string }[] = [
  {
    names: ['hdc2tog', 'htr2tog'],
    means:
      'two together in US hdc (UK htr): yarn over and draw a loop up in each of two stitches, then through all five loops; one stitch fewer',
  },
  {
    names: ['tr2tog'],
    means: 'two together: two of them closed as one (which stitch depends on whose terms)',
  },
  {
    names: ['magic ring', 'magic circle', 'adjustable ring'],
    means: 'a loop of yarn that the first round is worked into and that is then drawn shut',
  },
  {
    names: ['blocking', 'wet blocking'],
    means:
      'pinning the finished piece to its measures, damp or wet, and letting it dry so; heat stretches acrylic for good',
  },
  {
    names: ['whip stitch', 'whipstitch', 'overcast', 'overcasting'],
    means: 'sewing two edges together over and over, the needle always from the same side',
  },
  {
    names: ['foundation chain', 'starting chain', 'base chain'],
    means: 'the chain that the first row is worked into; the loop on the hook never counts',
  },
  {
    names: ['turning chain', 'turning chains'],
    means:
      'chains at the start of a row that bring the hook up to its height; whether they count as a stitch depends on the stitch',
  },
  {
    names: ['make along', 'crochet along'],
    means: 'a pattern that many make at the same time, part by part',
  },
  { names: ['motif', 'motifs'], means: 'one piece of many that are joined, like a square' },
  {
    names: ['cluster', 'clusters', 'granny cluster'],
    means: 'a group of stitches in one place, here three tall ones',
  },
  {
    names: ['granny square', 'granny'],
    means:
      'a square worked from its middle in rounds of clusters, with a gap after each and two clusters in every corner',
  },
  { names: ['block', 'c2c block'], means: 'in corner-to-corner work: a short chain and three tall stitches' },
  { names: ['corner to corner', 'c2c'], means: 'worked slantwise from one corner to the opposite one' },
  { names: ['row end', 'row ends'], means: 'the side of a row, where it was turned' },
  {
    names: ['weave in', 'weave in ends', 'ends'],
    means: 'hiding the tails of yarn in the cloth with a needle, some passes there and back',
  },
  { names: ['carry', 'carried', 'carrying'], means: 'taking a colour up the side instead of cutting it' },
  {
    names: ['dye lot', 'dye lots'],
    means: 'yarn coloured together; another lot of the same colour may look different',
  },
  {
    names: ['fasten off', 'finish off'],
    means: 'cutting the yarn and drawing its end through the last loop',
  },
  { names: ['frog', 'frogging', 'rip back'], means: 'pulling rows out again' },
  { names: ['swatch'], means: 'a small piece worked to measure or weigh before the real one' },
  {
    names: ['wpi', 'wraps per inch', 'wraps'],
    means: 'how often the yarn lies side by side round an inch: how thick it is',
  },
];

/**
 * German names, as published at code-knacker.de/haekelschrift.htm. The English beside each follows from how the stitch is worked.
 */
export const GERMAN_SOURCE = 'code-knacker.de/haekelschrift.htm; the English by how the stitch is worked';
export const GERMAN_NAMES: readonly {
  readonly names: readonly string[];
  readonly US: string;
  readonly UK: string;
}[] = [
  { names: ['lm', 'luftmasche'], US: 'ch', UK: 'ch' },
  { names: ['km', 'kettm', 'kettmasche'], US: 'sl st', UK: 'ss' },
  { names: ['fm', 'feste masche'], US: 'sc', UK: 'dc' },
  { names: ['hstb', 'halbes stäbchen'], US: 'hdc', UK: 'htr' },
  { names: ['stb', 'stäbchen'], US: 'dc', UK: 'tr' },
  { names: ['dstb', 'doppeltes stäbchen'], US: 'tr', UK: 'dtr' },
  { names: ['dreifstb', 'dreifaches stäbchen'], US: 'dtr', UK: 'trtr' },
  { names: ['fr', 'fadenring'], US: 'magic ring', UK: 'magic ring' },
  { names: ['masche'], US: 'stitch', UK: 'stitch' },
  { names: ['abn', 'abnahme'], US: 'decrease', UK: 'decrease' },
];
