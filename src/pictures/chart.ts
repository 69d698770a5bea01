/** A chart of one motif: stitch by stitch in the trade's symbols while they can be read, else row by row with counts. */
import { chooseInk } from '../core/blanket/colour.ts';
import type { ColourRun } from '../core/stripes/colour-runs.ts';
import type { TrueSize } from '../core/yarn/true-size.ts';
import { sumCounts, findWidest, type RowPlan } from '../core/rows/index.ts';
import { STITCH_FACTS } from '../standards/stitches.ts';
import { CM_PER_INCH } from '../standards/units.ts';
import { cm, count, forReader, handed, num, t, type Reader } from '../core/base/reader.ts';
import { chartBlocks } from './chart-blocks.ts';
import { chartRounds } from './chart-rounds.ts';
import { chartRows, type ChartPlan, type ChartRow } from './chart-rows.ts';
import {
  altText,
  drawable,
  fitted,
  INK,
  lines,
  n,
  page,
  PAGE,
  PALE_INK,
  PAPER,
  rect,
  SMALL,
  text,
  type Drawing,
  widthOf,
} from './drawing.ts';
import { hexOf, SHAPE_WORDS, UNNAMED, type Colours } from './motif.ts';
import { chainOval, symbol, type ChartStitch } from './symbols.ts';

export interface ChartView {
  readonly title: string;
  /** The terms of the one who looks. */
  readonly reader: Reader;
  /** Rows already finished; left out, the chart says nothing of progress. */
  readonly done?: number | undefined;
  /** How large the finished piece is: the chart is drawn in that proportion, with a measure under it. */
  readonly true?: TrueSize | undefined;
  /** #rrggbb of a motif in one colour that has no name. */
  readonly plain?: string | undefined;
  /** #rrggbb by colour name; a name that is not in it is drawn as its words say. */
  readonly colours?: Colours | undefined;
}

const MARGIN = 24;
const INNER = PAGE - 2 * MARGIN;
/** Beside the widest row: a row's number and a chain that does not count. */
const BESIDE = 84;
/** From this width on, in pixels, a stitch's symbol can be read at phone width. */
const LEAST_ROOM = 26;
const MOST_SYMBOL_ROWS = 24;
const MOST_SYMBOL_ROUNDS = 8;
/** Rows nearer than this are not each numbered. */
const LABEL_EVERY = 27;
const BANDS_HIGH = 760;
const MOST_HIGH = 1100;

/** How high a row is for the width of its stitches; undefined where that is not known, or the chart lies in rounds or blocks. */
const heightToWidth = (plan: RowPlan, size?: TrueSize) =>
  size && 'row' in size && plan.worked === 'rows' && plan.counted === 'stitches'
    ? size.row / size.stitch
    : undefined;

/** Whether a piece is small enough to be drawn stitch by stitch. */
export function inSymbols(plan: RowPlan, size?: TrueSize): boolean {
  if (plan.shape === 'blocks') return false;
  if (plan.worked === 'rows') {
    const ratio = heightToWidth(plan, size) ?? 1;
    return (
      plan.rows.length <= MOST_SYMBOL_ROWS &&
      findWidest(plan).count * LEAST_ROOM <= INNER - 2 * BESIDE &&
      // Drawn true, a stitch must still have its room, and its row must not be a line.
      plan.rows.length * ratio * LEAST_ROOM <= MOST_HIGH &&
      ratio * LEAST_ROOM >= 14
    );
  }
  const reach = INNER / 2 - 20;
  const around = 2 * Math.PI * reach * (plan.shape === 'circle' ? 1 : 1.05);
  return plan.rows.length <= MOST_SYMBOL_ROUNDS && findWidest(plan).count * 20 <= around;
}

