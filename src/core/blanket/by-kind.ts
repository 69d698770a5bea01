/** One number for each kind of a blanket, as it is typed: `A 12, B 8`, or names of kinds instead of letters. */
import { MOST_MINUTES } from '../base/limits.ts';
import { findMeant, sameName } from '../base/nearest-name.ts';
import { Problem } from '../base/problem.ts';
import { clip } from '../base/quantity.ts';

/** The letter of a kind: A for the first. */
export const letter = (kind: number) => String.fromCharCode(65 + kind);

/**
 * A kind's letter and name; just the name where that is its letter.
 *
 * @example
 * withLetter(0, 'moss square') // → 'A moss square'
 * withLetter(0, 'a', ', ') // → 'a'
 */
export const withLetter = (kind: number, name: string, between = ' '): string =>
  sameName(letter(kind), name) ? name : `${letter(kind)}${between}${name}`;

/**
 * A kind by its name, by the letter that the board shows, or by a beginning that only one has; -1 where it is none.
 *
 * @example
 * findKindCalled('B', ['moss square', 'sand square']) // → 1
 */
export function findKindCalled(typed: string, names: readonly string[]): number {
  const exact = names.findIndex((known) => sameName(known, typed));
  if (exact >= 0) return exact;
  const kind = /^[a-z]$/i.test(typed) ? typed.toUpperCase().charCodeAt(0) - 'A'.charCodeAt(0) : -1;
  if (kind >= 0 && kind < names.length) return kind;
  const begun = findMeant(
    names.map((name) => ({ name })),
    typed,
  );
  return begun ? names.indexOf(begun.name) : -1;
}

/**
 * The numbers, kind by kind; undefined for kinds that are left out. Throws a Problem about `option` where a part is no kind with
 * its number, where a kind is unknown or named twice.
 */
export function readByKind(
  text: string,
  names: readonly string[],
  { option, hint }: { option: string; hint: string },
): (number | undefined)[] {
  const numbers = names.map((): number | undefined => undefined);
  for (const part of text.split(/[,;]/)) {
    const [, name = '', number = ''] =
      /^\s*(\S.*?)\s*[ :=×x]\s*(\d{1,4})\s*$/.exec(part) ?? /^\s*([A-Za-z])(\d{1,4})\s*$/.exec(part) ?? [];
    if (name === '')
      throw new Problem('count-unreadable', `“${clip(part.trim())}” is not a kind with its number.`, {
        option,
        hint,
      });
    const kind = findKindCalled(name, names);
    if (kind < 0) {
      throw new Problem('no-such-kind', `This blanket has no kind “${clip(name)}”.`, {
        option,
        hint: `Its kinds are ${names.map((known, index) => `${letter(index)} (${known})`).join(', ')}.`,
        facts: { kind: clip(name) },
      });
    }
    if (numbers[kind] !== undefined)
      throw new Problem('kind-twice', `Kind ${letter(kind)} is given twice.`, {
        option,
        hint,
        facts: { kind: letter(kind) },
      });
    numbers[kind] = Number(number);
  }
  return numbers;
}

/**
 * Minutes that one motif of each kind takes, as they are typed: one number for the first kind, or kind by kind; undefined for kinds
 * that are left out. Throws a Problem about `minutes`: count-unreadable, no-such-kind, kind-twice, too-small, too-large.
 */
export function readMinutes(text: string, names: readonly string[]): (number | undefined)[] {
  const hint = `Say it kind by kind, like ${names.map((_, kind) => `${letter(kind)} ${45 + 15 * kind}`).join(', ')}; one number is for the first kind.`;
  const bare = /^\s*(\d{1,6}(?:[.,]\d{1,3})?)\s*(?:min(?:ute)?s?)?\s*$/i.exec(text)?.[1];
  const minutes =
    bare === undefined
      ? readByKind(text, names, { option: 'minutes', hint })
      : [Number(bare.replace(',', '.'))];
  for (const one of minutes)
    if (one !== undefined && (one < 1 || one > MOST_MINUTES))
      throw new Problem(
        one < 1 ? 'too-small' : 'too-large',
        `${one} is too ${one < 1 ? 'small' : 'large'} here.`,
        {
          option: 'minutes',
          hint,
          facts: { given: one, min: 1, max: MOST_MINUTES },
        },
      );
  return minutes;
}
