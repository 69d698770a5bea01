/**
 * The sum of numbers; 0 of none.
 *
 * @example
 * sum([3, 5, 7]) // → 15
 */
export const sum = (numbers: readonly number[]): number => numbers.reduce((all, one) => all + one, 0);
