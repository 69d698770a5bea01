/** The files of the terminal room: an option's file is read from a path, an answer's files are written to a folder. */
import { constants, mkdir, open, readFile, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { AnswerFile } from '../../chat/answer.ts';
import { makeFile, type Makers } from '../../chat/made-file.ts';
import { Problem } from '../../core/base/problem.ts';
import { LARGEST_EXPORT } from '../../projects/export.ts';
import { noteWritten } from './kept-files.ts';
import { clip } from '../../core/base/quantity.ts';

/** The largest file that is read: whatever an export writes can be taken back. */
export const LARGEST_FILE = LARGEST_EXPORT;

const WHY: Readonly<Record<string, string>> = {
  ENOENT: 'is not there',
  EISDIR: 'is a folder',
  EACCES: 'may not be read',
  EPERM: 'may not be read',
};

/**
 * The text of a file: at the path, or where a bare name is given, among the files that were written for her in `folder`.
 * Throws a Problem about the option where there is none, or too much, or it is no text.
 */
export async function readTextFile(path: string, option: string, folder: string): Promise<string> {
  try {
    return await textAt(path, option);
  } catch (error) {
    if (basename(path) !== path || path.includes('\0')) throw error;
    return textAt(join(folder, path), option).catch(() => {
      throw error;
    });
  }
}

/** The text of the file at a path. Throws a Problem about the option where there is none, or too much, or it is no text. */
async function textAt(path: string, option: string): Promise<string> {
  const shown = clip(path);
  const refuse = (code: string, sentence: string, hint = 'Give the path of a file that is there.') =>
    new Problem(code, sentence, { option, hint });
  if (path.includes('\0')) throw refuse('no-path', 'That is not the path of a file.');
  let bytes: Buffer;
  try {
    // A pipe without a writer would keep the opener waiting for ever.
    const file = await open(path, constants.O_RDONLY | constants.O_NONBLOCK);
    try {
      // A pipe or a device might never end: only plain files are read, and no more of one than may be.
      const stat = await file.stat();
      if (stat.isDirectory()) throw refuse('file-is-folder', `The file ${shown} is a folder.`);
      if (!stat.isFile()) throw refuse('not-a-plain-file', `${shown} is not a plain file.`);
      if (stat.size > LARGEST_FILE)
        throw refuse(
          'file-too-large',
          `The file ${shown} is too large.`,
          `At most ${Math.floor(LARGEST_FILE / 1_000_000)} MB is read.`,
        );
      bytes = await file.readFile();
    } finally {
      await file.close();
    }
  } catch (error) {
    if (error instanceof Problem) throw error;
    const why = WHY[(error as NodeJS.ErrnoException).code ?? ''] ?? 'cannot be read';
    throw refuse('file-not-read', `The file ${shown} ${why}.`);
  }
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw refuse('file-not-text', `The file ${shown} is not text.`);
  }
}

/** Of so many files with one name each is written under a number of its own. */
const MOST_OF_A_NAME = 1000;

/** `moss-square.png` as its second: `moss-square-2.png`. */
const numbered = (name: string, number: number) =>
  number === 1 ? name : name.replace(/(\.[^.]*)?$/, (ending) => `-${number}${ending}`);

/** Whether a file holds these bytes already; undefined where there is none. */
async function holds(path: string, bytes: string | Uint8Array): Promise<boolean | undefined> {
  try {
    return Buffer.from(bytes).equals(await readFile(path));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}

/** Writes one file where no other lies: under its name, or with a number behind it; what is there already stays as it is. */
async function writeBeside(folder: string, name: string, bytes: string | Uint8Array): Promise<string> {
  for (let number = 1; number <= MOST_OF_A_NAME; number++) {
    const path = join(folder, numbered(name, number));
    const same = await holds(path, bytes);
    if (same === true) return path;
    if (same === false) continue;
    await noteWritten(folder, [basename(path)]);
    // An export holds all that is kept of somebody: nobody else reads it.
    await writeFile(path, bytes, { mode: 0o600 });
    return path;
  }
  throw new Problem(
    'too-many-of-a-name',
    `${MOST_OF_A_NAME} files called ${name} lie in ${folder} already.`,
    {
      hint: 'Move those that you do not need elsewhere.',
      facts: { most: MOST_OF_A_NAME },
    },
  );
}

/**
 * Writes an answer's files, drawings as PNG and sheets as PDF; returns where they went. No file that is there is written over.
 * Throws a Problem when the folder will not have them.
 */
export async function writeFiles(
  folder: string,
  files: readonly Pick<AnswerFile, 'name' | 'content'>[],
  makers: Makers,
): Promise<readonly string[]> {
  const made = await Promise.all(files.map((file) => makeFile(file, makers)));
  const paths: string[] = [];
  try {
    if (made.length > 0) await mkdir(folder, { recursive: true });
    for (const { name, bytes } of made) paths.push(await writeBeside(folder, name, bytes));
  } catch (error) {
    if (error instanceof Problem) throw error;
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown';
    throw new Problem(
      'files-not-written',
      `The files of that answer could not be written to ${folder} (${code}).`,
      {
        hint: 'Set FILES_DIR to a folder that can be written to.',
      },
    );
  }
  return paths;
}
