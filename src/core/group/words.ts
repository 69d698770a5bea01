/** What happened, in words. */
import { count } from '../ways.ts';
import type { GroupEvent } from './events.ts';
import type { GroupState } from './state.ts';

const numbers = (pieces: readonly number[]) => pieces.map((piece) => `#${piece}`).join(' ');

/** One event as a clause: "rowan pledged 2 motifs of furrow". */
export function happeningWords(event: GroupEvent, { names, plan }: GroupState): string {
  const name = (maker: string) => names.get(maker) ?? 'the organiser';
  const of = (kind: number, motifs: number) => `${count(motifs, 'motif')} of ${plan.kinds[kind]?.name ?? ''}`;
  switch (event.did) {
    case 'opened':
      return `${name(event.by)} opened ${event.plan.name}`;
    case 'invited':
      return `${name(event.by)} named ${event.name}`;
    case 'joined':
      return `${event.name} joined with ${count(event.perWeek, 'motif')} a week`;
    case 'left':
      return `${name(event.maker)} left`;
    case 'pledged':
      return `${name(event.maker)} pledged ${of(event.kind, event.motifs)}`;
    case 'released':
      return event.by === event.maker
        ? `${name(event.maker)} gave back ${of(event.kind, event.motifs)}`
        : `${of(event.kind, event.motifs)}, pledged by ${name(event.maker)}, were offered again`;
    case 'handed-in':
      return `${name(event.maker)} handed in ${of(event.kind, event.motifs)}`;
    case 'accepted':
      return `${numbers(event.pieces)} accepted`;
    case 'returned':
      return `${numbers(event.pieces)} sent back: ${event.reason}`;
    case 'reminded':
      return `${name(event.maker)} was asked whether her pledges stand`;
    case 'handed-over':
      return `${event.name} became the organiser`;
    case 'closed':
      return 'closed to new pledges';
    case 'reopened':
      return 'opened again';
    case 'undone':
      return 'something was taken back';
  }
}
