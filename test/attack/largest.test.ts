/** No member can stop it: what one may save at most is asked about, question by question, and the thread is not kept for long. */
import { describe, expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { MemoryStore } from '../../src/projects/memory.ts';
import { MOST_COLOURS_OF_BLANKET, MOST_COLOURS_OF_MOTIF, MOST_OF_MAKER } from '../../src/projects/quotas.ts';
import { asking } from '../asking.ts';
import { answerAsDiscord, lines, longestHold, saveLargest } from './largest.ts';

/** Far above the 0.6 s that was measured at the most, so that a busy one does not fail; minutes before there were limits. */
const MOST_MS = 4_000;

describe('the largest that may be saved', () => {
  it('keeps nobody waiting, whatever is asked about it', async () => {
    const projects = await saveLargest(new MemoryStore(), {
      // With as many stripes and as much history as her document has room for.
      cells: 7_500,
      stripes: MOST_OF_MAKER.stripes,
      motifs: 100,
      events: 2_000,
      groups: 2,
    });
    const seen = new Set<string>();
    const held: [number, string][] = [];
    for (const asked of lines()) {
      const { question, path } = asked.route;
      const once = `${path} ${asked.by}`;
      if (question.changes || seen.has(once)) continue;
      seen.add(once);
      const ms = await longestHold(() => answerAsDiscord(projects, asked));
      held.push([ms, path]);
    }
    const slow = held.filter(([ms]) => ms > MOST_MS);
    expect(slow).toEqual([]);
    // Two makers each ask every question that changes nothing.
    expect(seen.size).toBe(2 * registry.routes.filter(({ question }) => !question.changes).length);
  }, 120_000);
});

describe('colours', () => {
  const stripes = (many: number, from = 0) =>
    Array.from({ length: many }, (_, index) => `1 row shade ${from + index}`).join(', ');

  it('are limited in one motif, at the change that would pass the limit', async () => {
    const { ask } = asking();
    const define = (many: number) =>
      ask(
        `/motif define name:scraps shape:flat size:20 other_size:${many} colours:"${stripes(many)}" replace:yes`,
      );
    expect(await define(MOST_COLOURS_OF_MOTIF)).toMatchObject({ ok: true });
    expect(await define(MOST_COLOURS_OF_MOTIF + 1)).toMatchObject({
      ok: false,
      code: 'too-many-colours',
      option: 'colours',
    });
    expect((await ask('/motif show name:scraps')).ok).toBe(true);
  });

  it('are limited in one blanket, its motifs’ among them', async () => {
    const { ask } = asking();
    const names: string[] = [];
    for (let at = 0; at * MOST_COLOURS_OF_MOTIF <= MOST_COLOURS_OF_BLANKET; at++) {
      names.push(`scraps ${at}`);
      const colours = stripes(MOST_COLOURS_OF_MOTIF, at * MOST_COLOURS_OF_MOTIF);
      const made = await ask(
        `/motif define name:"scraps ${at}" shape:diagonal size:${MOST_COLOURS_OF_MOTIF / 2} gauge:13x10 colours:"${colours}"`,
      );
      expect(made).toMatchObject({ ok: true });
    }
    const start = (kinds: readonly string[]) =>
      ask(`/blanket start name:b${kinds.length} kinds:"${kinds.join(', ')}" columns:4 rows:4`);
    expect(await start(names.slice(0, -1))).toMatchObject({ ok: true });
    expect(await start(names)).toMatchObject({ ok: false, code: 'too-many-colours', option: 'kinds' });
  });
});
