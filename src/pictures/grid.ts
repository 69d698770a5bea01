/** The cells of a blanket with its border around them: what a plan and a board have in common. */
import type { Stitch } from '../standards/stitches.ts';
import { dotted, hatch, INK, n, PALE_INK, PAGE, PAPER, rect, SMALL, text } from './drawing.ts';
import { hexOf, motif, UNNAMED, type Colours, type PictureKind } from './motif.ts';

/** Made and accepted, handed in and not looked at yet, on somebody's hook, or still to come. */
export type CellState = 'made' | 'waiting' | 'pledged' | 'open';

export interface GridCell {
  /** Which of the kinds, from 0. */
  readonly kind: number;
  /** Quarter turns clockwise. */
  readonly turn: number;
  /** Unset: nothing is said of it, it is drawn as it will be. */
  readonly state?: CellState | undefined;
  /** A short text of up to three letters, drawn where the cell's number would stand. */
  readonly mark?: string | undefined;
}

export interface GridView {
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the top left. */
  readonly cells: readonly GridCell[];
  readonly kinds: readonly PictureKind[];
  /** #rrggbb by colour name. */
  readonly colours: Colours;
  /** From the inside out. */
  readonly border: readonly { readonly colour: string; readonly stitch: Stitch }[];
  /** The finished size in cm, which gives the cells their proportion. */
  readonly width: number;
  readonly height: number;
}

/** The least side of a cell in pixels: its letter can still be read. More columns make a wider picture. */
const LEAST_CELL = 28;
const LARGEST_CELL = 170;
/** From this side on a cell has room for its number. */
const NUMBERED_FROM = 62;
/** Every fifth row and column is marked where the numbers are left out. */
const MARKED_EVERY = 5;
const MARGIN = 24;

export interface GridPlan {
  /** Of the whole picture, in pixels. */
  readonly width: number;
  /** How much larger than a plain page everything is, so that texts stay legible when it is shown as small. */
  readonly scale: number;
  readonly left: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  readonly border: number;
  /** Of the grid with its border and marks. */
  readonly height: number;
  readonly numbered: boolean;
  readonly margin: number;
}

/** Where everything goes. */
export function planGrid({ columns, rows, border, width, height }: GridView): GridPlan {
  const ratio = height / rows / (width / columns);
  // A border or a hand's difference does not make a square oblong.
  const oblong = Number.isFinite(ratio) && (ratio > 1.2 || ratio < 1 / 1.2);
  const tall = oblong ? Math.min(2.5, Math.max(0.4, ratio)) : 1;
  const least = LEAST_CELL / Math.min(1, tall);
  const edge = border.length === 0 ? 0 : Math.max(3, Math.min(14, 72 / border.length)) * border.length;
  const sides = (marks: number) => 2 * (MARGIN + edge) + marks;
  const numberedCell = Math.min(LARGEST_CELL, (PAGE - sides(0)) / columns);
  const numbered = numberedCell * Math.min(1, tall) >= NUMBERED_FROM;
  const marks = numbered ? 0 : 2 * SMALL;
  const room = Math.min(LARGEST_CELL, (PAGE - sides(marks)) / columns);
  // A page for many columns is wider by what the cells need, and its texts and margins grow with it.
  const scale = Math.max(1, (least * columns) / (PAGE - sides(marks)));
  const cellWidth = numbered ? numberedCell : Math.max(least, room);
  const cellHeight = cellWidth * tall;
  const pageWidth = PAGE * scale;
  const across = cellWidth * columns + 2 * edge * scale;
  const markRoom = marks * scale;
  return {
    width: pageWidth,
    scale,
    left: (pageWidth - across - markRoom) / 2 + markRoom + edge * scale,
    cellWidth,
    cellHeight,
    border: edge * scale,
    height: cellHeight * rows + 2 * edge * scale + (numbered ? 0 : SMALL * 1.4 * scale),
    numbered,
    margin: MARGIN * scale,
  };
}

/** Patterns and the motifs, each once: a cell refers to its kind. */
export function gridDefs(view: Pick<GridView, 'kinds' | 'colours'>, scale: number): string {
  const motifs = view.kinds.map((kind, index) => `<g id="kind-${index}">${motif(kind, view.colours)}</g>`);
  return hatch('pledged', 9 * scale, INK, 2.2 * scale) + dotted('waiting', 11 * scale, INK) + motifs.join('');
}

