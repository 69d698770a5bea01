/** What a word of a pattern means, in both terms: a bare abbreviation may be two different stitches. */
import {
  ABBREVIATIONS,
  ABBREVIATIONS_SOURCE,
  CHAIN_LOOP_SOURCE,
  CRAFT_WORDS,
  GERMAN_NAMES,
  GERMAN_SOURCE,
  STITCH_NAMES,
} from '../../standards/abbreviations.ts';
import { count, type Terms } from '../base/reader.ts';

export interface Meaning {
  /** Whose term it is; both where the two agree. */
  readonly terms: Terms | 'both';
  readonly US: string;
  readonly UK: string;
  /** How it is worked, or what it stands for. */
  readonly how: string;
  readonly symbol?: string;
  readonly trap?: string;
  readonly source: string;
}

const clean = (text: string) => text.trim().toLowerCase().replace(/\s+/g, ' ').replace(/\.$/, '');

/** Every meaning of a word, US and UK; `UK dc` asks for one of the two. Empty where it is not known. */
export function lookUpTerm(typed: string): Meaning[] {
  const match = /^(?:(us|uk)\s+)?(.+)$/.exec(clean(typed));
  const only = match?.[1]?.toUpperCase() as Terms | undefined;
  const word = match?.[2] ?? '';
  const stitches = STITCH_NAMES.flatMap((name): Meaning[] => {
    const isUS = name.US.includes(word);
    const isUK = name.UK.includes(word);
    const asked = only === undefined ? isUS || isUK : only === 'US' ? isUS : isUK;
    if (!asked) return [];
    return [
      {
        terms: isUS && isUK ? 'both' : isUS ? 'US' : 'UK',
        US: name.US.slice(0, 2).join(', '),
        UK: name.UK.slice(0, 2).join(', '),
        how: name.how,
        source: name.source,
        ...(name.symbol === undefined ? {} : { symbol: name.symbol }),
        ...(name.trap === undefined ? {} : { trap: name.trap }),
      },
    ];
  });
  if (stitches.length > 0) return stitches;
  const same = (how: string, source: string): Meaning => ({ terms: 'both', US: word, UK: word, how, source });
  // `ch-5` is a loop that is there already, `ch 5` is five chains to be made.
  const [, sign, chains] = /^ch([ -])(\d{1,3})$/.exec(word) ?? [];
  if (chains !== undefined) {
    const many = count(Number(chains), 'chain');
    return [
      sign === '-'
        ? same(
            `a loop of ${many} that is there already; without the dash it is ${many} to make`,
            CHAIN_LOOP_SOURCE,
          )
        : same(
            `make ${many}; with a dash (ch-${chains}) it is a loop that is there already`,
            CHAIN_LOOP_SOURCE,
          ),
    ];
  }
  // FPdc, BP hdc: round the stem. fsc, fdc: the chain and the stitch in one.
  const [, post, around] = /^(fp|bp)[ -]?(sc|hdc|dc|htr|tr|dtr)$/.exec(word) ?? [];
  if (post !== undefined && around !== undefined) {
    const where = ABBREVIATIONS.find(({ short }) => short.toLowerCase() === post)?.means ?? '';
    return [same(`${around}, in the pattern’s own terms, at the ${where}`, 'common practice')];
  }
  const founded = /^f(sc|hdc|dc|htr|tr)$/.exec(word)?.[1];
  if (founded !== undefined) {
    return [
      same(
        `foundation ${founded}, in the pattern’s own terms: each stitch makes its own chain below it, instead of a foundation chain worked first`,
        'common practice',
      ),
    ];
  }
  const german = GERMAN_NAMES.find(({ names }) => names.includes(word));
  if (german) {
    const stitch = STITCH_NAMES.find(({ US }) => US[0] === german.US);
    return [
      {
        terms: 'both',
        US: german.US,
        UK: german.UK,
        how: `a German name${stitch ? `; ${stitch.how}` : ''}`,
        source: GERMAN_SOURCE,
      },
    ];
  }
  const craft = CRAFT_WORDS.filter(({ names }) => names.includes(word));
  if (craft.length > 0) return craft.map(({ means }) => same(means, 'common practice'));
  return ABBREVIATIONS.filter(({ short, means }) => short.toLowerCase() === word || means === word).map(
    ({ short, means }) => ({ ...same(means, ABBREVIATIONS_SOURCE), US: short, UK: short }),
  );
}

/** Everything that can be looked up, for offers while typing. */
export const TERM_WORDS: readonly string[] = [
  ...new Set([
    ...STITCH_NAMES.flatMap(({ US, UK }) => [...US, ...UK]),
    ...ABBREVIATIONS.map(({ short }) => short),
  ]),
];

/** The same with the words of the craft and the German names. */
export const ALL_TERM_WORDS: readonly string[] = [
  ...TERM_WORDS,
  ...CRAFT_WORDS.flatMap(({ names }) => names),
  ...GERMAN_NAMES.flatMap(({ names }) => names),
];
