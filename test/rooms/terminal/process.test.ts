/** The terminal room as a process: what is typed at it, what it prints, how it ends. */
import { spawn } from 'node:child_process';
import {
  closeSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmdirSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { LARGEST_EXPORT } from '../../../src/projects/export.ts';
import { registry } from '../../../commands/index.ts';
import { exampleLine } from '../../../src/chat/reference.ts';
import { FileStore } from '../../../src/projects/file-store.ts';
import { newMaker } from '../../../src/projects/schema.ts';
import type { Json } from '../../asking.ts';

interface Ran {
  readonly out: string;
  readonly err: string;
  readonly status: number | null;
}

const ROW = '/stitches row shape:diagonal size:12 row:9';
const folderOf = () => mkdtempSync(join(tmpdir(), 'room-'));

/** A document that is damaged, with the good copy before it. */
function spoilt(folder: string, name: string, text = '{"version":1') {
  mkdirSync(join(folder, 'data/makers/previous'), { recursive: true });
  writeFileSync(join(folder, 'data/makers', `${name}.json`), text);
  writeFileSync(join(folder, 'data/makers/previous', `${name}.json`), JSON.stringify(newMaker(name, name)));
}

/** Has a module loaded before the program. */
const preloaded = (name: string) => ({
  NODE_OPTIONS: `--import=${new URL(`../preloads/${name}.mjs`, import.meta.url).href}`,
});

interface Started {
  readonly done: Promise<Ran>;
  readonly child: ReturnType<typeof spawn>;
}

function start(args: readonly string[], folder: string, set: Record<string, string> = {}): Started {
  const child = spawn(process.execPath, [join(process.cwd(), 'tools/run.cjs'), ...args], {
    cwd: folder,
    env: { PATH: process.env['PATH'], DATA_DIR: 'data', FILES_DIR: 'files', ...set },
  });
  const done = new Promise<Ran>((resolve) => {
    let out = '';
    let err = '';
    child.stdout.on('data', (data) => (out += String(data)));
    child.stderr.on('data', (data) => (err += String(data)));
    child.stdin.on('error', () => undefined); // it may end before it has read everything
    child.on('close', (status) => resolve({ out, err, status }));
  });
  return { child, done };
}

async function run(
  args: readonly string[],
  input = '',
  folder = folderOf(),
  set: Record<string, string> = {},
) {
  const { child, done } = start(args, folder, set);
  child.stdin!.end(input);
  return done;
}

const json = ({ out }: Ran) =>
  out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Json);

// The first one bundles the sources where they are newer.
beforeAll(async () => {
  await run(['ask', ROW]);
}, 60_000);

describe('one question', () => {
  it('is answered, refused, with the exit status that says which', async () => {
    const [good, bad, unknown] = await Promise.all([
      run(['ask', ROW, '--json']),
      run(['ask', '/stitches row shape:diagonal size:-3', '--json']),
      run(['ask', '/stitches rwo']),
    ]);
    expect(good).toMatchObject({ status: 0, err: '' });
    expect(json(good)[0]).toMatchObject({
      ok: true,
      question: '/stitches row',
      figures: { stitches: { value: 19 } },
    });
    expect(bad.status).toBe(2);
    expect(json(bad)[0]).toMatchObject({ ok: false, option: 'size' });
    expect(unknown.status).toBe(2);
    expect(unknown.out).toContain('/stitches row');
  });

  it('is kept for its maker by the next process, several at once too', async () => {
    const folder = folderOf();
    const asked = await Promise.all(
      ['rowan', 'hazel', 'rowan', 'wren', 'alder', 'rowan'].map((name) =>
        run(['ask', `${name}: /settings change units:imperial`], '', folder),
      ),
    );
    for (const { status, err } of asked) expect([status, err]).toEqual([0, '']);
    for (const name of ['rowan', 'hazel', 'wren', 'alder'])
      expect((await run(['ask', `${name}: /settings show`], '', folder)).out).toContain('imperial');
    expect(readdirSync(join(folder, 'data')).filter((name) => name.startsWith('lock'))).toEqual([]);
  });

  it('brings a file, and takes it back', async () => {
    const folder = folderOf();
    await run(['ask', '/settings change terms:UK'], '', folder);
    const [exported] = json(await run(['ask', '--json', '/settings export'], '', folder));
    expect(exported?.files).toEqual(['files/loopwright-export.json']);
    const ask = (line: string) => run(['ask', line, '--json'], '', folder).then((ran) => json(ran)[0]!);
    expect(await ask('hazel: /settings import file:files/loopwright-export.json')).toMatchObject({
      data: { imported: true },
    });
    writeFileSync(join(folder, 'large.json'), 'x'.repeat(LARGEST_EXPORT + 1));
    writeFileSync(join(folder, 'picture.json'), Buffer.from([0xff, 0xd8, 0xff, 0xe0]));
    for (const [file, words] of [
      ['large.json', /too large/],
      ['picture.json', /not text/],
      ['.', /folder/],
      ['nothing.json', /not there/],
      ['/dev/zero', /not a plain file/],
    ] as const) {
      const refused = await ask(`/settings import file:${file}`);
      expect(refused).toMatchObject({ ok: false, option: 'file' });
      expect(refused.problem).toMatch(words);
    }
  });
});

