/** Blankets of published sizes: charities’ sizes for children (projectlinusoregon.org; cthugsandkisses.org; crochetcabana.com). */
import { describe, expect, it } from 'vitest';
import { resize } from '../../src/core/size/resize.ts';
import { asking } from '../asking.ts';

describe('charity sizes from 6 in squares', () => {
  it.each([
    ['baby', '30in', '36in', 5, 6],
    ['younger child', '36in', '48in', 6, 8],
    ['older child', '42in', '48in', 7, 8],
    ['lap', '36in', '36in', 6, 6],
  ])('%s, %s × %s, comes out exactly', async (_, width, height, columns, rows) => {
    const answer = await asking().ask(`/resize width:${width} height:${height} side:6in`);
    expect(answer.data['options'][0]).toMatchObject({ columns, rows, motifs: columns * rows });
    expect(answer.figures['off_percent']?.value).toBeCloseTo(0, 9);
  });

  it('an older child’s 40 × 55 in (projectlinusoregon.org) with a border: 36 × 51 in of 3 in squares and 2 in round', async () => {
    const answer = await asking().ask('/resize width:40in height:55in side:3in border:2in');
    expect(answer.data['options'][0]).toMatchObject({ columns: 12, rows: 17, motifs: 204 });
    expect(answer.data['options'][0].width).toBeCloseTo(40 * 2.54, 9);
  });
});

describe('a diagonal square with stitches as tall as wide: side (2n + 1)·w ÷ √2 (rows as innerchildcrochet.com, “Mitered square”)', () => {
  it('is nearly that long, its height being 2n rows and not 2n + 1', () => {
    const side = (2 * 10 + 1) / Math.SQRT2;
    const [found] = resize({
      width: 10 * side,
      height: 10 * side,
      border: 0,
      gauge: { stitches: 10, rows: 10, over: 10 },
      size: 10,
    }).options;
    expect(found).toMatchObject({ columns: 10, rows: 10 });
    expect(Math.abs(found!.side / side - 1)).toBeLessThan(0.03);
  });
});
