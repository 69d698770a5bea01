/** Moments in the time of this machine; a day stays the day it is, wherever it is read. */
import { defined } from '../../core/base/defined.ts';
import { inWords } from '../../core/base/reader.ts';

/** A moment (ISO, UTC) in words in a time zone, that of this process if not given: `2 March 2026, 13:00 GMT+1`. */
export function ownTime(iso: string, timeZone?: string): string {
  if (!iso.includes('T')) return inWords(iso);
  const parts = new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
    timeZoneName: 'short',
    ...defined({ timeZone }),
  }).formatToParts(new Date(iso));
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((one) => one.type === type)?.value ?? '';
  return `${part('day')} ${part('month')} ${part('year')}, ${part('hour')}:${part('minute')} ${part('timeZoneName')}`;
}
