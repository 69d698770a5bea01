/** US and UK names. */
import { TERMS } from '../standards/terms.ts';
import { STITCHES } from '../standards/stitches.ts';
import { lesson, pickOf } from './lesson.ts';

/** Into whose terms a name is to be brought. */
const INTO = ['US', 'UK'] as const;
const intoOf = ({ into }: { readonly into: number }) => INTO[into] ?? 'US';
const otherOf = ({ into }: { readonly into: number }) => (intoOf({ into }) === 'US' ? 'UK' : 'US');
const stitchAt = (place: number) => STITCHES[place];
/** The stitch that the other side's name means where it is read as one's own. */
function sameName(given: { readonly stitch: number; readonly into: number }): number | undefined {
  const stitch = stitchAt(given.stitch);
  const name = stitch && TERMS[stitch][otherOf(given)];
  const place = STITCHES.findIndex((one) => TERMS[one][intoOf(given)] === name);
  return place < 0 ? undefined : place;
}

export const names = lesson({
  name: 'names',
  title: 'US and UK names',
  needs: [],
  idea: 'The same names mean different stitches: the UK name is one step taller than the US name of the same stitch. US single crochet is UK double crochet, US double crochet is UK treble. So look first in whose terms a pattern is written.',
  example: {
    given: { stitch: 1, into: 0 },
    line: 'lookup term term:"UK htr"',
  },
  practice: {
    draw: (chance, { terms }) => ({
      stitch: pickOf(chance, terms === 'US' ? [0, 2, 3] : [2, 3]),
      into: terms === 'US' ? 0 : 1,
    }),
    says(given) {
      const stitch = stitchAt(given.stitch) ?? 'sc';
      return `A pattern in ${otherOf(given)} terms says “${TERMS[stitch][otherOf(given)]}”. Which stitch is that in ${intoOf(given)} terms?`;
    },
    asks: (given) => ({ kind: 'stitch', of: `stitch by its ${intoOf(given)} name`, terms: intoOf(given) }),
    // Looked up, not reckoned: the table is the working.
    solve: ({ stitch }) => ({ value: stitch, working: [] }),
    slips: [
      {
        key: 'same-name',
        value: sameName,
        says: (given) =>
          `The name was kept. The same word means another stitch in ${intoOf(given)} terms: go one step ${intoOf(given) === 'US' ? 'down' : 'up'}.`,
      },
      {
        key: 'two-steps',
        value: (given) => (given.stitch < 2 ? undefined : given.stitch - 2),
        says: () => 'The two ways of naming lie one step apart; your answer is two steps away.',
      },
    ],
    first: (given) =>
      `${otherOf(given)} names are one step ${otherOf(given) === 'UK' ? 'taller' : 'shorter'} than ${intoOf(given)} names of the same stitch: say the ladder from the shortest, and find the rung.`,
  },
});