function planChart(plan: RowPlan, symbols: boolean, size?: TrueSize): ChartPlan {
  const many = plan.rows.length;
  if (plan.worked === 'rounds') {
    // Corners of a hexagon reach further than its sides.
    const reach = (INNER / 2 - 8) * (plan.shape === 'hexagon' ? 0.87 : 1);
    const ring = symbols ? 26 : 0;
    const high = Math.min(symbols ? 64 : 46, (reach - ring) / many);
    return chartRounds(plan, high, ring, 8, symbols);
  }
  if (plan.counted === 'blocks') {
    const along = many + 1;
    return chartBlocks(plan, Math.min(44, (INNER - 2 * BESIDE) / along, BANDS_HIGH / along), BESIDE);
  }
  const most = findWidest(plan).count;
  const widest = Math.min(symbols ? 48 : INNER, (INNER - 2 * BESIDE) / most);
  const ratio = heightToWidth(plan, size);
  if (ratio !== undefined) {
    const room = Math.min(widest, (symbols ? MOST_HIGH : BANDS_HIGH) / (many * ratio));
    return chartRows(plan, room, room * ratio, BESIDE, symbols);
  }
  const room = widest;
  if (!symbols) return chartRows(plan, room, Math.min(44, Math.max(3, BANDS_HIGH / many)), BESIDE, false);
  // Tall stitches are drawn taller, as far as the page goes.
  const tall = { sc: 0.95, hdc: 1.2, dc: 1.5, tr: 1.9 }[plan.stitch];
  return chartRows(plan, room, Math.max(30, Math.min(room * tall, MOST_HIGH / many)), BESIDE, true);
}

/** The colour of every row, from the first; the last colour goes on. */
function rowColours(plan: RowPlan, runs: readonly ColourRun[]): string[] {
  const named = runs.flatMap(({ colour, rows }) => Array.from({ length: rows }, () => colour));
  const last = named.at(-1) ?? '';
  return plan.rows.map((_, index) => named[index] ?? last);
}

/**
 * The chart of a piece. `runs` are its colours by row, empty for one unnamed colour. Rows lie from the bottom upwards,
 * rounds from the middle outwards; a number stands where its row begins.
 */
export function drawChart(plan: RowPlan, runs: readonly ColourRun[], view: ChartView): Drawing {
  const symbols = inSymbols(plan, view.true);
  const chart = planChart(plan, symbols, view.true);
  // Who holds the hook in the left hand works every row and round the other way.
  const mirrored = view.reader.hand === 'left';
  const named = rowColours(plan, runs);
  const hexes = named.map((name) =>
    name === '' ? (view.plain ?? UNNAMED) : hexOf(name, view.colours ?? {}),
  );
  const head = chartHead(plan, view);
  const left = (PAGE - chart.width) / 2;
  const body =
    `<g transform="translate(${n(left)} ${n(head.height)})">` +
    (mirrored ? `<g class="mirrored" transform="translate(${n(chart.width)} 0) scale(-1 1)">` : '') +
    (plan.worked === 'rounds'
      ? [...chart.rows]
          .reverse()
          .map((row) => ground(row, hexes, view.done))
          .join('')
      : chart.rows.map((row) => ground(row, hexes, view.done)).join('')) +
    chart.foundation
      .map((at) => chainOval(at, at, [at[0] + 1, at[1]], Math.min(20, chart.room * 0.7), INK))
      .join('') +
    chart.rows.map((row) => stitchesIn(row, chart.room, hexes)).join('') +
    (mirrored ? '</g>' : '') +
    rowLabels(plan, mirrored ? mirrorLabels(chart) : chart, view, symbols) +
    '</g>';
  const legend = chartLegend(plan, chart, named, hexes, view, symbols, head.height + chart.height + MARGIN);
  const alt = chartAlt(plan, named, view, symbols);
  return page({ width: PAGE, height: legend.bottom + MARGIN }, alt, '', head.svg + body + legend.svg);
}

/** The chart with its numbers and counts where they stand in a mirror. */
function mirrorLabels(chart: ChartPlan): ChartPlan {
  const over = ([x, y]: readonly [number, number]) => [chart.width - x, y] as const;
  const other = { start: 'end', middle: 'middle', end: 'start' } as const;
  return {
    ...chart,
    rows: chart.rows.map((row) => ({
      ...row,
      label: over(row.label),
      middle: over(row.middle),
      anchor: other[row.anchor],
    })),
  };
}

