/** Joining in words: what the hands do, and which motifs are joined to which, strip by strip. Texts carry tokens for terms and directions. */
import { SEWING_STRAND, TAIL } from '../../standards/consumption.ts';
import { cm, count, handed, m, t } from '../base/reader.ts';
import type { SeamMethod } from './seams.ts';

/** What the hands do at a seam (common practice), in order. */
export function writeSeam(method: SeamMethod, colour?: string): string[] {
  const yarn = colour === undefined ? 'the yarn' : colour;
  const along = handed('right to left', 'left to right');
  const edge = 'stitch by stitch, or row end by row end';
  switch (method) {
    case 'whip':
      return [
        'Lay two motifs side by side, right sides up, edges level and corners pinned.',
        `Thread ${yarn} on a blunt needle, a strand of ${m(SEWING_STRAND)} at most, and leave ${cm(TAIL * 100, 0)}.`,
        `Go up through both edges, under the outer strands, over to the other side, and up again: one whip stitch for every pair of edge stitches, ${edge}, drawn up flat and not tight.`,
        `At the end leave ${cm(TAIL * 100, 0)} and weave both ends in, each in three passes.`,
      ];
    case 'slip-stitch':
      return [
        'Hold two motifs with their right sides together, edges level and corners pinned.',
        `Join ${yarn} in the corner, leaving ${cm(TAIL * 100, 0)}; a hook one size larger keeps the seam from drawing in.`,
        `From ${along}, 1 ${t('sl st')} through both edges for every pair of edge stitches, ${edge}.`,
        `At the end leave ${cm(TAIL * 100, 0)} and weave both ends in, each in three passes.`,
      ];
    case 'single-crochet':
      return [
        'Hold two motifs with their wrong sides together for a ridge that shows, right sides together for one that does not; edges level, corners pinned.',
        `Join ${yarn} in the corner, leaving ${cm(TAIL * 100, 0)}.`,
        `From ${along}, 1 ${t('sc')} through both edges for every pair of edge stitches, ${edge}.`,
        `At the end leave ${cm(TAIL * 100, 0)} and weave both ends in, each in three passes.`,
      ];
  }
}

/** `1 to 2, 2 to 3`: motifs are numbered row by row from the top left. */
const pairs = (from: readonly number[], to: readonly number[]) =>
  from.map((one, at) => `${one} to ${to[at] ?? 0}`).join(', ');

/** More motifs than this are not told one by one in an answer: strip after strip goes the same way. */
const MOST_TOLD = 48;

/** Whether the motifs are few enough to be told one by one. */
export const canBeTold = (columns: number, rows: number): boolean => columns * rows <= MOST_TOLD;

/**
 * Which motif is joined to which, a step for every strip and for every two strips: first the motifs of each row, then the rows. Each
 * text ends with its number of seams; one between strips is sewn in one go.
 *
 * @example
 * writeStrips(3, 1) // → ['Strip 1: 1 to 2, 2 to 3. (2 seams)']
 */
export function writeStrips(columns: number, rows: number): string[] {
  const strip = (row: number) => Array.from({ length: columns }, (_, at) => row * columns + at + 1);
  const within = Array.from({ length: columns > 1 ? rows : 0 }, (_, row) => {
    const motifs = strip(row);
    return `Strip ${row + 1}: ${pairs(motifs.slice(0, -1), motifs.slice(1))}. (${count(columns - 1, 'seam')})`;
  });
  const between = Array.from(
    { length: rows - 1 },
    (_, row) =>
      `Strip ${row + 1} to strip ${row + 2}, the corners pinned first: ${pairs(strip(row), strip(row + 1))}. (1 long seam over ${count(columns, 'motif')})`,
  );
  return [...within, ...between];
}
