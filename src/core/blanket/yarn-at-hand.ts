/** The yarn at hand and what a blanket of any extent takes of it: plain arithmetic, for searches over sizes; the tests hold it to the formulas that are shown. */
import { TAIL } from '../../standards/consumption.ts';
import { sameName } from '../base/nearest-name.ts';
import { countStrands } from '../edges/seams.ts';
import { yarnOf } from '../yarn/motif.ts';
import type { Extent } from './materials.ts';
import type { Pieces } from './pieces.ts';

/** Metres of one motif in one colour: worked, hanging as tails, and carried. */
export const metresOf = ({ worked, tails, carried }: Pieces['motifs'][number]['colours'][number]): number =>
  worked + tails + carried;

/** Metres of every colour (in the order of `pieces.colours`) that a blanket of some extent takes, the reserve counted in. */
export function needOf(pieces: Pieces): (extent: Extent) => number[] {
  const index = (colour: string) => pieces.colours.findIndex((known) => sameName(known, colour));
  const perKind = pieces.motifs.map((motif) => {
    const each = pieces.colours.map(() => 0);
    for (const part of motif.colours)
      each[index(part.colour)] = (each[index(part.colour)] ?? 0) + metresOf(part);
    return each;
  });
  const seam = index(pieces.seam.colour);
  const { side, border, reserve } = pieces;
  const rounds = border.rounds.map((round, at, all) => ({
    colour: index(round.colour),
    perStitch: round.perStitch,
    tails: at > 0 && index(all[at - 1]?.colour ?? '') === index(round.colour) ? 0 : 2 * TAIL,
  }));
  const along = (motifs: number) =>
    Math.max(1, Math.ceil(Math.round(((motifs * side) / border.stitchWidth) * 1e6) / 1e6 - 0.5));
  return ({ columns, rows, counts }) => {
    const need = pieces.colours.map(() => 0);
    const add = (colour: number, metres: number) => (need[colour] = (need[colour] ?? 0) + metres);
    perKind.forEach((each, kind) => {
      const many = counts[kind] ?? 0;
      if (many > 0) each.forEach((metres, colour) => add(colour, metres * many));
    });
    if (columns * rows > 1) {
      const { ratio, sewn } = pieces.seam;
      const seams =
        sewn === true ? countStrands({ columns, rows, side, ratio }) : (columns - 1) * rows + (rows - 1);
      add(seam, ((side * ((columns - 1) * rows + (rows - 1) * columns)) / 100) * pieces.seam.ratio);
      add(seam, seams * 2 * TAIL);
    }
    if (rounds.length > 0) {
      const sides = 2 * (along(columns) + along(rows));
      rounds.forEach(({ colour, perStitch, tails }, at) => {
        const stitches = sides + 4 * (border.corner - 1) * at + 4 * border.corner;
        add(colour, stitches * perStitch + tails);
      });
    }
    return need.map((metres) => metres * (1 + reserve / 100));
  };
}

/** Metres at hand by colour, in the order of `pieces.colours`; undefined where she did not say how much there is. */
export const stockOf = (pieces: Pieces): (number | undefined)[] =>
  pieces.colours.map((colour) => {
    const yarn = yarnOf(pieces.yarns, colour);
    return yarn?.balls === undefined || !yarn.ball ? undefined : yarn.balls * yarn.ball.m;
  });
