/** The stand-in itself: every limit refuses what is over it and takes what is just within, and the client is served. */
import { Client, Events, MessageFlags, type Interaction as ClientInteraction } from 'discord.js';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { checkCommands } from './stand-in/commands.ts';
import { CannotAsk, LIMITS, MANAGER, openStandIn, type StandIn } from './stand-in/index.ts';
import { checkModal } from './stand-in/messages.ts';

type Json = Record<string, any>; // eslint-disable-line @typescript-eslint/no-explicit-any

let now = Date.now();
let platform: StandIn;
let channel: string;
/** Requests in a second are limited too: each of these tests has a second of its own. */
const later = (ms = 1_000) => {
  now += ms;
};

beforeAll(async () => {
  platform = await openStandIn({ now: () => now });
  const guild = platform.guild('Allotment');
  channel = [...platform.world.channels.values()].find((each) => each.guild === guild)!.id;
});
afterAll(() => platform.close());

async function call(method: string, path: string, body?: unknown, token = platform.token) {
  if (!/^\/(interactions|webhooks)/.test(path)) later();
  const form = body instanceof FormData;
  const response = await fetch(`${platform.api}/v10${path}`, {
    method,
    headers: { authorization: `Bot ${token}`, ...(form ? {} : { 'content-type': 'application/json' }) },
    ...(body === undefined ? {} : { body: form ? body : JSON.stringify(body) }),
  });
  const text = await response.text();
  return { status: response.status, json: (text === '' ? {} : JSON.parse(text)) as Json };
}
const post = (body: unknown) => call('POST', `/channels/${channel}/messages`, body);

/** The places that a 50035 names. */
function places(errors: Json, at = ''): string[] {
  return Object.entries(errors).flatMap(([key, value]) =>
    key === '_errors' ? [at] : places(value as Json, at === '' ? key : `${at}.${key}`),
  );
}

const long = (n: number) => 'x'.repeat(n);
const times = <T>(n: number, make: (index: number) => T) =>
  Array.from({ length: n }, (_, index) => make(index));
const button = (more: object = {}) => ({ type: 2, style: 1, label: 'Go', custom_id: 'go', ...more });
const row = (...components: object[]) => ({ type: 1, components });
const select = (n: number, more: object = {}) => ({
  type: 3,
  custom_id: 'pick',
  options: times(n, (i) => ({ label: `L${i}`, value: `v${i}` })),
  ...more,
});
const embed = (more: object) => ({ embeds: [{ description: 'd', ...more }] });
const field = (name: string, value: string) => embed({ fields: [{ name, value }] });

