/** Changes a second of what several processes share in a PostgreSQL, against one process on files of its own. */
import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { FileStore } from '../src/projects/file-store.ts';
import { PostgresStore } from '../src/projects/postgres/store.ts';
import { beginDiary } from '../test/postgres/counted.ts';
import { Server } from '../test/postgres/server.ts';
import { bundled } from '../test/projects/children/run.ts';
import { median } from './measure.ts';
import { digits, type BenchRow } from './table.ts';

const SECONDS = 1;
const ROUNDS = 3;
/** Presses under way, in all processes together. */
const IN_FLIGHT = 64;
const PROCESSES = [1, 2, 4];

/** Starts so many that press on a place, lets them begin together, and gives how many presses a second there were in all. */
async function pressed(
  script: string,
  place: string,
  processes: number,
  mode: 'one' | 'many',
  id: string,
): Promise<number> {
  const children = Array.from({ length: processes }, (_, index) => {
    const each = String(IN_FLIGHT / processes);
    const args = [script, place, `p${index}`, each, mode, String(SECONDS), id];
    return spawn(process.execPath, args, { stdio: ['pipe', 'pipe', 'inherit'] });
  });
  let open = 0;
  const counts = await Promise.all(
    children.map(
      (child) =>
        new Promise<number>((resolve) => {
          let presses = 0;
          createInterface({ input: child.stdout }).on('line', (line) => {
            if (line === 'open' && ++open === processes) for (const one of children) one.stdin.write('go\n');
            if (line.startsWith('presses ')) presses = Number(line.slice('presses '.length));
          });
          child.on('close', () => resolve(presses));
        }),
    ),
  );
  return counts.reduce((sum, count) => sum + count, 0) / SECONDS;
}

export async function bench(): Promise<BenchRow[]> {
  const script = await bundled(join(import.meta.dirname, '../test/postgres/pressing.ts'));
  const folder = await mkdtemp(join(tmpdir(), 'bench-'));
  const server = await Server.begin({ sure: true });
  try {
    /** A blanket of its own for each measurement, so that none is longer than the others’. */
    const begun = async (place: string, id: string) => {
      const store =
        place === folder
          ? await FileStore.open({ folder, stays: true })
          : await PostgresStore.open({ url: place });
      await beginDiary(store, id);
      await store.close();
      return id;
    };
    const rows: BenchRow[] = [];
    for (const [mode, what] of [
      ['one', 'presses on one busy blanket'],
      ['many', `changes of ${IN_FLIGHT} makers’ own documents`],
    ] as const) {
      const seen = new Map<string, number[]>();
      const note = (who: string, rate: number) => seen.set(who, [...(seen.get(who) ?? []), rate]);
      for (let round = 0; round < ROUNDS; round++) {
        const id = `${mode}${round}`;
        note('files', await pressed(script, folder, 1, mode, await begun(folder, id)));
        for (const processes of PROCESSES) {
          const place = server.url();
          note(
            String(processes),
            await pressed(script, place, processes, mode, await begun(place, `${id}.${processes}`)),
          );
        }
      }
      const files = median(seen.get('files') ?? []);
      for (const processes of PROCESSES) {
        const rates = seen.get(String(processes)) ?? [];
        rows.push({
          what: `PostgreSQL, ${processes} ${processes === 1 ? 'process' : 'processes'}: ${what}`,
          ours: `${digits(median(rates))} a second`,
          reference: `one process on files: ${digits(files)} a second`,
          ratio: digits(median(rates.map((rate, round) => rate / (seen.get('files')?.[round] ?? NaN)))),
          note: `${IN_FLIGHT} under way in all processes together, ${ROUNDS} rounds of ${SECONDS} s in turn; every change on the disk before it is answered (the server with fsync and synchronous_commit on). Server, processes and files on the same machine, so that more processes are not more processors.`,
        });
      }
    }
    return rows;
  } finally {
    await server.throwAway();
    await rm(folder, { recursive: true, force: true });
  }
}
