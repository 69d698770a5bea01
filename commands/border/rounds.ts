import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { countBorderRounds, type CornerFit } from '../../src/core/edges/border.ts';
import { count, num, t } from '../../src/core/base/reader.ts';
import { corner } from './corner.ts';

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
  answer(asked): Answer {
    const found = countBorderRounds({ ...asked, stitches: asked.rounds });
    const { last, rounds: all } = found;
    const many = all.length;
    return {
      headline: `Round ${many}, the last, has ${count(last.total, 'stitch', 'stitches')}: ${num(last.across)} along each width, ${num(last.down)} along each height, ${asked.corner} in each corner.`,
      figures: [
        { key: 'round_total', label: 'In the last round', value: last.total, unit: '' },
        { key: 'across', label: 'Across in the last round', value: last.across, unit: '' },
        { key: 'down', label: 'Down in the last round', value: last.down, unit: '' },
        {
          key: 'stitches',
          label: 'In all rounds',
          value: all.reduce((sum, { total }) => sum + total, 0),
          unit: '',
        },
      ],
      lines: [
        ...all.map(
          ({ stitch, across, down, total }, index) =>
            `Round ${index + 1}, ${t(stitch)}: ${across} across, ${down} down, ${total} in all.`,
        ),
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
