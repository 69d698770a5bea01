/**
 * A season of a large group blanket on the real store: sixty makers, four hundred motifs, drop-outs, returns, another
 * organiser, a restart in the middle. Whoever is away is asked kindly before what she holds is offered again.
 */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { seedChance } from '../../src/core/base/chance.ts';
import { openFor, replay, countSpokenFor, type GroupState } from '../../src/core/group/state.ts';
import { FileStore } from '../../src/projects/file-store.ts';
import { Projects } from '../../src/projects/projects.ts';
import { asking, NOON, type Asking } from '../asking.ts';

const DAY = 86_400_000;
const KINDS = ['furrow', 'trellis', 'compost', 'shed'];
const COLOURS = ['moss', 'sand', 'plum', 'straw'];
const MAKERS = Array.from({ length: 60 }, (_, n) => `maker${n + 1}`);
const SPARES = 3;

let folder: string;
let store: FileStore;
let room: Asking;
const start = async () => {
  store = await FileStore.open({ folder, stays: true });
  room = asking(new Projects(store));
};
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'season-'));
  await start();
});
afterAll(async () => {
  await store.close();
  await rm(folder, { recursive: true });
});

const must = async (line: string) => {
  const said = await room.ask(line);
  expect(said.ok, `${line}: ${said.problem} ${said.hint}`).toBe(true);
  return said;
};
const stateNow = async (): Promise<GroupState> =>
  (await room.projects.groups.named(undefined, 'allotment throw'))!.state;
const heldBy = (state: GroupState, maker: string) => state.pledges.get(maker) ?? KINDS.map(() => 0);

