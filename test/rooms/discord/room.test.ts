/** The room with the real client against the stand-in, with questions made for the purpose. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command, question, type Question } from '../../../src/chat/command.ts';
import { opt } from '../../../src/chat/options.ts';
import { Registry } from '../../../src/chat/registry.ts';
import { LARGEST_EXPORT } from '../../../src/projects/export.ts';
import { Problem } from '../../../src/core/base/problem.ts';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { Projects } from '../../../src/projects/projects.ts';
import { openDiscordRoom, type OpenRoom } from '../../../src/rooms/discord/run.ts';
import { MANAGER, openStandIn, type As, type Message, type Outcome, type StandIn } from './stand-in/index.ts';

const until = async (so: () => boolean) => {
  for (let tries = 0; !so() && tries < 500; tries += 1) await wait(10);
  expect(so()).toBe(true);
};
/** How far the platform's clock is ahead, in ms. */
let ahead = 0;
const wait = (ms: number) => new Promise((done) => setTimeout(done, ms));
const words = { refused: { line: '' } };
const step = {
  label: 'All',
  formula: '2 * row',
  with: { row: 3 },
  units: { row: '' as const },
  result: 6,
  unit: '' as const,
  source: 'derived: twice',
};

/** What was asked and how, and the count that `/count next` keeps. */
const heard: { once: string; maker: string; server: string | undefined; manager: boolean }[] = [];
let counted = 0;
const done = new Set<string>();

const questions: Record<string, Omit<Question, 'refused' | 'name' | 'example'> & { example?: string }> = {
  plain: {
    says: 'Answers',
    options: { note: opt.text('A note', { max: 300 }).optional() },
    answer: ({ note }, { once, maker, place }) => {
      heard.push({ once, maker: maker.name, server: place.server, manager: place.manager });
      const said = typeof note === 'string' ? note : 'nothing';
      return {
        headline: `Heard ${said}.`,
        working: [step],
        actions: [{ label: 'Again', question: 'try plain', options: { note: said } }],
      };
    },
  },
  slow: {
    says: 'Takes its time',
    options: { ms: opt.whole('How long'), refuse: opt.yesno('Refuse').optional() },
    answer: async ({ ms, refuse }) => {
      await wait(Number(ms));
      if (refuse === true)
        throw new Problem('unsorted', 'That was too slow.', { option: 'ms', hint: 'Take ms:1.' });
      return { headline: 'At last.' };
    },
  },
  own: { says: 'Her own', options: {}, private: true, answer: () => ({ headline: 'Yours alone.' }) },
  late: {
    says: 'Finds out late that it is private',
    options: { ms: opt.whole('How long') },
    answer: async ({ ms }) => {
      await wait(Number(ms));
      return { headline: 'A secret.', private: true };
    },
  },
  next: {
    says: 'Counts',
    options: {},
    changes: true,
    answer: (_, { once }) => {
      if (!done.has(once)) counted += 1;
      done.add(once);
      return {
        headline: `Row ${counted}.`,
        working: [step],
        actions: [{ label: 'Next', question: 'try next', options: {} }],
      };
    },
  },
  open: {
    says: 'A button for everybody',
    options: {},
    answer: () => ({
      headline: 'Take one.',
      actions: [{ label: 'Take', question: 'try take', options: {}, forAnyone: true }],
    }),
  },
  take: {
    says: 'Takes',
    options: {},
    changes: true,
    answer: (_, { maker }) => ({ headline: `Taken by ${maker.id}.` }),
  },
  broken: {
    says: 'Breaks',
    options: {},
    answer: () => {
      throw new Error('a secret detail');
    },
  },
  file: {
    says: 'Reads a file, gives one back',
    options: { from: opt.file('The file') },
    answer: ({ from }) => ({
      headline: 'Read.',
      files: [
        { name: 'back.txt', says: 'What was read', content: String(from) },
        { name: 'drawing.svg', says: 'A drawing', content: '<svg/>' },
      ],
    }),
  },
  offer: {
    says: 'Offers',
    options: {
      what: opt.text({
        says: 'What',
        suggest: (typed) => {
          if (typed === 'break') throw new Error('no offers');
          return Array.from({ length: 40 }, (_, index) => ({
            value: `${typed}${index}`,
            label: `${'long '.repeat(40)}${index}`,
          }));
        },
      }),
    },
    answer: () => ({ headline: 'Offered.' }),
  },
};
const registry = new Registry([
  command({
    name: 'try',
    says: 'Tries',
    questions: Object.entries(questions).map(([name, declared]) =>
      question({ example: '', ...words, ...declared, name }),
    ),
  }),
]);

