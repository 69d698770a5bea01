/** What happened to a group blanket, and its motifs' numbers, in words. */
import { gather } from '../../src/chat/answer.ts';
import { serverOf, type Place } from '../../src/chat/context.ts';
import { count, when } from '../../src/core/base/reader.ts';
import type { GroupEvent } from '../../src/core/group/events.ts';
import type { Holding } from '../../src/core/group/holdings.ts';
import type { GroupState } from '../../src/core/group/state.ts';

/** Numbers of motifs, those in a row drawn together: `#1-3 #7`. */
export function numbered(pieces: readonly number[]): string {
  const runs: [number, number][] = [];
  for (const piece of [...new Set(pieces)].sort((a, b) => a - b)) {
    const last = runs.at(-1);
    if (last?.[1] === piece - 1) last[1] = piece;
    else runs.push([piece, piece]);
  }
  return runs.map(([from, to]) => (from === to ? `#${from}` : `#${from}-${to}`)).join(' ');
}

/** What a maker holds of one kind, line by line. */
export const heldLines = ({ kind, pledged, handedIn, accepted, returned }: Holding): string[] =>
  gather(
    pledged > 0 && `${kind}: ${pledged} to make`,
    handedIn.length > 0 && `${kind}: waiting ${numbered(handedIn)}`,
    accepted.length > 0 && `${kind}: accepted ${numbered(accepted)}`,
    returned.slice(-3).map(({ piece, reason }) => `${kind}: #${piece} came back: ${reason ?? ''}`),
  );

/** One event as a clause: "rowan pledged 2 motifs of furrow". */
export function happeningWords(
  event: GroupEvent,
  state: GroupState,
  /** All that happened, where what was taken back is to be said. */
  events: readonly GroupEvent[] = [],
): string {
  const { names, plan } = state;
  const back = event.did === 'undone' ? events[event.event] : undefined;
  const name = (maker: string) => names.get(maker) ?? 'a manager of the server';
  const of = (kind: number, motifs: number) => `${count(motifs, 'motif')} of ${plan.kinds[kind]?.name ?? ''}`;
  switch (event.did) {
    case 'opened':
      return `${event.name} opened ${event.plan.name}`;
    case 'invited':
      return `${name(event.by)} named ${event.name}`;
    case 'joined':
      return `${event.name} joined with ${count(event.perWeek, 'motif')} a week`;
    case 'left':
      return `${name(event.maker)} left`;
    case 'pledged':
      return event.by === event.maker
        ? `${name(event.maker)} pledged ${of(event.kind, event.motifs)}`
        : `${name(event.by)} gave ${name(event.maker)} a share, ${of(event.kind, event.motifs)}`;
    case 'released':
      return event.by === event.maker
        ? `${name(event.maker)} gave back ${of(event.kind, event.motifs)}`
        : `${of(event.kind, event.motifs)} ${event.motifs === 1 ? 'was' : 'were'} offered again`;
    case 'handed-in':
      return `${name(event.maker)} handed in ${of(event.kind, event.motifs)}`;
    case 'accepted':
      return `${name(event.by)} accepted ${numbered(event.pieces)}`;
    case 'returned':
      return `${name(event.by)} sent ${numbered(event.pieces)} back: ${event.reason}`;
    case 'reminded':
      return `${name(event.maker)} was asked whether the pledges stand`;
    case 'kept':
      return `${name(event.maker)} said that the pledges stand`;
    case 'barred':
      return `${name(event.by)} keeps ${name(event.maker)} from taking part: ${event.reason}`;
    case 'readmitted':
      return `${name(event.by)} lets ${name(event.maker)} take part again`;
    case 'offered-over':
      return `${name(event.by)} asked ${event.name} to run it`;
    case 'declined':
      return `${name(event.maker)} would rather not run it`;
    case 'handed-over':
      return `${event.name} became the organiser`;
    case 'closed':
      return `${name(event.by)} closed it to new pledges`;
    case 'reopened':
      return event.closes === undefined
        ? `${name(event.by)} opened it again`
        : `${name(event.by)} set the closing day to ${when(event.closes)}`;
    case 'undone':
      return `${name(event.by)} took ${back === undefined ? 'something back' : `back: ${happeningWords(back, state)}`}`;
  }
}

/** What keeps the board from standing where it is asked for. */
export const noBoardHere = ({ lacks = [] }: Pick<Place, 'lacks'>) =>
  `Its board cannot stand here yet: this bot lacks ${lacks.join(', ')} in this channel. Ask for the board again once it has ${lacks.length === 1 ? 'it' : 'them'}.`;

/** Whether a thread can be made of the place. */
export const mayHaveThread = (place: Place): boolean =>
  serverOf(place) !== undefined &&
  place.channel !== undefined &&
  place.within === undefined &&
  place.mute === undefined &&
  (place.lacksFor?.thread ?? []).length === 0;
