import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  completeCounts,
  readChange,
  writeSegment,
  shareEvenly,
  spreadChanges,
  type Worked,
} from '../../../src/core/rows/spacing.ts';
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

  it('says it as shortly as it goes: at each place the pattern that repeats over the most, of two the shorter one', () => {
    fc.assert(
      fc.property(asked, ({ from, to, how }) => {
        const { runs, instruction } = spreadChanges(from, to, how);
        let left = [...runs];
        for (const { runs: pattern, times, bare } of instruction) {
          expect(pattern.length).toBeGreaterThan(0);
          // Flat work ends on a bare run, which belongs to no pattern.
          const worked = how === 'flat' && !bare ? left.slice(0, -1) : left;
          // Every pattern of up to twelve runs, laid out as often as it goes.
          const saved = Array.from({ length: bare ? 1 : 12 }, (_, index) => {
            const length = index + 1;
            const laid = (n: number) => Array.from({ length: n }, () => left.slice(0, length)).flat();
            let n = 1;
            while (worked.slice(0, (n + 1) * length).join() === laid(n + 1).join()) n++;
            return (n - 1) * length;
          });
          const most = Math.max(...saved);
          expect((times - 1) * pattern.length).toBe(most);
          expect(pattern.length).toBe(1 + saved.indexOf(most));
          left = left.slice(pattern.length * times);
        }
        // What is left unsaid is a last run of nothing.
        expect(left.every((run) => run === 0) && left.length <= 1).toBe(true);
      }),
      { numRuns: 150 },
    );
  });

  // Worked by dividing: 53 plain stitches in 7 runs are 7 each and 4 over; 46 in 8 are 5 each and 6 over.
  it.each([
    [60, 67, 'round', 'increase', [7, 53, 7, 4, 67]],
    [60, 53, 'flat', 'decrease', [7, 46, 5, 6, 53]],
    [10, 20, 'flat', 'increase', [10, 0, 0, 0, 20]],
  ] as const)('shows how %i become %i, %s', (from, to, how, change, results) => {
    const spread = spreadChanges(from, to, how);
    expect(spread.change).toBe(change);
    expect(spread.working.steps.map(({ result }) => result)).toEqual(results);
  });

  it.each([
    [{ runs: [8], times: 1, bare: true }, 'increase', 'work 8'],
    [{ runs: [8], times: 1, bare: false }, 'decrease', 'work 8, the next 2 together'],
    [{ runs: [8], times: 7, bare: false }, 'increase', 'work 8, 2 in the next; 7 times'],
    [{ runs: [8, 8], times: 3, bare: false }, 'increase', 'work 8, 2 in the next; 6 times'],
    [{ runs: [0], times: 5, bare: false }, 'decrease', 'the next 2 together; 5 times'],
    [
      { runs: [7, 8, 8, 8], times: 2, bare: false },
      'increase',
      '[work 7, 2 in the next; (work 8, 2 in the next) 3 times] 2 times',
    ],
    [
      { runs: [0, 1], times: 4, bare: false },
      'decrease',
      '[the next 2 together; work 1, the next 2 together] 4 times',
    ],
  ] as const)('writes %j of an %s', (segment, change, words) => {
    expect(writeSegment(segment, change)).toBe(words);
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

  // Two in every stitch doubles; two together all the way halves, an odd one left over.
  it.each([
    [40, 81, 'round', 'too-many-stitches', 'two in every stitch makes 80', 80],
    [41, 20, 'flat', 'too-few-stitches', 'two together all the way leaves 21', 21],
  ] as const)('refuses %i to %i, with the nearest', (from, to, how, code, says, nearest) => {
    expect(() => spreadChanges(from, to, how)).toThrow(
      refused(code, {
        option: 'to',
        message: expect.stringContaining(says),
        hint: `The nearest is to:${nearest}; take the rest in the next ${how === 'flat' ? 'row' : 'round'}.`,
        facts: { from, to, fewest: Math.round(from / 2), most: 2 * from },
      }),
    );
    expect(spreadChanges(from, nearest, how).changes).toBe(Math.abs(nearest - from));
  });

  it('has nothing to do where nothing changes', async () => {
    const answer = await asking().ask('/stitches spread from:40 to:40');
    expect(answer).toMatchObject({ figures: { changes: { value: 0 } }, data: { runs: [40] } });
  });
});

describe('what is said of a change', () => {
  it('names the count that is missing, and leaves both or neither as they are', () => {
    expect(completeCounts({ from: 60 }, 8)).toEqual({ from: 60, to: 68 });
    expect(completeCounts({ to: 68 }, 8)).toEqual({ from: 60, to: 68 });
    expect(completeCounts({ from: 60, to: 70 }, 8)).toEqual({ from: 60, to: 70 });
    expect(completeCounts({}, 8)).toEqual({});
  });
  it.each([
    // As one row at most doubles: 34 becomes 68, and 33 can only be the change.
    [{ to: 68 }, 'increase', 34, { from: 34, to: 68 }],
    [{ to: 68 }, 'increase', 33, { from: 35, to: 68 }],
    [{ to: 68 }, 'increase', 67, { from: 67, to: 68 }],
    [{ to: 68 }, 'increase', 68, { from: 0, to: 68 }],
    [{ to: 52 }, 'decrease', 60, { from: 60, to: 52 }],
    [{ to: 52 }, 'decrease', 52, { from: 104, to: 52 }],
    [{ to: 52 }, 'decrease', 8, { from: 60, to: 52 }],
    [{ from: 60 }, 'increase', 8, { from: 60, to: 68 }],
    [{ from: 60 }, 'decrease', 8, { from: 60, to: 52 }],
    [{ from: 60, to: 68 }, 'increase', 40, { from: 60, to: 68 }],
    [{}, 'increase', 8, {}],
    [{}, 'decrease', 8, {}],
  ] as const)('%j, %s %i', (given, change, first, counts) => {
    expect(readChange(given, change, first)).toEqual(counts);
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

describe('what is said of a change', () => {
  it.each([
    // One row at most doubles: 8 cannot become 68, and 60 cannot be added to 8.
    ['increase', 60, { to: 68 }, { from: 60, to: 68 }],
    ['increase', 8, { to: 68 }, { from: 60, to: 68 }],
    ['increase', 34, { to: 68 }, { from: 34, to: 68 }],
    ['increase', 8, { from: 60 }, { from: 60, to: 68 }],
    ['decrease', 110, { to: 98 }, { from: 110, to: 98 }],
    ['decrease', 12, { to: 98 }, { from: 110, to: 98 }],
    ['decrease', 8, { from: 60 }, { from: 60, to: 52 }],
    ['increase', 8, {}, {}],
  ] as const)('%s %i of %o', (change, first, typed, counts) => {
    expect(readChange(typed, change, first)).toEqual(counts);
  });
});
