/** Which hook is meant by a number, a letter, a size in millimetres? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { findHooksAround, lookUpHook, type HookFound } from '../../src/core/lookup/hook.ts';
import { readNumber } from '../../src/core/base/quantity.ts';
import { mm, num } from '../../src/core/base/reader.ts';
import { HOOKS, HOOKS_SOURCE, STEEL_HOOKS } from '../../src/standards/hooks.ts';
import { offers, unknown } from './unknown.ts';

const NAMES = [
  ...HOOKS.map((hook) => `${hook.mm}mm`),
  ...HOOKS.flatMap(({ US }) => (US === undefined ? [] : [`US ${US}`])),
  ...HOOKS.flatMap(({ oldUK }) => (oldUK === undefined ? [] : [`UK ${oldUK}`])),
  ...STEEL_HOOKS.map(({ US }) => `steel ${US}`),
];
const EXAMPLE = 'Try hook:5mm, hook:H-8, hook:"UK 6" or hook:"steel 7".';

const names = ({ US, oldUK }: { US?: string; oldUK?: string }) =>
  `${US === undefined ? 'no US size' : `US ${US}`}, ${oldUK === undefined ? 'no old UK number' : `old UK ${oldUK}`}`;
const memory = (fromMemory: boolean | undefined) => (fromMemory ? ' (from memory)' : '');
const SYSTEM = {
  mm: 'in millimetres',
  US: 'as a US size',
  'old UK': 'as an old UK number',
  'US steel': 'as a US steel hook',
};

function told(hook: HookFound): string {
  const is = hook.system === 'US steel' ? `US ${hook.US ?? ''}` : names(hook);
  return `${SYSTEM[hook.system].replace(/^./, (first) => first.toUpperCase())}: ${mm(hook.mm, 2)}, ${is}${memory(hook.fromMemory)}.`;
}

/** The systems in which the typed size is this hook: `as a US size and as an old UK number`. */
const systemsOf = (found: readonly HookFound[], size: number) =>
  [...new Set(found.filter((one) => one.mm === size).map((one) => SYSTEM[one.system]))].join(' and ');

export const hook = question({
  name: 'hook',
  bare: 'hook',
  says: 'Hook sizes in millimetres, US letters and numbers, old UK numbers and steel, both ways',
  options: {
    hook: opt.text(
      { says: 'A size in any system: 5mm, H-8, 7, UK 6, steel 7', suggest: offers(NAMES) },
      { max: 20, example: '7' },
    ),
  },
  example: 'hook:7',
  refused: { line: 'hook:banana', option: 'hook' },
  asked: {
    ways: [
      'hook convert',
      'hook how-big',
      'hook us|uk',
      'hook mean',
      '<hook> convert',
      'which <hook>',
      '?hook <hook>',
      'hook <hook>',
      'hook size',
      '<hook> how-big',
      '?units <hook>',
      '<hook> us|uk',
    ],
    also: 'pattern us uk convert mean how-big size units metric how-many hook weight',
    not: 'gauge yarn motif blanket swatch border ball',
    marks: { hook: { takes: 'hook' } },
    phrases: ['what size is an H hook in mm', 'what is a 5mm hook in US sizes'],
  },
  answer({ hook: typed }): Answer {
    const found = lookUpHook(typed);
    const governs =
      'The millimetre size governs: letters and numbers vary from maker to maker (from memory).';
    const [first] = found;
    if (first === undefined) {
      const size = readNumber(typed.replace(/\s*mm$/i, ''));
      const around = size === undefined ? [] : findHooksAround(size);
      if (size === undefined || around.length < 2) throw unknown('hook', typed, NAMES, EXAMPLE);
      return {
        headline: `No listed hook is ${mm(size, 2)}; the nearest are ${around.map((one) => mm(one.mm, 2)).join(' and ')}.`,
        lines: [
          ...around.map((one) => `${mm(one.mm, 2)}: ${names(one)}${memory(one.fromMemory)}.`),
          governs,
          `Source: ${HOOKS_SOURCE}.`,
        ],
        data: { hooks: [] },
      };
    }
    const sizes = [...new Set(found.map((one) => one.mm))];
    const notes = [...new Set(found.flatMap(({ note }) => (note === undefined ? [] : [note])))];
    return {
      headline:
        sizes.length === 1
          ? `${typed} is ${mm(first.mm, 2)}: ${first.system === 'US steel' ? `US ${first.US ?? ''}` : names(first)}${memory(first.fromMemory)}.`
          : `${typed} may be ${sizes.length} different hooks: ${sizes.map((size) => `${mm(size, 2)} ${systemsOf(found, size)}`).join(', ')}.`,
      figures: gather(
        sizes.length === 1 && figure('hook', 'Hook', first.mm, 'mm'),
        figure('hooks', 'Hooks it may be', sizes.length),
      ),
      lines: gather(
        found.length > 1 && found.map(told),
        notes,
        sizes.length > 1 ? [`Ask for millimetres: ${num(first.mm, 2)}mm. ${governs}`] : [governs],
        `Source: ${HOOKS_SOURCE}.`,
      ),
      data: { hooks: found },
    };
  },
});
