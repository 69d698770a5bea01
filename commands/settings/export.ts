/** What is kept of her, as a file. */
import type { Answer } from '../../src/chat/answer.ts';
import { inPieces } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { count } from '../../src/core/base/reader.ts';
import { writeElsewhere, writeExport } from '../../src/projects/export.ts';
import { keptWords } from './words.ts';

export const exportMine = question({
  name: 'export',
  says: 'Everything that is kept about you, as one file',
  options: {},
  example: '',
  refused: { line: 'format:pdf', option: 'format' },
  private: true,
  asked: {
    ways: ['export data', 'export mine', 'export'],
    also: 'data mine all yours saved',
    not: 'chart picture blanket motif pattern import',
    phrases: ['export my data'],
  },
  async answer(_options, { maker, projects }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const kept = keptWords(doc, await projects.saysElsewhere(maker.id));
    const elsewhere = await inPieces(writeElsewhere(await projects.collectElsewhere(maker.id)));
    return {
      headline: 'Here is everything that is kept about you.',
      lines: [
        ...kept.map((part) => `- ${part}`),
        'The file is JSON, readable in any editor; /settings import takes it back.',
        ...(elsewhere.length === 0
          ? []
          : [
              `What is kept of you in groups is in ${elsewhere.length === 1 ? 'a file of its own' : `${count(elsewhere.length, 'file')} of their own`}, to read: it stays in the groups and is not taken back.`,
            ]),
      ],
      files: [
        {
          name: 'loopwright-export.json',
          says: 'Everything that is kept about you, as JSON',
          content: writeExport(doc),
        },
        ...elsewhere.map((content, index, { length }) => ({
          name: length === 1 ? 'loopwright-groups.json' : `loopwright-groups-${index + 1}.json`,
          says: `What is kept about you in groups, as JSON${length === 1 ? '' : `, part ${index + 1} of ${length}`}`,
          content,
        })),
      ],
      private: true,
    };
  },
});
