/** Photos of motifs that were handed in: posted where the group reads, with alt text; kept is where the message is. */
import { createHash } from 'node:crypto';
import { DiscordAPIError, HTTPError, Routes } from 'discord.js';
import type { Photo, PhotoGone } from '../../chat/answer.ts';
import type { Context } from '../../chat/context.ts';
import { photoLink } from '../../projects/groups.ts';
import type { Projects } from '../../projects/projects.ts';
import { listed, raw, sent, type Picture } from './files.ts';
import { MESSAGE } from './limits.ts';
import { isForbidden, isMessageGone, refusalFacts, type Log } from './platform.ts';
import { escaped, fit } from './text.ts';

export interface PhotoToShow extends Photo {
  readonly picture: Picture;
}

export interface PhotoParts {
  readonly rest: {
    post(route: `/${string}`, options: object): Promise<unknown>;
    delete(route: `/${string}`): Promise<unknown>;
  };
  readonly projects: Projects;
  readonly log: Log;
  readonly fault: (error: unknown) => string;
}

/** Posts it and keeps where it stands; says what came of it. Never rejects: the hand-in counts whatever becomes of its photo. */
export async function showPhoto(
  { group, channel, pieces, says, picture }: PhotoToShow,
  { maker, once, place }: Pick<Context, 'maker' | 'once' | 'place'>,
  { rest, projects, log, fault }: PhotoParts,
): Promise<string> {
  const files = [sent(`photo.${picture.ending}`, picture.bytes, says)];
  // A request that is tried again because the line broke makes no second message.
  const nonce = createHash('sha256').update(`photo ${once}`).digest('base64url').slice(0, MESSAGE.nonce);
  try {
    const { id } = (await rest.post(Routes.channelMessages(channel), {
      body: {
        content: fit(says, MESSAGE.content, escaped),
        attachments: listed(files),
        allowed_mentions: { parse: [] },
        nonce,
        enforce_nonce: true,
      },
      files: raw(files),
    })) as { readonly id: string };
    await projects.groups.notePhoto(group, maker.id, { pieces: [...pieces], channel, message: id });
    return 'The photo stands in the group’s channel.';
  } catch (error) {
    if (isForbidden(error)) {
      log.warn(refusalFacts(error), 'a photo was not posted');
      const lacks = place.lacks ?? ['Send Messages', 'Attach Files'];
      return `The photo was not posted: for that I need ${lacks.join(', ')} in the group’s channel. The hand-in counts all the same.`;
    }
    if (error instanceof DiscordAPIError || error instanceof HTTPError) {
      log.warn(refusalFacts(error), 'a photo was not posted');
      return 'The photo was not posted, as Discord did not take it. The hand-in counts all the same.';
    }
    return `Something went wrong with the photo; it is noted as ${fault(error)}. The hand-in counts all the same.`;
  }
}

/** Takes away the message of a photo whose motifs were taken back; says what came of it. Never rejects: they are taken back whatever becomes of it. */
export async function hidePhoto(
  { group, channel, message }: PhotoGone,
  { place }: Pick<Context, 'place'>,
  { rest, projects, log, fault }: PhotoParts,
): Promise<string> {
  try {
    try {
      await rest.delete(Routes.channelMessage(channel, message));
    } catch (error) {
      // Somebody took it away before.
      if (!isMessageGone(error)) throw error;
    }
    await projects.groups.forgetPhoto(group, message);
    return 'The photo is taken out of the channel as well.';
  } catch (error) {
    const still = `The photo still stands in the channel: ${photoLink(place.server, { channel, message })}`;
    if (error instanceof DiscordAPIError || error instanceof HTTPError) {
      log.warn(refusalFacts(error), 'a photo was not taken away');
      return still;
    }
    return `${still} (noted as ${fault(error)})`;
  }
}