function chartHead(plan: RowPlan, view: ChartView): { svg: string; height: number } {
  const under = chartSize(plan, view.reader);
  return {
    svg:
      text(MARGIN, MARGIN + 29, fitted(drawable(view.title), INNER, 34, true), {
        size: 34,
        bold: true,
        role: 'title',
      }) +
      lines(under, INNER, SMALL)
        .map((line, index) =>
          text(MARGIN, MARGIN + 64 + 29 * index, line, { size: SMALL, fill: PALE_INK, role: 'size' }),
        )
        .join(''),
    height: MARGIN + 64 + 29 * lines(under, INNER, SMALL).length,
  };
}

/** `Diagonal square: 24 rows, 312 stitches in hdc, widest 25 in row 12`, in the reader's own terms. */
export function chartSize(plan: RowPlan, reader: Reader): string {
  const words = SHAPE_WORDS[plan.shape];
  const top = findWidest(plan);
  const unit = plan.counted === 'blocks' ? 'block' : 'stitch';
  const many = unit === 'block' ? 'blocks' : 'stitches';
  const { called } = plan;
  const widestWords = () => {
    if (plan.shape === 'flat') return `${num(top.count)} in every row`;
    return plan.worked === 'rounds'
      ? `${num(top.count)} in the last`
      : `widest ${num(top.count)} in row ${top.row}`;
  };
  return forReader(
    `${words.charAt(0).toUpperCase()}${words.slice(1)}: ${count(plan.rows.length, called)}, ` +
      `${count(sumCounts(plan), unit, many)} ${unit === 'block' ? 'with' : 'in'} ${t(plan.stitch)}, ${widestWords()}`,
    reader,
  );
}

function ground(row: ChartRow, hexes: readonly string[], done: number | undefined): string {
  const hex = hexes[row.row - 1] ?? UNNAMED;
  const veiled = done !== undefined && row.row <= done ? ' data-done="true"' : '';
  return `<path class="row" data-row="${row.row}"${veiled} d="${row.ground}" fill="${hex}" stroke="#000000" stroke-opacity="0.25" stroke-width="1"/>`;
}

function stitchesIn(row: ChartRow, room: number, hexes: readonly string[]): string {
  if (row.stitches.length === 0) return '';
  const own = chooseInk(hexes[row.row - 1] ?? UNNAMED, INK, PAPER);
  const drawn = row.stitches.map((stitch) => symbol(stitch, room, outsideRow(stitch, row) ? INK : own));
  return `<g class="stitches" data-row="${row.row}">${drawn.join('')}</g>`;
}

/** A chain that stands for nothing lies beside its row, on paper. */
const outsideRow = (stitch: ChartStitch, row: ChartRow) =>
  row.anchor !== 'middle' &&
  stitch.kind === 'chain' &&
  stitch.feet[0]?.[0] === stitch.head[0] &&
  row.stitches.at(-1) === stitch;

function rowLabels(plan: RowPlan, chart: ChartPlan, view: ChartView, symbols: boolean): string {
  const [first, second] = chart.rows;
  if (!first) return '';
  const rounds = plan.worked === 'rounds';
  const apart = second ? Math.hypot(0, second.middle[1] - first.middle[1]) : LABEL_EVERY;
  let every = Math.max(1, Math.ceil(LABEL_EVERY / Math.max(apart, 0.1)));
  // An odd step, so that numbers keep changing sides as the work does.
  if (!rounds && every % 2 === 0) every++;
  const last = chart.rows.length;
  const size = Math.min(SMALL, Math.max(18, apart * 0.8));
  const parts: string[] = [];
  const nextRow = view.done === undefined ? undefined : view.done + 1;
  const shown = (row: number) => {
    if (row === nextRow) return true;
    if (nextRow !== undefined && nextRow <= last && Math.abs(row - nextRow) < every) return false;
    if (row === last) return true;
    if (row === 1) return !rounds || every === 1;
    return row % every === 0 && row + every <= last;
  };
  for (const row of chart.rows.filter(({ row: number }) => shown(number))) {
    const next = row.row === nextRow;
    if (rounds && symbols) {
      const state = next ? 'next' : view.done !== undefined && row.row <= view.done ? 'done' : 'plain';
      parts.push(numberOnRound(row, state));
      continue;
    }
    const ticked = view.done !== undefined && row.row <= view.done ? '✓' : '';
    const words = `${next ? '▶' : ''}${row.row}${ticked}`;
    const look = { size, bold: next, anchor: row.anchor, rim: true, role: 'row-number' } as const;
    parts.push(text(row.label[0], row.label[1] + size * 0.36, words, look));
    if (!symbols) {
      const counted = String(plan.rows[row.row - 1]?.count ?? 0);
      const at = row.middle;
      parts.push(
        text(at[0], at[1] + size * 0.36, counted, { size, anchor: 'middle', rim: true, role: 'row-count' }),
      );
    }
  }
  return parts.join('');
}

