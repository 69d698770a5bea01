/** Who asks, where, and when: what a question is handed beside its options. */
import type { Reader } from '../core/base/reader.ts';
import type { Projects } from '../projects/projects.ts';

export interface Maker {
  /** Safe in a file name; made by the room. */
  readonly id: string;
  /** What she is called; text of a person. */
  readonly name: string;
}

/** Begins the id of a conversation outside of servers, which is a place of its own. */
export const TALK = 'talk';

/** The server of a place; undefined in a conversation outside of servers and in the terminal. */
export const serverOf = ({ server }: Place): string | undefined =>
  server?.startsWith(TALK) === true ? undefined : server;

/** Where a question is asked. Unset ids: a direct message, or the terminal. */
export interface Place {
  readonly server?: string;
  readonly channel?: string;
  /** The channel that the channel is a thread of. */
  readonly within?: string;
  /** Who keeps a message of ours from standing in the channel: the asker, or this bot, who may not write there. */
  readonly mute?: 'asker' | 'bot';
  /** What this bot may not do there and a board needs, in the platform's own words. */
  readonly lacks?: readonly string[];
  /** What it may not do there and a thread, or an event of the server, needs. */
  readonly lacksFor?: { readonly thread: readonly string[]; readonly event: readonly string[] };
  /** True where the asker may manage the server. */
  readonly manager: boolean;
}

export interface Context {
  readonly maker: Maker;
  readonly reader: Reader;
  readonly place: Place;
  /** The moment of asking: nothing below a room looks at a clock. */
  readonly now: Date;
  /** Once per press or question: what is asked twice with the same key is done once. */
  readonly once: string;
  /** Whom a typed name or mention means; undefined where the room knows nobody by it. */
  readonly whois: (typed: string) => Maker | undefined;
  readonly projects: Projects;
  /** Set where a picture came along with the question, which the room shows where the answer says. */
  readonly pictured?: true;
  /** What is said once to somebody new of the units and terms she is shown; undefined once it was said. */
  readonly greets?: () => string | undefined;
}
