/** The commands of one bot, registered by several processes of one version or of two. */
import { afterEach, describe, expect, it } from 'vitest';
import { Claims } from '../../../src/projects/claims.ts';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { NotSaved } from '../../../src/projects/not-saved.ts';
import { Registrations } from '../../../src/projects/registrations.ts';
import type { Changed, Kind } from '../../../src/projects/store.ts';
import { Commands } from '../../../src/rooms/discord/commands.ts';
import type { Registered } from '../../../src/rooms/discord/localise.ts';

const MINUTE = 60_000;
const version = (said: string) => [{ name: 'ask', description: said, type: 1 }] as unknown as Registered[];

const running: Commands[] = [];
afterEach(() => {
  for (const one of running.splice(0)) one.close();
});

function several() {
  const store = new MemoryStore();
  let now = 1_000_000;
  let there: readonly object[] = [];
  const puts: string[] = [];
  const lines: string[] = [];
  const noting = (_: object, says: string) => void lines.push(says);
  let writing = 0;
  const rest = {
    get: () => Promise.resolve(there),
    put: async (_: string, { body }: { body: unknown }) => {
      expect(++writing).toBe(1);
      await new Promise((done) => setTimeout(done, 5));
      writing -= 1;
      there = (body as { name: string; description: string }[]).map((one, id) => ({ ...one, id: `10${id}` }));
      puts.push((body as { description: string }[])[0]!.description);
      return there;
    },
  };
  const start = (said: string, again = 1e6, kept = store) => {
    const clock = () => now;
    const common = { claims: new Claims(kept, clock), registrations: new Registrations(kept, clock) };
    const log = { info: noting, warn: noting, error: noting };
    const commands = new Commands({
      rest,
      application: '1',
      declared: version(said),
      log,
      common,
      again,
    });
    running.push(commands);
    return commands;
  };
  return { start, puts, lines, pass: (ms: number) => (now += ms) };
}

describe('commands of several processes', () => {
  it('that start at the same moment are registered once, and all learn of them', async () => {
    const { start, puts } = several();
    const four = Array.from({ length: 4 }, () => start('new'));
    await Promise.all(four.map((one) => one.register()));
    await expect
      .poll(() => four.map((one) => one.id('ask')), { timeout: 5_000 })
      .toEqual(Array(4).fill('100'));
    expect(puts).toEqual(['new']);
  });

  it('of an earlier version that starts again while the others are brought up to date are not put back', async () => {
    const { start, puts, lines, pass } = several();
    await start('old').register();
    pass(MINUTE);
    await start('new').register();
    pass(MINUTE);
    const late = start('old');
    await late.register();
    expect(puts).toEqual(['old', 'new']);
    expect(late.id('ask')).toBe('100');
    expect(lines).toContain('newer commands are registered by another process');
  });

  it('of an earlier version are put back once no process of the later one is at work', async () => {
    const { start, puts, pass } = several();
    await start('old').register();
    pass(MINUTE);
    await start('new').register();
    pass(6 * MINUTE);
    await start('old').register();
    expect(puts).toEqual(['old', 'new', 'old']);
    pass(MINUTE);
    await start('new').register();
    expect(puts).toEqual(['old', 'new', 'old', 'new']);
  });

  it('are registered later where what is kept is out of reach', async () => {
    const { start, puts, lines } = several();
    let away = true;
    class Away extends MemoryStore {
      override change<T, R>(kind: Kind<T>, id: string, change: (doc: T | undefined) => Changed<T, R>) {
        if (away) return Promise.reject(new NotSaved('not-saved', 'It is away.', 'Ask again.'));
        return super.change(kind, id, change);
      }
    }
    const commands = start('new', 10, new Away());
    await commands.register();
    expect(puts).toEqual([]);
    expect(lines.join()).toContain('tried again');
    away = false;
    await expect.poll(() => puts).toEqual(['new']);
  });
});
