/** Reading what the trade calls its hooks, stitches and yarns, as people type it. */
import { HOOKS } from '../../standards/hooks.ts';
import { STITCHES, type Stitch } from '../../standards/stitches.ts';
import { TERMS } from '../../standards/terms.ts';
import { YARN_WEIGHTS } from '../../standards/yarn-weights.ts';
import { Problem } from './problem.ts';
import { clip, readNumber } from './quantity.ts';

/** A yarn's thickness: wraps per inch, and the category it was read from, where it was. */
export interface YarnThickness {
  readonly wpi: number;
  readonly category?: number;
}

/** Hooks are made from 0.35 mm to 25 mm (en.wikipedia.org, Crochet hook); some lists go to 30. */
const THINNEST_HOOK = 0.35;
const THICKEST_HOOK = 30;

/**
 * A hook: `5mm`, `5`, or a US size with its letter, `H-8`. In millimetres.
 *
 * Throws Problem: not-a-hook, no-such-hook.
 *
 * @example
 * readHook('H-8') // → 5
 */
export function readHook(text: string): number {
  const hint = 'Give millimetres, like 5mm, or a US size with its letter, like H-8.';
  const typed = text.trim();
  const named = typed.toUpperCase().replace(/^US\s+/, '');
  const known = HOOKS.find(
    (hook) =>
      hook.US !== undefined &&
      (/[A-Z]/.test(hook.US) || /^US\s/i.test(typed)) &&
      hook.US.toUpperCase() === named,
  );
  if (known) return known.mm;
  const amount = readNumber(typed.replace(/\s*mm$/i, ''));
  if (amount === undefined) throw new Problem('not-a-hook', `“${clip(text)}” is not a hook.`, { hint });
  if (amount < THINNEST_HOOK || amount > THICKEST_HOOK)
    throw new Problem('no-such-hook', `No hook of ${amount} mm is made.`, {
      hint: `Hooks run from ${THINNEST_HOOK}mm to ${THICKEST_HOOK}mm.`,
      facts: { given: amount, least: THINNEST_HOOK, most: THICKEST_HOOK },
    });
  return amount;
}

/**
 * A stitch: `hdc`, `US dc`, `UK tr`, or its full name. A bare abbreviation is taken in US terms. What only the other
 * terms have can mean one stitch alone and is taken, whosever terms were named: `US htr` is `UK htr`.
 *
 * Throws Problem: not-a-stitch.
 *
 * @example
 * readStitch('UK dc') // → 'sc'
 */
export function readStitch(text: string): Stitch {
  const match = /^(?:(us|uk)\s+)?(.+)$/i.exec(text.trim().replace(/\s+/g, ' ')) ?? [];
  const terms = match[1]?.toUpperCase();
  const name = match[2]?.toLowerCase() ?? '';
  const long: Readonly<Record<Stitch, keyof typeof TERMS>> = {
    sc: 'single crochet',
    hdc: 'half double crochet',
    dc: 'double crochet',
    tr: 'treble',
  };
  const called = (stitch: Stitch, which: 'US' | 'UK') =>
    name === TERMS[stitch][which] || name === TERMS[long[stitch]][which];
  for (const which of terms === 'UK' ? (['UK', 'US'] as const) : (['US', 'UK'] as const)) {
    const found = STITCHES.find((stitch) => called(stitch, which));
    if (found) return found;
    // A stitch of these terms that is taller than any counted here: never the other terms' stitch of that name.
    if (Object.values(TERMS).some((pair) => pair[which] === name)) break;
  }
  throw new Problem('not-a-stitch', `“${clip(match[2] ?? text)}” is not a stitch that is counted here.`, {
    hint: 'Use sc, hdc, dc or tr (US), or say whose terms you mean: UK dc.',
  });
}

/**
 * A run of stitches, one a round; `UK htr tr` says whose terms they are in.
 *
 * Throws Problem: no-stitches, not-a-stitch.
 *
 * @example
 * readStitches('hdc dc hdc') // → ['hdc', 'dc', 'hdc']
 */
export function readStitches(text: string): Stitch[] {
  const match = /^(?:(us|uk)\s+)?(.*)$/is.exec(text.trim()) ?? [];
  const terms = match[1] === undefined ? '' : `${match[1]} `;
  const names = (match[2] ?? '').split(/[\s,]+/).filter((name) => name !== '');
  if (names.length === 0)
    throw new Problem('no-stitches', 'No stitch is named.', {
      hint: 'Name one stitch a round, like hdc dc hdc.',
    });
  return names.map((name) => readStitch(terms + name));
}

/**
 * A yarn's thickness: a category 0–7 or its name (`4`, `medium`, `worsted`, `DK`), or wraps per inch (`11wpi`).
 *
 * Throws Problem: not-a-yarn.
 *
 * @example
 * readYarn('11wpi') // → { wpi: 11 }
 */
export function readYarn(text: string): YarnThickness {
  const hint = 'Give a category 0 to 7, its name (medium, DK, worsted), or wraps per inch like 11wpi.';
  const typed = text.trim().toLowerCase();
  const wraps = /^(.+?)\s*(?:wpi|wraps)$/.exec(typed)?.[1];
  if (wraps !== undefined) {
    const wpi = readNumber(wraps);
    if (wpi === undefined || wpi < 1 || wpi > 80)
      throw new Problem('not-a-yarn', `“${clip(text)}” is no count of wraps per inch.`, { hint });
    return { wpi };
  }
  const exact = YARN_WEIGHTS.find(
    (yarn) => String(yarn.category) === typed || yarn.name.toLowerCase() === typed,
  );
  const typedAs = YARN_WEIGHTS.filter((yarn) => yarn.types.toLowerCase().split(', ').includes(typed));
  // A type that stands in two categories (baby, fingering) names neither.
  const yarnWeight = exact ?? (typedAs.length === 1 ? typedAs[0] : undefined);
  if (!yarnWeight)
    throw new Problem('not-a-yarn', `“${clip(text)}” does not say how thick the yarn is.`, { hint });
  return { wpi: (yarnWeight.wpi[0] + yarnWeight.wpi[1]) / 2, category: yarnWeight.category };
}
