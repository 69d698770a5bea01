/** A motif on paper, to take along or hand on. */
import { defined } from '../../src/core/base/defined.ts';
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { cutLengths } from '../../src/core/stripes/carrying.ts';
import { sumCounts } from '../../src/core/rows/index.ts';
import { readMeasured } from '../../src/core/yarn/measured-motif.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { yarnsOf } from '../../src/projects/looks.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { caution } from '../../src/standards/care.ts';
import { action } from '../shared/actions.ts';
import { madeUpWords } from '../shared/look-words.ts';
import { looksIn, madeUpIn } from '../shared/motif-chart.ts';
import { motifBlocks, motifLine, yarnOfOne } from '../shared/motif-sheet.ts';
import { carryAssumption, described, RowWord } from '../shared/motif-words.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { HANDOUT_CAUTIONS, SHEET_MARKS, sheetData, sheetOf, sheetOptions } from '../shared/sheet.ts';
import { readerIn, saidTo } from '../shared/terms-option.ts';

/** Room for her own words. */
const NOTE_LINES = 6;

export const handout = question({
  name: 'handout',
  says: 'The motif to print (PDF): yarn, rows in words with boxes to tick, chart, colours, cautions',
  options: { name: savedMotif().optional(), ...sheetOptions() },
  example: 'name:"moss square" terms:UK',
  refused: { line: 'name:"mos squar"', option: 'name' },
  before: [DEFINED],
  asked: {
    ways: ['print motif', 'print @motif', 'print instructions', 'print chart'],
    also: 'motif mine show instructions chart saved',
    not: 'blanket group hook weight',
    saved: 'motif',
    marks: { name: { takes: 'saved-motif' }, ...SHEET_MARKS },
    phrases: ['print my square', 'a handout of my motif'],
  },
  async answer({ name, terms, paper, print }, { maker, projects, reader: own }): Promise<Answer> {
    const reader = readerIn(own, terms);
    const doc = await projects.maker(maker.id, maker.name);
    const motif = findMotif(doc, name, 'name');
    const plan = planOf(motif);
    const yarns = yarnsOf(doc);
    const yarn = yarnOfOne(motif, yarns);
    const madeUp = madeUpWords(madeUpIn(doc, motif));
    const cautions = [caution(yarn.how === 'weighed' ? 'dye-lot' : 'rough-estimate'), ...HANDOUT_CAUTIONS];
    const blocks = motifBlocks(motif, { looks: looksIn(doc, motif), yarns, reader });
    await breathe();
    const sheet = await sheetOf(
      motif.name,
      'handout',
      [
        motifLine(motif),
        ...blocks,
        ...madeUp.map((text) => ({ kind: 'small', text }) as const),
        { kind: 'part', text: 'Take care' },
        { kind: 'caution', items: cautions },
        { kind: 'part', text: 'Notes' },
        { kind: 'notes', lines: NOTE_LINES },
      ],
      { reader, paper, print },
    );
    const { side, runs } = motif;
    return saidTo(
      {
        headline: `${motif.name}, ${described(motif)}, to print on ${sheet.size}, in ${reader.terms} terms.`,
        figures: gather(
          figure('rows', `${RowWord(plan)}s`, plan.rows.length),
          figure('total', plan.counted === 'blocks' ? 'Blocks' : 'Stitches', sumCounts(plan)),
          figure('ends', 'Ends to weave in', cutLengths(plan, runs).ends),
          figure('side', 'Side', side ?? readMeasured(motif).expected, 'cm'),
        ),
        assumptions: [...sheet.assumptions, ...madeUp, ...yarn.assumptions, ...carryAssumption(plan, runs)],
        data: { motif: motif.name, ...sheetData(sheet, reader, { print }) },
        files: [sheet.file],
        actions: [action('Chart', 'motif chart', { name: motif.name, ...defined({ terms }) })],
      },
      reader,
    );
  },
});
