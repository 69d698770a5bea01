import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countBorderRounds } from '../../../src/core/edges/border.ts';
import { SEAM_METHODS } from '../../../src/core/edges/seams.ts';
import { writeBorder } from '../../../src/core/edges/written-border.ts';
import { canBeTold, writeSeam, writeStrips } from '../../../src/core/edges/written-joining.ts';
import { forReader, type Reader } from '../../../src/core/base/reader.ts';
import { STITCHES } from '../../../src/standards/stitches.ts';

const READERS: readonly Reader[] = [
  { units: 'metric', terms: 'US' },
  { units: 'imperial', terms: 'UK', hand: 'left' },
];
/** Names as pattern writers give them, US beside UK (sugarplumcrochet.wordpress.com, "decoding crochet patterns"). */
const CALLED = {
  US: { sc: 'sc', hdc: 'hdc', dc: 'dc', tr: 'tr', slip: 'sl st' },
  UK: { sc: 'dc', hdc: 'htr', dc: 'tr', tr: 'dtr', slip: 'ss' },
} as const;

/**
 * Follows a round as it is read: what it works into, and what it makes. A round begins in a corner, goes along four sides with the other
 * three corners between, and what a round works into is all that the one before made.
 */
function follow(text: string, stitch: string, slip: string) {
  const said = Number(new RegExp(`\\((\\d+) ${stitch}\\)$`).exec(text)?.[1]);
  const body = text.slice(0, text.lastIndexOf('('));
  let made = 0;
  let into = 0;
  let corners = 0;
  const sides: number[] = [];
  for (const part of body.replace(/^Round \d+(?:, in [^:]+)?: /, '').split(/, /)) {
    const side = new RegExp(`^(\\d+) ${stitch} along the (?:width|height)$`).exec(part);
    const each = new RegExp(`^1 ${stitch} in each of the next (\\d+) stitches$`).exec(part);
    const corner = new RegExp(`^(\\d+) ${stitch} in (?:the|the same) (?:.*corner.*|stitch)$`).exec(part);
    const first = new RegExp(
      `^ch \\d+ \\(counts as the first ${stitch}\\)(?: and (\\d+) more ${stitch})? in `,
    ).exec(part);
    if (side ?? each) {
      const stitches = Number((side ?? each)?.[1]);
      sides.push(stitches);
      made += stitches;
      into += stitches;
    } else if (corner ?? first) {
      made += first ? 1 + Number(first[1] ?? 0) : Number(corner?.[1]);
      into += 1;
      corners += 1;
    } else
      expect(part, text).toMatch(
        new RegExp(`^(?:join |ch \\d+ \\(does not count\\)$|${slip} (?:in the next|to the first))`),
      );
  }
  return { said, made, into, corners, sides };
}