describe('messages', () => {
  const taken: [string, object][] = [
    ['2,000 characters', { content: long(2_000) }],
    ['embeds of 6,000', { embeds: [{ description: long(4_096) }, { description: long(1_904) }] }],
    ['10 embeds', { embeds: times(10, () => ({ title: 't' })) }],
    [
      '5 rows of 5 buttons',
      {
        content: 'c',
        components: times(5, (r) => row(...times(5, (i) => button({ custom_id: `${r}-${i}` })))),
      },
    ],
    ['a title of 256 between blanks', embed({ title: ` ${long(256)} ` })],
    ['25 choices in a menu', { content: 'c', components: [row(select(25))] }],
    [
      'a link',
      { content: 'c', components: [row({ type: 2, style: 5, label: 'There', url: 'https://example.org/' })] },
    ],
    [
      'the second kind of components',
      { flags: 1 << 15, components: [{ type: 17, components: [{ type: 10, content: 'hello' }] }] },
    ],
  ];
  it.each(taken)('takes %s', async (_, body) => {
    expect(await post(body)).toMatchObject({ status: 200 });
  });

  const refused: [string, object, string][] = [
    ['2,001 characters', { content: long(2_001) }, 'content'],
    ['11 embeds', { embeds: times(11, () => ({ title: 't' })) }, 'embeds'],
    [
      'embeds over 6,000 together',
      { embeds: [{ description: long(4_096) }, { description: long(1_905) }] },
      'embeds',
    ],
    ['a title of 257', embed({ title: long(257) }), 'embeds.0.title'],
    ['a description of 4,097', { embeds: [{ description: long(4_097) }] }, 'embeds.0.description'],
    ['26 fields', embed({ fields: times(26, () => ({ name: 'n', value: 'v' })) }), 'embeds.0.fields'],
    ['a field name of 257', field(long(257), 'v'), 'embeds.0.fields.0.name'],
    ['a field value of 1,025', field('n', long(1_025)), 'embeds.0.fields.0.value'],
    ['an empty field value', field('n', ''), 'embeds.0.fields.0.value'],
    ['a field value of blanks', field('n', '  '), 'embeds.0.fields.0.value'],
    ['a footer of 2,049', embed({ footer: { text: long(2_049) } }), 'embeds.0.footer.text'],
    ['an author of 257', embed({ author: { name: long(257) } }), 'embeds.0.author.name'],
    ['an embed with nothing in it', { embeds: [{ color: 1 }] }, 'embeds.0.description'],
    ['a colour beyond white', embed({ color: 0x1000000 }), 'embeds.0.color'],
    ['an address of another kind', embed({ url: 'ftp://example.org' }), 'embeds.0.url'],
    [
      '6 rows',
      { content: 'c', components: times(6, (r) => row(button({ custom_id: `${r}` }))) },
      'components',
    ],
    [
      '6 buttons in a row',
      { content: 'c', components: [row(...times(6, (i) => button({ custom_id: `${i}` })))] },
      'components.0.components',
    ],
    ['an empty row', { content: 'c', components: [row()] }, 'components.0.components'],
    [
      'a button beside a menu',
      { content: 'c', components: [row(button(), select(2))] },
      'components.0.components',
    ],
    [
      'two menus in a row',
      { content: 'c', components: [row(select(2), select(2, { custom_id: 'other' }))] },
      'components.0.components',
    ],
    [
      'a label of 81',
      { content: 'c', components: [row(button({ label: long(81) }))] },
      'components.0.components.0.label',
    ],
    [
      'a button without a label',
      { content: 'c', components: [row(button({ label: undefined }))] },
      'components.0.components.0',
    ],
    [
      'a custom id of 101',
      { content: 'c', components: [row(button({ custom_id: long(101) }))] },
      'components.0.components.0.custom_id',
    ],
    [
      'an empty custom id',
      { content: 'c', components: [row(button({ custom_id: '' }))] },
      'components.0.components.0.custom_id',
    ],
    [
      'a button without a custom id',
      { content: 'c', components: [row(button({ custom_id: undefined }))] },
      'components.0.components.0',
    ],
    [
      'a link with a custom id',
      { content: 'c', components: [row(button({ style: 5, url: 'https://example.org/' }))] },
      'components.0.components.0',
    ],
    [
      'a custom id twice',
      { content: 'c', components: [row(button(), button())] },
      'components.0.components.1.custom_id',
    ],
    [
      '26 choices in a menu',
      { content: 'c', components: [row(select(26))] },
      'components.0.components.0.options',
    ],
    [
      'a menu of nothing',
      { content: 'c', components: [row(select(0))] },
      'components.0.components.0.options',
    ],
    [
      'a placeholder of 151',
      { content: 'c', components: [row(select(1, { placeholder: long(151) }))] },
      'components.0.components.0.placeholder',
    ],
    [
      'more to choose than there is',
      { content: 'c', components: [row(select(2, { max_values: 3 }))] },
      'components.0.components.0.max_values',
    ],
    [
      'a value twice',
      {
        content: 'c',
        components: [row(select(0, { options: times(2, () => ({ label: 'l', value: 'v' })) }))],
      },
      'components.0.components.0.options',
    ],
    [
      'a component of another kind',
      { content: 'c', components: [row({ type: 99 })] },
      'components.0.components.0.type',
    ],
    ['41 components', { flags: 1 << 15, components: times(41, () => ({ type: 14 })) }, 'components'],
    [
      'texts of 4,001',
      { flags: 1 << 15, components: times(2, () => ({ type: 10, content: long(2_001) })) },
      'components',
    ],
    [
      'content beside the second kind',
      { flags: 1 << 15, content: 'c', components: [{ type: 14 }] },
      'content',
    ],
    [
      'a shown file that is not sent',
      { flags: 1 << 15, components: [{ type: 13, file: { url: 'attachment://a.txt' } }] },
      'components',
    ],
    ['a flag that nobody sets', { content: 'c', flags: 1 << 4 }, 'flags'],
    [
      'a mention of another kind',
      { content: 'c', allowed_mentions: { parse: ['all'] } },
      'allowed_mentions.parse.0',
    ],
    ['a file that is named and not sent', { content: 'c', attachments: [{ id: '0' }] }, 'attachments'],
  ];
  it.each(refused)('refuses %s', async (_, body, place) => {
    const { status, json } = await post(body);
    expect({ status, code: json['code'], message: json['message'] }).toEqual({
      status: 400,
      code: 50035,
      message: 'Invalid Form Body',
    });
    expect(places(json['errors'] as Json)).toContain(place);
  });

  it('refuses nothing at all, and blanks', async () => {
    for (const body of [{}, { content: ' ' }, { embeds: [] }])
      expect(await post(body)).toMatchObject({ status: 400, json: { code: 50006 } });
  });

  it('refuses a wrong token, an unknown channel, a server without the bot, a closed door', async () => {
    expect(await call('GET', '/users/@me', undefined, 'wrong')).toMatchObject({
      status: 401,
      json: { code: 0 },
    });
    expect(await call('POST', '/channels/1/messages', { content: 'c' })).toMatchObject({
      status: 404,
      json: { code: 10003 },
    });
    const away = platform.guild('Elsewhere', { withBot: false });
    const there = [...platform.world.channels.values()].find((each) => each.guild === away)!;
    expect(await call('POST', `/channels/${there.id}/messages`, { content: 'c' })).toMatchObject({
      status: 403,
      json: { code: 50001 },
    });
    const shy = platform.directChannel(platform.person('shy', { dms: false }));
    expect(await call('POST', `/channels/${shy.id}/messages`, { content: 'c' })).toMatchObject({
      status: 403,
      json: { code: 50007 },
    });
    const mute = platform.guild('Quiet', { botPermissions: 1n << 10n });
    const quiet = [...platform.world.channels.values()].find((each) => each.guild === mute)!;
    expect(await call('POST', `/channels/${quiet.id}/messages`, { content: 'c' })).toMatchObject({
      status: 403,
      json: { code: 50013 },
    });
  });

  it('edits, keeps what an edit does not name, and forgets what is deleted', async () => {
    const { json } = await post({
      content: 'one',
      embeds: [{ title: 't' }],
      allowed_mentions: { parse: [] },
    });
    const path = `/channels/${channel}/messages/${String(json['id'])}`;
    expect((await call('PATCH', path, { content: 'two' })).json).toMatchObject({
      content: 'two',
      embeds: [{ title: 't' }],
    });
    expect(await call('PATCH', path, { content: '', embeds: [] })).toMatchObject({ json: { code: 50006 } });
    expect((await call('GET', path)).json).toMatchObject({ content: 'two' });
    expect(await call('DELETE', path)).toMatchObject({ status: 204 });
    expect(await call('GET', path)).toMatchObject({ status: 404, json: { code: 10008 } });
    expect(await call('PATCH', path, { content: 'x' })).toMatchObject({ status: 404, json: { code: 10008 } });
  });

  it('gives back the message that was made with an enforced nonce, for some minutes', async () => {
    const made = [];
    for (const body of [
      { content: 'a', nonce: 'n1', enforce_nonce: true },
      { content: 'b', nonce: 'n1', enforce_nonce: true },
      { content: 'c', nonce: 'n1' },
    ])
      made.push((await post(body)).json['content']);
    later(10 * 60_000);
    made.push((await post({ content: 'd', nonce: 'n1', enforce_nonce: true })).json['content']);
    expect(made).toEqual(['a', 'a', 'c', 'd']);
    expect(await post({ content: 'e', nonce: long(26) })).toMatchObject({ json: { code: 50035 } });
  });

  const form = (payload: object, ...sizes: number[]) => {
    const data = new FormData();
    data.set('payload_json', JSON.stringify(payload));
    for (const [index, size] of sizes.entries())
      data.set(`files[${index}]`, new Blob([Buffer.alloc(size, 'a')]), `f ${index}.txt`);
    return data;
  };

  it('takes files with their alt text and hands them out again', async () => {
    const { json } = await post(form({ attachments: [{ id: 0, description: long(1_024) }] }, 5, 7));
    expect(json['attachments']).toMatchObject([
      { filename: 'f_0.txt', size: 5, description: long(1_024) },
      { filename: 'f_1.txt', size: 7 },
    ]);
    expect(await (await fetch((json['attachments'] as Json[])[0]!['url'] as string)).text()).toBe('aaaaa');
    const kept = await call('PATCH', `/channels/${channel}/messages/${String(json['id'])}`, {
      attachments: [{ id: (json['attachments'] as Json[])[1]!['id'] as string }],
    });
    expect(kept.json['attachments']).toMatchObject([{ size: 7 }]);
  });

  it('refuses 11 files, an alt text of 1,025, a file over 10 MiB, a request over 25 MiB', async () => {
    expect(await post(form({}, ...times(11, () => 1)))).toMatchObject({ json: { code: 50035 } });
    const described = await post(form({ attachments: [{ id: 0, description: long(1_025) }] }, 1));
    expect(places(described.json['errors'] as Json)).toEqual(['attachments.0.description']);
    expect(await post(form({}, LIMITS.file + 1))).toMatchObject({ status: 413, json: { code: 40005 } });
    expect(await post(form({}, ...times(3, () => 9 * 1024 * 1024)))).toMatchObject({
      status: 413,
      json: { code: 40005 },
    });
  });

  it('notices a picture in an embed that is not attached', async () => {
    await post(embed({ image: { url: 'attachment://lost.png' } }));
    expect(platform.world.complaints.join()).toContain('lost.png');
  });

  it('answers 51 requests in a second with 429', async () => {
    later(5_000);
    const statuses = await Promise.all(
      times(51, () =>
        fetch(`${platform.api}/v10/users/@me`, { headers: { authorization: `Bot ${platform.token}` } }).then(
          ({ status }) => status,
        ),
      ),
    );
    expect(statuses.filter((status) => status === 429)).toHaveLength(1);
  });
});

