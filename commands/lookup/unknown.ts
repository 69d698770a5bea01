/** What is said where a word stands in no table. */
import { findNearest } from '../../src/core/base/nearest-name.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { clip } from '../../src/core/base/quantity.ts';

/** Offers while typing: the names that hold what was typed, those that begin with it first. */
export const offers = (names: readonly string[]) => (typed: string) => {
  const text = typed.trim().toLowerCase();
  const holding = names.filter((name) => name.toLowerCase().includes(text));
  const begins = (name: string) => name.toLowerCase().startsWith(text);
  return [...holding.filter(begins), ...holding.filter((name) => !begins(name))].map((value) => ({ value }));
};

/** The refusal of a word that stands in no table, with the nearest one that does. */
export function unknown(option: string, typed: string, names: readonly string[], example: string): Problem {
  const near = findNearest(typed, names);
  return new Problem('in-no-table', `“${clip(typed)}” stands in no table here.`, {
    option,
    hint: near === undefined ? example : `Did you mean ${near}? ${example}`,
  });
}
