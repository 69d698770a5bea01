import { expect, test } from 'vitest';
import { drawPace, type PaceView } from '../../src/pictures/pace.ts';
import { findDayAfter } from '../../src/core/group/pace.ts';
import { countDaysUntil } from '../../src/core/group/proposal.ts';
import { all } from './views.ts';

/** Invented: three motifs on the first day, thirteen to come. */
const FIRST_DAY: PaceView = {
  title: 'Bean rows',
  arrivals: [{ day: 0.1, motifs: 3 }],
  today: 0.2,
  wanted: 16,
  ends: { early: 11, middle: 25, late: 80 },
  daysLeft: 125.4,
  closing: '31 March 2027',
  needed: 0.7,
  dayWords: (day) => `day ${Math.round(day)}`,
};
const drawn = (more: Partial<PaceView> = {}) => {
  const { svg, alt } = drawPace({ ...FIRST_DAY, ...more });
  return { svg, alt, has: (part: string) => svg.includes(`class="${part}"`) };
};
const wordsOf = (svg: string) => svg.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');
const cornersOf = (svg: string) => all(svg, /class="hatched" d="([^"]*)"/g)[0]!.split('L').length;

test('the pace is drawn from the first day on as far as its title’s days, and its key tells what is drawn', () => {
  const { svg, alt, has } = drawn();
  for (const part of ['band', 'hatched', 'middle', 'closing', 'needed']) expect(has(part)).toBe(true);
  expect(cornersOf(svg)).toBe(3);
  expect(svg).toContain('day 126');
  expect(wordsOf(svg)).toContain('Hatched: where it goes four times in five; dashes: the middle.');
  // Its closing day is the one that was set, whatever the hour of the opening.
  expect(alt).toContain('The closing day is 31 March 2027.');
});

test('what lies beyond the edge of the pace is said to', () => {
  const { svg, has } = drawn({ ends: { early: 11, middle: 25, late: 300 }, daysLeft: 5000 });
  expect(cornersOf(svg)).toBe(4);
  expect([has('middle'), has('closing'), has('needed')]).toEqual([true, false, false]);
  expect(wordsOf(svg)).toContain('further than drawn; dashes: the middle.');
  expect(wordsOf(svg)).toContain('The closing day lies beyond the right edge.');
  const endless = drawn({ ends: { early: 11, middle: 9000, late: 99_000 } });
  expect(endless.has('middle')).toBe(false);
  expect(endless.svg).not.toContain('dashes');
});

test('the end of a day is a moment of that day', () => {
  for (const now of ['2026-11-26T01:30:59.123Z', '2026-11-26T00:00:00.000Z', '2026-11-26T23:59:31.000Z'])
    expect(findDayAfter(new Date(now), countDaysUntil('2027-03-31', new Date(now)))).toBe('2027-03-31');
  expect(findDayAfter(new Date('2026-11-26T00:00:00Z'), 1)).toBe('2026-11-27');
});
