/** How far one thing is off another, in per cent: of gauges, sides, hooks, edges and yarns alike. */
import type { Unit } from './reader.ts';
import { formula, type Formula } from './working.ts';

/**
 * The formula `100 * (what / than - 1)` in names of one's own: 0 where the two are equal, positive where the first is
 * larger. Derived.
 *
 * @example
 * percentOff('measured', 'expected', { label: 'Side', unit: 'cm' }).formula // → '100 * (measured / expected - 1)'
 */
export const percentOff = <const What extends string, const Than extends string>(
  what: What,
  than: Than,
  { label, unit, source = 'derived' }: { label: string; unit: Unit; source?: string },
): Formula<What | Than> =>
  formula<What | Than>({
    label,
    formula: `100 * (${what} / ${than} - 1)`,
    given: { [what]: unit, [than]: unit } as Record<What | Than, Unit>,
    unit: '',
    source,
  });

/** What is off by exactly so many per cent on paper is so on the machine, whatever its last digit says. */
const HAIR = 1e-9;

/** Whether one thing is off another by more than so many per cent. */
export const isOffBy = (what: number, than: number, percent: number): boolean =>
  Math.abs(what / than - 1) * 100 > percent + HAIR;
