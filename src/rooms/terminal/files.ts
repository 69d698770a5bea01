/** The files of the terminal room: an option's file is read from a path, an answer's files are written to a folder. */
import { constants, mkdir, open, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { AnswerFile } from '../../chat/answer.ts';
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

/** Writes an answer's files, drawings as PNG; returns where they went. Throws a Problem when the folder will not have them. */
export async function writeFiles(
  folder: string,
  files: readonly Pick<AnswerFile, 'name' | 'content'>[],
  toPng: (svg: string) => Promise<Uint8Array>,
): Promise<readonly string[]> {
  const made = await Promise.all(
    files.map(async ({ name, content }) => {
      const drawn = /\.svg$/.test(name);
      return {
        path: join(folder, drawn ? name.replace(/\.svg$/, '.png') : name),
        bytes: drawn ? await toPng(content) : content,
      };
    }),
  );
  try {
    if (made.length > 0) {
      await mkdir(folder, { recursive: true });
      await noteWritten(
        folder,
        made.map(({ path }) => basename(path)),
      );
    }
    // An export holds all that is kept of somebody: nobody else reads it.
    for (const { path, bytes } of made) await writeFile(path, bytes, { mode: 0o600 });
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? 'unknown';
    throw new Problem(
      'files-not-written',
      `The files of that answer could not be written to ${folder} (${code}).`,
      {
        hint: 'Set FILES_DIR to a folder that can be written to.',
      },
    );
  }
  return made.map(({ path }) => path);
}
