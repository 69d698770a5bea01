/** Worked answers, a whole line in and a whole text out, against the bare arithmetic of the same answers. */
import { asking } from '../test/asking.ts';
import { each, eachOf, sideBySide } from './measure.ts';
import { figuresOf, type BenchRow } from './table.ts';

/** Many short ones: the machine is left alone for moments only. */
const ROUNDS = 40;

/** Tail of a seam and the longest strand in metres, as the answers reckon them. */
const TAIL = 0.15;
const STRAND = 1.5;

/**
 * The mix: questions that need nothing saved, and beside each its arithmetic as a plain function of its numbers. The figures
 * of both are held to each other before anything is timed.
 */
const MIX: readonly { readonly line: string; readonly plain: () => Record<string, number> }[] = [
  {
    line: '/stitches row shape:diagonal size:12 row:9',
    plain: () => {
      const row = 9;
      const size = 12;
      return { stitches: 2 * row + 1, so_far: row ** 2 + 2 * row, total: 2 * size ** 2 + 2 * size };
    },
  },
  {
    line: '/stitches repeat multiple:6 plus:1 near:100',
    plain: () => {
      const below = Math.floor((100 - 1) / 6) * 6 + 1;
      const above = below === 100 ? below : below + 6;
      const nearest = above - 100 <= 100 - below ? above : below;
      return { below, above, nearest, foundation_chain: nearest + 1 };
    },
  },
  {
    line: '/gauge compare have:13x10 want:14x11',
    plain: () => ({ width_percent: 100 * (14 / 13 - 1), height_percent: 100 * (11 / 10 - 1) }),
  },
  {
    line: '/yardage weighed motif:12g motifs:80 ball:170m/100g',
    plain: () => {
      const yarn_each = (12 * 170) / 100;
      const yarn_total = yarn_each * 80 * (1 + 10 / 100);
      return { yarn_each, yarn_total, balls: Math.ceil(Math.round((yarn_total / 170) * 1e6) / 1e6) };
    },
  },
  {
    line: '/border spacing width:120cm height:150cm gauge:13x10',
    plain: () => {
      const along = (length: number) => Math.ceil(Math.round(((length * 13) / 10) * 1e6) / 1e6 - 1 / 2);
      const across = along(120);
      const down = along(150);
      return { across, down, round_total: 2 * (across + down) + 4 * 3 };
    },
  },
  {
    line: '/joining columns:8 rows:10 side:15cm method:whip',
    plain: () => {
      const seams = 10 * (8 - 1) + (10 - 1);
      const thickness = 25.4 / 10.5;
      const pitch = 0.9654 * (5 + thickness);
      const stitch = 2 * Math.sqrt((2 * thickness) ** 2 + (pitch / 2) ** 2) + 3 * thickness;
      const strandsOf = (seam: number) => Math.ceil(((seam / 100) * (stitch / pitch)) / (STRAND - 2 * TAIL));
      const strands = 10 * (8 - 1) * strandsOf(15) + (10 - 1) * strandsOf(8 * 15);
      return {
        seam_length: (15 * ((8 - 1) * 10 + (10 - 1) * 8)) / 100,
        seams,
        tails: strands * 2 * TAIL,
      };
    },
  },
];

export async function bench(): Promise<BenchRow[]> {
  const room = asking();
  for (const { line, plain } of MIX) {
    const { figures } = await room.ask(line);
    for (const [key, value] of Object.entries(plain())) {
      const worked = figures[key]?.value;
      if (worked === undefined || Math.abs(worked - value) > 1e-9 * Math.max(1, Math.abs(value)))
        throw new Error(`${line}: ${key} is ${worked ?? 'missing'}, by plain arithmetic ${value}`);
    }
  }
  const lines = MIX.map(({ line }) => line);
  const plains = MIX.map(({ plain }) => plain);
  const worked = async () => {
    for (const line of lines) await room.text(line);
  };
  let seen = 0;
  const bare = () => {
    // Summed up, so that the arithmetic cannot be left out as unused.
    for (const plain of plains) for (const value of Object.values(plain())) seen += value;
  };
  const ofOne = async (taken: Promise<number>) => (await taken) / MIX.length;
  const compared = await sideBySide(
    ROUNDS,
    () => ofOne(each(worked, 100)),
    () => ofOne(eachOf(1000, bare, 30)),
  );
  if (!Number.isFinite(seen)) throw new Error('the plain arithmetic came to nothing');
  const aside = 'the same figures by plain arithmetic, no text';
  return [
    {
      what: 'Worked answers: a line read, its options checked, every step evaluated and written out',
      ...figuresOf(compared, aside),
      aim: 'p10 < 40 µs',
      note: 'Six questions in turn that need nothing saved, in one thread; their figures are held to the plain ones first.',
    },
  ];
}
