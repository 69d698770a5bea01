/** How far off does a piece come out with her own gauge, and which hook mends it? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { compareGauges, HOOK_STAYS_WITHIN } from '../../src/core/size/compare-gauges.ts';
import { cm, mm, num, t } from '../../src/core/base/reader.ts';
import { asMeant, hookWords, offWords } from '../shared/hook-words.ts';

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
  asked: {
    ways: [
      'gauge hook',
      'gauge pattern',
      'swatch pattern',
      '<gauge> pattern',
      '<gauge> wanted',
      'swatch wanted',
      'gauge wanted',
      'gauge how-far',
      '<gauge> how-far',
      'swatch <gauge>',
      '<gauge> substitute',
      '<gauge> hook',
      'getting wanted <gauge|pair>',
      'getting <gauge>',
      'pattern wanted <pair>',
      'gauge scale',
      '<pair> hook',
    ],
    also: 'hook gauge swatch pattern stitch row blanket how-big across scale change how-far mistake increase next substitute measure which enough done',
    not: 'border repeat diamond blocked weigh ball join motif',
    marks: {
      have: { takes: 'gauge', near: 'getting mine swatch', not: 'wanted pattern' },
      want: {
        takes: 'gauge',
        near: 'wanted pattern substitute wish',
        not: 'getting swatch',
        lead: 'need needs want wants wanted needing require requires should_be should_have to_get to_have to_be says',
      },
      width: { takes: 'length', near: 'across blanket piece', only: true },
    },
    phrases: [
      'my gauge is 14x10 but the pattern wants 13x10 on a 5mm hook, what hook should I try',
      'I get 16 stitches in 4 inches, the pattern says 14 in 4 inches, which hook',
    ],
  },
  answer({ have, want, hook, width }): Answer {
    const found = compareGauges({ have, want, hook, width });
    const { widthPercent, heightPercent, suggested } = found;
    const off = Math.abs(widthPercent) > HOOK_STAYS_WITHIN;
    const advice =
      hook === undefined && !off
        ? 'the hook may stay'
        : hookWords({ off: widthPercent, hook, advice: suggested }, ['wide', 'narrow']);
    const rows = (one: { stitches: number; rows?: number }) =>
      `${num(one.stitches, 2)}${one.rows === undefined ? '' : ` × ${num(one.rows, 2)}`}`;
    return {
      headline: asMeant(widthPercent)
        ? `Your ${t('gauge')} meets the pattern’s in width${heightPercent === undefined ? '' : `; the height is ${offWords(heightPercent, 'long', 'short')}`}; ${advice}.`
        : `A piece meant to be ${cm(width)} wide would come out ${cm(found.comesOut)}, ${offWords(widthPercent, 'wide', 'narrow')}; ${advice}.`,
      figures: gather(
        figure('width_percent', 'Width', widthPercent, '%'),
        figure('height_percent', 'Height', heightPercent, '%'),
        suggested !== undefined && [
          figure('suggested_hook', 'Nearest hook', suggested.mm, 'mm'),
          figure('still_off', 'Width with it', suggested.stillOff, '%'),
        ],
        figure('comes_out', 'Comes out', found.comesOut, 'cm'),
      ),
      lines: gather(
        `Over ${cm(found.over)}: yours ${rows(found.have)}, wanted ${rows(found.want)}.`,
        heightPercent !== undefined &&
          !asMeant(widthPercent) &&
          `In height, counted in rows, it comes out ${offWords(heightPercent, 'long', 'short')}; rows follow the hook less than stitches do, so mend the width first.`,
        suggested?.fromMemory && `The size ${mm(suggested.mm)} is listed from memory, not read in a source.`,
        off &&
          'Work a new swatch, wash and block it, and count again before starting; half a millimetre is about one step (common practice).',
      ),
      assumptions: heightPercent === undefined ? ['Stitches only: one of the two has no rows.'] : [],
      working: found.working.steps,
    };
  },
});
