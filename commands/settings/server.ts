/** Who sees answers in a server, chosen by its manager. */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { serverOf } from '../../src/chat/context.ts';
import { opt } from '../../src/chat/options.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { defined } from '../../src/core/base/defined.ts';
import { seenWords } from './words.ts';

const SEEN = [
  { value: 'channel', label: 'everyone in the channel', also: ['everyone', 'all', 'public'] },
  { value: 'asker', label: 'only whoever asks', also: ['me', 'private', 'alone'] },
  { value: 'usual', label: 'as is usual', also: ['default', 'normal'] },
] as const;

export const server = question({
  name: 'server',
  says: 'Manager of a server: who sees answers there, in all of it or in one channel',
  options: {
    craft: opt
      .choice('Who sees answers about the craft: stitches, gauge, yarn, sizes', SEEN, 'asker')
      .optional(),
    own: opt
      .choice('Who sees answers about what is the asker’s own: motifs, blankets, progress', SEEN, 'channel')
      .optional(),
    where: opt
      .choice(
        'Where it is to be so; in the whole server if not given',
        [
          { value: 'server', label: 'in the whole server', also: ['everywhere'] },
          { value: 'here', label: 'in this channel only', also: ['channel'] },
        ],
        'here',
      )
      .optional(),
  },
  example: '',
  refused: { line: 'craft:nobody', option: 'craft' },
  changes: true,
  private: true,
  async answer({ craft, own, where }, { place, projects }): Promise<Answer> {
    const id = serverOf(place);
    const asks = (craft ?? own) === undefined;
    if (id === undefined) {
      if (!asks)
        throw new Problem('no-server-here', 'There is no server here to choose for.', {
          hint: 'Ask in the server; for yourself, choose with /settings change answers:me.',
        });
      return {
        headline: 'There is no server here: who sees your answers is yours to say, with /settings change.',
        private: true,
      };
    }
    if (!asks) {
      if (!place.manager)
        throw new Problem('managers-only', 'Only managers of this server can choose that.', {
          hint: 'They have the permission Manage Server. For yourself, choose with /settings change answers:me.',
        });
      if (where === 'here' && place.channel === undefined)
        throw new Problem('no-channel-here', 'There is no channel here to choose for.', {
          option: 'where',
          hint: 'Choose for the whole server, or ask where this bot is a member.',
        });
      await projects.servers.choose(
        { server: id, channel: where === 'here' ? place.channel : undefined },
        defined({ craft, own }),
      );
    }
    const seen = await projects.servers.seen({ ...place, server: id });
    return {
      headline: `${asks ? 'Here' : 'From now on'} ${seenWords(seen)}.`,
      lines: gather(
        where !== 'here' &&
          [craft && seen.craft, own && seen.own].some((one) => one && one.chosen === 'channel') &&
          'This channel has a choice of its own, which goes before the server’s: where:here changes it.',
        'What a maker chose for herself goes before it (/settings change answers:), and seen_by of one question before that.',
      ),
      data: { seen },
      private: true,
    };
  },
});
