/** Questions that are typed into forms: whatever declares one, through the real client. */
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { registry } from '../../../commands/index.ts';
import { readLine, writeLine } from '../../../src/chat/line.ts';
import type { Route } from '../../../src/chat/registry.ts';
import { asking } from '../../asking.ts';
import { fieldsOf, filled, openHarness, type Harness } from './harness.ts';
import { HOSTILE } from './probe.ts';
import { MANAGER, type As, type Message, type Outcome } from './stand-in/index.ts';

let harness: Harness;
beforeAll(async () => {
  harness = await openHarness();
});
afterAll(() => harness.close());

const withForm = registry.routes.filter(({ question }) => question.form !== undefined);
const of = (path: string) => registry.find(path.split(' '));

/** Somebody in a server of her own. */
const somebody = (name = 'ines'): As => ({
  user: harness.platform.person(name),
  guild: harness.platform.guild('Allotment'),
  permissions: MANAGER,
});
const prepare = async ({ question }: Route, as: As) => {
  for (const line of question.before ?? []) {
    const name = /^(\w+): /.exec(line)?.[1];
    const who = name === undefined ? as : { ...as, user: harness.platform.person(name) };
    expect(harness.answered(await harness.line(line.replace(/^\w+: /, ''), who)), line).toBe(true);
  }
};

/** Opens a form with what its command needs at least, and nothing else. */
function opened({ path, question }: Route, as: As, typed: Readonly<Record<string, string>> = {}) {
  const begins = new Set(question.form?.begins);
  const given = Object.entries(typed).filter(([name]) => begins.has(name));
  return harness.platform.slash(
    path,
    Object.fromEntries(given.map(([name, text]) => [name, /^\d+$/.test(text) ? Number(text) : text])),
    as,
  );
}
const form = ({ interaction: { modal } }: Outcome) =>
  (modal?.components ?? []).map(({ component }) => component!);
const value = (seen: Outcome, name: string) => form(seen).find(({ custom_id }) => custom_id === name)?.value;
const chosen = (seen: Outcome, name: string) =>
  form(seen)
    .find(({ custom_id }) => custom_id === name)
    ?.options?.filter((option) => option.default === true)
    .map((option) => option.value);
const labels = (message: Message | undefined) =>
  (message?.components ?? []).flatMap(({ components = [] }) => components.map(({ label = '' }) => label));
const plain = (text: string) => text.replace(/\\(.)/gs, '$1').replaceAll('**', '');
const REFILL = 'Change what I typed';

/** The title of a form, the name of every field, and what may be chosen. */
const words = ({ interaction: { modal } }: Outcome) => ({
  title: modal!.title,
  fields: modal!.components.map(({ label }) => label),
  choices: modal!.components.flatMap(({ component }) => component?.options ?? []).map(({ label }) => label),
});

