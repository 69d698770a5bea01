/** Kills the program again and again while people press, and keeps account of what they were told and what is on the disk. */
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PACE } from '../../../src/rooms/discord/rate.ts';
import { startBot } from './process.ts';
import { openStandIn, textOf, type As, type Message, type StandIn } from './stand-in/index.ts';

export interface KillReport {
  readonly kills: number;
  /** Presses, and those that were told that their row was counted. */
  readonly presses: number;
  readonly acknowledged: number;
  /** Presses whose process was killed before they were answered; pressed again afterwards. */
  readonly cut: number;
  /** Of those, how many had been saved all the same; pressed again they are told so, and not counted again. */
  readonly savedUntold: number;
  /** Acknowledged rows that were not on the disk. */
  readonly lost: number;
  /** Rows that one press counted twice, and interactions that were answered twice. */
  readonly twice: number;
  /** ms from the start to the first answer, of each start. */
  readonly back: readonly number[];
  /** Lines of the logs that held the token or a secret of an interaction. */
  readonly leaks: number;
}

const MOTIF = 'moss';

/**
 * Presses of one maker in one life of the program: fewer than she may make at once, whatever the machine takes for each,
 * so that none is refused as too fast. Three are left over: her motif, her first row, the question after a start.
 */
const IN_A_LIFE = PACE.burst - 3;
/** ms between an answer and her next press, so that those presses last as long as the longest life. */
const BREATH = 15;

interface Presser {
  readonly as: As;
  message: Message;
  /** The last row she was told is done. */
  row: number;
}

/** Rows on the disk of one maker. */
function onDisk(folder: string, id: string): number {
  const doc = JSON.parse(readFileSync(join(folder, 'makers', `${id}.json`), 'utf8')) as {
    progress: { motif: string; row: number }[];
  };
  return doc.progress.find(({ motif }) => motif === MOTIF)?.row ?? 0;
}

/** `within` hands out chances in [0, 1): when each kill falls. */
export async function killLoop(kills: number, people: number, within: () => number): Promise<KillReport> {
  const platform = await openStandIn();
  const folder = mkdtempSync(join(tmpdir(), 'kills-'));
  const count = { presses: 0, acknowledged: 0, cut: 0, savedUntold: 0, lost: 0, twice: 0, leaks: 0 };
  const back: number[] = [];
  let bot = await startBot(platform, folder);
  const pressers: Presser[] = [];
  try {
    for (let index = 0; index < people; index++) {
      const as = { user: platform.person(`maker-${index}`) };
      await platform.slash('motif define', { name: MOTIF, shape: 'diagonal', size: 400 }, as);
      const first = await platform.slash('progress next', { motif: MOTIF }, as);
      if (!first.message) throw new Error(`no first row: ${bot.output()}`);
      pressers.push({ as, message: first.message, row: rowIn(first.message) });
    }
    for (let kill = 0; kill <= kills; kill++) {
      const round = { over: false };
      const pressing = Promise.all(pressers.map((presser) => press(platform, presser, round, count)));
      // What goes wrong before it is waited for goes wrong there.
      pressing.catch(() => undefined);
      if (kill === kills) {
        // The last time it may finish.
        await wait(300);
        round.over = true;
        await pressing;
        break;
      }
      await wait(20 + 400 * within());
      round.over = true;
      const ended = bot.end('SIGKILL');
      await ended;
      platform.driver.patience = { first: 50, settled: 50 };
      await pressing;
      count.leaks += leaksIn(bot.output(), platform);
      for (const { as, row } of pressers) {
        const kept = onDisk(folder, as.user.id);
        if (kept < row) count.lost += 1;
        if (kept > row) count.savedUntold += 1;
      }
      platform.driver.patience = { first: 3_000, settled: 15_000 };
      const began = performance.now();
      bot = await startBot(platform, folder);
      await platform.slash('settings show', {}, pressers[0]!.as);
      back.push(performance.now() - began);
    }
    for (const { as, row } of pressers) {
      if (onDisk(folder, as.user.id) < row) count.lost += 1;
      if (onDisk(folder, as.user.id) > row) count.twice += 1;
    }
    for (const { callbacks } of platform.world.interactions.values()) if (callbacks > 1) count.twice += 1;
    await bot.end('SIGTERM');
    count.leaks += leaksIn(bot.output(), platform);
    return { kills, ...count, back };
  } finally {
    bot.child.kill('SIGKILL');
    await platform.close();
  }
}

/** Presses until the round is over, and once more for what was not answered. */
async function press(
  platform: StandIn,
  presser: Presser,
  round: { readonly over: boolean },
  count: { presses: number; acknowledged: number; cut: number; twice: number },
): Promise<void> {
  for (let pressed = 0; !round.over && pressed < IN_A_LIFE; pressed++) {
    const label = `Row ${presser.row + 1} done`;
    count.presses += 1;
    const seen = await platform.press(presser.message, label, presser.as);
    if (seen.kind !== 'message' || !seen.message) {
      count.cut += 1;
      continue;
    }
    const row = rowIn(seen.message);
    count.acknowledged += 1;
    if (row !== presser.row + 1) count.twice += 1;
    presser.row = row;
    presser.message = seen.message;
    await wait(BREATH);
  }
}

/** The row that a message says is done: its button is for the one after. */
function rowIn(message: Message): number {
  const labels = message.components.flatMap(({ components = [] }) =>
    components.map(({ label }) => label ?? ''),
  );
  const next = labels
    .map((label) => /^Row (\d+) done$/.exec(label)?.[1])
    .find((found) => found !== undefined);
  if (next === undefined) throw new Error(`no row in: ${textOf(message)}`);
  return Number(next) - 1;
}

function leaksIn(output: string, { token, world }: StandIn): number {
  const secrets = [token, ...world.tokens.keys()];
  return output.split('\n').filter((line) => secrets.some((secret) => line.includes(secret))).length;
}

const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
