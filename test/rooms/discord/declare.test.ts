import { describe, expect, it } from 'vitest';
import { registry } from '../../../commands/index.ts';
import { command, question } from '../../../src/chat/command.ts';
import { opt } from '../../../src/chat/options.ts';
import { declaration, declaredSize } from '../../../src/rooms/discord/declare.ts';
import { checkCommand, checkCommands, sizeOf } from './stand-in/commands.ts';

const answer = () => ({ headline: 'yes' });
const plain = { says: 'What it answers', example: '', refused: { line: 'x:1' }, answer };

describe('what is registered', () => {
  it.each(registry.commands.map((each) => [each.name, each] as const))(
    '/%s is taken by the platform',
    (_, each) => {
      const declared = declaration(each);
      expect(() => checkCommand(declared)).not.toThrow();
      expect(declaredSize(declared)).toBe(sizeOf(declared));
    },
  );

  it('is taken as a whole', () => {
    expect(() => checkCommands(registry.commands.map(declaration))).not.toThrow();
  });

  it('carries types, bounds, choices and offers from the one declaration, what is needed first', () => {
    const declared = declaration(
      command({
        name: 'try',
        says: 'Tries things',
        questions: [
          question({
            ...plain,
            name: 'all',
            options: {
              note: opt.text('A note', { max: 50 }).optional(),
              rows: opt.whole('Rows', { min: 2, max: 9, example: '3' }),
              price: opt.number('Price', { min: 0, max: 5 }).optional(),
              kind: opt.choice('Kind', ['a', { value: 'b', label: 'Bee' }], 'a').optional(),
              sure: opt.yesno('Sure').default(false),
              hook: opt.hook().optional(),
              from: opt.file('The file').optional(),
            },
          }),
          question({ ...plain, name: 'own', options: {}, private: true }),
          question({
            ...plain,
            name: 'typed',
            options: { counts: opt.counts('Counts'), row: opt.whole('Row') },
            form: { title: 'Counts', asks: ['counts'] },
          }),
          question({
            ...plain,
            name: 'long',
            options: { name: opt.text('Its name'), rows: opt.whole('Rows'), who: opt.person('Whom') },
            form: { title: 'Long', asks: ['rows'], begins: ['name', 'who'] },
          }),
        ],
      }),
    );
    expect(declared.contexts).toEqual([0, 1, 2]);
    expect(declared.integration_types).toEqual([0, 1]);
    expect(declared.options).toMatchObject([
      {
        name: 'all',
        options: [
          { name: 'rows', type: 4, required: true, min_value: 2, max_value: 9 },
          { name: 'note', type: 3, required: false, max_length: 50 },
          { name: 'price', type: 10, min_value: 0, max_value: 5 },
          {
            name: 'kind',
            type: 3,
            choices: [
              { name: 'a', value: 'a' },
              { name: 'Bee', value: 'b' },
            ],
          },
          { name: 'sure', type: 5, required: false },
          { name: 'hook', type: 3, autocomplete: true },
          { name: 'from', type: 11 },
          { name: 'seen_by', type: 3 },
        ],
      },
      { name: 'own', options: [] },
      {
        name: 'typed',
        options: [
          { name: 'row', required: true },
          // The form asks it.
          { name: 'counts', required: false },
          { name: 'seen_by' },
        ],
      },
      {
        name: 'long',
        options: [
          { name: 'name', required: true },
          { name: 'who', type: 6, required: true },
        ],
      },
    ]);
  });

  it('of a single question stands on the command itself', () => {
    const declared = declaration(
      command({
        name: 'one',
        says: 'One',
        questions: [question({ ...plain, options: { size: opt.size() } })],
      }),
    );
    expect(declared.options).toMatchObject([{ name: 'size', type: 4 }, { name: 'seen_by' }]);
  });

  it('is refused at the start when it is more than the platform takes', () => {
    const wordy = { says: 'x'.repeat(100), value: 'y'.repeat(100) };
    const choices = Array.from({ length: 25 }, (_, index) => ({
      value: `${index}${wordy.value}`.slice(0, 100),
      label: wordy.says,
    }));
    const options = { kind: opt.choice(wordy.says, choices, choices[0]!.value) };
    const questions = [
      question({ ...plain, name: 'a', options }),
      question({ ...plain, name: 'b', options }),
    ];
    expect(() => declaration(command({ name: 'two', says: 'Two', questions }))).toThrow(/characters/);
  });
});
