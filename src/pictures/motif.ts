/** One motif, drawn the way it is made: its rows or rounds in their colours, in a square of 100 by 100. */
import { defined } from '../core/base/defined.ts';
import { colourOf } from '../core/blanket/colour.ts';
import type { ColourRun } from '../core/stripes/colour-runs.ts';
import { planRows, type Shape } from '../core/rows/index.ts';
import { CLOTH, n, outline, rect } from './drawing.ts';

/** A kind of motif, as a picture needs it. */
export interface PictureKind {
  readonly name: string;
  /** Drawn into every cell of the kind, so that colour is never all there is to tell it by. */
  readonly letter: string;
  readonly shape: Shape;
  readonly size: number;
  readonly otherSize?: number | undefined;
  /** By row, from the first; the last colour goes on to the end. Empty for one unnamed colour. */
  readonly runs: readonly ColourRun[];
}

/** Hex by the name of the colour; a name that is not in it is drawn as its words say. */
export type Colours = Readonly<Record<string, string>>;

/** What a motif without named colours is drawn in. */
export const UNNAMED = '#d9ccb4';

/** What each shape is called in a picture's words. */
export const SHAPE_WORDS: Readonly<Record<Shape, string>> = {
  diagonal: 'diagonal square',
  blocks: 'piece in blocks, corner to corner',
  clusters: 'cluster square in rounds',
  'solid-square': 'solid square in rounds',
  circle: 'circle in rounds',
  hexagon: 'hexagon in rounds',
  flat: 'flat piece',
};

/** A stretch of rows in one colour: from and to as shares of all rows, 0 to 1. */
export interface Band {
  readonly colour: string;
  readonly hex: string;
  readonly from: number;
  readonly to: number;
  /** Its share of all rows. */
  readonly share: number;
}

export const hexOf = (colour: string, colours: Colours) =>
  Object.hasOwn(colours, colour) ? (colours[colour] ?? UNNAMED) : colourOf(colour);

/** The same for the same two things, made once: a picture asks for the colours of a kind again and again. */
export function onceFor<A extends object, B extends object, T>(make: (a: A, b: B) => T): (a: A, b: B) => T {
  const made = new WeakMap<A, { readonly b: B; readonly value: T }>();
  return (a, b) => {
    const known = made.get(a);
    if (known?.b === b) return known.value;
    const value = make(a, b);
    made.set(a, { b, value });
    return value;
  };
}

/** How many rows or rounds the motif has. A flat piece of unknown height has the rows of its colours. */
export function rowsIn({ shape, size, otherSize, runs }: PictureKind): number {
  const coloured = runs.reduce((sum, run) => sum + run.rows, 0);
  const height = otherSize ?? (shape === 'flat' && coloured > 0 ? coloured : undefined);
  return planRows(shape, { size, ...defined({ otherSize: height }) }).rows.length;
}

/** The motif's colours from its first row to its last. */
export const bandsOf: (kind: PictureKind, colours: Colours) => readonly Band[] = onceFor((kind, colours) => {
  const rows = rowsIn(kind);
  if (kind.runs.length === 0) return [{ colour: '', hex: UNNAMED, from: 0, to: 1, share: 1 }];
  const bands: Omit<Band, 'share'>[] = [];
  let done = 0;
  for (const run of kind.runs) {
    const upTo = Math.min(rows, done + run.rows);
    if (upTo > done)
      bands.push({ colour: run.colour, hex: hexOf(run.colour, colours), from: done / rows, to: upTo / rows });
    done = upTo;
  }
  return bands.map((band, index) => {
    const to = index === bands.length - 1 ? 1 : band.to;
    return { ...band, to, share: to - band.from };
  });
});

/** Lines between rows that show how the piece was worked; more would be mush at the size of a cell. */
const MOST_ROW_LINES = 6;

/**
 * The motif at no turn: a diagonal square and blocks begin in the top left corner, a flat piece at its lower edge,
 * rounds in the middle. A turn is a quarter clockwise.
 */
