/** Anything, asked in plain words. */
import { LONGEST_WORDS } from '../../src/core/base/limits.ts';
import type { Answer } from '../../src/chat/answer.ts';
import { command, question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import type { Registry } from '../../src/chat/registry.ts';

/** Plain words: whichever of the registry's questions they mean is answered. */
export function ask(registry: () => Registry) {
  return command({
    name: 'ask',
    says: 'Ask in plain words, as you would ask a friend who crochets',
    questions: [
      question({
        says: 'Answers what you ask in plain words, and says which question it was taken for',
        options: {
          words: opt.text('What you would like to know, in your own words', {
            max: LONGEST_WORDS,
            example: 'how many 6 inch squares for a 4 by 5 foot blanket with a 2 in border',
          }),
          other: opt.yesno('yes offers what else those words may mean').optional(),
        },
        example: 'words:"how many 15 cm squares for a 120 by 160 cm blanket with a 4 cm border"',
        refused: { line: 'words:"good morning everyone"', option: 'question' },
        // Whatever was meant may change something.
        changes: true,
        async answer({ words, other }, context): Promise<Answer> {
          // A question that is typed does not wait for what reads plain words.
          const { answerWords, otherReadings } = await import('../../src/asked/index.ts');
          return other === true
            ? otherReadings(words, registry(), context)
            : answerWords(words, registry(), context);
        },
      }),
    ],
  });
}
