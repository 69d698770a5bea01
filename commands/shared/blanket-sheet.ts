/** Parts of a blanket as they are printed: what is made, how it lies, how it is joined, its border. */
import { withLetter } from '../../src/core/blanket/layout.ts';
import type { Cell } from '../../src/core/blanket/layout.ts';
import type { Materials } from '../../src/core/blanket/materials.ts';
import { placesByKind, writePlaces } from '../../src/core/blanket/map.ts';
import { g, m, num } from '../../src/core/base/reader.ts';
import { writeBlanketBorder } from '../../src/core/edges/written-border.ts';
import { writeSeam, writeStrips } from '../../src/core/edges/written-joining.ts';
import type { SeamMethod } from '../../src/core/edges/seams.ts';
import type { Drawing } from '../../src/pictures/drawing.ts';
import type { Block } from '../../src/paper/paper.ts';
import type { Stitch } from '../../src/standards/stitches.ts';

export const pictureBlock = ({ svg, width, height, alt }: Drawing, most = 0.6): Block => ({
  kind: 'picture',
  svg,
  width,
  height,
  says: alt,
  most,
});

/** How many of each kind, and the numbers of their places, a box to tick for each that is made. */
export const kindBlocks = (names: readonly string[], layout: readonly Cell[]): Block[] => [
  { kind: 'heading', text: 'Motifs to make' },
  { kind: 'small', text: 'Tick a box when its motif is made; the numbers are those of the places.' },
  {
    kind: 'ticks',
    ticks: placesByKind(layout, names.length).map((places, kind) => ({
      text: `${withLetter(kind, names[kind] ?? '', ', ')}: make ${num(places.length)}.`,
      boxes: places.map(String),
    })),
  },
];

/** Every place with its kind and turning. */
export const layoutBlocks = (layout: readonly Cell[], columns: number): Block[] => [
  { kind: 'heading', text: 'Layout' },
  {
    kind: 'small',
    text: 'Row by row from the top left: the number of the place, the letter of its kind, and a number after the letter for its quarter turns clockwise.',
  },
  { kind: 'ticks', ticks: writePlaces(layout, columns).map((text) => ({ text })) },
];

/** The order of joining, strip by strip, and what the hands do. */
export const joiningBlocks = (
  { columns, rows }: { readonly columns: number; readonly rows: number },
  { method, colour }: { readonly method: SeamMethod; readonly colour?: string },
): Block[] => [
  { kind: 'heading', text: 'Joining' },
  { kind: 'list', items: writeSeam(method, colour) },
  {
    kind: 'small',
    text: 'By the numbers of the places: first the motifs of each strip, then strip to strip.',
  },
  { kind: 'ticks', ticks: writeStrips(columns, rows).map((text) => ({ text })) },
];

/** The border round by round. */
export function borderBlocks(
  counted: Materials['border'],
  corner: number,
  at: { readonly columns: number; readonly rows: number; readonly motif: Stitch },
): Block[] {
  if (counted.length === 0) return [];
  const { before, rounds, after } = writeBlanketBorder(counted, corner, at);
  return [
    { kind: 'heading', text: 'Border' },
    { kind: 'list', items: before },
    { kind: 'ticks', ticks: rounds.map((text) => ({ text })) },
    ...after.map((text): Block => ({ kind: 'text', text })),
  ];
}

/** Colour by colour: what it takes and what to buy. */
export const materialBlocks = (
  { colours }: Pick<Materials, 'colours'>,
  looks: Readonly<Record<string, string>>,
): Block[] => [
  { kind: 'heading', text: 'Yarn' },
  {
    kind: 'table',
    widths: [4, 3, 2, 2, 2],
    head: ['Colour', 'With the reserve', 'Weight', 'Balls', 'To buy'],
    rows: colours.map(({ colour, total, weight, balls, toBuy }) => [
      { text: colour, dab: looks[colour] ?? '' },
      m(total),
      weight === undefined ? '–' : g(weight),
      balls === undefined ? 'no ball is known' : num(balls),
      toBuy === undefined ? '–' : num(toBuy),
    ]),
  },
];
