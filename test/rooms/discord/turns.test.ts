import { describe, expect, it } from 'vitest';
import { Turns } from '../../../src/rooms/discord/turns.ts';
import { refused } from '../../refused.ts';

/** Work that is done when it is told to be. */
function bench(turns: Turns) {
  const begun: string[] = [];
  const ends: (() => void)[] = [];
  const ask = (maker: string, name: string) =>
    turns.take(maker, () => {
      begun.push(name);
      return new Promise<string>((done) => ends.push(() => done(name)));
    });
  const finish = async () => {
    ends.shift()?.();
    await new Promise(setImmediate);
  };
  return { begun, ask, finish };
}

describe('turns', () => {
  it('go round the makers, each one’s in the order asked', async () => {
    const { begun, ask, finish } = bench(new Turns('pictures'));
    const all = [
      ask('rowan', 'r1'),
      ask('rowan', 'r2'),
      ask('rowan', 'r3'),
      ask('ines', 'i1'),
      ask('fern', 'f1'),
    ];
    for (let n = 0; n < all.length; n += 1) await finish();
    expect(begun).toEqual(['r1', 'r2', 'i1', 'f1', 'r3']);
    expect(await Promise.all(all)).toEqual(['r1', 'r2', 'r3', 'i1', 'f1']);
  });

  it('let two of one maker wait beside the one in hand, and refuse more in words', async () => {
    const { ask, finish } = bench(new Turns('pictures'));
    const first = ask('rowan', 'r1');
    const waiting = [ask('rowan', 'r2'), ask('rowan', 'r3')];
    await expect(ask('rowan', 'r4')).rejects.toEqual(refused('too-many-waiting'));
    const other = ask('ines', 'i1');
    await finish();
    await first;
    const later = ask('rowan', 'r5');
    for (let n = 0; n < 4; n += 1) await finish();
    expect(await Promise.all([...waiting, other, later])).toEqual(['r2', 'r3', 'i1', 'r5']);
  });

  it('go on after what failed, and give up what would come too late', async () => {
    let now = 0;
    const turns = new Turns('pictures', () => now);
    const broken = turns.take('rowan', () => Promise.reject(new Error('broke')));
    await expect(broken).rejects.toThrow('broke');
    const { ask, finish } = bench(turns);
    const slow = ask('rowan', 'slow');
    const late = expect(ask('ines', 'late')).rejects.toEqual(refused('came-too-late'));
    now = 400_000;
    const fresh = ask('fern', 'fresh');
    await finish();
    await finish();
    await late;
    expect(await Promise.all([slow, fresh])).toEqual(['slow', 'fresh']);
  });
});
