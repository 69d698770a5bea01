import { REST } from 'discord.js';
import nock from 'nock';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { registry } from '../../../commands/index.ts';
import { declaration } from '../../../src/rooms/discord/declare.ts';
import { inTongues } from '../../../src/rooms/discord/localise.ts';
import { difference, isNothing, register } from '../../../src/rooms/discord/register.ts';

const APP = '100000000000000001';
const PATH = `/api/v10/applications/${APP}/commands`;
const declared = registry.commands.map((one) => inTongues(declaration(one)));

/** What the platform sends back: more fields, other defaults, another order of what has none. */
const registered = () =>
  declared.map((each, index) => ({
    ...structuredClone(each),
    id: String(200000000000000000n + BigInt(index)),
    application_id: APP,
    version: '1',
    nsfw: false,
    default_member_permissions: null,
    dm_permission: true,
    contexts: [...(each.contexts ?? [])].reverse(),
  }));

describe('registration', () => {
  const rest = new REST({ retries: 0 }).setToken('not-a-token');
  const server = () => nock('https://discord.com');
  beforeAll(() => nock.disableNetConnect());
  afterEach(() => {
    expect(nock.pendingMocks()).toEqual([]);
    nock.cleanAll();
  });
  afterAll(() => {
    nock.enableNetConnect();
    nock.restore();
  });

  it('puts everything where there is nothing', async () => {
    let body: unknown;
    server().get(PATH).query({ with_localizations: 'true' }).reply(200, []);
    server()
      .put(PATH, (given) => {
        body = given;
        return true;
      })
      .reply(200, []);
    const changes = await register(rest, APP, declared);
    expect(changes.added).toEqual(registry.commands.map(({ name }) => name));
    expect(body).toEqual(JSON.parse(JSON.stringify(declared)));
  });

  it('puts nothing where all is as declared', async () => {
    server().get(PATH).query({ with_localizations: 'true' }).reply(200, registered());
    expect(isNothing(await register(rest, APP, declared))).toBe(true);
  });

  it('puts when one description changed', async () => {
    const there = registered();
    there[0]!.options![0]!.description = 'Something else';
    server().get(PATH).query({ with_localizations: 'true' }).reply(200, there);
    server().put(PATH).reply(200, []);
    expect(await register(rest, APP, declared)).toEqual({
      added: [],
      changed: [there[0]!.name],
      removed: [],
    });
  });

  it('puts when a choice is called otherwise in one language', async () => {
    const there = JSON.parse(
      JSON.stringify(registered()).replace('"de":"nur ich"', '"de":"bloß ich"'),
    ) as ReturnType<typeof registered>;
    server().get(PATH).query({ with_localizations: 'true' }).reply(200, there);
    server().put(PATH).reply(200, []);
    expect((await register(rest, APP, declared)).changed).toHaveLength(1);
  });

  it('rejects when the platform is in trouble, for whoever asked to try again', async () => {
    server().get(PATH).query({ with_localizations: 'true' }).reply(503, {});
    await expect(register(rest, APP, declared)).rejects.toMatchObject({ status: 503 });
  });
});

describe('what registering would change', () => {
  const first = declared[0]!;
  const with_ = (change: object) => [{ ...registered()[0]!, ...change }];
  it.each([
    ['a new command', [], { added: [first.name], changed: [], removed: [] }],
    ['an old one', [...with_({}), { name: 'gone', type: 1 }], { added: [], changed: [], removed: ['gone'] }],
    ['a context', with_({ contexts: [0] }), { added: [], changed: [first.name], removed: [] }],
    ['an installation', with_({ integration_types: [0] }), { added: [], changed: [first.name], removed: [] }],
    ['fewer options', with_({ options: [] }), { added: [], changed: [first.name], removed: [] }],
    [
      'a permission',
      with_({ default_member_permissions: '32' }),
      { added: [], changed: [first.name], removed: [] },
    ],
    [
      'a name in another language',
      with_({ name_localizations: { ...first.name_localizations, de: 'anders' } }),
      { added: [], changed: [first.name], removed: [] },
    ],
    [
      'a language fewer',
      with_({ description_localizations: null }),
      { added: [], changed: [first.name], removed: [] },
    ],
    [
      'nothing but the order of languages',
      with_({
        name_localizations: Object.fromEntries(Object.entries(first.name_localizations ?? {}).reverse()),
      }),
      { added: [], changed: [], removed: [] },
    ],
    ['nothing', with_({ id: '9', version: '77' }), { added: [], changed: [], removed: [] }],
  ])('%s', (_, there, expected) => {
    expect(difference(there, [first])).toEqual(expected);
  });
});
