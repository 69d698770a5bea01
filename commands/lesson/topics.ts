/** What people call the matter of a lesson, in plain words: senses, and words with underlines for spaces. */
import { SENSES } from '../../src/asked/words.ts';

const CALLED: Readonly<Record<string, string>> = {
  reading:
    'read_my_stitches reading_stitches read_stitches reading_my_stitches count_rows count_my_rows counting_rows',
  names: 'uk us terms',
  growing: 'grow corner_to_corner c2c',
  shrinking: 'widest_row shrinking',
  'which-row': 'which_row',
  'where-wrong': 'mistake',
  swatch: 'swatch',
  gauge: 'gauge',
  diamond: 'diamond blocked',
  colours: 'colour',
  ends: 'weave_in weaving_in ends',
  weighing: 'weigh',
  balls: 'ball dye-lot',
  'running-out': 'enough',
  spacing: 'evenly',
  repeats: 'repeat chain',
  'how-many': 'how-many',
  joining: 'join',
  border: 'border',
  rounds: 'round_by_round',
  quotas: 'quota quotas',
};

export const TOPICS = CALLED;

/** The senses among them, as alternatives of a way of asking. */
export const SENSES_OF_TOPICS = [
  'topic',
  ...new Set(
    Object.values(CALLED)
      .flatMap((called) => called.split(' '))
      .filter((word) => Object.hasOwn(SENSES, word)),
  ),
].join('|');
