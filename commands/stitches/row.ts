/** How many stitches does a row have, so far, and in all? */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { defined } from '../../src/core/base/defined.ts';
import { MOST_ROWS, MOST_ROWS_WORKED } from '../../src/core/base/limits.ts';
import { reckonRow } from '../../src/core/rows/row-facts.ts';
import { count, t } from '../../src/core/base/reader.ts';

export const row = question({
  name: 'row',
  says: 'How many stitches a row has, how far along that is, and the total',
  options: {
    shape: opt.shape(),
    size: opt.size(),
    row: opt
      .whole('The row or round; the last one if not given', { max: MOST_ROWS_WORKED, example: '9' })
      .optional(),
    other_size: opt
      .whole('Blocks along the other side, or rows of a flat piece', { max: MOST_ROWS, example: '8' })
      .optional(),
    stitch: opt.stitch().optional(),
  },
  example: 'shape:diagonal size:12 row:9',
  refused: { line: 'shape:diagonal size:12 row:25', option: 'row' },
  asked: {
    ways: [
      '?stitch row|round',
      '?cluster|block|stitch motif|block',
      '?cluster|block',
      'stitch count',
      'count <row>',
      'stitch <row>',
      '?stitch|cluster|block total',
      '?count <shape>',
      'cluster count',
    ],
    also: 'count total motif pattern done next row round cluster stitch check mistake across blanket piece i-am-on each all left corner',
    not: 'border gauge evenly repeat increase decrease weigh chain side join left pickup swatch',
    marks: {
      size: {
        takes: 'count',
        nouns: 'row round block across',
        near: 'size',
        lead: 'size square granny circle hexagon',
        only: true,
      },
      other_size: { takes: 'count', nouns: 'row block down', only: true },
    },
    pairs: { grid: ['size', 'other_size'] },
    extras: { widest: { takes: 'none', capture: /\b((?:widest|longest|middle) (?:row|round))\b/i } },
    fills: ['shape', 'size', 'other_size'],
    // In rounds, what was asked of round 5 holds whatever comes after it.
    settle: ({ stitch, ...options }, { widest }) => {
      const { shape = '', size, row } = options;
      const turns = widest !== undefined && /^(diagonal|blocks)$/.test(shape);
      const isInRounds = /^(clusters|solid-square|circle|hexagon)$/.test(shape);
      return {
        ...options,
        ...defined({
          // A treble cluster is a cluster: its stitch is given with the shape.
          stitch: shape === 'clusters' ? undefined : stitch,
          // A square over its corner, or in blocks, is widest where it turns.
          row: row ?? (turns ? size : undefined),
          size: size ?? (isInRounds ? row : undefined),
        }),
      };
    },
    phrases: [
      'how many stitches in row 9 of a 12 row diagonal square',
      'granny square round 5, how many clusters',
      'how many blocks in a 20 block corner to corner square',
    ],
  },
  answer({ shape, size, row, other_size, stitch }): Answer {
    const facts = reckonRow({ shape, size, row, otherSize: other_size, stitch });
    const { plan } = facts;
    const unit = plan.counted === 'blocks' ? 'block' : 'stitch';
    const many = plan.counted === 'blocks' ? 'blocks' : 'stitches';
    const called = plan.worked === 'rounds' ? 'Round' : 'Row';
    const { increases, decreases } = plan.rows[facts.row - 1] ?? { increases: 0, decreases: 0 };
    const before = `${called.toLowerCase()} ${facts.row - 1}`;
    const change =
      facts.row === 1
        ? undefined
        : increases > 0
          ? `${count(increases, unit, many)} more than ${before}.`
          : decreases > 0
            ? `${count(decreases, unit, many)} fewer than ${before}.`
            : `As many as ${before}.`;
    return {
      headline: `${called} ${facts.row} has ${count(facts.count, unit, many)} of ${t(plan.stitch)}; ${count(facts.soFar, unit, many)} so far, ${count(facts.total, unit, many)} in all.`,
      figures: [
        figure(plan.counted, `${called} ${facts.row}`, facts.count),
        figure('rows', `${called}s`, plan.rows.length),
        figure('widest', 'Widest', facts.widest.count),
        figure('widest_row', `Widest ${called.toLowerCase()}`, facts.widest.row),
        figure('so_far', 'So far', facts.soFar),
        figure('total', 'Total', facts.total),
      ],
      lines: change === undefined ? [] : [change],
      working: facts.working.steps,
      assumptions: facts.assumptions,
    };
  },
});
