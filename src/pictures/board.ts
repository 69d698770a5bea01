/** The board of a blanket that a group makes: it fills up cell by cell, and every kind has its bar. */
import { count, num, type Reader } from '../core/base/reader.ts';
import {
  altText,
  drawable,
  fitted,
  INK,
  n,
  page,
  PALE_INK,
  PAPER,
  rect,
  SMALL,
  text,
  type Drawing,
} from './drawing.ts';
import { heading, noteLines, numbering, sizeLine } from './blanket.ts';
import { drawGrid, gridDefs, planGrid, type CellState, type GridPlan, type GridView } from './grid.ts';
import { SHAPE_WORDS } from './motif.ts';

/** How far one kind is. */
export interface KindTally {
  /** Wanted in all, spares counted in where spares are wanted. */
  readonly wanted: number;
  /** Accepted. */
  readonly made: number;
  /** Handed in, and not accepted yet. */
  readonly waiting: number;
  /** Pledged and not yet handed in. */
  readonly pledged: number;
}

export interface BoardCell {
  readonly kind: number;
  /** Quarter turns clockwise, as in a blanket. */
  readonly turn: number;
  /** Left out in every cell of a kind, its cells fill up from the top left by the kind's tally. */
  readonly state?: CellState | undefined;
  readonly mark?: string | undefined;
}

export interface BoardView extends Omit<GridView, 'cells'> {
  readonly title: string;
  readonly cells: readonly BoardCell[];
  /** In the order of the kinds. */
  readonly tallies: readonly KindTally[];
  /** One line under the bars, such as the closing date; already in words. */
  readonly note?: string | undefined;
  readonly reader: Reader;
}

/** The states of the cells: those given, the rest of each kind by its tally in reading order, made first. */
export function cellStates(cells: readonly BoardCell[], tallies: readonly KindTally[]): CellState[] {
  const left = tallies.map(({ made, waiting, pledged }) => ({ made, waiting, pledged }));
  for (const { kind, state } of cells) {
    const tally = left[kind];
    if (tally && state !== undefined && state !== 'open') tally[state]--;
  }
  return cells.map(({ kind, state }) => {
    if (state !== undefined) return state;
    const tally = left[kind];
    for (const next of ['made', 'waiting', 'pledged'] as const) {
      if (tally && tally[next] > 0) {
        tally[next]--;
        return next;
      }
    }
    return 'open';
  });
}

/** The group's blanket: cells made, waiting, pledged and open told apart by dots, hatching and paleness, a bar with numbers for every kind. */
export function drawBoard(view: BoardView): Drawing {
  const states = cellStates(view.cells, view.tallies);
  const grid: GridView = {
    ...view,
    cells: view.cells.map((cell, index) => ({ ...cell, state: states[index] })),
  };
  const plan = planGrid(grid);
  const sum = (of: keyof KindTally) => view.tallies.reduce((all, tally) => all + tally[of], 0);
  const all = {
    wanted: sum('wanted'),
    made: sum('made'),
    waiting: sum('waiting'),
    pledged: sum('pledged'),
  };
  const summary = `${tallyWords(all)} of ${num(all.wanted)}`;
  const head = heading(view.title, summary, plan);
  const key = stateKey(plan, all.waiting > 0, head.height + plan.height + 2 * plan.margin);
  const bars = drawBars(view, plan, key.bottom + plan.margin * 0.8);
  const notes = noteLines(
    [...(view.note === undefined ? [] : [view.note]), `${sizeLine(view)}.`, numbering(plan)],
    plan,
    bars.bottom + plan.margin * 0.2,
  );
  const alt = altText([
    `Board of the group blanket ${drawable(view.title)}: ${summary}.`,
    ...view.kinds.map((kind, index) => {
      const tally = view.tallies[index] ?? { wanted: 0, made: 0, waiting: 0, pledged: 0 };
      return `${kind.letter}, ${drawable(kind.name)} (${SHAPE_WORDS[kind.shape]}): ${barWords(tally)}.`;
    }),
    ...(view.note === undefined ? [] : [drawable(view.note)]),
    `The blanket is ${sizeLine(view)}; made cells are drawn full, ${all.waiting > 0 ? 'those that wait to be accepted dotted, ' : ''}pledged cells hatched, open cells pale.`,
    ...(plan.numbered
      ? []
      : ['The cells are too small for numbers; every fifth row and column is marked at the edges.']),
  ]);
  const body = head.svg + drawGrid(grid, plan, head.height + plan.margin) + key.svg + bars.svg + notes.svg;
  return page(
    { width: plan.width, height: notes.bottom + plan.margin },
    alt,
    gridDefs(view, plan.scale),
    body,
  );
}

