/** A blanket as it is planned, or as far as it is made. */
import { count, forReader, num, size, t, type Reader } from '../core/base/reader.ts';
import {
  altText,
  drawable,
  fitted,
  lines,
  n,
  page,
  PALE_INK,
  rect,
  SMALL,
  text,
  widthOf,
  type Drawing,
} from './drawing.ts';
import { drawGrid, gridDefs, planGrid, type GridPlan, type GridView } from './grid.ts';
import { bandsOf, hexOf, onceFor, SHAPE_WORDS, UNNAMED, type Colours, type PictureKind } from './motif.ts';

export type { Drawing } from './drawing.ts';
export type { PictureKind } from './motif.ts';

/** One place of the layout. */
export interface BlanketCell {
  /** Which of the kinds, from 0. */
  readonly kind: number;
  /** Quarter turns clockwise: at 0 a diagonal square or blocks begin in the top left corner, a flat piece at its lower edge. */
  readonly turn: number;
  /** Whether it is made. Left out in every cell, the blanket is drawn as it will be. */
  readonly done?: boolean | undefined;
  /** A text of up to three letters instead of the cell's number. */
  readonly mark?: string | undefined;
}

export interface BlanketView extends Omit<GridView, 'cells'> {
  readonly title: string;
  readonly cells: readonly BlanketCell[];
  /** The units and terms of the one who looks. */
  readonly reader: Reader;
  /** False where the size is not known: width and height are a proportion then, and no size is told. */
  readonly sizeKnown?: boolean;
}

/** The blanket with its cells, turnings, letters, numbers, border, legend and size. Sizes of the view in cm, of the drawing in pixels. */
export function drawBlanket(view: BlanketView): Drawing {
  const following = view.cells.some((cell) => cell.done !== undefined);
  const made = view.cells.filter((cell) => cell.done).length;
  const grid: GridView = {
    ...view,
    cells: view.cells.map((cell) => ({
      ...cell,
      state: following ? (cell.done ? ('made' as const) : ('open' as const)) : undefined,
    })),
  };
  const plan = planGrid(grid);
  const head = heading(view.title, sizeLine(view), plan);
  const progress = following
    ? [`${num(made)} of ${count(view.cells.length, 'motif')} made; the pale ones are still to come.`]
    : [];
  const notes = noteLines([...progress, numbering(plan)], plan, head.height + plan.height + 2 * plan.margin);
  const legendTop = notes.bottom + plan.margin * 0.6;
  const counts = view.kinds.map((_, kind) => {
    const of = view.cells.filter((cell) => cell.kind === kind);
    const done = of.filter((cell) => cell.done).length;
    return following ? `${num(done)} of ${num(of.length)} made` : `× ${num(of.length)}`;
  });
  const legend = drawLegend(view, counts, plan, legendTop);
  const border = borderLines(view, plan, legend.bottom);
  const alt = blanketAlt(view, plan, counts, following ? made : undefined);
  const body =
    head.svg + drawGrid(grid, plan, head.height + plan.margin) + notes.svg + legend.svg + border.svg;
  return page(
    { width: plan.width, height: border.bottom + plan.margin },
    alt,
    gridDefs(view, plan.scale),
    body,
  );
}

/** `12 motifs, 3 across and 4 down, 51 × 66 cm`, in the reader's own units. */
export function sizeLine({
  columns,
  rows,
  width,
  height,
  reader,
  sizeKnown = true,
}: Pick<BlanketView, 'columns' | 'rows' | 'width' | 'height' | 'reader' | 'sizeKnown'>): string {
  return forReader(
    `${count(columns * rows, 'motif')}, ${columns} across and ${rows} down${sizeKnown ? `, ${size(width, height)}` : ''}`,
    reader,
  );
}

/** Title and the line under it. */
export function heading(title: string, under: string, plan: GridPlan): { svg: string; height: number } {
  const { scale, margin, width } = plan;
  const large = 34 * scale;
  const small = SMALL * scale;
  const room = width - 2 * margin;
  const y = margin + large * 0.85;
  return {
    svg:
      text(margin, y, fitted(drawable(title), room, large, true), {
        size: large,
        bold: true,
        role: 'title',
      }) +
      text(margin, y + small * 1.6, fitted(under, room, small), {
        size: small,
        fill: PALE_INK,
        role: 'size',
      }),
    height: y + small * 1.9,
  };
}

/** Sentences under the grid. */
export function noteLines(
  sentences: readonly string[],
  plan: GridPlan,
  top: number,
): { svg: string; bottom: number } {
  const small = SMALL * plan.scale;
  const wrapped = sentences.flatMap((sentence) =>
    lines(drawable(sentence), plan.width - 2 * plan.margin, small),
  );
  return {
    svg: wrapped
      .map((line, index) =>
        text(plan.margin, top + small * (0.8 + 1.35 * index), line, {
          size: small,
          fill: PALE_INK,
          role: 'note',
        }),
      )
      .join(''),
    bottom: top + small * 1.35 * wrapped.length,
  };
}

