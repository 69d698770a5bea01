import fc from 'fast-check';
import { expect, it } from 'vitest';
import { SharedList } from '../../../src/core/base/shared-list.ts';

it('is what an array would be, however often it is shared, and no copy sees what becomes of another', () => {
  const step = fc.oneof(
    fc.record({ does: fc.constant('push' as const), times: fc.integer({ min: 1, max: 300 }) }),
    fc.record({ does: fc.constant('set' as const), times: fc.nat() }),
    fc.record({ does: fc.constant('share' as const), times: fc.constant(1) }),
  );
  fc.assert(
    fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
      let list = new SharedList<number>();
      let model: number[] = [];
      const kept: [SharedList<number>, number[]][] = [];
      steps.forEach(({ does, times }, number) => {
        if (does === 'push')
          for (let n = 0; n < times; n++) {
            list.push(number * 1000 + n);
            model.push(number * 1000 + n);
          }
        else if (does === 'set' && model.length > 0) {
          list.set(times % model.length, -number);
          model[times % model.length] = -number;
        } else if (does === 'share') {
          kept.push([list, model]);
          list = SharedList.of(list);
          model = [...model];
        }
      });
      for (const [shared, array] of [...kept, [list, model] as const]) {
        expect([...shared]).toEqual(array);
        expect(shared.length).toBe(array.length);
      }
      const odd = (item: number) => item % 2 === 1;
      expect(list.filter(odd)).toEqual(model.filter(odd));
      expect(list.some(odd)).toBe(model.some(odd));
      expect(list.findLast(odd)).toBe(model.findLast(odd));
      expect(list.map((item, index) => [item, index])).toEqual(model.map((item, index) => [item, index]));
      for (const at of [0, 255, 256, model.length - 1, model.length, -1, -256, -257, -model.length - 1])
        expect(list.at(at)).toBe(model.at(at));
    }),
    { numRuns: 60 },
  );
});

it('has no place beyond its end, and is told from another by what is in it', () => {
  const list = SharedList.of([1, 2]);
  expect(() => list.set(2, 3)).toThrow(RangeError);
  expect(() => list.set(-1, 3)).toThrow(RangeError);
  expect(list).toEqual(SharedList.of([1, 2]));
  expect(list).not.toEqual(SharedList.of([1, 3]));
});
