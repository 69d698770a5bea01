/**
 * Requests against the platform's published schema: that the check of every request (harness.ts) takes what is meant, and
 * notices what is spoilt. Source: the OpenAPI description of the platform's HTTP API, version 10, as it publishes it.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { registry } from '../../../commands/index.ts';
import { menusOf } from '../../../src/rooms/discord/context-menu.ts';
import { declaration, WORK_THIS_OUT } from '../../../src/rooms/discord/declare.ts';
import { openHarness } from './harness.ts';
import { Published, schemaFile } from './published.ts';

const file = schemaFile();
if (file === undefined)
  console.warn(
    'Skipped: no request is checked against the platform’s published schema, which lies neither beside the project’s folder nor where PLATFORM_SCHEMA points.',
  );

const id = '123456789012345678';
const commands = `/applications/${id}/commands`;
const callback = `/interactions/${id}/secret/callback`;
const original = `/webhooks/${id}/secret/messages/@original`;
const messages = `/channels/${id}/messages`;

describe.skipIf(file === undefined)('the published schema', () => {
  let published: Published;
  beforeAll(() => {
    published = new Published(file!);
  });
  const fault = (method: string, path: string, json: unknown = {}, files = 0) =>
    published.fault({ method, path, json, files });
  const declared = () => [...registry.commands.map(declaration), WORK_THIS_OUT, ...menusOf(registry)];

  it('describes what is registered', () => {
    expect(fault('PUT', commands, declared())).toBeUndefined();
    expect(fault('GET', commands)).toBeUndefined();
  });

  it.each([
    [
      'POST',
      callback,
      { type: 4, data: { content: 'Row 9.', attachments: [{ id: 0, filename: 'a.png' }], tts: false } },
      1,
    ],
    ['POST', callback, { type: 5, data: { flags: 64 } }, 0],
    ['POST', callback, { type: 6 }, 0],
    ['POST', callback, { type: 8, data: { choices: [{ name: 'Rose', value: 'Rose' }] } }, 0],
    ['PATCH', original, { content: 'Row 9.', allowed_mentions: { parse: [] } }, 0],
    ['DELETE', original, {}, 0],
    ['POST', messages, { content: 'Board.', nonce: 'a', enforce_nonce: true }, 0],
    ['PATCH', `${messages}/${id}`, { content: 'Board.' }, 0],
    ['DELETE', `${messages}/${id}`, {}, 0],
  ])('describes %s %s %o', (method, path, json, files) => {
    expect(fault(method, path, json, files)).toBeUndefined();
  });

  // Each as it might go wrong, spoilt in one place.
  it.each([
    ['a key that nobody named', 'POST', callback, { type: 4, data: { content: 'Row 9.', colour: 1 } }, 0],
    ['a text too long', 'POST', callback, { type: 4, data: { content: 'x'.repeat(2001) } }, 0],
    ['an answer of no kind', 'POST', callback, { type: 44, data: { content: 'Row 9.' } }, 0],
    ['no title on a form', 'POST', callback, { type: 9, data: { custom_id: 'a', components: [] } }, 0],
    [
      '26 offers',
      'POST',
      callback,
      { type: 8, data: { choices: Array.from({ length: 26 }, (_, n) => ({ name: `${n}`, value: `${n}` })) } },
      0,
    ],
    ['11 embeds', 'POST', messages, { embeds: Array.from({ length: 11 }, () => ({ title: 'a' })) }, 0],
    [
      'a button without a style',
      'POST',
      messages,
      { content: 'a', components: [{ type: 1, components: [{ type: 2, label: 'a', custom_id: 'a' }] }] },
      0,
    ],
    ['mentions of everybody', 'POST', messages, { content: 'a', allowed_mentions: { parse: ['all'] } }, 0],
    ['a body where none is taken', 'DELETE', `${messages}/${id}`, { reason: 'a' }, 0],
    ['a request that there is not', 'POST', '/channels', {}, 0],
    ['a method that there is not', 'PUT', messages, {}, 0],
    ['a file where none is taken', 'PUT', commands, [], 1],
  ])('notices %s', (_what, method, path, json, files) => {
    expect(fault(method, path, json, files)).toMatch(/^[A-Z]+ \//);
  });

  it.each([
    ['a name too long', { name: 'x'.repeat(33) }],
    ['no name', { name: undefined }],
    ['a description too long', { description: 'x'.repeat(101) }],
    ['an option of no kind', { options: [{ type: 33, name: 'a', description: 'a' }] }],
    ['a key that nobody named', { answers: 'everyone' }],
    ['a name too long in another language', { name_localizations: { de: 'x'.repeat(33) } }],
  ])('notices a command with %s', (_what, change) => {
    const [first, ...others] = declared();
    expect(fault('PUT', commands, [{ ...first, ...change }, ...others])).toMatch(/^PUT /);
  });

  it('is asked about every request, and a room that sends anything else is not closed in peace', async () => {
    const harness = await openHarness();
    const answer = await fetch(`${harness.platform.api}/v10/channels/${id}/messages`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ content: 'Row 9.', colour: 1 }),
    });
    expect(answer.status).toBe(401);
    expect(harness.unfit).toEqual([expect.stringContaining('colour')]);
    await expect(harness.close()).rejects.toThrow(/not as the platform describes it/);
  });
});
