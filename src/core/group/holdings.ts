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
export function holdings(state: GroupState, maker: string): Holding[] {
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

/** Everyone who holds or has sent something, in the order in which they came, with what it is. */
export function parcelsOf(state: GroupState): { name: string; held: Holding[] }[] {
  return [...state.names].flatMap(([maker, name]) => {
    const held = holdings(state, maker).filter(
      ({ pledged, handedIn, accepted }) => pledged + handedIn.length + accepted.length > 0,
    );
    return held.length === 0 ? [] : [{ name, held }];
  });
}

/** A field of a comma-separated file (RFC 4180); one that a spreadsheet would take for a formula is made text. */
function field(value: string | number): string {
  const text = String(value);
  const safe = typeof value === 'string' && /^[=+\-@\t\r\n]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** The parcels as a comma-separated file with a heading, lines ended as RFC 4180 has them. */
export function parcelsCsv(state: GroupState): string {
  const rows = parcelsOf(state).flatMap(({ name, held }) =>
    held.map(({ kind, pledged, handedIn, accepted }) => [
      name,
      kind,
      pledged,
      handedIn.length,
      accepted.length,
      [...handedIn, ...accepted].map((piece) => `#${piece}`).join(' '),
    ]),
  );
  return [['maker', 'kind', 'to make', 'handed in', 'accepted', 'numbers'], ...rows]
    .map((row) => `${row.map(field).join(',')}\r\n`)
    .join('');
}
