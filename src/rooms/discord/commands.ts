/** Keeps the commands registered as they are declared, however often the platform is out of reach and however many processes start. */
import { createHash } from 'node:crypto';
import { setTimeout as wait } from 'node:timers/promises';
import type { Claims } from '../../projects/claims.ts';
import { SAID_EVERY_MS, type Registrations } from '../../projects/registrations.ts';
import type { Registered } from './localise.ts';
import { refusalFacts, type Log } from './platform.ts';
import { idsRegistered, isNothing, register, type Rest } from './register.ts';

export interface CommandsParts {
  readonly rest: Rest;
  readonly application: string;
  readonly declared: readonly Registered[];
  readonly log: Log;
  /** Where several processes share what is kept: one registers at a time, and the newest commands stay. */
  readonly common?: { readonly claims: Claims; readonly registrations: Registrations } | undefined;
  /** ms until what did not work is tried again. */
  readonly again?: number;
}

const AGAIN_MS = 60_000;
/** While another process registers. */
const OTHERS_MS = 500;
const CLAIM = 'commands';

export class Commands {
  private ids: ReadonlyMap<string, string> = new Map();
  private readonly closed = new AbortController();
  private readonly sign: string;
  private readonly saying: NodeJS.Timeout | undefined;

  constructor(private readonly parts: CommandsParts) {
    const { declared, common } = parts;
    this.sign = createHash('sha256').update(JSON.stringify(declared)).digest('base64url').slice(0, 22);
    if (!common) return;
    // That it is still at work: an earlier version leaves these commands as they are.
    this.saying = setInterval(
      () => void common.registrations.isNewest(this.sign).catch(() => undefined),
      SAID_EVERY_MS,
    );
    this.saying.unref();
  }

  /** The id under which the platform knows a command, once it is registered. */
  id(name: string): string | undefined {
    return this.ids.get(name);
  }

  /** Registers them; where that does not work, it is tried again by itself. Never rejects. */
  async register(): Promise<void> {
    const { log, again = AGAIN_MS } = this.parts;
    const pause = await this.tryNow().catch((error: unknown) => {
      // What is registered already goes on being answered meanwhile.
      log.warn(refusalFacts(error), 'the commands were not registered; tried again in a minute');
      return again;
    });
    if (pause === undefined) return;
    void wait(pause, undefined, { ref: false, signal: this.closed.signal }).then(
      () => this.register(),
      () => undefined,
    );
  }

  close(): void {
    clearInterval(this.saying);
    this.closed.abort();
  }

  /** ms until it is to be tried again; undefined where all is as declared. */
  private async tryNow(): Promise<number | undefined> {
    const { common, again = AGAIN_MS, log } = this.parts;
    if (!common) {
      await this.put();
      return undefined;
    }
    if (!(await common.claims.take(CLAIM))) return OTHERS_MS;
    try {
      if (await common.registrations.isNewest(this.sign)) {
        await this.put();
        return undefined;
      }
      const { rest, application } = this.parts;
      this.ids = await idsRegistered(rest, application);
      log.info({}, 'newer commands are registered by another process');
      return again;
    } finally {
      // What cannot be given back runs out.
      await common.claims.give(CLAIM).catch(() => undefined);
    }
  }

  private async put(): Promise<void> {
    const { rest, application, declared, log } = this.parts;
    const changes = await register(rest, application, declared, (ids) => {
      this.ids = ids;
    });
    if (isNothing(changes))
      log.info({ commands: declared.length }, 'the commands are registered as they are');
    else log.info(changes, 'commands registered');
  }
}
