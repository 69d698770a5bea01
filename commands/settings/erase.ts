/** Everything that is kept of her, erased. */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { Unreadable } from '../../src/projects/not-saved.ts';
import { newMaker } from '../../src/projects/schema.ts';
import { action } from '../shared/actions.ts';
import { keptWords } from './words.ts';

/** What no program can take back. */
const OUT_OF_REACH =
  'Out of reach from here: messages that were posted, files that somebody saved, and copies that whoever runs this made of the data.';

export const erase = question({
  name: 'erase',
  says: 'Erases everything that is kept about you; asks first',
  options: { confirm: opt.yesno('Whether to erase it now; without it you see what would go').optional() },
  example: 'confirm:yes',
  refused: { line: 'confirm:perhaps', option: 'confirm' },
  before: ['/settings change units:imperial'],
  changes: true,
  private: true,
  asked: {
    changesBy: ['confirm'],
    ways: ['erase data', 'data erase'],
    also: 'mine all yours saved data remove',
    not: 'motif blanket border row group colour',
    phrases: ['delete all my data', 'forget me'],
  },
  async answer({ confirm }, { maker, projects }): Promise<Answer> {
    const [kept, elsewhere] = await Promise.all([
      projects.keptOf(maker.id),
      projects.saysElsewhere(maker.id),
    ]);
    if (kept === undefined && elsewhere.length === 0) {
      return { headline: 'Nothing is kept about you.', data: { erased: false }, private: true };
    }
    const own = (
      kept instanceof Unreadable
        ? ['what is saved of you, which cannot be read now']
        : keptWords(kept ?? newMaker(maker.id, maker.name), [])
    ).map((part) => `- ${part}`);
    const parts = [...own, ...elsewhere.map((part) => `- ${part}`)];
    if (confirm !== true) {
      return {
        headline: 'Nothing has been erased yet. This would go, and could not come back:',
        lines: [...parts, OUT_OF_REACH, 'An export beforehand keeps it for you: /settings export.'],
        data: { erased: false },
        actions: [
          action('Erase it all', 'settings erase', { confirm: true }),
          action('Export first', 'settings export', {}),
        ],
        private: true,
      };
    }
    const { removed, left } = await projects.eraseMaker(maker.id);
    return {
      headline:
        left.length === 0
          ? 'Everything that was kept about you is erased.'
          : 'What was kept about you is erased, but for what could not be reached.',
      lines: gather(
        'Erased:',
        kept !== undefined && own,
        removed.map((part) => `- ${part}`),
        left.length !== 0 && ['Not reached:', ...left.map((part) => `- ${part}`)],
        OUT_OF_REACH,
      ),
      data: { erased: true, left },
      forgets: true,
      private: true,
    };
  },
});
