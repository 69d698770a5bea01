/** How motifs are turned where no setting says it: each kind its own way, or at random from a seed. */
import { seedChance } from '../base/chance.ts';
import { Problem } from '../base/problem.ts';
import { letter, readByKind } from './by-kind.ts';

/** Quarter turns clockwise, kind by kind; or every place its own, left to chance. */
export type Turnings = 'random' | readonly number[];

const RANDOM = /^(random|randomly|at random|mixed|chance)$/i;

/**
 * Turnings as they are typed: `A 0, B 1, C 2` in quarter turns clockwise (or `B 90` in degrees), or `random`. Kinds left out are
 * not turned. Throws a Problem where a kind is unknown, named twice, or not turned by quarters.
 */
export function readTurnings(text: string, names: readonly string[]): Turnings {
  if (RANDOM.test(text.trim())) return 'random';
  const option = 'turnings';
  const hint = `Write each kind with its quarter turns clockwise, 0 to 3, like ${names.length > 1 ? 'A 0, B 1' : 'A 1'}; or random.`;
  return readByKind(text, names, { option, hint }).map((number, kind) => {
    const turns = number === undefined ? 0 : number >= 90 ? number / 90 : number;
    if (Number.isInteger(turns) && turns <= 3) return turns;
    throw new Problem('no-quarter-turn', `Kind ${letter(kind)} cannot be turned by ${number ?? 0}.`, {
      option,
      hint,
      facts: { turns: number ?? 0 },
    });
  });
}

/** Two kinds to a digit, so that the turnings of all kinds there can be stay short. */
const KINDS_A_DIGIT = 2;

/** `random`, or `by-kind-` and a digit to 15 for every two kinds: read back by `readTurnedBy`. */
export function writeTurnedBy(turnings: Turnings): string {
  if (turnings === 'random') return turnings;
  let digits = '';
  for (let kind = 0; kind < turnings.length; kind += KINDS_A_DIGIT)
    digits += ((turnings[kind] ?? 0) + 4 * (turnings[kind + 1] ?? 0)).toString(16);
  return `by-kind-${digits}`;
}

/** What `writeTurnedBy` wrote; undefined for anything else. Kinds beyond those it was written for are not turned. */
export function readTurnedBy(text: string): Turnings | undefined {
  if (text === 'random') return text;
  const digits = /^by-kind-([0-9a-f]{1,13})$/.exec(text)?.[1];
  return digits === undefined
    ? undefined
    : [...digits].flatMap((digit) => {
        const two = Number.parseInt(digit, 16);
        return [two % 4, Math.floor(two / 4)];
      });
}

/** The quarter turns of each place, row by row, from the kinds that lie there. The same seed turns them the same way. */
export function turnsOf(turnings: Turnings, kinds: readonly number[], seed: number): number[] {
  if (turnings !== 'random') return kinds.map((kind) => turnings[kind] ?? 0);
  const chance = seedChance(seed);
  return kinds.map(() => Math.floor(chance() * 4));
}

/** `A as it is, B a quarter turn clockwise`: for people. */
export function writeTurnings(turnings: Turnings, kinds: number): string {
  if (turnings === 'random') return 'each motif at random';
  const ways = ['as it is', 'a quarter turn clockwise', 'half a turn', 'a quarter turn anticlockwise'];
  return Array.from(
    { length: kinds },
    (_, kind) => `${letter(kind)} ${ways[turnings[kind] ?? 0] ?? ''}`,
  ).join(', ');
}
