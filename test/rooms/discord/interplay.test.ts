/** What happens between people and the room: buttons, restarts, presses that come twice, too late, or from somebody else. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { registry } from '../../../commands/index.ts';
import { Registry } from '../../../src/chat/registry.ts';
import { mentions, openHarness, type Harness } from './harness.ts';
import { counted, gates, HOSTILE, probe } from './probe.ts';
import { LIMITS, MANAGER, type Guild, type Message } from './stand-in/index.ts';

let harness: Harness;
let guild: Guild;
let moved = 0;
beforeAll(async () => {
  harness = await openHarness({
    registry: new Registry([...registry.commands, probe]),
    platform: { now: () => Date.now() + moved },
  });
  guild = harness.platform.guild('Allotment');
});
afterAll(() => harness.close());
afterEach(() => {
  expect(mentions(harness.platform.world.messages.values())).toEqual([]);
  expect(harness.platform.world.complaints).toEqual([]);
});

const somebody = (name = 'rowan') => ({ user: harness.platform.person(name), guild });
const buttons = (message: Message | undefined) =>
  (message?.components ?? []).flatMap(({ components = [] }) => components.map(({ label = '' }) => label));
const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
/** The lines of the log since. */
const logged = (from: number) => harness.log.slice(from).filter(({ level }) => level !== 'info');
/** Opens `name` after so many ms, or when called. */
function gate(name: string) {
  let open: () => void = () => undefined;
  gates.set(name, new Promise<void>((resolve) => (open = resolve)));
  return () => open();
}

const ROW = '/stitches row shape:diagonal size:12 row:9';

describe('the working', () => {
  it('unfolds and folds, before and after a restart', async () => {
    const as = somebody();
    const seen = await harness.line(ROW, as);
    const words = () => JSON.stringify(seen.message!.embeds);
    const folded = words();
    expect(buttons(seen.message)).toContain('Show the working');
    await harness.platform.press(seen.message!, 'Show the working', as);
    const unfolded = words();
    expect(unfolded.length).toBeGreaterThan(folded.length + 100);
    await harness.platform.press(seen.message!, 'Fold it up', as);
    expect(words()).toBe(folded);
    await harness.restart();
    await harness.platform.press(seen.message!, 'Show the working', as);
    expect(words()).toBe(unfolded);
    expect(seen.message!.edits).toBe(3);
  });

  it('of what changed something unfolds as before after a restart, and in another process', async () => {
    const as = somebody();
    await harness.line('/motif define name:furrow shape:diagonal size:12 gauge:13x10', as);
    const seen = await harness.line('/motif weigh weight:24g', as);
    const words = () => JSON.stringify([seen.message!.content, seen.message!.embeds]);
    const folded = words();
    const unfold = () => harness.platform.press(seen.message!, 'Show the working', as);
    await unfold();
    const unfolded = words();
    expect(unfolded.length).toBeGreaterThan(folded.length + 100);
    await harness.platform.press(seen.message!, 'Fold it up', as);
    await harness.restart();
    await unfold();
    expect(words()).toBe(unfolded);
    await harness.platform.press(seen.message!, 'Fold it up', as);
    expect(words()).toBe(folded);
    // Nothing was counted anew.
    const { motifs } = await harness.projects.maker(as.user.id, '');
    expect(motifs.map(({ weighings }) => weighings?.length)).toEqual([1]);
    expect(await harness.projects.saysElsewhere(as.user.id)).toEqual([
      expect.stringContaining('the latest answers that changed something'),
    ]);
  });

  it('is shown to somebody else in a copy of her own, and the message stays as it is', async () => {
    const seen = await harness.line(ROW, somebody());
    const other = somebody('fern');
    const copy = await harness.platform.press(seen.message!, 'Show the working', other);
    expect(copy.ephemeral).toBe(true);
    expect(copy.message).not.toBe(seen.message);
    expect(seen.message!.edits).toBe(0);
  });
});

