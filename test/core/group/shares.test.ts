/** Shares against an exact solver (HiGHS, mixed integer), on random boards. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareOut, type Sharer } from '../../../src/core/group/shares.ts';
import { solver } from '../../solver.ts';

const sharer = (kinds: number) =>
  fc.record({
    maker: fc.constant('m'),
    capacity: fc.integer({ min: 1, max: 8 }).map((n) => n / 2 + 0.5),
    held: fc.integer({ min: 0, max: 3 }),
    can: fc.array(fc.boolean(), { minLength: kinds, maxLength: kinds }),
  });
const boards = fc.integer({ min: 1, max: 3 }).chain((kinds) =>
  fc.record({
    open: fc.array(fc.integer({ min: 0, max: 6 }), { minLength: kinds, maxLength: kinds }),
    sharers: fc.array(sharer(kinds), { minLength: 1, maxLength: 5 }),
  }),
);

const roomOf = ({ capacity, held }: Sharer) => Math.max(0, Math.floor(capacity + 1e-9) - held);
const burden = (sharers: readonly Sharer[], given: readonly number[]) =>
  sharers.reduce(
    (sum, { held, capacity }, index) => sum + (held + given[index]!) ** 2 / capacity - held ** 2 / capacity,
    0,
  );

/** Most motifs first, then the least burden: unit increments with rising costs make it linear. */
function exact(open: readonly number[], sharers: readonly Sharer[]): { placed: number; burden: number } {
  const MANY = 1000;
  const terms: string[] = [];
  const rows: string[] = [];
  const bounds: string[] = [];
  const whole: string[] = [];
  sharers.forEach((one, s) => {
    const units = Array.from({ length: roomOf(one) }, (_, unit) => `u${s}_${unit}`);
    units.forEach((name, unit) => {
      terms.push(`+ ${MANY - (2 * (one.held + unit) + 1) / one.capacity} ${name}`);
      bounds.push(`0 <= ${name} <= 1`);
      whole.push(name);
    });
    const kinds = open.map((_, kind) => `x${s}_${kind}`);
    kinds.forEach((name, kind) => {
      bounds.push(`0 <= ${name} <= ${one.can[kind] === true ? open[kind]! : 0}`);
      whole.push(name);
    });
    rows.push(
      `s${s}: ${kinds.map((name) => `+ ${name}`).join(' ')} ${units.map((name) => `- ${name}`).join(' ')} = 0`,
    );
  });
  open.forEach((motifs, kind) =>
    rows.push(`k${kind}: ${sharers.map((_, s) => `+ x${s}_${kind}`).join(' ')} <= ${motifs}`),
  );
  if (terms.length === 0) return { placed: 0, burden: 0 };
  const solution = solver.solve(
    `Maximize\n obj: ${terms.join(' ')}\nSubject To\n ${rows.join('\n ')}\nBounds\n ${bounds.join('\n ')}\nGeneral\n ${whole.join(' ')}\nEnd`,
  );
  const column = (name: string) => Math.round(solution.Columns[name]?.Primal ?? 0);
  const given = sharers.map((_, s) => open.reduce((sum, _open, kind) => sum + column(`x${s}_${kind}`), 0));
  return { placed: given.reduce((a, b) => a + b, 0), burden: burden(sharers, given) };
}

describe('shares', () => {
  it('are whole, within what each can do, and lose no motif', () => {
    fc.assert(
      fc.property(boards, ({ open, sharers }) => {
        const { motifs, unplaced } = shareOut(open, sharers);
        motifs.forEach((hers, index) => {
          expect(hers.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(roomOf(sharers[index]!));
          hers.forEach((n, kind) => {
            expect(n).toBeGreaterThanOrEqual(0);
            if (n > 0) expect(sharers[index]!.can[kind]).toBe(true);
          });
        });
        open.forEach((n, kind) => {
          expect(motifs.reduce((sum, hers) => sum + hers[kind]!, 0) + unplaced[kind]!).toBe(n);
        });
      }),
    );
  });

  it('place as many motifs, as fairly, as the exact solver', () => {
    fc.assert(
      fc.property(boards, ({ open, sharers }) => {
        const { motifs } = shareOut(open, sharers);
        const given = motifs.map((hers) => hers.reduce((a, b) => a + b, 0));
        const best = exact(open, sharers);
        expect(given.reduce((a, b) => a + b, 0)).toBe(best.placed);
        expect(burden(sharers, given)).toBeCloseTo(best.burden, 6);
      }),
      { numRuns: 60 },
    );
  });

  it('are in proportion where nothing stands in the way', () => {
    const sharers = [4, 2, 1].map((capacity) => ({
      maker: 'm',
      capacity: capacity * 10,
      held: 0,
      can: [true],
    }));
    expect(shareOut([35], sharers).motifs).toEqual([[20], [10], [5]]);
  });
});
