/** Group blankets through the store: who was first, what is kept, what is forgotten. */
import { describe, expect, it } from 'vitest';
import { handIn, pledge } from '../../src/core/group/rules.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { Groups } from '../../src/projects/groups.ts';
import { MemoryStore } from '../../src/projects/memory.ts';
import { groupPlan } from '../core/group/plan.ts';

const at = new Date('2026-03-02T12:00:00Z');
const asker = (id: string) => ({ id, name: `Maker ${id}`, manager: false, managed: true });

async function opened(quotas: number[]) {
  const groups = new Groups(new MemoryStore());
  await groups.open({ server: '7' }, groupPlan({ quotas, columns: 1 }), {
    by: 'ines',
    name: 'Ines',
    at,
    once: 'open',
  });
  return { groups, id: Groups.idOf('7', 'Bean row throw') };
}

describe('group blankets', () => {
  it('give the last motif to exactly one of many who press at once', async () => {
    const { groups, id } = await opened([100]);
    const presses = await Promise.allSettled(
      Array.from({ length: 200 }, (_, n) =>
        groups.happen(id, { by: `m${n}`, at, once: `press-${n}` }, (state) =>
          pledge(state, asker(`m${n}`), 0, 1),
        ),
      ),
    );
    expect(presses.filter(({ status }) => status === 'fulfilled')).toHaveLength(100);
    const refused = presses.flatMap((press) =>
      press.status === 'rejected' ? [press.reason as unknown] : [],
    );
    expect(refused).toHaveLength(100);
    for (const problem of refused) expect(problem).toBeInstanceOf(Problem);
    const [{ state } = { state: undefined }] = await groups.of('7');
    expect(state?.tally[0]).toEqual({ pledged: 100, handedIn: 0, accepted: 0 });
  });

  it('do a press once, however often it arrives', async () => {
    const { groups, id } = await opened([5]);
    const press = () =>
      groups.happen(id, { by: 'm1', at, once: 'the same' }, (state) => pledge(state, asker('m1'), 0, 1));
    expect((await press()).again).toBe(false);
    expect((await press()).again).toBe(true);
    expect((await groups.of('7'))[0]?.state.tally[0]?.pledged).toBe(1);
  });

  it('are found by server, and never mixed up by their names', async () => {
    const { groups } = await opened([5]);
    await expect(
      groups.open({ server: '7' }, groupPlan({ quotas: [5], columns: 1 }), {
        by: 'x',
        name: 'X',
        at,
        once: 'two',
      }),
    ).rejects.toThrow(Problem);
    expect(await groups.of('8')).toEqual([]);
    expect(Groups.idOf('7', 'Bean  Row Throw')).toBe(Groups.idOf('7', 'bean row throw'));
    expect(Groups.idOf('7', 'Bohnenbeet ü')).not.toBe(Groups.idOf('7', 'Bohnenbeet ö'));
  });

  it('forget a maker and keep every count', async () => {
    const { groups, id } = await opened([5]);
    await groups.happen(id, { by: 'm1', at, once: 'm1-a' }, (state) => pledge(state, asker('m1'), 0, 2));
    await groups.happen(id, { by: 'm1', at, once: 'm1-b' }, (state) =>
      handIn(state, asker('m1'), 0, 1, 15.2),
    );
    expect(await groups.says('m1')).toEqual(['a part in the group blanket Bean row throw']);
    const before = (await groups.of('7'))[0]?.state.tally;
    await groups.forget('m1');
    const after = (await groups.of('7'))[0];
    expect(after?.state.tally).toEqual(before);
    expect(JSON.stringify(after?.doc)).not.toMatch(/"m1|Maker m1/);
    expect(await groups.says('m1')).toEqual([]);
    expect([...(after?.state.names.values() ?? [])]).toContain('a maker');
  });
});
