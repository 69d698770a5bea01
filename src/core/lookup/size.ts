/** The sizes that go by a name: `queen` is two mattresses, a cover and two blankets. */
import { SIZES, SIZE_WORDS, type StandardSize } from '../../standards/sizes.ts';
import { findNearest } from '../base/nearest-name.ts';
import { Problem } from '../base/problem.ts';
import { clip } from '../base/quantity.ts';
import { size as measures } from '../base/reader.ts';

/** Every size of that name, blankets first; `king blanket` or `UK king` narrows it. Empty where none has it. */
export function lookUpSize(typed: string): StandardSize[] {
  const text = typed
    .trim()
    .toLowerCase()
    .replace(/[-\s]+/g, ' ');
  const kind = /\b(mattress|bed|cover|comforter|blanket)\b/.exec(text)?.[1];
  const place = /\b(uk|us|america|europe)\b/.exec(text)?.[1];
  const name = text
    .replace(/\b(mattress|bed|cover|comforter|blanket|uk|us|america|europe)\b/g, '')
    .replace(/ +/g, ' ')
    .trim();
  const of = SIZE_WORDS[name] ?? name;
  return SIZES.filter((size) => (of === '' ? kind !== undefined : size.of === of))
    .filter(
      (size) =>
        kind === undefined ||
        (kind === 'blanket'
          ? size.kind === 'blanket'
          : kind === 'cover' || kind === 'comforter'
            ? size.kind === 'cover'
            : size.kind === 'mattress' || size.what.includes('mattress')),
    )
    .filter(
      (size) =>
        place === undefined ||
        size.what.toLowerCase().includes(place === 'us' ? 'us' : place) ||
        (place === 'us' && size.what.includes('America')),
    );
}

/** Everything that can be looked up, for offers while typing. */
export const SIZE_NAMES: readonly string[] = [...new Set(SIZES.map(({ of }) => of))];

/** Whose figure is taken where a word alone is given: a blanket before a cover, a cover before what it lies on. */
const LARGEST_FIRST: readonly StandardSize['kind'][] = ['blanket', 'cover', 'crib', 'mattress'];

export interface BlanketFor {
  readonly taken: StandardSize;
  /** Other figures by the same name. */
  readonly others: readonly StandardSize[];
}

/** The size meant by a word: `queen`, `throw`, `UK king`. Throws a Problem where no table has it. */
export function findBlanketSize(typed: string): BlanketFor {
  const found = [...lookUpSize(typed)].sort(
    (a, b) => LARGEST_FIRST.indexOf(a.kind) - LARGEST_FIRST.indexOf(b.kind),
  );
  const [taken, ...others] = found;
  if (taken) return { taken, others };
  const near = findNearest(typed, SIZE_NAMES);
  throw new Problem('unknown-size-word', `“${clip(typed)}” is no size that is known here.`, {
    option: 'for',
    hint: `${near === undefined ? '' : `Did you mean ${near}? `}There are ${SIZE_NAMES.join(', ')}.`,
  });
}

/** What is taken for a word, whose figure that is, and what else goes by the name. */
export function describeBlanketSize(typed: string): string {
  const { taken, others } = findBlanketSize(typed);
  const told = ({ width, height, what }: StandardSize) => `${measures(width, height)} (${what})`;
  return `“${clip(typed)}” is taken as ${told(taken)}, ${taken.source}.${
    taken.kind === 'mattress' ? ' That is the top of the mattress: add the drop you want.' : ''
  }${others.length === 0 ? '' : ` Others by that name: ${others.map(told).join('; ')}.`}`;
}
