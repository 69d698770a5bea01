/** The sizes that go by a name: `queen` is two mattresses, a cover and two blankets. */
import { SIZES, SIZE_WORDS, type StandardSize } from '../../standards/sizes.ts';

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
  const of = Object.hasOwn(SIZE_WORDS, name) ? SIZE_WORDS[name] : name;
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
