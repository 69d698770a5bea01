/** `npm run move -- --from data --to database`: everything that is saved, from a data folder into a database or back. */
import { existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { BadEnvironment, checkEnvironment, type Environment } from './environment.ts';
import { FileStore } from './projects/file-store.ts';
import { compareAll, moveAll, OUTCOMES, type MovedKind, type Outcome } from './projects/moving.ts';
import { NotSaved } from './projects/not-saved.ts';
import type { Store } from './projects/store.ts';
import { mustBeWhole, noteBegun, noteEnded, type Named } from './projects/unfinished.ts';

const HOW = `Say from where and to where: npm run move -- --from data --to database
A data folder is named by its path, the database of DATABASE_URL by the word database or by its own address.
--replace lets what is here take the place of what is another there.
npm run move -- --to database --as-it-is moves nothing: what a broken move left there is taken for all of it.`;

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

interface Place extends Named {
  /** Opens it, held: nobody else writes into it meanwhile. */
  open(): Promise<Store>;
  /** The same once more, of which nothing is remembered yet. */
  again(store: Store): Promise<Store>;
}

const isAddress = (named: string) => /^postgres(ql)?:\/\//.test(named);
const isFolder = (named: string) => named !== 'database' && !isAddress(named);
const number = (n: number) => n.toLocaleString('en-US');

function placeOf(named: string, { database }: Environment): Place {
  if (isFolder(named)) {
    const open = () => FileStore.open({ folder: named, stays: true });
    return { said: `the data folder ${named}`, named, open, again: (store) => store.close().then(open) };
  }
  const url = isAddress(named) ? checkEnvironment({ DATABASE_URL: named }).database : database;
  if (url === undefined) throw new BadEnvironment('DATABASE_URL is not set. See .env.example.');
  const open = async () => {
    const { PostgresStore } = await import('./projects/postgres/store.ts');
    return PostgresStore.open({ url, moves: true });
  };
  return {
    said: 'the database',
    // Where it is named by its address, that holds a password.
    named: 'database',
    open,
    // Never let go of between the two.
    again: async (store) => {
      const next = await open();
      await store.close();
      return next;
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
  const given = readArgs(args);
  if (given === undefined) {
    say(HOW);
    return 1;
  }
  const { to, replace } = given;
  const target = placeOf(to, environment);
  const opened: Store[] = [];
  const open = async (place: Place) => {
    const store = await place.open();
    opened.push(store);
    return store;
  };
  try {
    if ('asItIs' in given) {
      await noteEnded(await open(target));
      say(`What is in ${target.said} is taken for all of it.`);
      return 0;
    }
    const source = placeOf(given.from, environment);
    if (isFolder(given.from) && !existsSync(given.from)) {
      say(`There is no data folder ${given.from}.`);
      return 1;
    }
    const here = await open(source);
    await mustBeWhole(here, source);
    const there = await open(target);
    await noteBegun(there, new Date());
    const moved = await moveAll(here, there, { replaces: replace, progress: teller('moving'), stop });
    // Compared with what is kept, not with what is remembered of writing it.
    const kept = await target.again(there);
    opened.push(kept);
    const { equal, unequal } = await compareAll(here, kept, { progress: teller('comparing'), stop });
    await noteEnded(kept);
    report(moved);
    return conclude({ moved, equal, unequal: unequal.length }, source, target);
  } catch (error) {
    if (!(error instanceof NotSaved)) throw error;
    say(error.message);
    say(`  ${error.hint}`);
    return 1;
  } finally {
    for (const store of opened) await store.close();
  }
}

/** What came of comparing, in words; resolves with the status. */
function conclude(
  { moved, equal, unequal }: { moved: readonly MovedKind[]; equal: number; unequal: number },
  source: Place,
  target: Place,
): number {
  const same = unequal === 0;
  say(
    `Compared one by one: ${number(equal)} documents in ${source.said} and ${target.said} are the same${same ? '' : `, ${number(unequal)} are not`}.`,
  );
  if (same) return 0;
  if (moved.some(({ left }) => left.some(({ outcome }) => outcome === 'otherwise')))
    say('Nothing that is another there was replaced; --replace does that.');
  return 1;
}

type Given =
  | { readonly from: string; readonly to: string; readonly replace: boolean }
  | { readonly to: string; readonly asItIs: true; readonly replace: boolean };

/** What is asked for; undefined where it cannot be told. */
function readArgs(args: readonly string[]): Given | undefined {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: {
        from: { type: 'string' },
        to: { type: 'string' },
        replace: { type: 'boolean', default: false },
        'as-it-is': { type: 'boolean', default: false },
      },
    });
    const { from, to, replace } = values;
    if (to === undefined || from === to) return undefined;
    if (values['as-it-is']) return from === undefined && !replace ? { to, asItIs: true, replace } : undefined;
    return from === undefined ? undefined : { from, to, replace };
  } catch {
    return undefined;
  }
}
