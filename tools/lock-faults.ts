/**
 * What is wrong with a lock file: parts without a hash, from elsewhere than the
 * registry, that run at their installation, or under another licence.
 */

interface Locked {
  readonly version?: string;
  readonly resolved?: string;
  readonly integrity?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly link?: boolean;
  readonly hasInstallScript?: boolean;
}
export interface Lock {
  readonly lockfileVersion: number;
  readonly packages: Readonly<Record<string, Locked>>;
}
export interface Package {
  readonly allowScripts?: Readonly<Record<string, boolean>>;
}

/** Licences that what runs in production may be under: each lets it be used, changed and handed on. */
const LICENCES = ['0BSD', 'Apache-2.0', 'BSD-2-Clause', 'BSD-3-Clause', 'ISC', 'MIT', 'MPL-2.0'];
/** Those that name theirs in another place; words of it, which must stand in their LICENSE. */
export const READ_IN_LICENSE: Readonly<Record<string, { licence: string; words: string }>> = {
  'dejavu-fonts-ttf': { licence: 'Bitstream Vera', words: 'Bitstream Vera Fonts Copyright' },
  'png-js': { licence: 'MIT', words: 'Permission is hereby granted, free of charge, to any person' },
  jstat: { licence: 'MIT', words: 'Permission is hereby granted, free of charge, to any person' },
};

/** `node_modules/a/node_modules/@b/c` is `@b/c`. */
const nameOf = (path: string) => path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);

/** The parts of a lock file, without the project itself; `production` leaves out what only building and testing need. */
export const partsOf = ({ packages }: Lock, { production = false } = {}) =>
  Object.entries(packages)
    .filter(([path, { dev = false }]) => path !== '' && !(production && dev))
    .map(([path, part]) => ({ path, name: nameOf(path), ...part }));

/** Each fault in a sentence; none in a sound lock file. */
export function faultsOf(lock: Lock, { allowScripts = {} }: Package): string[] {
  const faults: string[] = [];
  if (lock.lockfileVersion !== 3) faults.push(`The lock file is of version ${lock.lockfileVersion}, not 3.`);
  for (const part of partsOf(lock)) {
    const { path, name, resolved, integrity = '', link = false, hasInstallScript = false } = part;
    if (link || !path.startsWith('node_modules/')) {
      faults.push(`${path} is a folder of this machine.`);
      continue;
    }
    // What names no place comes from whatever registry is set, and its hash says that it is the same thing everywhere.
    if (resolved !== undefined)
      faults.push(`${path} comes from ${resolved}, not from the registry that is set.`);
    if (!/^sha512-[A-Za-z0-9+/]{86}==$/.test(integrity)) faults.push(`${path} has no hash of its content.`);
    if (hasInstallScript && allowScripts[name] !== true)
      faults.push(`${path} runs a script when it is installed, and is not among allowScripts.`);
  }
  for (const { path, name, license = '', hasInstallScript = false } of partsOf(lock, { production: true })) {
    if (hasInstallScript)
      faults.push(`${path} is needed in production and runs a script when it is installed.`);
    if (!LICENCES.includes(license) && !Object.hasOwn(READ_IN_LICENSE, name))
      faults.push(`${path} is under ${license === '' ? 'no licence that it names' : license}.`);
  }
  return faults;
}
