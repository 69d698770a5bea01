/**
 * What answers an interaction at once. Such a request is most of what this bot sends, it carries no token but its own, and none of the
 * rates that the client's queues keep is meant for it: they are passed by, and what they make for each request with them. Where it
 * fails, what the client would do is done: it is sent again where the platform fails, later where that says so and takes it then, and what is refused is
 * told in the client's own errors.
 */
import { setTimeout as wait } from 'node:timers/promises';
import {
  DefaultUserAgent,
  DiscordAPIError,
  HTTPError,
  RateLimitError,
  Routes,
  type DiscordErrorData,
  type REST,
} from 'discord.js';
import { isAnsweredAlready } from './platform.ts';

/** The interaction that is answered. */
export interface Addressee {
  readonly id: string;
  readonly token: string;
}

/** Sends a first answer. Rejects as the client's own requests do. */
export type Respond = (to: Addressee, answer: object) => Promise<void>;

type Response = Awaited<ReturnType<REST['options']['makeRequest']>>;

const METHOD = 'POST';
/** The platform takes a first answer for so long, ms: what would be sent later is not waited for. */
const TAKEN_FOR_MS = 3_000;

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
  const send = async (sending: Sending, left: number, again = false): Promise<void> => {
    const { url, answer, body } = sending;
    let response: Response;
    try {
      response = await options.makeRequest(url, { method: METHOD, headers, body });
    } catch (error) {
      if (left > 0 && isSentAgain(error)) return send(sending, left - 1, true);
      throw error;
    }
    const { ok, status } = response;
    if (ok) return undefined;
    if (status === 429) {
      const said = Number(response.headers.get('Retry-After') ?? 0) * 1000;
      // Some say a date.
      const pause = (Number.isFinite(said) ? said : 0) + longer;
      if (performance.now() + pause > sending.until) throw tooOften(response, sending, pause);
      await wait(pause);
      return send(sending, left, again);
    }
    if (status >= 500) {
      if (left > 0) return send(sending, left - 1, true);
      throw new HTTPError(status, response.statusText, METHOD, url, { body: answer, files: undefined });
    }
    const refusal = await refusalIn(response, url, answer);
    // It was taken the first time, and what said so was lost.
    if (!(again && isAnsweredAlready(refusal))) throw refusal;
  };
  return ({ id, token }, answer) => {
    const route = Routes.interactionCallback(id, token);
    const url = `${api}/v${version}${route}`;
    const until = performance.now() + TAKEN_FOR_MS;
    return send({ route, url, answer, body: JSON.stringify(answer), until }, retries);
  };
}

/** An answer on its way. */
interface Sending {
  readonly route: string;
  readonly url: string;
  readonly answer: object;
  readonly body: string;
  /** When the platform takes it no more, by this process's own clock. */
  readonly until: number;
}

/** The platform would have it later than it takes it. */
function tooOften({ headers }: Response, { route, url }: Sending, pause: number): RateLimitError {
  const scope = headers.get('X-RateLimit-Scope');
  return new RateLimitError({
    timeToReset: pause,
    retryAfter: pause,
    sublimitTimeout: 0,
    limit: Number(headers.get('X-RateLimit-Limit') ?? Infinity),
    method: METHOD,
    hash: headers.get('X-RateLimit-Bucket') ?? '',
    url,
    route,
    majorParameter: '',
    global: headers.has('X-RateLimit-Global'),
    scope: scope === 'global' || scope === 'shared' ? scope : 'user',
  });
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