describe('questions from standard input', () => {
  it('are answered one a line, in order, whatever is among them', async () => {
    const hostile = [
      '\0\0\0',
      '\u001b[2J\u001b]0;title\u0007',
      'a\u2028b\u2029c\u0085d',
      '\rcarriage\r returns',
      '"',
      'rowan:',
      '\u202e',
      `/stitches row shape:${'x'.repeat(5000)}`,
      '/stitches row shape:diagonal size:1e308',
      '⟦120 cm⟧',
      '{"ok":true}',
      '-'.repeat(300_000),
    ];
    const input = hostile.flatMap((line) => [line, ROW]).join('\n');
    const ran = await run(['ask', '--json'], input);
    expect(ran.err).toBe('');
    expect(ran.status).toBe(2);
    const answers = json(ran);
    expect(answers.map(({ ok }) => ok)).toEqual(hostile.flatMap(() => [false, true]));
    // Nobody's reader finds another line in a line, nor an escape.
    expect(ran.out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028\u2029]/);
    const brief = await run(['ask'], input);
    expect(brief.out.trimEnd().split('\n')).toHaveLength(2 * hostile.length);
    expect(brief.out).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028\u2029]/);
  });

  it('has one answer each, an empty one too', async () => {
    const ran = await run(['ask', '--json'], `${ROW}\n\n  \r\n${ROW}\n\n${ROW}`);
    expect(ran.status).toBe(2);
    expect(json(ran).map(({ ok }) => ok)).toEqual([true, false, false, true, false, true]);
    expect(json(ran)[1]).toMatchObject({
      problem: 'There is no question in that line.',
      option: 'question',
    });
  });

  it('may be thousands of empty lines, bytes that are no text, and a last line without an end', async () => {
    const ran = await run(['ask', '--json'], `${'\n'.repeat(20_000)}${ROW}\r\n${ROW}`);
    expect(ran.status).toBe(2);
    const answers = json(ran).map(({ ok }) => ok);
    expect(answers.length).toBe(20_002);
    expect(answers.indexOf(true)).toBe(20_000);
    const { child, done } = start(['ask', '--json'], folderOf());
    child.stdin!.write(Buffer.from([0xff, 0xfe, 0xc3, 0x28, 0x0a]));
    child.stdin!.end(`${ROW}\n`);
    expect(json(await done).map(({ ok }) => ok)).toEqual([false, true]);
  });

  it('end quietly where nobody reads the answers any more', async () => {
    const { child, done } = start(['ask', '--json'], folderOf());
    child.stdout!.once('data', () => child.stdout!.destroy());
    child.stdin!.end(`/settings change units:imperial\n${`${ROW}\n`.repeat(3000)}`);
    expect(await done).toMatchObject({ status: 0, err: '' });
  });

  it('play several makers', async () => {
    const ran = await run(
      ['ask', '--json'],
      'rowan: /settings change units:imperial\nhazel: /settings show\nrowan: /settings show\n',
    );
    expect(json(ran).map(({ data }) => String(data.settings.units))).toEqual([
      'imperial',
      'metric',
      'imperial',
    ]);
  });
});

describe('a talk', () => {
  it('opens without a token, says so, and shows three questions that it answers', async () => {
    const first = await run(['main'], 'bye\n');
    expect(first.status).toBe(0);
    expect(first.out).toMatch(/no DISCORD_TOKEN is set/);
    const shown = first.out.split('\n').filter((line) => line.startsWith('  /'));
    expect(shown).toHaveLength(3);
    const examples = registry.routes.map(exampleLine);
    for (const line of shown) expect(examples).toContain(line.trim());
    const talked = await run(['main'], `${shown.join('\n')}\nhelp\nbye\n/settings change units:imperial\n`);
    expect(talked.out).not.toMatch(/There is no question|Something went wrong/);
    expect(talked.out).toContain('What is it about?');
    // What follows bye is not answered.
    expect(talked.out).not.toContain('From now on');
  });

  it('ends at once and cleanly when it is asked to stop', async () => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) {
      const folder = folderOf();
      const { child, done } = start(['main', '--terminal'], folder);
      child.stdin!.write('/settings change units:imperial\n');
      child.stdout!.on('data', (data) => {
        if (String(data).includes('From now on')) child.kill(signal);
      });
      expect(await done).toMatchObject({ status: 0, err: '' });
      expect(existsSync(join(folder, 'data', 'lock'))).toBe(false);
      expect(readdirSync(join(folder, 'data', 'makers'))).toContain('me.json');
    }
  });
});

