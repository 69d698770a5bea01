/** Two stitches side by side: how they are worked, how tall they are and how much yarn they take. */
import { STITCH_FACTS, STITCHES, type Stitch } from '../../standards/stitches.ts';
import type { Terms } from '../base/reader.ts';
import { formula, type Working } from '../base/working.ts';
import { lookUpTerm, type Meaning } from './term.ts';

export const TIMES_AS_TALL = formula({
  label: 'Times as tall',
  formula: 'taller / shorter',
  given: { taller: '', shorter: '' },
  unit: '',
  source:
    'published heights of rows over that of US sc (carol-mycrochetpage.blogspot.com, "Picot edging", 2009); US hdc from memory',
});
export const TIMES_THE_YARN = formula({
  label: 'Times the yarn',
  formula: 'taller / shorter',
  given: { taller: '', shorter: '' },
  unit: '',
  source: 'one maker’s measurement over the same row (windchilde.com/bluedepth); US tr derived',
});

const PARTED = /\s*(?:[,;/&]|\b(?:vs?|versus|and|or)\b\.?)\s*/i;

/** A name as it was typed, and the one meaning it has for the reader. */
export interface Named {
  readonly typed: string;
  readonly meaning: Meaning;
  /** Where it is one of the four whose height and yarn are known. */
  readonly stitch: Stitch | undefined;
}

/**
 * The words of the trade that are to be told apart, each in the reader’s terms unless `UK` or `US` stands before it; a terms’ name before the first
 * is for all. Undefined where fewer than two are named, or one is not known.
 */
export function readNamed(typed: string, terms: Terms): Named[] | undefined {
  const parts = typed.split(PARTED).filter((part) => part !== '');
  if (parts.length < 2 || parts.length > 4) return undefined;
  const led = (part: string | undefined) => /^(us|uk)\s/i.exec(part ?? '')?.[1];
  const own = led(parts[0]) ?? terms;
  const named = parts.map((part): Named | undefined => {
    const meaning = lookUpTerm(led(part) === undefined ? `${own} ${part}` : part)[0] ?? lookUpTerm(part)[0];
    const short = meaning?.US.split(', ')[0];
    return (
      meaning && {
        typed: part.replace(/^(?:us|uk)\s/i, (whose) => whose.toUpperCase()),
        meaning,
        stitch: STITCHES.find((stitch) => stitch === short),
      }
    );
  });
  const known = named.filter((one) => one !== undefined);
  return known.length === parts.length ? known : undefined;
}

export interface Compared {
  readonly shorter: Stitch;
  readonly taller: Stitch;
  /** How many times as tall, and how many times the yarn. */
  readonly tall: number;
  readonly yarn: number;
}

/** The shortest and the tallest of the stitches; undefined where fewer than two are known by height, or all are the same. */
export function compareStitches(named: readonly Named[], working: Working): Compared | undefined {
  const known = STITCHES.filter((stitch) => named.some((one) => one.stitch === stitch));
  const [shorter] = known;
  const taller = known.at(-1);
  if (shorter === undefined || taller === undefined || shorter === taller) return undefined;
  const [low, high] = [STITCH_FACTS[shorter], STITCH_FACTS[taller]];
  return {
    shorter,
    taller,
    tall: working.do(TIMES_AS_TALL, { taller: high.height, shorter: low.height }),
    yarn: working.do(TIMES_THE_YARN, { taller: high.yarn, shorter: low.yarn }),
  };
}
