/** A motif as it is printed: by itself, or among those of a blanket. */
import { gather } from '../../src/chat/answer.ts';
import { metresOf } from '../../src/core/blanket/yarn-at-hand.ts';
import { cm, count, g, m, mm, num, size, t, type Reader } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { findWidest, sumCounts } from '../../src/core/rows/index.ts';
import { cutLengths } from '../../src/core/stripes/carrying.ts';
import {
  rowsIn,
  writeInstructions,
  type Instruction,
  type Words,
} from '../../src/core/stripes/written-rows.ts';
import { readMeasured } from '../../src/core/yarn/measured-motif.ts';
import { planOf, type MotifSpec, type Yarn } from '../../src/core/yarn/motif.ts';
import { reckonMotifYarn, type MotifYarn } from '../../src/core/yarn/motif-yarn.ts';
import type { RowPlan } from '../../src/core/rows/index.ts';
import type { Block } from '../../src/paper/paper.ts';
import { drawMotifChart } from './motif-chart.ts';
import { carryLines, described, rowWord, RowWord, stripeLines, units } from './motif-words.ts';

/** What is known of a motif, label by label. */
export function motifFacts(motif: MotifSpec & { readonly blocked?: boolean }): (readonly [string, string])[] {
  const plan = planOf(motif);
  const { gauge, blocked, hook, side, weight, runs } = motif;
  const { expected, weighed } = readMeasured(motif);
  const widest = findWidest(plan);
  const measured = side ?? expected;
  const facts: (readonly [string, string] | undefined)[] = [
    ['Stitch', t(plan.stitch)],
    ['Hook', hook === undefined ? 'not said' : mm(hook)],
    [
      t('Gauge'),
      gauge === undefined
        ? 'not said'
        : `${num(gauge.stitches)} stitches${gauge.rows === undefined ? '' : ` and ${num(gauge.rows)} rows`} over ${cm(gauge.over)}${blocked === undefined ? '' : blocked ? ', blocked' : ', not blocked'}`,
    ],
    [
      'Finished',
      measured === undefined
        ? 'not measured'
        : `${size(measured, measured)}, ${side === undefined ? `by its ${t('gauge')}` : 'as measured'}`,
    ],
    [
      `${RowWord(plan)}s`,
      `${num(plan.rows.length)}; the widest is ${rowWord(plan)} ${widest.row} with ${units(plan, widest.count)}`,
    ],
    ['In all', units(plan, sumCounts(plan))],
    ['Ends', `${count(cutLengths(plan, runs).ends, 'end')} to weave in`],
    weight === undefined
      ? undefined
      : ['Weighs', `${g(weight)}, right to about ${num(weighed?.band ?? 0, 0)} %`],
  ];
  return facts.filter((fact) => fact !== undefined);
}

/** What a motif is printed with: how its colours look, what is known of their yarn, who reads. */
export interface Printing {
  readonly looks: Readonly<Record<string, string>>;
  readonly yarns: readonly Yarn[];
  /** Its yarn as it is reckoned beside the other kinds of a blanket, of which one may be weighed; by itself, if not given. */
  readonly yarn?: MotifYarn | undefined;
  readonly reader: Reader;
}

/** The yarn of one motif, colour by colour. */
export const yarnOfOne = (motif: MotifSpec, yarns: readonly Yarn[]): MotifYarn =>
  reckonMotifYarn(motif, yarns, new Working());

/** A table of its colours: what is counted, yarn, ends. */
function yarnTable(motif: MotifSpec, yarn: MotifYarn, looks: Printing['looks']): Block {
  const carrying = cutLengths(planOf(motif), motif.runs);
  return {
    kind: 'table',
    widths: [4, 2, 2, 2],
    head: ['Colour', 'Stitches', 'Yarn in one', 'Ends'],
    rows: yarn.colours.map((part) => [
      { text: part.colour, ...(looks[part.colour] === undefined ? {} : { dab: looks[part.colour] ?? '' }) },
      num(part.stitches),
      m(metresOf(part)),
      num(carrying.byColour.get(part.colour)?.ends ?? yarn.ends),
    ]),
  };
}

/** How sure the yarn is. */
export const yarnSureness = ({ how, band }: MotifYarn): string =>
  how === 'weighed'
    ? `Yarn from the weight of a finished one, right to about ${num(band, 0)} %.`
    : how === 'as-weighed'
      ? `Yarn from the weight of another kind, stitch by stitch, right to about ${num(band, 0)} %.`
      : `Yarn is estimated, right to about ${num(band, 0)} %: weigh one to be surer.`;

/** Rows in words, a box to tick for every row, with the count at its end beside it. */
export function rowBlocks(plan: RowPlan, words: Words): Block[] {
  const boxes = (step: Instruction) =>
    rowsIn(plan, step).map(({ row, count: counted }) => `${row}: ${num(counted)}`);
  return [
    { kind: 'list', items: words.before },
    {
      kind: 'small',
      text: `Tick a box when its ${rowWord(plan)} is done. Beside a box: the ${rowWord(plan)}, and how many ${plan.counted} it has at its end.`,
    },
    ...words.steps.map((step): Block => {
      if ('change' in step) return { kind: 'strong', text: step.change };
      return {
        kind: 'ticks',
        ticks: [step.from === step.to ? { text: step.text } : { text: step.text, boxes: boxes(step) }],
      };
    }),
    ...words.after.map((text): Block => ({ kind: 'text', text })),
  ];
}

/** Everything about a motif but its name: facts, yarn, rows, chart, colours. */
export function motifBlocks(
  motif: MotifSpec & { readonly blocked?: boolean },
  { looks, yarns, yarn: reckoned, reader }: Printing,
): Block[] {
  const plan = planOf(motif);
  const yarn = reckoned ?? yarnOfOne(motif, yarns);
  const chart = drawMotifChart(motif, looks, { reader });
  const colours = [...stripeLines(plan, motif.runs), ...carryLines(motif, new Working())];
  return gather<Block>(
    { kind: 'facts', facts: motifFacts(motif) },
    { kind: 'part', text: 'Yarn' },
    yarnTable(motif, yarn, looks),
    { kind: 'small', text: yarnSureness(yarn) },
    { kind: 'part', text: `${RowWord(plan)}s` },
    rowBlocks(plan, writeInstructions(plan, motif.runs)),
    { kind: 'part', text: 'Chart' },
    { kind: 'picture', svg: chart.svg, width: chart.width, height: chart.height, says: chart.alt },
    colours.length > 0 && [
      { kind: 'part', text: 'Colours and ends' },
      { kind: 'list', items: colours },
    ],
  );
}

/** What it is, in one line. */
export const motifLine = (motif: MotifSpec): Block => {
  const plan = planOf(motif);
  return {
    kind: 'text',
    text: `Worked as ${described(motif)}: ${count(plan.rows.length, rowWord(plan))}, ${units(plan, sumCounts(plan))}.`,
  };
};