describe('what is ours or the machine’s', () => {
  it('is said in a sentence without a stack, with status 1, and the next line is answered', async () => {
    const folder = folderOf();
    writeFileSync(join(folder, 'data'), 'a file where the folder should be');
    const ran = await run(['ask', '--json'], `/settings change units:imperial\n${ROW}\n`, folder);
    const [refused] = json(ran);
    expect(refused).toMatchObject({ ok: false });
    expect(refused?.problem).toMatch(/Nothing was changed/);
    expect(ran.status).toBe(1);
    expect(`${ran.out}${ran.err}`).not.toMatch(/\n\s+at |\.ts:|\.js:/);
  });

  it('goes to the log of the data folder, without what anybody wrote', async () => {
    const folder = folderOf();
    await run(['ask', '/settings change units:imperial'], '', folder);
    spoilt(folder, 'rowan', '{"version":1,"name":"my secret garden"');
    const ran = await run(['ask', 'rowan: /settings change terms:UK'], '', folder);
    expect(ran.status).toBe(0);
    const log = readFileSync(join(folder, 'data/log/terminal.log'), 'utf8');
    expect(log).toContain('rowan.json');
    expect(log).not.toContain('my secret garden');
    expect(readdirSync(join(folder, 'data/makers/aside'))).toHaveLength(1);
  });

  it('says to whom it belongs that her document is damaged, answers the rest, and erases it when she asks', async () => {
    const folder = folderOf();
    mkdirSync(join(folder, 'data/makers'), { recursive: true });
    writeFileSync(join(folder, 'data/makers/me.json'), '{"version":1');
    const lines = [
      ROW,
      '/settings show',
      '/motif define name:moss shape:diagonal size:12',
      'rowan: /settings show',
    ];
    const ran = await run(['ask', '--json'], lines.join('\n'), folder);
    expect(json(ran).map(({ ok, code }) => [ok, code])).toEqual([
      [true, undefined],
      [false, 'damaged-document'],
      [false, 'damaged-document'],
      [true, undefined],
    ]);
    expect(ran.status).toBe(1);
    const erased = await run(['ask', '--json'], `/settings erase confirm:yes\n${lines[2]}\n`, folder);
    expect(json(erased).map(({ ok }) => ok)).toEqual([true, true]);
  });

  // With a document that is damaged, so that there is something to log; and what the log cannot be written to.
  it.each<[string, (folder: string) => void]>([
    ['a full disk', (log) => symlinkSync('/dev/full', join(log, 'terminal.log'))],
    ['a folder', (log) => mkdirSync(join(log, 'terminal.log'))],
    [
      'nothing, its folder being a file',
      (log) => {
        rmdirSync(log);
        writeFileSync(log, '');
      },
    ],
  ])('a log that is %s stops no answer, and is said in one sentence', async (_what, spoil) => {
    for (const args of [['ask'], ['main']]) {
      const folder = folderOf();
      mkdirSync(join(folder, 'data/log'), { recursive: true });
      spoil(join(folder, 'data/log'));
      for (const name of ['me', 'rowan']) spoilt(folder, name);
      const ran = await run(args, `/settings show\nrowan: /settings change units:imperial\n${ROW}\n`, folder);
      expect(ran.status).toBe(0);
      expect(ran.err).toMatch(/^The log data\/log\/terminal\.log cannot be written \(E[A-Z]+\)\. .*\n$/);
      expect(ran.out).toMatch(/You have metric[^]*From now on: imperial[^]*Row 9 has 19/);
    }
  });

  it.each([
    ['full', 'ENOSPC', 'the disk is full'],
    ['read-only', 'EROFS', 'the data folder cannot be written to'],
  ])('a %s disk refuses what would change something, and every line is answered', async (_is, code, why) => {
    const input = [
      '/settings change units:imperial',
      ROW,
      '/settings show',
      '/settings export',
      '/motif define name:moss shape:diagonal size:12',
      ROW,
    ];
    const folder = folderOf();
    spoilt(folder, 'me');
    const ran = await run(['ask', '--json'], input.join('\n'), folder, {
      ...preloaded('failing-disk'),
      DISK_SAYS: code,
    });
    const answers = json(ran);
    expect(answers.map(({ ok }) => ok)).toEqual([false, true, true, false, false, true]);
    for (const at of [0, 4])
      expect(answers[at]?.problem).toBe(`That could not be saved: ${why}. Nothing was changed.`);
    expect(answers[3]?.problem).toContain(code);
    expect(ran.status).toBe(1);
    expect(ran.err).toBe(
      `The log data/log/terminal.log cannot be written (${code}). Answers go on without it.\n`,
    );
    expect(existsSync(join(folder, 'data/lock'))).toBe(false);
  });

  it('what nobody waits for and goes wrong is noted, said in a sentence, and every line is answered', async () => {
    for (const args of [['ask'], ['main', '--terminal']]) {
      const folder = folderOf();
      const ran = await run(args, `${ROW}\n${ROW}\n`, folder, { ...preloaded('stray'), STRAY: 'rejected' });
      const [, id] = /^Something went wrong here; it is noted as ([0-9a-f]{8})\.\n$/.exec(ran.err) ?? [];
      expect(id, ran.err).toBeDefined();
      expect(ran.status).toBe(1);
      expect(ran.out.match(/Row 9 has 19/g)).toHaveLength(2);
      const log = readFileSync(join(folder, 'data/log/terminal.log'), 'utf8');
      expect(log).toContain(id);
      expect(log).toContain('nobody waits for this');
    }
  });

  it('what nobody catches ends it in a sentence, noted, and the next one goes on from what was saved', async () => {
    const folder = folderOf();
    const ran = await run(['ask'], `/settings change units:imperial\n${ROW}\n`.repeat(200), folder, {
      ...preloaded('stray'),
      STRAY: 'thrown',
    });
    expect(ran.err).toMatch(/^Something went wrong here; it is noted as [0-9a-f]{8}\. That ends it\.\n$/);
    expect(ran.status).toBe(1);
    expect(readFileSync(join(folder, 'data/log/terminal.log'), 'utf8')).toContain('nobody catches this');
    // Whatever it held then is taken over.
    expect((await run(['ask', '/settings change terms:UK'], '', folder)).status).toBe(0);
  });

  it('answers that cannot be written are said to be so', async () => {
    const full = openSync('/dev/full', 'w');
    const child = spawn(process.execPath, [join(process.cwd(), 'tools/run.cjs'), 'ask', ROW], {
      cwd: folderOf(),
      env: { PATH: process.env['PATH'] },
      stdio: ['ignore', full, 'pipe'],
    });
    let err = '';
    child.stderr!.on('data', (data) => (err += String(data)));
    const status = await new Promise((resolve) => child.on('close', resolve));
    closeSync(full);
    expect([status, err]).toEqual([1, 'The answers could not be written (ENOSPC).\n']);
  });

  it('keeps a second room out of a folder that one has, in a sentence', async () => {
    const folder = folderOf();
    const store = await FileStore.open({ folder: join(folder, 'data'), stays: true });
    const ran = await run(['main'], '', folder, { DISCORD_TOKEN: 'aaa.bbb.ccc' });
    expect(ran.status).toBe(1);
    expect(ran.err).toMatch(
      /^The data folder data is in use by process \d+ on .*\n  Stop that one first, .*\n$/,
    );
    const asked = await run(['ask', '/settings change units:imperial'], '', folder);
    expect(asked.out).toContain('in use by process');
    expect(asked.status).toBe(1);
    // Looking needs no hold.
    expect((await run(['ask', '/settings show'], '', folder)).status).toBe(0);
    await store.close();
  });

  it('answers nothing from a folder into which a move was broken off', async () => {
    const folder = folderOf();
    mkdirSync(join(folder, 'data/moves'), { recursive: true });
    writeFileSync(join(folder, 'data/moves/into.json'), '{"version":1,"begun":"2026-03-02T12:00:00.000Z"}\n');
    const { out, err, status } = await start(['ask', '/motif show'], folder).done;
    expect([out, status]).toEqual(['', 1]);
    expect(err).toContain('A move into the data folder data was begun on 2026-03-02 and has not ended');
  });

  it('a variable that does not fit is named before anything starts', async () => {
    const ran = await run(['main'], '', folderOf(), { LOG_LEVEL: 'loud' });
    expect(ran.status).toBe(1);
    expect(ran.err).toMatch(/^LOG_LEVEL must be one of .*\n$/);
    expect(ran.out).toBe('');
  });
});
