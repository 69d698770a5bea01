import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compareGauges, hookFor, HOOK_STAYS_WITHIN } from '../../src/core/gauge.ts';
import { Working } from '../../src/core/working.ts';
import { HOOKS } from '../../src/standards/hooks.ts';
import { asking } from '../asking.ts';

const stitches = fc.integer({ min: 50, max: 300 }).map((tenths) => tenths / 10);
const sizes = HOOKS.filter(({ mm }) => mm >= 2.25 && mm <= 10).map(({ mm }) => mm);

describe('compare', () => {
  it('says by how much a piece worked to the counts comes out', () => {
    fc.assert(
      fc.property(stitches, stitches, fc.constantFrom(10, 10.16, 5), (have, want, over) => {
        const width = 120;
        const found = compareGauges({
          have: { stitches: have, over },
          want: { stitches: want, over: 10 },
          width,
        });
        const counted = (width * want) / 10;
        const comesOut = (counted * over) / have;
        expect(found.comesOut).toBeCloseTo(comesOut, 6);
        expect(found.widthPercent).toBeCloseTo(100 * (comesOut / width - 1), 6);
        expect(found.heightPercent).toBeUndefined();
      }),
      { numRuns: 100 },
    );
  });

  it('never proposes the hook in hand when it is off, and goes the right way', () => {
    fc.assert(
      fc.property(stitches, stitches, fc.constantFrom(...sizes), (have, want, hook) => {
        fc.pre(have / want < 2 && want / have < 2);
        const mm = hookFor(hook, have, want, new Working())!;
        const off = 100 * (want / have - 1);
        if (Math.abs(off) > HOOK_STAYS_WITHIN) expect(Math.sign(mm - hook)).toBe(-Math.sign(off));
        if (off === 0) expect(mm).toBe(hook);
      }),
      { numRuns: 200 },
    );
  });

  it('proposes only sizes that were read in a source', () => {
    fc.assert(
      fc.property(stitches, stitches, (have, want) => {
        fc.pre(Math.abs(100 * (want / have - 1)) > HOOK_STAYS_WITHIN && have / want < 2 && want / have < 2);
        const mm = hookFor(5, have, want, new Working());
        expect(HOOKS.find((hook) => hook.mm === mm)?.fromMemory).toBeUndefined();
      }),
      { numRuns: 60 },
    );
  });

  it('says the same in inches', async () => {
    const room = asking();
    await room.ask('wren: /settings change units:imperial');
    const answer = await room.ask('wren: /gauge compare have:14x10 want:13x10 width:48in');
    expect(answer.figures['width_percent']!.value).toBeCloseTo(-7.1429, 4);
    expect(answer.headline).toContain('48 in wide would come out 44.6 in, 7.1 % too narrow');
  });
});
