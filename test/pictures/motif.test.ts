/** A motif at the size of a cell: pieces of very many blocks have a slope for their stairs. */
import { describe, expect, it } from 'vitest';
import { motif } from '../../src/pictures/motif.ts';

/** The area of the first path’s outline, of a cell of 100 by 100 (the shoelace formula). */
function areaOf(svg: string): number {
  const path = /<path d="([^"]*)"/.exec(svg)![1]!;
  const points = [...path.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  );
  const twice = points.reduce((sum, [x, y], at) => {
    const [nextX, nextY] = points[(at + 1) % points.length]!;
    return sum + x * nextY - nextX * y;
  }, 0);
  return Math.abs(twice) / 2;
}

describe('a motif in blocks', () => {
  it.each([
    [12, 8],
    [48, 30],
    [60, 60],
    [400, 100],
    [50, 380],
  ])('of %i × %i shows of its first colour as much as is made of it', (size, otherSize) => {
    const rows = size + otherSize - 1;
    for (const done of [Math.ceil(rows / 5), Math.ceil(rows / 2), Math.ceil((4 * rows) / 5)]) {
      const runs = [
        { colour: 'moss', rows: done },
        { colour: 'sand', rows: rows - done },
      ];
      const svg = motif({ name: 'x', letter: 'A', shape: 'blocks', size, otherSize, runs }, {});
      // The last path of the two colours is the first colour’s: it covers what is painted before it.
      const first = svg.slice(svg.indexOf('<path', svg.indexOf('<path') + 1));
      let blocks = 0;
      for (let column = 0; column < size; column++) blocks += Math.min(otherSize, Math.max(0, done - column));
      expect(areaOf(first) / 10_000).toBeCloseTo(blocks / (size * otherSize), 1);
      expect(svg.length).toBeLessThan(20_000);
    }
  });
});