describe('commands', () => {
  const put = (commands: unknown) =>
    call('PUT', `/applications/${platform.world.applicationId}/commands`, commands);
  const command = (more: object = {}) => ({ name: 'ask', description: 'Asks', ...more });
  const text = (more: object = {}) => ({ type: 3, name: 'what', description: 'What', ...more });

  it('takes a list, keeps the ids of what stays, and counts the registrations', async () => {
    const before = platform.world.registrations;
    const first = await put([command({ options: [text({ required: true }), text({ name: 'how' })] })]);
    expect(first.status).toBe(200);
    const second = await put([command(), command({ name: 'tell' })]);
    const [a, b] = [first, second].map(({ json }) => (json as unknown as Json[])[0]!['id'] as string);
    expect(a).toBe(b);
    expect(a).toMatch(/^\d{17,19}$/);
    expect(platform.world.registrations).toBe(before + 2);
    const listed = await call('GET', `/applications/${platform.world.applicationId}/commands`);
    expect((listed.json as unknown as Json[]).map(({ name }) => name as string)).toEqual(['ask', 'tell']);
  });

  const bulky = times(4, (i) =>
    text({
      name: `o${i}`,
      choices: times(25, (c) => ({ name: long(40) + String(c), value: long(40) + String(c) })),
    }),
  );
  const refused: [string, object[], string][] = [
    ['capitals', [command({ name: 'Ask' })], '0.name'],
    ['a blank in a name', [command({ name: 'a b' })], '0.name'],
    ['a name of 33', [command({ name: long(33) })], '0.name'],
    ['no description', [command({ description: '' })], '0.description'],
    ['a description of 101', [command({ description: long(101) })], '0.description'],
    ['26 options', [command({ options: times(26, (i) => text({ name: `o${i}` })) })], '0.options'],
    [
      '26 choices',
      [command({ options: [text({ choices: times(26, (i) => ({ name: `c${i}`, value: 'v' })) })] })],
      '0.options.0.choices',
    ],
    [
      'a choice of 101',
      [command({ options: [text({ choices: [{ name: 'c', value: long(101) }] })] })],
      '0.options.0.choices.0.value',
    ],
    [
      'a required option after another',
      [command({ options: [text(), text({ name: 'b', required: true })] })],
      '0.options.1',
    ],
    ['an option twice', [command({ options: [text(), text()] })], '0.options.1.name'],
    [
      'choices that complete',
      [command({ options: [text({ autocomplete: true, choices: [{ name: 'c', value: 'v' }] })] })],
      '0.options.0.autocomplete',
    ],
    [
      'a number as the choice of a text',
      [command({ options: [text({ choices: [{ name: 'c', value: 1 }] })] })],
      '0.options.0.choices.0',
    ],
    [
      'a subcommand beside an option',
      [command({ options: [text(), { type: 1, name: 's', description: 'S' }] })],
      '0.options',
    ],
    [
      'a group in a group',
      [
        command({
          options: [
            { type: 2, name: 'g', description: 'G', options: [{ type: 2, name: 'h', description: 'H' }] },
          ],
        }),
      ],
      '0.options.0.options.0.type',
    ],
    [
      'a subcommand in a subcommand',
      [
        command({
          options: [
            { type: 1, name: 'g', description: 'G', options: [{ type: 1, name: 'h', description: 'H' }] },
          ],
        }),
      ],
      '0.options.0.options.0.type',
    ],
    ['a length of 6,001', [command({ options: [text({ max_length: 6_001 })] })], '0.options.0.max_length'],
    ['8,001 characters and more', [command({ options: bulky })], '0'],
    ['a command twice', [command(), command()], '1.name'],
    ['private channels without user installation', [command({ contexts: [0, 2] })], '0.contexts'],
    ['16 commands for messages', times(16, (i) => ({ type: 3, name: `Look ${i}` })), ''],
  ];
  it.each(refused)('refuses %s', async (_, commands, place) => {
    const { status, json } = await put(commands);
    expect({ status, code: json['code'] as number }).toEqual({ status: 400, code: 50035 });
    expect(places(json['errors'] as Json)).toContain(place);
  });

  it('keeps the commands of a server apart', async () => {
    const guild = platform.guild('Own');
    const path = `/applications/${platform.world.applicationId}/guilds/${guild.id}/commands`;
    expect(await call('PUT', path, [command({ name: 'here' })])).toMatchObject({ status: 200 });
    const user = platform.person('rowan');
    platform.driver.patience = { first: 1, settled: 1 };
    await expect(platform.slash('here', {}, { user })).rejects.toThrow(CannotAsk);
    expect((await platform.slash('here', {}, { user, guild })).kind).toBe('silence');
  });
});

