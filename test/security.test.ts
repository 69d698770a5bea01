/** What must hold whatever anybody types, presses, is called, or sets: gathered here so that it can be read in one place. */
import { existsSync, mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { Problem } from '../src/core/base/problem.ts';
import { FileStore } from '../src/projects/file-store.ts';
import { Groups } from '../src/projects/groups.ts';
import { MemoryStore } from '../src/projects/memory.ts';
import { MAKERS, Projects } from '../src/projects/projects.ts';
import { SAFE_ID } from '../src/projects/store.ts';
import { coded, readButton, writeButton } from '../src/rooms/discord/buttons.ts';
import { attachedText } from '../src/rooms/discord/files.ts';
import { terminalId } from '../src/rooms/terminal/room.ts';
import { asking } from './asking.ts';
import { openHarness, type Harness } from './rooms/discord/harness.ts';
import { HOSTILE } from './rooms/discord/probe.ts';
import { launch } from './rooms/discord/process.ts';
import { MANAGER, openStandIn, type Guild, type Message } from './rooms/discord/stand-in/index.ts';

const newFolder = () => mkdtempSync(join(tmpdir(), 'safe-'));
/** Text of every file under a folder. */
const everything = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => readFileSync(join(entry.parentPath, entry.name), 'utf8'))
    .join('\n');

/** An id of a server. */
const SERVER = '123456789012345678';
const PATHS = [
  '..',
  '.',
  '',
  '/etc/passwd',
  '../../x',
  'a/b',
  'a\\b',
  'a\0b',
  '-rf',
  'A',
  'é',
  '__proto__',
  'x'.repeat(101),
  'a\n',
];

describe('ids', () => {
  it.each(PATHS)('that are none never touch a path: %j', async (id) => {
    const folder = newFolder();
    for (const store of [await FileStore.open({ folder, stays: true }), new MemoryStore()]) {
      const projects = new Projects(store);
      await expect((async () => store.read(MAKERS, id))()).rejects.toThrow('unsafe id');
      await expect(projects.changeMaker(id, 'rowan', () => 0)).rejects.toThrow('unsafe id');
      await expect(projects.eraseMaker(id)).rejects.toThrow('unsafe id');
      await store.close();
    }
    // Where it would begin to write, and did not.
    expect(readdirSync(folder)).toEqual(['writing']);
    expect(readdirSync(join(folder, 'writing'))).toEqual([]);
  });

  it('that are made of names are safe, whatever the name, and a server’s are never the terminal’s', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (name) => {
        const ids = [terminalId(name), Groups.idOf(SERVER, name), Groups.idOf(undefined, name)];
        return ids.every((id) => SAFE_ID.test(id)) && ids[1] !== ids[2];
      }),
    );
    for (const path of PATHS) expect(terminalId(path)).toMatch(SAFE_ID);
  });

  it('of the platform are numbers, or nothing is done', () => {
    for (const path of PATHS) expect(() => coded(path)).toThrow();
    expect(coded('123456789012345678')).toMatch(/^[0-9a-z]+$/);
  });
});

describe('what a button carries', () => {
  it('is read back as it was written, and anything else is nobody’s button', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'binary' }), fc.stringMatching(/^[a-z]\.[0-9a-z]*\.[0-9a-z]*\..*$/)),
        (text) => {
          const button = readButton(text);
          if (button !== undefined && text.length <= 100) expect(writeButton(button)).toBe(text);
        },
      ),
    );
    for (const text of [...PATHS, 'w', 'w..', 'W.a.b.c', 'a.b.c.d.'.slice(1), 'x.a.b.c', 'constructor.a.b.c'])
      expect(readButton(text)).toBeUndefined();
  });
});

