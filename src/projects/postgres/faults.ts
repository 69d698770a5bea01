/** What the database's refusals mean: whether to ask again, whether the connection is any good, and what is said of it. */
import { NotSaved } from '../not-saved.ts';

/** The database, or the way to it, refused something. */
export class Fault extends Error {
  /** SQLSTATE, or what the system says of a connection. */
  readonly code: string;
  /** True where the connection is of no use any more. */
  readonly broken: boolean;
  /** True where nobody knows what became of what was asked last. */
  readonly unsure: boolean;
  /** True where it may go better in a moment. */
  readonly passing: boolean;

  constructor(override readonly cause: unknown) {
    super(cause instanceof Error ? cause.message : String(cause));
    this.code = codeOf(cause);
    const { passing, broken, unsure } = meaningOf(this.code);
    this.broken = broken;
    this.unsure = unsure;
    this.passing = passing;
  }
}

/** SQLSTATE, of which every one has a digit in it; the words of Node for a connection do not (PostgreSQL, Appendix A). */
const SQLSTATE = /^(?=.*\d)[0-9A-Z]{5}$/;

/** What the client itself says, without a code. */
const BY_MESSAGE: readonly (readonly [RegExp, string])[] = [
  [
    /timeout exceeded|timeout expired|Query read timeout|Connection terminated due to connection timeout/i,
    'TIMEOUT',
  ],
  [/Connection terminated|connection error|not queryable|Client was closed/i, 'CLOSED'],
  [/does not support SSL|SSL/, 'TLS'],
];

function codeOf(error: unknown): string {
  const { code, message = '' } = error as { code?: unknown; message?: string };
  if (typeof code === 'string' && code !== '') return code;
  return BY_MESSAGE.find(([words]) => words.test(message))?.[1] ?? '';
}

/** Two changes that met: nothing came of this one, and the next try may do (40001, 40P01). */
const MET = ['40001', '40P01'];
/** Nobody is let in just now: too many connections, or it starts or ends. */
const ENDS = ['57P01', '57P02', '57P03', '57P05', '25P03'];
/** It takes no changes; another server may have become the one that does. */
const READ_ONLY = '25006';
const NO_ROOM = '53300';
/** What Node says of a certificate, and PostgreSQL's server where it has none. */
const UNSAFE = /^(TLS|ERR_TLS|ERR_SSL|CERT_|SELF_SIGNED|DEPTH_ZERO|UNABLE_TO|HOSTNAME_MISMATCH|EPROTO)/;
/** It was asked to answer in time, and did not. */
const SLOW = ['57014', '55P03', 'TIMEOUT'];

type Meaning = Pick<Fault, 'passing' | 'broken' | 'unsure'>;

function meaningOf(code: string): Meaning {
  if (MET.includes(code)) return { passing: true, broken: false, unsure: false };
  // Another connection may lead to another server.
  if (code === NO_ROOM || code === READ_ONLY) return { passing: true, broken: true, unsure: false };
  if (ENDS.includes(code) || code.startsWith('08') || code === '40003')
    return { passing: true, broken: true, unsure: true };
  if (code === 'TIMEOUT' || code === 'ENOENT' || UNSAFE.test(code))
    return { passing: false, broken: true, unsure: true };
  // Whatever is no SQLSTATE comes from the way there.
  const refused = SQLSTATE.test(code);
  return { passing: !refused, broken: !refused, unsure: !refused };
}

/** Why, in words. */
function why({ code }: Fault): string {
  if (code === '53100') return 'the disk of the database is full';
  if (code === READ_ONLY) return 'the database takes no changes just now';
  if (code === NO_ROOM) return 'the database takes no more connections';
  if (UNSAFE.test(code)) return 'the connection cannot be made as safe as sslmode asks';
  if (code === 'ENOENT') return 'a file that DATABASE_URL names is not there';
  if (code.startsWith('28')) return 'the database does not know this role, or not by this password';
  if (code === '3D000') return 'there is no database of that name';
  if (code === '42501') return 'the database does not let this program do it';
  if (SLOW.includes(code)) return 'the database does not answer in time';
  if (SQLSTATE.test(code) && !ENDS.includes(code) && !code.startsWith('08'))
    return `the database refused it (${code})`;
  return 'the database is out of reach';
}

/** Says in words why a change did not reach the database. Nothing has changed then. */
export const notSavedThere = (fault: Fault) =>
  new NotSaved(
    'not-saved',
    `That could not be saved: ${why(fault)}. Nothing was changed.`,
    'Ask again in a moment; if it stays, whoever runs this should see to it.',
    fault,
  );

/** Says that a document could not be read just now. */
export const notReadThere = (fault: Fault) =>
  new NotSaved(
    'not-read',
    `What is saved could not be read just now: ${why(fault)}. Nothing was changed.`,
    'Ask again in a moment; if it stays, whoever runs this finds more in the log.',
    fault,
  );

/** Says that the connection was lost in the middle of a change, and the database has not been reached since. */
export const notKnownThere = (fault: Fault) =>
  new NotSaved(
    'not-known',
    'Whether that was saved is not known: the database went out of reach while it was saving it.',
    'Look at what is saved before you ask again.',
    fault,
  );

/** Says that nothing can begin, as the database cannot be used. */
export const notOpened = (fault: Fault) =>
  new NotSaved(
    'not-saved',
    `The database of DATABASE_URL cannot be used: ${why(fault)}.`,
    'See docs/several-machines.md.',
    fault,
  );