describe('interactions, raw', () => {
  const begin = async () => {
    platform.driver.patience = { first: 1, settled: 1 };
    await call('PUT', `/applications/${platform.world.applicationId}/commands`, [
      {
        name: 'ask',
        description: 'Asks',
        options: [{ type: 3, name: 'what', description: 'W', autocomplete: true }],
        integration_types: [0, 1],
        contexts: [0, 1, 2],
      },
    ]);
    const { interaction } = await platform.slash('ask', {}, { user: platform.person('rowan') });
    const answer = (type: number, data?: object) =>
      call('POST', `/interactions/${interaction.id}/${interaction.token}/callback`, { type, data });
    const hook = (method: string, path: string, body?: object) =>
      call(method, `/webhooks/${platform.world.applicationId}/${interaction.token}${path}`, body);
    return { interaction, answer, hook };
  };

  it('takes one callback; a second is 40060', async () => {
    const { interaction, answer } = await begin();
    expect(await answer(4, { content: 'yes' })).toMatchObject({ status: 204 });
    expect(await answer(4, { content: 'again' })).toMatchObject({ status: 400, json: { code: 40060 } });
    expect(interaction.original?.content).toBe('yes');
    expect(interaction.callbacks).toBe(2);
  });

  it('answers 10062 after three seconds, and for what it never sent', async () => {
    const { answer } = await begin();
    later(3_001);
    expect(await answer(4, { content: 'late' })).toMatchObject({ status: 404, json: { code: 10062 } });
    expect(
      await call('POST', '/interactions/1/x/callback', { type: 4, data: { content: 'c' } }),
    ).toMatchObject({
      json: { code: 10062 },
    });
  });

  it('refuses a wrong answer to the kind of question, and may be answered rightly after that', async () => {
    const { answer } = await begin();
    expect(await answer(8, { choices: [] })).toMatchObject({ json: { code: 50035 } });
    expect(await answer(7, { content: 'c' })).toMatchObject({ json: { code: 50035 } });
    expect(await answer(4, { content: long(2_001) })).toMatchObject({
      json: { code: 50035, errors: { data: { content: {} } } },
    });
    expect(await answer(4, { content: 'right' })).toMatchObject({ status: 204 });
  });

  it('shows the answer with_response', async () => {
    const { interaction } = await begin();
    const { json } = await call(
      'POST',
      `/interactions/${interaction.id}/${interaction.token}/callback?with_response=true`,
      { type: 4, data: { content: 'yes', flags: 64 } },
    );
    expect(json).toMatchObject({
      interaction: { response_message_ephemeral: true },
      resource: { message: { content: 'yes', flags: 64 } },
    });
  });

  it('defers with EPHEMERAL only, fixes who sees it, and edits under @original for 15 minutes', async () => {
    const { interaction, answer, hook } = await begin();
    expect(await hook('PATCH', '/messages/%40original', { content: 'early' })).toMatchObject({
      status: 404,
      json: { code: 10015 },
    });
    expect(await answer(5, { flags: 1 << 2 })).toMatchObject({ json: { code: 50035 } });
    expect(await answer(5, { flags: 64 })).toMatchObject({ status: 204 });
    expect((await hook('GET', '/messages/%40original')).json).toMatchObject({ flags: 64 | 128 });
    later(14 * 60_000);
    expect((await hook('PATCH', '/messages/%40original', { content: 'done', flags: 0 })).json).toMatchObject({
      content: 'done',
      flags: 64,
    });
    expect(
      await call('GET', `/channels/${interaction.channel.id}/messages/${interaction.original!.id}`),
    ).toMatchObject({ json: { code: 10008 } });
    later(60_000);
    expect(await hook('PATCH', '/messages/%40original', { content: 'late' })).toMatchObject({
      status: 401,
      json: { code: 50027 },
    });
  });

  it('lets the first follow-up take the place of a deferral', async () => {
    const { interaction, answer, hook } = await begin();
    await answer(5, { flags: 64 });
    expect((await hook('POST', '', { content: 'first' })).json).toMatchObject({
      id: interaction.original!.id,
      flags: 64,
    });
    expect((await hook('POST', '', { content: 'second' })).json).toMatchObject({ flags: 0 });
    expect(interaction.followUps).toHaveLength(1);
    expect(await hook('DELETE', '/messages/%40original')).toMatchObject({ status: 204 });
    expect(await hook('PATCH', '/messages/%40original', { content: 'gone' })).toMatchObject({
      json: { code: 10008 },
    });
  });

  it('allows five follow-ups where only the user installed the app', async () => {
    await begin();
    const guild = platform.guild('Foreign', { withBot: false });
    const { interaction } = await platform.slash('ask', {}, { user: platform.person('ash'), guild });
    await call('POST', `/interactions/${interaction.id}/${interaction.token}/callback`, {
      type: 4,
      data: { content: 'c' },
    });
    const codes: unknown[] = [];
    for (let i = 0; i < 6; i++)
      codes.push(
        (
          await call('POST', `/webhooks/${platform.world.applicationId}/${interaction.token}`, {
            content: 'c',
          })
        ).json['code'],
      );
    expect(codes).toEqual([undefined, undefined, undefined, undefined, undefined, 40094]);
  });

  it('checks offers and forms', async () => {
    await begin();
    const user = platform.person('fern');
    const typing = (await platform.autocomplete('ask', { what: 'm' }, 'what', { user })).interaction;
    const offer = (choices: object[]) =>
      call('POST', `/interactions/${typing.id}/${typing.token}/callback`, { type: 8, data: { choices } });
    expect(await offer(times(26, (i) => ({ name: `n${i}`, value: 'v' })))).toMatchObject({
      json: { code: 50035 },
    });
    expect(await offer([{ name: 'n', value: 3 }])).toMatchObject({ json: { code: 50035 } });
    expect(await offer([{ name: '', value: 'v' }])).toMatchObject({ json: { code: 50035 } });
    expect(await offer(times(25, (i) => ({ name: `n${i}`, value: 'v' })))).toMatchObject({ status: 204 });

    const { answer } = await begin();
    const input = { type: 4, custom_id: 'name', style: 1, label: 'Name' };
    for (const form of [
      { title: long(46), custom_id: 'f', components: [row(input)] },
      { title: 't', custom_id: 'f', components: [] },
      { title: 't', custom_id: 'f', components: times(6, (i) => row({ ...input, custom_id: `${i}` })) },
      { title: 't', custom_id: 'f', components: [row({ ...input, label: long(46) })] },
      { title: 't', custom_id: 'f', components: [row({ ...input, max_length: 4_001 })] },
      { title: 't', custom_id: 'f', components: [row(input), row(input)] },
      { title: 't', custom_id: 'f', components: [row(button())] },
    ])
      expect(await answer(9, form)).toMatchObject({ json: { code: 50035 } });
    expect(await answer(9, { title: 't', custom_id: 'f', components: [row(input)] })).toMatchObject({
      status: 204,
    });
  });
});