describe('a form', () => {
  it('is labelled in the language of whoever fills it in, and what is sent is the same', async () => {
    const as = somebody();
    await prepare(of('blanket start'), as);
    const seen = async (locale: string) =>
      harness.platform.slash('blanket start', { name: `porch ${locale}` }, { ...as, locale });
    const german = await seen('de');
    const { title, fields, choices } = words(german);
    expect(title).toBe('Eine Decke beginnen');
    expect(fields).toEqual(expect.arrayContaining(['Sorten', 'Spalten', 'Reihen']));
    // Her own motifs are called as she called them.
    expect(choices).toContain('moss square');
    expect(words(await seen('fr')).title).toBe('Commencer une couverture');
    for (const locale of ['en-US', 'pl']) expect(words(await seen(locale)).title).toBe('Start a blanket');
    const sent = await harness.platform.submitModal(
      german,
      { kinds: ['moss square'], columns: '4', rows: '5' },
      as,
    );
    expect(plain(sent.text)).toContain('4 across and 5 down');
  });

  it('is declared by the questions of which several values are typed', () => {
    expect(withForm.map(({ path }) => path).sort()).toEqual([
      'along join',
      'along stuck',
      'blanket change',
      'blanket start',
      'lesson answer',
      'motif weigh',
      'progress counted',
      'stitches check',
      'together handin',
    ]);
  });

  it.each(withForm.map((found) => [found.path, found] as const))(
    '/%s opens, and sent with the values of its example answers as the typed line does',
    async (_, found) => {
      const as = somebody();
      await prepare(found, as);
      const { options } = readLine(`/${found.path} ${found.question.example}`);
      const seen = await opened(found, as, options);
      expect(seen.kind).toBe('modal');
      expect(fieldsOf(seen).length).toBeLessThanOrEqual(5);
      const sent = await harness.platform.submitModal(seen, filled(seen, found, options), as);
      expect(harness.answered(sent), sent.text).toBe(true);
      const room = asking();
      for (const line of found.question.before ?? []) await room.ask(line);
      // What stands neither in the form nor before it is left out of the typed line as well.
      const asks = new Set([...fieldsOf(seen), ...(found.question.form?.begins ?? [])]);
      const carried = Object.fromEntries(Object.entries(options).filter(([name]) => asks.has(name)));
      const { headline } = await room.ask(writeLine({ words: found.path.split(' '), options: carried }));
      // A lesson's numbers are drawn for whoever it is.
      if (found.path !== 'lesson answer') expect(plain(sent.text)).toContain(headline);
      expect(harness.faults).toEqual([]);
    },
  );

  it.each(withForm.map((found) => [found.path, found] as const))(
    '/%s that is sent empty or hostile is refused or answered in words, and can be changed',
    async (_, found) => {
      const as = somebody();
      await prepare(found, as);
      const { options } = readLine(`/${found.path} ${found.question.example}`);
      for (const text of [
        HOSTILE,
        '~0041;zz_fields x',
        '⟦cm:1⟧',
        '"',
        '__proto__',
        '\u202e 5',
        '💥'.repeat(40),
      ]) {
        const seen = await opened(found, as, options);
        const values = Object.fromEntries(
          form(seen).flatMap(({ type, custom_id: name = '', max_length: most }) =>
            type === 4 ? [[name, [...text].slice(0, Math.floor(most! / 2)).join('')]] : [],
          ),
        );
        const menus = Object.fromEntries(
          form(seen).flatMap(({ type, custom_id: name = '', required, options: offered }) =>
            type === 3 && required !== false ? [[name, [offered![0]!.value]]] : [],
          ),
        );
        const sent = await harness.platform.submitModal(seen, { ...values, ...menus }, as);
        expect(sent.interaction).toMatchObject({ callbacks: 1, failures: [] });
        // A footer is shown as it is written.
        expect(sent.message!.content).not.toMatch(/(?<!\\)<@|undefined|\[object/);
        if (harness.answered(sent) || !labels(sent.message).includes(REFILL)) continue;
        const again = await harness.platform.press(sent.message!, REFILL, as);
        expect(again.kind).toBe('modal');
        expect(fieldsOf(again).sort()).toEqual(fieldsOf(seen).sort());
      }
      expect(harness.faults).toEqual([]);
    },
  );

  it('asks what is missing, with what was given filled in', async () => {
    const seen = await harness.platform.slash(
      'stitches check',
      { shape: 'diagonal', counts: '3 5' },
      somebody(),
    );
    expect(seen.kind).toBe('modal');
    expect(value(seen, 'counts')).toBe('3 5');
    expect(chosen(seen, 'shape')).toEqual(['diagonal']);
    // Nothing of hers is saved: there is no motif to choose, and so the size must be said.
    expect(fieldsOf(seen)).toEqual(['counts', 'from_row', 'shape', 'size']);
    expect(form(seen).map(({ required }) => required)).toEqual([true, false, true, true]);
  });

  it('does not open where nothing is missing, nor where somebody is too fast', async () => {
    const as = somebody();
    expect((await harness.line('/stitches check shape:diagonal size:12 counts:"3 5"', as)).kind).toBe(
      'message',
    );
    await harness.restart({ pace: { burst: 1, perSecond: 0.001 } });
    await harness.platform.connected();
    const [first, next] = [
      await harness.platform.slash('stitches check', {}, as),
      await harness.platform.slash('stitches check', {}, as),
    ];
    expect([first.kind, next.kind]).toEqual(['modal', 'message']);
    expect(next.text).toContain('a lot at once');
    // What was typed meanwhile is refused as well, and not lost.
    const sent = await harness.platform.submitModal(
      first,
      { counts: '3 5 7', shape: 'diagonal', size: '12' },
      as,
    );
    expect(labels(sent.message)).toEqual([REFILL]);
    await harness.restart();
    await harness.platform.connected();
    expect(value(await harness.platform.press(sent.message!, REFILL, as), 'counts')).toBe('3 5 7');
  });

  it('that is refused opens again filled in, after a restart too, and its answer takes the place of the refusal', async () => {
    const as = somebody();
    const found = of('motif weigh');
    await prepare(found, as);
    const seen = await harness.platform.slash('motif weigh', {}, as);
    const typed = { name: ['moss square'], weight: '18 furlongs', side: '15.2cm', ball: '170m/100g' };
    const refused = await harness.platform.submitModal(seen, typed, as);
    expect(refused).toMatchObject({ kind: 'message', ephemeral: true });
    expect(labels(refused.message)).toEqual([REFILL]);
    await harness.restart();
    await harness.platform.connected();
    const again = await harness.platform.press(refused.message!, REFILL, as);
    expect(['weight', 'side', 'ball', 'motifs'].map((name) => value(again, name))).toEqual([
      '18 furlongs',
      '15.2cm',
      '170m/100g',
      undefined,
    ]);
    expect(chosen(again, 'name')).toEqual(['moss square']);
    const sent = await harness.platform.submitModal(again, { weight: '18 g' }, as);
    expect(sent.message).toBe(refused.message);
    expect(plain(sent.text)).toContain('one moss square weighs 18 g, measures 15.2 cm');
    expect(labels(sent.message)).not.toContain(REFILL);
    // Nobody else can see that message; a forged press of hers is refused.
    expect(harness.faults).toEqual([]);
  });

  it('counts once, however often it is sent, and once more when it is opened again', async () => {
    const as = somebody();
    await prepare(of('together handin'), as);
    const waiting = async () => {
      const state = (await harness.projects.groups.named(as.guild!.id, 'Bean row throw'))!.state;
      return state.pieces.length;
    };
    const seen = await harness.platform.slash('together handin', {}, as);
    expect(chosen(seen, 'kind')).toEqual([]);
    const values = { kind: 'furrow', side: '15.1cm' };
    const sent = await harness.platform.submitModal(seen, values, as);
    expect(plain(sent.text)).toContain('1 motif of furrow handed in');
    // The same event again, as after a broken line; then the form sent once more, because no answer was seen.
    harness.platform.driver.repeat();
    const twice = await harness.platform.submitModal(seen, values, as);
    expect(plain(twice.text)).toContain('counted already');
    await harness.restart();
    await harness.platform.connected();
    await harness.platform.submitModal(seen, values, as);
    expect(await waiting()).toBe(1);
    const next = await harness.platform.slash('together handin', {}, as);
    await harness.platform.submitModal(next, values, as);
    expect(await waiting()).toBe(2);
    expect(sent.interaction).toMatchObject({ callbacks: 1, failures: [] });
    expect(harness.faults).toEqual([]);
  });

  it('of a button is opened by the one who may press it, and answers her alone where everybody may', async () => {
    const as = somebody();
    await prepare(of('together handin'), as);
    const channel = [...harness.platform.world.channels.values()].find(({ guild }) => guild === as.guild)!;
    await harness.room.boards.settled();
    const board = [...harness.platform.world.messages.values()].findLast(
      (message) => message.channel === channel && labels(message).includes('What I hold'),
    )!;
    const rowan = { ...as, user: harness.platform.person('rowan') };
    await harness.line('/together pledge kind:trellis', rowan);
    const seen = await harness.platform.press(board, 'Hand in', rowan);
    expect(fieldsOf(seen)).toEqual(['kind', 'motifs', 'side', 'weight', 'hook']);
    const sent = await harness.platform.submitModal(
      seen,
      { kind: 'trellis', side: '15cm' },
      { ...rowan, channel },
    );
    expect(sent.ephemeral).toBe(true);
    expect(plain(sent.text)).toContain('1 motif of trellis handed in');
    const own = await harness.line('/together pledge kind:furrow', as);
    const refused = await harness.platform.press(own.message!, 'Hand in', rowan);
    expect(refused.text).toContain('answers to the one who asked');
    const hers = await harness.platform.press(own.message!, 'Hand in', as);
    expect(chosen(hers, 'kind')).toEqual(['furrow']);
  });

  it('leads on from where she is: her counts, and the weight of one', async () => {
    const as = somebody();
    await prepare(of('progress counted'), as);
    const shown = await harness.line('/progress show', as);
    const counts = await harness.platform.press(shown.message!, 'Check my counts', as);
    expect(chosen(counts, 'motif')).toEqual(['moss square']);
    const sent = await harness.platform.submitModal(counts, { counts: '9 10' }, as);
    expect(plain(sent.text)).toContain('you counted 10');
    const weight = await harness.platform.press(shown.message!, 'Weigh one', as);
    const weighed = await harness.platform.submitModal(weight, { weight: '18g' }, as);
    expect(plain(weighed.text)).toContain('weighs 18 g');
  });
});

describe('what is offered in a form', () => {
  it('is typed where there is too much of it for a menu, or it is not known in time', async () => {
    const as = somebody();
    const define = (n: number) => harness.line(`/motif define name:"motif ${n}" shape:diagonal size:12`, as);
    for (let n = 1; n <= 25; n += 1) await define(n);
    const types = async () =>
      form(await harness.platform.slash('progress counted', {}, as)).map(({ type }) => type);
    expect(await types()).toEqual([4, 3]);
    const reading = vi.spyOn(harness.projects, 'maker');
    reading.mockImplementation(async () => {
      await new Promise((done) => setTimeout(done, 2_000));
      throw new Error('too late to be asked');
    });
    const began = performance.now();
    expect(await types()).toEqual([4, 4]);
    expect(performance.now() - began).toBeLessThan(2_500);
    reading.mockRestore();
    await define(26);
    expect(await types()).toEqual([4, 4]);
    expect(harness.faults).toEqual([]);
  });
});

describe('a blanket', () => {
  it('is started with three options, and the form asks the rest', async () => {
    const declared = harness.platform.world.commands.get('')!.find(({ name }) => name === 'blanket')!;
    const start = declared.options!.find(({ name }) => name === 'start')!;
    expect(start.options!.map(({ name, required }) => [name, required])).toEqual([
      ['name', true],
      ['columns', false],
      ['rows', false],
    ]);
    const as = somebody();
    await prepare(of('blanket start'), as);
    const seen = await harness.platform.slash('blanket start', { name: 'porch', columns: 4, rows: 5 }, as);
    expect(fieldsOf(seen)).toEqual(['kinds', 'arrange', 'setting', 'border', 'joining']);
    const short = await harness.platform.slash('blanket start', { name: 'porch' }, as);
    expect(fieldsOf(short)).toEqual(['kinds', 'columns', 'rows', 'arrange', 'setting']);
    const values = { kinds: ['moss square', 'sand square'], columns: '4', rows: '5', setting: 'pinwheel' };
    const sent = await harness.platform.submitModal(short, values, as);
    expect(plain(sent.text)).toContain('porch is started: 4 across and 5 down, 20 motifs to make');
    // The rest goes on by another form, from the answer.
    const edges = await harness.platform.press(sent.message!, 'Joining and border', as);
    const changed = await harness.platform.submitModal(
      edges,
      { border: 'sc hdc', joining: ['slip-stitch'] },
      as,
    );
    expect(plain(changed.text)).toContain('porch is changed');
  });

  it('whose name has no room in the id is asked for it again, filled in', async () => {
    const as = somebody();
    await prepare(of('blanket start'), as);
    const name = 'a throw for the long bench under the window of the porch';
    const seen = await harness.platform.slash('blanket start', { name, columns: 4, rows: 5 }, as);
    expect(value(seen, 'name')).toBe(name);
    const sent = await harness.platform.submitModal(seen, { kinds: ['moss square'] }, as);
    expect(plain(sent.text)).toContain(`${name} is started`);
  });

  it('of somebody without a motif says how one is saved, and keeps what was typed', async () => {
    const as = somebody();
    const seen = await harness.platform.slash('blanket start', { name: 'porch', columns: 4, rows: 5 }, as);
    const sent = await harness.platform.submitModal(seen, { kinds: 'moss', border: 'sc hdc' }, as);
    expect(sent.text).toContain('No motif is saved yet');
    const again = await harness.platform.press(sent.message!, REFILL, as);
    expect([value(again, 'kinds'), value(again, 'border')]).toEqual(['moss', 'sc hdc']);
  });
});

describe('what is one of a few', () => {
  const menuOf = (message: Message | undefined) =>
    message!.components.flatMap(({ components = [] }) => components).find(({ type }) => type === 3)!;

  it('is chosen in a menu: another setting of a layout, once for each choice', async () => {
    const as = somebody();
    await prepare(of('blanket layout'), as);
    const seen = await harness.line('/blanket layout', as);
    const menu = menuOf(seen.message);
    expect(menu.max_values).toBe(1);
    const laid = await harness.platform.select(seen.message!, menu.custom_id!, ['pinwheel'], as);
    expect(plain(laid.text)).toContain('Setting: Pinwheel');
    expect(laid.message).toBe(seen.message);
    expect(menuOf(laid.message).options!.map(({ value: key }) => key)).not.toContain('pinwheel');
  });

  it('is chosen in a menu where a blanket has more kinds than buttons are looked over', async () => {
    const as = somebody();
    const kinds = ['ash', 'beech', 'cedar', 'elm', 'fir', 'hazel'];
    for (const kind of kinds)
      await harness.line(`/motif define name:${kind} shape:diagonal size:12 gauge:13x10`, as);
    await harness.line(`/blanket start name:wood kinds:"${kinds.join(', ')}" columns:3 rows:2`, as);
    expect(harness.answered(await harness.line('/together open blanket:wood', as))).toBe(true);
    const seen = await harness.line('/together pledge', as);
    expect(labels(seen.message)).not.toContain('One elm');
    const held = await harness.platform.select(seen.message!, menuOf(seen.message).custom_id!, ['elm'], as);
    expect(plain(held.text)).toContain('You hold 1 pledged motif of elm');
    const parcels = await harness.line('/host parcels', as);
    const asks = menuOf(parcels.message);
    expect(asks.options!.map(({ label }) => label)).toEqual(['ines: 1 pledge']);
    const told = await harness.platform.select(parcels.message!, asks.custom_id!, ['ines'], as);
    // What is said to the organiser alone does not take the place of a list that everybody reads.
    expect(told).toMatchObject({ ephemeral: true });
    expect(told.text).toContain('you asked ines');
    expect(harness.faults).toEqual([]);
  });
});

describe('in the menus of messages and people', () => {
  const channelOf = ({ guild }: As) =>
    [...harness.platform.world.channels.values()].find((channel) => channel.guild === guild)!;
  const said = (as: As, words: string) =>
    harness.platform.say(channelOf(as), harness.platform.person('fern'), words);
  const CHECK = 'Check these counts';

  it('counts are found, and it is asked what they are of', async () => {
    const as = somebody();
    await harness.line('/motif define name:"moss square" shape:diagonal size:12', as);
    const message = said(as, 'help, rows 2 to 5 came out at 5, 7 and then 8, 10?! it is 15 cm wide');
    const seen = await harness.platform.messageCommand(CHECK, message, as);
    expect([value(seen, 'counts'), value(seen, 'from_row')]).toEqual(['5 7 8 10', '2']);
    const sent = await harness.platform.submitModal(seen, { motif: ['moss square'] }, as);
    expect(sent.ephemeral).toBe(true);
    expect(plain(sent.text)).toContain('Row 4 is the first that departs, 8 stitches where 9 belong');
    const other = await harness.platform.messageCommand(CHECK, message, as);
    const shape = await harness.platform.submitModal(other, { shape: ['diagonal'], size: '14' }, as);
    expect(plain(shape.text)).toContain('Row 4 is the first that departs');
    expect(harness.faults).toEqual([]);
  });

  it('a message without counts, and a hostile one, are declined in words', async () => {
    const as = somebody();
    for (const words of ['what a lovely blanket', '', '<@123456789012345678> @everyone', '⟦n:5⟧']) {
      const seen = await harness.platform.messageCommand(CHECK, said(as, words), as);
      const { interaction } = seen;
      expect(interaction).toMatchObject({ callbacks: 1, failures: [] });
      if (seen.kind === 'message') expect(seen.text).toContain('no counts in that message');
    }
    const seen = await harness.platform.messageCommand(CHECK, said(as, '7 '.repeat(900)), as);
    expect(value(seen, 'counts')!.split(' ')).toHaveLength(60);
    expect(harness.faults).toEqual([]);
  });

  it('what somebody makes in the group of this channel is told to the asker alone, by name', async () => {
    const as = somebody();
    await prepare(of('together handin'), as);
    const rowan = harness.platform.person('rowan', { display: 'Rowan of the hill' });
    await harness.line('/together pledge kind:furrow motifs:2', { ...as, user: rowan });
    const seen = await harness.platform.userCommand('Motifs in this group', rowan, as);
    expect(seen.ephemeral).toBe(true);
    expect(plain(seen.text)).toContain('Rowan of the hill holds 2 pledges for Bean row throw');
    const moss = harness.platform.person('moss');
    const stranger = await harness.platform.userCommand('Motifs in this group', moss, as);
    expect(plain(stranger.text)).toContain('moss does not take part in Bean row throw');
    expect(stranger.text).not.toContain(moss.id);
    const robot = { ...harness.platform.person('robot'), bot: true };
    expect((await harness.platform.userCommand('Motifs in this group', robot, as)).text).toContain(
      'is a bot',
    );
    await expect(
      harness.platform.userCommand('Motifs in this group', rowan, { user: as.user }),
    ).rejects.toThrow('not offered');
    expect(harness.faults).toEqual([]);
  });
});
