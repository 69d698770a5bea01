/** How many border stitches does each side take, and how are they shared over its motifs? */
import { figure, gather, type Answer, type Figure } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import type { Context } from '../../src/chat/context.ts';
import { opt } from '../../src/chat/options.ts';
import { defined } from '../../src/core/base/defined.ts';
import { MOST_ROWS } from '../../src/core/base/limits.ts';
import { spaceBorder, writeInRuns } from '../../src/core/edges/border.ts';
import { writeBorder } from '../../src/core/edges/written-border.ts';
import { countAlongRows, findWholeRate, type RowEnds } from '../../src/core/edges/row-ends.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { planRows, type RowPlan, type Shape } from '../../src/core/rows/index.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { careFor } from '../../src/core/size/cautions.ts';
import { count, num, t } from '../../src/core/base/reader.ts';
import { STITCHES, type Stitch } from '../../src/standards/stitches.ts';
import { savedMotif } from '../shared/saved-motif.ts';
import { corner } from './corner.ts';
import { writtenLines } from './written.ts';

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
    shape: opt.shape('The motif’s shape, with size: what its edges take from its rows').optional(),
    size: opt.size().optional(),
    other_size: opt
      .whole('Blocks along the other side, or rows of a flat piece', { max: MOST_ROWS, example: '8' })
      .optional(),
    stitch: opt.stitch('The stitch of the motif').optional(),
    border_stitch: opt.stitch('The stitch of the border’s first round; sc if not given').optional(),
    motif: savedMotif('A saved motif, instead of shape and size').optional(),
  },
  example: 'width:120cm height:160cm gauge:14 multiple:6 plus:1 columns:8 rows:11',
  refused: { line: 'width:120cm height:160cm gauge:14 multiple:0', option: 'multiple' },
  asked: {
    ways: [
      '?stitch border',
      'border stitch side',
      'stitch side',
      '?stitch pickup',
      'pickup border',
      '?stitch side',
      'border stitch',
      'pickup evenly',
      'border <stitch> side',
      'border ripples',
    ],
    also: 'border side corner repeat motif across down blanket gauge each round evenly flat ripples why stitch row total need getting all pickup chain',
    not: 'weigh ball yarn left',
    marks: {
      width: {
        asks: 'Too many stitches ripple, too few draw in; this says how many belong. How wide is the edge, before the border?',
      },
      height: { asks: 'How high is the edge, before the border?' },
      gauge: { takes: 'gauge', near: 'gauge stitch' },
      corner: { takes: 'count', nouns: 'corner', near: 'corner', only: true },
      multiple: { takes: 'multiple' },
      plus: { takes: 'none' },
      columns: { takes: 'count', nouns: 'across', only: true },
      rows: { takes: 'count', nouns: 'down', only: true },
      // The motif’s own rows are typed: in a phrase its name says only what the edge is of.
      shape: { never: true },
      size: { never: true },
      other_size: { never: true },
      stitch: { never: true },
      motif: { never: true },
      border_stitch: { never: true },
    },
    pairs: { dims: ['width', 'height'], grid: ['columns', 'rows'] },
    phrases: [
      'how many border stitches on each side of a 120 x 160 cm blanket at gauge 14',
      'how many stitches do I pick up round a 48 by 60 inch blanket',
    ],
  },
  async answer(asked, context): Promise<Answer> {
    const { across, down, total, perMotifAcross, perMotifDown, strained, working } = spaceBorder(asked);
    const plan = await planAsked(asked, context);
    const fromRows = plan && countAlongRows(plan, working);
    const each = count(asked.corner, 'stitch', 'stitches');
    return {
      headline: `${count(across, 'stitch', 'stitches')} along each width, ${num(down)} along each height and ${asked.corner} in each corner: ${num(total)} in the first round.`,
      figures: gather(
        figure('across', 'Across, between corners', across),
        figure('down', 'Down, between corners', down),
        figure('round_total', 'In the round, corners counted in', total),
        fromRows && rowFigures(fromRows),
      ),
      lines: gather(
        strained.map(
          ({ side, percent }) =>
            `That is ${num(Math.abs(percent), 0)} % too ${percent > 0 ? 'many' : 'few'} along the ${side}: it will ${percent > 0 ? 'ruffle' : 'draw in'}. A smaller repeat would lie flatter.`,
        ),
        perMotifAcross && `Along the width, motif by motif: ${writeInRuns(perMotifAcross)}.`,
        perMotifDown && `Along the height, motif by motif: ${writeInRuns(perMotifDown)}.`,
        plan && fromRows && rowLines(plan, fromRows, perMotifAcross, perMotifDown),
        `Work the corner’s ${each} into one place, and over the joins as if the edge were one cloth.`,
        writtenLines(
          writeBorder({
            rounds: [{ stitch: asked.border_stitch ?? 'sc', across, down, total }],
            corner: asked.corner,
            motif: plan?.stitch,
          }),
        ),
        `Along row ends, ${t('sc')} take about ${ROW_ENDS}.`,
      ),
      data: defined({ per_motif_across: perMotifAcross, per_motif_down: perMotifDown }),
      cautions: careFor(asked.width, asked.height),
      working: working.steps,
      assumptions: gather(
        asked.border_stitch === undefined &&
          `The round is written for ${t('sc')}; border_stitch writes it for another.`,
        `Rates along row ends: published for ${t('sc')}, ${t('dc')} and ${t('tr')} rows, from memory for ${t('hdc')}.`,
      ),
    };
  },
});

