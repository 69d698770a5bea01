import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { coloursOf, hardToTell, kindsHardToTell } from '../../src/core/blanket/colour.ts';
import { letter, markMade, readLaidBy, countLaid } from '../../src/core/blanket/layout.ts';
import { reckonMaterials } from '../../src/core/blanket/materials.ts';
import { runsOf, yarnOf } from '../../src/core/yarn/motif.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { count, num } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { drawBlanket, type PictureKind } from '../../src/pictures/blanket.ts';
import { bandsOf } from '../../src/pictures/motif.ts';
import { findBlanket, kindsOf } from '../../src/projects/blankets.ts';
import { madeFor } from '../../src/projects/progress.ts';
import type { Blanket, MakerDoc } from '../../src/projects/schema.ts';
import { fileName } from '../motif/instructions.ts';
import { action } from '../shared/actions.ts';
import { SAVED, savedBlanket } from './options.ts';
import { alikeWords, extentWords, laidLines, makeCounts, piecesIfKnown, sizeWords } from './words.ts';

export const picture = question({
  name: 'picture',
  says: 'Draws the blanket: colours, turnings, numbers, border, legend, size; what is made filled in',
  options: {
    name: savedBlanket().optional(),
    made: opt.yesno('no draws the plan even where motifs are made', 'no').optional(),
  },
  example: 'name:"garden throw"',
  refused: { line: 'name:"garten trow"', option: 'name' },
  before: SAVED,
  async answer({ name, made }, { maker, projects, reader }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const blanket = findBlanket(doc, name);
    const done = madeFor(doc, blanket);
    const following = made !== false && done.some((many) => many > 0);
    const counts = countLaid(blanket.layout, blanket.kinds.length);
    const { kinds, colours } = looks(doc, blanket);
    const pieces = piecesIfKnown(doc, blanket, new Working());
    const known =
      pieces instanceof Problem ? undefined : reckonMaterials(pieces, { ...blanket, counts }, new Working());
    const places = following ? markMade(blanket.layout, done) : undefined;
    const main = kindsOf(doc, blanket).flatMap((motif) => runsOf(motif).map(({ colour }) => colour))[0] ?? '';
    const drawn = drawBlanket({
      title: blanket.name,
      columns: blanket.columns,
      rows: blanket.rows,
      cells: blanket.layout.map((cell, place) => ({
        ...cell,
        ...(places ? { done: places[place] ?? false } : {}),
      })),
      kinds,
      colours,
      border: borderColours(blanket, main),
      // Where no motif's size is known the cells are drawn square, and no size is told.
      width: known?.width ?? blanket.columns,
      height: known?.height ?? blanket.rows,
      reader,
    });
    const finished = places?.filter(Boolean).length ?? 0;
    return {
      headline: `${blanket.name}: ${extentWords(blanket)}${known ? `, ${sizeWords(known)}` : ''}${following ? `; ${num(finished)} of ${count(blanket.layout.length, 'motif')} made` : ''}.`,
      lines: [
        ...laidLines(readLaidBy(blanket.setting), blanket.kinds.length),
        `To make: ${makeCounts(blanket.kinds, counts)}.`,
      ],
      figures: [
        { key: 'motifs', label: 'Motifs', value: blanket.layout.length, unit: '' },
        ...(following ? [{ key: 'made', label: 'Made', value: finished, unit: '' } as const] : []),
      ],
      assumptions: pieces instanceof Problem ? [`${pieces.message} ${pieces.hint}`] : [],
      cautions: alikeWords([
        ...kindsHardToTell(
          kinds.map((kind) => ({
            name: `${kind.letter} ${kind.name}`,
            look: kind.shape,
            bands: bandsOf(kind, colours).map(({ hex, from, to }) => ({ hex, share: to - from })),
          })),
        ),
        ...hardToTell(Object.entries(colours).map(([colour, hex]) => ({ name: colour, hex }))),
      ]),
      data: { blanket: blanket.name, made: done },
      files: [{ name: `${fileName(blanket.name)}.svg`, says: drawn.alt, content: drawn.svg }],
      actions: [action('Layout', 'blanket layout', { name: blanket.name })],
    };
  },
});

/** The kinds as they are drawn, and the look of every colour. */
function looks(doc: MakerDoc, blanket: Blanket) {
  const motifs = kindsOf(doc, blanket);
  const names = [
    ...motifs.flatMap((motif) => runsOf(motif).map(({ colour }) => colour)),
    ...blanket.border.rounds.flatMap(({ colour }) => (colour === undefined ? [] : [colour])),
  ];
  const kinds = motifs.map((motif, index): PictureKind => ({
    ...motif,
    runs: runsOf(motif),
    letter: letter(index),
  }));
  const colours = coloursOf(
    [...new Set(names)].map((name) => ({ name, hex: yarnOf(blanket.yarns, name)?.hex })),
  );
  return { kinds, colours };
}

/** Rounds without a colour of their own go on in the one before, the first in the colour of the seams. */
function borderColours(blanket: Blanket, main: string) {
  let colour = blanket.joining.colour ?? main;
  return blanket.border.rounds.map((round) => {
    colour = round.colour ?? colour;
    return { stitch: round.stitch, colour };
  });
}