describe('the real client', () => {
  let served: StandIn;
  let client: Client;
  const events: string[] = [];

  beforeAll(async () => {
    served = await openStandIn({ heartbeat: 100 });
    client = new Client({ intents: ['Guilds'], rest: { api: served.api } });
    client.on(Events.InteractionCreate, (interaction) => void answer(interaction));
    client.on(Events.ShardResume, () => events.push('resumed'));
    client.on(Events.ShardReady, () => events.push('ready'));
    client.on(Events.Error, (error) => events.push(String(error)));
    served.guild('Allotment');
    await client.login(served.token);
    await served.connected();
    await client.rest.put(`/applications/${served.world.applicationId}/commands`, {
      body: [
        {
          name: 'ask',
          description: 'Asks',
          options: [
            {
              type: 1,
              name: 'plain',
              description: 'P',
              options: [
                { type: 4, name: 'size', description: 'S', required: true, min_value: 1, max_value: 9 },
                { type: 3, name: 'shape', description: 'S', choices: [{ name: 'Round', value: 'round' }] },
                { type: 11, name: 'file', description: 'F' },
              ],
            },
            {
              type: 1,
              name: 'slow',
              description: 'S',
              options: [{ type: 3, name: 'what', description: 'W', autocomplete: true }],
            },
          ],
        },
        { type: 3, name: 'Look at this' },
        { name: 'manage', description: 'M', default_member_permissions: '32' },
      ],
    });
  });
  afterAll(async () => {
    await client.destroy();
    await served.close();
  });

  async function answer(interaction: ClientInteraction): Promise<void> {
    if (interaction.isAutocomplete())
      return interaction.respond([{ name: interaction.options.getFocused(), value: 'v' }]);
    if (interaction.isMessageContextMenuCommand()) {
      await interaction.reply({
        content: `said: ${interaction.targetMessage.content}`,
        allowedMentions: { parse: [] },
      });
    } else if (interaction.isChatInputCommand()) {
      const sub = interaction.options.getSubcommand(false);
      if (sub === 'slow') {
        await interaction.deferReply({ flags: MessageFlags.Ephemeral });
        await interaction.editReply({
          content: 'slowly',
          files: [{ attachment: Buffer.from('long'), name: 'long.txt' }],
        });
        return;
      }
      const file = interaction.options.getAttachment('file');
      const read = file ? await (await fetch(file.url)).text() : '';
      await interaction.reply({
        content: `${interaction.options.getInteger('size') ?? 0} ${read}`,
        components: [
          row(button({ label: 'More' }), button({ label: 'Form', custom_id: 'form' })),
          row(select(3)),
        ] as never,
      });
    } else if (interaction.isButton() && interaction.customId === 'form') {
      await interaction.showModal({
        title: 'Name',
        customId: 'f',
        components: [row({ type: 4, customId: 'name', style: 1, label: 'Name' })] as never,
      });
    } else if (interaction.isButton()) await interaction.update({ content: 'more' });
    else if (interaction.isStringSelectMenu())
      await interaction.reply({ content: interaction.values.join(), flags: MessageFlags.Ephemeral });
    else if (interaction.isModalSubmit())
      await interaction.reply(interaction.fields.getTextInputValue('name'));
  }

  it('is asked, pressed, chosen in, filled in, and reads what is attached', async () => {
    const user = served.person('rowan');
    const guild = [...served.world.guilds.values()][0]!;
    const as = { user, guild };
    const file = { name: 'a.txt', bytes: Buffer.from('inside'), type: 'text/plain' };
    const seen = await served.slash('ask plain', { size: 3, shape: 'round', file }, as);
    expect(seen).toMatchObject({ kind: 'message', text: '3 inside', ephemeral: false, deferred: false });
    expect(await served.select(seen.message!, 'pick', ['v1'], as)).toMatchObject({
      text: 'v1',
      ephemeral: true,
    });
    const form = await served.press(seen.message!, 'Form', as);
    expect(form.kind).toBe('modal');
    expect(await served.submitModal(form, { name: 'Moss' }, as)).toMatchObject({ text: 'Moss' });
    expect(await served.press(seen.message!, 'More', as)).toMatchObject({
      text: 'more',
      message: { edits: 1 },
    });
    const slow = await served.slash('ask slow', {}, { user });
    expect(slow).toMatchObject({ deferred: true, ephemeral: true, text: 'slowly' });
    expect(slow.files[0]!.bytes.toString()).toBe('long');
    expect((await served.autocomplete('ask slow', { what: 'mo' }, 'what', as)).choices).toEqual([
      { name: 'mo', value: 'v' },
    ]);
    const said = served.say(seen.message!.channel, user, 'a pattern');
    const looked = await served.messageCommand('Look at this', said, as);
    expect(looked.text).toBe('said: a pattern');
    expect(looked.message!.allowedMentions).toMatchObject({ parse: [] });
    expect(events.filter((event) => event.includes('rror'))).toEqual([]);
  });

  it('plays the person’s client, which does not send everything', async () => {
    const user = served.person('ash');
    const guild = [...served.world.guilds.values()][0]!;
    const as = { user, guild };
    for (const [path, options] of [
      ['ask', {}],
      ['ask plain', {}],
      ['ask plain', { size: 0 }],
      ['ask plain', { size: 10 }],
      ['ask plain', { size: 1.5 }],
      ['ask plain', { size: '3' }],
      ['ask plain', { size: 3, shape: 'square' }],
      ['ask plain', { size: 3, more: 1 }],
      ['ask other', {}],
      ['nothing', {}],
      ['manage', {}],
    ] as const)
      await expect(served.slash(path, options, as)).rejects.toThrow(CannotAsk);
    expect((await served.slash('manage', {}, { ...as, permissions: MANAGER })).kind).toBe('message');
    const away = served.guild('Elsewhere', { withBot: false });
    await expect(served.slash('ask plain', { size: 3 }, { user, guild: away })).rejects.toThrow(CannotAsk);
    const slow = await served.slash('ask slow', {}, as);
    const other = { user: served.person('fern'), guild };
    await expect(served.press(slow.message!, 'More', other)).rejects.toThrow(CannotAsk);
    const plain = await served.slash('ask plain', { size: 3 }, as);
    await expect(served.press(plain.message!, 'Less', as)).rejects.toThrow(CannotAsk);
    await expect(served.select(plain.message!, 'pick', ['v9'], as)).rejects.toThrow(CannotAsk);
    await expect(served.select(plain.message!, 'pick', ['v0', 'v1'], as)).rejects.toThrow(CannotAsk);
  });

  const until = async (done: () => boolean) => {
    for (let i = 0; i < 1_000 && !done(); i++) await new Promise((resolve) => setTimeout(resolve, 10));
    expect(done()).toBe(true);
  };

  it('beats, resumes after a broken line with what it missed, reconnects when told, identifies when invalid', async () => {
    const as = { user: served.person('moss') };
    const { counts } = served.gateway;
    await until(() => counts.heartbeats > 2);
    const before = { ...counts };
    served.gateway.drop();
    const missed = await served.slash('ask plain', { size: 4 }, as);
    expect(missed.text).toBe('4 ');
    expect(counts).toMatchObject({ identifies: before.identifies, resumes: before.resumes + 1 });
    served.gateway.reconnect();
    await until(() => counts.resumes === before.resumes + 2);
    served.gateway.invalidate();
    await until(() => counts.identifies === before.identifies + 1 && served.gateway.connected === 1);
    expect((await served.slash('ask plain', { size: 5 }, as)).text).toBe('5 ');
    served.gateway.answersHeartbeats = false;
    await until(() => counts.resumes === before.resumes + 3);
    served.gateway.answersHeartbeats = true;
    expect((await served.slash('ask plain', { size: 6 }, as)).text).toBe('6 ');
    expect(served.gateway.refused).toEqual([]);
  });

  it('befalls it with 500, 429, silence and a line that breaks', async () => {
    const as = { user: served.person('bay') };
    served.befall({ path: /callback/, how: 500 });
    expect((await served.slash('ask plain', { size: 1 }, as)).text).toBe('1 ');
    served.befall({ path: /callback/, how: 429, retryAfter: 0.1 });
    const limited = await served.slash('ask plain', { size: 2 }, as);
    expect(limited.text).toBe('2 ');
    expect(limited.firstMs).toBeGreaterThan(90);
    served.befall({ path: /users/, how: 'hang-up' });
    await expect(fetch(`${served.api}/v10/users/@me`)).rejects.toThrow();
    served.befall({ path: /users/, how: 'silence' });
    await expect(fetch(`${served.api}/v10/users/@me`, { signal: AbortSignal.timeout(50) })).rejects.toThrow();
  });
});

