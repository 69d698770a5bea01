/** Who holds what, for a spreadsheet. */
import { parcelsOf } from '../../src/core/group/holdings.ts';
import type { GroupState } from '../../src/core/group/state.ts';

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