describe('presses', () => {
  it('count once when they arrive twice, and again when pressed again', async () => {
    const as = somebody();
    const seen = await harness.line('/probe count', as);
    const id = seen.message!.components[0]!.components![0]!.custom_id!;
    // The client sends the same press twice before it hears of an answer.
    const twice = await Promise.all([
      harness.platform.press(seen.message!, id, as),
      harness.platform.press(seen.message!, id, as),
    ]);
    for (const { interaction } of twice) expect(interaction).toMatchObject({ callbacks: 1, failures: [] });
    expect(await counted(harness.projects, as.user.id)).toBe(2);
    await harness.platform.press(seen.message!, 'One more', as);
    expect(await counted(harness.projects, as.user.id)).toBe(3);
    expect(seen.message!.content).toContain('3');
  });

  it('go on counting after a restart, and one from before it counts once', async () => {
    const as = somebody();
    const seen = await harness.line('/probe count', as);
    const id = seen.message!.components[0]!.components![0]!.custom_id!;
    const before = seen.message!.components;
    await harness.platform.press(seen.message!, id, as);
    expect(await counted(harness.projects, as.user.id)).toBe(2);
    await harness.restart();
    // A press that was on its way while the room was closed: the button as it was before.
    seen.message!.components = before;
    await harness.platform.press(seen.message!, id, as);
    expect(await counted(harness.projects, as.user.id)).toBe(2);
    await harness.platform.press(seen.message!, 'One more', as);
    expect(await counted(harness.projects, as.user.id)).toBe(3);
  });

  it('of somebody else are refused politely, to her alone, and change nothing', async () => {
    const as = somebody();
    const seen = await harness.line('/probe count', as);
    const other = somebody('fern');
    const refused = await harness.platform.press(seen.message!, 'One more', other);
    expect(refused.ephemeral).toBe(true);
    expect(refused.text).toMatch(/answers to the one who asked/);
    expect([
      await counted(harness.projects, as.user.id),
      await counted(harness.projects, other.user.id),
    ]).toEqual([1, 0]);
    expect(seen.message!.edits).toBe(0);
  });

  it('with forged ids reach nobody else’s data', async () => {
    const as = somebody();
    await harness.line('/probe count', as);
    const other = somebody('fern');
    const faults = harness.faults.length;
    const own = (await harness.line('/probe count', other)).message!;
    const [letter, owner, serial, payload] = own.components[0]!.components![0]!.custom_id!.split('.');
    for (const id of [
      `${letter}.${BigInt(as.user.id).toString(36)}.${serial}.${payload}`,
      `${letter}.../../../makers/${as.user.id}`,
      `${letter}.${owner}.${serial}.settings erase;sure yes`,
      `${letter}.${owner}.${serial}.#-1`,
      `${letter}.${owner}.${serial}.#__proto__`,
      'zzz',
      '__proto__',
      'w....',
    ]) {
      own.components = [{ type: 1, components: [{ type: 2, style: 1, label: 'forged', custom_id: id }] }];
      const seen = await harness.platform.press(own, 'forged', other);
      expect(seen.kind).toBe('message');
      expect(seen.interaction).toMatchObject({ callbacks: 1, failures: [] });
    }
    expect(await counted(harness.projects, as.user.id)).toBe(1);
    expect(await harness.projects.knows(as.user.id)).toBe(true);
    expect(harness.faults.length).toBe(faults);
  });

  it('on a message that was deleted meanwhile break nothing', async () => {
    const as = somebody();
    const seen = await harness.line(ROW, as);
    const pressing = harness.platform.press(seen.message!, 'Show the working', as);
    seen.message!.deleted = true;
    const pressed = await pressing;
    expect(pressed.interaction.callbacks).toBeLessThanOrEqual(2);
    expect(harness.faults).toEqual([]);
    expect((await harness.line(ROW, as)).kind).toBe('message');
  });
});