describe('a season', () => {
  it('ends with every cell filled, nothing promised twice, and a board that agrees', async () => {
    const chance = seedChance(2026);
    const roll = (below: number) => Math.floor(chance() * below);
    let now = NOON.getTime();
    for (const [index, kind] of KINDS.entries())
      await must(
        `ines: /motif define name:${kind} shape:diagonal size:12 colours:"12 rows ${COLOURS[index]!}, 12 rows sand" gauge:13x10`,
      );
    await must(
      `ines: /blanket start name:"allotment throw" kinds:"${KINDS.join(', ')}" columns:20 rows:20 border:"sc"`,
    );
    await must(`ines: /together open spares:${SPARES} side:15cm closes:2026-08-31`);
    const { plan } = await stateNow();
    expect(plan.kinds.reduce((sum, { quota }) => sum + quota, 0)).toBe(400);

    // One after the other, as chats are; the colours decide what a share may hold.
    for (const [n, maker] of MAKERS.entries())
      await must(
        `${maker}: /together join per_week:${1 + (n % 3)}${n % 5 === 0 ? ` colours:"sand, ${COLOURS[n % 4]!}"` : ''}`,
      );
    const gone = new Set<string>();
    const away = new Set(MAKERS.filter((_, n) => n % 15 === 7));
    let [organiser, returned, offered, refused] = ['ines', 0, 0, 0];

    let week = 0;
    for (; week < 40; week++) {
      const before = await stateNow();
      if (before.plan.kinds.every(({ quota }, kind) => before.tally[kind]!.accepted >= quota)) break;
      for (const maker of MAKERS) {
        now += 60_000;
        room.at(new Date(now));
        if (gone.has(maker) || (away.has(maker) && week >= 1)) continue;
        // Within a week nobody but she herself changes what she holds.
        const held = heldBy(before, maker);
        const kind = roll(KINDS.length);
        if (week > 1 && week < 12 && chance() < 0.01) {
          await must(`${maker}: /together leave`);
          gone.add(maker);
        } else if (held.some((motifs) => motifs > 0) && chance() < 0.75) {
          const which = held.findIndex((motifs) => motifs > 0);
          const motifs = 1 + roll(Math.min(3, held[which]!));
          await must(
            `${maker}: /together handin kind:${KINDS[which]!} motifs:${motifs} side:${(14.6 + chance() * 0.8).toFixed(1)}cm`,
          );
        } else if (chance() < 0.5) {
          // Asked of whatever kind comes to mind, so that some find it taken.
          const said = await room.ask(
            `${maker}: /together pledge kind:${KINDS[kind]!} motifs:${1 + roll(3)}`,
          );
          if (!said.ok) {
            refused++;
            expect(said.hint).toMatch(/^Still open: /);
          }
        } else if (held[kind]! > 0 && chance() < 0.2)
          await must(`${maker}: /together giveback kind:${KINDS[kind]!}`);
      }
      now += 7 * DAY - MAKERS.length * 60_000;
      room.at(new Date(now));
      const waiting = (await must(`${organiser}: /host accept`)).data.waiting as number[];
      const back = waiting.filter(() => chance() < 0.06);
      const good = waiting.filter((piece) => !back.includes(piece));
      if (back.length > 0)
        await must(`${organiser}: /host return motifs:"${back.join(' ')}" reason:"a corner is loose"`);
      if (good.length > 0) await must(`${organiser}: /host accept motifs:"${good.join(' ')}"`);
      returned += back.length;

      if (week === 1) {
        // What was pledged may be given by share-out too; and it comes back in one piece.
        const open = (await stateNow()).tally;
        await must(`${organiser}: /host shares apply:yes`);
        await must(`${organiser}: /together undo`);
        expect((await stateNow()).tally).toEqual(open);
      }
      if (week === 3) {
        await must(`ines: /together handover maker:maker1`);
        await must('maker1: /together handover answer:yes');
        organiser = 'maker1';
        expect((await room.ask('ines: /host close')).ok).toBe(false);
      }
      if (week === 4) {
        const saved = await stateNow();
        await store.close();
        await start();
        room.at(new Date(now));
        expect(await stateNow()).toEqual(saved);
      }
      if (week === 5) await must(`maker60: /settings erase confirm:yes`).then(() => gone.add('maker60'));
      if (week > 3) {
        const pace = await must(`${organiser}: /together pace`);
        for (const { maker } of (pace.data.quiet ?? []) as { maker: string }[]) {
          const offer = await room.ask(`${organiser}: /host remind maker:${maker} do:offer`);
          if (offer.ok) offered++;
          // Those already asked are left in peace until their week is over.
          else if (offer.problem.includes('has not been asked') && maker !== 'a maker')
            await must(`${organiser}: /host remind maker:${maker}`);
        }
      }
      const state = await stateNow();
      state.plan.kinds.forEach(({ quota, spares }, kind) =>
        expect(countSpokenFor(state, kind) + openFor(state, kind)).toBe(quota + spares),
      );
      // Makers who stay take what others have let go of.
      if (week > 8) {
        const shares = await room.ask(`${organiser}: /host shares spares:no`);
        if (shares.ok && shares.figures['shared']!.value > 0)
          await must(`${organiser}: /host shares apply:yes shown:${String(shares.data.shown)}`);
      }
    }

    const { state, doc } = (await room.projects.groups.named(undefined, 'allotment throw'))!;
    expect(week).toBeLessThan(40);
    expect(gone.size).toBeGreaterThan(3);
    expect(returned).toBeGreaterThan(5);
    expect(offered).toBeGreaterThan(0);
    expect(refused).toBeGreaterThan(0);
    expect(replay(doc.events)).toEqual(state);
    // Counted anew from the events alone, by hand.
    const accepted = doc.events.flatMap((event) => (event.did === 'accepted' ? event.pieces : []));
    expect(new Set(accepted).size).toBe(accepted.length);
    expect(state.pieces.filter((piece) => piece.state === 'accepted').map(({ piece }) => piece)).toEqual(
      [...accepted].sort((a, b) => a - b),
    );
    const board = await must('/together board');
    expect(board.figures['accepted']?.value).toBe(accepted.length);
    expect(board.figures['wanted']?.value).toBe(400);
    const kinds = board.data.kinds as {
      accepted: number;
      handedIn: number;
      pledged: number;
      open: number;
      quota: number;
    }[];
    kinds.forEach((kind) => {
      expect(kind.accepted).toBeGreaterThanOrEqual(kind.quota);
      expect(kind.accepted + kind.handedIn + kind.pledged + kind.open).toBe(kind.quota + SPARES);
    });
    const put = await must(`${organiser}: /host assemble`);
    expect(put.figures['missing']?.value).toBe(0);
    expect(new Set(put.data.cells).size).toBe(400);
    expect(put.figures['neighbours_differ']!.value).toBeLessThan(put.figures['by_arrival']!.value / 3);
    expect(JSON.stringify(doc)).not.toContain('"maker60"');
    expect(room.faults).toEqual([]);
  }, 120_000);
});
