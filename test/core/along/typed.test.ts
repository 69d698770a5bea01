/** What a teacher types: how often, which parts on which days, which zone; and what the moment of an hour there is. */
import { describe, expect, it } from 'vitest';
import { LONGEST_NAME } from '../../../src/core/base/limits.ts';
import { MOST_PARTS } from '../../../src/core/along/propose.ts';
import { MOST_DAYS_BETWEEN, readEvery, readParts, workIn } from '../../../src/core/along/read-parts.ts';
import { momentOf, readZone } from '../../../src/core/along/zones.ts';
import type { Problem } from '../../../src/core/base/problem.ts';
import { code } from './scene.ts';

describe('how often', () => {
  it.each([
    ['  every   week ', 7],
    ['Every Day', 1],
    ['daily', 1],
    ['days', 1],
    ['2 w', 14],
    ['5d', 5],
    ['5 D', 5],
    ['an week', 7],
    ['every other day', 2],
    ['two fortnights', 28],
    ['three weeks', 21],
    ['Weekly', 7],
    ['FORTNIGHT', 14],
    ['every 1 day', 1],
    [String(MOST_DAYS_BETWEEN), MOST_DAYS_BETWEEN],
    ['2 days', 2],
  ])('%j is every %i days', (text, days) => expect(readEvery(text)).toBe(days));

  it.each([
    '93',
    '93 days',
    '0',
    'another week',
    'brother week',
    'others week',
    'n week',
    'ann week',
    'every',
    'week week',
    'a b',
  ])('%j says no such thing', (text) => {
    expect(() => readEvery(text)).toThrow(
      expect.objectContaining({
        code: 'not-so-often',
        option: 'every',
        hint: expect.stringContaining(String(MOST_DAYS_BETWEEN)) as string,
      }),
    );
  });
});

describe('the work that a title tells of', () => {
  it.each([
    ['Swatches', 'swatch'],
    ['check your tension', 'swatch'],
    ['gauge', 'swatch'],
    ['an end', 'ends'],
    ['Weave in', 'ends'],
    ['weaving', 'ends'],
    ['weekend', 'own'],
    ['lay it all out', 'laying-out'],
    ['laying', 'laying-out'],
    ['arrangement', 'laying-out'],
    ['play', 'own'],
    ['joins', 'joining'],
    ['joining', 'joining'],
    ['seam', 'joining'],
    ['seaming', 'joining'],
    ['sew it', 'joining'],
    ['sewing', 'joining'],
    ['the border', 'border'],
    ['edge', 'border'],
    ['edging', 'border'],
    ['hedges', 'own'],
    ['The FIRST one', 'first'],
    ['firstly', 'own'],
    ['motif', 'motifs'],
    ['motifs', 'motifs'],
    ['a square', 'motifs'],
    ['squares', 'motifs'],
    ['block', 'motifs'],
    ['blocks', 'motifs'],
    ['granny', 'motifs'],
    ['grannies', 'motifs'],
    ['tea and cake', 'own'],
  ])('%s: %s', (title, work) => expect(workIn(title)).toBe(work));
});

describe('parts with their days', () => {
  const read = (text: string, today = '2031-01-01') => readParts(text, today);
  const problem = (text: string, today?: string): Problem => {
    try {
      read(text, today);
    } catch (error) {
      return error as Problem;
    }
    throw new Error('nothing was refused');
  };

  it.each([
    ['2031-1-6 swatch', 'swatch', '2031-01-06'],
    ['2031-01-16 swatch', 'swatch', '2031-01-16'],
    ['16/11/2031 swatch', 'swatch', '2031-11-16'],
    ['16.11.2031: swatch', 'swatch', '2031-11-16'],
    ['16-11-2031 swatch', 'swatch', '2031-11-16'],
    ['6 January 2031, swatch', 'swatch', '2031-01-06'],
    ['16 Jan 2031 swatch', 'swatch', '2031-01-16'],
    ['swatch on January 6, 2031', 'swatch on', '2031-01-06'],
    ['January 16 2031 – swatch', 'swatch', '2031-01-16'],
    ['swatch, 2031-01-06', 'swatch', '2031-01-06'],
    ['first 2031-01-06   square', 'first square', '2031-01-06'],
    ['2031-01-06 -- swatch --', 'swatch', '2031-01-06'],
  ])('%s', (text, title, from) => {
    expect(read(text)).toEqual([{ id: 1, title, from, work: workIn(title) }]);
  });

  it.each(['12031-01-06 swatch', '2031-01-061 swatch', '116 January 2031x swatch'])(
    '%s has no day',
    (text) => {
      expect(() => read(text)).toThrow(code('part-without-day'));
    },
  );

  it('are numbered in their order, a line or a semicolon apart', () => {
    expect(
      read('2031-01-06 swatch;\n; 2031-01-06 tea\n2031-01-07 squares;').map(({ id, title }) => [id, title]),
    ).toEqual([
      [1, 'swatch'],
      [2, 'tea'],
      [3, 'squares'],
    ]);
  });

  it('are refused with what is wrong, and what would do', () => {
    const days = (many: number) =>
      Array.from(
        { length: many },
        (_, index) =>
          `2031-${String(1 + Math.floor(index / 28)).padStart(2, '0')}-${String(1 + (index % 28)).padStart(2, '0')} x`,
      ).join(';');
    expect(read(days(MOST_PARTS))).toHaveLength(MOST_PARTS);
    expect(problem(days(MOST_PARTS + 1))).toMatchObject({
      code: 'too-many-parts',
      option: 'list',
      facts: { most: MOST_PARTS, given: MOST_PARTS + 1 },
    });
    // As long as what is saved may be, where a picture counts twice.
    expect(read(`2031-01-06 ${'🧶'.repeat(LONGEST_NAME / 2)}`)).toHaveLength(1);
    expect(read(`2031-01-06 ${'x'.repeat(LONGEST_NAME)}`)).toHaveLength(1);
    expect(() => read(`2031-01-06 ${'🧶'.repeat(LONGEST_NAME / 2)}x`)).toThrow(code('name-too-long'));
    expect(problem(`2031-01-06 ${'x'.repeat(LONGEST_NAME + 1)}`)).toMatchObject({
      code: 'name-too-long',
      facts: { most: LONGEST_NAME },
    });
    expect(problem('2031-01-13 a; 2031-01-06 b')).toMatchObject({
      code: 'parts-out-of-order',
      facts: { from: '2031-01-06', before: '2031-01-13' },
      hint: expect.stringContaining('semicolons') as string,
    });
    expect(problem('2031-01-06 a', '2031-01-07')).toMatchObject({
      code: 'day-passed',
      facts: { from: '2031-01-06' },
    });
    expect(read('2031-01-06 a', '2031-01-06')).toHaveLength(1);
    expect(problem('2031-01-06 a; 2042-01-06 b')).toMatchObject({
      code: 'day-too-far',
      option: 'list',
      facts: { from: '2042-01-06', years: 10 },
    });
    expect(read('2031-01-06 a; 2041-01-01 b')).toHaveLength(2);
    expect(problem('2031-02-01 a; 2031-02-01 b; 2031-02-01 c')).toMatchObject({
      code: 'too-many-parts-a-day',
      facts: { from: '2031-02-01', most: 2 },
    });
  });
});

