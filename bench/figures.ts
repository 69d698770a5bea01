/** A group's shopping lists and a blanket's materials at their largest against one maker's; how often simulated lists run out. */
import { seedChance } from '../src/core/base/chance.ts';
import { Working } from '../src/core/base/working.ts';
import { reckonMaterials } from '../src/core/blanket/materials.ts';
import { piecesOf, type BlanketSpec } from '../src/core/blanket/pieces.ts';
import type { GroupEvent, GroupPlan, Happening } from '../src/core/group/events.ts';
import { replay, type GroupState } from '../src/core/group/state.ts';
import { reckonGroupYarn } from '../src/core/group/yarn.ts';
import { seedHere } from '../test/simulated.ts';
import { yarnSeason } from '../test/core/group/yarn-seasons.ts';
import { each, sideBySide } from './measure.ts';
import { digits, figuresOf, type BenchRow } from './table.ts';

const MAKERS = 500;
const KINDS = 40;
const COLOURS = ['moss', 'sand', 'clay', 'heather', 'slate', 'straw'] as const;
const colour = (index: number) => COLOURS[index % COLOURS.length] ?? 'moss';

const blanket = (kinds: number): BlanketSpec => ({
  kinds: Array.from({ length: kinds }, (_, kind) => ({
    name: `kind ${kind}`,
    shape: 'diagonal',
    size: 12,
    stitch: 'hdc',
    gauge: { stitches: 13, rows: 10, over: 10 },
    runs: [
      { colour: colour(kind), rows: 12 },
      { colour: colour(kind + 1 + Math.floor(kind / COLOURS.length)), rows: 12 },
    ],
  })),
  joining: { method: 'whip' },
  border: { rounds: [{ stitch: 'hdc', colour: 'moss' }], corner: 3 },
  yarns: COLOURS.map((name) => ({ colour: name, ball: { m: 170, g: 100 } })),
  reserve: 10,
});

/** Everybody has weighed two motifs of one kind and holds three of each of two kinds. */
function group(makers: number, kinds: number): GroupState {
  const spec = blanket(kinds);
  const plan: GroupPlan = {
    ...spec,
    name: 'allotment',
    kinds: spec.kinds.map((kind) => ({ ...kind, quota: 10 * makers, spares: 0 })),
    columns: 1,
    rows: 1,
    layout: [{ kind: 0, turn: 0 }],
    side: 15,
    tolerance: 3,
    joinable: 'anyone',
  };
  const happened = Array.from({ length: makers }, (_, index): Happening[] => {
    const maker = `m${index}`;
    const kind = index % kinds;
    return [
      { did: 'joined', maker, name: maker, perWeek: 3, colours: [] },
      { did: 'pledged', maker, kind, motifs: 5 },
      { did: 'pledged', maker, kind: (kind + 1) % kinds, motifs: 3 },
      { did: 'handed-in', maker, kind, motifs: 2, weight: 36 + (index % 11) },
    ];
  }).flat();
  const events: Happening[] = [{ did: 'opened', name: 'ines', plan }, ...happened];
  return replay(
    events.map((one, index): GroupEvent => ({
      ...one,
      by: 'maker' in one ? one.maker : 'ines',
      at: '2026-03-02T12:00:00.000Z',
      once: String(index),
    })),
  );
}

async function lists(): Promise<BenchRow> {
  const [many, one] = [group(MAKERS, KINDS), group(1, 1)];
  const compared = await sideBySide(
    5,
    () => each(() => reckonGroupYarn(many, 'm0')),
    () => each(() => reckonGroupYarn(one, 'm0')),
  );
  return {
    what: `The shopping lists of a group of ${MAKERS} makers and ${KINDS} kinds, each shrunk to what she has weighed`,
    ...figuresOf(compared, 'one maker, one kind'),
  };
}

async function materials(): Promise<BenchRow> {
  const reckon = (spec: BlanketSpec) => {
    const working = new Working();
    const counts = spec.kinds.map(() => 12);
    return reckonMaterials(piecesOf(spec, working), { columns: 20, rows: 24, counts }, working);
  };
  const [many, one] = [blanket(KINDS), blanket(1)];
  const compared = await sideBySide(
    5,
    () => each(() => reckon(many)),
    () => each(() => reckon(one)),
  );
  return {
    what: `What a 20 × 24 blanket of ${KINDS} kinds takes, every step evaluated`,
    ...figuresOf(compared, 'of one kind'),
  };
}

/** Seasons of 40 makers, as the tests simulate them. */
function coverage(seasons: number): BenchRow {
  const roll = seedChance(seedHere);
  const all = Array.from({ length: seasons }, () => yarnSeason(roll));
  const out = all.flatMap(({ ranOut }) => ranOut).filter((list) => list.out).length;
  const lists = all.reduce((sum, { ranOut }) => sum + ranOut.length, 0);
  const together = all.filter(({ togetherOut }) => togetherOut).length;
  const bought = all.reduce((sum, season) => sum + season.together / season.flat, 0) / seasons;
  return {
    what: `Lists that run out, in ${digits(seasons)} simulated seasons of 40 makers`,
    ours: `${digits((100 * out) / lists)} % of makers’ own, ${digits((100 * together) / seasons)} % of all together`,
    reference: '5 %, as is said',
    ratio: `together ${digits(bought)} of what a flat 10 % buys`,
    aim: '5 % ± 2; at most 0.95',
    note: `True yarn per motif varies by 12 % between and 4 % within makers, the reckoning is off by 7.5 %, three in four have weighed one to four motifs in whole grams; seed ${seedHere}.`,
  };
}

export async function bench(): Promise<BenchRow[]> {
  return [await lists(), await materials(), coverage(2000)];
}
