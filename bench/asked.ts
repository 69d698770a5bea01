/** Plain words: how many phrases are read as they are meant, and what reading them costs beside a typed line. */
import { around, judge, read, savedAsking, type Outcome } from '../test/asked/check.ts';
import { corpus, type Phrase } from '../test/asked/corpus.ts';
import { asking } from '../test/asking.ts';
import { each, sideBySide } from './measure.ts';
import { digits, figuresOf, type BenchRow } from './table.ts';

const KINDS: readonly (readonly [Phrase['meant']['kind'], string, string])[] = [
  ['line', 'Phrases that ask something', 'right ≥ 92 %, wrong ≤ 1 %'],
  ['missing', 'Phrases with one thing missing', 'wrong 0'],
  ['nothing', 'Talk that asks nothing here', 'answered ≤ 1 %'],
];

export async function bench(): Promise<BenchRow[]> {
  const bare = await around(asking());
  const saved = await around(await savedAsking());
  const phrases = corpus();
  const rows: BenchRow[] = [];
  for (const heldOut of [true, false])
    for (const [kind, what, aim] of KINDS) {
      const own = phrases.filter((one) => one.heldOut === heldOut && one.meant.kind === kind);
      const counts: Record<Outcome, number> = { right: 0, 'asked back': 0, wrong: 0 };
      for (const { phrase, meant } of own)
        counts[judge(meant, await read(phrase, meant.kind === 'line' && meant.saved ? saved : bare))]++;
      rows.push({
        what: `${what}, ${heldOut ? 'held out' : 'the others'}`,
        ours: `${counts.right} right, ${counts['asked back']} asked back, ${counts.wrong} wrong`,
        reference: `${own.length} phrases`,
        ratio: `${digits((100 * counts.right) / own.length)} % right, ${digits((100 * counts.wrong) / own.length)} % wrong`,
        aim,
      });
    }
  const { ask } = asking();
  const words = 'how many 6 inch squares for a 4 by 5 foot blanket with a 2 in border';
  const line = '/resize width:4ft height:5ft side:6in border:2in';
  const held = await sideBySide(
    7,
    () => each(() => ask(words)),
    () => each(() => ask(line)),
  );
  rows.push({
    what: 'A question in plain words, answered',
    ...figuresOf(held, 'the same as a typed line'),
    aim: 'at most 3 × the time',
  });
  return rows;
}
