/** What are her settings, and how much is kept of her? */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { serverOf } from '../../src/chat/context.ts';
import { action } from '../shared/actions.ts';
import { keptWords, seenWords, settingsWords } from './words.ts';

export const show = question({
  name: 'show',
  says: 'Your units, your terms, who sees your answers, and what is kept of you',
  options: {},
  example: '',
  refused: { line: 'whose:mine', option: 'whose' },
  private: true,
  asked: {
    ways: ['settings mine', 'settings show', 'data which', 'settings which'],
    also: 'mine yours which show saved data',
    not: 'layout erase export change imperial metric blanket motif',
    phrases: ['show my settings', 'what do you know about me'],
  },
  async answer(_options, { maker, projects, place }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const elsewhere = await projects.saysElsewhere(maker.id);
    const server = serverOf(place);
    const seen = server === undefined ? undefined : await projects.servers.seen({ ...place, server });
    const kept = (await projects.knows(maker.id)) || elsewhere.length > 0;
    return {
      headline: `You have ${settingsWords(doc.settings)}.`,
      lines: gather(
        seen &&
          `Here ${seenWords(seen)}.${doc.settings.answers === undefined ? '' : ' What you chose for yourself goes before it.'}`,
        kept
          ? ['Kept about you:', ...keptWords(doc, elsewhere).map((part) => `- ${part}`)]
          : 'Nothing is kept about you yet.',
      ),
      data: { settings: doc.settings, kept },
      actions: gather(
        action(doc.settings.units === 'metric' ? 'Use inches' : 'Use centimetres', 'settings change', {
          units: doc.settings.units === 'metric' ? 'imperial' : 'metric',
        }),
        action(doc.settings.terms === 'US' ? 'Use UK terms' : 'Use US terms', 'settings change', {
          terms: doc.settings.terms === 'US' ? 'UK' : 'US',
        }),
        kept && action('Export', 'settings export', {}),
      ),
      private: true,
    };
  },
});
