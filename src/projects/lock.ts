/**
 * One process for each data folder: a file that names its holder, taken over when the holder is dead.
 *
 * The lock says whose turn it is; what makes an overtaken holder harmless is its writing folder. Everything it writes
 * begins there and is renamed into place, and whoever takes over removes that folder before reading anything: a rename that
 * comes too late finds nothing to rename.
 */
import { randomUUID } from 'node:crypto';
import { readFileSync, readlinkSync, rmSync, unlinkSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import type { Disk } from './disk.ts';

/** Where a process lives: whether its number means anything to another one. */
export interface Machine {
  readonly host: string;
  /** Which start of the machine. */
  readonly boot: string | null;
  /** Which numbering of processes: containers of one machine have their own. */
  readonly space: string | null;
}

export interface Holder extends Machine {
  /** Never the same twice: names this one taking of the lock. */
  readonly nonce: string;
  readonly pid: number;
  /** When the process started, by the system's count, so that a number given out again is not taken for it. */
  readonly started: string | null;
  /** True where it holds the folder as long as it lives; others need not wait. */
  readonly stays: boolean;
}

export interface LockTimes {
  /** A holder shows that it is alive so often, ms. */
  readonly touch: number;
  /** One that cannot be asked is taken for dead when nothing of it moved while it was watched for so long, ms. */
  readonly silent: number;
}
const TIMES: LockTimes = { touch: 5_000, silent: 30_000 };

export interface LockOptions {
  readonly stays: boolean;
  readonly times?: LockTimes;
  readonly machine?: Machine;
  /** Told when the lock turns out not to be one's own any more. */
  readonly lost?: (why: string) => void;
}

/** The folder is, or may be, another's by now: what was remembered of it is worth nothing. */
export class HoldLost extends Error {}

/** Whether a found holder lives, as far as can be told now. */
export type Life = 'alive' | 'dead' | 'unknown';

export interface Refused {
  readonly holder: Holder;
  readonly life: Exclude<Life, 'dead'>;
}

/** A counter of one width, so that it can be written over in place and the card stays whole. */
const counted = (count: number) => String(count).padStart(12, '0');
/** Silence is counted only while it is watched: so long at most from one look to the next, ms. */
const LOOK_MS = 1_000;

function systemText(path: string): string | null {
  try {
    return readFileSync(path, 'utf8').trim();
  } catch {
    return null; // not every system tells
  }
}

function systemLink(path: string): string | null {
  try {
    return readlinkSync(path);
  } catch {
    return null;
  }
}

/** Field 22 of a process's line: counted after the name, which may hold spaces and brackets. */
const startOf = (pid: number) =>
  systemText(`/proc/${pid}/stat`)
    ?.replace(/^.*\) /s, '')
    .split(' ')[19] ?? null;

export const thisMachine = (): Machine => ({
  host: hostname(),
  boot: systemText('/proc/sys/kernel/random/boot_id'),
  space: systemLink('/proc/self/ns/pid'),
});

function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

interface Found extends Holder {
  /** Changes whenever its holder shows that it is alive; never compared with a clock. */
  readonly sign: string;
}

/** What a card says; undefined where it is not whole. */
function cardOf(text: string): Holder | undefined {
  try {
    const card = JSON.parse(text) as Partial<Holder> | null;
    if (typeof card?.nonce !== 'string' || typeof card.pid !== 'number') return undefined;
    const { host = '', boot = null, started = null, stays = false, nonce, pid } = card;
    // Locks of an earlier version name no numbering of processes.
    return { nonce, pid, started, host, boot, space: card.space ?? null, stays };
  } catch {
    return undefined;
  }
}

/** What this process holds now, in whichever of its locks. */
const ours = new Set<string>();

/** The card of one who wants the lock, before it is put in its place. */
interface Card {
  readonly path: string;
  /** Writes it whole, over whatever is there. */
  readonly write: () => Promise<void>;
}