const lines: string[] = [];
const noting = (level: string) => (facts: object, says: string) => {
  lines.push(JSON.stringify({ level, ...facts, says }));
};
const log = { info: noting('info'), warn: noting('warn'), error: noting('error') };
const faults: unknown[] = [];

let platform: StandIn;
let open: OpenRoom;
let projects: Projects;
const openRoom = () =>
  openDiscordRoom({
    registry,
    projects,
    log,
    fault: (error) => `f${faults.push(error)}`,
    token: platform.token,
    api: platform.api,
    attachmentHosts: ['127.0.0.1'],
    deferAfter: 150,
    pace: { burst: 100, perSecond: 1 },
    makers: {
      toPng: () => Promise.resolve(new Uint8Array([1, 2, 3])),
      toPdf: () => Promise.reject(new Error('nothing is printed here')),
    },
  });

let rowan: As;
let moss: As;
beforeAll(async () => {
  platform = await openStandIn({ now: () => Date.now() + ahead });
  projects = new Projects(new MemoryStore());
  open = await openRoom();
  const guild = platform.guild('Allotment');
  rowan = { user: platform.person('rowan'), guild };
  moss = { user: platform.person('moss'), guild };
});
afterAll(async () => {
  await open.close();
  expect(platform.world.complaints).toEqual([]);
  await platform.close();
});

/** What the person sees once a further message came. */
const then = async ({ interaction }: Outcome) => {
  await until(() => interaction.followUps.length > 0);
  return platform.driver.outcome(interaction);
};
const labels = ({ message }: Outcome) =>
  (message?.components ?? []).flatMap(({ components }) => (components ?? []).map(({ label }) => label));
const news = () => {
  const from = lines.length;
  return () => lines.slice(from);
};

