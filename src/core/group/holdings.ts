/** Who holds what of a group blanket: by maker and kind, pledged, handed in, accepted, sent back. */
import type { GroupState, Piece } from './state.ts';

export interface Holding {
  readonly kind: string;
  readonly pledged: number;
  /** Numbers of the motifs that wait for the organiser, and of those she accepted. */
  readonly handedIn: readonly number[];
  readonly accepted: readonly number[];
  readonly returned: readonly Piece[];
}

/** What a maker holds, by kind in the order of the blanket. */
export function listHoldings(state: GroupState, maker: string): Holding[] {
  const hers = state.pieces.filter((piece) => piece.maker === maker);
  return state.plan.kinds.map(({ name }, kind) => {
    const pieces = hers.filter((piece) => piece.kind === kind);
    const numbers = (which: Piece['state']) =>
      pieces.filter((piece) => piece.state === which).map(({ piece }) => piece);
    return {
      kind: name,
      pledged: state.pledges.get(maker)?.[kind] ?? 0,
      handedIn: numbers('handed-in'),
      accepted: numbers('accepted'),
      returned: pieces.filter((piece) => piece.state === 'returned'),
    };
  });
}

/** Whether anything is pledged, handed in or accepted of it; what was sent back alone is not held. */
export const holdsAny = ({ pledged, handedIn, accepted }: Holding): boolean =>
  pledged + handedIn.length + accepted.length > 0;

/** Everyone who holds or has sent something, in the order in which they came, with what it is. */
export function parcelsOf(state: GroupState): { name: string; held: Holding[] }[] {
  return [...state.names].flatMap(([maker, name]) => {
    const held = listHoldings(state, maker).filter(holdsAny);
    return held.length === 0 ? [] : [{ name, held }];
  });
}
