import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RenderedAnswer } from '../../../src/chat/answer.ts';
import { coded, meantBy, readButton, writeButton } from '../../../src/rooms/discord/buttons.ts';
import { keptIn, render, type Drawn, type Setting } from '../../../src/rooms/discord/render.ts';
import { escaped, fit } from '../../../src/rooms/discord/text.ts';
import { checkMessage } from './stand-in/messages.ts';

const ROWAN = '123456789012345678';
const setting: Setting = {
  again: { question: 'stitches row', options: { size: '12' } },
  asker: ROWAN,
  serial: 'abc',
  open: false,
  sharable: false,
};

const nothing: RenderedAnswer = {
  headline: 'Row 9 has 19 stitches.',
  figures: [],
  lines: [],
  working: [],
  assumptions: [],
  cautions: [],
  files: [],
  actions: [],
  private: false,
};
const step = (label: string, shown: string, source: string) => ({
  label,
  shown,
  general: 'row',
  worked: shown,
  source,
  formula: label,
  with: { row: 1 },
  units: { row: '' as const },
  result: 1,
  unit: '' as const,
});

/** Texts that people could type, and worse. */
const nasty = fc.oneof(
  { weight: 3, arbitrary: fc.string({ unit: 'grapheme', maxLength: 60 }) },
  { weight: 2, arbitrary: fc.string({ unit: 'binary', maxLength: 400 }) },
  fc.string({
    unit: fc.constantFrom('*', '_', '\\', '`', '|', '\n', '> ', '# ', '- ', '1. ', 'a'),
    maxLength: 1500,
  }),
  fc.integer({ min: 100, max: 5000 }).map((length) => 'stitch '.repeat(length / 7)),
);
const options = (value: fc.Arbitrary<string>) =>
  fc.dictionary(fc.constantFrom('name', 'kind', 'motifs', 'note'), value, { maxKeys: 3 });
/** A button with another question, as a command writes it. */
const act = (label: string, question: string, options: Record<string, string>) => ({
  label,
  question,
  options,
});
const many = (most: number) => fc.array(nasty, { maxLength: most });
const actions = fc.array(
  fc
    .tuple(nasty, options(fc.string({ minLength: 1, unit: 'grapheme' })), fc.boolean())
    .map(([label, values, forAnyone]) => ({ ...act(label, 'x', values), forAnyone })),
  { maxLength: 30 },
);
const anything: fc.Arbitrary<RenderedAnswer> = fc.record({
  headline: nasty,
  figures: fc.array(
    fc.record({
      key: fc.constant('k'),
      label: nasty,
      text: nasty,
      value: fc.double(),
      unit: fc.constant('' as const),
    }),
    { maxLength: 30 },
  ),
  lines: many(30),
  details: many(12),
  working: fc.array(
    fc.tuple(nasty, nasty, nasty).map((texts) => step(...texts)),
    { maxLength: 20 },
  ),
  assumptions: many(10),
  cautions: many(10),
  files: fc.constant([]),
  actions,
  private: fc.boolean(),
});

const sends = (drawn: Drawn) => () =>
  checkMessage(
    {
      content: drawn.content,
      embeds: drawn.embeds,
      components: drawn.components,
      allowed_mentions: { parse: [] },
    },
    drawn.texts.map(({ name, content }, index) => ({
      index: String(index),
      filename: name,
      contentType: 'text/plain',
      bytes: Buffer.from(content),
    })),
  );

describe('details', () => {
  const detailed = { ...nothing, lines: ['moss: 760 m.'], details: ['motifs 529 m, seams 32 m.'] };

  it('unfold below what is needed first, and are said at once where nothing unfolds', () => {
    const folded = render(detailed, setting);
    expect(folded.content).toContain('760 m');
    expect(folded.content).not.toContain('529 m');
    expect(JSON.stringify(folded.components)).toContain('Show');
    const open = render(detailed, { ...setting, open: true });
    expect(open.content).not.toContain('529 m');
    expect(open.embeds[0]?.description).toContain('529 m');
    expect(render(detailed, { ...setting, again: undefined }).content).toContain('529 m');
  });
});