interface Asked {
  readonly shape?: Shape | undefined;
  readonly size?: number | undefined;
  readonly other_size?: number | undefined;
  readonly stitch?: Stitch | undefined;
  readonly motif?: string | undefined;
}

/** The rows of the motif that is meant: saved, or by shape and size; undefined where none is. */
async function planAsked(
  { shape, size, other_size, stitch, motif }: Asked,
  { projects, maker }: Context,
): Promise<RowPlan | undefined> {
  if (motif !== undefined) {
    if (shape !== undefined)
      throw new Problem('motif-given-twice', 'The motif is given twice, by its name and by its shape.', {
        option: 'shape',
        hint: 'Give motif, or shape and size, not both.',
      });
    return planOf(findMotif(await projects.maker(maker.id, maker.name), motif));
  }
  if (shape === undefined) return undefined;
  if (size === undefined)
    throw new Problem('size-missing', 'The shape alone does not say how many rows it has.', {
      option: 'size',
      hint: 'Give its size too, like size:12.',
    });
  return planRows(shape, { size, otherSize: other_size, stitch });
}

const rowFigures = ({ across, down }: RowEnds): Figure[] =>
  across === down
    ? [figure('motif_edge', 'One motif’s edge, from its rows', across)]
    : [
        figure('motif_across', 'One motif’s edge across, from its rows', across),
        figure('motif_down', 'One motif’s edge down, from its rows', down),
      ];

/** What one motif’s edges take from its rows, beside its share of the count by length. */
function rowLines(
  plan: RowPlan,
  fromRows: RowEnds,
  perMotifAcross?: readonly number[],
  perMotifDown?: readonly number[],
): string[] {
  const { across, down, rate, slanting } = fromRows;
  const edges =
    across === down
      ? `each edge of a motif takes ${num(across)}`
      : `a motif’s edges take ${num(across)} across and ${num(down)} down`;
  const either = (counts: readonly number[]) => [...new Set(counts)].sort((a, b) => a - b).join(' or ');
  const shares = gather(
    perMotifAcross && `${either(perMotifAcross)} along the width`,
    perMotifDown && `${either(perMotifDown)} along the height`,
  );
  return [
    `From its own rows ${edges}${rate === undefined ? ', one for every stitch' : `, ${num(rate, 1)} for every row end of ${t(plan.stitch)}`}${shares.length === 0 ? '' : `; by length it is ${shares.join(' and ')}`}.`,
    ...(slanting
      ? [
          'The rows of a diagonal square end slantwise, so its edge is longer than its rows are high: where the two differ, go by the length.',
        ]
      : ['Where the two differ, work a hand’s breadth each way and keep the one that lies flat.']),
  ];
}

/** How many single crochet a row end takes, stitch by stitch, read off the heights: a half is said as so many in two rows. */
const ROW_ENDS = STITCHES.map((stitch) => {
  const { stitches, rows } = findWholeRate(stitch);
  return `${stitches} for every ${rows === 1 ? 'row' : 'two rows'} of ${t(stitch)}`;
}).join(', ');
