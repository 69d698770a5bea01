/** A calendar file, its lines unfolded and read as RFC 5545 (iCalendar) has them. */
import { describe, expect, it } from 'vitest';
import { writeCalendar } from '../../../src/core/base/calendar.ts';

const DAYS = {
  name: 'Bean row throw',
  changed: '2031-04-02T18:05:00.000Z',
  days: [
    {
      uid: 'part-1',
      day: '2031-05-31',
      title: 'Part 1; moss, sand',
      says: `Rows 1 to 12 ${'and on '.repeat(20)}`,
    },
    { uid: 'part-2', day: '2031-06-14', title: 'Part 2' },
  ],
};

describe('a calendar file', () => {
  it('has every day as a whole day, under its own id', async () => {
    const text = await writeCalendar(DAYS);
    // RFC 5545, 3.1: lines end in CRLF, are no longer than 75 octets, and go on behind a blank.
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    const lines = text.replaceAll('\r\n ', '').split('\r\n');
    expect(lines[0]).toBe('BEGIN:VCALENDAR');
    const of = (name: string) =>
      lines.filter((line) => line.startsWith(name)).map((line) => line.slice(name.length));
    expect(of('UID:')).toEqual(['part-1', 'part-2']);
    expect(of('DTSTART;VALUE=DATE:')).toEqual(['20310531', '20310614']);
    expect(of('DTSTAMP:')).toEqual(['20310402T180500Z', '20310402T180500Z']);
    // 3.3.11: semicolons and commas in a text stand behind a backslash.
    expect(of('SUMMARY:')).toEqual(['Part 1\\; moss\\, sand', 'Part 2']);
    expect(of('DESCRIPTION:')).toHaveLength(1);
    expect(of('X-WR-CALNAME:')).toEqual(['Bean row throw']);
    expect(of('PRODID:').join('')).toContain('Loopwright');
  });

  it('is the same file for the same days', async () => {
    expect(await writeCalendar(DAYS)).toBe(await writeCalendar(structuredClone(DAYS)));
    expect(await writeCalendar({ ...DAYS, days: [] })).not.toContain('VEVENT');
  });
});
