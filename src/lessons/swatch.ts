/** What a swatch says. */
import { SAME_LENGTH } from '../core/size/compare-gauges.ts';
import { cm, t } from '../core/base/reader.ts';
import { GAUGE_OVER } from '../core/base/quantity.ts';
import { CM_PER_INCH } from '../standards/units.ts';
import { lesson, pick, pickLength, solveBy } from './lesson.ts';

const FOUR_INCHES = 4 * CM_PER_INCH;

export const swatch = lesson({
  name: 'swatch',
  title: 'What a swatch says',
  needs: ['reading'],
  idea: `${t('Gauge')} is how many of your stitches lie on a given length, by custom 10 cm or 4 inches. Work a piece that is larger than what you measure, lay it flat, count in its middle and bring the count to that length: divide by what you measured, times what you want.`,
  example: {
    given: { counted: 18, measured: 12, over: GAUGE_OVER },
    line: 'stitches repeat multiple:1 plus:0 width:10cm gauge:"18 over 12cm"',
    figure: 'nearest',
  },
  inInches: {
    given: { counted: 21, measured: 6 * CM_PER_INCH, over: FOUR_INCHES },
    line: 'stitches repeat multiple:1 plus:0 width:4in gauge:"21 over 6in"',
    figure: 'nearest',
  },
  practice: {
    draw: (chance, own) => ({
      counted: pick(chance, 9, 30),
      measured: pickLength(chance, own, [6, 17], [3, 7]),
      over: own.units === 'metric' ? GAUGE_OVER : FOUR_INCHES,
    }),
    says: ({ counted, measured, over }) =>
      `On ${cm(measured)} of your swatch lie ${counted} stitches. How many is that over ${cm(over)}?`,
    asks: () => ({ kind: 'number', of: 'stitches' }),
    solve: ({ counted, measured, over }) => solveBy(SAME_LENGTH, { counted, length: over, over: measured }),
    slips: [
      {
        key: 'as-counted',
        value: ({ counted }) => counted,
        says: ({ measured, over }) =>
          `That is what was counted on ${cm(measured)}. It has to be brought to ${cm(over)}.`,
      },
      {
        key: 'turned-round',
        value: ({ counted, measured, over }) => (counted * measured) / over,
        says: ({ measured, over }) =>
          `The two lengths were exchanged. ${measured < over ? 'You measured less than what is asked, so there must be more stitches' : 'You measured more than what is asked, so there must be fewer stitches'}.`,
      },
      {
        key: 'on-one',
        value: ({ counted, measured, over }) =>
          over === GAUGE_OVER ? counted / measured : counted / (measured / CM_PER_INCH),
        says: ({ over }) =>
          `That is what lies on ${over === GAUGE_OVER ? '1 cm' : '1 inch'}. Take it times the length that is asked.`,
      },
      {
        key: 'stitch-width',
        value: ({ counted, measured, over }) =>
          over === GAUGE_OVER ? measured / counted : measured / CM_PER_INCH / counted,
        says: () => 'That is how wide one stitch is. Asked is how many there are: divide the other way.',
      },
    ],
    first: ({ measured, over }) =>
      `Which is longer, the ${cm(measured)} you measured or the ${cm(over)} that are asked? So must there be more stitches or fewer?`,
  },
});
