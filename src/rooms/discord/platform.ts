/** What the platform answers when it does not do what it was asked, made safe for a log. */
import { DiscordAPIError, HTTPError, RateLimitError } from 'discord.js';
import { CODE } from './limits.ts';

/** What a room writes to; pino's shape. */
export interface Log {
  info(facts: object, says: string): void;
  warn(facts: object, says: string): void;
  error(facts: object, says: string): void;
}

/** The facts of a refusal. Addresses carry tokens: only the kind of route is kept, and no body ever. */
export function refusalFacts(error: unknown): Readonly<Record<string, string | number>> {
  if (error instanceof DiscordAPIError || error instanceof HTTPError) {
    const { method, status, url } = error;
    const code = error instanceof DiscordAPIError ? error.code : 0;
    return { code, status, method, route: routeOf(url) };
  }
  if (error instanceof RateLimitError) return { route: routeOf(error.route), wait: error.timeToReset };
  const name = error instanceof Error ? error.name : typeof error;
  const code = (error as { code?: unknown } | undefined)?.code;
  return { error: name, ...(typeof code === 'string' || typeof code === 'number' ? { code } : {}) };
}

/** `/webhooks/123/secret/messages/@original` → `/webhooks/:id/:token/messages/@original` */
export function routeOf(url: string): string {
  return url
    .replace(/^https?:\/\/[^/]+/, '')
    .replace(/\?.*$/, '')
    .replace(/\/(interactions|webhooks)\/([^/]+)\/([^/]+)/, '/$1/:id/:token')
    .replace(/\/\d{17,20}(?=\/|$)/g, '/:id');
}

const isCode = (error: unknown, codes: readonly number[]) =>
  error instanceof DiscordAPIError && typeof error.code === 'number' && codes.includes(error.code);

/** The interaction is over: it expired, or it was answered already. Answering again would only fail again. */
export const isOver = (error: unknown) => isCode(error, [CODE.unknownInteraction, CODE.alreadyAcknowledged]);

/** Somebody else answered it. */
export const isAnsweredAlready = (error: unknown) => isCode(error, [CODE.alreadyAcknowledged]);

const BROKEN_LINE = ['UND_ERR_SOCKET', 'ECONNRESET', 'ECONNREFUSED', 'EPIPE', 'UND_ERR_CONNECT_TIMEOUT'];

/** The line broke under a request: nobody knows whether it arrived. */
export const isBrokenLine = (error: unknown) =>
  BROKEN_LINE.includes(String((error as { code?: unknown } | undefined)?.code));

/** The message was deleted. */
export const isMessageGone = (error: unknown) => isCode(error, [CODE.unknownMessage]);

/** The channel is gone, its server was left, or it is not for this bot's eyes any more. */
export const isPlaceGone = (error: unknown) =>
  isCode(error, [CODE.unknownChannel, CODE.unknownServer, CODE.missingAccess]);

/** The event was removed by somebody, or its server was left. */
export const isEventGone = (error: unknown) =>
  isCode(error, [CODE.unknownEvent, CODE.unknownServer, CODE.missingAccess]);

/** The bot may not do that there, or not any more. */
export const isForbidden = (error: unknown) => isCode(error, [CODE.missingPermissions]);

/** The thread sleeps: only a message wakes it, no edit does. */
export const isAsleep = (error: unknown) => isCode(error, [CODE.archivedThread]);

/** Messages older than an hour were edited too often just now. */
export const isTooOften = (error: unknown) => isCode(error, [CODE.tooManyOldEdits]);

/** What was sent does not fit the platform: a fault of ours, not of the line. */
export const isRefused = (error: unknown) =>
  error instanceof DiscordAPIError && error.status >= 400 && error.status < 500 && !isOver(error);
