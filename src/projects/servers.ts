/** What the manager of a server chose for it and for its channels. Nothing of anybody who asks is in it. */
import * as z from 'zod';
import { lazily } from '../core/base/lazily.ts';
import { Problem } from '../core/base/problem.ts';
import { num } from '../core/base/reader.ts';
import { SAFE_ID, type Kind, type Store } from './store.ts';

/** What answers are about, as far as it says who sees them: the craft, or what is the asker's own. */
export const ABOUT = ['craft', 'own'] as const;
export type About = (typeof ABOUT)[number];

const seenBy = lazily(() => z.enum(['channel', 'asker']));
/** Who sees an answer: everybody in the channel, or only the asker. */
export type SeenBy = z.infer<ReturnType<typeof seenBy>>;

/** Others learn from what is asked of the craft; what is somebody's own is hers to show. */
export const USUALLY: Readonly<Record<About, SeenBy>> = { craft: 'channel', own: 'asker' };

const chosenSchema = lazily(() =>
  z.object({ craft: seenBy().exactOptional(), own: seenBy().exactOptional() }),
);
type Chosen = z.infer<ReturnType<typeof chosenSchema>>;

/** Channels of one server with a choice of their own. */
export const MOST_CHANNELS = 200;

const placeId = lazily(() => z.string().min(1).max(40));
const serverSchema = lazily(() =>
  z.object({
    version: z.literal(1),
    id: z.string().regex(SAFE_ID),
    answers: chosenSchema(),
    /** Where it is otherwise than in the rest of the server. */
    channels: z.array(z.object({ channel: placeId(), answers: chosenSchema() })).max(MOST_CHANNELS),
  }),
);
export type ServerDoc = z.infer<ReturnType<typeof serverSchema>>;

export const SERVERS: Kind<ServerDoc> = {
  folder: 'servers',
  called: 'What is set for this server',
  version: 1,
  get schema() {
    return serverSchema();
  },
  migrations: {},
};

/** Who sees answers of a kind in a place, and whether that was chosen for the channel, for the server, or is usual. */
export interface Seen {
  readonly by: SeenBy;
  readonly chosen: 'channel' | 'server' | undefined;
}

/** A server, a channel of it, and the channel that this one is a thread of. */
export interface Where {
  readonly server: string;
  readonly channel?: string | undefined;
  readonly within?: string | undefined;
}

/**
 * The choice that holds in a channel: its own goes before that of the channel it is a thread of, this before the server's, and
 * the server's before what is usual.
 */
export function seenIn(
  doc: ServerDoc | undefined,
  { channel, within }: Pick<Where, 'channel' | 'within'>,
  about: About,
): Seen {
  const of = (id: string | undefined) => doc?.channels.find((one) => one.channel === id)?.answers[about];
  const own = of(channel) ?? of(within);
  if (own !== undefined) return { by: own, chosen: 'channel' };
  const here = doc?.answers[about];
  return here === undefined ? { by: USUALLY[about], chosen: undefined } : { by: here, chosen: 'server' };
}

/** Choices with one made anew; `usual` takes it back. */
function chosenAnew(chosen: Chosen, anew: Partial<Record<About, SeenBy | 'usual'>>): Chosen {
  const kept = ABOUT.map((about) => [about, anew[about] ?? chosen[about]] as const);
  return Object.fromEntries(kept.filter(([, choice]) => choice !== undefined && choice !== 'usual'));
}

export class Servers {
  constructor(private readonly store: Store) {}

  /** Who sees answers of both kinds there. What cannot be read chooses nothing. */
  async seen({ server, ...where }: Where): Promise<Readonly<Record<About, Seen>>> {
    const doc = await this.store.read(SERVERS, server).catch(() => undefined);
    return { craft: seenIn(doc, where, 'craft'), own: seenIn(doc, where, 'own') };
  }

  /**
   * Chooses for a channel, or for the whole server where none is given. Throws a Problem (`too-many-channels`) where too many
   * channels have a choice of their own.
   */
  async choose(
    { server, channel }: Omit<Where, 'within'>,
    anew: Partial<Record<About, SeenBy | 'usual'>>,
  ): Promise<void> {
    await this.store.change(SERVERS, server, (saved) => {
      const doc: ServerDoc = saved ?? { version: 1, id: server, answers: {}, channels: [] };
      if (channel === undefined)
        return { keep: { ...doc, answers: chosenAnew(doc.answers, anew) }, tell: undefined };
      const before = doc.channels.find((one) => one.channel === channel)?.answers ?? {};
      const answers = chosenAnew(before, anew);
      const others = doc.channels.filter((one) => one.channel !== channel);
      const channels = Object.keys(answers).length === 0 ? others : [...others, { channel, answers }];
      if (channels.length > MOST_CHANNELS)
        throw new Problem(
          'too-many-channels',
          `${num(MOST_CHANNELS)} channels of this server have a choice of their own, as many as can.`,
          { option: 'where', hint: 'Choose for the whole server.', facts: { most: MOST_CHANNELS } },
        );
      return { keep: { ...doc, channels }, tell: undefined };
    });
  }
}
