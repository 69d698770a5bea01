/** The log: lines of JSON, the token in none of them, no message of anybody. */
import { randomUUID } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { pino, type Logger } from 'pino';

export type Log = Logger;

export interface LogOptions {
  readonly level: string;
  /** Never written, wherever they turn up: in a message, in an error, in its stack. */
  readonly secrets: readonly string[];
  /** A file, or standard output. */
  readonly file?: string;
  /** Told in a sentence, once, that the log cannot be opened or written. */
  readonly failed: (sentence: string) => void;
}

/** What is kept of a log that cannot be written, in characters, until there is room again. */
const KEPT = 1_000_000;

/**
 * Opens a log whose every line is cleared of the secrets as the last thing before it is written. Neither this nor the
 * log throws where the disk will not have it: a log that cannot be written stops nobody's answer.
 */
export function openLog({ level, secrets, file, failed }: LogOptions): Log {
  return clearedLog({ level, secrets }, destination(file, failed));
}

function destination(
  file: string | undefined,
  failed: LogOptions['failed'],
): { write(line: string): unknown } {
  let told = false;
  const lost = (error: unknown) => {
    if (told) return;
    told = true;
    failed(unwritten(file, error));
  };
  try {
    if (file !== undefined) mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    // Written at once: what is noted before a crash is there after it.
    const to = pino.destination({ dest: file ?? 1, sync: true, maxLength: KEPT });
    to.on('error', lost);
    return to;
  } catch (error) {
    lost(error);
    return { write: () => undefined };
  }
}

/** Says that a log cannot be written, and why. */
export function unwritten(file: string | undefined, error: unknown): string {
  const { code } = error as NodeJS.ErrnoException;
  return `The log ${file ?? 'on standard output'} cannot be written${code === undefined ? '' : ` (${code})`}. Answers go on without it.`;
}

/** The same, to wherever the lines should go. */
export function clearedLog(
  { level, secrets }: Pick<LogOptions, 'level' | 'secrets'>,
  to: { write(line: string): unknown },
): Log {
  // As they are, and as they stand in a line of JSON.
  const hidden = secrets
    .filter((secret) => secret !== '')
    .flatMap((secret) => [...new Set([secret, JSON.stringify(secret).slice(1, -1)])]);
  return pino(
    {
      level,
      base: null,
      timestamp: pino.stdTimeFunctions.isoTime,
      serializers: { err: (error) => errorFacts(error) },
    },
    {
      write: (line: string) =>
        to.write(hidden.reduce((text, secret) => text.replaceAll(secret, '[token]'), line)),
    },
  );
}

/** How deep the causes of an error are told. */
const CAUSES = 4;

/**
 * What a log says of an error: where it happened and why, and nothing else that hangs on it. The client's errors carry
 * the whole request: what was answered to whom, and an address that anybody could answer with.
 */
function errorFacts(error: unknown, causes = CAUSES): unknown {
  if (!(error instanceof Error)) return { type: typeof error };
  const { code, stack, message, cause } = error as Error & { code?: unknown };
  return {
    type: error.constructor.name,
    message,
    ...(typeof code === 'string' || typeof code === 'number' ? { code } : {}),
    stack,
    ...(cause === undefined || causes === 0 ? {} : { cause: errorFacts(cause, causes - 1) }),
  };
}

/** Notes a fault of ours under a short id, which the person it happened to is shown. */
export function noteFault(
  log: Pick<Log, 'error'>,
  error: unknown,
  facts: Readonly<Record<string, unknown>> = {},
) {
  const id = randomUUID().slice(0, 8);
  log.error({ ...facts, fault: id, err: error }, 'a fault of ours');
  return id;
}