const STATES: readonly { readonly state: CellState; readonly says: string }[] = [
  { state: 'made', says: 'made' },
  { state: 'waiting', says: 'waiting' },
  { state: 'pledged', says: 'pledged' },
  { state: 'open', says: 'open' },
];
const BAR_FILL: Readonly<Record<CellState, string>> = {
  made: '#3a6ea5',
  waiting: '#8fb3d6',
  pledged: '#cddcec',
  open: PAPER,
};

/** A stretch of a bar, or a box of the key: full, dotted, hatched, or empty. */
function stretch(state: CellState, x: number, y: number, width: number, height: number): string {
  const box = rect(x, y, width, height, `class="bar-${state}" fill="${BAR_FILL[state]}"`);
  return state === 'pledged' || state === 'waiting'
    ? box + rect(x, y, width, height, `fill="url(#${state})" fill-opacity="0.7"`)
    : box;
}

const frame = (x: number, y: number, width: number, height: number, scale: number) =>
  rect(x, y, width, height, `fill="none" stroke="${INK}" stroke-width="${n(1.5 * scale)}"`);

/** What the looks mean; of motifs that wait only where some do. */
function stateKey(plan: GridPlan, waits: boolean, top: number): { svg: string; bottom: number } {
  const small = SMALL * plan.scale;
  const box = small * 1.3;
  const svg = STATES.filter(({ state }) => waits || state !== 'waiting').map(({ state, says }, index) => {
    const x = plan.margin + index * 200 * plan.scale;
    return (
      stretch(state, x, top, box, box) +
      frame(x, top, box, box, plan.scale) +
      text(x + box + 10 * plan.scale, top + small, says, { size: small, role: 'key' })
    );
  });
  return { svg: svg.join(''), bottom: top + box };
}

/** `12 made, 2 waiting, 5 pledged, 13 open`; what waits to be accepted is said only where some do. */
function tallyWords({ wanted, made, waiting, pledged }: KindTally): string {
  const open = Math.max(0, wanted - made - waiting - pledged);
  return `${num(made)} made, ${waiting > 0 ? `${num(waiting)} waiting, ` : ''}${num(pledged)} pledged, ${num(open)} open`;
}

/** `12 made, 5 pledged, 13 open of 30 motifs`. */
export const barWords = (tally: KindTally): string =>
  tally.wanted === 0 ? 'none wanted' : `${tallyWords(tally)} of ${count(tally.wanted, 'motif')}`;

function drawBars(view: BoardView, plan: GridPlan, top: number): { svg: string; bottom: number } {
  const { scale, margin } = plan;
  const small = SMALL * scale;
  const icon = 84 * scale;
  const step = icon + 22 * scale;
  const x = margin + icon + 16 * scale;
  const width = plan.width - margin - x;
  const svg = view.kinds.map((kind, index) => {
    const y = top + index * step;
    const tally = view.tallies[index] ?? { wanted: 0, made: 0, waiting: 0, pledged: 0 };
    const whole = Math.max(tally.wanted, tally.made + tally.waiting + tally.pledged, 1);
    const made = (width * tally.made) / whole;
    const waiting = (width * tally.waiting) / whole;
    const pledged = (width * tally.pledged) / whole;
    const [barTop, bar] = [y + small * 1.25, 24 * scale];
    return (
      `<g class="kind"><use href="#kind-${index}" transform="translate(${n(margin)} ${n(y)}) scale(${n(icon / 100)})"/>` +
      text(x, y + small * 0.85, fitted(`${kind.letter}  ${drawable(kind.name)}`, width, small, true), {
        size: small,
        bold: true,
        role: 'kind-name',
      }) +
      stretch('open', x, barTop, width, bar) +
      (made > 0 ? stretch('made', x, barTop, made, bar) : '') +
      (waiting > 0 ? stretch('waiting', x + made, barTop, waiting, bar) : '') +
      (pledged > 0 ? stretch('pledged', x + made + waiting, barTop, pledged, bar) : '') +
      frame(x, barTop, width, bar, scale) +
      text(x, y + icon, fitted(barWords(tally), width, small), {
        size: small,
        fill: PALE_INK,
        role: 'kind-count',
      }) +
      '</g>'
    );
  });
  return { svg: svg.join(''), bottom: top + view.kinds.length * step };
}