interface Mine {
  readonly self: Holder;
  /** Where in the card its counter stands, in bytes. */
  readonly counterAt: number;
  /** Where all that is written under this lock begins. */
  readonly writing: string;
}

export class FolderLock {
  private mine: Mine | undefined;
  private touching: NodeJS.Timeout | undefined;
  private touches = 0;
  /** Moments of the last proof, by two clocks of this machine: one stands still while it sleeps, the other may be set. */
  private proven = { steady: 0, wall: 0 };
  private readonly path: string;
  private readonly times: LockTimes;
  private readonly machine: Machine;
  private readonly watched = new Map<string, { sign: string; looked: number; silent: number }>();

  constructor(
    private readonly folder: string,
    private readonly disk: Disk,
    private readonly options: LockOptions,
  ) {
    this.path = join(folder, 'lock');
    this.times = options.times ?? TIMES;
    this.machine = options.machine ?? thisMachine();
  }

  get held(): boolean {
    return this.mine !== undefined;
  }

  /** Names this one taking of the lock. */
  get token(): string | undefined {
    return this.mine?.self.nonce;
  }

  /** Takes the lock at once: undefined when it is taken, else who has it. Throws what the disk throws. */
  async take(): Promise<Refused | undefined> {
    if (this.mine) return undefined;
    const self: Holder = {
      nonce: randomUUID(),
      pid: process.pid,
      started: startOf(process.pid),
      ...this.machine,
      stays: this.options.stays,
    };
    const text = JSON.stringify({ ...self, count: counted(0) });
    const path = join(this.folder, `lock.${self.nonce}`);
    const card: Card = { path, write: () => this.disk.writeFile(path, text, { mode: 0o600 }) };
    let put = false;
    let taken = false;
    ours.add(self.nonce);
    try {
      await card.write();
      for (;;) {
        if (await this.put(card, this.path)) {
          put = true;
          const writing = await this.fence(self.nonce);
          // Whoever took it in between has removed the folder, or will.
          if ((await this.nonceAt(this.path)) === self.nonce) {
            const counterAt = Buffer.byteLength(text) - `${counted(0)}"}`.length;
            this.began({ self, counterAt, writing });
            taken = true;
            break;
          }
          await this.removeFolder(writing);
          continue;
        }
        const holder = await this.read(this.path);
        if (!holder) continue;
        const life = this.lifeOf(holder);
        if (life !== 'dead') return { holder, life };
        const rights = await this.mayClear(holder, card);
        if (!rights) return { holder, life: 'unknown' };
        // Only this process may remove that very lock now; it may be gone already.
        if ((await this.nonceAt(this.path)) === holder.nonce) await this.remove(this.path);
        // The right itself goes last, the one it rests on after it: nobody may think it free while the lock stands.
        for (const right of rights) await this.remove(right);
      }
    } finally {
      if (!taken) {
        ours.delete(self.nonce);
        if (put) await this.removeOwn(self.nonce).catch(() => undefined);
      }
      // A card that stays behind is swept by whoever holds the folder next.
      await this.remove(path).catch(() => undefined);
    }
    await this.sweepCards().catch(() => undefined);
    return undefined;
  }

  /**
   * Proves that the lock is still this one's own, by reading it. Throws HoldLost where it is not, or where that cannot be
   * told: all that rests on holding it is given up then.
   */
  async prove(): Promise<Mine> {
    const { mine } = this;
    if (!mine) throw new HoldLost('not held');
    const now = this.moment();
    let found: string | undefined;
    try {
      found = await this.namedAt(this.path);
    } catch (error) {
      this.lose(mine, `it cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown'})`);
      throw new HoldLost('the lock cannot be read', { cause: error });
    }
    if (found !== mine.self.nonce) {
      this.lose(mine, found === undefined ? 'it is gone' : 'another has it');
      throw new HoldLost('the lock is not ours');
    }
    if (this.token !== found) throw new HoldLost('let go of meanwhile');
    this.proven = now;
    return mine;
  }

