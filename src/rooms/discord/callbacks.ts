/**
 * What answers an interaction at once. Such a request is most of what this bot sends, it carries no token but its own, and none of the
 * rates that the client's queues keep is meant for it: they are passed by, and what they make for each request with them. Where it
 * fails, what the client would do is done: it is sent again where the platform fails, later where that says so, and what is refused is
 * told in the client's own errors.
 */
import { setTimeout as wait } from 'node:timers/promises';
import {
  DefaultUserAgent,
  DiscordAPIError,
  HTTPError,
  Routes,
  type DiscordErrorData,
  type REST,
} from 'discord.js';

/** The interaction that is answered. */
export interface Addressee {
  readonly id: string;
  readonly token: string;
}

/** Sends a first answer. Rejects as the client's own requests do. */
export type Respond = (to: Addressee, answer: object) => Promise<void>;

type Response = Awaited<ReturnType<REST['options']['makeRequest']>>;

const METHOD = 'POST';

/** A line that was reset, and one on which nothing came: what was sent is sent again. */
const SENT_AGAIN: readonly unknown[] = ['ECONNRESET', 'UND_ERR_HEADERS_TIMEOUT', 'UND_ERR_BODY_TIMEOUT'];
const isSentAgain = (error: unknown) =>
  SENT_AGAIN.includes((error as { readonly code?: unknown } | undefined)?.code);

/** Answers over the lines of a client, to where it is told to. */
export function respondBy({ options }: Pick<REST, 'options'>): Respond {
  const { api, version, retries, offset, userAgentAppendix } = options;
  const headers = {
    'Content-Type': 'application/json',
    'User-Agent': `${DefaultUserAgent} ${userAgentAppendix}`.trim(),
  };
  const longer = typeof offset === 'number' ? offset : 0;
  const send = async (url: string, answer: object, body: string, left: number): Promise<void> => {
    let response: Response;
    try {
      response = await options.makeRequest(url, { method: METHOD, headers, body });
    } catch (error) {
      if (left > 0 && isSentAgain(error)) return send(url, answer, body, left - 1);
      throw error;
    }
    const { ok, status } = response;
    if (ok) return undefined;
    if (status === 429) {
      await wait(Number(response.headers.get('Retry-After') ?? 0) * 1000 + longer);
      return send(url, answer, body, left);
    }
    if (status >= 500 && left > 0) return send(url, answer, body, left - 1);
    throw status >= 500
      ? new HTTPError(status, response.statusText, METHOD, url, { body: answer, files: undefined })
      : await refusalIn(response, url, answer);
  };
  return ({ id, token }, answer) =>
    send(
      `${api}/v${version}${Routes.interactionCallback(id, token)}`,
      answer,
      JSON.stringify(answer),
      retries,
    );
}

/** What the platform says of an answer that it does not take. */
async function refusalIn(response: Response, url: string, answer: object): Promise<DiscordAPIError> {
  const said = (await response
    .json()
    .catch(() => ({ code: 0, message: response.statusText }))) as DiscordErrorData;
  return new DiscordAPIError(said, said.code, response.status, METHOD, url, {
    body: answer,
    files: undefined,
  });
}
