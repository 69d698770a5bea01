/** Every question of every command through the real client, everywhere it can be asked; declarations say what to ask. */
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { registry } from '../../../commands/index.ts';
import { menusOf } from '../../../src/rooms/discord/context-menu.ts';
import { WORK_THIS_OUT } from '../../../src/rooms/discord/declare.ts';
import { NEWS } from '../../../src/rooms/discord/telling.ts';
import { QUESTION } from '../../../src/core/base/problem.ts';
import { readLine } from '../../../src/chat/line.ts';
import type { Route } from '../../../src/chat/registry.ts';
import { asText, asValue, fieldsOf, longest, mentions, openHarness, type Harness } from './harness.ts';
import {
  CannotAsk,
  MANAGER,
  MEMBER,
  type As,
  type Given,
  type Outcome,
  type Person,
} from './stand-in/index.ts';
import { metaOf } from '../../../src/chat/options.ts';

let harness: Harness;
beforeAll(async () => {
  harness = await openHarness();
});
afterAll(() => harness.close());

/** Where questions are asked; each sweep of a question gets a place of its own, so that none finds another's traces. */
const PLACES = {
  'in a server': ({ platform }: Harness) => ({ guild: platform.guild('Allotment'), permissions: MANAGER }),
  'in a direct message': () => ({}),
  'by her own installation in a server without the bot': ({ platform }: Harness) => ({
    guild: platform.guild('Elsewhere', { withBot: false }),
    permissions: MEMBER,
  }),
  'by her own installation between people': ({ platform }: Harness) => ({
    channel: platform.privateChannel(),
  }),
} satisfies Record<string, (harness: Harness) => Omit<As, 'user'>>;

interface Cast {
  /** The person behind a typed line's name; `me` where it has none. */
  readonly as: (name: string) => As;
}

function cast(place: Omit<As, 'user'>): Cast {
  const people = new Map<string, Person>();
  return {
    as: (name) => {
      const user = people.get(name) ?? harness.platform.person(name);
      people.set(name, user);
      return { user, ...place };
    },
  };
}

const SPEAKER = /^\s*([^\s:/"“][^:/"“]{0,39}):\s*(?=\/)/u;
const say = (line: string, { as }: Cast) => {
  const name = SPEAKER.exec(line)?.[1];
  return harness.line(line.replace(SPEAKER, ''), as(name ?? 'me'), (called) => as(called).user);
};

async function prepare({ question }: Route, people: Cast): Promise<void> {
  for (const line of question.before ?? []) sound(await say(line, people));
}