  /** What is held, where that was proved within so long, ms. */
  provenWithin(ms: number): Mine | undefined {
    return this.sinceProof() <= ms ? this.mine : undefined;
  }

  /**
   * Whether what was remembered while holding may still be trusted. A process that slept, or stood still for as long,
   * counts as having lost its lock.
   */
  awake(): boolean {
    if (!this.mine) return false;
    if (this.sinceProof() <= 2 * this.times.touch) return true;
    this.lose(this.mine, 'this process slept');
    return false;
  }

  async release(): Promise<void> {
    const { mine } = this;
    if (!mine) return;
    this.end(mine);
    try {
      await this.removeFolder(mine.writing);
    } finally {
      await this.removeOwn(mine.self.nonce);
    }
  }

  /** The last resort of a process on its way out: lets go without waiting for anything. */
  releaseNow(): void {
    const { mine } = this;
    if (!mine) return;
    this.end(mine);
    try {
      rmSync(mine.writing, { recursive: true, force: true });
      if (cardOf(readFileSync(this.path, 'utf8'))?.nonce === mine.self.nonce) unlinkSync(this.path);
    } catch {
      // the next one takes it over
    }
  }

  // — holding —

  private began(mine: Mine): void {
    this.mine = mine;
    this.watched.clear();
    this.touches = 0;
    this.proven = this.moment();
    this.touching = setInterval(() => void this.touch(), this.times.touch).unref();
  }

  private end(mine: Mine): void {
    clearInterval(this.touching);
    ours.delete(mine.self.nonce);
    this.mine = undefined;
  }

  private lose(mine: Mine, why: string): void {
    if (this.mine !== mine) return;
    this.end(mine);
    this.options.lost?.(why);
  }

  /** Proves the lock and shows that its holder is alive, through one handle: another's lock is never written to. */
  private async touch(): Promise<void> {
    if (!this.awake()) return;
    try {
      const mine = await this.prove();
      const handle = await this.disk.open(this.path, 'r+');
      try {
        if (cardOf(await handle.readFile('utf8'))?.nonce !== mine.self.nonce) return;
        this.touches += 1;
        const bytes = Buffer.from(counted(this.touches));
        await handle.write(bytes, 0, bytes.length, mine.counterAt);
      } finally {
        await handle.close();
      }
      await this.sweepCards();
    } catch {
      // Lost, and said so; or a disk that refuses: whoever cannot ask for this process takes it for silent then.
    }
  }

  private moment = () => ({ steady: performance.now(), wall: Date.now() });

  private sinceProof(): number {
    const now = this.moment();
    return Math.max(now.steady - this.proven.steady, now.wall - this.proven.wall);
  }

  // — the folder that everything written begins in —

  /** Removes the writing folders of everybody else, so that nothing of theirs arrives any more, and makes one's own. */
  private async fence(token: string): Promise<string> {
    const all = join(this.folder, 'writing');
    for (const name of await this.names(all)) await this.removeFolder(join(all, name));
    const own = join(all, token);
    for (const path of [all, own]) {
      try {
        await this.disk.mkdir(path, { mode: 0o700 });
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      }
    }
    return own;
  }

  /** Removes a folder with all in it, however long somebody goes on writing there. */
  private async removeFolder(path: string): Promise<void> {
    await this.disk.rm(path, { recursive: true, force: true, maxRetries: 10 });
  }

  private async names(folder: string): Promise<string[]> {
    try {
      return await this.disk.readdir(folder);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
      throw error;
    }
  }

  /** Removes cards and rights that were left by processes that are gone; only the holder does. */
  private async sweepCards(): Promise<void> {
    for (const name of await this.names(this.folder)) {
      if (!name.startsWith('lock.')) continue;
      const path = join(this.folder, name);
      const card = await this.read(path);
      // One's own process may be in the middle of taking another's.
      if (card && !ours.has(card.nonce) && this.lifeOf(card, name) === 'dead') await this.remove(path);
    }
  }