describe('the gateway, raw', () => {
  const talk = (first: object, more: (socket: WebSocketLike) => void = () => undefined) =>
    new Promise<number>((resolve) => {
      void import('ws').then(({ WebSocket }) => {
        const socket = new WebSocket(`${platform.files.replace('http', 'ws')}/gateway?v=10&encoding=json`);
        socket.on('open', () => {
          socket.send(JSON.stringify(first));
          more(socket);
        });
        socket.on('close', resolve);
      });
    });
  interface WebSocketLike {
    send(text: string): void;
  }
  const identify = (more: object = {}) => ({
    op: 2,
    d: { token: platform.token, intents: 0, properties: {}, ...more },
  });

  it('closes with the platform’s codes', async () => {
    later(60_000);
    expect(await talk(identify({ token: 'wrong' }))).toBe(4004);
    expect(await talk(identify({ shard: [1, 1] }))).toBe(4010);
    expect(await talk({ op: 3, d: {} })).toBe(4003);
    expect(await talk({ op: 42 })).toBe(4001);
    expect(await talk(identify({ properties: { os: long(5_000) } }))).toBe(4002);
    expect(await talk(identify(), (socket) => socket.send(JSON.stringify(identify())))).toBe(4005);
    expect(await talk(identify(), (socket) => times(120, () => socket.send('{"op":1,"d":null}')))).toBe(4008);
  });
});

