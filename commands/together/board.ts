/** The board: the blanket filling up cell by cell, and by kind what is made, pledged and open. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { coloursOf } from '../../src/core/blanket/colour.ts';
import { openFor, type GroupState } from '../../src/core/group/state.ts';
import { letter } from '../../src/core/blanket/layout.ts';
import { cm, count, inWords, num, when, type Reader } from '../../src/core/base/reader.ts';
import { drawBoard } from '../../src/pictures/board.ts';
import { action } from '../shared/actions.ts';
import { OPENED } from './example.ts';
import { nameOption, whichBlanket } from './which.ts';

function picture(state: GroupState, reader: Reader) {
  const { plan } = state;
  return drawBoard({
    title: plan.name,
    columns: plan.columns,
    rows: plan.rows,
    cells: plan.layout,
    kinds: plan.kinds.map((kind, index) => ({ ...kind, letter: letter(index) })),
    tallies: plan.kinds.map(({ quota, spares }, kind) => {
      const { pledged = 0, handedIn = 0, accepted = 0 } = state.tally[kind] ?? {};
      return { wanted: quota + spares, made: accepted, waiting: handedIn, pledged };
    }),
    colours: coloursOf(plan.yarns.map(({ colour, hex }) => ({ name: colour, hex }))),
    border: plan.border.rounds.map(({ stitch, colour }) => ({
      stitch,
      colour: colour ?? plan.yarns[0]?.colour ?? plan.name,
    })),
    width: plan.columns * plan.side,
    height: plan.rows * plan.side,
    note: state.open
      ? state.closes === undefined
        ? undefined
        : `Wanted by ${inWords(state.closes)}.`
      : 'Closed.',
    reader,
  });
}

export const board = question({
  name: 'board',
  says: 'How far the group blanket is: a picture, and made, pledged and open by kind',
  options: { name: nameOption },
  example: '',
  before: [...OPENED, 'rowan: /together pledge kind:furrow motifs:2'],
  refused: { line: 'name:"No such blanket"', option: 'name' },
  asked: {
    ways: [
      'board',
      'show board',
      'group how-far',
      '?motif open-for',
      'how-many left claim',
      'open-for',
      '?motif left claim',
      'open-for group',
      '?motif open-for group',
      'how-many open-for',
      'which open-for',
    ],
    also: 'motif group left claim open-for show blanket how-far how-many done kind which board',
    not: 'mine weigh release hand-in per-week',
    saved: 'group',
    marks: { name: { takes: 'saved-group' } },
    phrases: ['how many squares are left to claim', 'how is the group blanket doing'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    const { plan } = state;
    const drawn = picture(state, context.reader);
    const sum = (of: 'pledged' | 'handedIn' | 'accepted') =>
      state.tally.reduce((all, tally) => all + tally[of], 0);
    const wanted = plan.kinds.reduce((all, kind) => all + kind.quota, 0);
    const open = plan.kinds.reduce((all, _, kind) => all + openFor(state, kind), 0);
    const waiting = sum('handedIn');
    const named = { name: plan.name };
    const anyone = { forAnyone: true } as const;
    return {
      headline: `${plan.name}: ${num(sum('accepted'))} of ${count(wanted, 'motif')} made, ${waiting > 0 ? `${num(waiting)} waiting to be accepted, ` : ''}${num(sum('pledged'))} pledged, ${num(open)} open${state.open ? (state.closes === undefined ? '' : `, wanted by ${when(state.closes)}`) : '; closed'}.`,
      figures: [
        figure('accepted', 'Accepted', sum('accepted')),
        figure('handed_in', 'Handed in, waiting', waiting),
        figure('pledged', 'Pledged', sum('pledged')),
        figure('open', 'Open', open),
        figure('wanted', 'Wanted for the layout', wanted),
      ],
      lines: [
        ...plan.kinds.map((kind, index) => {
          const { pledged = 0, handedIn = 0, accepted = 0 } = state.tally[index] ?? {};
          const spares = kind.spares > 0 ? ` and ${count(kind.spares, 'spare')}` : '';
          return `${letter(index)} ${kind.name}: ${accepted} made, ${handedIn > 0 ? `${handedIn} waiting, ` : ''}${pledged} pledged, ${openFor(state, index)} open of ${kind.quota}${spares}`;
        }),
        `One motif measures ${cm(plan.side)} along a side. ${state.organiserName} runs this blanket.`,
      ],
      data: {
        kinds: plan.kinds.map((kind, index) => ({
          name: kind.name,
          quota: kind.quota,
          spares: kind.spares,
          ...state.tally[index],
          open: openFor(state, index),
        })),
        is_open: state.open,
      },
      files: [{ name: 'board.svg', says: drawn.alt, content: drawn.svg }],
      actions: gather(
        state.open && open > 0 && action('Pledge one', 'together pledge', named, anyone),
        (state.open || sum('pledged') > 0) && action('Hand one in', 'together handin', named, anyone),
        action('What I hold', 'together mine', named, anyone),
      ),
      board: doc.id,
    };
  },
});
