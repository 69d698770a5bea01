/** Reading one's stitches: what counts as one, and what does not. */
import { STITCHES_SEEN } from '../core/rows/tops.ts';
import { t } from '../core/base/reader.ts';
import { STITCH_FACTS, STITCHES } from '../standards/stitches.ts';
import { lesson, pick, solveBy } from './lesson.ts';

const stitchOf = ({ stitch }: { readonly stitch: number }) => STITCHES[stitch] ?? 'sc';
const countsOf = (given: { readonly stitch: number }) => Number(STITCH_FACTS[stitchOf(given)].chainCounts);

export const reading = lesson({
  name: 'reading',
  title: 'Reading your stitches',
  needs: [],
  idea: `Seen from above, every stitch shows a V along the top edge; count those. The turning chain at the beginning counts as a stitch in ${t('hdc')}, ${t('dc')} and ${t('tr')} unless your pattern says otherwise, in ${t('sc')} it does not. The loop on the hook never counts.`,
  example: {
    given: { stitch: 2, tops: 19 },
    line: 'lookup term term:"turning chain"',
  },
  draws: 'edge',
  practice: {
    draw: (chance) => ({ stitch: pick(chance, 0, 3), tops: pick(chance, 12, 48) }),
    says: (given) =>
      `A row of ${t(stitchOf(given))} begins with its turning chain, and behind the chain you count ${given.tops} Vs along the top edge. How many stitches has the row?`,
    asks: () => ({ kind: 'count', of: 'stitches' }),
    solve: (given) => solveBy(STITCHES_SEEN, { tops: given.tops, chain_counted: countsOf(given) }),
    slips: [
      {
        key: 'chain-left-out',
        value: (given) => (countsOf(given) === 1 ? given.tops : undefined),
        says: (given) =>
          `The turning chain was left out. In ${t(stitchOf(given))} it stands as the first stitch: lay a finger on it and begin to count there.`,
      },
      {
        key: 'chain-counted',
        value: (given) => (countsOf(given) === 0 ? given.tops + 1 : undefined),
        says: (given) =>
          `The turning chain was counted. In ${t(stitchOf(given))} it only lifts the row and is no stitch: begin with the first V behind it.`,
      },
      {
        key: 'loop-counted',
        value: (given) => (countsOf(given) === 1 ? given.tops + 2 : undefined),
        says: () =>
          'The loop on the hook was counted too. Take the hook out in your thoughts: what remains is the row.',
      },
      {
        key: 'last-left-out',
        value: (given) => given.tops - 1,
        says: () =>
          'One too few of the Vs: the last one hides at the edge. Tug at the edge a little and look for it before you count.',
      },
    ],
    first: (given) =>
      `Say first whether the turning chain of ${t(stitchOf(given))} counts as a stitch; then take the Vs and that together.`,
  },
});
