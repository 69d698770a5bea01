/** What a file brings back, in place of what is kept. */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { readExport } from '../../src/projects/export.ts';
import { keptWords } from './words.ts';

export const importMine = question({
  name: 'import',
  says: 'Takes back a file that /settings export made, in place of what is kept',
  options: {
    file: opt.file('The file that /settings export made', 'loopwright-export.json'),
    replace: opt.yesno('Whether to replace what is kept of you now').optional(),
  },
  example: 'file:loopwright-export.json replace:yes',
  refused: { line: 'file:somewhere-else.json', option: 'file' },
  before: ['/settings change units:imperial', '/settings export'],
  changes: true,
  private: true,
  asked: {
    ways: ['import data', 'import mine', 'import'],
    also: 'data mine export saved',
    not: 'picture',
    phrases: ['import my data'],
  },
  async answer({ file, replace }, { maker, projects }): Promise<Answer> {
    const doc = readExport(file, maker.id, maker.name);
    const brings = keptWords(doc, []).map((part) => `- ${part}`);
    if (replace !== true && (await projects.knows(maker.id))) {
      const now = keptWords(await projects.maker(maker.id, maker.name), []).map((part) => `- ${part}`);
      return {
        headline: 'Nothing has been changed yet: give the same file again with replace:yes.',
        lines: ['In the file:', ...brings, 'It would take the place of:', ...now],
        data: { imported: false },
        private: true,
      };
    }
    await projects.changeMaker(maker.id, maker.name, (kept) => {
      delete kept.lessons;
      // What was done already stays known, so that a press that arrives late is not done twice.
      Object.assign(kept, doc, { done: kept.done });
    });
    return {
      headline: 'Taken back; this is now what is kept of you.',
      lines: brings,
      data: { imported: true },
      private: true,
    };
  },
});