describe('an answer', () => {
  it('comes at once, to everyone, with the asker and her place', async () => {
    const seen = await platform.slash('try plain', { note: 'moss' }, { ...rowan, permissions: MANAGER });
    expect(seen).toMatchObject({ kind: 'message', ephemeral: false, deferred: false });
    expect(seen.text).toContain('Heard moss.');
    expect(heard.at(-1)).toMatchObject({ maker: 'rowan', server: rowan.guild?.id, manager: true });
    await platform.slash('try plain', {}, rowan);
    expect(heard.at(-1)?.manager).toBe(false);
    await platform.slash('try plain', {}, { user: rowan.user });
    const talk = platform.directChannel(rowan.user);
    expect(heard.at(-1)).toMatchObject({ server: `talk${talk.id}`, manager: false });
  });

  it('is the asker’s alone where she chose so, where she set so, and where it is private', async () => {
    expect((await platform.slash('try plain', { seen_by: 'me' }, rowan)).ephemeral).toBe(true);
    expect((await platform.slash('try own', {}, rowan)).ephemeral).toBe(true);
    const fern: As = { user: platform.person('fern'), ...(rowan.guild ? { guild: rowan.guild } : {}) };
    await projects.changeMaker(fern.user.id, 'fern', (doc) => {
      doc.settings.answers = 'me';
    });
    expect((await platform.slash('try plain', {}, fern)).ephemeral).toBe(true);
    expect((await platform.slash('try plain', { seen_by: 'everyone' }, fern)).ephemeral).toBe(false);
  });

  it('that is slow is deferred once and follows', async () => {
    const seen = await platform.slash('try slow', { ms: 400 }, rowan);
    expect(seen).toMatchObject({ deferred: true, ephemeral: false });
    expect(seen.text).toContain('At last.');
    expect(seen.firstMs).toBeLessThan(3_000);
  });

  it('that is refused after it was announced to all is seen by the asker alone', async () => {
    const seen = await then(await platform.slash('try slow', { ms: 400, refuse: true }, rowan));
    expect(seen).toMatchObject({ deferred: true, ephemeral: true });
    expect(seen.text).toContain('That was too slow.');
    expect(seen.interaction.original?.deleted).toBe(true);
  });

  it('that turns out private after it was announced to all is seen by the asker alone', async () => {
    const seen = await then(await platform.slash('try late', { ms: 400 }, rowan));
    expect(seen).toMatchObject({ deferred: true, ephemeral: true });
    expect(seen.text).toContain('A secret.');
    expect((await platform.slash('try late', { ms: 1 }, rowan)).ephemeral).toBe(true);
  });

  it('keeps what people typed as text, and mentions nobody', async () => {
    const seen = await platform.slash('try plain', { note: '@everyone [x](https://evil.example)' }, rowan);
    expect(seen.message?.content).toContain('\\@everyone \\[x\\](https\\://');
    expect(seen.message?.allowedMentions).toEqual({ parse: [] });
  });

  it('that breaks is a sentence with the id of the fault, to the asker alone', async () => {
    const before = faults.length;
    const seen = await platform.slash('try broken', {}, rowan);
    expect(seen.ephemeral).toBe(true);
    expect(seen.text).toContain(`noted as f${before + 1}`);
    expect(seen.text).not.toContain('secret');
    expect(faults).toHaveLength(before + 1);
    faults.length = before;
  });

  it('reads an attached file and gives files back, drawings as pictures', async () => {
    const from = { name: 'mine.txt', bytes: Buffer.from('twelve rows of sand'), type: 'text/plain' };
    const seen = await platform.slash('try file', { from }, rowan);
    expect(seen.files.map(({ filename, description }) => [filename, description])).toEqual([
      ['back.txt', 'What was read'],
      ['drawing.png', 'A drawing'],
    ]);
    expect(seen.files[0]?.bytes.toString()).toBe('twelve rows of sand');
  });

  it('refuses a file that is too large or no text', async () => {
    const large = await platform.slash(
      'try file',
      { from: { name: 'l.txt', bytes: Buffer.alloc(LARGEST_EXPORT + 1, 'x'), type: 'text/plain' } },
      rowan,
    );
    expect(large).toMatchObject({ ephemeral: true });
    expect(large.text).toContain('too large');
    const binary = await platform.slash(
      'try file',
      { from: { name: 'b.txt', bytes: Buffer.from([0xff, 0xfe, 0x00, 0x80]), type: 'text/plain' } },
      rowan,
    );
    expect(binary.text).toContain('not a text');
  });
});

describe('offers while typing', () => {
  it('are within the platform’s limits', async () => {
    const seen = await platform.autocomplete('try offer', { what: 'a' }, 'what', rowan);
    expect(seen.choices).toHaveLength(25);
    expect(seen.choices[0]?.value).toBe('a0');
  });
  it('are none where something breaks', async () => {
    const before = faults.length;
    expect((await platform.autocomplete('try offer', { what: 'break' }, 'what', rowan)).choices).toEqual([]);
    expect(faults.length).toBe(before + 1);
    faults.length = before;
  });
});

