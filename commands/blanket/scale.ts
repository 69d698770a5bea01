/** The same blanket at another size, before and after. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { readLaidBy, withLetter } from '../../src/core/blanket/layout.ts';
import { piecesOf } from '../../src/core/blanket/pieces.ts';
import { scaleBlanket, type Scaled } from '../../src/core/blanket/scale.ts';
import { count, m, num, size } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { findBlanket, layingOf, putBlanket, specOf } from '../../src/projects/blankets.ts';
import { relaid } from '../../src/projects/relaying.ts';
import { countMotifsIn } from '../../src/core/blanket/materials.ts';
import { action } from '../shared/actions.ts';
import { distinct } from '../shared/steps.ts';
import { columns, rows, SAVED, savedBlanket } from './options.ts';
import { blanketCautions, extentWords, kindFigures, makeCounts, middleNote, sizeFigures } from './words.ts';

export const scale = question({
  name: 'scale',
  says: 'The same blanket at another size: setting continued, make-counts, border, yarn, before and after',
  options: {
    name: savedBlanket().optional(),
    columns: columns('The new number of motifs side by side').optional(),
    rows: rows('The new number of motifs under each other').optional(),
    width: opt.length('Or about how wide it should be', '120cm').optional(),
    height: opt.length('Or about how high it should be', '160cm').optional(),
    keep: opt
      .yesno({ says: 'yes keeps the new size', assumed: 'Only shown, not kept: keep:yes keeps it.' })
      .default(false),
  },
  example: 'columns:6 rows:8',
  refused: { line: 'columns:6 width:120cm', option: 'width' },
  before: SAVED,
  changes: true,
  asked: {
    changesBy: ['keep'],
    ways: [
      'scale blanket',
      'scale @blanket',
      'blanket substitute <pair|dims>',
      'change blanket <dims|pair>',
      'scale motif blanket',
    ],
    also: 'blanket mine motif across down change substitute how-big how-many row',
    not: 'group ball yarn hook gauge each weigh',
    saved: 'blanket',
    marks: {
      name: { takes: 'saved-blanket' },
      columns: { takes: 'count', nouns: 'across', only: true },
      rows: { takes: 'count', nouns: 'row down', only: true },
    },
    pairs: { grid: ['columns', 'rows'], dims: ['width', 'height'] },
    needs: [['columns', 'rows', 'width', 'height']],
    phrases: ['what if my blanket was 6 by 8 squares', 'scale my blanket to 120 by 160 cm'],
  },
  async answer({ name, keep, ...to }, { maker, now, projects, once }): Promise<Answer> {
    const before = await projects.maker(maker.id, maker.name);
    const blanket = findBlanket(before, name);
    const working = new Working();
    const pieces = piecesOf(specOf(before, blanket), working);
    const scaled = scaleBlanket(pieces, layingOf(blanket), to);
    const { after } = scaled;
    if (keep)
      await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
        const saved = findBlanket(doc, name);
        putBlanket(doc, saved, relaid(saved, { columns: after.columns, rows: after.rows }), now);
        return { name: saved.name };
      });
    const laid = readLaidBy(blanket.setting);
    return {
      headline: `${blanket.name} ${keep ? 'is now' : 'would be'} ${extentWords(after)}, ${size(after.width, after.height)}: ${makeCounts(blanket.kinds, after.counts)}.`,
      lines: [...compared(blanket.kinds, scaled), ...middleNote(laid, after)],
      figures: gather(
        figure('motifs', 'Motifs', countMotifsIn(after)),
        figure('columns', 'Across', after.columns),
        figure('rows', 'Down', after.rows),
        kindFigures(blanket.kinds, after.counts),
        sizeFigures(after),
        figure('yarn_total', 'Yarn with the reserve', after.total, 'm'),
        figure('balls', 'Balls', after.balls),
        figure('off', 'Off the wish', scaled.offPercent, '%'),
      ),
      working: distinct([...working.steps, ...scaled.working.steps]),
      assumptions: [
        ...pieces.assumptions,
        laid.arrangement === 'typed'
          ? 'A map of one’s own does not say how it goes on: at another size its kinds are scattered in the same proportion.'
          : laid.arrangement === 'scattered'
            ? 'The kinds keep their proportion, by largest remainders.'
            : `The arrangement ${laid.arrangement} is continued.`,
        'What was swapped by hand does not come along.',
      ],
      cautions: blanketCautions(pieces, after),
      data: {
        blanket: blanket.name,
        kept: keep,
        before: plainly(scaled.before),
        after: plainly(after),
      },
      actions: keep
        ? [action('Picture', 'blanket picture', { name: blanket.name })]
        : [
            action('Keep this size', 'blanket scale', {
              name: blanket.name,
              columns: after.columns,
              rows: after.rows,
              keep: true,
            }),
          ],
    };
  },
});

type Side = Scaled['before'];

/** Before and after, line by line. */
function compared(kinds: readonly string[], { before, after }: Scaled): string[] {
  const line = (what: string, of: (side: Side) => string) => `${what}: ${of(before)} → ${of(after)}`;
  const round = (side: Side, index: number) => {
    const { stitches = 0, metres = 0 } = side.border[index] ?? {};
    return `${count(stitches, 'stitch', 'stitches')}, ${m(metres)}`;
  };
  return [
    line('Motifs', (side) => `${side.columns} × ${side.rows}, ${num(countMotifsIn(side))}`),
    ...kinds.map((kind, index) => line(withLetter(index, kind), (side) => num(side.counts[index] ?? 0))),
    line('Size', (side) => size(side.width, side.height)),
    ...after.border.map((_, index) => line(`Border, round ${index + 1}`, (side) => round(side, index))),
    line('Seams', (side) => `${num(side.seams)}, ${m(side.seamLength)}`),
    line('Ends to weave in', (side) => num(side.ends)),
    ...after.colours.map((need, index) =>
      line(need.colour, (side) => {
        const { total = 0, balls } = side.colours[index] ?? {};
        return `${m(total)}${balls === undefined ? '' : `, ${count(balls, 'ball')}`}`;
      }),
    ),
    line(
      'Yarn in all, with the reserve',
      (side) => `${m(side.total)}${side.balls === undefined ? '' : `, ${count(side.balls, 'ball')}`}`,
    ),
  ];
}

const plainly = ({ columns, rows, counts, width, height, total, balls, ends, border, colours }: Side) => ({
  columns,
  rows,
  counts,
  width,
  height,
  yarn_total: total,
  balls: balls ?? null,
  ends,
  border: border.map(({ stitches }) => stitches),
  colours: colours.map(({ colour, total: metres }) => ({ colour, metres })),
});
