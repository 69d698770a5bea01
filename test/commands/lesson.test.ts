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
