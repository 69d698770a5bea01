/** How does the border grow, round by round, and will its corners lie flat? */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { countBorderRounds, type CornerFit } from '../../src/core/edges/border.ts';
import { writeBorder } from '../../src/core/edges/written-border.ts';
import { count, num, t } from '../../src/core/base/reader.ts';
import { CORNER_FOR } from '../../src/standards/growth.ts';
import { corner } from './corner.ts';
import { writtenLines } from './written.ts';

/** How many stitches a corner takes of each stitch, in a sentence; in US terms until somebody reads it. */
const CORNERS = Object.entries(CORNER_FOR)
  .map(([stitch, many]) => `${many} for US ${stitch}`)
  .join(', ');

export const rounds = question({
  name: 'rounds',
  says: 'How the border grows, round by round, and whether its corners will lie flat',
  options: {
    across: opt.whole('Stitches along the width in the first round, between corners', { example: '169' }),
    down: opt.whole('Stitches along the height in the first round, between corners', { example: '223' }),
    rounds: opt.stitches('One stitch a round, like hdc dc hdc'),
    corner: corner(),
  },
  example: 'across:169 down:223 corner:3 rounds:"sc hdc sc"',
  refused: { line: 'across:169 down:223 rounds:"sc fog"', option: 'rounds' },
  asked: {
    ways: [
      'border round',
      '?stitch round border',
      'border <stitch>',
      'corner flat',
      'corner stitch <stitch>',
      'corner border <stitch>',
      '?corner <stitch>',
      'border grow',
      'round <stitch> across',
      'stitch round side',
      '?stitch round side',
    ],
    also: 'border stitch round across down side corner flat ripples count total each grow need motif all',
    not: 'weigh ball yarn left gauge',
    marks: {
      across: {
        asks: `In the corner ${CORNERS} lie flat. How many stitches has the first round along its width, between corners?`,
        takes: 'count',
        nouns: 'across stitch',
        near: 'across',
      },
      down: { takes: 'count', nouns: 'down stitch', near: 'down' },
      corner: { takes: 'count', nouns: 'corner', near: 'corner', only: true },
    },
    pairs: { counts: ['across', 'down'] },
    extras: { side: { takes: 'count', nouns: 'stitch side', near: 'side', only: true } },
    // A square has the same count along all its sides.
    settle: (options, { side }) =>
      side === undefined || options['across'] !== undefined || options['down'] !== undefined
        ? options
        : { ...options, across: side, down: side },
    phrases: [
      'border of sc hdc sc on 169 stitches across and 223 down, stitches per round',
      'three rounds of single crochet border on 120 across and 150 down',
    ],
  },
  answer(asked): Answer {
    const found = countBorderRounds({ ...asked, stitches: asked.rounds });
    const { last, rounds: all } = found;
    const many = all.length;
    return {
      headline: `Round ${many}, the last, has ${count(last.total, 'stitch', 'stitches')}: ${num(last.across)} along each width, ${num(last.down)} along each height, ${asked.corner} in each corner.`,
      figures: [
        figure('round_total', 'In the last round', last.total),
        figure('across', 'Across in the last round', last.across),
        figure('down', 'Down in the last round', last.down),
        figure('stitches', 'In all rounds', found.stitches),
      ],
      lines: [
        ...all.map(
          ({ stitch, across, down, total }, index) =>
            `Round ${index + 1}, ${t(stitch)}: ${across} across, ${down} down, ${total} in all.`,
        ),
        ...writtenLines(writeBorder({ rounds: all, corner: asked.corner })),
        ...found.corners.map((fit) => cornerWords(fit, asked.corner)),
      ],
      data: { rounds: all },
      working: found.working.steps,
      assumptions: [
        'The counts given are those of the first round, between its corners; each further corner is worked into the middle stitch of the one below.',
      ],
    };
  },
});

function cornerWords({ stitch, fit, corner: flat, growth, flatGrowth }: CornerFit, given: number): string {
  if (fit === 'flat') return `${given} in each corner suit ${t(stitch)}: the corner lies flat.`;
  const happens =
    fit === 'too few'
      ? 'too few: the corner rounds off, and over several rounds it cups'
      : 'too many: the corner spreads, and over several rounds it ruffles';
  return `For ${t(stitch)}, ${given} in each corner are ${happens}. It grows by ${growth} a round where about ${flatGrowth} lie flat; try ${flat} in each corner.`;
}
