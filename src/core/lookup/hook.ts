/** A hook by any of its names: millimetres, US letter or number, old UK number, US steel number. */
import { HOOKS, STEEL_HOOKS, type HookSize } from '../../standards/hooks.ts';
import { defined } from '../base/defined.ts';
import { readNumber } from '../base/number.ts';
import { remembered } from '../base/remembered.ts';

export type HookSystem = 'mm' | 'US' | 'old UK' | 'US steel';

export interface HookFound {
  /** The system in which what was typed names this hook. */
  readonly system: HookSystem;
  readonly mm: number;
  readonly US?: string;
  readonly oldUK?: string;
  readonly fromMemory: boolean;
  readonly note?: string;
}

const foundBy = (system: HookSystem, { mm, fromMemory = false, US, oldUK, note }: HookSize): HookFound =>
  defined({ system, mm, fromMemory, US, oldUK, note });

/** `size k – 10½` is `K-10 1/2`: as the table writes it. */
export const simplifyHook = (text: string) =>
  text
    .trim()
    .toUpperCase()
    .replace(/\s+/g, ' ')
    .replace(/\s?½/, ' 1/2')
    .replace(/\.5$/, ' 1/2')
    .replace(/\b(?:SIZE|HOOK|NO\.?|NUMBER)\s+|\s+HOOK$|#/g, '')
    .replace(/^([A-Z](?:\/[A-Z])*)\s?[-–/ ]\s?(?=\d)/, '$1-')
    .trim();

/** The names of a US size: `H-8` is also `H8`, `H` and 8; `M/N-13` is M, N and 13. */
function usNames(US: string): string[] {
  const [letters = '', number] = US.includes('-')
    ? US.split('-')
    : /^\d/.test(US)
      ? ['', US]
      : [US, undefined];
  const each = letters.split('/').filter((letter) => letter !== '');
  return [
    US,
    ...each,
    letters,
    ...(number === undefined
      ? []
      : [
          number,
          ...each.flatMap((letter) => [`${letter}-${number}`, `${letter}${number}`, `${letter}/${number}`]),
        ]),
  ].filter((name) => name !== '');
}

const usNamesOf = remembered(
  ({ US }: HookSize) => new Set(US === undefined ? [] : usNames(US.toUpperCase())),
);

/**
 * Every hook that the typed size may mean. A bare number is read in all four systems; `4.5mm`, `US 7`, `UK 7` and
 * `steel 7` in one. Empty where no listed hook has it.
 */
export function lookUpHook(typed: string): HookFound[] {
  const [, which, rest = ''] =
    /^(?:(US STEEL|STEEL|US|OLD UK|UK|CANADIAN|CANADA)\s+)?(.+)$/.exec(simplifyHook(typed)) ?? [];
  const inMm = /\s*(?:MM|MILLIMET(?:ER|RE)S?)$/.test(rest);
  const name = simplifyHook(rest.replace(/\s*(?:MM|MILLIMET(?:ER|RE)S?)$/, ''));
  const number = readNumber(name);
  const asks = (system: HookSystem) =>
    inMm
      ? system === 'mm'
      : which === undefined ||
        (system === 'US steel'
          ? which.endsWith('STEEL')
          : system === 'US'
            ? which === 'US'
            : system === 'old UK' && !/^(US|STEEL)/.test(which));
  const steel = (asks('US steel') ? STEEL_HOOKS.filter((hook) => hook.US === name) : []).map(
    ({ mm, US, note }): HookFound =>
      defined({ system: 'US steel', mm, US: `steel ${US}`, fromMemory: false, note }),
  );
  return [
    ...(asks('mm') ? HOOKS.filter((hook) => hook.mm === number) : []).map((hook) => foundBy('mm', hook)),
    ...(asks('US') ? HOOKS.filter((hook) => usNamesOf(hook).has(name)) : []).map((hook) =>
      foundBy('US', hook),
    ),
    ...(asks('old UK') ? HOOKS.filter((hook) => hook.oldUK === name) : []).map((hook) =>
      foundBy('old UK', hook),
    ),
    ...steel,
  ];
}

/** The listed hooks around a size in mm that has no row of its own. */
export function findHooksAround(mm: number): readonly HookSize[] {
  const below = HOOKS.filter((hook) => hook.mm < mm).at(-1);
  const above = HOOKS.find((hook) => hook.mm > mm);
  return [below, above].filter((hook) => hook !== undefined);
}
