/** Invented blankets for the tests of the pictures. */
import type { BlanketView, PictureKind } from '../../src/pictures/blanket.ts';

export const KINDS: readonly PictureKind[] = [
  {
    name: 'Corner patch',
    letter: 'A',
    shape: 'diagonal',
    size: 12,
    runs: [
      { colour: 'moss', rows: 12 },
      { colour: 'cream', rows: 12 },
    ],
  },
  {
    name: 'Steps',
    letter: 'B',
    shape: 'blocks',
    size: 7,
    runs: [
      { colour: 'teal', rows: 3 },
      { colour: 'mustard', rows: 10 },
    ],
  },
  { name: 'Clusters', letter: 'C', shape: 'clusters', size: 6, runs: [{ colour: 'rust', rows: 6 }] },
  { name: 'Solid', letter: 'D', shape: 'solid-square', size: 8, runs: [{ colour: 'plum', rows: 8 }] },
  { name: 'Wheel', letter: 'E', shape: 'circle', size: 8, runs: [{ colour: 'orange', rows: 8 }] },
  { name: 'Comb', letter: 'F', shape: 'hexagon', size: 6, runs: [{ colour: 'sky', rows: 6 }] },
  { name: 'Plain', letter: 'G', shape: 'flat', size: 20, otherSize: 20, runs: [] },
];

export function blanketOf(columns: number, rows: number, more: Partial<BlanketView> = {}): BlanketView {
  return {
    title: 'Allotment society throw',
    columns,
    rows,
    cells: Array.from({ length: columns * rows }, (_, index) => ({
      kind: index % 2,
      turn: (index >> 1) % 4,
    })),
    kinds: KINDS.slice(0, 2),
    colours: { moss: '#6f7d3c' },
    border: [
      { colour: 'moss', stitch: 'hdc' },
      { colour: 'cream', stitch: 'dc' },
    ],
    width: columns * 15 + 6,
    height: rows * 15 + 6,
    reader: { units: 'metric', terms: 'US' },
    ...more,
  };
}

/** Every match of a pattern's first group. */
export const all = (svg: string, pattern: RegExp) =>
  [...svg.matchAll(pattern)].map((match) => match[1] ?? match[0]);

/** Every text of a role, in the order drawn. */
export const texts = (svg: string, role: string) => all(svg, new RegExp(`class="${role}">([^<]*)<`, 'g'));
