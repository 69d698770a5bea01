import { distance } from 'fastest-levenshtein';

/** The nearest of some names to what was typed, for "did you mean"; undefined where none is near. */
export function nearest(typed: string, names: readonly string[]): string | undefined {
  const wanted = typed.toLowerCase().slice(0, 64);
  let best: string | undefined;
  let least = Math.max(2, Math.floor(wanted.length / 3)) + 1;
  for (const name of names) {
    const steps = distance(wanted, name.toLowerCase());
    if (steps < least) {
      least = steps;
      best = name;
    }
  }
  return best;
}

/** All names, the nearest to what was typed first: for a list of what would work. */
export const byNearness = (typed: string, names: readonly string[]): string[] =>
  [...names].sort(
    (a, b) =>
      distance(typed.toLowerCase().slice(0, 64), a.toLowerCase()) -
      distance(typed.toLowerCase().slice(0, 64), b.toLowerCase()),
  );
