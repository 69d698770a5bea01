/** Gauge and the diagonal square's true shape against definitions and published figures. */
import { describe, expect, it } from 'vitest';
import { asking } from '../asking.ts';

const room = asking();
const ask = async (line: string) => {
  const answer = await room.ask(line);
  expect(answer.ok).toBe(true);
  return answer;
};

describe('compare', () => {
  // International Yard and Pound Agreement, 1 July 1959: the inch is 2.54 cm exactly, so n over 4 in is n × 0.98425 over 10 cm.
  it('keeps 4 in and 10 cm apart', async () => {
    const { figures } = await ask('/gauge compare have:20x20 want:"20x20 over 4in"');
    expect(figures['width_percent']!.value).toBeCloseTo(100 * (10 / 10.16 - 1), 9);
    expect(figures['height_percent']!.value).toBeCloseTo(-1.575, 3);
  });

  // matifs.com/crochet-hooks-size-chart: 5.0 (H-8) and 5.5 (I-9) are neighbours. 5 × 14 ÷ 13 = 5.38.
  it('proposes a published size', async () => {
    const { figures } = await ask('/gauge compare have:14x10 want:13x10 hook:H-8');
    expect(figures['width_percent']!.value).toBeCloseTo(-100 / 14, 9);
    expect(figures['height_percent']!.value).toBe(0);
    expect(figures['suggested_hook']!.value).toBe(5.5);
  });
});

describe('shape', () => {
  // Geometry: the four sides of a rhombus are half the hypotenuse of its diagonals (Euclid I.47), and a right angle
  // has equal diagonals. Figures worked by hand for the two gauges.
  it.each([
    ['13x10', 12, 19.231, 24, 15.377, 77.4],
    ['10x10 over 7cm', 10, 14.7, 14, 10.15, 92.8],
  ])('%s, %i rising rows', async (gauge, size, across, along, side, angle) => {
    const { figures } = await ask(`/gauge shape gauge:"${gauge}" size:${size}`);
    expect(figures['across']!.value).toBeCloseTo(across, 3);
    expect(figures['along']!.value).toBeCloseTo(along, 3);
    expect(figures['blocked_side']!.value).toBeCloseTo(side, 3);
    expect(figures['corner_angle']!.value).toBeCloseTo(angle, 1);
  });

  // Bresenham's rule (sdiy.info/wiki/Euclidean_rhythm): ⌊i·q⌋ − ⌊(i−1)·q⌋ for q = 1.3.
  it('steps out evenly to be square off the hook', async () => {
    const { data } = await ask('/gauge shape gauge:13x10 size:10');
    expect(data.increases).toEqual([1, 1, 1, 2, 1, 1, 2, 1, 1, 2]);
  });

  // Drycleaning & Laundry Institute, "Stretching acrylic knits".
  it('warns of heat', async () => {
    expect((await ask('/gauge shape gauge:13x10 size:12')).cautions.join()).toContain('acrylic');
  });
});
