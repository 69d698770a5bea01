/** Chance for simulations, from a seed: `SEED=…` before the command draws another. */
import type { Chance } from '../src/core/base/chance.ts';

const { SEED } = process.env;
export const seedHere = SEED === undefined || SEED === '' ? 20_260_301 : Number(SEED);

/** A draw of the standard normal distribution (Box and Muller). */
export const normal = (roll: Chance): number =>
  Math.sqrt(-2 * Math.log(1 - roll())) * Math.cos(2 * Math.PI * roll());
