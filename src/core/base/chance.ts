/** Chance that is handed in: the same seed gives the same run of numbers on every machine. */
export type Chance = () => number;

/**
 * Numbers from 0 up to 1 from a whole seed (mulberry32, a public-domain generator, constants from memory; that it spreads
 * well enough for scattering colours is all that is asked of it).
 */
export function seedChance(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export const MOST_SEED = 9999;

/** Another seed of the same range: the one after, and the first after the last. */
export const nextSeed = (seed: number): number => (seed % MOST_SEED) + 1;

/** A whole seed from 1 to 9999 from a name, so that a blanket scatters the same way whenever it is asked. */
export function seedOf(name: string): number {
  let hash = 7;
  for (const letter of name.toLowerCase()) hash = (Math.imul(hash, 31) + (letter.codePointAt(0) ?? 0)) >>> 0;
  return nextSeed(hash);
}

/** The list in an order left to chance, every order as likely as the next. */
export function shuffle<T>(list: readonly T[], chance: Chance): T[] {
  const mixed = [...list];
  for (let last = mixed.length - 1; last > 0; last--) {
    const other = Math.floor(chance() * (last + 1));
    [mixed[last], mixed[other]] = [mixed[other] as T, mixed[last] as T];
  }
  return mixed;
}
