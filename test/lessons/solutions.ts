/** Every task worked a second time: by walking, listing or plain proportion, without the program's formulas. */
type Given = Readonly<Record<string, number>>;

const at = (given: Given, name: string): number => {
  const value = given[name];
  if (value === undefined) throw new Error(`no ${name} was given`);
  return value;
};

/** The counts of a square from corner to corner, worked row by row: two more, then two fewer, until one is left. */
function walk(size: number): number[] {
  const counts: number[] = [];
  let count = 1;
  for (let row = 1; row <= size; row++) counts.push((count += 2));
  while (count > 1) counts.push((count -= 2));
  return counts;
}

/** Rows that can still be finished, stitch by stitch from the ball, 15 cm kept back. 170 m weigh 100 g. */
function reach({ size = 0, each = 0, left = 0, done = 0 }: Given): number {
  const counts = walk(size);
  const stitches = counts.reduce((sum, one) => sum + one, 0);
  let yarn = left * 1.7 - 0.15;
  const aStitch = (each * 1.7) / stitches;
  for (let row = done; row < counts.length; row++) {
    yarn -= (counts[row] ?? 0) * aStitch;
    if (yarn < -1e-9) return row;
  }
  return counts.length;
}

/** Pairs of squares that touch in a grid, counted one by one. */
function touching(columns: number, rows: number): number {
  let pairs = 0;
  for (let x = 0; x < columns; x++)
    for (let y = 0; y < rows; y++) pairs += Number(x + 1 < columns) + Number(y + 1 < rows);
  return pairs;
}

/** Ends of two colours in turn: a colour hangs at one of two edges when it is left; it is cut unless it is found there again in time. */
function endsOf(stripes: number, high: number): number {
  const hangs = new Map<number, { edge: number; row: number }>();
  let lengths = 0;
  for (let stripe = 0, row = 0; stripe < stripes; stripe++, row += high) {
    const before = hangs.get(stripe % 2);
    const here = row % 2;
    if (before === undefined || before.edge !== here || row - before.row > 4) lengths++;
    hangs.set(stripe % 2, { edge: (row + high) % 2, row: row + high });
  }
  return 2 * lengths;
}

/** Of the places in which a count stands, the last. */
const lastWith = (size: number, stitches: number) => walk(size).lastIndexOf(stitches) + 1;

const nearest = (exact: number) => Math.ceil(Number((exact - 0.5).toFixed(6)));

export const SOLUTIONS: Readonly<Record<string, (given: Given) => number>> = {
  reading: (given) => at(given, 'tops') + (at(given, 'stitch') === 0 ? 0 : 1),
  names: (given) => at(given, 'stitch'),
  growing: (given) => walk(at(given, 'size'))[at(given, 'row') - 1] ?? Number.NaN,
  shrinking: (given) => walk(at(given, 'size'))[at(given, 'row') - 1] ?? Number.NaN,
  'which-row': (given) => lastWith(at(given, 'size'), at(given, 'stitches')),
  'where-wrong': (given) => at(given, 'wrong'),
  swatch: (given) => (at(given, 'counted') / at(given, 'measured')) * at(given, 'over'),
  gauge: (given) => ((at(given, 'want') - at(given, 'have')) / at(given, 'have')) * 100,
  diamond(given) {
    const across = ((2 * at(given, 'size') + 1) * 10) / at(given, 'stitches');
    const along = (2 * at(given, 'size') * 10) / at(given, 'rows');
    return Math.hypot(across / 2, along / 2);
  },
  colours: (given) => endsOf(at(given, 'stripes'), at(given, 'high')),
  ends: (given) => at(given, 'motifs') * at(given, 'lengths') * (at(given, 'tail') + at(given, 'tail')),
  weighing(given) {
    const grams = at(given, 'motif') * at(given, 'motifs');
    return ((grams + grams / 10) / at(given, 'ball_weight')) * at(given, 'ball_length');
  },
  balls(given) {
    let bought = 0;
    let grams = at(given, 'motif') * at(given, 'motifs') * 1.1;
    while (grams > 1e-6) {
      grams -= at(given, 'ball_weight');
      bought++;
    }
    return bought;
  },
  'running-out': reach,
  spacing: (given) => (at(given, 'from') - at(given, 'more')) / (at(given, 'more') + 1),
  repeats: (given) =>
    at(given, 'multiple') * at(given, 'repeats') +
    at(given, 'plus') +
    ([1, 1, 2, 3][at(given, 'stitch')] ?? Number.NaN),
  'how-many'(given) {
    const along = (length: number) => Math.round((length - 2 * at(given, 'border')) / at(given, 'side'));
    return along(at(given, 'width')) * along(at(given, 'height'));
  },
  joining: (given) => (touching(at(given, 'columns'), at(given, 'rows')) * at(given, 'side')) / 100,
  border(given) {
    const along = (length: number) => nearest((length * at(given, 'stitches')) / at(given, 'over'));
    const [across, down] = [along(at(given, 'width')), along(at(given, 'height'))];
    return across + down + across + down + 4 * at(given, 'corner');
  },
  rounds(given) {
    // Every corner's middle stitch is used up, and so many stand in it instead.
    let stitches = 2 * at(given, 'across') + 2 * at(given, 'down') + 4 * at(given, 'corner');
    for (let round = 2; round <= at(given, 'round'); round++) stitches += -4 + 4 * at(given, 'corner');
    return stitches;
  },
  quotas: (given) =>
    at(given, 'cells') +
    at(given, 'spares') -
    (at(given, 'pledged') + at(given, 'waiting') + at(given, 'accepted')),
};
