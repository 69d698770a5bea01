/** Invented histories of a group blanket, day by day. */
import type { GroupEvent, GroupPlan, Happening } from '../../../src/core/group/events.ts';
import type { Asker } from '../../../src/core/group/rules.ts';
import { replay, type GroupState } from '../../../src/core/group/state.ts';
import { groupPlan } from './plan.ts';

const START = Date.parse('2026-03-02T12:00:00.000Z');
const MS_PER_DAY = 86_400_000;

/** The moment so many days after the opening. */
export const day = (days: number) => new Date(START + days * MS_PER_DAY);
export const at = (days: number) => day(days).toISOString();

/** Who did what, and on which day; what came of one press bears one name. */
export type Did = readonly [by: string, days: number, happened: Happening, once?: string];

/** Ines (m0) opens a blanket of four furrows and two trellises, or one of another plan; then what happened. */
export function events(
  happened: readonly Did[],
  plan: GroupPlan = groupPlan(),
  organiser = 'm0',
): GroupEvent[] {
  return [
    { did: 'opened', name: 'Ines', plan, by: organiser, at: at(0), once: 'open' },
    ...happened.map(([by, days, one, once], index) => ({
      ...one,
      by,
      at: at(days),
      once: once ?? `press ${index}`,
    })),
  ];
}
export const history = (happened: readonly Did[] = [], plan?: GroupPlan, organiser?: string): GroupState =>
  replay(events(happened, plan, organiser));

export const joined = (maker: string, name: string, days = 0, perWeek = 1, colours: string[] = []): Did => [
  maker,
  days,
  { did: 'joined', maker, name, perWeek, colours },
];
export const pledged = (maker: string, kind: number, motifs: number, days = 1): Did => [
  maker,
  days,
  { did: 'pledged', maker, kind, motifs },
];
export const handedIn = (maker: string, kind: number, motifs: number, days = 2, side?: number): Did => [
  maker,
  days,
  { did: 'handed-in', maker, kind, motifs, ...(side === undefined ? {} : { side }) },
];
export const accepted = (...pieces: number[]): Did => ['m0', 5, { did: 'accepted', pieces }];
export const barred = (maker: string, reason = 'pledges and never makes'): Did => [
  'm0',
  5,
  { did: 'barred', maker, reason },
];

export const asker = (id: string, name = id, more: Partial<Asker> = {}): Asker => ({
  id,
  name,
  manager: false,
  managed: true,
  ...more,
});
export const INES = asker('m0', 'Ines');
export const ROWAN = asker('m1', 'Rowan');
export const ASH = asker('m2', 'Ash');