describe('a time zone', () => {
  it('is read whatever its capitals and blanks, by old names too, and no offset is one', () => {
    expect(readZone('  EUROPE/berlin ')).toBe('Europe/Berlin');
    expect(readZone('America/New   York')).toBe('America/New_York');
    expect(readZone('America/Argentina/Buenos Aires')).toMatch(/Buenos_Aires$/);
    expect(() => readZone('US/Eastern')).not.toThrow();
    for (const zone of ['+02:00', '2+Berlin', 'Europe/Berlin!', 'Etc/Nowhere', '../etc/passwd'])
      expect(() => readZone(zone), zone).toThrow(code('unknown-zone'));
  });

  it('that is none is told the nearest: the city, the name', () => {
    const hint = (typed: string) => {
      try {
        readZone(typed);
      } catch (error) {
        return (error as Problem).hint;
      }
      return '';
    };
    const near = (typed: string) => (/The nearest: (.*)\.$/.exec(hint(typed))?.[1] ?? '').split(', ');
    expect(near('berlin')[0]).toBe('Europe/Berlin');
    expect(near('KOLKATA').concat(near('calcutta'))).toEqual(
      expect.arrayContaining([expect.stringMatching(/Calcutta|Kolkata/)]),
    );
    expect(near('Londn')[0]).toBe('Europe/London');
    expect(near('Europe/Pariss')).toContain('Europe/Paris');
    expect(near('Americ/Chicago')).toContain('America/Chicago');
    for (const typed of ['berlin', 'x', 'Europe/Pariss']) {
      expect(near(typed)).toHaveLength(4);
      expect(new Set(near(typed)).size).toBe(4);
    }
    expect(() => readZone('Nowhere/At/All')).toThrow(
      expect.objectContaining({ facts: { given: 'Nowhere/At/All' }, option: 'zone' }),
    );
  });

  it('shows its hours as published: half hours, summer in the south, a day that is missing', () => {
    // IANA tz database: Adelaide +10:30 in its summer, Lord Howe moves by half an hour, St John’s −03:30, Kiritimati +14, Pago Pago −11.
    for (const [day, hour, zone, moment] of [
      ['2031-01-06', 9, 'Australia/Adelaide', '2031-01-05T22:30:00.000Z'],
      ['2031-07-06', 9, 'Australia/Adelaide', '2031-07-05T23:30:00.000Z'],
      ['2031-01-06', 0, 'America/St_Johns', '2031-01-06T03:30:00.000Z'],
      ['2031-01-06', 23, 'Pacific/Kiritimati', '2031-01-06T09:00:00.000Z'],
      ['2031-01-06', 23, 'Pacific/Pago_Pago', '2031-01-07T10:00:00.000Z'],
      ['2031-01-06', 0, 'UTC', '2031-01-06T00:00:00.000Z'],
      // Clocks go back at 02:00 to 01:00 in New York on 2 November: the first of both.
      ['2031-11-02', 1, 'America/New_York', '2031-11-02T05:00:00.000Z'],
      ['2031-11-02', 2, 'America/New_York', '2031-11-02T07:00:00.000Z'],
      ['2031-11-03', 2, 'America/New_York', '2031-11-03T07:00:00.000Z'],
    ] as const)
      expect(momentOf(day, hour, zone).toISOString(), `${day} ${hour} ${zone}`).toBe(moment);
    expect(momentOf('2031-11-02', 1, 'America/New_York')).toEqual(
      momentOf('2031-11-02', 1, 'America/New_York'),
    );
  });
});