describe('time', () => {
  it('an interaction that expired is logged once, never answered again, and nothing crashes', async () => {
    const as = somebody();
    const from = harness.log.length;
    harness.platform.driver.patience = { first: 400, settled: 400 };
    const asking = harness.line(ROW, as);
    moved += LIMITS.firstResponse + 1;
    const seen = await asking;
    harness.platform.driver.patience = { first: 3_000, settled: 15_000 };
    expect(seen.interaction.failures).toEqual([{ status: 404, code: 10062 }]);
    await expect.poll(() => logged(from).map(({ facts }) => facts['code'])).toEqual([10062]);
    expect((await harness.line(ROW, as)).kind).toBe('message');
  });

  it.each([500, 'hang-up'] as const)(
    'an answer that was taken, and sent once more as what said so was lost (%s), has arrived',
    async (how) => {
      const as = somebody();
      const from = harness.log.length;
      harness.platform.befall({ path: /callback/, how, applied: true });
      const seen = await harness.line(ROW, as);
      expect(seen.kind).toBe('message');
      await expect.poll(() => seen.interaction.failures).toEqual([{ status: 400, code: 40060 }]);
      await wait(50);
      expect(logged(from)).toEqual([]);
      expect(seen.interaction.followUps).toEqual([]);
    },
  );

  it.each([500, 'hang-up'] as const)(
    'an answer comes after it was deferred, also where what said that was lost (%s)',
    async (how) => {
      const as = somebody();
      const open = gate(`lost-${how}`);
      setTimeout(open, 1_300);
      harness.platform.befall({ path: /callback/, how, applied: true });
      const seen = await harness.line(`/probe slow gate:lost-${how}`, as);
      expect(seen.deferred).toBe(true);
      expect(seen.text).toContain(`lost-${how}`);
      expect(seen.interaction.failures).toEqual([{ status: 400, code: 40060 }]);
    },
  );

  it.each([0, 900, 1_000, 1_100, 2_500])(
    'an answer after %i ms arrives once, deferred by itself after a second',
    async (ms) => {
      const as = somebody();
      const open = gate(`after-${ms}`);
      setTimeout(open, ms);
      const seen = await harness.line(`/probe slow gate:after-${ms}`, as);
      await wait(50);
      expect(seen.text).toContain(`after-${ms}`);
      expect(seen.interaction).toMatchObject({ callbacks: 1, failures: [], followUps: [] });
      if (ms < 800) expect(seen.deferred).toBe(false);
      if (ms > 1_300) {
        expect(seen.deferred).toBe(true);
        expect(seen.firstMs).toBeGreaterThan(900);
        expect(seen.firstMs).toBeLessThan(1_800);
      }
    },
  );

  it('an answer that turns out to be private is seen by nobody else, however late', async () => {
    const as = somebody();
    const open = gate('private');
    setTimeout(open, 1_300);
    const seen = await harness.line('/probe slow gate:private alone:yes', as);
    await wait(50);
    const final = harness.platform.driver.outcome(seen.interaction);
    expect(final.ephemeral).toBe(true);
    expect(final.text).toContain('private');
    expect(seen.interaction.original!.deleted || seen.interaction.original!.only === as.user).toBe(true);
  });

  it('offers come from memory', async () => {
    const as = somebody();
    const found = registry.routes.find(({ question }) => 'hook' in question.options)!;
    const times: number[] = [];
    for (let i = 0; i < 20; i++) {
      const seen = await harness.platform.autocomplete(found.path, { hook: '5' }, 'hook', as);
      expect(seen.choices.length).toBeGreaterThan(0);
      times.push(seen.firstMs);
    }
    expect(times.sort((a, b) => a - b)[10]).toBeLessThan(300);
  });
});

describe('sizes', () => {
  it.each([
    'lines:1000',
    'steps:500',
    'lines:1000 steps:500',
    'actions:60',
    'files:30',
    'lines:1000 steps:500 actions:60 files:30',
    'lines:40 steps:12 actions:25 files:3',
  ])('an answer over the limits is told whole: %s', async (options) => {
    const as = somebody();
    const {
      lines = '0',
      steps = '0',
      actions = '0',
      files = '0',
    } = Object.fromEntries(options.split(' ').map((each) => each.split(':'))) as Record<string, string>;
    const seen = await harness.line(`/probe long ${options}`, as);
    expect(seen.interaction).toMatchObject({ callbacks: 1, failures: [] });
    let everything = `${seen.text}\n${seen.files.map(({ bytes }) => bytes.toString()).join('\n')}`;
    const unfolds = buttons(seen.message).find((label) => /^Show (the working|all of it)$/.test(label));
    expect(unfolds === undefined).toBe(Number(lines) + Number(steps) === 0);
    if (unfolds !== undefined) {
      const open = await harness.platform.press(seen.message!, unfolds, as);
      expect(open.interaction).toMatchObject({ callbacks: 1, failures: [] });
      everything += `${open.text}\n${open.files.map(({ bytes }) => bytes.toString()).join('\n')}`;
    }
    const missing = [1, 2, Number(lines)].filter(
      (n) => n > 0 && n <= Number(lines) && !everything.includes(`Line ${n}:`),
    );
    expect(missing).toEqual([]);
    if (Number(lines) > 0)
      for (const said of ['Caution 30:', 'Assumption 30:', 'Figure 60:'].slice(
        0,
        Number(lines) >= 60 ? 3 : 2,
      ))
        expect(everything.includes(said), said).toBe(true);
    const written = seen.files.find(({ filename }) => filename === 'next.txt')?.bytes.toString() ?? '';
    const offered = buttons(seen.message).filter((label) => /^Lines \d+$/.test(label)).length;
    expect(offered + (written.match(/^Lines \d+:/gm)?.length ?? 0)).toBe(Number(actions));
    const sent = seen.files.filter(({ filename }) => filename.startsWith('file-')).length;
    expect(sent + Number(/(\d+) more files had no room/.exec(seen.text)?.[1] ?? 0)).toBe(Number(files));
    const sum = (Number(steps) * (Number(steps) + 1)) / 2;
    if (Number(steps) > 0) expect(everything.replaceAll(',', '').includes(String(sum))).toBe(true);
  });
});

