/** What is taken for granted is said in words. */
import { expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { metaOf } from '../../src/chat/options.ts';

it('says of every option that is left out what it is taken to be, or leaves that to the answer', () => {
  const bare = registry.routes.flatMap(({ path, question }) =>
    Object.entries(question.options).flatMap(([name, option]) => {
      const { leftOut } = option;
      const spoken = leftOut === undefined || leftOut === false;
      return spoken || metaOf(option).assumed !== undefined ? [] : [`${path} ${name}`];
    }),
  );
  expect(bare).toEqual([]);
});
