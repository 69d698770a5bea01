/** A blanket on paper: from the yarn to the last round of its border. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { readLaidBy, withLetter } from '../../src/core/blanket/layout.ts';
import { reckonMaterials } from '../../src/core/blanket/materials.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { count, m, num } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { findBlanket, kindsOf } from '../../src/projects/blankets.ts';
import { madeUpOf } from '../../src/projects/looks.ts';
import type { Block } from '../../src/paper/paper.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { action } from '../shared/actions.ts';
import { drawSavedBlanket, piecesIfKnown } from '../shared/blanket-drawing.ts';
import {
  borderBlocks,
  joiningBlocks,
  kindBlocks,
  layoutBlocks,
  materialBlocks,
  pictureBlock,
} from '../shared/blanket-sheet.ts';
import { madeUpWords } from '../shared/look-words.ts';
import { looksIn } from '../shared/motif-chart.ts';
import { motifBlocks, motifLine } from '../shared/motif-sheet.ts';
import { HANDOUT_CAUTIONS, SHEET_MARKS, sheetData, sheetOf, sheetOptions } from '../shared/sheet.ts';
import { readerIn, saidTo } from '../shared/terms-option.ts';
import { SAVED, savedBlanket } from './options.ts';
import {
  atHandCaution,
  blanketCautions,
  extentWords,
  laidLines,
  needLine,
  sizeFigures,
  sizeWords,
  sureness,
} from './words.ts';

/** Room for her own words. */
const NOTE_LINES = 10;

export const handout = question({
  name: 'handout',
  says: 'The blanket to print (PDF): yarn, layout, joining, border round by round, every motif’s rows',
  options: { name: savedBlanket().optional(), ...sheetOptions() },
  example: 'name:"garden throw" paper:A4',
  refused: { line: 'name:"garten trow"', option: 'name' },
  before: SAVED,
  asked: {
    ways: ['print blanket', 'print @blanket', 'print blanket mine'],
    also: 'blanket mine show instructions layout saved all',
    not: 'chart group colour',
    saved: 'blanket',
    marks: { name: { takes: 'saved-blanket' }, ...SHEET_MARKS },
    phrases: ['print my blanket', 'a handout of my blanket'],
  },
  async answer({ name, terms, paper, print }, { maker, projects, reader: own }): Promise<Answer> {
    const reader = readerIn(own, terms);
    const doc = await projects.maker(maker.id, maker.name);
    const blanket = findBlanket(doc, name);
    const { columns, rows, layout, joining, border } = blanket;
    const { picture, kinds, looks, counts } = await drawSavedBlanket(doc, blanket, {
      planOnly: true,
      reader,
    });
    await breathe();
    const pieces = piecesIfKnown(doc, blanket, new Working());
    const needs =
      pieces instanceof Problem ? undefined : reckonMaterials(pieces, { ...blanket, counts }, new Working());
    await breathe();
    const unknown = pieces instanceof Problem ? `${pieces.message} ${pieces.hint}` : undefined;
    const motifs = kindsOf(doc, blanket);
    const [first] = motifs;
    const madeUp = madeUpWords(madeUpOf(doc, Object.keys(looks)));
    const cautions = [
      ...(pieces instanceof Problem || needs === undefined
        ? []
        : [...blanketCautions(pieces, needs), ...atHandCaution(needs)]),
      ...HANDOUT_CAUTIONS,
    ];
    const each: Block[] = [];
    for (const [kind, motif] of motifs.entries()) {
      each.push(
        { kind: 'new-page' },
        { kind: 'heading', text: withLetter(kind, motif.name, ', ') },
        motifLine(motif),
        ...motifBlocks(motif, {
          looks: looksIn(doc, motif),
          yarns: blanket.yarns,
          yarn: pieces instanceof Problem ? undefined : pieces.motifs[kind],
          reader,
        }),
      );
      await breathe();
    }
    const laid = layoutBlocks(layout, columns);
    await breathe();
    const joined = layout.length > 1 && joiningBlocks({ columns, rows }, joining);
    await breathe();
    const sheet = await sheetOf(
      blanket.name,
      'handout',
      gather<Block>(
        { kind: 'text', text: `${extentWords(blanket)}${needs ? `, ${sizeWords(needs)}` : ''}.` },
        laidLines(readLaidBy(blanket.setting), motifs.length).map((text): Block => ({ kind: 'text', text })),
        unknown !== undefined && { kind: 'strong', text: unknown },
        pictureBlock(picture),
        madeUp.map((text): Block => ({ kind: 'small', text })),
        kindBlocks(blanket.kinds, layout),
        needs && [
          ...materialBlocks(needs, looks),
          { kind: 'list', items: [...needs.colours.map(needLine)] } as const,
          {
            kind: 'text',
            text: `${count(needs.ends, 'end')} to weave in; ${count(needs.seams, 'seam')}, ${m(needs.seamLength)} in all.`,
          } as const,
        ],
        !(pieces instanceof Problem) && sureness(pieces).map((text): Block => ({ kind: 'small', text })),
        laid,
        joined,
        needs &&
          first &&
          borderBlocks(needs.border, border.corner, { columns, rows, motif: planOf(first).stitch }),
        { kind: 'heading', text: 'Take care' },
        { kind: 'caution', items: [...new Set(cautions)] },
        { kind: 'heading', text: 'Notes' },
        { kind: 'notes', lines: NOTE_LINES },
        each,
      ),
      { reader, paper, print },
    );
    return saidTo(
      {
        headline: `${blanket.name}, ${extentWords(blanket)}, to print on ${sheet.size}, in ${reader.terms} terms.`,
        lines: [
          `On it: ${num(kinds.length)} ${kinds.length === 1 ? 'kind' : 'kinds'} with all rows, yarn, layout, joining, border.`,
        ],
        figures: gather(
          figure('motifs', 'Motifs', layout.length),
          figure('yarn_total', 'Yarn with the reserve', needs?.total, 'm'),
          figure('ends', 'Ends to weave in', needs?.ends),
          sizeFigures(needs),
        ),
        assumptions: gather(sheet.assumptions, madeUp, unknown),
        data: { blanket: blanket.name, ...sheetData(sheet, reader, { print }) },
        files: [sheet.file],
        actions: [action('Picture', 'blanket picture', { name: blanket.name })],
      },
      reader,
    );
  },
});