/** A round's number: there is no room for a tick, so what is done stands on dark and what comes next is ringed. */
function numberOnRound(row: ChartRow, state: 'plain' | 'done' | 'next'): string {
  const [x, y] = row.label;
  const words = { size: 18, bold: state !== 'plain', anchor: 'middle', role: 'row-number' } as const;
  if (state === 'plain') return text(x, y + 6.5, String(row.row), { ...words, rim: true });
  const [fill, ink] = state === 'done' ? [INK, PAPER] : [PAPER, INK];
  return (
    `<circle class="round-${state}" cx="${n(x)}" cy="${n(y)}" r="13" fill="${fill}" stroke="${INK}" stroke-width="2.5"/>` +
    text(x, y + 6.5, String(row.row), { ...words, fill: ink })
  );
}

/** `1–4, 7–10 and 13`: rows of one colour, in words. */
export function rowSpans(rows: readonly number[]): string {
  const spans: [number, number][] = [];
  for (const row of rows) {
    const open = spans.at(-1);
    if (open?.[1] === row - 1) open[1] = row;
    else spans.push([row, row]);
  }
  const said = spans.map(([from, to]) => (from === to ? String(from) : `${from}–${to}`));
  return said.length < 2 ? said.join('') : `${said.slice(0, -1).join(', ')} and ${said.at(-1) ?? ''}`;
}

/** The rows of each colour, in the order in which the colours come. */
function colourRows(named: readonly string[]): Map<string, number[]> {
  const rows = new Map<string, number[]>();
  for (const [index, name] of named.entries()) rows.set(name, [...(rows.get(name) ?? []), index + 1]);
  return rows;
}

const SYMBOL_WORDS = { sc: 'sc', hdc: 'hdc', dc: 'dc', tr: 'tr' } as const satisfies Record<string, string>;

function chartLegend(
  plan: RowPlan,
  chart: ChartPlan,
  named: readonly string[],
  hexes: readonly string[],
  view: ChartView,
  symbols: boolean,
  top: number,
): { svg: string; bottom: number } {
  const parts: string[] = [];
  let y = top;
  const step = SMALL * 1.4;
  if (symbols) {
    const key = symbolKey(plan, view.reader, y);
    parts.push(key.svg);
    y += key.height;
  }
  const ruled = ruler(plan, chart, view, y);
  parts.push(ruled.svg);
  y += ruled.height;
  const { called } = plan;
  for (const [name, rows] of colourRows(named)) {
    const words = `${name === '' ? 'one colour' : drawable(name)}: ${rows.length === 1 ? called : `${called}s`} ${rowSpans(rows)}`;
    const wrapped = lines(words, INNER - 36, SMALL);
    const hex = hexes[(rows[0] ?? 1) - 1] ?? UNNAMED;
    parts.push(
      rect(MARGIN, y + 3, 20, 20, `class="swatch" fill="${hex}" stroke="#000000" stroke-opacity="0.5"`),
    );
    for (const line of wrapped) {
      parts.push(text(MARGIN + 32, y + SMALL * 0.9, line, { size: SMALL, role: 'colour' }));
      y += step;
    }
  }
  y += 6;
  for (const line of chartNotes(plan, view, symbols).flatMap((note) => lines(note, INNER, SMALL))) {
    parts.push(text(MARGIN, y + SMALL * 0.9, line, { size: SMALL, fill: PALE_INK, role: 'note' }));
    y += step;
  }
  return { svg: parts.join(''), bottom: y };
}

/** Lengths of a measure, in cm or in, of which the longest that fits is drawn. */
const MEASURES = [50, 20, 10, 5, 2, 1, 0.5] as const;

