import { describe, expect, it } from 'vitest';
import { serves, shardOptions } from '../../../src/rooms/discord/shards.ts';

describe('which shards are served', () => {
  it('is all of them where nothing is said', () => {
    expect(shardOptions(undefined)).toEqual({ shards: 'auto' });
    expect(serves(undefined, '123456789012345678')).toBe(true);
    expect(serves(undefined, undefined)).toBe(true);
  });

  it('says to the client what it says here', () => {
    expect(shardOptions({ mine: [0, 1], all: 4 })).toEqual({ shards: [0, 1], shardCount: 4 });
  });

  // The platform’s published rule: (guild_id >> 22) % num_shards; direct messages come to shard 0.
  it('gives every server to one process, as the platform does', () => {
    const processes = [
      { mine: [0, 1], all: 4 },
      { mine: [2], all: 4 },
      { mine: [3], all: 4 },
    ];
    for (let server = 0n; server < 40n; server++) {
      const id = String((server << 22n) + 7n);
      const shard = Number(server % 4n);
      expect(processes.map((one) => serves(one, id))).toEqual(
        processes.map(({ mine }) => mine.includes(shard)),
      );
    }
    expect(processes.map((one) => serves(one, undefined))).toEqual([true, false, false]);
  });
});
