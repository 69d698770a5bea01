import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeSegment, shareEvenly, spreadChanges, type Worked } from '../../../src/core/rows/spacing.ts';
import { asking } from '../../asking.ts';
import { refused } from '../../refused.ts';

const worked = fc.constantFrom<Worked>('flat', 'round');
const asked = fc
  .tuple(fc.integer({ min: 1, max: 400 }), fc.double({ min: 0, max: 1, noNaN: true }), worked)
  .map(([from, where, how]) => {
    const fewest = Math.ceil(from / 2);
    return { from, to: fewest + Math.round(where * (2 * from - fewest)), how };
  });

const sum = (numbers: readonly number[]) => numbers.reduce((all, one) => all + one, 0);

describe('spread', () => {
  it('consumes what is there and leaves what is wanted', () => {
    fc.assert(
      fc.property(asked, ({ from, to, how }) => {
        const { change, changes, runs } = spreadChanges(from, to, how);
        const [eats, leaves] = change === 'decrease' ? [2, 1] : [1, 2];
        expect(sum(runs) + eats * changes).toBe(from);
        expect(sum(runs) + leaves * changes).toBe(to);
        expect(runs).toHaveLength(changes === 0 ? 1 : how === 'flat' ? changes + 1 : changes);
        expect(Math.max(...runs) - Math.min(...runs)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 300 },
    );
  });

  it('says in its instruction exactly the runs it counts', () => {
    fc.assert(
      fc.property(asked, ({ from, to, how }) => {
        const { runs, instruction } = spreadChanges(from, to, how);
        const said = instruction.flatMap((segment) =>
          Array.from({ length: segment.times }, () => segment.runs).flat(),
        );
        // A bare last run of nothing is not said.
        const counted = how === 'flat' && runs.at(-1) === 0 && runs.length > 1 ? runs.slice(0, -1) : runs;
        expect(said).toEqual(counted);
      }),
      { numRuns: 200 },
    );
  });

  it('can be worked from its words alone', () => {
    fc.assert(
      fc.property(asked, ({ from, to, how }) => {
        const { change, instruction } = spreadChanges(from, to, how);
        const { eaten, left } = workWords(
          instruction.map((segment) => writeSegment(segment, change)).join('; then '),
        );
        expect([eaten, left]).toEqual([from, to]);
      }),
      { numRuns: 200 },
    );
  });

  it('shares so that the larger parts are spread evenly', () => {
    fc.assert(
      fc.property(fc.nat(500), fc.integer({ min: 1, max: 80 }), (total, parts) => {
        const shared = shareEvenly(total, parts);
        expect(sum(shared)).toBe(total);
        // Any stretch holds its fair share of the larger parts, to within one.
        const larger = shared.map((one) => one - Math.floor(total / parts));
        for (let end = 1; end <= parts; end++)
          expect(Math.abs(sum(larger.slice(0, end)) - (end * (total % parts)) / parts)).toBeLessThan(1);
      }),
      { numRuns: 100 },
    );
  });

  it.each([
    [40, 81, 'too-many-stitches', 'to:80'],
    [41, 20, 'too-few-stitches', 'to:21'],
  ])('refuses %i to %i, with the nearest', (from, to, code, hint) => {
    expect(() => spreadChanges(from, to, 'round')).toThrow(
      refused(code, { option: 'to', hint: expect.stringContaining(hint) }),
    );
  });

  it('has nothing to do where nothing changes', async () => {
    const answer = await asking().ask('/stitches spread from:40 to:40');
    expect(answer).toMatchObject({ figures: { changes: { value: 0 } }, data: { runs: [40] } });
  });
});

/** Works an instruction as it is written, counting what it eats and leaves: brackets and "times" as in any pattern. */
function workWords(text: string): { eaten: number; left: number } {
  let eaten = 0;
  let left = 0;
  const work = (phrases: string, times: number) => {
    for (const [, plain, change] of phrases.matchAll(/work (\d+)|(2 in the next|the next 2 together)/g)) {
      if (plain !== undefined) {
        eaten += times * Number(plain);
        left += times * Number(plain);
      } else {
        eaten += times * (change === '2 in the next' ? 1 : 2);
        left += times * (change === '2 in the next' ? 2 : 1);
      }
    }
  };
  const simple = (stretch: string, times: number) => {
    const [phrases = '', said] = stretch.split(/; (?=\d+ times$)/);
    work(phrases, times * (said === undefined ? 1 : Number.parseInt(said)));
  };
  for (const stretch of text.split('; then ')) {
    const bracket = /^\[(.*)\] (\d+) times$/.exec(stretch);
    if (!bracket) {
      simple(stretch, 1);
      continue;
    }
    for (const inner of bracket[1]!.split('; ')) {
      const round = /^\((.*)\) (\d+) times$/.exec(inner);
      work(round ? round[1]! : inner, Number(bracket[2]) * (round ? Number(round[2]) : 1));
    }
  }
  return { eaten, left };
}