/** Pixels for a cm of the finished piece; undefined where its size is not known. */
function pixelsForCm(plan: RowPlan, chart: ChartPlan, size: TrueSize | undefined): number | undefined {
  if (!size) return undefined;
  if ('row' in size) return heightToWidth(plan, size) === undefined ? undefined : chart.room / size.stitch;
  const [last] = chart.rows.slice(-1);
  return plan.worked === 'rounds' && last ? chart.across / size.side : undefined;
}

/** A measure under the chart, as long as so many cm or inches of the finished piece are in it. */
function ruler(
  plan: RowPlan,
  chart: ChartPlan,
  view: ChartView,
  top: number,
): { svg: string; height: number } {
  const scale = pixelsForCm(plan, chart, view.true);
  if (scale === undefined) return { svg: '', height: 0 };
  const unit = view.reader.units === 'imperial' ? CM_PER_INCH : 1;
  const length = MEASURES.find((one) => one * unit * scale <= INNER / 3) ?? 0.5;
  const long = length * unit * scale;
  const y = top + 14;
  return {
    svg:
      `<path class="measure" d="M${n(MARGIN)} ${n(y - 8)}v16m0 -8h${n(long)}m0 -8v16" fill="none" stroke="${INK}" stroke-width="2.5"/>` +
      text(
        MARGIN + long + 12,
        y + SMALL * 0.35,
        forReader(`${cm(length * unit)} of the piece as it is worked`, view.reader),
        { size: SMALL, role: 'measure' },
      ),
    height: SMALL * 1.7,
  };
}

/** How many stitches stand on one place at the most, from the second row on; 1 where none do. */
function mostOnOne(plan: RowPlan): number {
  if (plan.shape === 'clusters') return 1;
  const places = { circle: plan.rows[0]?.count ?? 1, hexagon: 6, 'solid-square': 4, diagonal: 2 } as const;
  const grown = plan.rows.slice(1).map(({ count: many }, index) => many - (plan.rows[index]?.count ?? 0));
  const grows = Math.max(0, ...grown);
  return plan.shape in places ? 1 + Math.ceil(grows / places[plan.shape as keyof typeof places]) : 1;
}

/** A symbol of the key: what is drawn, how wide that is, and what it says. */
interface KeyEntry {
  readonly drawn: readonly ChartStitch[];
  readonly wide: number;
  /** Room for a stitch, as in the chart. */
  readonly room: number;
  readonly says: string;
}

const KEY_HIGH = 52;

/** The symbols that a chart of the piece shows. */
function keyEntries(plan: RowPlan): KeyEntry[] {
  const { stitch, shape } = plan;
  const [top, foot] = [0, 38];
  const one = (drawn: Omit<ChartStitch, 'row'>, says: string): KeyEntry => ({
    drawn: [{ row: 0, ...drawn }],
    wide: 24,
    room: 32,
    says,
  });
  const fan = mostOnOne(plan);
  // Two or more on one place spread like a fan.
  const wide = fan > 3 ? 56 : 24;
  const fanned = Array.from({ length: fan }, (_, index): ChartStitch => ({
    row: 0,
    kind: stitch,
    feet: [[wide / 2, foot]],
    head: [(wide * index) / (fan - 1), top + 2],
    shared: true,
  }));
  const together = (many: number) => {
    const feet = Array.from({ length: many }, (_, index) => [(24 * index) / (many - 1), foot] as const);
    return one({ kind: stitch, feet, head: [12, top] }, `${t(stitch)}${many}tog`);
  };
  return [
    one({ kind: 'chain', feet: [[0, foot - 17]], head: [24, foot - 17], chains: 1 }, t('ch')),
    one({ kind: stitch, feet: [[12, foot]], head: [12, top] }, t(SYMBOL_WORDS[stitch])),
    ...(fan > 1
      ? [{ drawn: fanned, wide, room: fan > 3 ? 16 : 24, says: `${num(fan)} ${t(stitch)} in one` }]
      : []),
    // The falling rows take two together; the last row closes with three.
    ...(shape === 'diagonal' ? [together(2), together(3)] : []),
    ...(plan.worked === 'rounds'
      ? [one({ kind: 'join', feet: [[12, foot - 16]], head: [12, foot - 16] }, t('sl st'))]
      : []),
  ];
}