describe('a button', () => {
  it('shows and folds the working where it stands, for the asker', async () => {
    const seen = await platform.slash('try plain', { note: 'moss' }, rowan);
    const unfolded = await platform.press(seen.message!, 'Show the working', rowan);
    expect(unfolded.text).toContain('2 × 3 = 6');
    expect(unfolded.message?.id).toBe(seen.message?.id);
    const folded = await platform.press(seen.message!, 'Fold it up', rowan);
    expect(folded.text).not.toContain('2 × 3 = 6');
  });

  it('shows the working to somebody else in a copy of her own', async () => {
    const seen = await platform.slash('try plain', { note: 'moss' }, rowan);
    const copy = await platform.press(seen.message!, 'Show the working', moss);
    expect(copy).toMatchObject({ ephemeral: true });
    expect(copy.text).toContain('2 × 3 = 6');
    expect(copy.message?.id).not.toBe(seen.message?.id);
    expect(heard.at(-1)?.maker).toBe('moss');
  });

  it('of somebody else is refused politely', async () => {
    const seen = await platform.slash('try next', {}, rowan);
    const before = counted;
    const pressed = await platform.press(seen.message!, 'Next', moss);
    expect(pressed).toMatchObject({ ephemeral: true });
    expect(pressed.text).toContain('answers to the one who asked');
    expect(pressed.text).toContain('/try next');
    expect(counted).toBe(before);
  });

  it('counts on where it stands; the same press twice counts once, the next press again', async () => {
    const seen = await platform.slash('try next', {}, rowan);
    const before = counted;
    const id = seen.message?.components[0]?.components?.[0]?.custom_id ?? '';
    const copy = structuredClone(seen.message!.components);
    await Promise.all([platform.press(seen.message!, id, rowan), platform.press(seen.message!, id, rowan)]);
    expect(counted).toBe(before + 1);
    // A press of the button as it was, that arrives after the message was drawn anew.
    const stale = { ...seen.message!, components: copy };
    await platform.press(stale, id, rowan);
    expect(counted).toBe(before + 1);
    const again = await platform.press(seen.message!, 'Next', rowan);
    expect(counted).toBe(before + 2);
    expect(again.message?.id).toBe(seen.message?.id);
    expect(again.text).toContain(`Row ${counted}.`);
    // What changed something cannot be asked again: its working is remembered, and shown without another change.
    const open = await platform.press(again.message!, 'Show the working', rowan);
    expect(open.text).toContain('2 × 3 = 6');
    expect(open.message?.id).toBe(seen.message?.id);
    expect((await platform.press(open.message!, 'Fold it up', rowan)).text).not.toContain('2 × 3 = 6');
    expect(counted).toBe(before + 2);
  });

  it('for everybody asks as whoever presses', async () => {
    const seen = await platform.slash('try open', {}, rowan);
    for (const who of [rowan, moss]) {
      const pressed = await platform.press(seen.message!, 'Take', who);
      expect(pressed).toMatchObject({ ephemeral: true });
      expect(pressed.text).toContain(`Taken by ${who.user.id}.`);
    }
  });

  it('puts a hidden answer before everyone, once', async () => {
    const seen = await platform.slash('try plain', { note: 'moss', seen_by: 'me' }, rowan);
    expect(labels(seen)).toContain('Show everyone');
    const pressed = await platform.press(seen.message!, 'Show everyone', rowan);
    await then(pressed);
    const shown = pressed.interaction.followUps.at(-1);
    expect(shown?.only).toBeUndefined();
    expect(shown?.content).toContain('Heard moss.');
    expect(labels({ ...pressed, message: seen.message })).not.toContain('Show everyone');
    expect(labels(await platform.slash('try own', {}, rowan))).not.toContain('Show everyone');
  });

  it('whose line is too long for its id is asked all the same', async () => {
    const note = 'a long note '.repeat(20).trim();
    const seen = await platform.slash('try plain', { note }, rowan);
    const again = await platform.press(seen.message!, 'Again', rowan);
    expect(again.text).toContain(`Heard ${note}.`);
  });

  it('still answers after a restart', async () => {
    const seen = await platform.slash('try plain', { note: 'sand' }, rowan);
    await open.close();
    open = await openRoom();
    const unfolded = await platform.press(seen.message!, 'Show the working', rowan);
    expect(unfolded.text).toContain('2 × 3 = 6');
    expect((await platform.press(seen.message!, 'Again', rowan)).text).toContain('Heard sand.');
  });

  it.each([
    ['an id of no shape', 'hello'],
    ['a question that is none', 'q.{}.x.try nothing'],
    ['an option that is none', 'q.{}.x.try plain;wrong 1'],
    ['an option given twice', 'q.{}.x.try plain;note a;note b'],
    ['a question that the message does not keep', 'q.{}.x.#7'],
    ['values that are none', 'q.{}.x."'],
    ['a place that is none', 'q.{}.x.#__proto__'],
    ['a line, as earlier versions wrote it', 'a.{}.x./try plain note:1'],
  ])('forged with %s is refused in words', async (_, id) => {
    const seen = await platform.slash('try plain', {}, rowan);
    const forged = id.replace('{}', BigInt(rowan.user.id).toString(36));
    const button = { type: 2, style: 2, label: 'Forged', custom_id: forged };
    const message = { ...seen.message!, components: [{ type: 1, components: [button] }] };
    const before = faults.length;
    const pressed = await platform.press(message, 'Forged', rowan);
    expect(pressed).toMatchObject({ kind: 'message', ephemeral: true });
    expect(faults).toHaveLength(before);
  });

  it('does not believe an embed that somebody else wrote, nor a line that changes something', async () => {
    const before = counted;
    const seen = await platform.slash('try plain', {}, rowan);
    const button = { type: 2, style: 2, label: 'Show the working', custom_id: '' };
    const press = (payload: string, more: Partial<Message>) => {
      const custom_id = `w.${BigInt(rowan.user.id).toString(36)}.x.${payload}`;
      const components = [{ type: 1, components: [{ ...button, custom_id }] }];
      return platform.press({ ...seen.message!, components, ...more }, 'Show the working', rowan);
    };
    const embeds = [{ footer: { text: 'Asked with ▸ try next' } }];
    for (const pressed of [
      await press('try next', {}),
      await press('#0', { embeds }),
      await press('#0', { embeds: [{ footer: { text: 'Asked with ▸ try plain' } }], author: moss.user }),
    ])
      expect(pressed.text).toContain('not in the message any more');
    expect(counted).toBe(before);
  });
});