describe('what people write', () => {
  it('stays what it looks like: no mention, no formatting, no link', async () => {
    const as = somebody(HOSTILE.slice(0, 32));
    const seen = await harness.platform.slash('probe echo', { text: HOSTILE }, as);
    expect(seen.interaction).toMatchObject({ callbacks: 1, failures: [] });
    // What the platform's own reading of marks would find, outside escapes; a footer is shown as it is written.
    const footers = seen.message!.embeds.map(({ footer }) => footer?.text ?? '');
    const read = footers.reduce((text, footer) => text.replace(footer, ''), seen.text);
    const bare = read.replace(/\\[^\n]/g, '');
    const typed = bare.replace(/\*\*[^*]*\*\*/g, '').replace(/^-# /gm, '');
    expect(bare).not.toMatch(/@everyone|<@|<:|<t:|https?:\/\/|discord\.gg/);
    expect(typed).not.toMatch(/[`|~[\]]|(?<!\w)_|\*/);
    expect(read).not.toMatch(/[\u202a-\u202e\u200b]/);
    expect(bare).not.toMatch(/^\s*(#|>|1\.)\s/m);
  });

  it('is not in the log, and neither is a token', async () => {
    const as = somebody();
    await harness.platform.slash('probe echo', { text: 'a-word-of-hers' }, as);
    const seen = await harness.line('/probe broken', as);
    expect(seen).toMatchObject({ kind: 'message', ephemeral: true });
    expect(seen.text).toMatch(/noted as fault-\d/);
    expect(seen.text).not.toContain('secret-of-the-inside');
    const log = JSON.stringify(harness.log);
    const { world, token } = harness.platform;
    for (const secret of [token, 'a-word-of-hers', ...world.tokens.keys()])
      expect(log.includes(secret)).toBe(false);
  });

  it('is refused kindly when it is too much at once, to the one who overdid it', async () => {
    await harness.restart({ pace: { burst: 3, perSecond: 0.5 } });
    const [as, other] = [somebody(), somebody('fern')];
    const seen = [];
    for (let i = 0; i < 5; i++) seen.push(await harness.line(ROW, as));
    const kind = seen.map(({ message }) => message!.components.length > 0);
    expect(kind).toEqual([true, true, true, false, false]);
    expect(seen[3]).toMatchObject({ ephemeral: true });
    expect(seen[3]!.text).toMatch(/a lot at once[\s\S]*second/);
    expect((await harness.line(ROW, other)).message!.components.length).toBeGreaterThan(0);
    await wait(2_100);
    expect((await harness.line(ROW, as)).message!.components.length).toBeGreaterThan(0);
    // Keys count too, five for a press: then there are no offers for her, and still some for others.
    const typist = somebody('typist');
    const found = registry.routes.find(({ question }) => 'hook' in question.options)!;
    const offered = async (who: typeof as) =>
      (await harness.platform.autocomplete(found.path, { hook: '5' }, 'hook', who)).choices.length;
    const keys = await Promise.all(Array.from({ length: 60 }, () => offered(typist)));
    expect(keys.filter((choices) => choices > 0).length).toBeGreaterThanOrEqual(15);
    expect(keys.filter((choices) => choices === 0).length).toBeGreaterThan(10);
    expect(await offered(somebody('other'))).toBeGreaterThan(0);
    await harness.restart();
  });

  it('managers and strangers are told apart by the platform’s word on each press', async () => {
    const as = somebody();
    const manager = { ...as, permissions: MANAGER };
    expect((await harness.line('/probe where', as)).text).toContain('manager: no');
    const seen = await harness.line('/probe where', manager);
    expect(seen.text).toContain(`manager: yes, server: ${guild.id}`);
    // Who was one is one no more.
    expect((await harness.platform.press(seen.message!, 'And now', as)).text).toContain('manager: no');
    expect((await harness.platform.press(seen.message!, 'And now', manager)).text).toContain('manager: yes');
    expect((await harness.line('/probe where', { user: as.user })).text).toContain(
      'manager: no, server: talk',
    );
  });
});
