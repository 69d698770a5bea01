/**
 * Written instructions, read off the row plan: what each row begins with, where it gains and loses, the count at its
 * end, and where colours change. Rows that say the same thing, or the same thing with numbers that go up evenly, are
 * said once.
 */
import { TAIL } from '../../standards/consumption.ts';
import { STITCH_FACTS, type Stitch } from '../../standards/stitches.ts';
import { cutLengths, type Carrying, type Length } from './carrying.ts';
import { listSpans, type ColourRun } from './colour-runs.ts';
import { countFoundationChain, countLosingChain } from '../rows/chains.ts';
import type { RowPlan, Shape } from '../rows/plan.ts';
import { countToCorner, growthOf } from '../rows/round.ts';
import { defined, keepDefined } from '../base/defined.ts';
import { cm, count, t } from '../base/reader.ts';

/** What a row says: fixed words, and numbers that may differ from row to row. */
type Part = string | { readonly n: number; readonly say: (shown: string) => string; readonly key: string };
type Body = readonly Part[];

const ORDINAL = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth'];
const nth = (n: number) => ORDINAL[n] ?? `${n}th`;

const next = (stitch: Stitch, n: number): Part[] =>
  n === 0
    ? []
    : [
        {
          n,
          key: `next ${stitch}`,
          say: (shown) =>
            shown === '1'
              ? `1 ${t(stitch)} in the next stitch`
              : `1 ${t(stitch)} in each of the next ${shown} stitches`,
        },
      ];

/** The chain at the beginning, and the whole first stitch of the row with it where it counts. */
function opening(stitch: Stitch, more: number): { parts: Part[]; eaten: boolean } {
  const { turningChain, chainCounts } = STITCH_FACTS[stitch];
  if (!chainCounts) return { parts: [`${t('ch')} ${turningChain} (does not count)`], eaten: false };
  const chain = `${t('ch')} ${turningChain} (counts as the first ${t(stitch)})`;
  return {
    parts: more === 0 ? [chain] : [chain, `${more} more ${t(stitch)} in the same stitch`],
    eaten: true,
  };
}

function diagonalRow(plan: RowPlan, row: number): Body {
  const { stitch } = plan;
  const { turningChain, chainCounts } = STITCH_FACTS[stitch];
  const before = plan.rows[row - 2]?.count ?? 0;
  if (row === 1) {
    return chainCounts
      ? [
          `${t('ch')} ${turningChain + 1}, 2 ${t(stitch)} in the ${nth(turningChain + 1)} ${t('ch')} from the hook (the ${turningChain} skipped ${t('ch')} count as the first ${t(stitch)})`,
        ]
      : [`${t('ch')} 2, 3 ${t(stitch)} in the second ${t('ch')} from the hook`];
  }
  if (row <= plan.size) {
    const { parts, eaten } = opening(stitch, 1);
    return keepDefined([
      ...parts,
      eaten ? undefined : `2 ${t(stitch)} in the first stitch`,
      `1 ${t(stitch)} in each stitch to the last`,
      `2 ${t(stitch)} in the last stitch`,
    ]);
  }
  const chain = `${t('ch')} ${countLosingChain(stitch)} (does not count)`;
  if (before === 3) return [chain, `${t(stitch)}3tog over the 3 stitches`];
  return [
    chain,
    `${t(stitch)}2tog over the first 2 stitches`,
    `1 ${t(stitch)} in each stitch to the last 2`,
    `${t(stitch)}2tog over the last 2 stitches`,
  ];
}

function blockRow(plan: RowPlan, row: number): Body {
  const { count: now, increases, decreases } = plan.rows[row - 1] ?? { count: 1, increases: 0, decreases: 0 };
  if (row === 1) return ['1 new block'];
  const toLast = ['1 block in each chain space to the last', `${t('sl st')} in the last chain space`];
  const toEnd = '1 block in each chain space to the end';
  const over = `${t('sl st')} to the first chain space`;
  if (increases > 0) return ['1 new block', toEnd];
  if (decreases > 0) return [over, ...toLast];
  // Level rows gain at the one edge and lose at the other; the work is turned, so they go by turns.
  return (row - now) % 2 === 1 ? ['1 new block', ...toLast] : [over, toEnd];
}