describe('trouble', () => {
  // Most of these presses are never acknowledged: nobody waits for the whole of three seconds.
  beforeAll(() => {
    platform.driver.patience = { ...platform.driver.patience, first: 600 };
  });
  afterAll(() => {
    platform.driver.patience = { ...platform.driver.patience, first: 3_000 };
  });

  it('with an interaction that expired is one line of the log', async () => {
    const since = news();
    const asked = platform.slash('try slow', { ms: 100 }, rowan);
    await wait(40);
    ahead += 4_000;
    await asked;
    await until(() => since().length > 0);
    expect(since().map((line) => JSON.parse(line) as object)).toMatchObject([{ level: 'warn', code: 10062 }]);
    expect(open.room.metrics.read().lost).toBeGreaterThan(0);
  });

  it('that takes the receipt of an answer with it is none: the answer is there', async () => {
    const [since, { lost }] = [news(), open.room.metrics.read()];
    // The client tries again and hears that it is answered.
    platform.befall({ method: 'POST', path: /callback/, how: 500, applied: true });
    const seen = await platform.slash('try plain', {}, rowan);
    expect(seen.text).toContain('Heard nothing.');
    await until(() => seen.interaction.failures.length > 0);
    await wait(20);
    expect(since()).toEqual([]);
    expect(open.room.metrics.read().lost).toBe(lost);
  });

  it('of the platform does not undo a press: the same button goes on', async () => {
    const seen = await platform.slash('try next', {}, rowan);
    const before = counted;
    platform.befall({ method: 'POST', path: /callback/, how: 500, times: 4 });
    await platform.press(seen.message!, 'Next', rowan);
    await until(() => counted === before + 1);
    // The answer did not come, so she presses again: it was counted, and she is told.
    const again = await platform.press(seen.message!, 'Next', rowan);
    expect(counted).toBe(before + 1);
    expect(again.text).toContain(`Row ${counted}.`);
  });

  it('leaves no token and no word of anybody in the log', async () => {
    platform.befall({ method: 'POST', path: /callback/, how: 500, times: 4 });
    await platform.slash('try plain', { note: 'averyprivateword' }, rowan);
    await until(() => platform.world.mishaps.every(({ times }) => times === 0));
    await wait(50);
    const all = lines.join('\n');
    expect(all).toContain('/interactions/:id/:token/callback');
    expect(all).not.toContain('averyprivateword');
    expect(all).not.toContain(platform.token);
    for (const token of platform.world.tokens.keys()) expect(all).not.toContain(token);
  });
});

describe('a person in a hurry', () => {
  it('is told how long to wait, and nobody else waits', async () => {
    const hasty: As = { user: platform.person('hasty') };
    const seen = await Promise.all(Array.from({ length: 120 }, () => platform.slash('try own', {}, hasty)));
    const told = seen.filter(({ text }) => text.includes('a lot at once'));
    expect(told.length).toBeGreaterThanOrEqual(5);
    expect(told.every(({ ephemeral, text }) => ephemeral && text.includes('second'))).toBe(true);
    expect((await platform.slash('try own', {}, moss)).text).toContain('Yours alone.');
  });
});

describe('leaving', () => {
  it('lets running answers out first', async () => {
    const asked = platform.slash('try slow', { ms: 300 }, rowan);
    await wait(50);
    await open.close();
    expect((await asked).text).toContain('At last.');
    open = await openRoom();
  });
});
