/** A border’s rounds in words, under the figures of an answer. */
import type { WrittenBorder } from '../../src/core/edges/written-border.ts';

export const writtenLines = ({ before, rounds, after }: WrittenBorder): string[] => [
  'In words:',
  ...before,
  ...rounds,
  ...after,
];