export function motif(kind: PictureKind, colours: Colours): string {
  const bands = bandsOf(kind, colours);
  const rows = rowsIn(kind);
  const part = PARTS[kind.shape];
  // Painted from the outermost (the last row) inwards: every colour covers what comes before it, whole.
  const painted = [...bands]
    .reverse()
    .map((band) => `<path d="${part.upTo(band.to, kind)}" fill="${band.hex}"/>`)
    .join('');
  const step = Math.max(1, Math.ceil(rows / (MOST_ROW_LINES + 1)));
  const marks: string[] = [];
  for (let row = step; row < rows; row += step) marks.push(part.upTo(row / rows, kind));
  const dash = kind.shape === 'clusters' ? ' stroke-dasharray="5 3"' : '';
  const lines =
    marks.length === 0
      ? ''
      : `<path d="${marks.join('')}" fill="none" stroke="#000000" stroke-opacity="0.22" stroke-width="1.4"${dash}/>`;
  const ground = part.fillsCell ? '' : rect(0, 0, 100, 100, `fill="${CLOTH}"`);
  const edge = `<path d="${part.upTo(1, kind)}" fill="none" stroke="#000000" stroke-opacity="0.35" stroke-width="1.6"/>`;
  return ground + painted + lines + edge;
}

interface Part {
  /** The outline of everything worked when this share of the rows is done. */
  readonly upTo: (share: number, kind: PictureKind) => string;
  /** Whether it leaves no corner of its cell free. */
  readonly fillsCell: boolean;
}

const square = (share: number) => {
  const half = 50 * share;
  return `M${n(50 - half)} ${n(50 - half)}H${n(50 + half)}V${n(50 + half)}H${n(50 - half)}Z`;
};
/** More blocks along a side are a slope at the size of a cell, and thousands of corners for nothing. */
const MOST_STEPS = 48;

/** What is done of a piece in blocks, block by block. */
function stairs(across: number, down: number, done: number): string {
  const points: [number, number][] = [[0, 0]];
  for (let column = 0; column < across; column++) {
    const deep = (100 / down) * Math.min(down, Math.max(0, done - column));
    points.push([(100 / across) * column, deep], [(100 / across) * (column + 1), deep]);
  }
  return outline([...points, [100, 0]]);
}

/** The same with a straight edge. */
function slope(across: number, down: number, done: number): string {
  const part = (blocks: number, of: number) => Math.min(100, (100 * blocks) / of);
  return outline([
    [0, 0],
    ...(done <= across
      ? ([[part(done, across), 0]] as const)
      : ([
          [100, 0],
          [100, part(done - across, down)],
        ] as const)),
    ...(done <= down
      ? ([[0, part(done, down)]] as const)
      : ([
          [part(done - down, across), 100],
          [0, 100],
        ] as const)),
  ]);
}

const whole = (upTo: Part['upTo']): Part => ({ upTo, fillsCell: true });
const free = (upTo: Part['upTo']): Part => ({ upTo, fillsCell: false });

const PARTS: Readonly<Record<Shape, Part>> = {
  // Every row is as high as the next, so a share of the rows is that share of the diagonal.
  diagonal: whole((share) => {
    const reach = 200 * share;
    return reach <= 100
      ? outline([
          [0, 0],
          [reach, 0],
          [0, reach],
        ])
      : outline([
          [0, 0],
          [100, 0],
          [100, reach - 100],
          [reach - 100, 100],
          [0, 100],
        ]);
  }),
  blocks: whole((share, kind) => {
    const across = kind.size;
    const down = kind.otherSize ?? kind.size;
    const done = Math.round(share * (across + down - 1));
    return Math.max(across, down) > MOST_STEPS ? slope(across, down, done) : stairs(across, down, done);
  }),
  flat: whole((share) => `M0 100H100V${n(100 - 100 * share)}H0Z`),
  'solid-square': whole(square),
  clusters: whole(square),
  circle: free((share) => {
    const r = n(49 * share);
    return `M50 50m-${r} 0a${r} ${r} 0 1 0 ${n(98 * share)} 0a${r} ${r} 0 1 0 -${n(98 * share)} 0Z`;
  }),
  hexagon: free((share) =>
    outline(
      Array.from({ length: 6 }, (_, corner) => {
        const angle = (Math.PI / 3) * corner;
        return [50 + 49.5 * share * Math.cos(angle), 50 + 49.5 * share * Math.sin(angle)] as const;
      }),
    ),
  ),
};
