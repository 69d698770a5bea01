/** Names and descriptions in other languages: complete, within what the platform documents, and registered once. */
import { describe, expect, it } from 'vitest';
import { registry } from '../../../commands/index.ts';
import { metaOf } from '../../../src/chat/options.ts';
import { TONGUES, type Part, type Tongue } from '../../../src/chat/tongues/index.ts';
import { menusOf } from '../../../src/rooms/discord/context-menu.ts';
import { declaration, declaredSize, WORK_THIS_OUT } from '../../../src/rooms/discord/declare.ts';
import { inTongues, missingIn } from '../../../src/rooms/discord/localise.ts';
import { openHarness } from './harness.ts';
import { checkCommand, checkCommands, sizeOf } from './stand-in/commands.ts';
import { LIMITS } from './stand-in/index.ts';

const declared = [...registry.commands.map(declaration), WORK_THIS_OUT, ...menusOf(registry)];
const named = TONGUES.map((tongue) => [tongue.locales.join(), tongue] as const);
/** What forms ask that no command declares, as it is in all languages too. */
const inForms: { part: Part; text: string }[] = registry.routes.flatMap(({ question: { form, options } }) =>
  (form?.asks ?? []).flatMap((name) => {
    const { says, choices = [] } = metaOf(options[name]!);
    return [
      { part: 'options' as const, text: name },
      { part: 'says' as const, text: says },
      ...choices.map(({ label, value }) => ({ part: 'choices' as const, text: label ?? value })),
    ];
  }),
);
const PARTS = ['commands', 'questions', 'options', 'menus', 'choices', 'says'] as const;

describe.each(named)('%s', (_, tongue) => {
  it.each(declared)('has words for all that $name says', (command) => {
    expect(missingIn(tongue, command)).toEqual([]);
  });

  it('has no words for what nobody says', () => {
    // Without any word of its own a language misses all that is said.
    const none: Tongue = {
      locales: [],
      commands: {},
      questions: {},
      options: {},
      menus: {},
      choices: {},
      forms: {},
      says: {},
    };
    const said = new Set(
      [...declared.flatMap((command) => missingIn(none, command)), ...inForms].map(
        ({ part, text }) => `${part}: ${text}`,
      ),
    );
    const held = PARTS.flatMap((part) => Object.keys(tongue[part]).map((text) => `${part}: ${text}`));
    expect(held.filter((text) => !said.has(text))).toEqual([]);
  });

  it('has words for all that forms ask, and for their titles', () => {
    expect(inForms.filter(({ part, text }) => !Object.hasOwn(tongue[part], text))).toEqual([]);
    const titles = registry.routes.flatMap(({ question }) => question.form?.title ?? []);
    expect(Object.keys(tongue.forms).sort()).toEqual([...new Set(titles), 'like'].sort());
    for (const title of Object.values(tongue.forms)) expect([...title].length).toBeLessThanOrEqual(45);
  });

  it('says nothing empty, and no description in English', () => {
    for (const part of [...PARTS, 'forms'] as const)
      for (const [text, word] of Object.entries(tongue[part])) expect(word.trim(), text).not.toBe('');
    expect(Object.entries(tongue.says).filter(([text, word]) => text === word)).toEqual([]);
  });
});

describe('what is registered', () => {
  it('is taken by the platform in every language: names of its pattern, none twice side by side', () => {
    const checked = checkCommands(declared.map((one) => inTongues(one)));
    expect(checked).toHaveLength(declared.length);
  });

  it.each(declared)('of $name is within what a command may say, the longest language counting', (command) => {
    const whole = inTongues(command);
    expect(declaredSize(whole)).toBe(sizeOf(whole));
    expect(declaredSize(whole)).toBeLessThanOrEqual(LIMITS.command);
  });

  const [de] = TONGUES;
  const spoilt = (change: Partial<Tongue>) => [{ ...de!, ...change }];
  const stitches = declared.find(({ name }) => name === 'stitches')!;

  it('names what a language lacks, and is English there', () => {
    const questions = Object.fromEntries(Object.entries(de!.questions).filter(([name]) => name !== 'row'));
    const [lacking] = spoilt({ questions });
    expect(missingIn(lacking!, stitches)).toEqual([{ part: 'questions', text: 'row' }]);
    const [row] = (inTongues(stitches, [lacking!]) as { options: object[] }).options;
    expect(row).toMatchObject({
      name: 'row',
      description_localizations: { de: expect.any(String) as string },
    });
    expect(row).not.toHaveProperty('name_localizations');
  });

  it.each([
    ['two options of one name', spoilt({ options: { ...de!.options, size: 'form', shape: 'form' } })],
    [
      'two questions of one name',
      spoilt({ questions: { ...de!.questions, row: 'rapport', repeat: 'rapport' } }),
    ],
    ['a capital letter', spoilt({ commands: { ...de!.commands, stitches: 'Maschen' } })],
    ['a space', spoilt({ options: { ...de!.options, size: 'wie groß' } })],
    ['a language that there is not', spoilt({ locales: ['de-AT'] })],
    ['a description too long', spoilt({ says: { ...de!.says, 'The stitch': 'Masche '.repeat(15) } })],
  ])('is refused with %s', (_, tongues) => {
    expect(() => checkCommand(inTongues(stitches, tongues))).toThrow();
  });

  it('is refused here already where a language makes it too long', () => {
    const long = Object.fromEntries(Object.keys(de!.says).map((text) => [text, 'x'.repeat(100)]));
    const blanket = declared.find(({ name }) => name === 'blanket')!;
    expect(() => inTongues(blanket, spoilt({ says: long }))).toThrow(/longest languages/);
  });

  it('is told to the platform once, and not again by a restart', async () => {
    const harness = await openHarness();
    const { world } = harness.platform;
    const known = world.commands.get('')?.find(({ name }) => name === 'stitches');
    expect(known?.name_localizations).toMatchObject({ de: 'maschen', fr: 'mailles' });
    expect(world.registrations).toBe(1);
    await harness.restart();
    expect(world.registrations).toBe(1);
    await harness.close();
  });
});
