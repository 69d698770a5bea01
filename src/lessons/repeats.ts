/** Repeats, and the chain they are worked on. */
import { FOUNDATION_CHAIN, REPEATED, findRepeat } from '../core/rows/repeat.ts';
import { t } from '../core/base/reader.ts';
import { STITCHES } from '../standards/stitches.ts';
import { lesson, pick, stepsOf } from './lesson.ts';

interface Repeated {
  readonly multiple: number;
  readonly plus: number;
  readonly repeats: number;
  readonly stitch: number;
}

const stitchOf = ({ stitch }: Pick<Repeated, 'stitch'>) => STITCHES[stitch] ?? 'sc';
const countOf = ({ multiple, plus, repeats }: Repeated) => multiple * repeats + plus;
const find = (given: Repeated) => findRepeat({ ...given, near: countOf(given), stitch: stitchOf(given) });

export const repeats = lesson({
  name: 'repeats',
  title: 'Repeats and the foundation chain',
  needs: ['reading'],
  idea: `“Multiple of 6 plus 4” means: so many sixes as you like, and 4 more once. The foundation chain has some chains besides, for the turn of the first row: 1 for ${t('sc')}, 1 for ${t('hdc')}, 2 for ${t('dc')}, 3 for ${t('tr')}, where the skipped chains stand as the first stitch.`,
  example: {
    given: { multiple: 6, plus: 4, repeats: 11, stitch: 2 },
    line: 'stitches repeat multiple:6 plus:4 near:70 stitch:dc',
    figure: 'foundation_chain',
  },
  practice: {
    draw: (chance) => ({
      multiple: pick(chance, 4, 14),
      plus: pick(chance, 2, 7),
      repeats: pick(chance, 5, 20),
      stitch: pick(chance, 0, 3),
    }),
    says: (given) =>
      `A pattern is a multiple of ${given.multiple} plus ${given.plus}, and you want ${given.repeats} repeats in ${t(stitchOf(given))}. How many chains do you make?`,
    asks: () => ({ kind: 'count', of: 'chains' }),
    solve(given) {
      const { foundationChain, working } = find(given);
      return { value: foundationChain, working: stepsOf(working, REPEATED, FOUNDATION_CHAIN) };
    },
    slips: [
      {
        key: 'chain-forgotten',
        value: (given) => countOf(given),
        says: (given) =>
          `Those are the stitches. The first row of ${t(stitchOf(given))} needs chains to turn with besides.`,
      },
      {
        key: 'plus-forgotten',
        value: (given) => find(given).foundationChain - given.plus,
        says: ({ plus }) => `The plus is missing: ${plus} more, once, at the edge.`,
      },
      {
        key: 'plus-each-time',
        value: (given) => find(given).foundationChain + given.plus * (given.repeats - 1),
        says: () => 'The plus was added to every repeat. It stands once, at the edge of the whole row.',
      },
      {
        key: 'chain-twice',
        value: (given) => 2 * find(given).foundationChain - countOf(given),
        says: () => 'The chains for the turn are in twice. They are made once, at the end of the foundation.',
      },
      {
        key: 'one-repeat-fewer',
        value: (given) => find(given).foundationChain - given.multiple,
        says: () => 'One repeat is missing. Multiply once more.',
      },
    ],
    first: () =>
      'How many stitches are all repeats together? Then the plus, once; then the chains for the turn.',
  },
});
