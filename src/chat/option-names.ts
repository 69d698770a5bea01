/** Options by other names that people give them, and sizes by their names typed where a measure is asked for. */
import type { RawOptions } from './line.ts';
import type { Options } from './options.ts';
import { readyOptions, takes } from './ready-options.ts';

/** Other names of options, each with what it may mean, the first that the question has. Common practice. */
const ALSO_CALLED = new Map<string, readonly string[]>([
  ...['color', 'colour', 'colors', 'colours'].map((name) => [name, ['colours', 'colour']] as const),
  ...['wide', 'across'].map((name) => [name, ['width', 'columns']] as const),
  ...['tall', 'high', 'long', 'length', 'down'].map((name) => [name, ['height', 'rows']] as const),
  ...['squares', 'blocks', 'pieces'].map((name) => [name, ['motifs']] as const),
  ...['tension', 'guage'].map((name) => [name, ['gauge']] as const),
  ...['skein', 'band'].map((name) => [name, ['ball']] as const),
  ...['skeins'].map((name) => [name, ['balls']] as const),
  ...['round', 'rnd'].map((name) => [name, ['row', 'from_row']] as const),
  ...['edging', 'edge'].map((name) => [name, ['border']] as const),
  ...['extra', 'spare'].map((name) => [name, ['reserve', 'spares']] as const),
  ...['bed'].map((name) => [name, ['for']] as const),
]);

/** Options that a size by its name is meant for, where it stands in one of the others. */
const MEASURES = ['size', 'width', 'height'] as const;

/** The options under their own names; what is known by none stays as it was typed. */
export function inOwnNames(typed: RawOptions, options: Options): RawOptions {
  const { byName } = readyOptions(options);
  const named = Object.keys(typed).every((name) => byName.has(name)) ? typed : renamed(typed, byName);
  const size = byName.get('for');
  if (!size || named['for'] !== undefined) return named;
  // “width:throw”: a size by its name.
  for (const name of MEASURES) {
    const text = named[name];
    if (text === undefined || /\d/.test(text) || !takes(size, text)) continue;
    const own = byName.get(name);
    if (own && takes(own, text)) continue;
    return {
      ...Object.fromEntries(Object.entries(named).filter(([one]) => one !== name)),
      for: text,
    };
  }
  return named;
}

function renamed(typed: RawOptions, known: ReadonlyMap<string, unknown>): RawOptions {
  const named: Record<string, string> = {};
  for (const [name, text] of Object.entries(typed)) {
    const own = known.has(name)
      ? name
      : (ALSO_CALLED.get(name)?.find((one) => known.has(one) && !Object.hasOwn(typed, one)) ?? name);
    named[own] = text;
  }
  return named;
}
