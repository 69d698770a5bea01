/** What is taken for granted is said in words. */
import { expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { metaOf } from '../../src/chat/options.ts';

it('says of every option that is left out what it is taken to be, or leaves that to the answer', () => {
  const bare = registry.routes.flatMap(({ path, question }) =>
    Object.entries(question.options).flatMap(([name, schema]) => {
      const left = schema.safeParse(undefined);
      const spoken = !left.success || left.data === undefined || left.data === false;
      return spoken || metaOf(schema).assumed !== undefined ? [] : [`${path} ${name}`];
    }),
  );
  expect(bare).toEqual([]);
});
