/** Requests over lines of our own, by the client's own REST: what it is told, and what becomes of it when a line breaks. */
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { DiscordAPIError, HTTPError, RateLimitError, REST } from 'discord.js';
import { afterEach, describe, expect, it } from 'vitest';
import { respondBy } from '../../../src/rooms/discord/callbacks.ts';
import { openLines, type Lines } from '../../../src/rooms/discord/requests.ts';

const closing: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});

interface Heard {
  readonly method: string;
  readonly url: string;
  readonly headers: IncomingMessage['headers'];
  readonly body: Buffer;
}

/** A platform that answers as it is told, and the client's REST to it. */
async function opened(answer: (response: ServerResponse, heard: Heard) => void, patience?: number) {
  const heard: Heard[] = [];
  let connections = 0;
  const server = createServer((request, response) => {
    const parts: Buffer[] = [];
    request.on('data', (part: Buffer) => parts.push(part));
    request.on('end', () => {
      const { method = '', url = '', headers } = request;
      const one = { method, url, headers, body: Buffer.concat(parts) };
      heard.push(one);
      answer(response, one);
    });
  });
  server.on('connection', () => (connections += 1));
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const lines = openLines(patience);
  closing.push(
    () => lines.close(),
    () => new Promise((done) => server.close(done).closeAllConnections()),
  );
  const api = `http://127.0.0.1:${(server.address() as AddressInfo).port}/api`;
  return { rest: restTo(api, lines), api, lines, heard, connections: () => connections };
}
const restTo = (api: string, { makeRequest }: Lines, timeout = 15_000) =>
  new REST({ api, makeRequest, timeout }).setToken('token');

describe('a request', () => {
  it('says what it is given, and hears what comes back', async () => {
    const { rest, heard } = await opened((response) =>
      response.writeHead(200, { 'content-type': 'application/json' }).end('{"id":"7","says":"moß 🧶"}'),
    );
    const told = await rest.post('/channels/1/messages', { body: { content: 'ein Stück' } });
    expect(told).toEqual({ id: '7', says: 'moß 🧶' });
    expect(heard).toMatchObject([
      {
        method: 'POST',
        url: '/api/v10/channels/1/messages',
        headers: { authorization: 'Bot token', 'content-type': 'application/json' },
      },
    ]);
    expect(JSON.parse(String(heard[0]?.body))).toEqual({ content: 'ein Stück' });
  });

  it('hears nothing where nothing is said', async () => {
    const { rest } = await opened((response) => response.writeHead(204).end());
    expect(await rest.post('/interactions/1/2/callback', { body: {}, auth: false })).toEqual(
      new ArrayBuffer(0),
    );
  });

  it('reads what comes in many pieces, be it a text or not', async () => {
    const text = 'x'.repeat(300_000);
    const { rest } = await opened((response) =>
      response.writeHead(200, { 'content-type': 'text/plain' }).end(text),
    );
    expect(Buffer.from((await rest.get('/gateway')) as ArrayBuffer).toString()).toBe(text);
  });

  it('carries files', async () => {
    const { rest, heard } = await opened((response) => response.writeHead(204).end());
    const files = [{ name: 'board.png', data: Buffer.from('of moss') }];
    await rest.post('/channels/1/messages', { body: { content: 'Here.' }, files });
    expect(heard[0]?.headers['content-type']).toMatch(/^multipart\/form-data; boundary=/);
    expect(String(heard[0]?.body)).toContain('of moss');
    expect(String(heard[0]?.body)).toContain('{"content":"Here."}');
  });

  it('goes over a line that is open', async () => {
    const { rest, connections } = await opened((response) => response.writeHead(204).end());
    for (let n = 0; n < 5; n += 1)
      await rest.post(`/interactions/${n}/2/callback`, { body: {}, auth: false });
    // The one before is put away while the next is on its way.
    expect(connections()).toBeLessThanOrEqual(2);
  });

  it('that is refused tells how, in the platform’s own words', async () => {
    const { rest } = await opened((response) =>
      response
        .writeHead(404, { 'content-type': 'application/json' })
        .end('{"message":"Unknown interaction","code":10062}'),
    );
    const refused = rest.post('/interactions/1/2/callback', { body: {}, auth: false });
    await expect(refused).rejects.toBeInstanceOf(DiscordAPIError);
    await expect(refused).rejects.toMatchObject({ code: 10062, status: 404 });
  });

  it('that fails there is sent four times by the client, and not once more by the line', async () => {
    const { rest, heard } = await opened((response) => response.writeHead(502).end('Bad Gateway'));
    await expect(rest.post('/interactions/1/2/callback', { body: {}, auth: false })).rejects.toBeInstanceOf(
      HTTPError,
    );
    expect(heard).toHaveLength(4);
  });

  it('hears no header that was not said', async () => {
    const { api, lines } = await opened((response) => response.writeHead(200, { 'x-first': 'a' }).end('{}'));
    const { headers } = await lines.makeRequest(`${api}/v10/gateway`, { method: 'GET' });
    expect(headers.get('X-First')).toBe('a');
    expect(headers.get('Retry-After')).toBeNull();
    expect(headers.has('X-RateLimit-Global')).toBe(false);
  });

  it('waits as long as it is told to', async () => {
    let times = 0;
    const { rest, heard } = await opened((response) => {
      times += 1;
      if (times === 1) response.writeHead(429, { 'retry-after': '0', 'x-ratelimit-scope': 'user' }).end('{}');
      else response.writeHead(204).end();
    });
    await rest.post('/interactions/1/2/callback', { body: {}, auth: false });
    expect(heard).toHaveLength(2);
  });
});