export const numbering = (plan: GridPlan) =>
  plan.numbered
    ? 'Cells are numbered row by row from the top left.'
    : 'Rows are marked at the left and columns at the top; cells count row by row from the top left.';

/** From more kinds on, two stand side by side and the names of the colours are told once, below. */
const MOST_ONE_BY_ONE = 12;

/** One entry a kind: how it looks, its letter and name, how many, its colours. */
export function drawLegend(
  { kinds, colours }: { kinds: readonly PictureKind[]; colours: Colours },
  counts: readonly string[],
  plan: GridPlan,
  top: number,
): { svg: string; bottom: number } {
  const { scale, margin } = plan;
  const abreast = kinds.length > MOST_ONE_BY_ONE ? 2 : 1;
  const column = (plan.width - margin * (abreast + 1)) / abreast;
  const icon = 74 * scale;
  const step = icon + 18 * scale;
  const svg = kinds.map((kind, index) => {
    const x = margin + (index % abreast) * (column + margin);
    const y = top + Math.floor(index / abreast) * step;
    return `<g class="legend">${legendEntry(kind, index, counts[index] ?? '', colours, { x, y, icon, column, scale, brief: abreast > 1 })}</g>`;
  });
  const bottom = top + Math.ceil(kinds.length / abreast) * step;
  if (abreast === 1) return { svg: svg.join(''), bottom };
  const key = colourKey(
    kinds.flatMap((kind) => namesOf(kind, colours)),
    plan,
    bottom,
  );
  return { svg: svg.join('') + key.svg, bottom: key.bottom };
}

function legendEntry(
  kind: PictureKind,
  index: number,
  counted: string,
  colours: Colours,
  at: { x: number; y: number; icon: number; column: number; scale: number; brief: boolean },
): string {
  const { x, y, icon, column, scale, brief } = at;
  const big = 25 * scale;
  const small = SMALL * scale;
  const right = x + column;
  const from = x + icon + 16 * scale;
  const start = from + widthOf(`${kind.letter}  `, big, true);
  const first = y + icon * 0.36;
  const second = y + icon * 0.86;
  const nameRoom = right - start - (brief ? 0 : widthOf(counted, small) + 10 * scale);
  const names = namesOf(kind, colours);
  const dabsFrom = from + widthOf(counted, small) + 12 * scale;
  return [
    `<use href="#kind-${index}" transform="translate(${n(x)} ${n(y)}) scale(${n(icon / 100)})"/>`,
    text(from, first, kind.letter, { size: big, bold: true, role: 'legend-letter' }),
    text(start, first, fitted(drawable(kind.name), nameRoom, big), { size: big, role: 'legend-name' }),
    brief
      ? text(from, second, counted, { size: small, role: 'legend-count' })
      : text(right, first, counted, { size: small, anchor: 'end', role: 'legend-count' }),
    brief ? dabs(names, dabsFrom, second, right, small) : swatches(names, from, second, right, small),
  ].join('');
}

const dabOf = (hex: string, x: number, baseline: number, small: number) =>
  rect(
    x,
    baseline - small * 0.77,
    small * 0.9,
    small * 0.9,
    `class="swatch" fill="${hex}" stroke="#000000" stroke-opacity="0.5"`,
  );

/** Dabs alone, as many as there is room for. */
const dabs = (all: readonly Swatch[], x: number, baseline: number, right: number, small: number) =>
  all
    .slice(0, Math.max(0, Math.floor((right - x) / (small * 1.15))))
    .map(({ hex }, index) => dabOf(hex, x + index * small * 1.15, baseline, small))
    .join('');

/** Every colour once with its name, three to a line. */
function colourKey(all: readonly Swatch[], plan: GridPlan, top: number): { svg: string; bottom: number } {
  const small = SMALL * plan.scale;
  const each = [...new Map(all.map((swatch) => [swatch.name, swatch])).values()];
  const column = (plan.width - 2 * plan.margin) / 3;
  const svg = each.map(({ name, hex }, index) => {
    const x = plan.margin + (index % 3) * column;
    const baseline = top + small * (1 + 1.5 * Math.floor(index / 3));
    const from = x + small * 1.25;
    return (
      dabOf(hex, x, baseline, small) +
      text(from, baseline, fitted(name, column - small * 1.6, small), {
        size: small,
        fill: PALE_INK,
        role: 'colour',
      })
    );
  });
  return { svg: svg.join(''), bottom: top + small * (0.6 + 1.5 * Math.ceil(each.length / 3)) };
}

interface Swatch {
  readonly name: string;
  readonly hex: string;
}

