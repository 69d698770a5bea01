/** What the store asks of the file system; the tests hand in one that fails. */
import fs from 'node:fs/promises';

export type Disk = Pick<
  typeof fs,
  | 'copyFile'
  | 'link'
  | 'mkdir'
  | 'open'
  | 'readFile'
  | 'readdir'
  | 'rename'
  | 'rm'
  | 'stat'
  | 'utimes'
  | 'writeFile'
>;

export const realDisk: Disk = fs;
