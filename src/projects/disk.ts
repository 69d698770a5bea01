/** What the store asks of the file system; the tests hand in one that fails. */
import { constants } from 'node:buffer';
import { close, open, read } from 'node:fs';
import fs from 'node:fs/promises';

export type Disk = Pick<
  typeof fs,
  'copyFile' | 'link' | 'mkdir' | 'open' | 'readdir' | 'rename' | 'rm' | 'stat' | 'utimes' | 'writeFile'
> & {
  /** What a file says, as text. */
  readonly readText: (path: string) => Promise<string>;
};

/** Nearly every document has room in this, in bytes. */
const AT_FIRST = 16_384;
const NEWLINE = 10;

/**
 * Reads a text in as few steps as can be: a document is one line, and where that has been read to its end nobody need ask whether
 * more comes, or how long the file is. Rejects with what the system says.
 */
function readText(path: string): Promise<string> {
  return new Promise((done, refused) => {
    open(path, 'r', (cannotOpen, file) => {
      if (cannotOpen) {
        refused(cannotOpen);
        return;
      }
      let bytes = Buffer.allocUnsafe(AT_FIRST);
      let length = 0;
      const more = () => {
        if (length === bytes.length) bytes = Buffer.concat([bytes, Buffer.allocUnsafe(3 * bytes.length)]);
        read(file, bytes, length, bytes.length - length, length, (cannotRead, got) => {
          if (cannotRead) {
            // Nobody waits for it to be closed: nothing was written.
            close(file, () => undefined);
            refused(cannotRead);
            return;
          }
          length += got;
          if (length > constants.MAX_STRING_LENGTH) {
            close(file, () => undefined);
            refused(Object.assign(new Error('longer than a text can be'), { code: 'EFBIG' }));
            return;
          }
          // A list has many, and some disks give less than there is.
          const isOneLine =
            path.endsWith('.json') && length < bytes.length && bytes.indexOf(NEWLINE) === length - 1;
          if (got > 0 && !isOneLine) {
            more();
            return;
          }
          close(file, () => undefined);
          done(bytes.toString('utf8', 0, length));
        });
      };
      more();
    });
  });
}

export const realDisk: Disk = { ...fs, readText };
