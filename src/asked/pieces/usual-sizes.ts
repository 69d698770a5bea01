/** Whom or what a blanket is for, by the names of usual sizes. */
import { SIZE_NAMES } from '../../core/lookup/size.ts';
import { SIZE_WORDS } from '../../standards/sizes.ts';
import type { Phrase, Recogniser } from './phrase.ts';

const NAMES = new Set([...SIZE_NAMES, ...Object.keys(SIZE_WORDS)]);
/** Names of sizes that are everyday words too: taken only beside a bed or the word size. */
const ONLY_BESIDE = new Set(['single', 'double', 'full', 'child', 'teen', 'knee', 'children', 'teenager']);

/** The longest name of a size at a token: up to three words. */
function nameAt(phrase: Phrase, at: number): { readonly name: string; readonly to: number } | undefined {
  for (let length = 3; length >= 1; length--) {
    if (at + length > phrase.tokens.length) continue;
    const name = [phrase.text(at), ...phrase.between(at + 1, at + length)].join(' ');
    if (NAMES.has(name)) return { name, to: at + length };
  }
  return undefined;
}

export const usualSize: Recogniser = {
  example: ['for a uk king size bed', 'for:uk king'],
  read: (phrase, at) => {
    const found = phrase.tokens[at]?.kind === 'word' ? nameAt(phrase, at) : undefined;
    if (!found) return undefined;
    const { name, to } = found;
    const before = phrase.word(at - 1);
    const beside = /^(bed|beds|size|sized|mattress|blanket|-)$/.test(phrase.word(to)) || before === 'size';
    if (ONLY_BESIDE.has(name) && !beside) return undefined;
    const whose = /^(uk|british)$/.test(before) ? 'uk ' : /^(us|american)$/.test(before) ? 'us ' : '';
    return phrase.putOver({ kind: 'for', text: `${whose}${name}`, from: at, to, must: false });
  },
};
