import { describe, expect, it } from 'vitest';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { Spent } from '../../../src/projects/spent.ts';
import { CommonPace, Rate, type Pace } from '../../../src/rooms/discord/rate.ts';

const PACE: Pace = { burst: 20, perSecond: 1 };

/** Processes of one bot with one clock; `pass` tells each of the others, as happens every second. */
function several(processes: number) {
  const store = new MemoryStore();
  let seconds = 0;
  const all = Array.from({ length: processes }, () => ({
    rate: new Rate(() => seconds, PACE),
    spent: new Spent(store, () => seconds * 1000),
  }));
  const exchange = async () => {
    for (const { rate, spent } of all)
      for (const { who, presses, ago } of await spent.exchange(rate.untold()))
        rate.elsewhere(who, presses, ago / 1000);
  };
  const pass = async (more: number) => {
    for (let second = 0; second < more; second++) {
      seconds += 1;
      await exchange();
    }
  };
  return { rates: all.map(({ rate }) => rate), pass, store };
}
const pressing = (rate: Rate, who: string, presses: number) =>
  Array.from({ length: presses }, () => rate.take(who)).filter((waits) => waits === 0).length;

describe('the pace of one person in several processes', () => {
  it('is one in all, whatever script presses on servers of each', async () => {
    const { rates, pass } = several(4);
    let through = 0;
    for (let second = 0; second < 120; second++) {
      for (const rate of rates) through += pressing(rate, 'script', 5);
      await pass(1);
    }
    // One process alone lets 20 and 120 through; four that know nothing of one another let four times as many.
    expect(through).toBeLessThan(20 + 120 + 4 * 20);
    expect(through).toBeGreaterThan(120);
  });

  it('is nobody else’s, and whoever presses as people do is not told of', async () => {
    const { rates, pass, store } = several(2);
    pressing(rates[0]!, 'script', 40);
    expect(pressing(rates[0]!, 'rowan', 9)).toBe(9);
    await pass(1);
    expect(pressing(rates[1]!, 'rowan', 20)).toBe(20);
    expect(pressing(rates[1]!, 'script', 1)).toBe(0);
    const told = JSON.stringify([...(store as unknown as { docs: Map<string, unknown> }).docs.values()]);
    expect(told).toContain('script');
    expect(told).not.toContain('rowan');
  });

  it('is full again after the usual while, and nothing is kept of it after a minute', async () => {
    const { rates, pass, store } = several(2);
    pressing(rates[0]!, 'script', 20);
    await pass(2);
    expect(rates[1]!.waits('script')).toBe(0);
    expect(pressing(rates[1]!, 'script', 20)).toBeLessThanOrEqual(3);
    await pass(62);
    expect(pressing(rates[1]!, 'script', 20)).toBe(20);
    await pass(62);
    expect([...(store as unknown as { docs: Map<string, unknown> }).docs.values()]).toEqual([
      { version: 1, told: [] },
    ]);
  });

  it('is kept by each where the others cannot be told', async () => {
    const rate = new Rate(() => 0, PACE);
    let asked = 0;
    const away = { exchange: () => Promise.reject(new Error(`away ${++asked}`)) };
    const common = new CommonPace(rate, away, 5);
    common.pressed();
    await expect.poll(() => asked).toBeGreaterThan(2);
    common.close();
    expect(pressing(rate, 'script', 30)).toBe(20);
  });
});