describe('a drawn answer', () => {
  it('is within every limit, whatever the answer', () => {
    fc.assert(
      fc.property(
        anything,
        fc.record({
          again: fc.option(
            options(nasty).map((typed) => ({ question: 'x', options: typed })),
            { nil: undefined },
          ),
          asker: fc.constantFrom(ROWAN, undefined),
          serial: fc.constant('bysrfclt5cm1'),
          open: fc.boolean(),
          sharable: fc.boolean(),
          notes: many(3),
        }),
        (shown, how) => {
          const drawn = render(shown, how);
          expect(sends(drawn)).not.toThrow();
          expect(drawn.texts.length).toBeLessThanOrEqual(3);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('says everything somewhere: in the message or in its files', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 300 }), (count, length) => {
        const tell = (what: string) =>
          Array.from({ length: count }, (_, index) => `${what}${index}q ${'x'.repeat(length)}`);
        const drawn = render(
          {
            ...nothing,
            lines: tell('line'),
            cautions: tell('care'),
            assumptions: tell('taken'),
            working: tell('step').map((text) => step(text, '1 = 1', 'derived')),
            actions: tell('next').map((label, index) =>
              act(label, 'row', { note: `${index} ${'y'.repeat(length)}` }),
            ),
          },
          { ...setting, open: true },
        );
        const said = JSON.stringify(drawn);
        for (const what of ['line', 'care', 'taken', 'step', 'next'])
          for (let index = 0; index < count; index += 1) expect(said).toContain(`${what}${index}q`);
      }),
      { numRuns: 60 },
    );
  });

  it('shows the headline, the instructions and the cautions in the text itself', () => {
    const { content } = render({ ...nothing, lines: ['Work 8.'], cautions: ['Keep it cool.'] }, setting);
    expect(content).toBe('**Row 9 has 19 stitches.**\nWork 8.\nTake care: Keep it cool.');
  });

  it('folds the working, shows what was asked, and its buttons mean that question', () => {
    const shown = { ...nothing, working: [step('All', '2 × 3 = 6', 'derived')] };
    const folded = render(shown, setting);
    const open = render(shown, { ...setting, open: true });
    expect(JSON.stringify(folded.embeds)).not.toContain('2 × 3');
    expect(JSON.stringify(open.embeds)).toContain('2 × 3');
    expect(open.embeds.at(-1)?.footer?.text).toBe('/stitches row size:12');
    expect(open.content).toBe(folded.content);
    for (const { embeds, components } of [folded, open]) {
      const button = readButton(components[0]!.components[0]!.custom_id)!;
      expect(meantBy(button, keptIn(embeds))).toEqual(setting.again);
    }
    expect(folded.components[0]?.components[0]?.label).toBe('Show the working');
    expect(open.components[0]?.components[0]?.label).toBe('Fold it up');
  });

  it('is short at first: the headline, three lines, what matters of the rest; and whole when it is unfolded', () => {
    const figures = [
      { key: 'balls', label: 'Balls', value: 16, unit: '' as const, text: '16' },
      { key: 'yarn', label: 'Yarn', value: 2693, unit: 'm' as const, text: '2693 m' },
    ];
    const lines = [...'abcdefgh'].map((letter) => `Line ${letter}: ${'stitch '.repeat(12)}`);
    const shown = { ...nothing, headline: 'It takes 16 balls.', figures, lines, assumptions: ['10 % more.'] };
    const short = render(shown, setting);
    expect(short.embeds).toEqual([]);
    expect(short.content.split('\n')).toEqual([
      '**It takes 16 balls.**',
      ...lines.slice(0, 3).map((line) => line.trim()),
      '-# Yarn: **2693 m**',
      '-# 10 % more.',
    ]);
    expect(short.components[0]?.components.map(({ label }) => label)).toEqual(['Show all of it']);
    const all = JSON.stringify(render(shown, { ...setting, open: true }));
    for (const line of lines) expect(all).toContain(line.trim());
    expect(all).toContain('Balls: **16**');
  });

  it('gathers what is worked by one formula again and again under it', () => {
    const working = ['moss', 'sand', 'plum'].map((colour, index) => ({
      ...step(colour, `yarn × 2 = ${index} × 2 = ${2 * index}`, 'derived'),
      formula: 'yarn * 2',
      general: 'yarn × 2',
      worked: `${index} × 2 = ${2 * index}`,
    }));
    const { embeds } = render({ ...nothing, working }, { ...setting, open: true });
    expect(embeds[0]?.description).toBe(
      '**yarn × 2**\nmoss: 0 × 2 = 0\nsand: 1 × 2 = 2\nplum: 2 × 2 = 4\n-# derived',
    );
  });

  it('is unfolded from what is remembered where it cannot be asked again', () => {
    const shown = { ...nothing, working: [step('All', '2 × 3 = 6', 'derived')] };
    const drawn = render(shown, { ...setting, again: undefined, kept: '@abc' });
    expect(drawn.embeds).toEqual([]);
    expect(readButton(drawn.components[0]!.components[0]!.custom_id)).toMatchObject({
      does: 'working',
      payload: '@abc',
    });
  });

  it('shows the working at once where nothing could unfold it', () => {
    const drawn = render(
      { ...nothing, working: [step('All', '2 × 3 = 6', 'derived')] },
      { ...setting, again: undefined },
    );
    expect(JSON.stringify(drawn.embeds)).toContain('2 × 3');
    expect(drawn.components).toEqual([]);
  });

  it('attaches a working that is too long when it is unfolded', () => {
    const working = Array.from({ length: 100 }, (_, index) =>
      step(`Step ${index}`, '1 + 1 = 2', 'derived: counted on one’s fingers, and again'),
    );
    expect(render({ ...nothing, working }, setting).texts).toEqual([]);
    const drawn = render({ ...nothing, working }, { ...setting, open: true });
    expect(drawn.texts.map(({ name }) => name)).toEqual(['working.txt']);
    expect(drawn.texts[0]?.content).toContain('Step 99: 1 + 1 = 2');
  });

  it('means with every button what the question’s words and values are, long or short, whatever they are', () => {
    const value = fc.oneof(
      fc.string({ unit: 'binary', minLength: 1, maxLength: 120 }),
      nasty.map((text) => text.slice(0, 900)).filter((text) => text !== ''),
      fc.constantFrom(
        'G” motifs:50 kind:“furrow',
        '; name x',
        '~003b',
        ' ▸ ',
        '#0',
        '/host close',
        '\n/x',
        ' ',
      ),
    );
    const asked = fc.record({ question: fc.constantFrom('x', 'together pledge'), options: options(value) });
    fc.assert(
      fc.property(fc.array(asked, { maxLength: 8 }), fc.option(asked, { nil: undefined }), (all, again) => {
        const drawn = render(
          {
            ...nothing,
            working: [step('All', '2 × 3 = 6', 'derived')],
            actions: all.map(({ question, options }) => act('/go ▸', question, options)),
          },
          { ...setting, again, sharable: true },
        );
        const kept = keptIn(drawn.embeds);
        const pressed = drawn.components.flatMap(({ components }) =>
          components.map(({ custom_id, label }) => {
            const button = readButton(custom_id)!;
            return { label, does: button.does, payload: button.payload, means: meantBy(button, kept) };
          }),
        );
        const acting = pressed.filter(({ does }) => does === 'ask').map(({ means }) => means);
        const unlike = all.filter(
          (one, index) => all.findIndex((other) => JSON.stringify(other) === JSON.stringify(one)) === index,
        );
        // What has no room even in the message is written down; what has a button means exactly that.
        const written = drawn.texts.some(({ name }) => name === 'next.txt');
        if (!written) expect(acting).toEqual(unlike);
        for (const means of acting) expect(unlike).toContainEqual(means);
        for (const { does, payload, means } of pressed)
          if (does !== 'ask' && payload !== '') expect(means).toEqual(again);
      }),
      { numRuns: 500 },
    );
  });
});

