/** A class with its teacher, for the tests of make-alongs: what is made along, who asks, what happened. */
import { expect } from 'vitest';
import type { AlongEvent, AlongPlan, Happening, Way } from '../../../src/core/along/events.ts';
import { alone, planAlong } from '../../../src/core/along/open.ts';
import { NO_WAY } from '../../../src/core/along/own.ts';
import { join } from '../../../src/core/along/rules.ts';
import { replay, type AlongState } from '../../../src/core/along/state.ts';

export const PATTERN = {
  ...alone({
    name: 'furrow',
    shape: 'diagonal',
    size: 12,
    stitch: 'hdc',
    gauge: { stitches: 13, rows: 10, over: 10 },
    runs: [
      { colour: 'moss', rows: 12 },
      { colour: 'sand', rows: 12 },
    ],
  }),
  columns: 3,
  rows: 4,
  counts: [12],
};
export const NOW = new Date('2031-01-01T12:00:00Z');
export const plan = (more: Partial<Parameters<typeof planAlong>[0]> = {}): AlongPlan =>
  planAlong({
    pattern: PATTERN,
    name: 'class',
    starts: '2031-01-06',
    every: 7,
    shares: undefined,
    list: undefined,
    hour: 9,
    zone: 'UTC',
    today: '2031-01-01',
    ...more,
  });
export const asker = (id: string) => ({ id, name: id, manager: false, managed: true });
export const TEACHER = asker('ines');

/** Lets things happen one after the other, each by whoever is named. */
export function history(
  ...steps: readonly (readonly [string, (state: AlongState) => readonly Happening[]])[]
) {
  const events: AlongEvent[] = [
    { did: 'opened', name: 'ines', plan: plan(), by: 'ines', at: NOW.toISOString(), once: 'open' },
  ];
  steps.forEach(([by, rule], press) => {
    for (const happened of rule(replay(events)))
      events.push({ ...happened, by, at: NOW.toISOString(), once: `press ${press}` });
  });
  return events;
}
export const joins = (id: string, way: Way = NO_WAY) =>
  [id, (state: AlongState) => join(state, asker(id), way)] as const;
export const code = (code: string) => expect.objectContaining({ code }) as unknown;
