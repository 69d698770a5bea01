/** Ends, and the yarn that hangs in them. */
import { TAILS } from '../core/yarn/motif-yarn.ts';
import { cm, m } from '../core/base/reader.ts';
import { TAIL } from '../standards/consumption.ts';
import { CM_PER_INCH } from '../standards/units.ts';
import { lesson, pick, solveBy } from './lesson.ts';

const CM_PER_M = 100;
/** The longest of the published 4 to 6 in. */
const SIX_INCHES = (6 * CM_PER_INCH) / CM_PER_M;

export const ends = lesson({
  name: 'ends',
  title: 'Ends, and what hangs in them',
  needs: ['colours'],
  idea: `Every length of yarn leaves a tail at both of its ends, long enough to be woven in: ${cm(TAIL * CM_PER_M, 0)} is usual. In one square that is little, in a blanket it is a ball: so tails are added to what the stitches take. Weave in as you go.`,
  example: {
    given: { motifs: 80, lengths: 3, tail: TAIL },
    line: 'resize width:120cm height:150cm side:15cm',
  },
  inInches: {
    given: { motifs: 80, lengths: 3, tail: SIX_INCHES },
    line: 'resize width:48in height:60in side:6in',
  },
  practice: {
    draw: (chance, { units }) => ({
      motifs: pick(chance, 20, 120, 5),
      lengths: pick(chance, 2, 6),
      tail: units === 'metric' ? TAIL : SIX_INCHES,
    }),
    says: ({ motifs, lengths, tail }) =>
      `A blanket has ${motifs} motifs, and each of them is made from ${lengths} lengths of yarn. How much yarn hangs in all the tails, at ${cm(tail * CM_PER_M)} each?`,
    asks: () => ({ kind: 'm', of: 'yarn in tails' }),
    solve: ({ motifs, lengths, tail }) => solveBy(TAILS, { lengths: motifs * lengths, tail }),
    slips: [
      {
        key: 'one-tail-a-length',
        value: ({ motifs, lengths, tail }) => motifs * lengths * tail,
        says: () => 'That is one tail for each length. A length has two ends.',
      },
      {
        key: 'one-motif',
        value: ({ lengths, tail }) => 2 * lengths * tail,
        says: () => 'That is one motif. All of them are asked.',
      },
      {
        key: 'lengths-left-out',
        value: ({ motifs, tail }) => 2 * motifs * tail,
        says: () => 'That would do for motifs of one length of yarn each. Take the lengths in one motif too.',
      },
      {
        key: 'inches-for-centimetres',
        value: ({ motifs, lengths, tail }) =>
          tail === TAIL ? 2 * motifs * lengths * tail * CM_PER_INCH : undefined,
        says: ({ tail }) =>
          `The tails were taken in inches where they are centimetres: ${cm(tail * CM_PER_M)} is far less than half of ${m(1)}.`,
      },
    ],
    first: () => 'How many tails hang at one motif? Then at all of them; last, turn them into a length.',
  },
});
