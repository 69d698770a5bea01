/** Which motif goes where, and how they are joined. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { inPieces } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { careFor } from '../../src/core/size/cautions.ts';
import { seedChance } from '../../src/core/base/chance.ts';
import { putTogether, type PutTogether } from '../../src/core/group/put-together.ts';
import { cutIntoRows } from '../../src/core/blanket/layout.ts';
import { numbered } from './words.ts';
import { cm, count, m, num, size, t } from '../../src/core/base/reader.ts';
import { OPENED } from './example.ts';
import { evenedLines, evenedWords } from '../shared/evened-words.ts';
import { nameOption, whichBlanket } from './which.ts';

export const assemble = question({
  name: 'assemble',
  says: 'Which motif goes where so that neighbours fit, the joining, and the border’s counts',
  options: {
    try: opt
      .whole({ says: 'Another number gives another arrangement', assumed: '' }, { max: 999, example: '2' })
      .default(1),
    name: nameOption,
  },
  example: '',
  before: [
    ...OPENED,
    '/together pledge kind:furrow motifs:6',
    '/together pledge kind:trellis motifs:6',
    '/together handin kind:furrow motifs:3 side:15.1cm',
    '/together handin kind:furrow motifs:3 side:14.8cm',
    '/together handin kind:trellis motifs:6 side:15.2cm',
    '/host accept motifs:1-12 confirm:yes',
  ],
  refused: { line: 'name:"No such blanket"', option: 'name' },
  asked: {
    ways: [
      'goes-where group',
      'goes-where motif',
      'goes-where blanket group',
      'layout group',
      'goes-where',
      'join group blanket goes-where',
    ],
    also: 'motif group blanket which where next done layout join',
    not: 'how-much yarn weigh take-part claim',
    saved: 'group',
    marks: { try: { never: true }, name: { takes: 'saved-group' } },
    phrases: ['which square goes where in the group blanket'],
  },
  async answer({ try: attempt, name }, context): Promise<Answer> {
    const { state } = await whichBlanket(context, name);
    const { plan } = state;
    const put = await inPieces(putTogether(state, seedChance(attempt)));
    return {
      headline: assembledHeadline(put),
      figures: gather(
        figure('missing', 'Cells without a motif', put.missing),
        figure('neighbours_differ', 'Neighbours differ on average', put.meanGap, 'cm'),
        figure('by_arrival', 'The same in order of arrival', put.arrivalGap, 'cm'),
        figure('seam_length', 'Seams', put.seamLength, 'm'),
        figure('seam_yarn', 'Yarn in the seams', put.seamYarn, 'm'),
        figure('edging_yarn', 'Yarn to even motifs up', put.evening.yarn, 'm'),
        put.border.length > 0 && [
          figure('border_yarn', 'Yarn in the border', put.borderYarn, 'm'),
          figure('round_total', 'Stitches in the last round', put.border.at(-1)?.total ?? 0),
        ],
        figure('width', 'Width', put.width, 'cm'),
        figure('height', 'Height', put.height, 'cm'),
      ),
      lines: gather(
        cutIntoRows(put.placed, plan.columns).map(
          (strip, row) =>
            `Strip ${row + 1}: ${strip.map((motif) => (motif ? `#${motif.piece}` : '?')).join(' ')}`,
        ),
        `Lay each strip out and join its motifs side by side, ${count(plan.columns - 1, 'short seam')} a strip; then join the strips, ${count(plan.rows - 1, 'long seam')}, each in one go.`,
        put.evening.counts.asTheyAre < put.numbers.length && [
          `To make them meet at ${cm(plan.side)}: ${evenedWords(put.evening)}.`,
          ...evenedLines(put.evening, ({ index }) => `#${put.numbers[index] ?? ''}`),
        ],
        `The seams take ${m(put.seamYarn)} of ${put.seamColour}.`,
        put.border.map(
          ({ stitch, across, down, total, colour }, round) =>
            `Border round ${round + 1}: ${t(stitch)} in ${colour}, ${across} across, ${down} down, ${plan.border.corner} in each corner, ${total} in all.`,
        ),
        `It comes to ${size(put.width, put.height)}.`,
        put.over.length > 0 && `Left over: ${numbered(put.over)}.`,
      ),
      cautions: careFor(put.width, put.height),
      working: put.working.steps,
      assumptions: gather(
        put.unmeasured > 0 &&
          `${num(put.unmeasured)} accepted without a measured side are taken to be ${cm(plan.side)}.`,
        put.assumptions,
        put.whole
          ? 'Sizes are matched well, not proven best: every exchange of two motifs that helps was made.'
          : 'Sizes are matched well, not proven best: so many motifs of a kind have more exchanges than were looked at.',
      ),
      data: {
        cells: put.placed.map((motif) => motif?.piece ?? null),
        over: put.over,
        evened: put.evening.motifs.map(({ index, side, pin, leave, edging }) => ({
          motif: put.numbers[index] ?? 0,
          side,
          pin,
          leave,
          edging: edging ?? null,
        })),
        border: put.border,
      },
    };
  },
});

/** How many cells are filled, and how well neighbours fit. */
function assembledHeadline({ placed, missing, meanGap, arrivalGap, evening, numbers }: PutTogether): string {
  const cells =
    missing === 0
      ? `All ${count(placed.length, 'cell')} are filled`
      : `${count(missing, 'cell')} of ${num(placed.length)} ${missing === 1 ? 'waits' : 'wait'} for a motif`;
  // A motif alone has no neighbour.
  if (placed.filter((motif) => motif !== undefined).length < 2) return `${cells}.`;
  const byArrival = arrivalGap > meanGap ? `, in order of arrival it would be ${cm(arrivalGap, 2)}` : '';
  const evened = evening.counts.asTheyAre < numbers.length ? 'once evened up, ' : '';
  return `${cells}; ${evened}neighbours differ by ${cm(meanGap, 2)} on average${byArrival}.`;
}
