import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { compareGauges, HOOK_STAYS_WITHIN } from '../../src/core/gauge.ts';
import { cm, mm, num, t } from '../../src/core/ways.ts';

const signed = (percent: number, more: string, less: string) =>
  percent === 0 ? 'as meant' : `${num(Math.abs(percent), 1)} % too ${percent > 0 ? more : less}`;

export const compare = question({
  name: 'compare',
  says: 'How far off a piece would be with your own gauge, which way, and the hook to try',
  options: {
    have: opt.gauge('Your swatch: stitches x rows over 10 cm, like 14x10, or 14x10 over 4in', '14x10'),
    want: opt.gauge('The pattern’s: stitches x rows over 10 cm, like 13x10', '13x10'),
    hook: opt.hook('The hook the swatch was worked with: 5mm, or a US size like H-8').optional(),
    width: opt
      .length({
        says: 'The width the pattern means, like 120cm or 48in',
        assumed: `A piece meant to be ${cm(120)} wide, as no width was given.`,
      })
      .default(120),
  },
  example: 'have:14x10 want:13x10 hook:5mm',
  refused: { line: 'have:14x10 want:soft', option: 'want' },
  answer({ have, want, hook, width }) {
    const found = compareGauges({ have, want, hook, width });
    const { widthPercent, heightPercent, suggestedHook } = found;
    const off = Math.abs(widthPercent) > HOOK_STAYS_WITHIN;
    const way = widthPercent > 0 ? 'smaller' : 'larger';
    const advice =
      hook === undefined
        ? off
          ? `try a ${way} hook`
          : 'the hook may stay'
        : suggestedHook === undefined
          ? `no ${way} hook is made; change the yarn`
          : suggestedHook === hook
            ? `stay with ${mm(hook)}`
            : `try ${mm(suggestedHook)} instead of ${mm(hook)}`;
    const rows = (one: { stitches: number; rows?: number }) =>
      `${num(one.stitches, 2)}${one.rows === undefined ? '' : ` × ${num(one.rows, 2)}`}`;
    return {
      headline:
        widthPercent === 0
          ? `Your ${t('gauge')} meets the pattern’s in width${heightPercent === undefined ? '' : `; the height is ${signed(heightPercent, 'long', 'short')}`}; ${advice}.`
          : `A piece meant to be ${cm(width)} wide would come out ${cm(found.comesOut)}, ${signed(widthPercent, 'wide', 'narrow')}; ${advice}.`,
      figures: [
        { key: 'width_percent', label: 'Width', value: widthPercent, unit: '%' },
        ...(heightPercent === undefined
          ? []
          : [{ key: 'height_percent', label: 'Height', value: heightPercent, unit: '%' } as const]),
        ...(suggestedHook === undefined
          ? []
          : [{ key: 'suggested_hook', label: 'Hook to try', value: suggestedHook, unit: 'mm' } as const]),
        { key: 'comes_out', label: 'Comes out', value: found.comesOut, unit: 'cm' },
      ],
      lines: [
        `Over ${cm(found.over)}: yours ${rows(found.have)}, wanted ${rows(found.want)}.`,
        ...(heightPercent === undefined || widthPercent === 0
          ? []
          : [
              `In height, counted in rows, it comes out ${signed(heightPercent, 'long', 'short')}; rows follow the hook less than stitches do, so mend the width first.`,
            ]),
        ...(off
          ? [
              'Work a new swatch, wash and block it, and count again before starting; half a millimetre is about one step (common practice).',
            ]
          : []),
      ],
      assumptions: heightPercent === undefined ? ['Stitches only: one of the two has no rows.'] : [],
      working: found.working.steps,
    };
  },
});
