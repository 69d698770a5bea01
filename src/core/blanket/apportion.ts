/**
 * Whole numbers in proportion: so many places shared out by shares. The method of largest remainders, as published
 * (math.libretexts.org, *Math in Society*, Lippman, 4.2): everybody gets the whole part of her quota, and the places
 * left over go to the largest fractions.
 */
import { Problem } from '../base/problem.ts';
import { formula, type Working } from '../base/working.ts';

export const QUOTA = formula({
  label: 'Exact share',
  formula: 'places * share / shares_total',
  given: { places: '', share: '', shares_total: '' },
  unit: '',
  source: 'largest remainders, published (math.libretexts.org, Math in Society, 4.2)',
});

export interface Apportioned {
  /** Whole places, in the order of the shares; their sum is the number of places. */
  readonly quotas: readonly number[];
  /** Places that were left after the whole parts, each given to one share. */
  readonly left: number;
  /** The shares that got one of them, the largest fraction first. */
  readonly given: readonly number[];
  /** True where two shares with the same fraction stood at the line, and the tie was settled by rule. */
  readonly tied: boolean;
  /** The quotas as they would be had one such tie been settled the other way; none where there is no tie. */
  readonly otherwise: readonly (readonly number[])[];
}

/** Shares are compared exactly to six decimals. */
const SCALE = 1e6;

/**
 * Shares `places` out in proportion to `shares` by largest remainders. Equal fractions: the larger share goes first,
 * then the one that stands first. Fractions are compared as whole numbers, so that rounding settles nothing.
 *
 * Throws Problem: no-shares, where every share is 0; a plain Error (a fault of ours) for a negative or endless share.
 *
 * @example
 * apportion(20, [5, 3, 1]).quotas // → [11, 7, 2]
 */
export function apportion(places: number, shares: readonly number[]): Apportioned {
  if (!Number.isInteger(places) || places < 0 || shares.some((share) => !(share >= 0 && share < 1e12)))
    throw new Error(`cannot share ${places} by ${shares.join(', ')}`);
  const whole = shares.every((share) => Number.isInteger(share));
  const parts = shares.map((share) => (whole ? share : Math.round(share * SCALE)));
  const sum = parts.reduce((all, part) => all + part, 0);
  if (sum === 0)
    throw new Problem('no-shares', 'Nothing is left to share by: every share is 0.', {
      hint: 'Give at least one share above 0.',
    });
  const { floors, rests } =
    sum * Math.max(places, 1) <= Number.MAX_SAFE_INTEGER ? divided(places, parts, sum) : long(places, parts);
  const left = places - floors.reduce((all, floor) => all + floor, 0);
  const order = shares
    .map((_, index) => index)
    .sort((a, b) => compare(rests[b] ?? 0, rests[a] ?? 0) || compare(parts[b] ?? 0, parts[a] ?? 0) || a - b);
  const given = order.slice(0, left);
  const last = given.at(-1);
  const next = order[left];
  const quotas = [...floors];
  for (const index of given) quotas[index] = (quotas[index] ?? 0) + 1;
  const atLine = (index: number) => last !== undefined && compare(rests[last] ?? 0, rests[index] ?? 0) === 0;
  const tied = next !== undefined && atLine(next);
  const without = tied ? order.slice(left).filter(atLine) : [];
  return {
    quotas,
    left,
    given,
    tied,
    // Made when it is asked for: of many equal shares there are as many as pairs of them.
    get otherwise() {
      return given
        .filter((taken) => tied && atLine(taken))
        .flatMap((taken) =>
          without.map((instead) =>
            quotas.map((quota, index) => quota + (index === instead ? 1 : index === taken ? -1 : 0)),
          ),
        );
    },
  };
}

const compare = (a: number | bigint, b: number | bigint) => (a < b ? -1 : a > b ? 1 : 0);

function divided(places: number, parts: readonly number[], sum: number) {
  const rests = parts.map((part) => (part * places) % sum);
  return { rests, floors: parts.map((part, index) => (part * places - (rests[index] ?? 0)) / sum) };
}

/** The same with whole numbers of any length. */
function long(places: number, parts: readonly number[]) {
  const all = parts.map(BigInt);
  const sum = all.reduce((total, part) => total + part, 0n);
  return {
    rests: all.map((part) => (part * BigInt(places)) % sum),
    floors: all.map((part) => Number((part * BigInt(places)) / sum)),
  };
}

/** Shares places out and writes each exact share down; `named` says whose it is. */
export function showApportioned(
  working: Working,
  places: number,
  shares: readonly { readonly name: string; readonly share: number }[],
): Apportioned {
  const result = apportion(
    places,
    shares.map(({ share }) => share),
  );
  const shares_total = shares.reduce((all, { share }) => all + share, 0);
  for (const { name, share } of shares)
    working.do(QUOTA, { places, share, shares_total }, `Exact share of ${name}`);
  return result;
}
