/** Names: the same whatever their capitals, found among others, and suggested where what was typed is none of them. */
import { distance } from 'fastest-levenshtein';

/** Names longer than this are compared by their beginnings: what is typed may be of any length. */
const COMPARED = 64;

/** Names of motifs, blankets, colours and kinds are the same whatever their capitals. */
export const sameName = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

/** Letters of other scripts that look like Latin ones in nearly every typeface (from memory, after Unicode’s list of confusables). */
const LOOKS = new Map(
  [
    ['АВЕКМНОРСТХУІЈЅаеорсухіјѕһԁԛԝ', 'ABEKMHOPCTXYIJSaeopcyxijshdqw'],
    ['ΑΒΕΖΗΙΚΜΝΟΡΤΥΧονυιρ', 'ABEZHIKMNOPTYXovuip'],
  ].flatMap(([others = '', latin = '']) => [...others].map((letter, at) => [letter, latin[at] ?? letter])),
);

/** What a name looks like: two of the same look are easily taken for one another. */
const lookOf = (name: string): string =>
  [...name.normalize('NFKC').replace(/\p{Cf}/gu, '')]
    .map((letter) => LOOKS.get(letter) ?? letter)
    .join('')
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();

/**
 * Whether two names look the same to somebody who reads quickly, whatever letters they are written in.
 *
 * @example
 * looksLike('Bean row', 'Bеan-row') // → true
 */
export const looksLike = (one: string, other: string): boolean => lookOf(one) === lookOf(other);

/** The names, each once, as it is first met: two that are the same but for capitals are one. */
export function firstOfEach(names: readonly string[]): string[] {
  const met = new Map<string, string>();
  for (const name of names) if (!met.has(name.toLowerCase())) met.set(name.toLowerCase(), name);
  return [...met.values()];
}

/**
 * The thing of that name; undefined where none has it.
 *
 * @example
 * findNamed([{ name: 'moss square' }], 'Moss Square') // → { name: 'moss square' }
 */
export const findNamed = <T extends { readonly name: string }>(
  things: readonly T[],
  name: string | undefined,
): T | undefined => (name === undefined ? undefined : things.find((thing) => sameName(thing.name, name)));

/** A beginning shorter than this may be a slip of the thumb. */
const SHORTEST_BEGINNING = 2;

/**
 * The thing that is meant by what was typed: the one of that name, or the only one whose name begins so; undefined where there is none, or
 * where there are several.
 *
 * @example
 * findMeant([{ name: 'moss square' }, { name: 'sand square' }], 'moss') // → { name: 'moss square' }
 */
export function findMeant<T extends { readonly name: string }>(
  things: readonly T[],
  typed: string | undefined,
): T | undefined {
  const exact = findNamed(things, typed?.trim());
  const beginning = typed?.trim().toLowerCase() ?? '';
  if (exact ?? beginning.length < SHORTEST_BEGINNING) return exact;
  const begun = things.filter(({ name }) => name.toLowerCase().startsWith(beginning));
  return begun.length === 1 ? begun[0] : undefined;
}

/**
 * The things that score highest, in their order; none where nothing scores.
 *
 * @example
 * findBest(['moss', 'sand', 'moor'], (name) => (name.startsWith('mo') ? 1 : 0)) // → ['moss', 'moor']
 */
export function findBest<T>(things: readonly T[], scoreOf: (thing: T) => number): T[] {
  const scores = things.map(scoreOf);
  const best = Math.max(0, ...scores);
  return best === 0 ? [] : things.filter((_, index) => scores[index] === best);
}

/** How many letters must be changed, added or left out to get from what was typed to a name. */
const steps = (typed: string, name: string) =>
  distance(typed.toLowerCase().slice(0, COMPARED), name.toLowerCase());

/**
 * The nearest of some names to what was typed; undefined where none is near: a third of its letters may be wrong, or two.
 *
 * @example
 * findNearest('moos', ['sand', 'moss']) // → 'moss'
 */
export function findNearest(typed: string, names: readonly string[]): string | undefined {
  let nearest: string | undefined;
  let least = Math.max(2, Math.floor(Math.min(typed.length, COMPARED) / 3)) + 1;
  for (const name of names) {
    const away = steps(typed, name);
    if (away >= least) continue;
    least = away;
    nearest = name;
  }
  return nearest;
}

/** All names, the nearest to what was typed first: for a list of what would work. */
export const sortByNearness = (typed: string, names: readonly string[]): string[] =>
  [...names].sort((a, b) => steps(typed, a) - steps(typed, b));

/** The only name that has all the words that were typed; undefined where there is none, or are several. */
function findPart(typed: string, names: readonly string[]): string | undefined {
  const words = (text: string) => text.toLowerCase().split(/\s+/).filter(Boolean);
  const wanted = words(typed.slice(0, COMPARED));
  const found =
    wanted.length === 0 ? [] : names.filter((name) => wanted.every((word) => words(name).includes(word)));
  return found.length === 1 ? found[0] : undefined;
}

/**
 * What to say where a name is not known: the nearest, or what `otherwise` says of all, the nearest first.
 *
 * @example
 * suggest('moos', ['sand', 'moss'], (names) => `Its colours are ${names.join(', ')}.`) // → 'Did you mean moss?'
 */
export function suggest(
  typed: string,
  names: readonly string[],
  otherwise: (names: readonly string[]) => string,
): string {
  const nearest = findNearest(typed, names) ?? findPart(typed, names);
  return nearest === undefined ? otherwise(sortByNearness(typed, names)) : `Did you mean ${nearest}?`;
}

/**
 * Names with commas between, as many as can be read, and how many more there are.
 *
 * @example
 * listNames(['moss', 'sand', 'clay'], 2) // → 'moss, sand and 1 more'
 */
export const listNames = (names: readonly string[], most = 8): string =>
  `${names.slice(0, most).join(', ')}${names.length > most ? ` and ${names.length - most} more` : ''}`;