describe('a first answer', () => {
  const TO = { id: '1', token: '2' };
  const said = { type: 4, data: { content: 'ein Stück' } };
  const sent = (rest: REST) => respondBy(rest)(TO, said);
  /** What of an error anybody looks at. */
  const toldBy = (error: unknown) => {
    const { constructor, message, code, status, method, url, requestBody } = error as DiscordAPIError;
    return { constructor, message, code, status, method, url, requestBody };
  };

  it('is the request that the client would send', async () => {
    const { rest, heard } = await opened((response) => response.writeHead(204).end());
    await sent(rest);
    await rest.post('/interactions/1/2/callback', { body: said, auth: false });
    const [own, clients] = heard;
    expect(own).toEqual(clients);
    expect(own?.headers.authorization).toBeUndefined();
  });

  const refusals: readonly [string, (response: ServerResponse) => void][] = [
    ['for good', (response) => response.writeHead(404).end('{"message":"Unknown interaction","code":10062}')],
    ['as it is malformed', (response) => response.writeHead(400).end('{"message":"Invalid","code":50035}')],
    ['as the platform fails', (response) => response.writeHead(503).end('Unavailable')],
    ['as the line breaks', (response) => response.destroy()],
  ];
  it.each(refusals)(
    'that is not taken, %s, is as often sent as by the client, and tells the same',
    async (_, how) => {
      const { rest, heard } = await opened((response) => {
        response.setHeader('content-type', 'application/json');
        how(response);
      });
      const [own, mine] = [await sent(rest).catch((error: unknown) => error), heard.length];
      const theirs = await rest
        .post('/interactions/1/2/callback', { body: said, auth: false })
        .catch((error: unknown) => error);
      expect(toldBy(own)).toEqual(toldBy(theirs));
      expect(heard.length - mine).toBe(mine);
    },
  );

  it('that is refused without words is refused', async () => {
    const { rest } = await opened((response) => response.writeHead(403).end('<html>'));
    await expect(sent(rest)).rejects.toMatchObject({ status: 403, message: 'Forbidden' });
  });

  it('is sent again when the platform says so', async () => {
    let times = 0;
    const { rest, heard } = await opened((response) => {
      times += 1;
      if (times === 1) response.writeHead(429, { 'retry-after': '0.1' }).end('{}');
      else response.writeHead(204).end();
    });
    const began = performance.now();
    await sent(rest);
    expect(performance.now() - began).toBeGreaterThan(95);
    expect(heard).toHaveLength(2);
  });

  it.each(['9', 'Thu, 26 Nov 2026 07:00:00 GMT', undefined])(
    'is not sent when nobody takes it any more, where it is refused with Retry-After: %s',
    async (later) => {
      const { rest, heard } = await opened((response) => {
        response.writeHead(429, later === undefined ? {} : { 'retry-after': later }).end('{}');
      });
      // Without what the platform says, it is this that is waited for.
      rest.options.offset = 3_100;
      await expect(sent(rest)).rejects.toBeInstanceOf(RateLimitError);
      expect(heard).toHaveLength(1);
    },
  );

  it('to which nothing comes back is sent as often as the client would', async () => {
    const { api, lines, heard } = await opened(() => undefined, 50);
    const rest = new REST({ api, makeRequest: lines.makeRequest, retries: 1 });
    await expect(sent(rest)).rejects.toMatchObject({ code: 'UND_ERR_HEADERS_TIMEOUT' });
    expect(heard).toHaveLength(2);
  });
});

describe('a line', () => {
  it('that breaks under a request says so at once, and the request is not sent again', async () => {
    const { rest, heard } = await opened((response) => response.destroy());
    await expect(rest.post('/interactions/1/2/callback', { body: {}, auth: false })).rejects.toMatchObject({
      code: 'UND_ERR_SOCKET',
    });
    expect(heard).toHaveLength(1);
  });

  it('to nobody says so', async () => {
    const { lines } = await opened(() => undefined);
    const nobody = restTo('http://127.0.0.1:1/api', lines);
    await expect(nobody.get('/gateway')).rejects.toMatchObject({ code: 'ECONNREFUSED' });
  });

  it('on which nothing comes is given up after a while, and tried as often as the client tries', async () => {
    const { api, lines, heard } = await opened(() => undefined);
    await expect(restTo(api, lines, 50).get('/gateway')).rejects.toMatchObject({ name: 'AbortError' });
    expect(heard).toHaveLength(4);
  });

  it('on which an answer stops half way is given up as well', async () => {
    const { api, lines } = await opened((response) =>
      response.writeHead(200, { 'content-length': '10' }).write('half'),
    );
    await expect(restTo(api, lines, 50).get('/gateway')).rejects.toMatchObject({ name: 'AbortError' });
  });

  it('that is closed ends what waits on it', async () => {
    const { rest, lines } = await opened(() => undefined);
    const waiting = rest.get('/gateway');
    waiting.catch(() => undefined);
    await new Promise((done) => setTimeout(done, 50));
    await lines.close();
    await expect(waiting).rejects.toThrow();
  });

  it('given up before anything was sent sends nothing', async () => {
    const { api, lines, heard } = await opened((response) => response.writeHead(204).end());
    const signal = AbortSignal.abort();
    await expect(lines.makeRequest(`${api}/v10/gateway`, { method: 'GET', signal })).rejects.toMatchObject({
      name: 'AbortError',
    });
    expect(heard).toEqual([]);
  });
});
