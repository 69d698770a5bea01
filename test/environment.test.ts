import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { BadEnvironment, checkEnvironment } from '../src/environment.ts';

describe('the environment', () => {
  it('has sound defaults, and takes what is empty as not set', () => {
    const defaults = {
      token: undefined,
      api: undefined,
      dataFolder: 'data',
      filesFolder: 'files',
      hears: undefined,
      logLevel: 'info',
    };
    expect(checkEnvironment({})).toEqual(defaults);
    expect(checkEnvironment({ DISCORD_TOKEN: ' ', DATA_DIR: '', FILES_DIR: '', LOG_LEVEL: '' })).toEqual(
      defaults,
    );
  });

  it('takes what is set', () => {
    expect(
      checkEnvironment({
        DISCORD_TOKEN: ' aaa.bbb.c-c_c ',
        DATA_DIR: '/srv/x',
        FILES_DIR: 'out',
        HEARS: 'Mentions',
        LOG_LEVEL: 'WARN',
      }),
    ).toEqual({
      token: 'aaa.bbb.c-c_c',
      api: undefined,
      dataFolder: '/srv/x',
      filesFolder: 'out',
      hears: 'mentions',
      logLevel: 'warn',
    });
  });

  it.each([
    [{ DISCORD_TOKEN: 'Bot aaa.bbb.ccc' }, 'DISCORD_TOKEN is not a bot token'],
    [{ DISCORD_TOKEN: 'secret-thing' }, 'DISCORD_TOKEN is not a bot token'],
    [{ DISCORD_API: 'https://elsewhere.example/api' }, 'DISCORD_API must be http://127.0.0.1'],
    [{ HEARS: 'everything' }, 'HEARS must be mentions'],
    [{ LOG_LEVEL: 'loud' }, 'LOG_LEVEL must be one of trace'],
  ])('says what does not fit in %j without repeating it', (set, words) => {
    const check = () => checkEnvironment(set);
    expect(check).toThrow(BadEnvironment);
    expect(check).toThrow(words);
    for (const value of Object.values(set)) expect(check).not.toThrow(value);
  });

  it('is explained, every variable, in the example', () => {
    const example = readFileSync('.env.example', 'utf8');
    const source = readFileSync('src/environment.ts', 'utf8');
    const names = new Set(source.match(/\b[A-Z]+_[A-Z_]+(?=:)/g));
    expect(names.size).toBeGreaterThan(3);
    for (const name of names) expect(example).toMatch(new RegExp(`^# .+\\n(# .+\\n)*${name}=`, 'm'));
  });
});
