/** How long are the seams, how much yarn do they take, and in which order are they sewn? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { command, question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { careFor } from '../../src/core/size/cautions.ts';
import { joinMotifs, type Joining, type SeamMethod } from '../../src/core/edges/seams.ts';
import { canBeTold, writeSeam, writeStrips } from '../../src/core/edges/written-joining.ts';
import { cm, count, m, num, t } from '../../src/core/base/reader.ts';
import { findUsualHook } from '../../src/core/yarn/thickness.ts';
import { caution } from '../../src/standards/care.ts';
import { ROUGH_BAND, USUAL_YARN, SEWING_STRAND } from '../../src/standards/consumption.ts';
import { seamChoices } from '../shared/seam-choices.ts';
import { usualHookWords } from '../shared/hook-words.ts';

/** A seam this long, in metres, is an evening and more at a heavy blanket. */
const LONG_SEAM = 10;

const CALLED: Readonly<Record<SeamMethod, string>> = {
  whip: 'whip stitch',
  'slip-stitch': t('slip stitch'),
  'single-crochet': t('single crochet'),
};

/** Which motif is joined to which, while that can be read. */
const stripLines = (columns: number, rows: number): string[] =>
  canBeTold(columns, rows)
    ? ['Motifs numbered row by row from the top left:', ...writeStrips(columns, rows)]
    : [];

/** The other order, with the lengths of yarn that it saves. */
const fewerEnds = (
  { columns, rows }: { readonly columns: number; readonly rows: number },
  { straight, strands, seams }: Joining,
): string =>
  `With fewer ends: ${strands === undefined ? 'join' : 'sew'} ${count(columns - 1, 'seam')} straight down through all ${rows} rows, taking up two motifs after two, then ${rows - 1} across${strands === undefined ? `: ${count(straight, 'thread')} instead of ${seams}` : `, a new strand only where one runs out: ${count(straight, 'strand')} instead of ${strands}`}.`;

export const joining = command({
  name: 'joining',
  says: 'How long the seams are, how much yarn they take, and in which order to join',
  about: 'craft',
  questions: [
    question({
      says: 'How long the seams are, how much yarn they take, and in which order to join',
      options: {
        columns: opt.whole('Motifs side by side', { max: 400, example: '8' }),
        rows: opt.whole('Motifs under each other', { max: 400, example: '11' }),
        side: opt.length('The side of one finished motif', '15cm'),
        method: opt
          .choice(
            { says: 'How they are joined', assumed: 'Sewn in whip stitch, as no method was named.' },
            seamChoices,
            'whip',
          )
          .default('whip'),
        gauge: opt.gauge('The edge’s stitches over 10 cm, like 13').optional(),
        hook: opt.hook().optional(),
        yarn: opt
          .yarn({
            says: 'How thick: a category 0 to 7, its name, or wraps per inch like 11wpi',
            assumed: USUAL_YARN.assumed,
          })
          .default(USUAL_YARN.thickness),
      },
      example: 'columns:8 rows:11 side:15cm method:whip',
      refused: { line: 'columns:1 rows:1 side:15cm', option: 'columns' },
      asked: {
        ways: [
          '?yarn join',
          'join yarn',
          'how-long join',
          'how-much join',
          'join whip|slip-stitch',
          '?yarn|ball whip|slip-stitch',
          'join measure',
          'join motif <pair>',
          'join total',
          'which join',
        ],
        also: 'motif block across down whip slip-stitch hook how-much yarn each row blanket stitch all layout need total hook down how-far',
        not: 'group border claim take-part per-week left odd-shape',
        marks: {
          columns: { takes: 'count', nouns: 'across', near: 'across', only: true },
          rows: { takes: 'count', nouns: 'row down', near: 'down', only: true },
          method: {
            choices: { whip: 'whip', 'slip-stitch': 'slip-stitch', 'single-crochet': 'sc single_crochet' },
            with: 'first',
          },
          gauge: { takes: 'gauge', near: 'gauge', only: true },
        },
        pairs: { grid: ['columns', 'rows'] },
        fills: ['columns', 'rows', 'side'],
        phrases: [
          'how much yarn to whip stitch 8 by 11 squares of 15cm together',
          'how long are the seams of 7 by 9 motifs at 20cm',
        ],
      },
      answer({ yarn, ...asked }): Answer {
        const usual = findUsualHook(yarn);
        const found = joinMotifs({ ...asked, hook: asked.hook ?? usual.mm, wpi: yarn.wpi });
        // A sewn seam at a known gauge asks for no hook.
        const hookMatters = asked.gauge === undefined || asked.method !== 'whip';
        const { columns, rows } = asked;
        const { seamLength, ratio } = found;
        const lengths = found.strands ?? found.seams;
        return {
          headline: `${m(seamLength)} of seam take about ${m(found.yarn)} of yarn in ${CALLED[asked.method]}, and ${m(found.tails)} more for tails.`,
          figures: gather(
            figure('seam_length', 'Length of the seams', seamLength, 'm'),
            figure('yarn', 'Yarn in the seams', found.yarn, 'm'),
            figure('tails', 'Yarn in the tails', found.tails, 'm'),
            figure('seams', 'Seams', found.seams),
            found.strands !== undefined && figure('strands', 'Strands to sew with', found.strands),
          ),
          lines: gather(
            columns > 1 &&
              `First the strips: join ${columns} motifs into each of ${count(rows, 'strip')}, ${count(columns - 1, 'seam')} of ${cm(found.shortLength)} in a strip.`,
            rows > 1 &&
              `${columns > 1 ? 'Then' : 'Join'} the strips to each other: ${count(rows - 1, 'long seam')} of ${cm(found.longLength)}, the corners pinned first.`,
            found.strands !== undefined &&
              `In strands of ${m(SEWING_STRAND)}, longer ones fray: ${count(found.strands, 'strand')}, two ends each.`,
            writeSeam(asked.method),
            stripLines(columns, rows),
            columns > 1 && rows > 1 && found.straight < lengths && fewerEnds({ columns, rows }, found),
          ),
          working: found.working.steps,
          assumptions: gather(
            asked.hook === undefined && hookMatters && usualHookWords(usual),
            !asked.gauge && `The seam’s stitches follow hook and yarn, as no ${t('gauge')} was given.`,
            asked.method === 'whip' &&
              'Sewn in by one strand at each edge, the edge a strand and a half thick.',
            `About ${num(ratio)} times the seam, right to perhaps ${num(ROUGH_BAND)} %: sew one seam with a measured length and go by that.`,
          ),
          cautions: gather(careFor(found.width, found.height), seamLength > LONG_SEAM && caution('hands')),
        };
      },
    }),
  ],
});
