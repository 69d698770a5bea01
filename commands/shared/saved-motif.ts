/** The option for a saved motif, and the example that the questions about one share. */
import type { Context } from '../../src/chat/context.ts';
import { writeLine } from '../../src/chat/line.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';

/** The example that the questions about saved motifs share, and the line that saves it. */
export const STRIPES = '4 rows moss, 2 rows sand, three times, then 6 rows moss';
export const DEFINED = `/motif define name:"moss square" shape:diagonal size:12 colours:"${STRIPES}"`;

async function suggest(typed: string, { projects, maker }: Context) {
  const { motifs } = await projects.maker(maker.id, maker.name);
  const wanted = typed.trim().toLowerCase();
  return motifs
    .map(({ name }) => ({ value: name }))
    .filter(({ value }) => value.toLowerCase().includes(wanted));
}

/** A saved motif by name; the current one where it is left out. */
export const savedMotif = (says = 'The motif’s name; the current one if not given') =>
  opt.text({ says, suggest, onlyOffered: true }, { max: LONGEST_NAME, example: 'moss square' });

/** The line of a button: names of people are quoted where they must be. */
export const about = (path: string, options: Readonly<Record<string, string | number>>): string =>
  writeLine({
    words: path.split(' '),
    options: Object.fromEntries(Object.entries(options).map(([name, value]) => [name, String(value)])),
  });
