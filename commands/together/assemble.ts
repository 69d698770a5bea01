import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { careFor } from '../../src/core/size/cautions.ts';
import { seeded } from '../../src/core/base/chance.ts';
import { putTogether } from '../../src/core/group/put-together.ts';
import { numbered } from './words.ts';
import { cm, count, m, num, size, t } from '../../src/core/base/reader.ts';
import { OPENED } from './example.ts';
import { nameOption, whichBlanket } from './which.ts';

export const assemble = question({
  name: 'assemble',
  says: 'Which motif goes where so that neighbours fit, the joining, and the border’s counts',
  options: {
    try: opt.whole('Another number gives another arrangement', { max: 999, example: '2' }).default(1),
    name: nameOption,
  },
  example: '',
  before: [
    ...OPENED,
    '/together handin kind:furrow motifs:3 side:15.1cm',
    '/together handin kind:furrow motifs:3 side:14.8cm',
    '/together handin kind:trellis motifs:6 side:15.2cm',
    '/together accept motifs:1-12',
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
    const found = putTogether(state, seeded(attempt));
    const strips = Array.from({ length: plan.rows }, (_, row) =>
      found.placed
        .slice(row * plan.columns, (row + 1) * plan.columns)
        .map((motif) => (motif ? `#${motif.piece}` : '?'))
        .join(' '),
    );
    return {
      headline: `${
        found.missing === 0
          ? `All ${count(found.placed.length, 'cell')} are filled`
          : `${count(found.missing, 'cell')} of ${num(found.placed.length)} ${found.missing === 1 ? 'waits' : 'wait'} for a motif`
      }${found.placed.length - found.missing < 2 ? '' : `; neighbours differ by ${cm(found.meanGap, 2)} on average${found.arrivalGap > found.meanGap ? `, in order of arrival it would be ${cm(found.arrivalGap, 2)}` : ''}`}.`,
      figures: gather(
        figure('missing', 'Cells without a motif', found.missing),
        figure('neighbours_differ', 'Neighbours differ on average', found.meanGap, 'cm'),
        figure('by_arrival', 'The same in order of arrival', found.arrivalGap, 'cm'),
        figure('seam_length', 'Seams', found.seamLength, 'm'),
        figure('seam_yarn', 'Yarn in the seams', found.seamYarn, 'm'),
        found.border.length !== 0 && [
          figure('border_yarn', 'Yarn in the border', found.borderYarn, 'm'),
          figure('round_total', 'Stitches in the last round', found.border.at(-1)?.total ?? 0),
        ],
        figure('width', 'Width', found.width, 'cm'),
        figure('height', 'Height', found.height, 'cm'),
      ),
      lines: gather(
        strips.map((strip, row) => `Strip ${row + 1}: ${strip}`),
        `Lay each strip out and join its motifs side by side, ${count(plan.columns - 1, 'short seam')} a strip; then join the strips, ${count(plan.rows - 1, 'long seam')}, each in one go.`,
        `The seams take ${m(found.seamYarn)} of ${found.seamColour}.`,
        found.border.map(
          ({ stitch, across, down, total, colour }, round) =>
            `Border round ${round + 1}: ${t(stitch)} in ${colour}, ${across} across, ${down} down, ${plan.border.corner} in each corner, ${total} in all.`,
        ),
        `It comes to ${size(found.width, found.height)}.`,
        found.over.length !== 0 && `Left over: ${numbered(found.over)}.`,
      ),
      cautions: careFor(found.width, found.height),
      working: found.working.steps,
      assumptions: gather(
        found.unmeasured !== 0 &&
          `${num(found.unmeasured)} accepted without a measured side are taken to be ${cm(plan.side)}.`,
        found.assumptions,
        'Sizes are matched well, not proven best: every exchange of two motifs that helps was made.',
      ),
      data: {
        cells: found.placed.map((motif) => motif?.piece ?? null),
        over: found.over,
        border: found.border,
      },
    };
  },
});
