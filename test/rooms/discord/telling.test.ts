/** Somebody whom several processes would tell something at the same moment is told once. */
import { describe, expect, it } from 'vitest';
import { Claims } from '../../../src/projects/claims.ts';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { Projects } from '../../../src/projects/projects.ts';
import { tell } from '../../../src/rooms/discord/telling.ts';

const NOW = new Date('2026-03-02T12:00:00Z');
const ROWAN = '100000000000000007';
const nothing = () => undefined;
const log = { info: nothing, warn: nothing, error: nothing };

describe('what somebody is told by several processes', () => {
  it.each([true, false])('comes once a day (claimed: %s)', async (claimed) => {
    const store = new MemoryStore();
    await new Projects(store).changeMaker(ROWAN, 'Rowan', () => undefined);
    let sent = 0;
    const rest = {
      post: async () => {
        sent += 1;
        await new Promise((done) => setTimeout(done, 5));
        return { id: '1' };
      },
    };
    const telling = [{ maker: ROWAN, words: 'Motif 4 came back.', channel: '55' }];
    const four = Array.from({ length: 4 }, () => ({
      projects: new Projects(store),
      claims: claimed ? new Claims(store) : undefined,
    }));
    await Promise.all(four.map((one) => tell(telling, NOW, { rest, log, ...one })));
    // Without claims each of them finds that she was told nothing yet.
    expect(sent).toBe(claimed ? 1 : 4);
  });
});
