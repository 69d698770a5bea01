/**
 * How requests reach the platform. The client asks, keeps to its rates and asks again; what it hands over is sent from here over
 * lines that are kept open, and what comes back is read as it comes. Between the two stand no streams and no objects for headers
 * of which nobody reads more than two: they were half of what a request took.
 */
import { STATUS_CODES } from 'node:http';
import type { RESTOptions } from 'discord.js';
import { Agent, type Dispatcher } from 'undici';

/**
 * How long a line without a request is kept. Most answers come more than the usual four seconds apart, and a new line takes
 * several ways to the platform and back before anything is sent. What the platform says of its lines goes before this.
 */
const KEPT_MS = 60_000;
/** How long is waited for what comes back; the client waits as long by its own clock. */
const PATIENCE_MS = 15_000;

type MakeRequest = RESTOptions['makeRequest'];
type Response = Awaited<ReturnType<MakeRequest>>;

/** A request under way: what comes back is put together here. */
class UnderWay implements Dispatcher.DispatchHandlers {
  private status = 0;
  private said: readonly Buffer[] = [];
  private readonly parts: Buffer[] = [];
  private stop: ((why: Error) => void) | undefined;

  constructor(
    private readonly signal: AbortSignal | null | undefined,
    private readonly done: (response: Response) => void,
    private readonly failed: (why: unknown) => void,
  ) {
    signal?.addEventListener('abort', () => this.giveUp(), { once: true });
  }

  private giveUp(): void {
    const why: unknown = this.signal?.reason;
    this.failed(why);
    this.stop?.(why instanceof Error ? why : new Error('given up'));
  }

  onConnect(stop: (why?: Error) => void): void {
    this.stop = stop;
    if (this.signal?.aborted === true) this.giveUp();
  }

  onHeaders(status: number, said: Buffer[]): boolean {
    this.status = status;
    this.said = said;
    return true;
  }

  onData(part: Buffer): boolean {
    this.parts.push(part);
    return true;
  }

  onComplete(): void {
    this.done(new Received(this.status, this.said, this.parts) as unknown as Response);
  }

  onError(why: Error): void {
    this.failed(why);
  }
}

/** What came back, as the client reads it. */
class Received {
  readonly ok: boolean;
  readonly statusText: string;
  readonly body = null;
  readonly bodyUsed = false;
  /** The client looks its headers up and does nothing else with them. */
  readonly headers = this;

  constructor(
    readonly status: number,
    /** Names and values in turn. */
    private readonly said: readonly Buffer[],
    private readonly parts: readonly Buffer[],
  ) {
    this.ok = status >= 200 && status < 300;
    this.statusText = STATUS_CODES[status] ?? '';
  }

  get(name: string): string | null {
    const wanted = name.toLowerCase();
    const at = this.said.findIndex(
      (one, index) =>
        index % 2 === 0 && one.length === wanted.length && one.toString('latin1').toLowerCase() === wanted,
    );
    // Not found, -1 would stand for the first name of all.
    return at < 0 ? null : (this.said[at + 1]?.toString('latin1') ?? null);
  }

  has(name: string): boolean {
    return this.get(name) !== null;
  }

  arrayBuffer(): Promise<ArrayBuffer> {
    const { buffer, byteOffset, byteLength } = Buffer.concat(this.parts);
    return Promise.resolve(buffer.slice(byteOffset, byteOffset + byteLength));
  }

  text(): Promise<string> {
    return Promise.resolve(Buffer.concat(this.parts).toString('utf8'));
  }

  async json(): Promise<unknown> {
    return JSON.parse(await this.text());
  }
}

export interface Lines {
  /** Sends a request, for the client's own `REST`. */
  readonly makeRequest: MakeRequest;
  /** Closes every line, also of requests to which nothing came back. */
  close(): Promise<void>;
}

export function openLines(patience = PATIENCE_MS): Lines {
  const agent = new Agent({ keepAliveTimeout: KEPT_MS, headersTimeout: patience, bodyTimeout: patience });
  return {
    makeRequest: (url, { method, headers, body, signal }) =>
      new Promise((done, failed) => {
        const path = url.indexOf('/', url.indexOf('//') + 2);
        const request = {
          origin: url.slice(0, path),
          path: url.slice(path),
          method: method as Dispatcher.HttpMethod,
          headers: headers as Record<string, string>,
          body: body as string | Uint8Array | null,
        };
        agent.dispatch(request, new UnderWay(signal, done, failed));
      }),
    close: () => agent.destroy(),
  };
}