/** Border, cells and marks, from `top` down. */
export function drawGrid(view: GridView, plan: GridPlan, top: number): string {
  const { cellWidth, cellHeight, left, scale } = plan;
  const first = top + plan.border + (plan.numbered ? 0 : SMALL * 1.4 * scale);
  const parts = [drawBorder(view, plan, first)];
  const small = Math.min(cellWidth, cellHeight);
  const veils = { waiting: '', pledged: '', open: '' };
  const labels: string[] = [];
  view.cells.forEach((cell, index) => {
    const x = left + (index % view.columns) * cellWidth;
    const y = first + Math.floor(index / view.columns) * cellHeight;
    const turned = cell.turn === 0 ? '' : ` rotate(${90 * cell.turn} 50 50)`;
    const place = `translate(${n(x)} ${n(y)}) scale(${n4(cellWidth / 100)} ${n4(cellHeight / 100)})${turned}`;
    const state = cell.state === undefined ? '' : ` data-state="${cell.state}"`;
    parts.push(
      `<use class="cell" data-kind="${cell.kind}" data-turn="${cell.turn}"${state} href="#kind-${cell.kind}" transform="${place}"/>`,
    );
    if (cell.state !== undefined && cell.state !== 'made')
      veils[cell.state] += `M${n(x)} ${n(y)}h${n(cellWidth)}v${n(cellHeight)}h-${n(cellWidth)}z`;
    labels.push(cellLabels(view, cell, index, { x, y, small, plan }));
  });
  // One path for all cells of a state, so that hatching runs on across cells and the picture stays small.
  if (veils.open !== '')
    parts.push(`<path class="veil-open" d="${veils.open}" fill="${PAPER}" fill-opacity="0.78"/>`);
  if (veils.pledged !== '')
    parts.push(
      `<path class="veil-pledged" d="${veils.pledged}" fill="${PAPER}" fill-opacity="0.5"/>` +
        `<path d="${veils.pledged}" fill="url(#pledged)" fill-opacity="0.45"/>`,
    );
  if (veils.waiting !== '')
    parts.push(
      `<path class="veil-waiting" d="${veils.waiting}" fill="${PAPER}" fill-opacity="0.2"/>` +
        `<path d="${veils.waiting}" fill="url(#waiting)" fill-opacity="0.6"/>`,
    );
  parts.push(seams(view, plan, first), ...labels);
  if (!plan.numbered) parts.push(edgeMarks(view, plan, first));
  return parts.join('');
}

const n4 = (value: number) => String(Math.round(value * 10_000) / 10_000);

function cellLabels(
  view: GridView,
  cell: GridCell,
  index: number,
  at: { x: number; y: number; small: number; plan: GridPlan },
): string {
  const { x, y, small, plan } = at;
  const letter = view.kinds[cell.kind]?.letter ?? '?';
  const size = Math.min(40, Math.max(16, small * 0.3));
  const fill = cell.state === 'open' ? PALE_INK : INK;
  const look = { size, bold: true, rim: true, fill, role: 'letter' };
  // In a corner where there is room, so that the middle of the motif stays to be seen.
  const out = plan.numbered
    ? [text(x + 7, y + plan.cellHeight - 9, letter, look)]
    : [
        text(x + plan.cellWidth / 2, y + plan.cellHeight / 2 + size * 0.36, letter, {
          ...look,
          anchor: 'middle',
        }),
      ];
  if (plan.numbered) {
    const number = cell.mark ?? String(index + 1);
    out.push(text(x + 7, y + SMALL + 1, number, { size: SMALL * 0.92, rim: true, fill, role: 'number' }));
    if (cell.state === 'made') {
      const tick = { x: x + plan.cellWidth - 17, y: y + plan.cellHeight - 17 };
      out.push(
        `<g class="tick"><circle cx="${n(tick.x)}" cy="${n(tick.y)}" r="13" fill="${PAPER}" stroke="${INK}" stroke-width="1.5"/>` +
          `<path d="M${n(tick.x - 6)} ${n(tick.y)}l4 5l8 -10" fill="none" stroke="${INK}" stroke-width="3"/></g>`,
      );
    }
  }
  return out.join('');
}

function seams({ columns, rows }: GridView, plan: GridPlan, first: number): string {
  const { left, cellWidth, cellHeight } = plan;
  let path = '';
  for (let column = 0; column <= columns; column++)
    path += `M${n(left + column * cellWidth)} ${n(first)}v${n(rows * cellHeight)}`;
  for (let row = 0; row <= rows; row++)
    path += `M${n(left)} ${n(first + row * cellHeight)}h${n(columns * cellWidth)}`;
  const width = Math.min(3, Math.max(1, cellWidth / 40));
  return `<path d="${path}" fill="none" stroke="${PAPER}" stroke-width="${n(width)}"/>`;
}

function drawBorder(view: GridView, plan: GridPlan, first: number): string {
  const rounds = view.border.length;
  if (rounds === 0) return '';
  const each = plan.border / rounds;
  const width = plan.cellWidth * view.columns;
  const height = plan.cellHeight * view.rows;
  return view.border
    .map((round, index) => {
      const out = each * (index + 1);
      const hex = round.colour === '' ? UNNAMED : hexOf(round.colour, view.colours);
      const line = `stroke="#000000" stroke-opacity="0.35" stroke-width="${n(Math.min(1.5, each / 4))}" rx="${n(out * 0.5)}"`;
      return rect(
        plan.left - out,
        first - out,
        width + 2 * out,
        height + 2 * out,
        `class="border" fill="${hex}" ${line}`,
      );
    })
    .reverse()
    .join('');
}

function edgeMarks(view: GridView, plan: GridPlan, first: number): string {
  const size = SMALL * 0.9 * plan.scale;
  const marked = (count: number) =>
    Array.from({ length: count }, (_, index) => index + 1).filter(
      (at) => at === 1 || at % MARKED_EVERY === 0,
    );
  const edge = plan.border + 6 * plan.scale;
  const columns = marked(view.columns).map((column) =>
    text(plan.left + (column - 0.5) * plan.cellWidth, first - edge, String(column), {
      size,
      anchor: 'middle',
      role: 'column',
    }),
  );
  const rows = marked(view.rows).map((row) =>
    text(plan.left - edge, first + (row - 0.5) * plan.cellHeight + size * 0.36, String(row), {
      size,
      anchor: 'end',
      role: 'row',
    }),
  );
  return columns.join('') + rows.join('');
}
