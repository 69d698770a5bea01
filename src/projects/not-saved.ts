/** What the store says when the disk will not have it: a Problem, so that every room says it kindly. */
import { Problem } from '../core/base/problem.ts';

/** A change that did not reach the disk, or a document that cannot be read. Ours or the machine's, not the asker's. */
export class NotSaved extends Problem {
  constructor(
    code: string,
    sentence: string,
    hint: string,
    override readonly cause?: unknown,
  ) {
    super(code, sentence, { hint });
  }
}

const codeOf = (error: unknown) => (error as NodeJS.ErrnoException | undefined)?.code ?? '';

/** Says in words why a change did not reach the disk. Nothing has changed then, on the disk or in memory. */
export function notSaved(error: unknown): NotSaved {
  const code = codeOf(error);
  const why = ['ENOSPC', 'EDQUOT'].includes(code)
    ? 'the disk is full'
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
