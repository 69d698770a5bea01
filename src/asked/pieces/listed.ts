/** Names of several words, found by their first one. */
import type { Phrase } from './phrase.ts';

export type Listed = ReadonlyMap<
  string,
  readonly { readonly words: readonly string[]; readonly value: string }[]
>;

/** Names with what they stand for, the longest of those that begin alike first. */
export function listByFirst(pairs: readonly (readonly [name: string, value: string])[]): Listed {
  const byFirst = new Map<string, { words: string[]; value: string }[]>();
  for (const [name, value] of pairs) {
    const words = name.split(' ');
    const first = words[0] ?? '';
    const listed = byFirst.get(first);
    if (listed) listed.push({ words, value });
    else byFirst.set(first, [{ words, value }]);
  }
  for (const listed of byFirst.values()) listed.sort((a, b) => b.words.length - a.words.length);
  return byFirst;
}

/** The longest listed name that stands at a token, dashes between its words allowed. */
export function listedAt(
  listed: Listed,
  phrase: Phrase,
  at: number,
): { readonly value: string; readonly to: number } | undefined {
  if (phrase.tokens[at]?.kind !== 'word') return undefined;
  for (const { words, value } of listed.get(phrase.word(at)) ?? []) {
    let next = at;
    const fits = words.every((part) => {
      if (next > at && phrase.word(next) === '-') next++;
      return phrase.word(next++) === part;
    });
    if (fits) return { value, to: next };
  }
  return undefined;
}
