import { describe, expect, it } from 'vitest';
import { Claims } from '../../src/projects/claims.ts';
import { MemoryStore } from '../../src/projects/memory.ts';

/** Two processes with one store and one clock. */
function two() {
  const store = new MemoryStore();
  let now = 1_000_000;
  const clock = () => now;
  return {
    here: new Claims(store, clock),
    there: new Claims(store, clock),
    pass: (ms: number) => (now += ms),
  };
}

describe('a claim', () => {
  it('is one process’s at a time, until it gives it back', async () => {
    const { here, there } = two();
    expect(await here.take('board.1')).toBe(true);
    expect(await here.take('board.1')).toBe(true);
    expect(await there.take('board.1')).toBe(false);
    expect(await there.take('board.2')).toBe(true);
    await here.give('board.1');
    expect(await there.take('board.1')).toBe(true);
    expect(await here.take('board.1')).toBe(false);
  });

  it('runs out, so that a process that died keeps nobody waiting', async () => {
    const { here, there, pass } = two();
    await here.take('board');
    pass(29_000);
    expect(await there.take('board')).toBe(false);
    pass(2_000);
    expect(await there.take('board')).toBe(true);
    expect(here.isMine('board')).toBe(false);
  });

  it('is held on to while it is taken again and again', async () => {
    const { here, there, pass } = two();
    await here.take('board');
    for (let taken = 0; taken < 5; taken++) {
      pass(20_000);
      expect(await here.take('board')).toBe(true);
      expect(await there.take('board')).toBe(false);
    }
  });

  it('is asked for anew where the clock was set back, which made it good for hours', async () => {
    const store = new MemoryStore();
    let back = 0;
    const here = new Claims(store, () => 10_000_000 - back);
    const there = new Claims(store, () => 10_031_000);
    await here.take('board');
    back = 3_600_000;
    expect(await there.take('board')).toBe(true);
    expect(here.isMine('board')).toBe(false);
    expect(await here.take('board')).toBe(false);
  });

  it('that has passed to another process is not given back over it', async () => {
    const { here, there, pass } = two();
    await here.take('board');
    pass(31_000);
    await there.take('board');
    await here.give('board');
    expect(await here.take('board')).toBe(false);
  });

  it('is got by exactly one of many who ask at once', async () => {
    const store = new MemoryStore();
    const all = Array.from({ length: 20 }, () => new Claims(store));
    const got = await Promise.all(all.map((claims) => claims.take('part')));
    expect(got.filter(Boolean)).toHaveLength(1);
  });
});
