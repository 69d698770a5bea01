import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DiscordAPIError } from 'discord.js';
import { describe, expect, it } from 'vitest';
import { clearedLog, noteFault, openLog } from '../src/log.ts';

// Invented, in the shape of one.
const TOKEN = 'MTIzNDU2Nzg5MDEyMzQ1Njc4.GaBcDe.not-a-real_token-of-anybody-0123456789';

const logged = (level = 'trace') => {
  const lines: string[] = [];
  const log = clearedLog({ level, secrets: [TOKEN, ''] }, { write: (line) => lines.push(line) });
  return { log, lines, all: () => lines.join('') };
};

describe('the log', () => {
  it('holds the token in no line, however it got there', () => {
    const { log, lines, all } = logged();
    log.info(`starting with ${TOKEN}`);
    log.warn(
      { url: `http://127.0.0.1/x?token=${TOKEN}`, headers: { authorization: `Bot ${TOKEN}` } },
      'refused',
    );
    const error = new Error(`401 for Bot ${TOKEN}`, { cause: new Error(`inner ${TOKEN}`) });
    error.stack = `${error.stack ?? ''}\n  at ${TOKEN}`;
    log.error({ err: Object.assign(error, { request: { token: TOKEN, [TOKEN]: 1 } }) });
    log.child({ question: TOKEN }).error(error);
    noteFault(log, error, { question: 'stitches row' });
    expect(lines).toHaveLength(5);
    expect(all()).not.toContain(TOKEN);
    expect(all()).not.toContain(TOKEN.split('.')[2]);
    expect(all()).toContain('[token]');
    for (const line of lines) expect(() => JSON.parse(line) as unknown).not.toThrow();
  });

  it('notes a fault under the id that is shown, with its stack', () => {
    const { log, lines } = logged();
    const id = noteFault(log, new TypeError('x is not a function'), { question: 'gauge shape' });
    expect(id).toMatch(/^[0-9a-f]{8}$/);
    const line = JSON.parse(lines[0]!) as Record<string, any>; // eslint-disable-line @typescript-eslint/no-explicit-any
    expect(line).toMatchObject({ fault: id, question: 'gauge shape', err: { type: 'TypeError' } });
    expect(line['err'].stack).toContain('log.test.ts');
  });

  it('says of an error where and why, and nothing else that hangs on it', () => {
    const { log, all } = logged();
    // As the client throws it: with the message that was refused, and an address that anybody could answer with.
    const refused = new DiscordAPIError(
      { code: 50035, message: 'Invalid Form Body' },
      50035,
      400,
      'POST',
      'http://127.0.0.1/api/v10/webhooks/123/a-secret-address/messages',
      { body: { content: 'what she was answered' }, files: undefined },
    );
    log.error({ err: new Error('the answer broke', { cause: refused }) }, 'a fault of ours');
    noteFault(log, refused);
    log.error(refused, 'on its own');
    noteFault(log, { content: 'what she was answered' });
    expect(all()).not.toMatch(/what she was answered|a-secret-address/);
    expect(all()).toMatch(/the answer broke.*Invalid Form Body.*50035/);
  });

  it('keeps to its level', () => {
    const { log, lines } = logged('warn');
    log.info('no');
    log.warn('yes');
    expect(lines).toHaveLength(1);
  });

  it('is on the disk as soon as it is noted', () => {
    const file = join(mkdtempSync(join(tmpdir(), 'log-')), 'deep', 'a.log');
    const told: string[] = [];
    const log = openLog({ level: 'info', secrets: [TOKEN], file, failed: (sentence) => told.push(sentence) });
    log.error(new Error(TOKEN));
    expect(readFileSync(file, 'utf8')).toContain('[token]');
    expect(readFileSync(file, 'utf8')).not.toContain(TOKEN);
    expect(told).toEqual([]);
  });

  it('that cannot be opened or written says so once, and throws at nobody', () => {
    const folder = mkdtempSync(join(tmpdir(), 'log-'));
    writeFileSync(join(folder, 'file'), '');
    for (const [file, code] of [
      [join(folder, 'file', 'a.log'), 'EEXIST'],
      [folder, 'EISDIR'],
      ['/dev/full', 'ENOSPC'],
    ] as const) {
      const told: string[] = [];
      const log = openLog({ level: 'info', secrets: [], file, failed: (sentence) => told.push(sentence) });
      for (let line = 0; line < 3; line++) log.error(new Error('x'.repeat(1000)));
      expect(told).toEqual([`The log ${file} cannot be written (${code}). Answers go on without it.`]);
    }
  });
});
