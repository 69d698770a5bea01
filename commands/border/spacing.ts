import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { spaceBorder, writeInRuns } from '../../src/core/edges/border.ts';
import { careFor } from '../../src/core/size/cautions.ts';
import { count, num, t } from '../../src/core/base/reader.ts';
import { STITCH_FACTS, STITCHES } from '../../src/standards/stitches.ts';
import { corner } from './corner.ts';

export const spacing = question({
  name: 'spacing',
  says: 'How many border stitches each side takes, shared evenly over the motifs',
  options: {
    width: opt.length('The width of the edge, before the border', '120cm'),
    height: opt.length('The height of the edge, before the border', '160cm'),
    gauge: opt.gauge('The border’s stitches over 10 cm, like 14, or 14 over 4in', '14'),
    corner: corner(),
    multiple: opt
      .whole(
        {
          says: 'The border pattern’s multiple; 1 if not given',
          assumed: 'Any count suits, as no multiple was given.',
        },
        { max: 500, example: '6' },
      )
      .default(1),
    plus: opt
      .whole(
        { says: 'The border pattern’s plus; 0 if not given', assumed: 'Nothing is added to the multiple.' },
        { min: 0, max: 500, example: '1' },
      )
      .default(0),
    columns: opt
      .whole('Motifs along the width, to share the stitches over', { max: 400, example: '8' })
      .optional(),
    rows: opt.whole('Motifs along the height', { max: 400, example: '11' }).optional(),
  },
  example: 'width:120cm height:160cm gauge:14 multiple:6 plus:1 columns:8 rows:11',
  refused: { line: 'width:120cm height:160cm gauge:14 multiple:0', option: 'multiple' },
  answer(asked) {
    const { across, down, total, perMotifAcross, perMotifDown, strained, working } = spaceBorder(asked);
    const each = count(asked.corner, 'stitch', 'stitches');
    return {
      headline: `${count(across, 'stitch', 'stitches')} along each width, ${num(down)} along each height and ${asked.corner} in each corner: ${num(total)} in the first round.`,
      figures: [
        { key: 'across', label: 'Across, between corners', value: across, unit: '' },
        { key: 'down', label: 'Down, between corners', value: down, unit: '' },
        { key: 'round_total', label: 'In the round, corners counted in', value: total, unit: '' },
      ],
      lines: [
        ...strained.map(
          ({ side, percent }) =>
            `That is ${num(Math.abs(percent), 0)} % too ${percent > 0 ? 'many' : 'few'} along the ${side}: it will ${percent > 0 ? 'ruffle' : 'draw in'}. A smaller repeat would lie flatter.`,
        ),
        ...(perMotifAcross ? [`Along the width, motif by motif: ${writeInRuns(perMotifAcross)}.`] : []),
        ...(perMotifDown ? [`Along the height, motif by motif: ${writeInRuns(perMotifDown)}.`] : []),
        `Work the corner’s ${each} into one place, and over the joins as if the edge were one cloth.`,
        `Along row ends, ${t('sc')} take about ${ROW_ENDS}.`,
      ],
      data: {
        ...(perMotifAcross ? { per_motif_across: perMotifAcross } : {}),
        ...(perMotifDown ? { per_motif_down: perMotifDown } : {}),
      },
      cautions: careFor(asked.width, asked.height),
      working: working.steps,
      assumptions: [
        `Rates along row ends: published for ${t('sc')}, ${t('dc')} and ${t('tr')} rows, from memory for ${t('hdc')}.`,
      ],
    };
  },
});

/** How many single crochet a row end takes, stitch by stitch, read off the heights: a half is said as so many in two rows. */
const ROW_ENDS = STITCHES.map((stitch) => {
  const { height } = STITCH_FACTS[stitch];
  return Number.isInteger(height)
    ? `${height} for every row of ${t(stitch)}`
    : `${2 * height} for every two rows of ${t(stitch)}`;
}).join(', ');
