/** The picture of a blanket. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { findHardToTell, findKindsHardToTell } from '../../src/core/blanket/colour.ts';
import { readLaidBy } from '../../src/core/blanket/layout.ts';
import { count, num } from '../../src/core/base/reader.ts';
import { bandsOf } from '../../src/pictures/motif.ts';
import { findBlanket } from '../../src/projects/blankets.ts';
import { action } from '../shared/actions.ts';
import { drawSavedBlanket, type BlanketDrawing } from '../shared/blanket-drawing.ts';
import { SAVED, savedBlanket } from './options.ts';
import { alikeWords, extentWords, laidLines, makeCounts, sizeWords } from './words.ts';

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
  asked: {
    ways: ['picture blanket', 'picture @blanket', 'picture mine blanket', 'picture show'],
    also: 'blanket mine show layout which',
    not: 'chart group motif colour',
    saved: 'blanket',
    marks: { name: { takes: 'saved-blanket' }, made: { never: true } },
    phrases: ['draw my blanket', 'show me a picture of my blanket'],
  },
  async answer({ name, made }, { maker, projects, reader }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const blanket = findBlanket(doc, name);
    const drawing = await drawSavedBlanket(doc, blanket, { planOnly: made === false, reader });
    await breathe();
    const { counts, filled, size, unknown } = drawing;
    const motifs = blanket.layout.length;
    return {
      headline: `${blanket.name}: ${extentWords(blanket)}${size ? `, ${sizeWords(size)}` : ''}${filled === undefined ? '' : `; ${num(filled)} of ${count(motifs, 'motif')} made`}.`,
      lines: [
        ...laidLines(readLaidBy(blanket.setting), blanket.kinds.length),
        `To make: ${makeCounts(blanket.kinds, counts)}.`,
      ],
      figures: gather(figure('motifs', 'Motifs', motifs), figure('made', 'Made', filled)),
      assumptions: unknown ? [`${unknown.message} ${unknown.hint}`] : [],
      cautions: alikeWords(mixedUp(drawing)),
      data: { blanket: blanket.name, made: drawing.made },
      files: [drawing.file],
      actions: [action('Layout', 'blanket layout', { name: blanket.name })],
    };
  },
});

/** Kinds and colours that somebody would mix up. */
const mixedUp = ({ kinds, looks }: BlanketDrawing) => [
  ...findKindsHardToTell(
    kinds.map((kind) => ({
      name: `${kind.letter} ${kind.name}`,
      look: kind.shape,
      bands: bandsOf(kind, looks),
    })),
  ),
  ...findHardToTell(Object.entries(looks).map(([name, hex]) => ({ name, hex }))),
];
