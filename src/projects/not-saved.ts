/** What the store says when the disk will not have it: a Problem, so that every room says it kindly. */
import { Problem } from '../core/base/problem.ts';

/** A change that did not reach the disk, or a document that cannot be read. Ours or the machine's, not the asker's. */
export class NotSaved extends Problem {
  constructor(
    code: string,
    sentence: string,
    hint: string,
    override readonly cause?: unknown,
    facts: Readonly<Record<string, string | number>> = {},
  ) {
    super(code, sentence, { hint, facts });
  }
}

/** A document that is there and cannot be read whole. It is left as it is, and only whom it concerns is told. */
export class Unreadable extends NotSaved {}

/** A document is damaged, and so is the copy before it, or there is none. */
export const damaged = (called: string) =>
  new Unreadable(
    'damaged-document',
    `${called} cannot be read: the file is damaged, and no good copy of it is left. Nothing was changed; whoever runs this has the file.`,
    'Whoever runs this may be able to mend it; what is erased can be begun anew.',
  );

/** Written by a program that knows more than this one. */
export const newer = (called: string) =>
  new Unreadable(
    'newer-document',
    `${called} was written by a newer version of this program. Nothing was changed.`,
    'Whoever runs this should bring the program up to date.',
  );

/** A fault of ours: an older document that cannot be brought up to date. */
export const notMigrated = (called: string, error: unknown) =>
  new Unreadable(
    'document-not-migrated',
    `${called} is of an earlier version, and this program fails to bring it up to date. Nothing was changed.`,
    'Whoever runs this finds more in the log.',
    error,
  );

const codeOf = (error: unknown) => (error as NodeJS.ErrnoException | undefined)?.code ?? '';

/** Says in words why a change did not reach the disk. Nothing has changed then, on the disk or in memory. */
export function notSaved(error: unknown): NotSaved {
  const code = codeOf(error);
  const why =
    code === 'ENOSPC'
      ? 'the disk is full'
      : code === 'EDQUOT'
        ? 'what its owner may keep on the disk is used up'
        : ['EROFS', 'EACCES', 'EPERM'].includes(code)
          ? 'the data folder cannot be written to'
          : `the disk refused it${code === '' ? '' : ` (${code})`}`;
  return new NotSaved(
    'not-saved',
    `That could not be saved: ${why}. Nothing was changed.`,
    'Ask again once whoever runs this has seen to it.',
    error,
  );
}

/** Says that a document could not be read just now. */
export const notRead = (error: unknown) =>
  new NotSaved(
    'not-read',
    `What is saved could not be read just now${codeOf(error) === '' ? '' : ` (${codeOf(error)})`}. Nothing was changed.`,
    'Ask again; if it stays, whoever runs this finds more in the log.',
    error,
  );

/** Says that another process took the data folder in the middle of a change. */
export const holdLost = (error: unknown) =>
  new NotSaved(
    'hold-lost',
    'That could not be saved: another process has taken the data folder meanwhile. Nothing was changed.',
    'Ask again in a moment.',
    error,
  );

/** Says that the data folder was moved away, or removed. */
export const folderGone = (folder: string) =>
  new NotSaved(
    'data-folder-gone',
    `The data folder ${folder} is no longer where it was. Nothing was changed.`,
    'Whoever runs this should put it back, or start this anew to begin with an empty one.',
  );

/** Says that the disk would neither take a change nor give back what was before it. */
export const notKnown = (error: unknown) =>
  new NotSaved(
    'not-known',
    'Whether that was saved is not known: the disk would neither keep the new text for certain nor give back the old one.',
    'Look at what is saved before you ask again; it is looked up on the disk then.',
    error,
  );

/** Says that another process took the data folder while something was added, and may have read it or not. */
export const takenMeanwhile = (error: unknown) =>
  new NotSaved(
    'not-known',
    'Whether that was saved is not known: another process has taken the data folder meanwhile.',
    'Look at what is saved before you ask again.',
    error,
  );