describe('what is typed', () => {
  it.each([
    'process.exit(1)',
    'import("fs")',
    'constructor.constructor("return process")()',
    '${process.env}',
    '{{constructor}}',
    '1;process.exit()',
    'f(x)=x^2',
    'createUnit("cm2")',
    '2*3',
    'sqrt(144)',
    '1e1+1',
  ])('is never evaluated: %s', async (typed) => {
    const { ask } = asking();
    const whole = await ask(`/stitches row shape:diagonal size:"${typed.replaceAll('"', '\\"')}" row:9`);
    expect(whole).toMatchObject({ ok: false, option: 'size' });
    const weighed = await ask(
      `/yardage weighed motif:"${typed.replaceAll('"', '\\"')}" motifs:12 ball:170m/100g`,
    );
    expect(weighed).toMatchObject({ ok: false, option: 'motif' });
  });

  it('reaches no evaluator: there is one, in one file, and it is handed formulas alone', () => {
    const sources = ['src', 'commands'].flatMap((folder) =>
      readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
        .map((entry) => join(entry.parentPath, entry.name)),
    );
    expect(sources.length).toBeGreaterThan(100);
    const says = (pattern: RegExp) => sources.filter((path) => pattern.test(readFileSync(path, 'utf8')));
    expect(says(/from 'mathjs/)).toEqual(['src/core/base/prepared-formula.ts']);
    expect(says(/\beval\(|new Function\(|node:vm|node:child_process/)).toEqual([]);
  });
});

describe('an attached file', () => {
  it.each([
    'http://169.254.169.254/latest/meta-data',
    'http://127.0.0.1:1/x',
    'https://cdn.discordapp.com.example.org/x',
    'https://example.org/cdn.discordapp.com',
    'https://cdn.discordapp.com@example.org/x',
    'file:///etc/passwd',
  ])('is fetched from nowhere but the platform: %s', async (url) => {
    const asked = attachedText({ url, size: 10 }, 'file');
    await expect(asked).rejects.toBeInstanceOf(Problem);
    await expect(asked).rejects.toThrow('kept somewhere unknown');
  });
});

describe('in a server', () => {
  let harness: Harness;
  let guild: Guild;
  beforeAll(async () => {
    harness = await openHarness();
    guild = harness.platform.guild('Allotment');
  });
  afterAll(() => harness.close());
  afterEach(() => {
    expect(harness.faults).toEqual([]);
    expect(harness.platform.world.complaints).toEqual([]);
  });
  const somebody = (name: string) => ({ user: harness.platform.person(name), guild });
  const forge = (message: Message, customId: string) => {
    message.components = [
      { type: 1, components: [{ type: 2, style: 1, label: 'forged', custom_id: customId }] },
    ];
  };

  it('the bot listens to no messages and asks for no right that it does not use', () => {
    expect([...harness.platform.gateway.sessions.values()].map(({ intents }) => intents)).toEqual([0]);
    const asked = new URL(harness.room.invite).searchParams;
    expect(asked.get('scope')?.split(' ').sort()).toEqual(['applications.commands', 'bot']);
    const [view, send, embed, attach, threads] = [1n << 10n, 1n << 11n, 1n << 14n, 1n << 15n, 1n << 38n];
    // A thread of a group, its pinned board, the event of its closing day: each only where an organiser wishes it.
    const [makeThreads, makeEvents, pin] = [1n << 35n, 1n << 44n, 1n << 51n];
    expect(BigInt(asked.get('permissions')!)).toBe(
      view | send | embed | attach | threads | makeThreads | makeEvents | pin,
    );
  });

  it('a forged button does nothing for its forger that she could not type, and nothing to anybody else', async () => {
    const [hers, forger] = [somebody('rowan'), somebody('fern')];
    await harness.line('/settings change units:imperial', hers);
    const { message } = await harness.line('/stitches row shape:diagonal size:12 row:9', forger);
    const owner = coded(hers.user.id);
    for (const payload of ['settings erase;confirm yes', 'settings change;units metric', 'settings export']) {
      forge(message!, `q.${owner}.0.${payload}`);
      const seen = await harness.platform.press(message!, 'forged', forger);
      expect(seen).toMatchObject({ ephemeral: true, files: [] });
      expect(seen.text).toMatch(/answers to the one who asked/);
      // As her own button it is about herself.
      forge(message!, `q.${coded(forger.user.id)}.0.${payload}`);
      const own = await harness.platform.press(message!, 'forged', forger);
      expect(own.text).not.toMatch(/another time|any more/);
    }
    expect((await harness.projects.maker(hers.user.id, '')).settings.units).toBe('imperial');
  });

  it('an organiser’s button is refused to everybody else, by what is saved and not by what the button says', async () => {
    const organiser = { ...somebody('willow'), permissions: MANAGER };
    for (const line of [
      '/motif define name:furrow shape:diagonal size:12',
      '/motif define name:trellis shape:diagonal size:12',
      '/blanket start name:"Bean rows" kinds:"furrow, trellis" columns:3 rows:4',
      '/together open name:"Bean row throw" side:15cm',
    ])
      expect((await harness.line(line, organiser)).text).not.toMatch(/^\*\*There is no/);
    const stranger = somebody('sorrel');
    const { message } = await harness.line('/stitches row shape:diagonal size:12 row:9', stranger);
    const state = async () => {
      const [group] = await harness.projects.groups.of(guild.id);
      return JSON.stringify(group!.doc.events);
    };
    const before = await state();
    for (const line of ['host close', 'together undo', 'together handover;to 1', 'host accept;motifs 1']) {
      for (const owner of [coded(stranger.user.id), '']) {
        forge(message!, `q.${owner}.0.${line}`);
        const seen = await harness.platform.press(message!, 'forged', stranger);
        expect(seen.ephemeral, line).toBe(true);
      }
    }
    expect(await state()).toBe(before);
    // The organiser's own does it.
    const own = await harness.line('/stitches row shape:diagonal size:12 row:9', organiser);
    forge(own.message!, `q.${coded(organiser.user.id)}.0.host close`);
    await harness.platform.press(own.message!, 'forged', organiser);
    expect(await state()).not.toBe(before);
  });

  it('names of people, motifs and blankets are shown as they are, wherever they turn up', async () => {
    const as = somebody(HOSTILE.slice(0, 32));
    const name = '@everyone [x](https://a.org) **b**';
    const texts: string[] = [];
    for (const line of [
      `/motif define name:"${name}" shape:diagonal size:12 colours:"12 rows <@1>, 12 rows ||x||"`,
      `/motif show name:"${name}"`,
      `/motif list`,
      `/motif words name:"${name}"`,
      '/settings show',
      '/motif show name:"@here https://b.org"',
    ]) {
      const { text, message } = await harness.line(line, as);
      // A footer is shown as it is written: no marks are read in it.
      const footers = message!.embeds.map(({ footer }) => footer?.text ?? '');
      texts.push(footers.reduce((rest, footer) => rest.replace(footer, ''), text).replace(/\\[^\n]/g, ''));
    }
    expect(texts.join('\n')).not.toMatch(/@everyone|@here|<@|\]\(|https?:|\|\|/);
    expect(texts[0]).toContain('everyone');
  });
});

describe('what is erased', () => {
  it('is on the disk no more: no document, no copy, no name in what a group keeps', async () => {
    const folder = newFolder();
    const store = await FileStore.open({ folder, stays: true });
    const { ask } = asking(new Projects(store));
    const all = async (lines: readonly string[]) => {
      for (const line of lines) expect(await ask(line), line).toMatchObject({ ok: true });
    };
    await all([
      'willow: /motif define name:furrow shape:diagonal size:12 gauge:13x10',
      'willow: /motif define name:trellis shape:diagonal size:12 gauge:13x10',
      'willow: /blanket start name:"Bean rows" kinds:"furrow, trellis" columns:3 rows:4',
      'willow: /together open name:"Bean row throw"',
      'Sorreline: /settings change units:imperial',
      'Sorreline: /motif define name:"secret square" shape:diagonal size:8',
      'Sorreline: /motif remove name:"secret square" confirm:yes',
      'Sorreline: /together join per_week:3',
      'Sorreline: /together pledge kind:furrow motifs:3',
      'Sorreline: /together handin kind:furrow motifs:2 side:15.2cm',
      'willow: /host accept motifs:1',
      'willow: /host return motifs:2 reason:"Sorreline knows why"',
    ]);
    expect(everything(folder)).toMatch(/sorreline/i);
    const before = await ask('willow: /together board');
    await all(['Sorreline: /settings erase confirm:yes']);
    expect(everything(folder)).not.toMatch(/sorreline|secret square/i);
    // What she made stays counted.
    expect((await ask('willow: /together board')).figures['made']).toEqual(before.figures['made']);
    expect(await ask('Sorreline: /settings show')).toMatchObject({
      lines: ['Nothing is kept about you yet.'],
    });
    await store.close();
  });
});

describe('the program', () => {
  it('writes the token nowhere: not in its log at the finest level, not in what it keeps', async () => {
    const platform = await openStandIn();
    const folder = newFolder();
    try {
      const bot = launch({
        DISCORD_TOKEN: platform.token,
        DISCORD_API: platform.api,
        DATA_DIR: folder,
        LOG_LEVEL: 'trace',
      });
      await expect.poll(bot.output, { timeout: 30_000 }).toContain('the room is open');
      const guild = platform.guild('Allotment');
      const as = { user: platform.person('rowan'), guild };
      platform.befall({ path: /callback/, how: 500, times: 2 });
      await platform.slash('motif define', { name: 'her-own-words', shape: 'diagonal', size: 12 }, as);
      await platform.slash('motif show', { name: platform.token }, as);
      platform.gateway.drop();
      await platform.slash('motif show', { name: 'her-own-words' }, as);
      expect((await bot.end('SIGTERM')).code).toBe(0);
      const said = bot.output();
      expect(said).toContain('the room is closed');
      for (const secret of [platform.token, platform.token.split('.')[2]!, ...platform.world.tokens.keys()])
        expect(`${said}\n${everything(folder)}`.includes(secret)).toBe(false);
      expect(said).not.toContain('her-own-words');
      expect(everything(folder)).toContain('her-own-words');
    } finally {
      await platform.close();
    }
  });

  it('says that a token is not taken, without saying the token', async () => {
    const platform = await openStandIn();
    const folder = newFolder();
    const token = 'MTIzNDU2Nzg5MDEyMzQ1Njc4.an-old.token-of-nobody';
    try {
      const bot = launch({
        DISCORD_TOKEN: token,
        DISCORD_API: platform.api,
        DATA_DIR: folder,
        LOG_LEVEL: 'trace',
      });
      expect((await bot.ended).code).toBe(1);
      expect(bot.output()).toContain('does not take this DISCORD_TOKEN');
      expect(bot.output()).not.toContain(token);
      expect(bot.output()).not.toContain('token-of-nobody');
      expect(existsSync(join(folder, 'lock'))).toBe(false);
    } finally {
      await platform.close();
    }
  });
});
