/** One process for each data folder: a file that names its holder, taken over when the holder is dead. */
import { randomUUID } from 'node:crypto';
import { readFileSync, unlinkSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import type { Disk } from './disk.ts';

export interface Holder {
  /** Never the same twice: names this one taking of the lock. */
  readonly nonce: string;
  readonly pid: number;
  /** When the process started, by the system's count, so that a number given out again is not taken for it. */
  readonly started: string | null;
  /** Which start of the machine it lives in. */
  readonly boot: string | null;
  readonly host: string;
  /** True where it holds the folder as long as it lives; others need not wait. */
  readonly stays: boolean;
}

/** A holder on another machine is taken for dead when it has not touched its lock for so long. */
const SILENT_MS = 60_000;
const TOUCH_MS = 10_000;

function systemText(path: string): string | null {
  try {
    return readFileSync(path, 'utf8').trim();
  } catch {
    return null; // not every system tells
  }
}

/** Field 22 of a process's line: counted after the name, which may hold spaces and brackets. */
const startOf = (pid: number) =>
  systemText(`/proc/${pid}/stat`)
    ?.replace(/^.*\) /s, '')
    .split(' ')[19] ?? null;
const boot = () => systemText('/proc/sys/kernel/random/boot_id');

function alive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

type Found = Holder & { readonly touched: number };

function isDead(holder: Found): boolean {
  if (holder.pid === 0) return true;
  if (holder.host !== hostname()) return Date.now() - holder.touched > SILENT_MS;
  if (holder.boot !== boot() || !alive(holder.pid)) return true;
  const started = startOf(holder.pid);
  return started !== null && holder.started !== null && started !== holder.started;
}

export class FolderLock {
  private mine: Holder | undefined;
  private touching: NodeJS.Timeout | undefined;
  private readonly path: string;

  constructor(
    private readonly folder: string,
    private readonly disk: Disk,
    private readonly stays: boolean,
  ) {
    this.path = join(folder, 'lock');
  }

  get held(): boolean {
    return this.mine !== undefined;
  }

  /** Takes the lock at once: undefined when it is taken, else who has it. Throws what the disk throws. */
  async take(): Promise<Holder | undefined> {
    if (this.mine) return undefined;
    const self: Holder = {
      nonce: randomUUID(),
      pid: process.pid,
      started: startOf(process.pid),
      boot: boot(),
      host: hostname(),
      stays: this.stays,
    };
    const card = join(this.folder, `lock.${self.nonce}`);
    try {
      await this.disk.writeFile(card, JSON.stringify(self), { flag: 'wx' });
      while (!(await this.put(card, this.path))) {
        const holder = await this.read(this.path);
        if (!holder) continue;
        const rights = isDead(holder) ? await this.mayClear(holder, card) : undefined;
        if (!rights) return holder;
        // Only this process may remove that very lock now; it may be gone already.
        if ((await this.read(this.path))?.nonce === holder.nonce) await this.remove(this.path);
        // The right itself goes last, the one it rests on after it: nobody may think it free while the lock stands.
        for (const right of rights) await this.remove(right);
      }
    } finally {
      await this.remove(card);
    }
    this.mine = self;
    this.touching = setInterval(() => void this.touch(), TOUCH_MS).unref();
    return undefined;
  }

  async release(): Promise<void> {
    const mine = this.mine;
    if (!mine) return;
    clearInterval(this.touching);
    this.mine = undefined;
    if ((await this.read(this.path))?.nonce === mine.nonce) await this.remove(this.path);
  }

  /** The last resort of a process on its way out: lets go without waiting for anything. */
  releaseNow(): void {
    if (!this.mine) return;
    this.mine = undefined;
    try {
      unlinkSync(this.path);
    } catch {
      // the next one takes it over
    }
  }

  /**
   * Who may remove a dead one's lock is settled by making a file named after that one lock, which succeeds once. Had the
   * winner died before removing it, the right passes on in the same way. Returns the files that give the right.
   */
  private async mayClear(dead: Holder, card: string): Promise<readonly string[] | undefined> {
    const right = join(this.folder, `lock.over.${dead.nonce}`);
    if (await this.put(card, right)) return [right];
    const winner = await this.read(right);
    const passed = winner && isDead(winner) ? await this.mayClear(winner, card) : undefined;
    return passed && [right, ...passed];
  }

  /** Puts a whole card in a place that must be free. */
  private async put(card: string, place: string): Promise<boolean> {
    try {
      await this.disk.link(card, place);
      return true;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
      throw error;
    }
  }

  private async read(path: string): Promise<Found | undefined> {
    try {
      const { mtimeMs, ino } = await this.disk.stat(path);
      const text = await this.disk.readFile(path, 'utf8');
      try {
        return { ...(JSON.parse(text) as Holder), touched: mtimeMs };
      } catch {
        // Cut short by a power failure: nobody's.
        return {
          nonce: `${ino}-${Math.round(mtimeMs)}`,
          pid: 0,
          started: null,
          boot: null,
          host: hostname(),
          stays: false,
          touched: mtimeMs,
        };
      }
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
      throw error;
    }
  }

  private remove(path: string): Promise<void> {
    return this.disk.rm(path, { force: true });
  }

  private async touch(): Promise<void> {
    const now = new Date();
    await this.disk.utimes(this.path, now, now).catch(() => undefined);
  }
}
