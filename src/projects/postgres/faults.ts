/** What the database's refusals mean: whether to ask again, whether the connection is any good, and what is said of it. */
import { NotSaved } from '../not-saved.ts';
import { InTheWay, notOpenedFor } from './side.ts';

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
  // Of a connection that is made just then; of one that is free, none was.
  [/Connection terminated due to connection timeout|timeout expired/i, 'UNREACHED'],
  [/timeout exceeded when trying to connect/i, 'BUSY'],
  [/Query read timeout/i, 'TIMEOUT'],
  [/password must be/i, 'NO_PASSWORD'],
  // It refused to go on in the middle of beginning: one that starts or ends does so.
  [/error establishing an SSL connection/i, 'CLOSED'],
  [/Connection terminated|connection error|not queryable|Client was closed/i, 'CLOSED'],
  [/does not support SSL|SSL/, 'TLS'],
];

function codeOf(error: unknown): string {
  const { code, message = '', syscall } = error as Partial<NodeJS.ErrnoException>;
  // A file that DATABASE_URL names is read before anybody is called; a socket that is a file is called.
  if (syscall === 'open') return 'NO_FILE';
  if (code === 'ENOENT' && syscall === 'connect') return 'NO_SOCKET';
  if (typeof code === 'string' && code !== '') return code;
  return BY_MESSAGE.find(([words]) => words.test(message))?.[1] ?? '';
}

/** Two changes that met: nothing came of this one, and the next try may do (40001, 40P01). */
const MET = ['40001', '40P01'];
/** Nobody is let in just now: too many connections, or it starts or ends. */
const ENDS = ['57P01', '57P02', '57P03', '57P05', '25P03'];
/** It takes no changes; another server may have become the one that does. */
export const READ_ONLY = '25006';
const NO_ROOM = '53300';
/** What Node says of a certificate, and PostgreSQL's server where it has none. */
const UNSAFE = /^(TLS|ERR_TLS|ERR_SSL|CERT_|SELF_SIGNED|DEPTH_ZERO|UNABLE_TO|HOSTNAME_MISMATCH|EPROTO)/;
/** It was asked to answer in time, and did not. */
const SLOW = ['57014', '55P03', 'TIMEOUT', 'BUSY'];
/** What stays so until whoever runs this mends it. */
const STAYS = ['NO_FILE', 'NO_PASSWORD', 'IN_USE'];

type Meaning = Pick<Fault, 'passing' | 'broken' | 'unsure'>;

function meaningOf(code: string): Meaning {
  if (MET.includes(code)) return { passing: true, broken: false, unsure: false };
  // Another connection may lead to another server.
  if (code === NO_ROOM || code === READ_ONLY || code === 'BEING_MOVED')
    return { passing: true, broken: true, unsure: false };
  if (code === 'BUSY') return { passing: false, broken: false, unsure: false };
  if (ENDS.includes(code) || code.startsWith('08') || code === '40003')
    return { passing: true, broken: true, unsure: true };
  if (code === 'TIMEOUT' || STAYS.includes(code) || UNSAFE.test(code))
    return { passing: false, broken: true, unsure: true };
  // Whatever is no SQLSTATE comes from the way there.
  const refused = SQLSTATE.test(code);
  return { passing: !refused, broken: !refused, unsure: !refused };
}

const WHY: Readonly<Record<string, string>> = {
  '53100': 'the disk of the database is full',
  [READ_ONLY]: 'the database takes no changes just now',
  [NO_ROOM]: 'the database takes no more connections',
  '28P01': 'the database does not know this role, or not by this password',
  '28000': 'the database does not let this role in from here, or not in this way',
  '3D000': 'there is no database of that name',
  '42501': 'the database does not let this program do it',
  NO_FILE: 'a file that DATABASE_URL names cannot be read',
  NO_PASSWORD: 'the database asks for a password, and DATABASE_URL has none',
  BEING_MOVED: 'what is saved is being moved just now',
  IN_USE: 'others answer from the database meanwhile',
};
const OUT_OF_REACH = 'the database is out of reach';
const UNSAFE_WORDS = 'the connection cannot be made as safe as sslmode asks';

/** Why, in words. */
function why({ code }: Fault): string {
  if (Object.hasOwn(WHY, code)) return WHY[code] ?? OUT_OF_REACH;
  if (UNSAFE.test(code)) return UNSAFE_WORDS;
  if (SLOW.includes(code)) return 'the database does not answer in time';
  if (SQLSTATE.test(code) && !ENDS.includes(code) && !code.startsWith('08'))
    return `the database refused it (${code})`;
  return OUT_OF_REACH;
}

const UNKNOWN_AUTHORITY = 'its certificate is of an authority that is not known here; sslrootcert names one';
/** What whoever runs this is told besides, by the code. */
const MORE: readonly (readonly [RegExp, string])[] = [
  [/^ECONNREFUSED$/, 'nothing listens at that address and port'],
  [/^ENOTFOUND$/, 'no machine of that name is known'],
  [/^EAI_AGAIN$/, 'the name of its machine cannot be looked up just now'],
  [/^E(HOST|NET)UNREACH$/, 'no way leads to its machine'],
  [/^(UNREACHED|ETIMEDOUT)$/, 'its machine does not answer'],
  [/^NO_SOCKET$/, 'its socket is not there'],
  [/^57P03$/, 'it starts or ends just now'],
  [/^(CLOSED|ECONNRESET|EPIPE|57P0\d)$/, 'it ends the connection'],
  [/^08P01$/, 'it, or what stands before it, does not take how this program begins'],
  [/^TLS$/, 'it offers no TLS'],
  [/ALTNAME|^HOSTNAME_MISMATCH$/, 'its certificate is of another name'],
  [/^CERT_(HAS_EXPIRED|NOT_YET_VALID)$/, 'its certificate is not good today'],
  [/^(SELF_SIGNED|DEPTH_ZERO|UNABLE_TO)/, UNKNOWN_AUTHORITY],
];

/** The same for whoever runs this. */
function whyInFull(fault: Fault): string {
  const words = why(fault);
  if (words !== OUT_OF_REACH && words !== UNSAFE_WORDS) return words;
  const more = MORE.find(([codes]) => codes.test(fault.code))?.[1] ?? fault.code;
  return more === '' ? words : `${words}: ${more}`;
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
  fault.cause instanceof InTheWay
    ? notOpenedFor(fault.cause)
    : new NotSaved(
        'not-saved',
        `The database of DATABASE_URL cannot be used: ${whyInFull(fault)}.`,
        'See docs/several-machines.md.',
        fault,
      );

/** Whether what kept something from being opened may be over in a moment, by itself. */
export const mayPass = (error: unknown): error is NotSaved =>
  error instanceof NotSaved &&
  ((error.cause instanceof Fault && error.cause.passing) ||
    (error.cause instanceof InTheWay && error.cause.code === 'BEING_MOVED'));