/** What each symbol of the chart stands for, in the reader's own terms; as many to a line as there is room for. */
function symbolKey(plan: RowPlan, reader: Reader, top: number): { svg: string; height: number } {
  let [x, y] = [MARGIN, top];
  const drawn = keyEntries(plan).map(({ drawn: stitches, wide, room, says }) => {
    const words = forReader(says, reader);
    const long = wide + 16 + widthOf(words, SMALL);
    if (x > MARGIN && x + long > MARGIN + INNER) [x, y] = [MARGIN, y + KEY_HIGH];
    const [at, line] = [x, y];
    x += long + 36;
    return (
      `<g class="symbol-key"><g transform="translate(${n(at)} ${n(line)})">${stitches.map((stitch) => symbol(stitch, room, INK)).join('')}</g>` +
      `${text(at + wide + 16, line + 30, words, { size: SMALL, role: 'symbol' })}</g>`
    );
  });
  return { svg: drawn.join(''), height: y + KEY_HIGH - top };
}

function chartNotes(plan: RowPlan, view: ChartView, symbols: boolean): string[] {
  const { stitch } = plan;
  const { chainCounts, turningChain } = STITCH_FACTS[stitch];
  const notes: string[] = [];
  if (view.done !== undefined) {
    const called = plan.worked;
    const last = plan.rows.length;
    const onDark = symbols && plan.worked === 'rounds';
    const next = view.done < last ? (onDark ? '; the next is ringed' : '; ▶ marks the next') : '';
    const how = onDark ? 'their numbers on dark' : 'ticked';
    notes.push(`${num(Math.min(view.done, last))} of ${num(last)} ${called} done, ${how}${next}.`);
  }
  if (plan.worked === 'rows')
    notes.push(
      forReader(
        `A number stands where its row begins: odd rows run from ${handed('right to left', 'left to right')}, even rows from ${handed('left to right', 'right to left')}.`,
        view.reader,
      ),
    );
  else
    notes.push(
      symbols
        ? forReader(
            `Rounds run ${handed('against', 'with')} the clock; a round’s number stands on it.`,
            view.reader,
          )
        : 'Upwards the rounds, downwards their counts.',
    );
  if (!symbols) {
    const unit = plan.counted === 'blocks' ? 'blocks' : 'stitches';
    if (plan.worked === 'rows') notes.push(`The number in the middle of a row is its count of ${unit}.`);
  } else if (chainCounts) {
    const says =
      plan.shape === 'diagonal'
        ? 'at the start of a row that grows counts as its first stitch, in a row that gets shorter for nothing'
        : `at the start counts as the first stitch`;
    notes.push(forReader(`The ${t('ch')} ${turningChain} ${says}.`, view.reader));
  } else
    notes.push(
      forReader(`The ${t('ch')} ${turningChain} at the start does not count as a stitch.`, view.reader),
    );
  return notes;
}

function chartAlt(plan: RowPlan, named: readonly string[], view: ChartView, symbols: boolean): string {
  const { called } = plan;
  const colours = [...colourRows(named)].map(
    ([name, rows]) =>
      `${name === '' ? 'One colour' : drawable(name)}: ${rows.length === 1 ? called : `${called}s`} ${rowSpans(rows)}.`,
  );
  const counts = plan.rows.map(({ count: of }) => num(of)).join(', ');
  return altText([
    `Chart of ${drawable(view.title)}. ${chartSize(plan, view.reader)}.`,
    symbols
      ? `Every stitch is drawn as its symbol, ${plan.worked === 'rounds' ? 'rounds from the middle outwards' : 'rows from the bottom upwards'}.`
      : `Every ${called} is a band with its count, ${plan.worked === 'rounds' ? 'from the middle outwards' : 'from the bottom upwards'}.`,
    ...(view.done === undefined
      ? []
      : [`${num(Math.min(view.done, plan.rows.length))} of ${count(plan.rows.length, called)} done.`]),
    ...colours,
    `Counts by ${called}: ${counts}.`,
  ]);
}