/** The colours of a kind, each once, in the order in which they come. */
const namesOf: (kind: PictureKind, colours: Colours) => readonly Swatch[] = onceFor((kind, colours) => {
  const seen = new Map(bandsOf(kind, colours).map(({ colour, hex }) => [colour, hex]));
  return [...seen].map(([name, hex]) => ({ name: name === '' ? 'one colour' : drawable(name), hex }));
});

/** A dab of each colour with its name, as many as fit; the dabs of the rest without names, then how many more there are. */
function swatches(all: readonly Swatch[], x: number, baseline: number, right: number, small: number): string {
  const dab = small * 0.9;
  const gap = small * 0.35;
  const parts: string[] = [];
  let at = x;
  for (const [index, { name, hex }] of all.entries()) {
    const more = all.length - index - 1;
    const tail = more === 0 ? 0 : widthOf(`and ${more} more`, small) + gap;
    const room = right - at - dab - gap - tail;
    if (room < small * 2.2) {
      parts.push(text(at, baseline, `and ${more + 1} more`, { size: small, fill: PALE_INK }));
      break;
    }
    const shown = fitted(name, room, small);
    parts.push(
      dabOf(hex, at, baseline, small),
      text(at + dab + gap, baseline, shown, { size: small, fill: PALE_INK, role: 'colour' }),
    );
    at += dab + gap + widthOf(shown, small) + gap * 1.6;
  }
  return parts.join('');
}

/** `Border, from the inside: 2 rounds of dc in moss, 1 round of sc in sand`, in the reader's own terms. */
export function borderWords({ border, reader }: Pick<BlanketView, 'border' | 'reader'>): string {
  const runs: { stitch: (typeof border)[number]['stitch']; colour: string; rounds: number }[] = [];
  for (const { stitch, colour } of border) {
    const last = runs.at(-1);
    if (last?.stitch === stitch && last.colour === colour) last.rounds++;
    else runs.push({ stitch, colour, rounds: 1 });
  }
  const said = runs.map(
    ({ stitch, colour, rounds }) =>
      `${count(rounds, 'round')} of ${t(stitch)}${colour === '' ? '' : ` in ${drawable(colour)}`}`,
  );
  return said.length === 0 ? 'No border' : forReader(`Border, from the inside: ${said.join(', ')}`, reader);
}

function borderLines(view: BlanketView, plan: GridPlan, top: number): { svg: string; bottom: number } {
  if (view.border.length === 0) return { svg: '', bottom: top };
  const small = SMALL * plan.scale;
  const colours = [...new Set(view.border.map(({ colour }) => colour))].slice(0, 8);
  const from = plan.margin + colours.length * small * 1.15 + small * 0.2;
  const wrapped = lines(borderWords(view), plan.width - plan.margin - from, small);
  const shown = colours.map((colour, index) => {
    const hex = colour === '' ? UNNAMED : hexOf(colour, view.colours);
    return dabOf(hex, plan.margin + index * small * 1.15, top + small, small);
  });
  const words = wrapped.map((line, index) =>
    text(from, top + small * (1 + 1.35 * index), line, { size: small, fill: PALE_INK, role: 'border-words' }),
  );
  return { svg: shown.join('') + words.join(''), bottom: top + small * (0.3 + 1.35 * wrapped.length) };
}

/** `A, Corner patch: diagonal square in moss and sand, × 6`. */
export function kindWords(kind: PictureKind, colours: Colours, counted: string): string {
  const names = namesOf(kind, colours).map(({ name }) => name);
  const listed =
    names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;
  return `${kind.letter}, ${drawable(kind.name)}: ${SHAPE_WORDS[kind.shape]} in ${listed}, ${counted}.`;
}

/** Where each cell's letter and quarter turns stand, row by row, as `Row 1: A A1 B`. */
export function mapWords({
  columns,
  rows,
  cells,
  kinds,
}: Pick<GridView, 'columns' | 'rows' | 'cells' | 'kinds'>): string {
  const said = cells.map(({ kind, turn }) => `${kinds[kind]?.letter ?? '?'}${turn === 0 ? '' : turn}`);
  const listed = Array.from(
    { length: rows },
    (_, row) => `Row ${row + 1}: ${said.slice(row * columns, (row + 1) * columns).join(' ')}.`,
  );
  return `Row by row from the top left, a number after a letter being its quarter turns clockwise: ${listed.join(' ')}`;
}

function blanketAlt(
  view: BlanketView,
  plan: GridPlan,
  counts: readonly string[],
  made: number | undefined,
): string {
  return altText([
    `Picture of the blanket ${drawable(view.title)}: ${sizeLine(view)}.`,
    ...(made === undefined
      ? []
      : [`${num(made)} of ${count(view.cells.length, 'motif')} made and drawn full, the rest pale.`]),
    ...(plan.numbered
      ? []
      : ['The cells are too small for numbers; every fifth row and column is marked at the edges.']),
    ...view.kinds.map((kind, index) => kindWords(kind, view.colours, counts[index] ?? '')),
    `${borderWords(view)}.`,
    mapWords(view),
  ]);
}
