/** Which questions keep the listening thread longest, asked about the largest that may be saved: `npm run bench -- largest`. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { FileStore } from '../src/projects/file-store.ts';
import { holds, LARGEST, lines, saveLargest, slowness } from '../test/attack/largest.ts';
import { time, type BenchRow } from './table.ts';

const AIM_MS = 50;
const SLOWEST = 10;

export async function bench(): Promise<BenchRow[]> {
  const folder = await mkdtemp(join(tmpdir(), 'largest-'));
  const store = await FileStore.open({ folder, stays: true });
  try {
    const projects = await saveLargest(store, LARGEST);
    const slow = slowness();
    const all = lines();
    const held = await holds(projects, all, AIM_MS * slow);
    const longest = new Map<string, (typeof held)[number]>();
    for (const one of held) if (!longest.has(one.path)) longest.set(one.path, one);
    return [...longest.values()].slice(0, SLOWEST).map(({ path, ms }, place) => ({
      what: `Longest hold of the listening thread by /${path}, place ${place + 1}`,
      ours: time(ms),
      reference: `${time(AIM_MS * slow)}, ${AIM_MS} ms at this machine’s pace just now`,
      ratio: (ms / AIM_MS / slow).toFixed(2),
      aim: 'at most 1',
      note: `${all.length.toLocaleString('en-US')} lines of every question, each option at its most, about a maker’s ${LARGEST.cells.toLocaleString('en-US')} places and ${LARGEST.stripes.toLocaleString('en-US')} stripes and a group’s ${LARGEST.events.toLocaleString('en-US')} events; work of the thread in one piece, the middle of five where the first was over the aim; the machine was ${slow.toFixed(1)} × as slow as the one on which the aim was set.`,
    }));
  } finally {
    await store.close();
    await rm(folder, { recursive: true, force: true });
  }
}
