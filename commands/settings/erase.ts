import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { action } from '../shared/actions.ts';
import { keptWords } from './words.ts';

export const erase = question({
  name: 'erase',
  says: 'Erases everything that is kept about you; asks first',
  options: { confirm: opt.yesno('Whether to erase it now; without it you see what would go').optional() },
  example: 'confirm:yes',
  refused: { line: 'confirm:perhaps', option: 'confirm' },
  before: ['/settings change units:imperial'],
  changes: true,
  private: true,
  async answer({ confirm }, { maker, projects }): Promise<Answer> {
    const elsewhere = await projects.saysElsewhere(maker.id);
    if (!(await projects.knows(maker.id)) && elsewhere.length === 0) {
      return { headline: 'Nothing is kept about you.', data: { erased: false }, private: true };
    }
    const doc = await projects.maker(maker.id, maker.name);
    const parts = keptWords(doc, elsewhere).map((part) => `- ${part}`);
    if (confirm !== true) {
      return {
        headline: 'Nothing has been erased yet. This would go, and could not come back:',
        lines: [...parts, 'An export beforehand keeps it for you: /settings export.'],
        data: { erased: false },
        actions: [
          action('Erase it all', 'settings erase', { confirm: true }),
          action('Export first', 'settings export', {}),
        ],
        private: true,
      };
    }
    await projects.eraseMaker(maker.id);
    return {
      headline: 'Everything that was kept about you is erased.',
      lines: parts,
      data: { erased: true },
      private: true,
    };
  },
});
