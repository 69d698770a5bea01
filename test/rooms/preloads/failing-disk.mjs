// Loaded before the program: from here on the disk takes nothing, and says DISK_SAYS (ENOSPC, EROFS) to whoever asks it to.
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const code = process.env.DISK_SAYS;
const refused = () => Object.assign(new Error(`${code}: the disk takes nothing`), { code });
const writes = (flags) => typeof flags === 'string' && !/^rs?$/.test(flags);

for (const name of ['writeFile', 'mkdir', 'link', 'rename', 'copyFile'])
  fs.promises[name] = () => Promise.reject(refused());
const { open } = fs.promises;
fs.promises.open = (path, flags, ...more) =>
  writes(flags) ? Promise.reject(refused()) : open(path, flags, ...more);
const { openSync, writeSync } = fs;
for (const name of ['mkdirSync', 'writeFileSync'])
  fs[name] = () => {
    throw refused();
  };
fs.openSync = (path, flags, ...more) => {
  if (writes(flags)) throw refused();
  return openSync(path, flags, ...more);
};
// What is printed is not on that disk.
fs.writeSync = (file, ...more) => {
  if (file > 2) throw refused();
  return writeSync(file, ...more);
};
syncBuiltinESMExports();
