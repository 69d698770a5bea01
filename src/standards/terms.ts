/**
 * Trade terms, US and UK. Sources: stitch names, published side by side (sugarplumcrochet.wordpress.com,
 * "decoding crochet patterns"; interweave.com, "Converting British crochet patterns", 2017, for the rule that the
 * US name is one yarn-over fewer); gauge and tension: agoodhooker.blogspot.com/p/yarns.html; skip and miss, and
 * yarn over: from memory (the US trade association's booklet, p. 2).
 */
export interface TermPair {
  readonly US: string;
  readonly UK: string;
}

export const TERMS = {
  ch: { US: 'ch', UK: 'ch' },
  'sl st': { US: 'sl st', UK: 'ss' },
  sc: { US: 'sc', UK: 'dc' },
  hdc: { US: 'hdc', UK: 'htr' },
  dc: { US: 'dc', UK: 'tr' },
  tr: { US: 'tr', UK: 'dtr' },
  dtr: { US: 'dtr', UK: 'trtr' },
  chain: { US: 'chain', UK: 'chain' },
  'slip stitch': { US: 'slip stitch', UK: 'slip stitch' },
  'single crochet': { US: 'single crochet', UK: 'double crochet' },
  'half double crochet': { US: 'half double crochet', UK: 'half treble' },
  'double crochet': { US: 'double crochet', UK: 'treble' },
  treble: { US: 'treble', UK: 'double treble' },
  'double treble': { US: 'double treble', UK: 'triple treble' },
  gauge: { US: 'gauge', UK: 'tension' },
  Gauge: { US: 'Gauge', UK: 'Tension' },
  'yarn over': { US: 'yarn over', UK: 'yarn over hook' },
  skip: { US: 'skip', UK: 'miss' },
  Skip: { US: 'Skip', UK: 'Miss' },
} as const satisfies Record<string, TermPair>;

export type Term = keyof typeof TERMS;
