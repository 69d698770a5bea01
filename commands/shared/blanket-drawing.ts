/** A saved blanket as a picture: for the question that asks for it, and beside how far one is. */
import type { AnswerFile } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { defined } from '../../src/core/base/defined.ts';
import { countLaid, letter, markMade } from '../../src/core/blanket/layout.ts';
import { reckonMaterials, type Materials } from '../../src/core/blanket/materials.ts';
import { colourBorder, piecesOf, type Pieces } from '../../src/core/blanket/pieces.ts';
import { runsOf } from '../../src/core/yarn/motif.ts';
import { Problem } from '../../src/core/base/problem.ts';
import type { Reader } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { drawBlanket, type Drawing, type PictureKind } from '../../src/pictures/blanket.ts';
import { kindsOf, specOf } from '../../src/projects/blankets.ts';
import { looksOf } from '../../src/projects/looks.ts';
import { madeFor } from '../../src/projects/progress.ts';
import type { Blanket, MakerDoc } from '../../src/projects/schema.ts';
import { advised } from './advice.ts';
import { fileName } from './file-name.ts';

/** The pieces, or what is wrong where a motif's size is not known yet: many answers can do without. */
export function piecesIfKnown(doc: MakerDoc, blanket: Blanket, working: Working): Pieces | Problem {
  try {
    return piecesOf(specOf(doc, blanket), working);
  } catch (problem) {
    if (problem instanceof Problem) return advised(problem);
    throw problem;
  }
}

export interface BlanketDrawing {
  readonly file: AnswerFile;
  readonly picture: Drawing;
  readonly kinds: readonly PictureKind[];
  /** The look of every colour, `#rrggbb` by its name. */
  readonly looks: Readonly<Record<string, string>>;
  /** How many of each kind the layout has, and how many are made. */
  readonly counts: readonly number[];
  readonly made: readonly number[];
  /** How many places are filled in; undefined where the plan is drawn. */
  readonly filled: number | undefined;
  /** The finished size; undefined with the reason beside it where a motif's size is not known. */
  readonly size: Materials | undefined;
  readonly unknown: Problem | undefined;
}

/** Draws it, with what is made filled in unless the plan alone is wanted. */
export async function drawSavedBlanket(
  doc: MakerDoc,
  blanket: Blanket,
  { planOnly, reader }: { readonly planOnly: boolean; readonly reader: Reader },
): Promise<BlanketDrawing> {
  const made = madeFor(doc, blanket);
  const places = !planOnly && made.some((many) => many > 0) ? markMade(blanket.layout, made) : undefined;
  const counts = countLaid(blanket.layout, blanket.kinds.length);
  const pieces = piecesIfKnown(doc, blanket, new Working());
  const unknown = pieces instanceof Problem ? pieces : undefined;
  const size =
    pieces instanceof Problem ? undefined : reckonMaterials(pieces, { ...blanket, counts }, new Working());
  await breathe();
  const { kinds, looks } = kindsAndLooks(doc, blanket);
  await breathe();
  const picture = drawBlanket({
    title: blanket.name,
    columns: blanket.columns,
    rows: blanket.rows,
    cells: blanket.layout.map((cell, place) =>
      defined({ ...cell, done: places && (places[place] ?? false) }),
    ),
    kinds,
    colours: looks,
    border: borderColours(blanket, kinds[0]?.runs[0]?.colour ?? ''),
    // Where no motif's size is known the cells are drawn square, and no size is told.
    sizeKnown: size !== undefined,
    width: size?.width ?? blanket.columns,
    height: size?.height ?? blanket.rows,
    reader,
  });
  return {
    file: { name: `${fileName(blanket.name)}.svg`, says: picture.alt, content: picture.svg },
    picture,
    kinds,
    looks,
    counts,
    made,
    filled: places?.filter(Boolean).length,
    size,
    unknown,
  };
}

/** The kinds as they are drawn, and the look of every colour. */
function kindsAndLooks(doc: MakerDoc, blanket: Blanket) {
  const motifs = kindsOf(doc, blanket);
  const names = [
    ...motifs.flatMap((motif) => runsOf(motif).map(({ colour }) => colour)),
    ...borderColours(blanket, (motifs[0] && runsOf(motifs[0])[0]?.colour) ?? '').map(({ colour }) => colour),
  ];
  const kinds = motifs.map((motif, index): PictureKind => ({
    ...motif,
    runs: runsOf(motif),
    letter: letter(index),
  }));
  const looks = looksOf(doc, [...new Set(names)], blanket.yarns);
  return { kinds, looks };
}

/** The rounds of the border, each with its colour. */
function borderColours(blanket: Blanket, main: string) {
  const colours = colourBorder(blanket, main);
  return blanket.border.rounds.map(({ stitch }, at) => ({ stitch, colour: colours[at] ?? main }));
}
