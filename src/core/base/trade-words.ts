/** Reading what the trade calls its hooks, stitches and yarns, as people type it. */
import { STITCH_NAMES, type StitchName } from '../../standards/abbreviations.ts';
import { STITCHES, type Stitch } from '../../standards/stitches.ts';
import { lookUpHook, simplifyHook, type HookFound } from '../lookup/hook.ts';
import { lookUpYarn, simplifyYarn } from '../lookup/yarn.ts';
import { MOST_ROUNDS } from './limits.ts';
import { clip, isBareNumber, readNumber } from './number.ts';
import { Problem } from './problem.ts';
import { partsOfBall } from './quantity.ts';
import { mm } from './reader.ts';

/** A yarn's thickness: wraps per inch, and the category it was read from, where it was. */
export interface YarnThickness {
  readonly wpi: number;
  readonly category?: number;
}

/** Hooks are made from 0.35 mm to 25 mm (en.wikipedia.org, Crochet hook); some lists go to 30. */
const THINNEST_HOOK = 0.35;
const THICKEST_HOOK = 30;

type Terms = 'US' | 'UK';

const NAMES = STITCHES.map((stitch): { stitch: Stitch } & StitchName => {
  const names = STITCH_NAMES.find(({ US }) => US[0] === stitch);
  if (!names) throw new Error(`a stitch without names: ${stitch}`);
  return { stitch, ...names };
});

/** `Double Crochets` and `double-crochet` are double crochet. */
const plainName = (text: string) =>
  text
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, ' ')
    .replace(/\.$/, '')
    .replace(/^(.{2,})(?<!s)s$/, '$1');

const called = (names: readonly string[], name: string) => names.includes(name);

/** The stitch of that name in these terms, or in the other where only those have it; undefined where none is counted here. */
function find(name: string, terms: Terms | undefined): Stitch | undefined {
  for (const which of terms === 'UK' ? (['UK', 'US'] as const) : (['US', 'UK'] as const)) {
    const found = NAMES.find((one) => called(one[which], name));
    if (found) return found.stitch;
    // A stitch of these terms that is not counted here, taller or lower: never the other terms' stitch of that name.
    if (STITCH_NAMES.some((one) => called(one[which], name))) return undefined;
  }
  return undefined;
}

const TERMS_BEFORE = /^(?:(us|uk|american|british)\s+)?(.*)$/is;

function partTerms(text: string): { terms: Terms | undefined; rest: string } {
  const [, before, rest = ''] = TERMS_BEFORE.exec(text.trim()) ?? [];
  const which = before?.toLowerCase();
  const terms = which === undefined ? undefined : which === 'uk' || which === 'british' ? 'UK' : 'US';
  // Terms are put before what was typed, which may name its own.
  return terms !== undefined && /^(us|uk|american|british)\s/i.test(rest) ? partTerms(rest) : { terms, rest };
}

const notCounted = (name: string) =>
  new Problem('not-a-stitch', `“${clip(name)}” is not a stitch that is counted here.`, {
    hint: 'Use sc, hdc, dc or tr (US), or say whose terms you mean: UK dc.',
  });

/**
 * A stitch: `hdc`, `US dc`, `UK tr`, or its full name. A bare name is taken in US terms. What only the other terms have can mean
 * one stitch alone and is taken, whosever terms were named: `US htr` is `UK htr`.
 *
 * Throws Problem: not-a-stitch.
 *
 * @example
 * readStitch('UK double crochet') // → 'sc'
 */
export function readStitch(text: string): Stitch {
  const { terms, rest } = partTerms(text);
  const found = find(plainName(rest), terms);
  if (found) return found;
  throw notCounted(rest.trim() === '' ? text : rest);
}

/** Words of the longest name. */
const LONGEST_NAME = 3;
const LEFT_OUT = /^(?:rounds?|rows?|rnds?|of|then|and|in|a|each)$/i;

/**
 * A run of stitches, one a round, such as `hdc dc hdc`, `2 sc, 1 hdc` or `single crochet, half double crochet`; `UK htr tr` says whose
 * terms they are in.
 *
 * Throws Problem: no-stitches, not-a-stitch, too-many-stitches.
 */
export function readStitches(text: string): Stitch[] {
  const hint = 'Name one stitch a round, like hdc dc hdc.';
  const { terms, rest } = partTerms(text);
  const words = rest
    .replace(/[,;/+]/g, ' ')
    .split(/\s+/)
    .filter((word) => word !== '' && !LEFT_OUT.test(word));
  const stitches: Stitch[] = [];
  for (let at = 0; at < words.length;) {
    const word = (words[at] ?? '').replace(/^(\d+)x$/i, '$1');
    const number = longestName(words.slice(at), terms) ? undefined : readNumber(word);
    const times = number !== undefined && Number.isInteger(number) && number > 0 ? number : undefined;
    if (times !== undefined) at++;
    const named = longestName(words.slice(at), terms);
    if (named === undefined) {
      if (at >= words.length)
        throw new Problem('no-stitches', 'Which stitch those rounds are in is not said.', {
          hint: `${hint} Or with a number before each: 2 sc, 1 hdc.`,
        });
      throw notCounted(words[at] ?? '');
    }
    at += named.words;
    for (let round = 0; round < (times ?? 1) && stitches.length <= MOST_ROUNDS; round++)
      stitches.push(named.stitch);
  }
  if (stitches.length === 0) throw new Problem('no-stitches', 'No stitch is named.', { hint });
  if (stitches.length > MOST_ROUNDS)
    throw new Problem('too-many-stitches', `More than ${MOST_ROUNDS} rounds are too many at once.`, {
      hint,
      facts: { most: MOST_ROUNDS },
    });
  return stitches;
}

