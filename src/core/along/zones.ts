/** The moment of a day at an hour of a time zone, whatever its clocks do that day. */
import { sortByNearness } from '../base/nearest-name.ts';
import { Problem } from '../base/problem.ts';
import { clip } from '../base/quantity.ts';

const formats = new Map<string, Intl.DateTimeFormat>();

/** What a clock of the zone shows. Throws RangeError for a zone that is none. */
function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone);
  if (known) return known;
  const made = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
    era: 'short',
  });
  formats.set(zone, made);
  return made;
}

/** How many zones are named where one is not known. */
const NAMED = 4;

/**
 * A time zone by its name in the IANA database, whatever its capitals, a space for the line below: `europe/berlin`, `Europe/Berlin`.
 *
 * Throws Problem: unknown-zone, with the nearest.
 */
export function readZone(typed: string): string {
  const wanted = typed.trim().replace(/\s+/g, '_');
  // Old names and UTC are zones as well, though they are not listed; an offset alone keeps no summer time and is none here.
  const found = /^[A-Za-z][A-Za-z_+\-0-9/]*$/.test(wanted) ? called(wanted) : undefined;
  if (found !== undefined) return found;
  const known = Intl.supportedValuesOf('timeZone');
  // Whoever names a city means the zone called after it.
  const city = (zone: string) => zone.slice(zone.lastIndexOf('/') + 1);
  const near = [
    ...new Set([
      ...sortByNearness(city(wanted), known.map(city))
        .slice(0, NAMED)
        .flatMap((name) => known.filter((zone) => city(zone) === name)),
      ...sortByNearness(wanted, known),
    ]),
  ].slice(0, NAMED);
  throw new Problem('unknown-zone', `“${clip(typed)}” is not a time zone.`, {
    option: 'zone',
    hint: `Name it like Europe/Berlin. The nearest: ${near.join(', ')}.`,
    facts: { given: clip(typed) },
  });
}

/** The zone of that name as it is spelt, whatever its capitals; undefined where there is none. */
function called(name: string): string | undefined {
  try {
    return new Intl.DateTimeFormat('en-US', { timeZone: name }).resolvedOptions().timeZone;
  } catch {
    return undefined;
  }
}

/** What the clocks of a zone show at a moment, as if it were UTC; ms. */
function shownAt(moment: number, zone: string): number {
  const parts = new Map(
    formatOf(zone)
      .formatToParts(new Date(moment))
      .map(({ type, value }) => [type, value]),
  );
  const part = (type: Intl.DateTimeFormatPartTypes) => Number(parts.get(type));
  return Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'), part('second'));
}

const DAY_MS = 86_400_000;

/**
 * The moment at which the clocks of `zone` show `hour` (0–23) on `day` (YYYY-MM-DD). Where they show it twice, the first time;
 * where they leap over it, the moment that they come to instead: as much later as they leap.
 *
 * @example
 * momentOf('2031-01-06', 9, 'Europe/Berlin').toISOString() // → '2031-01-06T08:00:00.000Z'
 */
export function momentOf(day: string, hour: number, zone: string): Date {
  const wanted = Date.parse(`${day}T00:00:00Z`) + hour * 3_600_000;
  // No zone is further than a day from UTC, so the clocks' distance before and after it are all there can be.
  const offsets = [wanted - DAY_MS, wanted + DAY_MS].map((moment) => shownAt(moment, zone) - moment);
  const exact = offsets.map((offset) => wanted - offset).filter((moment) => shownAt(moment, zone) === wanted);
  // What their distance was before comes first, and where they go back it is the earlier of both moments.
  return new Date(exact[0] ?? wanted - (offsets[0] ?? 0));
}