describe('a button', () => {
  it('reads back what it was written with, and nothing else', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('working', 'fold', 'everyone', 'ask'),
        fc.bigInt({ min: 0n, max: 2n ** 63n }),
        fc.string({ maxLength: 60 }),
        (does, id, payload) => {
          const written = { does, owner: coded(String(id)), serial: 'a1', payload } as const;
          expect(readButton(writeButton(written)!)).toEqual(written);
        },
      ),
    );
  });

  it.each([
    '',
    'w',
    'w.a',
    'x.a.b.c',
    'w.A!.b.c',
    '__proto__',
    'constructor.a.b.c',
    'w.aaaaaaaaaaaaaaaaaaaaaaaaaa.b.',
  ])('that this room did not write is none: %j', (id) => expect(readButton(id)).toBeUndefined());

  it('does not take an id that is none', () => {
    expect(() => coded('../../etc')).toThrow();
  });
});

describe('what people typed', () => {
  /** What the platform would format, link or mention: nothing of it may be left without a backslash before it. */
  const bare = (text: string) => text.replace(/\\[^0-9A-Za-z\s]/g, '·');
  it.each([
    ['bold', '**loud** __under__ ~~gone~~ ||hidden||'],
    ['code', '```js\nx``` `y`'],
    ['a masked link', '[click](https://evil.example/x)'],
    ['a bare link', 'https://evil.example and http://x.example'],
    ['an invitation', 'discord.gg/abc and discord.com/invite/x'],
    ['a mention', '<@123456789012345678> <@&1> <#1> @everyone @here'],
    ['an emoji, a time, a command', '<:a:123456789012345678> <t:1> </stitches row:1>'],
    ['a heading', '# Big\n## Less\n-# small'],
    ['a quote and lists', '> said\n>>> all\n- one\n+ two\n1. three\n2) four'],
  ])('stays text: %s', (_, text) => {
    const left = bare(escaped(text));
    expect(left).not.toMatch(/[*_~`|[\]<@]/);
    expect(left).not.toMatch(/https?:\/\//);
    expect(left).not.toMatch(/discord\.(gg|com)/);
    expect(left).not.toMatch(/^\s*([>#+-]|\d+[.)]\s)/m);
    // Read as the platform reads it, the escapes gone, it is what was typed.
    expect(escaped(text).replace(/\\([^0-9A-Za-z\s])/g, '$1')).toBe(text);
  });

  it('cannot turn the sentence around or hide in it', () => {
    expect(escaped('a\u202eb\u200bc\u0000')).toBe('abc ');
  });

  it('is never cut in the middle of an escape or a character', () => {
    fc.assert(
      fc.property(nasty, fc.integer({ min: 4, max: 100 }), (text, most) => {
        const cut = fit(text, most, escaped);
        expect(cut.length).toBeLessThanOrEqual(most);
        expect(/(^|[^\\])(\\\\)*\\$/.test(cut)).toBe(false);
        expect(cut).not.toMatch(/\p{Cs}/u);
      }),
    );
  });
});
