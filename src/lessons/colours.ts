/** Changing colour, and carrying. */
import { CARRY_PAST, cutLengths } from '../core/stripes/carrying.ts';
import { ENDS_OF_LENGTHS } from '../core/stripes/ends.ts';
import { planRows } from '../core/rows/index.ts';
import { lesson, pick, pickOf, solveBy } from './lesson.ts';

interface Striped {
  readonly stripes: number;
  readonly high: number;
}

const COLOURS = ['first', 'second'];

/** Stripes of one height, two colours in turn, on as many rows as they come to. */
function cut({ stripes, high }: Striped) {
  const rows = stripes * high;
  const plan = planRows('flat', { size: 20, otherSize: rows });
  return cutLengths(
    plan,
    Array.from({ length: stripes }, (_, at) => ({ colour: COLOURS[at % 2] ?? '', rows: high })),
  );
}

const carried = (given: Striped) => cut(given).ends < cut(given).endsIfCut;

export const colours = lesson({
  name: 'colours',
  title: 'Changing colour, and carrying',
  needs: ['growing'],
  idea: `A colour that comes back soon need not be cut: it climbs up the side. In turned rows that works past an even number of rows, at most ${CARRY_PAST}, so that the yarn hangs where you need it and the edge does not pull. Every length of yarn that is cut has two ends to weave in.`,
  example: {
    given: { stripes: 12, high: 2 },
    line: 'motif define name:"two and two" shape:diagonal size:12 stripes:"2 moss, 2 sand" keep:no',
  },
  practice: {
    draw: (chance) => ({ stripes: 2 * pick(chance, 3, 9), high: pickOf(chance, [1, 2, 3, 4, 6]) }),
    says: ({ stripes, high }) =>
      `A piece worked in turned rows has ${stripes} stripes of ${high === 1 ? '1 row' : `${high} rows`} in two colours, one after the other. You carry wherever you may. How many ends are there to weave in?`,
    asks: () => ({ kind: 'count', of: 'ends' }),
    solve: (given) => solveBy(ENDS_OF_LENGTHS, { lengths: cut(given).lengths.length }),
    slips: [
      {
        key: 'cut-each',
        value: (given) => (carried(given) ? cut(given).endsIfCut : undefined),
        says: ({ high }) =>
          `That is right if you cut at every change. Past ${high} rows the other colour may climb along: then there is one length of each.`,
      },
      {
        key: 'carried-too-far',
        value: (given) => (carried(given) ? undefined : 2 * COLOURS.length),
        says: ({ high }) =>
          high % 2 === 1
            ? `Past ${high === 1 ? '1 row' : `${high} rows`} the yarn hangs at the other edge when its turn comes: it must be cut.`
            : `Past ${high} rows the yarn would pull at the edge: it is cut at every change.`,
      },
      {
        key: 'one-end-a-length',
        value: (given) => cut(given).lengths.length,
        says: () => 'Every length of yarn has two ends, one where it begins and one where it stops.',
      },
      {
        key: 'changes-only',
        value: (given) => cut(given).endsIfCut - 2,
        says: () =>
          'Two ends for every change leaves out the very first end and the very last. Count the lengths of yarn instead.',
      },
    ],
    first: ({ high }) =>
      `May a colour be carried past ${high === 1 ? '1 row' : `${high} rows`}? If so there is one length of each colour; if not, one for each stripe.`,
  },
});