function clusterRound(plan: RowPlan, row: number): Body {
  const { stitch } = plan;
  const { parts } = opening(stitch, 0);
  const three = `3 ${t(stitch)}`;
  const firstThree = STITCH_FACTS[stitch].chainCounts ? `2 more ${t(stitch)}` : three;
  if (row === 1) {
    return [
      ...parts,
      `${firstThree} in the ring`,
      `[${t('ch')} 2, ${three} in the ring] 3 times`,
      `${t('ch')} 2`,
    ];
  }
  const side = (end: string): Part[] =>
    row === 2
      ? []
      : [
          {
            n: row - 2,
            key: 'spaces',
            say: (shown) =>
              shown === '1'
                ? `${three} in the next space${end}`
                : `${three} in each of the next ${shown} spaces${end}`,
          },
        ];
  return [
    `${t('sl st')} to the corner space`,
    ...parts,
    `${firstThree}, ${t('ch')} 2 and ${three} in the same space`,
    ...bracket([...side(''), `${three}, ${t('ch')} 2 and ${three} in the next corner space`], 3),
    ...side(''),
  ];
}

/** The parts as they stand in square brackets, worked that many times. */
function bracket(parts: Body, times: number): Part[] {
  const last = parts.length - 1;
  return parts.map((part, at) => {
    const open = at === 0 ? '[' : '';
    const close = at === last ? `] ${count(times, 'time')}` : '';
    if (typeof part === 'string') return `${open}${part}${close}`;
    return {
      n: part.n,
      key: `${open}${part.key}${close}`,
      say: (shown: string) => `${open}${part.say(shown)}${close}`,
    };
  });
}

function growingRound(plan: RowPlan, row: number): Body {
  const { stitch } = plan;
  const now = plan.rows[row - 1]?.count ?? 0;
  if (row === 1) {
    const { parts, eaten } = opening(stitch, 0);
    const left = eaten ? now - 1 : now;
    return [...parts, `${left} ${t(stitch)} in the ring`];
  }
  const { sections, grows } = growthOf(plan);
  const inCorner = grows + 1;
  const a = countToCorner(plan, row);
  const b = (plan.rows[row - 2]?.count ?? 0) / sections - 1 - a;
  const corner = `${inCorner} ${t(stitch)} in the next stitch`;
  const { parts, eaten } = opening(stitch, a === 0 ? grows : 0);
  const first: Part[] = eaten
    ? a === 0
      ? parts
      : [...parts, ...next(stitch, a - 1), corner]
    : [...parts, ...next(stitch, a), corner];
  return [...first, ...bracket([...next(stitch, b + a), corner], sections - 1), ...next(stitch, b)];
}

function flatRow(plan: RowPlan, row: number): Body {
  const { stitch, size } = plan;
  const { turningChain, chainCounts } = STITCH_FACTS[stitch];
  if (row === 1) {
    const skipped = chainCounts
      ? `the ${turningChain} skipped ${t('ch')} count as the first ${t(stitch)}`
      : '';
    const into = `1 ${t(stitch)} in the ${nth(turningChain + 1)} ${t('ch')} from the hook and in each ${t('ch')} to the end`;
    const chain = `${t('ch')} ${countFoundationChain(stitch, size)}`;
    if (!chainCounts) return [chain, into];
    return size === 1 ? [chain, skipped] : [chain, `${into} (${skipped})`];
  }
  const { parts, eaten } = opening(stitch, 0);
  return eaten && size === 1 ? parts : [...parts, `1 ${t(stitch)} in each stitch to the end`];
}

const BODY: Readonly<Record<Shape, (plan: RowPlan, row: number) => Body>> = {
  diagonal: diagonalRow,
  blocks: blockRow,
  clusters: clusterRound,
  circle: growingRound,
  hexagon: growingRound,
  'solid-square': growingRound,
  flat: flatRow,
};

/** Rows that are said together: every `step`th from `from` to `to`. */
export interface Instruction {
  readonly from: number;
  readonly to: number;
  readonly step: 1 | 2;
  /** With tokens for terms. */
  readonly text: string;
}

/** The rows that an instruction says, each with its count. */
export const rowsIn = (plan: RowPlan, { from, to, step }: Omit<Instruction, 'text'>): RowPlan['rows'] =>
  plan.rows.filter(({ row }) => row >= from && row <= to && (row - from) % step === 0);

/** `7`, `7, 9`, `7, 9 … 23`: one number a row, the same one said once. */
export function writeSeries(values: readonly number[]): string {
  const [first = 0, second = 0] = values;
  const last = values.at(-1) ?? first;
  if (values.every((value) => value === first)) return String(first);
  return values.length <= 3 ? values.join(', ') : `${first}, ${second} … ${last}`;
}

const keyOf = (body: Body) => body.map((part) => (typeof part === 'string' ? part : part.key)).join(' | ');
const numbers = (body: Body) => body.flatMap((part) => (typeof part === 'string' ? [] : [part.n]));