function longestName(
  words: readonly string[],
  terms: Terms | undefined,
): { stitch: Stitch; words: number } | undefined {
  for (let long = Math.min(LONGEST_NAME, words.length); long > 0; long--) {
    const stitch = find(plainName(words.slice(0, long).join(' ')), terms);
    if (stitch) return { stitch, words: long };
  }
  return undefined;
}

/** The hook that is meant where a letter names several: the one it begins the name of, read in a source rather than from memory. */
function likeliest(found: readonly HookFound[], typed: string): HookFound | undefined {
  const name = simplifyHook(typed).replace(/^US /, '');
  const begins = (hook: HookFound) => hook.US?.startsWith(name) ?? false;
  const rank = (hook: HookFound) => (hook.fromMemory ? 2 : 0) + (begins(hook) ? 0 : 1);
  return [...found].sort((a, b) => rank(a) - rank(b))[0];
}

/** What was typed as a name, not as millimetres. */
const isNamed = (typed: string) => !isBareNumber(typed.trim()) && !/mm|millimet/i.test(typed);

/**
 * A hook in mm: `5mm`, `5`, a US size by letter or number (`H-8`, `K`, `US 7`), `UK 6`, `steel 7`. A bare number is millimetres.
 *
 * Throws Problem: not-a-hook, no-such-hook.
 *
 * @example
 * readHook('K-10.5') // → 6.5
 */
export function readHook(text: string): number {
  const hint = 'Give millimetres, like 5mm, or a US size with its letter, like H-8.';
  const typed = text.trim();
  if (typed.length <= LONGEST_HOOK && isNamed(typed)) {
    const named = likeliest(
      lookUpHook(typed).filter(({ system }) => system !== 'mm'),
      typed,
    );
    if (named) return named.mm;
  }
  const amount = readNumber(typed.replace(/\s*(?:mm|millimet(?:er|re)s?)(?:\s+hook)?$/i, ''));
  if (amount === undefined) throw new Problem('not-a-hook', `“${clip(text)}” is not a hook.`, { hint });
  if (amount < THINNEST_HOOK || amount > THICKEST_HOOK)
    throw new Problem('no-such-hook', `No hook of ${amount} mm is made.`, {
      hint: `Hooks run from ${THINNEST_HOOK}mm to ${THICKEST_HOOK}mm.`,
      facts: { given: amount, least: THINNEST_HOOK, most: THICKEST_HOOK },
    });
  return amount;
}

/** Longer than any name of a hook. */
const LONGEST_HOOK = 30;

/** What is said of a hook whose number or letter is that of other hooks too; undefined where it is clear. */
export function describeOtherHooks(typed: string): string | undefined {
  const read = readHook(typed);
  const named = isNamed(typed);
  const others = lookUpHook(typed).filter(
    ({ system, mm: size }) => (named || system === 'US' || system === 'US steel') && size !== read,
  );
  if ((!named && !isBareNumber(typed)) || others.length === 0) return undefined;
  const each = others.map(({ system, mm: size, US, oldUK }) =>
    named
      ? `${system === 'old UK' ? `old UK ${oldUK ?? ''}` : (US ?? '').replace(/^(?!steel)/, 'US ')} is ${mm(size)}`
      : `${system} ${typed.trim()} is ${mm(size)}`,
  );
  return `${typed.trim()} is read as ${mm(read)}; ${each.join(', ')}.`;
}

const YARN_HINT = 'Give a category 0 to 7, its name (medium, DK, worsted), or wraps per inch like 11wpi.';

/**
 * A yarn's thickness: a category 0–7 or its name (`4`, `medium`, `worsted weight`, `DK`, `4 ply`), or wraps per inch (`11wpi`).
 *
 * Throws Problem: not-a-yarn; unclear-yarn for a name that stands in two categories.
 */
export function readYarn(text: string): YarnThickness {
  const typed = text.length > LONGEST_YARN ? '' : simplifyYarn(text);
  const wraps = /^(.+?)\s*(?:wpi|wraps(?: per inch| an inch)?)$/.exec(typed)?.[1];
  if (wraps !== undefined) {
    const wpi = readNumber(wraps);
    if (wpi === undefined || wpi < 1 || wpi > 80)
      throw new Problem('not-a-yarn', `“${clip(text)}” is no count of wraps per inch.`, { hint: YARN_HINT });
    return { wpi };
  }
  const yarns =
    typed === '' || partsOfBall(typed) !== undefined || typed.includes('/') ? [] : lookUpYarn(typed).yarns;
  const [found] = yarns;
  if (!found)
    throw new Problem('not-a-yarn', `“${clip(text)}” does not say how thick the yarn is.`, {
      hint: YARN_HINT,
    });
  if (yarns.length > 1)
    throw new Problem('unclear-yarn', `“${clip(text)}” goes by in several weights.`, {
      hint: `Say which: ${yarns.map(({ category, name }) => `${category} (${name})`).join(', ')}.`,
    });
  return { wpi: (found.wpi[0] + found.wpi[1]) / 2, category: found.category };
}

/** Longer than any name of a yarn. */
const LONGEST_YARN = 60;

/** What is said of a yarn's name that means something else elsewhere; undefined where it is clear. */
export function describeOtherYarns(typed: string): string | undefined {
  const { called, yarns } = lookUpYarn(typed);
  const [yarn] = yarns;
  if (called?.conflict === undefined || yarn === undefined) return undefined;
  return `“${clip(typed.trim())}” is read as ${yarn.name}, category ${yarn.category} (${called.source}); ${called.conflict}.`;
}
