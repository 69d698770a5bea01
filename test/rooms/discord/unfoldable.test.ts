import { describe, expect, it } from 'vitest';
import type { RenderedAnswer } from '../../../src/chat/answer.ts';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { Projects } from '../../../src/projects/projects.ts';
import { Unfoldables } from '../../../src/rooms/discord/unfoldable.ts';
import { groupPlan } from '../../core/group/plan.ts';

const shown = { headline: 'Kept.', working: [], files: [], data: { a: 1 } } as unknown as RenderedAnswer;
const answer = { path: 'motif weigh', shown };
const saves = (projects: Projects, maker: string) =>
  projects.changeMaker(maker, 'Mara', (doc) => void (doc.settings.units = 'metric'));

function process(store: MemoryStore, later = 1e6, inCommon = true) {
  const missed: unknown[] = [];
  const projects = new Projects(store);
  const unfoldables = new Unfoldables({
    kept: projects.answers,
    inCommon,
    isKnown: (maker, of) => projects.isKnown(maker, of),
    now: () => new Date('2026-03-02T12:00:00Z'),
    missed: (error) => missed.push(error),
    later,
  });
  return { unfoldables, missed, projects };
}

describe('answers that cannot be asked again', () => {
  it('are at hand at once, and a little later in every process', async () => {
    const store = new MemoryStore();
    const [one, two] = [process(store, 5), process(store)];
    await saves(one.projects, '7');
    one.unfoldables.put('7', '@a', answer);
    expect(await one.unfoldables.get('7', '@a')).toBe(answer);
    await expect
      .poll(() => two.unfoldables.get('7', '@a'))
      .toMatchObject({ path: 'motif weigh', shown: { headline: 'Kept.' } });
  });

  it('are at hand nowhere once she erased everything, whichever process she asked', async () => {
    const store = new MemoryStore();
    const [one, two] = [process(store), process(store)];
    await saves(one.projects, '7');
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

  it('are at hand of nobody where they name somebody who erased everything', async () => {
    const { unfoldables, projects } = process(new MemoryStore(), 1e6, false);
    const { id } = await projects.groups.open({}, groupPlan(), {
      ...{ by: '8', name: 'Bea', at: new Date('2026-03-02T12:00:00Z'), once: 'o' },
    });
    await saves(projects, '7');
    for (const [key, headline] of [
      ['@a', 'Two motifs given to Mara.'],
      ['@b', 'Two motifs given to Tamara.'],
    ] as const)
      unfoldables.put('8', key, { ...answer, shown: { ...shown, headline, board: id } });
    await projects.eraseMaker('7');
    await unfoldables.keep();
    expect(await unfoldables.get('8', '@a')).toBeUndefined();
    expect(await unfoldables.get('8', '@b')).toMatchObject({
      shown: { headline: 'Two motifs given to Tamara.' },
    });
  });

  it('are gone through in pieces, so that others are heard meanwhile', async () => {
    const { unfoldables, projects } = process(new MemoryStore(), 1e6, false);
    await saves(projects, '7');
    const slow: RenderedAnswer = {
      ...shown,
      get headline() {
        for (const until = performance.now() + 2; performance.now() < until;);
        return 'Two motifs given to Mara.';
      },
    };
    for (let n = 0; n < 20; n++) unfoldables.put('8', `@${n}`, { ...answer, shown: slow });
    let heard = 0;
    const listening = setInterval(() => heard++, 0);
    await projects.eraseMaker('7');
    clearInterval(listening);
    expect(heard).toBeGreaterThan(5);
    expect(await unfoldables.get('8', '@0')).toBeUndefined();
  });

  it('that name her and are kept by another process just after that go as well', async () => {
    const store = new MemoryStore();
    const [one, two] = [process(store, 250), process(store, 250)];
    await saves(one.projects, '7');
    await saves(one.projects, '8');
    two.unfoldables.put('8', '@a', { ...answer, shown: { ...shown, headline: 'Two motifs given to Mara.' } });
    await one.projects.eraseMaker('7');
    await two.unfoldables.keep();
    expect(await one.projects.answers.find('8', '@a')).toBeDefined();
    await expect.poll(() => one.projects.answers.find('8', '@a')).toBeUndefined();
  });

  it('are not kept where she erased everything by another process meanwhile, and are of who stands in a group alone', async () => {
    const store = new MemoryStore();
    const [one, two] = [process(store), process(store)];
    await saves(one.projects, '7');
    one.unfoldables.put('7', '@a', answer);
    await two.projects.eraseMaker('7');
    await one.unfoldables.keep();
    expect(await two.projects.answers.find('7', '@a')).toBeUndefined();
    const at = new Date('2026-03-02T12:00:00Z');
    const { id } = await one.projects.groups.open({}, groupPlan(), { by: '8', name: 'Ines', at, once: 'o' });
    one.unfoldables.put('8', '@b', { ...answer, shown: { ...shown, board: id } });
    await one.unfoldables.keep();
    expect(await two.projects.answers.find('8', '@b')).toBeDefined();
    expect(one.missed).toEqual([]);
  });

  it('that cannot be kept cost nobody an answer', async () => {
    const store = new MemoryStore();
    const one = process(store);
    await saves(one.projects, '7');
    store.change = () => Promise.reject(new Error('away'));
    one.unfoldables.put('7', '@a', answer);
    await one.unfoldables.keep();
    expect(one.missed).toHaveLength(1);
  });
});
