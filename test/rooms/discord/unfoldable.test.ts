import { describe, expect, it } from 'vitest';
import type { RenderedAnswer } from '../../../src/chat/answer.ts';
import { LatestAnswers } from '../../../src/projects/latest-answers.ts';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { Unfoldables } from '../../../src/rooms/discord/unfoldable.ts';

const shown = { headline: 'Kept.', working: [], files: [], data: { a: 1 } } as unknown as RenderedAnswer;
const answer = { path: 'motif weigh', shown };

function process(store: MemoryStore, later = 1e6) {
  const missed: unknown[] = [];
  const unfoldables = new Unfoldables({
    kept: new LatestAnswers(store),
    inCommon: true,
    now: () => new Date('2026-03-02T12:00:00Z'),
    missed: (error) => missed.push(error),
    later,
  });
  return { unfoldables, missed };
}

describe('answers that cannot be asked again', () => {
  it('are at hand at once, and a little later in every process', async () => {
    const store = new MemoryStore();
    const [one, two] = [process(store, 5), process(store)];
    one.unfoldables.put('7', '@a', answer);
    expect(await one.unfoldables.get('7', '@a')).toBe(answer);
    await expect
      .poll(() => two.unfoldables.get('7', '@a'))
      .toMatchObject({ path: 'motif weigh', shown: { headline: 'Kept.' } });
  });

  it('are at hand nowhere once she erased everything, whichever process she asked', async () => {
    const store = new MemoryStore();
    const [one, two] = [process(store), process(store)];
    one.unfoldables.put('7', '@a', answer);
    await one.unfoldables.keep();
    await two.unfoldables.forget('7');
    expect(await one.unfoldables.get('7', '@a')).toBeUndefined();
    // Nor what was about to be kept where she asked.
    two.unfoldables.put('7', '@b', answer);
    await two.unfoldables.forget('7');
    await two.unfoldables.keep();
    expect(await one.unfoldables.get('7', '@b')).toBeUndefined();
  });

  it('that cannot be kept cost nobody an answer', async () => {
    const store = new MemoryStore();
    store.change = () => Promise.reject(new Error('away'));
    const one = process(store);
    one.unfoldables.put('7', '@a', answer);
    await one.unfoldables.keep();
    expect(one.missed).toHaveLength(1);
  });
});
