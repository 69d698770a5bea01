/** Lessons as they go in a room: hints, answers, and what somebody reads who is not used to formulas. */
import { describe, expect, it } from 'vitest';
import { LESSONS } from '../../src/lessons/index.ts';
import { asking } from '../asking.ts';

describe('a hint', () => {
  const room = asking();
  it.each(LESSONS.map(({ name }) => name))(
    'of %s is short, and nothing in it is of the machine',
    async (name) => {
      await room.ask(`/lesson start lesson:${name}`);
      const first = await room.ask('/lesson hint');
      const then = await room.ask('/lesson hint');
      const last = await room.ask('/lesson hint');
      expect(first.headline).toMatch(/^Begin here: /);
      for (const { headline } of [then, last]) {
        expect(headline.length, headline).toBeLessThan(230);
        expect(headline).not.toMatch(/greatest of|multiple × round|fewest/);
      }
      expect(last.headline).toMatch(/^There is no further hint than this: /);
      // What is found on the way up helps nobody who is on the way down, nor what a border would take that lies flat.
      if (name === 'which-row') expect(then.headline).not.toContain('while it grows');
      if (name === 'rounds') expect(then.headline).toContain('4 × (corner - 1)');
    },
  );
});

describe('while a task is open', () => {
  it('takes a number, and that she does not know, as they are said', async () => {
    const room = asking();
    await room.ask('mara: /lesson start lesson:growing');
    const wrong = await room.ask('mara: 4');
    expect(wrong).toMatchObject({ ok: true, read_as: '/lesson answer answer:4' });
    expect(await room.ask('mara: I think it is 6 stitches')).toMatchObject({
      read_as: '/lesson answer answer:"6 stitches"',
    });
    expect(await room.ask("mara: I don't know")).toMatchObject({ read_as: '/lesson hint' });
    expect(await room.ask('mara: stop')).toMatchObject({ read_as: '/lesson stop' });
  });

  it('leaves a number alone where none is open, and of anybody else', async () => {
    const room = asking();
    await room.ask('mara: /lesson start lesson:growing');
    expect(await room.ask('anna: 12')).toMatchObject({ ok: false });
    await room.ask('mara: /lesson stop');
    expect(await room.ask('mara: 12')).toMatchObject({ ok: false });
    expect(await room.ask('mara: stop')).toMatchObject({ ok: false });
  });

  it('takes no question for an answer', async () => {
    const room = asking();
    await room.ask('/lesson start lesson:growing');
    expect((await room.ask('how many stitches in row 9 of a 12 row diagonal square')).read_as).toMatch(
      /^\/stitches row/,
    );
  });
});
