/** `/resize` on a wide-open wish against trying every combination in a plain double loop. */
import { isDeepStrictEqual } from 'node:util';
import {
  MOST_OPTIONS,
  rankOptions,
  search,
  listSizesAround,
  type MotifSize,
  type ResizeOption,
  type Wish,
} from '../src/core/size/resize.ts';
import { asking } from '../test/asking.ts';
import { searchExhaustively } from '../test/core/size/exhaustively.ts';
import { each, sideBySide } from './measure.ts';
import { figuresOf, type BenchRow } from './table.ts';

/** Many short ones: the machine is left alone for moments only. */
const ROUNDS = 40;
const WISH: Wish = { width: 400, height: 400, border: 4, endsAMotif: 2 };
const SIZES = listSizesAround({ stitches: 13, rows: 10, over: 10 }, 8, 1);
const LINE = '/resize width:400cm height:400cm border:4cm gauge:13x10 size:8 row_step:1';

/** Every combination up to twice the wish, the best dozen kept on the way: no list of them all, no sorting at the end. */
function doubleLoop(wish: Wish, sizes: readonly MotifSize[]): { best: ResizeOption[]; tried: number } {
  const best: ResizeOption[] = [];
  let tried = 0;
  for (const motif of sizes) {
    const most = (wished: number) => Math.ceil((2 * (wished - 2 * wish.border)) / motif.side);
    for (let columns = 1; columns <= most(wish.width); columns++) {
      const width = columns * motif.side + 2 * wish.border;
      for (let rows = 1; rows <= most(wish.height); rows++) {
        tried++;
        const height = rows * motif.side + 2 * wish.border;
        const offPercent =
          100 * (Math.abs(width - wish.width) / wish.width + Math.abs(height - wish.height) / wish.height);
        const last = best.at(MOST_OPTIONS - 1);
        if (last && offPercent > last.offPercent + 1e-6) continue;
        const motifs = columns * rows;
        const option = {
          columns,
          rows,
          ...motif,
          width,
          height,
          motifs,
          ends: motifs * wish.endsAMotif,
          offPercent,
        };
        if (last && rankOptions(option, last) >= 0) continue;
        best.push(option);
        best.sort(rankOptions);
        best.splice(MOST_OPTIONS);
      }
    }
  }
  return { best, tried };
}

export async function bench(): Promise<BenchRow[]> {
  const { best, tried } = doubleLoop(WISH, SIZES);
  const found = search(WISH, SIZES);
  if (!isDeepStrictEqual(found, best) || !isDeepStrictEqual(found, searchExhaustively(WISH, SIZES)))
    throw new Error('the searches differ');
  const room = asking();
  if (!(await room.ask(LINE)).ok) throw new Error('the wish was refused');
  const loop = () => each(() => doubleLoop(WISH, SIZES), 50);
  const alone = await sideBySide(ROUNDS, () => each(() => search(WISH, SIZES), 50), loop);
  const answer = await sideBySide(ROUNDS, () => each(() => room.text(LINE), 50), loop);
  const note = `${SIZES.length} sizes of motif for a wish of ${WISH.width} × ${WISH.height} cm, ${tried.toLocaleString('en-US')} combinations; both name the same dozen. The loop keeps the best on its way and builds nothing else.`;
  const row = (what: string, compared: typeof alone): BenchRow => ({
    what,
    ...figuresOf(compared, 'a plain double loop over every combination'),
    note,
  });
  return [
    row('/resize, the search alone', alone),
    { ...row('/resize, the whole worked answer', answer), aim: 'p10 < 130 µs' },
  ];
}