/** Whatever is asked: one answer in time, taken at once, nothing refused by the platform, no fault of ours. */
function sound(seen: Outcome): Outcome {
  const { interaction, text } = seen;
  expect(interaction.failures).toEqual([]);
  expect(interaction.callbacks).toBe(1);
  expect(seen.kind).toBe('message');
  expect(text).not.toMatch(/Something went wrong|undefined|NaN|\[object|[⟦⟧]/);
  expect(text.trim()).not.toBe('');
  expect(seen.firstMs).toBeLessThan(2_900);
  return seen;
}

/** A refusal is for the asker alone, as text alone; what was typed into a form can be changed. */
const looksRefused = ({ message, ephemeral }: Outcome) => {
  const labels =
    message?.components.flatMap(({ components = [] }) => components.map(({ label }) => label)) ?? [];
  const refills = labels.length === 1 && labels[0] === 'Change what I typed';
  return ephemeral && (refills || (message?.embeds.length === 0 && labels.length === 0));
};

/** Sends a form with the longest that each of its fields takes, every choice chosen where several may be. */
function longestIn(seen: Outcome, found: Route, as: As): Promise<Outcome> {
  const fields = new Map(
    (seen.interaction.modal?.components ?? []).map(({ component }) => [component?.custom_id, component]),
  );
  const values = fieldsOf(seen).map((name) => {
    const { type, options = [], max_values: most = 1, max_length: room } = fields.get(name)!;
    return [
      name,
      type === 3
        ? options.slice(0, most).map(({ value }) => value)
        : asText(longest(found, name)).slice(0, room),
    ];
  });
  return harness.platform.submitModal(seen, Object.fromEntries(values) as Record<string, string>, as);
}

/** As many at a time as still leave each its three seconds on a machine that is busy with other things. */
const AT_ONCE = 4;
/** ms for all questions together; each one's time is looked at by itself. */
const SWEEP_MS = 180_000;
vi.setConfig({ testTimeout: SWEEP_MS });

/** Several at a time, as a server asks. */
async function sweep(work: (found: Route) => Promise<void>): Promise<void> {
  const wrong: string[] = [];
  const waiting = [...registry.routes];
  const one = async () => {
    for (let found = waiting.shift(); found; found = waiting.shift()) {
      try {
        await work(found);
      } catch (error) {
        wrong.push(`/${found.path}: ${error instanceof Error ? error.message : String(error)}`);
      }
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, one));
  expect(wrong).toEqual([]);
}

describe.each(Object.entries(PLACES))('%s, every question', (where, place) => {
  it('answers its example', async () => {
    await sweep(async (found) => {
      const people = cast(place(harness));
      await prepare(found, people);
      const seen = sound(await say(`/${found.path} ${found.question.example}`, people));
      // Some questions belong to a server, and say so elsewhere; in a direct message nobody else takes part.
      const lonely =
        where === 'in a direct message' && (found.question.before ?? []).some((line) => SPEAKER.test(line));
      if (where === 'in a server' || (!lonely && !/server/.test(seen.text)))
        expect(harness.answered(seen), seen.text).toBe(true);
      if (found.question.private) expect(seen.ephemeral).toBe(true);
    });
    expect(harness.faults).toEqual([]);
  });

  it('refuses in words that only the asker sees', async () => {
    await sweep(async (found) => {
      const { line, option } = found.question.refused;
      const people = cast(place(harness));
      await prepare(found, people);
      let seen: Outcome;
      try {
        seen = sound(await say(`/${found.path} ${line}`, people));
      } catch (error) {
        // What the form itself does not take never reaches the bot.
        if (error instanceof CannotAsk) return;
        throw error;
      }
      expect(harness.answered(seen), seen.text).toBe(false);
      expect(looksRefused(seen), seen.text).toBe(true);
      // What is wrong with the whole question names no option.
      if (where === 'in a server' && option !== undefined && option !== QUESTION)
        expect(seen.text.replaceAll('\\', '')).toContain(option);
    });
    expect(harness.faults).toEqual([]);
  });
});

describe('in a server, every question', () => {
  it('answers a stranger or refuses politely, whatever others have saved', async () => {
    await sweep(async (found) => {
      const guild = harness.platform.guild('Allotment');
      await prepare(found, cast({ guild, permissions: MANAGER }));
      const stranger = cast({ guild, permissions: MEMBER });
      sound(await say(`/${found.path} ${found.question.example}`, stranger));
    });
    expect(harness.faults).toEqual([]);
  });

  it('answers with the longest values that its form takes', async () => {
    await sweep(async (found) => {
      const people = cast(PLACES['in a server'](harness));
      await prepare(found, people);
      const { path, question } = found;
      const { options: typed } = readLine(`/${path} ${question.example}`);
      const isPerson = (name: string) => metaOf(question.options[name]!).kind === 'person';
      const longName = harness.platform.person('w'.repeat(32));
      const { begins } = question.form ?? {};
      const names = Object.keys(question.options).filter((name) => begins?.includes(name) ?? true);
      const example = Object.fromEntries(
        Object.entries(typed)
          .filter(([name]) => names.includes(name))
          .map(([name, text]) => [
            name,
            isPerson(name) ? people.as(text).user : asValue(metaOf(question.options[name]!), text),
          ]),
      );
      const all = Object.fromEntries(
        names.map((name) => [name, isPerson(name) ? longName : longest(found, name)]),
      );
      const asked: Record<string, Given>[] = [
        all,
        ...names.map((name) => ({ ...example, [name]: all[name]! })),
      ];
      for (const options of asked) {
        const seen = await harness.platform.slash(path, options, people.as('me'));
        sound(seen.kind === 'modal' ? await longestIn(seen, found, people.as('me')) : seen);
      }
    });
    expect(harness.faults).toEqual([]);
  });

  it('offers while typing, in time, whatever is typed', async () => {
    await sweep(async (found) => {
      const people = cast(PLACES['in a server'](harness));
      await prepare(found, people);
      for (const [name, schema] of Object.entries(found.question.options)) {
        const { kind, suggest, choices } = metaOf(schema);
        const { begins } = found.question.form ?? {};
        // People are chosen as the platform does it; what the form asks is chosen there.
        if (!suggest || choices || kind === 'person' || begins?.includes(name) === false) continue;
        for (const typed of ['', 'a', '1', 'ZZZZ', '@everyone', 'x'.repeat(100)]) {
          const seen = await harness.platform.autocomplete(
            found.path,
            { [name]: typed },
            name,
            people.as('me'),
          );
          expect(seen.kind).toBe('choices');
          expect(seen.interaction.failures).toEqual([]);
          expect(seen.firstMs).toBeLessThan(2_500);
        }
      }
    });
    expect(harness.faults).toEqual([]);
  });

  it('has buttons that answer, once each', async () => {
    await sweep(async (found) => {
      const people = cast(PLACES['in a server'](harness));
      await prepare(found, people);
      const seen = sound(await say(`/${found.path} ${found.question.example}`, people));
      const labels = seen.message!.components.flatMap(({ components = [] }) =>
        components.flatMap(({ custom_id }) => (custom_id === undefined ? [] : [custom_id])),
      );
      for (const id of labels) {
        // Pressing one may redraw the others.
        try {
          const pressed = await harness.platform.press(seen.message!, id, people.as('me'));
          expect(pressed.interaction.failures).toEqual([]);
          expect(pressed.interaction.callbacks).toBe(1);
          expect(pressed.kind).not.toBe('silence');
          if (pressed.kind === 'modal')
            sound(await harness.platform.submitModal(pressed, {}, people.as('me')));
        } catch (error) {
          if (!(error instanceof CannotAsk)) throw error;
        }
      }
    });
    expect(harness.faults).toEqual([]);
  });
});

describe('over everything that was sent', () => {
  it('nothing mentions anybody, nothing was refused, and the log has neither tokens nor what was said', async () => {
    const { world, token } = harness.platform;
    expect(world.messages.size).toBeGreaterThan(registry.routes.length);
    // But for what somebody is told: it mentions her alone, and says nothing of what it is about.
    const told = mentions(world.messages.values());
    for (const { content, allowedMentions } of told) {
      const [only, ...more] = allowedMentions?.users ?? [];
      expect(Object.values(NEWS).map((news) => `<@${only ?? ''}> ${news}`)).toContain(content);
      expect(more).toEqual([]);
    }
    const people = told.map(({ allowedMentions }) => allowedMentions?.users?.[0]);
    expect(new Set(people).size).toBe(told.length);
    expect(world.complaints).toEqual([]);
    // The client counts its 50 requests a second from another moment than the platform, so that the end of one of its
    // seconds and the beginning of the next may lie in one of the platform's: told to wait, it asks again.
    const refused = () =>
      world.calls.filter(({ status, method, path }, index) => {
        const again = world.calls
          .slice(index)
          .some((call) => call.method === method && call.path === path && call.status < 400);
        return status >= 400 && !(status === 429 && again);
      });
    await expect.poll(refused, { timeout: 5_000 }).toEqual([]);
    const log = JSON.stringify(harness.log);
    expect(log).not.toContain(token);
    for (const secret of world.tokens.keys()) expect(log.includes(secret)).toBe(false);
    expect(harness.log.filter(({ level }) => level !== 'info')).toEqual([]);
  });

  it('registers every question once, and not again when nothing changed', async () => {
    const { world } = harness.platform;
    const paths = world.commands
      .get('')!
      .flatMap(({ name, options = [] }) =>
        options.some(({ type }) => type === 1) ? options.map((option) => `${name} ${option.name}`) : [name],
      );
    expect(paths.sort()).toEqual(
      [
        ...registry.routes.map(({ path }) => path),
        WORK_THIS_OUT.name,
        ...menusOf(registry).map(({ name }) => name),
      ].sort(),
    );
    const { registrations } = world;
    await harness.restart();
    expect(world.registrations).toBe(registrations);
  });
});
