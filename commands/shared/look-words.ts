/** What is asked and said of how colours look. */
import { readHex } from '../../src/core/blanket/colour.ts';
import { listNames } from '../../src/core/base/nearest-name.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { clip } from '../../src/core/base/quantity.ts';

/** A colour as it was typed. Throws Problem: not-a-colour. */
export function shadeAsked(hex: string): string {
  const shade = readHex(hex);
  if (shade === undefined)
    throw new Problem('not-a-colour', `“${clip(hex)}” is not a colour.`, {
      option: 'hex',
      hint: 'Write it as #rrggbb, like #6b7f3a.',
    });
  return shade;
}

/** Says of which colours nothing tells how they look; nothing where there are none. */
export const madeUpWords = (names: readonly string[]): string[] =>
  names.length === 0
    ? []
    : [
        `How ${listNames(names, 12)} ${names.length === 1 ? 'looks is not known: it is drawn in a colour' : 'look is not known: they are drawn in colours'} that ${names.length === 1 ? 'is' : 'are'} made up, until you say hex.`,
      ];