interface Saying {
  readonly body: Body;
  readonly key: string;
  /** The body's numbers and the count at the end. */
  readonly numbers: readonly number[];
}

/** How many rows from `at`, `step` apart, say the same with numbers that go up evenly. */
function alike(rows: readonly Saying[], at: number, step: number, to: number): number {
  const first = rows[at];
  const second = rows[at + step];
  if (!first || !second || at + step > to || second.key !== first.key) return 1;
  const by = second.numbers.map((n, slot) => n - (first.numbers[slot] ?? 0));
  let many = 2;
  for (;;) {
    const before = rows[at + step * (many - 1)];
    const following = rows[at + step * many];
    if (!before || !following || at + step * many > to || following.key !== first.key) return many;
    if (following.numbers.some((n, slot) => n - (before.numbers[slot] ?? 0) !== by[slot])) return many;
    many++;
  }
}

function grouped(plan: RowPlan, from: number, to: number, all: readonly Saying[]): Instruction[] {
  const out: Instruction[] = [];
  const say = (at: number, many: number, step: 1 | 2) => {
    const rows = Array.from({ length: many }, (_, index) => all[at + index * step]).filter(
      (row) => row !== undefined,
    );
    let slot = 0;
    const body = (rows[0]?.body ?? []).map((part) => {
      if (typeof part === 'string') return part;
      const shown = writeSeries(rows.map((row) => row.numbers[slot] ?? 0));
      slot++;
      return part.say(shown);
    });
    const called = plan.worked === 'rounds' ? 'Round' : 'Row';
    const last = at + (many - 1) * step;
    const label =
      many === 1
        ? `${called} ${at + 1}`
        : step === 1
          ? `${called}s ${at + 1}–${last + 1}`
          : `${called}s ${writeSeries(Array.from({ length: many }, (_, index) => at + 1 + index * step))}`;
    const counts = rows.map((row) => row.numbers.at(-1) ?? 0);
    const unit =
      plan.counted === 'blocks' ? (counts.every((n) => n === 1) ? 'block' : 'blocks') : t(plan.stitch);
    out.push({
      from: at + 1,
      to: last + 1,
      step,
      text: `${label}: ${body.join(', ')}. (${writeSeries(counts)} ${unit})`,
    });
  };
  for (let at = from - 1; at < to;) {
    const one = alike(all, at, 1, to - 1);
    const two = 2 * Math.min(alike(all, at, 2, to - 1), alike(all, at + 1, 2, to - 1));
    if (two > one && two >= 6 && at + two <= to) {
      say(at, two / 2, 2);
      say(at + 1, two / 2, 2);
      at += two;
    } else {
      say(at, one, 1);
      at += one;
    }
  }
  return out;
}

/** What happens to the colours before the first row of a run. */
function change(plan: RowPlan, carrying: Carrying, from: number, colour: string, dropped: string): string {
  const row = plan.called;
  const edge = (ended: number) =>
    plan.worked === 'rounds' ? 'at the join' : `at the edge where row ${ended} ended`;
  const using = (name: string, at: number): Length | undefined =>
    carrying.lengths.find((length) => length.colour === name && length.fromRow <= at && at <= length.toRow);
  const pickUp = using(colour, from)?.pickUps.find((one) => one.row === from);
  const take = pickUp
    ? `pick it up where it hangs since ${row} ${pickUp.since}, past ${count(pickUp.over, row)}, without pulling it tight`
    : `join it, leaving ${cm(TAIL * 100, 0)}`;
  const hangs = using(dropped, from - 1);
  const leave =
    hangs && hangs.toRow >= from
      ? `let ${dropped} hang ${edge(from - 1)}`
      : `cut ${dropped}, leaving ${cm(TAIL * 100, 0)}`;
  return `Change to ${colour} with the last pull of ${row} ${from - 1}: ${take}; ${leave}.`;
}

/** Loops on the hook before the closing pull, for so many stitches worked together (common practice). */
export const countLoops = (stitch: Stitch, together: number) =>
  stitch === 'hdc' ? 2 * together + 1 : together + 1;

