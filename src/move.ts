/** `npm run move -- --from data --to database`: everything that is saved, from a data folder into a database or back. */
import { existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { BadEnvironment, checkEnvironment, type Environment } from './environment.ts';
import { FileStore } from './projects/file-store.ts';
import { compareAll, moveAll, OUTCOMES, type MovedKind, type Outcome } from './projects/moving.ts';
import { NotSaved } from './projects/not-saved.ts';
import type { Store } from './projects/store.ts';

const HOW = `Say from where and to where: npm run move -- --from data --to database
A data folder is named by its path, the database of DATABASE_URL by the word database or by its own address.
--replace lets what is here take the place of what is another there.`;

/** So many that stayed behind are named. */
const NAMED = 20;
/** How often it is said how far it is, in ms: to somebody who looks on, and where it is written down. */
const SAID_EVERY_MS = { seen: 200, written: 5000 };

const SAID: Readonly<Record<Outcome, string>> = {
  moved: 'moved',
  same: 'there already',
  older: 'brought up to date',
  replaced: 'replaced',
  otherwise: 'left: another is there',
  unreadable: 'left: cannot be read',
};

interface Place {
  readonly said: string;
  open(alone: boolean): Promise<Store>;
}

const isAddress = (named: string) => /^postgres(ql)?:\/\//.test(named);
const number = (n: number) => n.toLocaleString('en-US');

function placeOf(named: string, { database }: Environment): Place {
  if (named !== 'database' && !isAddress(named)) {
    return { said: `the data folder ${named}`, open: () => FileStore.open({ folder: named, stays: true }) };
  }
  const url = isAddress(named) ? checkEnvironment({ DATABASE_URL: named }).database : database;
  if (url === undefined) throw new BadEnvironment('DATABASE_URL is not set. See .env.example.');
  return {
    said: 'the database',
    open: async (alone) => {
      const { PostgresStore } = await import('./projects/postgres/store.ts');
      return PostgresStore.open({ url, alone });
    },
  };
}

/** Says how far it is: over itself where somebody looks on. */
function teller(doing: string) {
  const seen = process.stderr.isTTY;
  let last = 0;
  return (folder: string, done: number, all: number) => {
    const now = performance.now();
    if (done < all && now - last < SAID_EVERY_MS[seen ? 'seen' : 'written']) return;
    last = now;
    const line = `${doing} ${folder}: ${number(done)} of ${number(all)}`;
    process.stderr.write(seen ? `\r\x1b[K${line}${done === all ? '\n' : ''}` : `${line}\n`);
  };
}

const say = (line: string) => void process.stdout.write(`${line}\n`);

function report(moved: readonly MovedKind[]): void {
  for (const { folder, all, counts } of moved) {
    const said = OUTCOMES.filter((outcome) => counts[outcome] > 0);
    say(
      `${folder}: ${number(all)}${said.length === 0 ? '' : `, ${said.map((outcome) => `${number(counts[outcome])} ${SAID[outcome]}`).join(', ')}`}`,
    );
  }
  const left = moved.flatMap(({ folder, left }) => left.map((one) => ({ folder, ...one })));
  for (const { folder, id, outcome } of left.slice(0, NAMED)) say(`  ${folder}/${id} ${SAID[outcome]}`);
  if (left.length > NAMED) say(`  and ${number(left.length - NAMED)} more`);
}

/** Resolves with the status: 0 where everything is there now, 1 where something stayed behind. */
export async function move(
  args: readonly string[],
  environment: Environment,
  stop: AbortSignal,
): Promise<number> {
  let given;
  try {
    given = parseArgs({
      args: [...args],
      options: {
        from: { type: 'string' },
        to: { type: 'string' },
        replace: { type: 'boolean', default: false },
      },
    }).values;
  } catch {
    say(HOW);
    return 1;
  }
  const { from, to, replace } = given;
  if (from === undefined || to === undefined || from === to) {
    say(HOW);
    return 1;
  }
  const [source, target] = [placeOf(from, environment), placeOf(to, environment)];
  if (from !== 'database' && !isAddress(from) && !existsSync(from)) {
    say(`There is no data folder ${from}.`);
    return 1;
  }
  const opened: Store[] = [];
  const open = async (place: Place, alone: boolean) => {
    const store = await place.open(alone);
    opened.push(store);
    return store;
  };
  try {
    const here = await open(source, true);
    const there = await open(target, true);
    const moved = await moveAll(here, there, { replaces: replace, progress: teller('moving'), stop });
    // Compared with what is kept, not with what is remembered of writing it.
    await there.close();
    const { equal, unequal } = await compareAll(here, await open(target, false), {
      progress: teller('comparing'),
      stop,
    });
    report(moved);
    const same = unequal.length === 0;
    say(
      `Compared one by one: ${number(equal)} documents in ${source.said} and ${target.said} are the same${same ? '' : `, ${number(unequal.length)} are not`}.`,
    );
    if (same) return 0;
    if (moved.some(({ left }) => left.some(({ outcome }) => outcome === 'otherwise')))
      say('Nothing that is another there was replaced; --replace does that.');
    return 1;
  } catch (error) {
    if (!(error instanceof NotSaved)) throw error;
    say(error.message);
    say(`  ${error.hint}`);
    return 1;
  } finally {
    for (const store of opened) await store.close();
  }
}
