/** The own numbers of a thousand makers for one part of a make-along, each of another gauge or wish, against those of one maker. */
import { Working } from '../src/core/base/working.ts';
import type { AlongPlan, Way } from '../src/core/along/events.ts';
import { reckonPart } from '../src/core/along/numbers.ts';
import { alone, planAlong } from '../src/core/along/open.ts';
import { NO_WAY, reckonOwn } from '../src/core/along/own.ts';
import { sideBySide, timed } from './measure.ts';
import { figuresOf, type BenchRow } from './table.ts';

const MAKERS = 1000;
const PART = 3;

const PLAN: AlongPlan = planAlong({
  pattern: {
    ...alone({
      name: 'furrow',
      shape: 'diagonal',
      size: 12,
      stitch: 'hdc',
      gauge: { stitches: 13, rows: 10, over: 10 },
      runs: [
        { colour: 'moss', rows: 12 },
        { colour: 'sand', rows: 12 },
      ],
    }),
    columns: 8,
    rows: 10,
    counts: [80],
  },
  name: 'class',
  starts: '2031-01-06',
  every: 7,
  shares: undefined,
  list: undefined,
  hour: 9,
  zone: 'UTC',
  today: '2031-01-01',
});

/** No two alike. */
const wayOf = (maker: number): Way => ({
  ...NO_WAY,
  gauge: { stitches: 10 + (maker % 40) / 4, rows: 8 + Math.floor(maker / 40) / 4, over: 10 },
  ball: { m: 150 + (maker % 7) * 10, g: 50 },
  width: 100 + (maker % 13) * 5,
  height: 130,
});

function read(way: Way): number {
  const part = PLAN.parts[PART];
  if (!part) throw new Error('the plan has no such part');
  return reckonPart(reckonOwn(PLAN, way), PLAN.parts, part, new Working()).yarn ?? 0;
}

export async function bench(): Promise<BenchRow[]> {
  const ways = Array.from({ length: MAKERS }, (_, maker) => wayOf(maker));
  if (ways.some((way) => !(read(way) > 0))) throw new Error('a maker has no numbers');
  const all = () => timed(() => ways.map(read));
  const one = () => timed(() => read(ways[0] ?? NO_WAY));
  const compared = await sideBySide(5, all, one);
  return [
    {
      what: `The own numbers of ${MAKERS.toLocaleString('en-US')} makers for a part`,
      ...figuresOf(compared, 'those of one'),
      note: 'Each of another gauge, ball and wished size: every blanket is made from the teacher’s anew, its motif sized, its yarn reckoned.',
    },
  ];
}
