/** A disk for the tests of the store, on which one thing can be made to fail. */
import fs from 'node:fs/promises';
import { realDisk, type Disk } from '../../src/projects/disk.ts';

/** A disk on which one thing fails, until it is mended. */
export function failing(
  what:
    | 'write'
    | 'half'
    | 'short'
    | 'nothing'
    | 'truncate'
    | 'sync'
    | 'syncFolder'
    | 'link'
    | 'rename'
    | 'renameLast',
  code: string,
) {
  const error = () => Object.assign(new Error(code), { code });
  const state = { broken: false, calls: [] as string[], renames: 0 };
  const disk: Disk = {
    ...realDisk,
    open: (async (path: string, flags: string, mode?: number) => {
      const handle = await fs.open(path, flags, mode);
      if (/lock/.test(path)) return handle;
      const folder = flags === 'r';
      state.calls.push(folder ? 'open folder' : 'open');
      return {
        write: async (bytes: Buffer, offset: number, length: number, at: number | null) => {
          state.calls.push('write');
          if (state.broken && what === 'write') throw error();
          if (state.broken && what === 'nothing') return { bytesWritten: 0 };
          if (state.broken && (what === 'half' || what === 'truncate')) {
            await handle.write(bytes, offset, Math.ceil(length / 2), at);
            throw error();
          }
          // As a nearly full disk does: part of it, and no error.
          return handle.write(bytes, offset, what === 'short' ? Math.min(3, length) : length, at);
        },
        datasync: async () => {
          state.calls.push('datasync');
          if (state.broken && what === 'sync') throw error();
          await handle.datasync();
        },
        truncate: async (length: number) => {
          state.calls.push('truncate');
          if (state.broken && what === 'truncate') throw error();
          await handle.truncate(length);
        },
        stat: () => handle.stat(),
        sync: async () => {
          state.calls.push(folder ? 'sync folder' : 'sync');
          if (state.broken && what === (folder ? 'syncFolder' : 'sync')) throw error();
          await handle.sync();
        },
        close: async () => {
          state.calls.push('close');
          await handle.close();
        },
      };
    }) as unknown as Disk['open'],
    link: async (from, to) => {
      if (!/lock/.test(String(to))) state.calls.push('link');
      if (state.broken && what === 'link' && !/lock/.test(String(to))) throw error();
      await fs.link(from, to);
    },
    rename: async (from, to) => {
      state.calls.push('rename');
      const last = !String(to).includes('previous');
      if (state.broken && (what === 'rename' || (what === 'renameLast' && last))) throw error();
      await fs.rename(from, to);
    },
  };
  return { disk, state };
}
