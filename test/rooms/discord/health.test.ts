import type { Client } from 'discord.js';
import { expect, it } from 'vitest';
import { shardsOf } from '../../../src/rooms/discord/health.ts';

const client = (shards: number[], shardCount?: number) =>
  ({ ws: { shards: new Map(shards.map((id) => [id, {}])) }, options: { shardCount } }) as unknown as Pick<
    Client,
    'ws' | 'options'
  >;

it.each([
  [[0, 1, 2, 5], 8, '0-2,5 of 8'],
  [[3], 4, '3 of 4'],
  [[10, 9, 2], 12, '2,9-10 of 12'],
  [[0], undefined, '0 of 1'],
])('the shards %j of %s are said as %s', (shards, all, said) => {
  expect(shardsOf(client(shards, all))).toEqual({ shards: said });
});
