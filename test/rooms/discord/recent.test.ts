/** What is remembered of the latest: at least so much, never much more, and the oldest goes first. */
import { describe, expect, it } from 'vitest';
import { Rate } from '../../../src/rooms/discord/rate.ts';
import { Recent } from '../../../src/rooms/discord/recent.ts';

describe('recent keys', () => {
  it('are told from new ones, as many as it is to remember, whenever they came', () => {
    for (let before = 0; before < 12; before += 1) {
      const recent = new Recent(4);
      const keys = Array.from({ length: before + 4 }, (_, n) => `${n}`);
      for (const key of keys) expect(recent.add(key)).toBe(true);
      for (const key of keys.slice(-4)) expect(recent.add(key)).toBe(false);
    }
  });

  it('are forgotten after twice as many others', () => {
    const recent = new Recent(4);
    for (let n = 0; n < 9; n += 1) recent.add(`${n}`);
    expect(recent.add('0')).toBe(true);
  });

  it('are new again once they are forgotten on purpose, young or old', () => {
    const recent = new Recent(3);
    for (const key of ['a', 'b', 'c', 'd']) recent.add(key);
    for (const key of ['a', 'd']) {
      expect(recent.add(key)).toBe(false);
      recent.forget(key);
      expect(recent.add(key)).toBe(true);
      expect(recent.add(key)).toBe(false);
    }
  });
});

describe('how fast one person asks', () => {
  it('is remembered among ten thousand others', () => {
    const rate = new Rate(() => 0, { burst: 2, perSecond: 1 });
    expect([rate.take('rowan'), rate.take('rowan'), rate.take('rowan')]).toEqual([0, 0, 1]);
    for (let n = 0; n < 10_000; n += 1) rate.take(`maker ${n}`);
    expect(rate.waits('rowan')).toBe(1);
    expect(rate.take('rowan')).toBe(1);
    // Asked for again, she is among the latest.
    for (let n = 0; n < 10_000; n += 1) rate.take(`other ${n}`);
    expect(rate.waits('rowan')).toBe(1);
    for (let n = 0; n < 20_002; n += 1) rate.take(`further ${n}`);
    expect(rate.waits('rowan')).toBe(0);
  });
});
