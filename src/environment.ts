/** What is set from outside, read once and checked, with a sentence for what does not fit. */
import { existsSync } from 'node:fs';
import * as z from 'zod';

/** An empty value is as good as none: that is how a line of .env is switched off. */
const unset = (value: unknown) => (typeof value === 'string' && value.trim() === '' ? undefined : value);
const LEVELS = ['trace', 'debug', 'info', 'warn', 'error', 'silent'] as const;

const environmentSchema = z.object({
  DISCORD_TOKEN: z.preprocess(
    unset,
    z
      .string()
      .trim()
      .regex(
        /^[\w-]+\.[\w-]+\.[\w-]+$/,
        'is not a bot token: three parts joined by dots, without "Bot " before it',
      )
      .optional(),
  ),
  DATA_DIR: z.preprocess(unset, z.string().default('data')),
  FILES_DIR: z.preprocess(unset, z.string().default('files')),
  HEARS: z.preprocess(
    unset,
    z.string().trim().toLowerCase().pipe(z.literal('mentions', 'must be mentions, or left empty')).optional(),
  ),
  // A stand-in of the platform in tests. Only on this machine: the token is sent there.
  DISCORD_API: z.preprocess(
    unset,
    z
      .string()
      .regex(/^http:\/\/127\.0\.0\.1:\d+\/api$/, 'must be http://127.0.0.1:PORT/api')
      .optional(),
  ),
  LOG_LEVEL: z.preprocess(
    unset,
    z
      .string()
      .toLowerCase()
      .pipe(z.enum(LEVELS, `must be one of ${LEVELS.join(', ')}`))
      .default('info'),
  ),
});

/** The names of what can be set. */
export const VARIABLES: readonly string[] = Object.keys(environmentSchema.shape);

export interface Environment {
  /** Unset: the terminal room. */
  readonly token: string | undefined;
  readonly dataFolder: string;
  readonly filesFolder: string;
  /** Which messages are answered beside commands; unset: none. */
  readonly hears: 'mentions' | undefined;
  /** Unset: the platform itself. */
  readonly api: string | undefined;
  readonly logLevel: (typeof LEVELS)[number];
}

/** Something set from outside does not fit; the message is a sentence for whoever set it. */
export class BadEnvironment extends Error {}

/** Checks what is set. Throws BadEnvironment; never says a value, which may be a secret. */
export function checkEnvironment(set: Readonly<Record<string, string | undefined>>): Environment {
  const result = environmentSchema.safeParse(set);
  if (!result.success) {
    const [issue] = result.error.issues;
    throw new BadEnvironment(`${issue?.path.join('.') ?? ''} ${issue?.message ?? ''}. See .env.example.`);
  }
  const { DISCORD_TOKEN, DISCORD_API, DATA_DIR, FILES_DIR, HEARS, LOG_LEVEL } = result.data;
  return {
    token: DISCORD_TOKEN,
    api: DISCORD_API,
    dataFolder: DATA_DIR,
    filesFolder: FILES_DIR,
    hears: HEARS,
    logLevel: LOG_LEVEL,
  };
}

/** Reads .env, where there is one, and what is set. */
export async function readEnvironment(): Promise<Environment> {
  // Looked for first: reading the reader costs a single question a fifth of its time.
  if (existsSync('.env')) (await import('dotenv')).config({ quiet: true });
  return checkEnvironment(process.env);
}
