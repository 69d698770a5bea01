import { describe, expect, it } from 'vitest';
import { LESSONS } from '../../src/lessons/index.ts';
import { TOPICS } from '../../commands/lesson/topics.ts';

describe('what lessons are called in plain words', () => {
  it('is said of every lesson, and of none that is not there', () => {
    expect(Object.keys(TOPICS).sort()).toEqual(LESSONS.map(({ name }) => name).sort());
  });

  it('is said of one lesson only', () => {
    const words = Object.values(TOPICS).flatMap((called) => called.split(' '));
    expect(words.filter((word, index) => words.indexOf(word) !== index)).toEqual([]);
  });
});
