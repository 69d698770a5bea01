/**
 * Tells somebody what concerns her: one mention of her alone where the group's board stands, or a direct message, as she
 * chose, and at most one a day. What it is about she reads for herself.
 */
import { createHash } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import { Routes } from 'discord.js';
import type { Telling } from '../../chat/answer.ts';
import type { Projects } from '../../projects/projects.ts';
import { refusalFacts, type Log } from './platform.ts';
import { escaped, fit } from './text.ts';

interface TellingRest {
  post(route: `/${string}`, options: object): Promise<unknown>;
}

export interface TellingParts {
  readonly rest: TellingRest;
  readonly projects: Projects;
  readonly log: Log;
  /** Where several processes share what is kept: one of them tells somebody at a time. */
  readonly claims?: { take(what: string): Promise<boolean>; give(what: string): Promise<void> } | undefined;
}

const LONGEST = 600;

/** What a channel hears where somebody is told something: that there is something, and where she reads it. */
export const NEWS: Readonly<Record<NonNullable<Telling['about']>, string>> = {
  group: 'There is something new about your motifs: /together mine tells you.',
  along: 'There is something for you in the make-along: /along show tells you.',
};

/** Platform ids are numbers; whoever was forgotten or comes from elsewhere has none. */
const isPerson = (maker: string) => /^\d{15,20}$/.test(maker);

/** Claims are of so many people together: nothing is kept of any one of them. */
const CLAIMS = 256;
const claimOf = (maker: string) =>
  `tell.${createHash('sha256').update(maker).digest().readUInt32BE() % CLAIMS}`;
/** While another process tells somebody: so often, so many ms apart. */
const TRIES = 10;
const TRY_AGAIN_MS = 300;

/** Does something while no other process does the same for her; not at all where one is busy with it for long. */
async function alone(claims: TellingParts['claims'], maker: string, act: () => Promise<void>): Promise<void> {
  if (!claims) return act();
  const claim = claimOf(maker);
  for (let tries = 0; !(await claims.take(claim)); tries += 1) {
    if (tries === TRIES) return;
    await wait(TRY_AGAIN_MS);
  }
  try {
    await act();
  } finally {
    // What cannot be given back runs out.
    await claims.give(claim).catch(() => undefined);
  }
}

/**
 * Tells each of them. Never rejects for what the platform refuses. Callers wait for one call before the next: two at once
 * might tell somebody twice.
 */
export async function tell(
  tellings: readonly Telling[],
  now: Date,
  { rest, projects, log, claims }: TellingParts,
): Promise<void> {
  for (const { maker, words, channel, about = 'group' } of tellings) {
    if (!isPerson(maker)) continue;
    const send = (where: string, content: string) =>
      rest.post(Routes.channelMessages(where), { body: { content, allowed_mentions: { users: [maker] } } });
    const privately = async () => {
      const { id } = (await rest.post(Routes.userChannels(), { body: { recipient_id: maker } })) as {
        id: string;
      };
      await send(id, fit(words, LONGEST, escaped));
    };
    // What it is about is hers to know: the channel hears only that there is something.
    const here = (where: string) => send(where, `<@${maker}> ${NEWS[about]}`);
    try {
      await alone(claims, maker, async () => {
        const how = await projects.mayTell(maker, now);
        if (how === 'not' || (how === 'here' && channel === undefined)) return;
        if (how === 'privately')
          await privately().catch((error: unknown) => {
            // Whoever takes no messages of strangers is told where the blanket is made.
            if (channel === undefined) throw error;
            return here(channel);
          });
        else if (channel !== undefined) await here(channel);
        await projects.noteTold(maker, now);
      });
    } catch (error) {
      log.warn(refusalFacts(error), 'somebody could not be told');
    }
  }
}
