/** How many motifs, and how large, make a blanket of a wished size or number? */
import { figure, gather, type Answer, type Figure } from '../../src/chat/answer.ts';
import { command, question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { defined } from '../../src/core/base/defined.ts';
import { careFor } from '../../src/core/size/cautions.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { SAMPLE_SIDE } from '../../src/core/base/samples.ts';
import type { Gauge } from '../../src/core/base/quantity.ts';
import { listMotifSizes, resize as find, type ResizeOption } from '../../src/core/size/resize.ts';
import { MOST_WISHED, describeStrip, resizeToNumber } from '../../src/core/size/wished-number.ts';
import { requireWishedSize, readWishedSize } from '../../src/core/size/wished-size.ts';
import { cm, count, num, size as sizeText } from '../../src/core/base/reader.ts';
import type { StandardSize } from '../../src/standards/sizes.ts';
import { ENDS_A_MOTIF } from '../../src/standards/consumption.ts';

/** Options told in lines; all of them stand in the data. */
const TOLD = 6;
/** As many at first; the others unfold. */
const TOLD_FIRST = 3;

export const resize = command({
  name: 'resize',
  says: 'How many motifs, and how large, make a blanket of a wished size or number',
  about: 'craft',
  questions: [
    question({
      says: 'How many motifs, and how large, make a blanket of a wished size or number',
      options: {
        width: opt.length('The width you wish for', '120cm').optional(),
        height: opt.length('The height you wish for', '160cm').optional(),
        for: opt.blanketSize().optional(),
        motifs: opt
          .whole('A number of motifs, in place of a size or beside it', { max: MOST_WISHED, example: '48' })
          .optional(),
        side: opt.length('The side of one finished motif, or give gauge and size', '15cm').optional(),
        gauge: opt.gauge('With size: stitches x rows over 10 cm, like 13x10').optional(),
        size: opt.size('With gauge: rising rows of the diagonal square').optional(),
        border: opt
          .length({ says: 'How wide the border is', assumed: 'No border, as none was given.' }, '4cm', {
            allowZero: true,
          })
          .default(0),
        row_step: opt
          .whole('With size: rows by which the motif may grow or shrink, like a stripe', {
            max: 100,
            example: '2',
          })
          .optional(),
        shape: opt
          .shape('With gauge and size: the motif’s shape; only diagonal is reckoned from rows')
          .optional(),
        ends: opt
          .whole(
            {
              says: `Ends of yarn that each motif leaves; ${ENDS_A_MOTIF} if not given`,
              assumed: `${ENDS_A_MOTIF} ends a motif, start and finish of one yarn, as none were given; those of seams come on top.`,
            },
            { min: 0, max: 200, example: '2' },
          )
          .default(ENDS_A_MOTIF),
      },
      example: 'width:120cm height:160cm gauge:13x10 size:12 border:4cm row_step:1',
      refused: { line: 'width:120cm height:160cm side:15cm border:70cm', option: 'border' },
      asked: {
        ways: [
          '?motif|block',
          '?motif|block blanket',
          'layout motif',
          'motif need <dims>',
          'how-many motif <dims>',
          '?motif <dims>',
          'motif blanket <dims>',
          'motif <for> <length>',
          '?across motif',
          'how-many motif blanket',
          'which layout <dims>',
          'biggest motif <number>',
          'how-big motif <number> <length>',
          'need motif <number> <length>',
        ],
        also: 'blanket border across down each all total layout how-many need measure roughly how-big motif block done biggest getting yarn stash spare new enough ball',
        not: 'left claim open-for group board weigh repeat whip kind count colour hand-in odd-shape',
        marks: {
          size: { takes: 'count', nouns: 'row round', near: 'size', lead: 'size', only: true },
          shape: { never: true },
          // Squares that somebody has are no wish where it is asked how many it takes.
          motifs: { unasked: true },
          ends: { never: true },
          row_step: { never: true },
          // An afghan is any blanket: no size is meant by the word.
          for: { takes: 'for', not_words: 'afghan' },
        },
        pairs: { dims: ['width', 'height'] },
        fills: ['side'],
        needs: [
          ['width', 'for', 'height', 'motifs'],
          ['height', 'for', 'motifs'],
          ['side', 'gauge'],
          ['size', 'side'],
        ],
        // What is measured needs no size by name.
        settle: (options) =>
          options['for'] !== undefined && (options['width'] !== undefined || options['height'] !== undefined)
            ? Object.fromEntries(Object.entries(options).filter(([name]) => name !== 'for'))
            : options,
        phrases: [
          'how many 6 inch squares for a 4 by 5 foot blanket with a 2 in border',
          'how many 15cm squares make a 120 x 160 cm throw',
        ],
      },
      answer(asked): Answer {
        const { side, gauge, size, border, shape, ends } = asked;
        if (shape !== undefined && shape !== 'diagonal' && side === undefined) {
          throw new Problem('side-missing', 'Only a diagonal square is reckoned from its rows.', {
            option: 'shape',
            hint: `For other shapes measure a finished motif and give ${SAMPLE_SIDE}.`,
          });
        }
        if (asked.motifs !== undefined) return ofNumber({ ...asked, motifs: asked.motifs });
        const { width, height } = requireWishedSize(asked);
        const found = find({
          width,
          height,
          border,
          side,
          gauge,
          size,
          rowStep: asked.row_step,
          endsAMotif: ends,
        });
        const { best, bestOwnSize, options } = found;
        const choices = told(options, line);
        return {
          headline: headlineOf(best, border > 0, `, ${offWish(best.offPercent)}`),
          figures: figuresOf(best),
          lines: gather(
            bestOwnSize &&
              size !== undefined &&
              `Keeping the pattern’s size ${size}, the best is ${line(bestOwnSize)}`,
            choices.slice(0, TOLD_FIRST),
          ),
          details: choices.slice(TOLD_FIRST),
          data: () =>
            defined({ options: options.map(plainly), own_size: bestOwnSize && plainly(bestOwnSize) }),
          working: found.working.steps,
          assumptions: gather(
            'Ranked by the nearest size (what width and height are off, added), then the fewest ends, then the least yarn.',
            side === undefined
              ? [`The motif is a diagonal square, blocked; a seam takes nothing of its side.`]
              : [`A seam takes nothing of the side of a motif.`],
            asked.row_step !== undefined &&
              `The motif’s size is let go from half to double of ${size ?? 0}: far smaller squares come nearer, and nobody would sew them.`,
            side === undefined &&
              asked.row_step === undefined &&
              'The motif keeps its size; row_step lets it change.',
          ),
          cautions: careFor(best.width, best.height, best.motifs),
        };
      },
    }),
  ],
});

interface Asked {
  readonly width?: number | undefined;
  readonly height?: number | undefined;
  readonly for?: StandardSize | undefined;
  readonly motifs: number;
  readonly side?: number | undefined;
  readonly gauge?: Gauge | undefined;
  readonly size?: number | undefined;
  readonly row_step?: number | undefined;
  readonly border: number;
  readonly ends: number;
}

/** A wished number of motifs: with a side, how large it comes out; with a size, how large each must be. */
function ofNumber(asked: Asked): Answer {
  const { motifs, side, gauge, size, border, ends } = asked;
  const wish = readWishedSize(asked);
  const sizes =
    side === undefined && gauge === undefined && size === undefined
      ? []
      : listMotifSizes({ side, gauge, size, rowStep: asked.row_step });
  const found = resizeToNumber({ motifs, border, endsAMotif: ends, sizes, gauge, wish });
  const { best, options } = found;
  const strip = describeStrip(motifs, found);
  const choices = told(options, (option) => line(option, wish !== undefined, sizes.length === 0));
  return {
    headline: headlineOf(
      best,
      border > 0,
      sizes.length === 0
        ? `: each ${cm(best.side)} a side, ${offWish(best.offPercent)}`
        : wish
          ? `, ${offWish(best.offPercent)}`
          : '',
    ),
    figures: figuresOf(best, wish !== undefined),
    lines: gather(strip, choices.slice(0, TOLD_FIRST)),
    details: choices.slice(TOLD_FIRST),
    data: () => ({ options: options.map(plainly) }),
    working: found.working.steps,
    assumptions: [
      wish
        ? `Exactly ${count(motifs, 'motif')}, nearest to the wished size first.`
        : `Exactly ${count(motifs, 'motif')}, nearest to a square first, higher than wide.`,
      ...(gauge
        ? ['The motif is a diagonal square, blocked; a seam takes nothing of its side.']
        : ['A seam takes nothing of the side of a motif.']),
    ],
    cautions: careFor(best.width, best.height, best.motifs),
  };
}

const headlineOf = (best: ResizeOption, bordered: boolean, rest: string) =>
  `${num(best.columns)} across by ${num(best.rows)} down, ${count(best.motifs, 'motif')}${
    best.size === undefined ? '' : ` of size ${best.size}`
  }, ${best.motifs === 1 ? 'makes' : 'make'} ${sizeText(best.width, best.height)}${bordered ? ' with the border' : ''}${rest}.`;

const figuresOf = (best: ResizeOption, wished = true): Figure[] =>
  gather(
    figure('motifs', 'Motifs', best.motifs),
    figure('columns', 'Across', best.columns),
    figure('rows', 'Down', best.rows),
    figure('size', 'Rising rows of a motif', best.size),
    figure('side', 'Side of a motif', best.side, 'cm'),
    figure('width', 'Width', best.width, 'cm'),
    figure('height', 'Height', best.height, 'cm'),
    figure('ends', 'Ends to weave in', best.ends),
    wished && figure('off_percent', 'Off, width and height together', best.offPercent, '%'),
  );

/** Both deviations added: how far off, and what that is the sum of. */
const offWish = (percent: number) =>
  percent < 0.05 ? 'just as wished' : `${num(percent, 1)} % off the wish, width and height together`;

const line = (option: ResizeOption, wished = true, sideAsked = false) =>
  `${num(option.columns)} × ${num(option.rows)}${
    option.size === undefined
      ? sideAsked
        ? ` of ${cm(option.side)}`
        : ''
      : ` of size ${option.size} (${cm(option.side)})`
  }: ${sizeText(option.width, option.height)}, ${count(option.motifs, 'motif')}, ${count(option.ends, 'end')}${
    wished ? `, ${num(option.offPercent, 1)} % off` : ''
  }.`;

/** The best ones, numbered. */
const told = (options: readonly ResizeOption[], say: (option: ResizeOption) => string): string[] =>
  options.slice(0, TOLD).map((option, index) => `${index + 1}. ${say(option)}`);

const plainly = ({ offPercent, ...option }: ResizeOption) => ({ ...option, off_percent: offPercent });
