/** What a group blanket's kinds are, for whoever is to make one: also before she has pledged anything. */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { findKindNamed } from '../../src/core/group/rules.ts';
import { count, forReader } from '../../src/core/base/reader.ts';
import { sumCounts } from '../../src/core/rows/index.ts';
import { cutLengths } from '../../src/core/stripes/carrying.ts';
import { listLines, writeInstructions } from '../../src/core/stripes/written-rows.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { action } from '../shared/actions.ts';
import { fileName } from '../shared/file-name.ts';
import { drawMotifChart } from '../shared/motif-chart.ts';
import { motifBlocks, motifLine } from '../shared/motif-sheet.ts';
import { carryAssumption, described, rowWord, RowWord, units } from '../shared/motif-words.ts';
import { HANDOUT_CAUTIONS, SHEET_MARKS, sheetData, sheetOf, sheetOptions } from '../shared/sheet.ts';
import { readerIn, saidTo, termsEnding, writtenIn } from '../shared/terms-option.ts';
import { OPENED } from './example.ts';
import { groupLooks } from './looks.ts';
import { kindOption, nameOption, whichBlanket } from './which.ts';

export const motif = question({
  name: 'motif',
  says: 'A kind of the group blanket to make: its rows in your own terms, its chart, a handout',
  options: { kind: kindOption, ...sheetOptions(), name: nameOption },
  example: 'kind:furrow',
  before: OPENED,
  refused: { line: 'kind:nonsense', option: 'kind' },
  asked: {
    ways: ['instructions group', 'chart group', 'print group motif', 'instructions @kind'],
    also: 'motif group show row pattern each',
    not: 'how-many yarn ball weigh claim hand-in left open-for',
    saved: 'group',
    marks: { kind: { takes: 'saved-kind' }, name: { takes: 'saved-group' }, ...SHEET_MARKS },
    phrases: ['show me the instructions for the group blanket'],
  },
  async answer({ kind, terms, paper, print, name }, context): Promise<Answer> {
    const reader = readerIn(context.reader, terms);
    const { state } = await whichBlanket(context, name);
    const { plan: blanket } = state;
    const which = findKindNamed(state, kind);
    const made = blanket.kinds[which] ?? blanket.kinds[0];
    if (!made) throw new Error('a group blanket has at least one kind');
    const rows = planOf(made);
    const looks = groupLooks(blanket);
    const lines = listLines(writeInstructions(rows, made.runs));
    const chart = drawMotifChart(made, looks, { reader });
    const headline = `${made.name} of ${blanket.name}, ${described(made)}: ${count(rows.rows.length, rowWord(rows))}, ${units(rows, sumCounts(rows))}.`;
    const sheet = await sheetOf(
      made.name,
      'handout',
      [
        { kind: 'text', text: `For the group blanket ${blanket.name}.` },
        motifLine(made),
        ...motifBlocks(made, { looks, yarns: blanket.yarns, reader }),
        { kind: 'part', text: 'Take care' },
        { kind: 'caution', items: HANDOUT_CAUTIONS },
      ],
      { reader, paper, print },
    );
    const called = fileName(made.name);
    const text = [headline, writtenIn(reader), '', ...lines]
      .map((line) => forReader(line, reader))
      .join('\n');
    return saidTo(
      {
        headline,
        lines,
        figures: [
          figure('rows', `${RowWord(rows)}s`, rows.rows.length),
          figure('total', rows.counted === 'blocks' ? 'Blocks' : 'Stitches', sumCounts(rows)),
          figure('ends', 'Ends to weave in', cutLengths(rows, made.runs).ends),
          figure('side', 'One motif measures', blanket.side, 'cm'),
        ],
        assumptions: [...sheet.assumptions, ...carryAssumption(rows, made.runs)],
        data: { kind: made.name, ...sheetData(sheet, reader, { print }) },
        files: [
          { name: `${called}-chart-${termsEnding(reader)}.svg`, says: chart.alt, content: chart.svg },
          {
            name: `${called}-words-${termsEnding(reader)}.txt`,
            says: `The instructions of ${made.name} as a text.`,
            content: `${text}\n`,
          },
          sheet.file,
        ],
        actions: [
          action(
            'Pledge one',
            'together pledge',
            { name: blanket.name, kind: made.name },
            { forAnyone: true },
          ),
        ],
      },
      reader,
    );
  },
});
