/** A border that lies flat: its first round. */
import { ROUND_TOTAL, spaceBorder } from '../core/edges/border.ts';
import { GAUGE_OVER } from '../core/base/quantity.ts';
import { cm, size, t } from '../core/base/reader.ts';
import { formula, Working } from '../core/base/working.ts';
import { CM_PER_INCH } from '../standards/units.ts';
import { lesson, pick, pickLength } from './lesson.ts';

interface Edged {
  readonly width: number;
  readonly height: number;
  readonly stitches: number;
  readonly over: number;
  readonly corner: number;
}

const FOUR_INCHES = 4 * CM_PER_INCH;

/** One side, as somebody with a pencil finds it; without a repeat there is nothing to suit. */
export const ALONG_SIDE = formula({
  label: 'Along a side',
  formula: 'round(length * stitches / over)',
  given: { length: 'cm', stitches: '', over: 'cm' },
  unit: '',
  source: 'common practice: as many as lie flat at the gauge, a whole number',
});

const space = ({ width, height, stitches, over, corner }: Edged) =>
  spaceBorder({ width, height, corner, gauge: { stitches, over }, multiple: 1, plus: 0 });

export const border = lesson({
  name: 'border',
  title: 'A border that lies flat',
  needs: ['swatch', 'joining'],
  idea: `A border lies flat when its stitches follow your ${t('gauge')}: each side takes as many as its length holds, neither what happens to be there nor one for every row. In each of the four corners some more go into one place, so that it can turn.`,
  example: {
    given: { width: 120, height: 150, stitches: 14, over: GAUGE_OVER, corner: 3 },
    line: 'border spacing width:120cm height:150cm gauge:14 corner:3',
    figure: 'round_total',
  },
  inInches: {
    given: {
      width: 48 * CM_PER_INCH,
      height: 60 * CM_PER_INCH,
      stitches: 14,
      over: FOUR_INCHES,
      corner: 3,
    },
    line: 'border spacing width:48in height:60in gauge:"14 over 4in" corner:3',
    figure: 'round_total',
  },
  practice: {
    draw: (chance, own) => ({
      width: pickLength(chance, own, [80, 150], [32, 60]),
      height: pickLength(chance, own, [110, 190], [44, 75]),
      stitches: pick(chance, 11, 18),
      over: own.units === 'metric' ? GAUGE_OVER : FOUR_INCHES,
      corner: pick(chance, 2, 3),
    }),
    says: ({ width, height, stitches, over, corner }) =>
      `A blanket of ${size(width, height)} gets a border. Your ${t('gauge')} is ${stitches} stitches over ${cm(over)}, and ${corner} stitches go into each corner besides those along the sides. How many stitches has the first round? Round each side to the nearest.`,
    asks: () => ({ kind: 'count', of: 'stitches' }),
    // Half a stitch is rounded up by some and down by others: neither of them is wrong.
    isPlain: ({ width, height, stitches, over }) =>
      [width, height].every((length) => Math.abs((((length * stitches) / over) % 1) - 0.5) > 0.02),
    solve({ width, height, stitches, over, corner }) {
      const working = new Working();
      const across = working.do(ALONG_SIDE, { length: width, stitches, over }, 'Along the width');
      const down = working.do(ALONG_SIDE, { length: height, stitches, over }, 'Along the height');
      return { value: working.do(ROUND_TOTAL, { across, down, corner }), working: working.steps };
    },
    slips: [
      {
        key: 'corners-forgotten',
        value: (given) => space(given).total - 4 * given.corner,
        says: () => 'Those are the sides. The stitches of the four corners come to them.',
      },
      {
        key: 'corners-twice',
        value: (given) => space(given).total + 4 * given.corner,
        says: () => 'The corners are in twice: each of them belongs to two sides, but is worked once.',
      },
      {
        key: 'two-sides-only',
        value(given) {
          const { across, down } = space(given);
          return across + down + 4 * given.corner;
        },
        says: () => 'That is one side each way. There are two of both.',
      },
      {
        key: 'other-length',
        value: (given) =>
          space({ ...given, over: given.over === GAUGE_OVER ? FOUR_INCHES : GAUGE_OVER }).total,
        says: ({ over }) =>
          `The ${t('gauge')} was taken over ${over === GAUGE_OVER ? '4 inches' : '10 cm'}. They are nearly alike, but along a blanket it adds up: yours is over ${cm(over)}.`,
      },
    ],
    first: () =>
      'How many stitches lie along the width? Its length, over the length of the gauge, times the stitches.',
  },
});