describe('a border in words', () => {
  const cases = fc.record({
    across: fc.integer({ min: 4, max: 400 }),
    down: fc.integer({ min: 4, max: 400 }),
    corner: fc.integer({ min: 1, max: 9 }),
    stitches: fc.array(fc.constantFrom(...STITCHES), { minLength: 1, maxLength: 6 }),
  });

  it('makes what it says, out of all that the round before made, in either terms', () => {
    fc.assert(
      fc.property(cases, fc.constantFrom(...READERS), ({ across, down, corner, stitches }, reader) => {
        const { rounds } = countBorderRounds({ across, down, corner, stitches });
        const written = writeBorder({ rounds, corner });
        expect(written.rounds).toHaveLength(stitches.length);
        let before: number | undefined;
        for (const [index, text] of written.rounds.entries()) {
          const called = CALLED[reader.terms];
          const read = follow(forReader(text, reader), called[stitches[index]!], called.slip);
          expect(read.corners).toBe(4);
          expect(read.made).toBe(read.said);
          expect(read.said).toBe(rounds[index]!.total);
          expect(read.sides).toEqual(
            [0, 1, 0, 1].map((at) => (at === 0 ? rounds[index]!.across : rounds[index]!.down)),
          );
          // Published: three in each corner stitch adds 8 a round (crochetspot.com, "How to crochet a square"); k adds 4(k − 1).
          if (before !== undefined) {
            expect(read.into).toBe(before);
            expect(read.made).toBe(before + 4 * (corner - 1));
          }
          before = read.made;
        }
      }),
      { numRuns: 60 },
    );
  });

  it('is worked the other way round by who holds the hook in the left hand, and changes colour where it is told to', () => {
    const rounds = countBorderRounds({ across: 20, down: 30, corner: 3, stitches: ['sc', 'dc'] }).rounds.map(
      (round, index) => ({ ...round, colour: ['moss', 'sand'][index] }),
    );
    const say = (hand: 'right' | 'left') => {
      const { before, rounds: texts } = writeBorder({ rounds, corner: 3, motif: 'hdc' });
      return [...before, ...texts].map((text) => forReader(text, { units: 'metric', terms: 'US', hand }));
    };
    expect(say('right').join('\n')).toMatch(/from right to left along the upper edge[^]*upper right corner/);
    expect(say('left').join('\n')).toMatch(/from left to right along the upper edge[^]*upper left corner/);
    expect(say('right').join('\n')).toContain(
      'Round 2, in sand: join in the middle stitch of the corner, ch 3',
    );
    // Published for sc along row ends: three to two rows of hdc, from memory (row-ends.ts).
    expect(say('right').join('\n')).toContain('about 3 stitches for every two rows of hdc');
  });
});

describe('joining in words', () => {
  const size = fc.integer({ min: 1, max: 12 });

  it('joins every side that two motifs share, once, and never another', () => {
    fc.assert(
      fc.property(size, size, (columns, rows) => {
        fc.pre(columns * rows > 1);
        const texts = writeStrips(columns, rows);
        const joined = texts.flatMap((text) =>
          [...text.matchAll(/(\d+) to (\d+)/g)].map(([, a, b]) => [Number(a), Number(b)] as const),
        );
        expect(new Set(joined.map(String)).size).toBe(joined.length);
        for (const [a, b] of joined) {
          const [x, y] = [a - 1, b - 1];
          const beside = Math.floor(x / columns) === Math.floor(y / columns) && y === x + 1;
          expect(beside || y === x + columns, `${a} to ${b}`).toBe(true);
        }
        expect(joined).toHaveLength(rows * (columns - 1) + columns * (rows - 1));
        // As many seams as the figures of /joining say: short ones in the strips, one between each two of them.
        const seams = texts.flatMap((text) =>
          [...text.matchAll(/\((\d+) (?:long )?seams?/g)].map(([, n]) => Number(n)),
        );
        expect(seams.reduce((sum, n) => sum + n, 0)).toBe(rows * (columns - 1) + rows - 1);
        expect(canBeTold(columns, rows)).toBe(columns * rows <= 48);
      }),
      { numRuns: 60 },
    );
  });

  it('says each method in the reader’s own terms and direction', () => {
    const said = (method: (typeof SEAM_METHODS)[number], reader: Reader) =>
      writeSeam(method, 'sand')
        .map((text) => forReader(text, reader))
        .join('\n');
    for (const method of SEAM_METHODS)
      for (const reader of READERS) {
        expect(said(method, reader)).not.toMatch(/[⟦⟧]/);
        expect(said(method, reader)).toContain('sand');
      }
    expect(said('single-crochet', READERS[0]!)).toMatch(/From right to left, 1 sc through/);
    expect(said('single-crochet', READERS[1]!)).toMatch(/From left to right, 1 dc through/);
    expect(said('slip-stitch', READERS[1]!)).toMatch(/From left to right, 1 ss through/);
    expect(said('whip', READERS[1]!)).toContain('leave 6 in');
  });
});