describe('a form', () => {
  const labelled = (component: Json, label = 'Counts', description?: string) => ({
    type: 18,
    label,
    ...(description === undefined ? {} : { description }),
    component,
  });
  const typed = (more: Json = {}) => ({ type: 4, custom_id: 'counts', style: 1, ...more });
  const chosen = (options: number, more: Json = {}) => ({
    type: 3,
    custom_id: 'kind',
    options: Array.from({ length: options }, (_, n) => ({ label: `${n}`, value: `${n}` })),
    ...more,
  });
  const form = (components: Json[], more: Json = {}) => ({
    custom_id: 'f',
    title: 'Counts',
    components,
    ...more,
  });
  const fields = (many: number) =>
    Array.from({ length: many }, (_, n) => labelled(typed({ custom_id: `c${n}` })));

  // Source: the limits of stand-in/limits.ts, each with its page.
  it.each<[string, Json, Json]>([
    ['title', form(fields(1), { title: 'x'.repeat(45) }), form(fields(1), { title: 'x'.repeat(46) })],
    ['id', form(fields(1), { custom_id: 'x'.repeat(100) }), form(fields(1), { custom_id: 'x'.repeat(101) })],
    ['number of fields', form(fields(5)), form(fields(6))],
    ['label', form([labelled(typed(), 'x'.repeat(45))]), form([labelled(typed(), 'x'.repeat(46))])],
    [
      'description',
      form([labelled(typed(), 'a', 'x'.repeat(100))]),
      form([labelled(typed(), 'a', 'x'.repeat(101))]),
    ],
    [
      'placeholder',
      form([labelled(typed({ placeholder: 'x'.repeat(100) }))]),
      form([labelled(typed({ placeholder: 'x'.repeat(101) }))]),
    ],
    [
      'value',
      form([labelled(typed({ value: 'x'.repeat(4_000) }))]),
      form([labelled(typed({ value: 'x'.repeat(4_001) }))]),
    ],
    [
      'value of a bounded field',
      form([labelled(typed({ value: 'xxx', max_length: 3 }))]),
      form([labelled(typed({ value: 'xxxx', max_length: 3 }))]),
    ],
    ['choices', form([labelled(chosen(25))]), form([labelled(chosen(26))])],
    [
      'choices at once',
      form([labelled(chosen(3, { max_values: 3 }))]),
      form([labelled(chosen(3, { max_values: 4 }))]),
    ],
    ['menu', form([labelled(chosen(3))]), form([labelled(chosen(3, { disabled: true }))])],
    ['field', form(fields(2)), form([labelled(typed()), labelled(typed())])],
    ['button', form(fields(1)), form([labelled({ type: 2, style: 1, label: 'a', custom_id: 'b' })])],
  ])('keeps to the %s that it may have', (_, within, over) => {
    expect(() => checkModal(within)).not.toThrow();
    expect(() => checkModal(over)).toThrow();
  });

  it.each([2, 3])('and the entries of menus keep to their name, 15 of a kind (%i)', (type) => {
    const entries = (many: number) => Array.from({ length: many }, (_, n) => ({ type, name: `Entry ${n}` }));
    expect(() => checkCommands(entries(15))).not.toThrow();
    expect(() => checkCommands(entries(16))).toThrow();
    expect(() => checkCommands([{ type, name: 'x'.repeat(32) }])).not.toThrow();
    for (const spoilt of [{ name: 'x'.repeat(33) }, { name: '' }, { name: 'x', description: 'said' }])
      expect(() => checkCommands([{ type, ...spoilt }])).toThrow();
  });
});
