/** The board: the blanket filling up cell by cell, and by kind what is made, pledged and open. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import type { Context } from '../../src/chat/context.ts';
import { opt } from '../../src/chat/options.ts';
import { borderOf, groupKinds, groupLooks } from './looks.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { mustOrganise } from '../../src/core/group/rules.ts';
import type { GroupState } from '../../src/core/group/state.ts';
import { edgesOf, totalKinds, totalsOf, type KindTotals } from '../../src/core/group/totals.ts';
import { withLetter } from '../../src/core/blanket/layout.ts';
import { cm, count, inWords, num, when, type Reader } from '../../src/core/base/reader.ts';
import { drawBoard } from '../../src/pictures/board.ts';
import { action, form } from '../shared/actions.ts';
import { OPENED } from './example.ts';
import { askerOf } from '../shared/which-kept.ts';
import { nameOption, whichBlanket } from './which.ts';
import { noBoardHere } from './words.ts';

function picture(state: GroupState, reader: Reader) {
  const { plan } = state;
  return drawBoard({
    title: plan.name,
    columns: plan.columns,
    rows: plan.rows,
    cells: plan.layout,
    kinds: groupKinds(plan),
    tallies: totalKinds(state).map(({ wanted, accepted, handedIn, pledged }) => ({
      wanted,
      made: accepted,
      waiting: handedIn,
      pledged,
    })),
    colours: groupLooks(plan),
    border: borderOf(plan),
    ...edgesOf(plan),
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
  options: {
    name: nameOption,
    here: opt.yesno('Organiser: move the board into this channel').default(false),
  },
  onceOnly: ['here'],
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
    not: 'mine weigh give-back hand-in per-week',
    saved: 'group',
    marks: { name: { takes: 'saved-group' } },
    phrases: ['how many squares are left to claim', 'how is the group blanket doing'],
  },
  async answer({ name, here }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    const { channel, mute } = context.place;
    const wanted = here || doc.channel === undefined;
    if (here) mustBeMovable(state, context);
    const moves =
      wanted && channel !== undefined && mute === undefined && doc.server === context.place.server;
    if (moves) await context.projects.groups.moveBoard(doc.id, channel);
    const { plan } = state;
    const drawn = picture(state, context.reader);
    const kinds = totalKinds(state);
    const { quota, spares, pledged, handedIn: waiting, accepted, open } = totalsOf(state);
    const named = { name: plan.name };
    const anyone = { forAnyone: true } as const;
    return {
      headline: boardHeadline(state),
      figures: gather(
        figure('accepted', 'Accepted', accepted),
        figure('handed_in', 'Handed in, waiting', waiting),
        figure('pledged', 'Pledged', pledged),
        figure('open', 'Open', open),
        figure('wanted', 'Wanted for the layout', quota),
        spares > 0 && figure('spares', 'Spares beside it', spares),
      ),
      lines: [
        ...(mute === 'bot' && (wanted || doc.channel === channel) ? [noBoardHere(context.place)] : []),
        ...kinds.map(kindLine),
        `One motif measures ${cm(plan.side)} along a side; ${state.organiserName} runs this blanket.`,
      ],
      data: {
        kinds: kinds.map(({ wanted: _, ...kind }) => kind),
        is_open: state.open,
      },
      files: [{ name: 'board.svg', says: drawn.alt, content: drawn.svg }],
      actions: gather(
        state.open && open > 0 && action('Pledge one', 'together pledge', named, anyone),
        (state.open || pledged > 0) && form('Hand in', 'together handin', named, [], anyone),
        action('What I hold', 'together mine', named, anyone),
      ),
      board: doc.id,
    };
  },
});

/** Throws Problem: organisers-only, organiser-gone, no-channel-here, may-not-write-here. */
function mustBeMovable(state: GroupState, context: Context): void {
  mustOrganise(state, askerOf(context));
  const { channel, mute } = context.place;
  if (channel === undefined) {
    throw new Problem('no-channel-here', 'There is no channel here for a board to stand in.', {
      option: 'here',
      hint: 'Ask in the channel where it is to stand.',
    });
  }
  if (mute === 'asker') {
    throw new Problem(
      'may-not-write-here',
      'The board would stand in this channel, where you may not write.',
      {
        option: 'here',
        hint: 'Ask in a channel where you may.',
      },
    );
  }
}

function boardHeadline(state: GroupState): string {
  const { plan, open, closes } = state;
  const totals = totalsOf(state);
  const parts = gather(
    `${num(totals.accepted)} of ${count(totals.wanted, 'motif')} made${totals.spares > 0 ? ` (${count(totals.spares, 'spare')} among them)` : ''}`,
    totals.handedIn > 0 && `${num(totals.handedIn)} waiting to be accepted`,
    `${num(totals.pledged)} pledged`,
    `${num(totals.open)} open`,
    open && closes !== undefined && `wanted by ${when(closes)}`,
  );
  return `${plan.name}: ${parts.join(', ')}${open ? '' : '; closed'}.`;
}

/** `A furrow: 2 made, 1 waiting, 3 pledged, 1 open of 7 (1 spare among them)`: the numbers add up to the last. */
function kindLine({ name, wanted, spares, ...tally }: KindTotals, kind: number): string {
  const parts = gather(
    `${tally.accepted} made`,
    tally.handedIn > 0 && `${tally.handedIn} waiting`,
    `${tally.pledged} pledged`,
    `${tally.open} open of ${wanted}${spares > 0 ? ` (${count(spares, 'spare')} among them)` : ''}`,
  );
  return `${withLetter(kind, name)}: ${parts.join(', ')}`;
}
