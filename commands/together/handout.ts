/** A group blanket on paper: a sheet for the wall, and a slip for every maker. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { withLetter } from '../../src/core/blanket/layout.ts';
import { findUnevenKinds } from '../../src/core/blanket/pieces.ts';
import { cm, count, num, when, type Reader } from '../../src/core/base/reader.ts';
import { holdsAny, listHoldings } from '../../src/core/group/holdings.ts';
import type { GroupState } from '../../src/core/group/state.ts';
import { edgesOf, totalKinds, totalsOf } from '../../src/core/group/totals.ts';
import { writeRuns } from '../../src/core/stripes/colour-runs.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import type { Block } from '../../src/paper/paper.ts';
import { drawBlanket } from '../../src/pictures/blanket.ts';
import { action } from '../shared/actions.ts';
import { pictureBlock } from '../shared/blanket-sheet.ts';
import { described } from '../shared/motif-words.ts';
import { HANDOUT_CAUTIONS, SHEET_MARKS, sheetData, sheetOf, sheetOptions } from '../shared/sheet.ts';
import { unevenWords } from '../shared/uneven-words.ts';
import { readerIn, saidTo } from '../shared/terms-option.ts';
import { JOINED } from './example.ts';
import { borderOf, groupKinds, groupLooks } from './looks.ts';
import { nameOption, whichBlanket } from './which.ts';
import { numbered } from './words.ts';

/** The plan as it is to be: paper does not fill up by itself. */
function planPicture({ plan }: GroupState, reader: Reader) {
  return drawBlanket({
    title: plan.name,
    columns: plan.columns,
    rows: plan.rows,
    cells: plan.layout,
    kinds: groupKinds(plan),
    colours: groupLooks(plan),
    border: borderOf(plan),
    ...edgesOf(plan),
    reader,
  });
}

/** What everybody has to know: size, how far off is accepted, until when. */
const rulesOf = ({ plan, open, closes, organiserName }: GroupState): string[] =>
  gather(
    `One motif measures ${cm(plan.side)} along a side; ${num(plan.tolerance)} % more or less is accepted.`,
    open ? closes !== undefined && `Wanted by ${when(closes)}.` : 'Closed.',
    `${organiserName} runs this blanket.`,
  );

/** How one kind is made, in a line: for the wall and for the slips. */
const kindLine = (kind: GroupState['plan']['kinds'][number], index: number): string =>
  `${withLetter(index, kind.name, ', ')}: ${described(kind)}${kind.runs.length === 0 ? '' : `; ${writeRuns(kind.runs, planOf(kind).called)}`}.`;

/** What one maker holds, to cut out. */
function slipOf(state: GroupState, maker: string, name: string): Block {
  const held = listHoldings(state, maker);
  const ticks = held.flatMap((one, index) =>
    holdsAny(one)
      ? [
          {
            text: `${withLetter(index, one.kind, ', ')}: ${num(one.pledged)} still to make${one.handedIn.length > 0 ? `, handed in ${numbered(one.handedIn)}` : ''}${one.accepted.length > 0 ? `, accepted ${numbered(one.accepted)}` : ''}.`,
            boxes: Array.from({ length: one.pledged }, (_, at) => String(at + 1)),
          },
        ]
      : [],
  );
  return {
    kind: 'together',
    cut: true,
    blocks: gather<Block>(
      { kind: 'part', text: name },
      { kind: 'text', text: `For ${state.plan.name}. ${rulesOf(state).join(' ')}` },
      ticks.length === 0 ? { kind: 'text', text: 'Nothing is pledged yet.' } : { kind: 'ticks', ticks },
    ),
  };
}

export const handout = question({
  name: 'handout',
  says: 'The group blanket to print (PDF): a sheet for the wall, and a slip for each maker',
  options: { ...sheetOptions(), name: nameOption },
  example: 'paper:A4',
  before: [...JOINED, 'rowan: /together pledge kind:furrow motifs:2'],
  refused: { line: 'name:"No such blanket"', option: 'name' },
  asked: {
    ways: ['print group', 'print group blanket', 'print board'],
    also: 'group blanket who board show each',
    not: 'motif weigh yarn ball mine',
    saved: 'group',
    marks: { name: { takes: 'saved-group' }, ...SHEET_MARKS },
    phrases: ['print the group blanket for the wall'],
  },
  async answer({ terms, paper, print, name }, context): Promise<Answer> {
    const reader = readerIn(context.reader, terms);
    const { state } = await whichBlanket(context, name);
    const { plan, members } = state;
    const totals = totalsOf(state);
    await breathe();
    const drawn = planPicture(state, reader);
    await breathe();
    const sheet = await sheetOf(
      plan.name,
      'group',
      gather<Block>(
        { kind: 'text', text: rulesOf(state).join(' ') },
        pictureBlock(drawn, 0.42),
        {
          kind: 'table',
          widths: [5, 2, 2, 2, 2, 2, 2],
          head: ['Kind', 'Wanted', 'Spare', 'Made', 'Waiting', 'Pledged', 'Open'],
          rows: totalKinds(state).map((kind, index) => [
            withLetter(index, kind.name, ', '),
            num(kind.quota),
            num(kind.spares),
            num(kind.accepted),
            num(kind.handedIn),
            num(kind.pledged),
            num(kind.open),
          ]),
        },
        { kind: 'part', text: 'The kinds' },
        { kind: 'list', items: plan.kinds.map(kindLine) },
        { kind: 'part', text: 'Take care' },
        { kind: 'caution', items: [...unevenWords(findUnevenKinds(plan.kinds)), ...HANDOUT_CAUTIONS] },
        members.size > 0 && [
          { kind: 'new-page' } as const,
          { kind: 'heading', text: 'Slips to cut out' } as const,
        ],
        [...members].map(([maker, { name: called }]) => slipOf(state, maker, called)),
      ),
      { reader, paper, print },
    );
    return saidTo(
      {
        headline: `${plan.name} to print on ${sheet.size}, in ${reader.terms} terms: a sheet for the wall and ${count(members.size, 'slip')}.`,
        figures: [
          figure('wanted', 'Wanted for the layout', totals.quota),
          figure('accepted', 'Accepted', totals.accepted),
          figure('pledged', 'Pledged', totals.pledged),
          figure('open', 'Open', totals.open),
          figure('makers', 'Makers', members.size),
        ],
        assumptions: sheet.assumptions,
        data: { blanket: plan.name, ...sheetData(sheet, reader, { print }) },
        files: [sheet.file],
        actions: [action('The board', 'together board', { name: plan.name })],
      },
      reader,
    );
  },
});