  // — other holders —

  private lifeOf(holder: Found, watchedAs = holder.nonce): Life {
    if (holder.pid === 0) return 'dead';
    const { host, boot, space } = this.machine;
    // Its number says something only where it was given out.
    if (holder.host === host && holder.boot !== boot) return 'dead';
    if (holder.host !== host || (holder.space ?? space) !== space) return this.watch(holder, watchedAs);
    if (!alive(holder.pid)) return 'dead';
    const started = startOf(holder.pid);
    if (started !== null && holder.started !== null && started !== holder.started) return 'dead';
    // Left behind by this very process, which could not remove it then.
    return holder.pid === process.pid && !ours.has(holder.nonce) ? 'dead' : 'alive';
  }

  /** Whether one that cannot be asked moves, by this process's own clock and only while it looks. */
  private watch({ sign }: Found, as: string): Life {
    const now = performance.now();
    const seen = this.watched.get(as);
    if (!seen) {
      this.watched.set(as, { sign, looked: now, silent: 0 });
      return 'unknown';
    }
    if (seen.sign !== sign) {
      this.watched.set(as, { sign, looked: now, silent: 0 });
      return 'alive';
    }
    seen.silent += Math.min(now - seen.looked, LOOK_MS, this.times.silent / 4);
    seen.looked = now;
    return seen.silent >= this.times.silent ? 'dead' : 'unknown';
  }

  /**
   * Who may remove a dead one's lock is settled by making a file named after that one lock, which succeeds once. Had the
   * winner died before removing it, the right passes on in the same way. Returns the files that give the right.
   */
  private async mayClear(dead: Holder, card: Card): Promise<readonly string[] | undefined> {
    const right = join(this.folder, `lock.over.${dead.nonce}`);
    if (await this.put(card, right)) return [right];
    const winner = await this.read(right);
    const passed =
      winner && this.lifeOf(winner, right) === 'dead' ? await this.mayClear(winner, card) : undefined;
    return passed && [right, ...passed];
  }

  /** Puts a whole card in a place that must be free. */
  private async put(card: Card, place: string): Promise<boolean> {
    for (;;) {
      try {
        await this.disk.link(card.path, place);
        return true;
      } catch (error) {
        const { code } = error as NodeJS.ErrnoException;
        if (code === 'EEXIST') return false;
        if (code !== 'ENOENT') throw error;
        // Found half-written by a holder that sweeps, and taken for one that was left: written again.
        await card.write();
      }
    }
  }

  private async read(path: string): Promise<Found | undefined> {
    try {
      const text = await this.disk.readText(path);
      const { mtimeMs, ino } = await this.disk.stat(path);
      const sign = `${ino} ${mtimeMs} ${text}`;
      // Cut short by a power failure: nobody's.
      const nobody = { nonce: `${ino}-${Math.round(mtimeMs)}`, pid: 0, started: null, stays: false };
      return { ...(cardOf(text) ?? { ...this.machine, ...nobody }), sign };
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
      throw error;
    }
  }

  /** The same of a card that is whole. */
  private async namedAt(path: string): Promise<string | undefined> {
    try {
      return cardOf(await this.disk.readText(path))?.nonce;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
      throw error;
    }
  }

  /** Which taking of the lock a card names; undefined where there is none. */
  private async nonceAt(path: string): Promise<string | undefined> {
    return (await this.read(path))?.nonce;
  }

  /** Removes the lock where it is one's own. */
  private async removeOwn(nonce: string): Promise<void> {
    if ((await this.nonceAt(this.path)) === nonce) await this.remove(this.path);
  }

  private remove(path: string): Promise<void> {
    return this.disk.rm(path, { force: true });
  }
}