function notes(plan: RowPlan): string[] {
  const { stitch, shape } = plan;
  const { turningChain, chainCounts } = STITCH_FACTS[stitch];
  const said: string[] = [];
  if (shape === 'blocks') {
    said.push(
      `A new block: ${t('ch')} ${turningChain + 3}, 1 ${t(stitch)} in the ${nth(turningChain + 1)} ${t('ch')} from the hook and in each of the next 2 ${t('ch')}; the ${turningChain} skipped ${t('ch')} make its chain space.`,
      `A block in a chain space: ${t('sl st')} in the space, ${t('ch')} ${turningChain}, 3 ${t(stitch)} in the same space.`,
    );
  }
  if (plan.worked === 'rounds') {
    said.push(
      `Begin with a ring that draws shut. Join every round with a ${t('sl st')} to its first stitch; do not turn.`,
    );
  } else {
    said.push('Turn at the end of every row.');
  }
  if (chainCounts && (shape === 'flat' || shape === 'diagonal')) {
    said.push(
      `Where a chain counts, the last stitch of the row after it goes into its top${shape === 'diagonal' ? '; a chain that does not count is left unworked' : ''}.`,
    );
  }
  if (shape === 'diagonal') {
    said.push(
      `Loops on the hook before the closing pull: ${t(stitch)} ${countLoops(stitch, 1)}, two together ${countLoops(stitch, 2)}, three together ${countLoops(stitch, 3)} (common practice).`,
    );
  }
  if (shape === 'hexagon' || shape === 'solid-square') {
    said.push('Each corner sits on the middle of the corner below; mark that stitch until you see it.');
  }
  return said;
}

const LONG: Readonly<Record<Stitch, Parameters<typeof t>[0]>> = {
  sc: 'single crochet',
  hdc: 'half double crochet',
  dc: 'double crochet',
  tr: 'treble',
};

/** What the short words mean, in the reader's own terms. */
function short(plan: RowPlan): string {
  const { stitch, shape } = plan;
  const needsSlip = plan.worked === 'rounds' || shape === 'blocks';
  return keepDefined([
    `${t('ch')}: ${t('chain')}`,
    needsSlip ? `${t('sl st')}: ${t('slip stitch')}` : undefined,
    `${t(stitch)}: ${t(LONG[stitch])}`,
    shape === 'diagonal'
      ? `${t(stitch)}2tog, ${t(stitch)}3tog: two, three of them closed together as one`
      : undefined,
  ]).join('; ');
}

export interface Words {
  /** What holds for the whole piece. */
  readonly before: readonly string[];
  /** Rows, and changes of colour between them, in order. */
  readonly steps: readonly (Instruction | { readonly change: string; readonly from: number })[];
  readonly after: readonly string[];
}

const sayingOf = (plan: RowPlan, row: number): Saying => {
  const body = BODY[plan.shape](plan, row);
  return { body, key: keyOf(body), numbers: [...numbers(body), plan.rows[row - 1]?.count ?? 0] };
};

/** One row by itself: what is said of it, and the change of colour before it where there is one. */
export function writeRow(
  plan: RowPlan,
  runs: readonly ColourRun[],
  row: number,
): { readonly text: string; readonly change?: string } {
  const body = BODY[plan.shape](plan, row).map((part) =>
    typeof part === 'string' ? part : part.say(String(part.n)),
  );
  const all = listSpans(runs);
  const at = all.findIndex(({ from }) => from === row);
  const dropped = all[at - 1];
  const taken = all[at];
  return defined({
    text: `${body.join(', ')}.`,
    change:
      dropped && taken ? change(plan, cutLengths(plan, runs), row, taken.colour, dropped.colour) : undefined,
  });
}

/** The instructions of a piece, with its colours where it has any. Every text carries tokens for terms and lengths. */
export function writeInstructions(plan: RowPlan, runs: readonly ColourRun[] = []): Words {
  const all = plan.rows.map(({ row }) => sayingOf(plan, row));
  const carrying = cutLengths(plan, runs);
  const steps: (Instruction | { change: string; from: number })[] = [];
  let dropped: string | undefined;
  for (const { colour, from, to } of runs.length === 0
    ? [{ colour: undefined, from: 1, to: plan.rows.length }]
    : listSpans(runs)) {
    if (colour !== undefined) {
      steps.push({
        from,
        change:
          dropped === undefined ? `Begin with ${colour}.` : change(plan, carrying, from, colour, dropped),
      });
    }
    steps.push(...grouped(plan, from, to, all));
    dropped = colour;
  }
  return {
    before: [short(plan), ...notes(plan)],
    steps,
    after: [
      `Fasten off, leaving ${cm(TAIL * 100, 0)}; ${count(carrying.ends, 'end')} to weave in, each in three passes.`,
    ],
  };
}

/** The instructions line by line. */
export const listLines = ({ before, steps, after }: Words): string[] => [
  ...before,
  ...steps.map((step) => ('change' in step ? step.change : step.text)),
  ...after,
];
