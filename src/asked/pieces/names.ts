/** Names: of what is saved, in quotes, and one of a kind. */
import { singular } from '../lexicon.ts';
import type { KnownName } from './piece.ts';
import type { Phrase, Recogniser } from './phrase.ts';

/** A name in quotes is this many tokens long at most. */
const LONGEST_QUOTED = 16;

const same = (a: string, b: string) => a === b || (singular(a) ?? a) === (singular(b) ?? b);

/** Finds the names of what is saved: a motif may be called “six inch square”. */
export function findNames(phrase: Phrase, known: readonly KnownName[]): void {
  const standsAt = (at: number, words: readonly string[]) =>
    words.every(
      (part, index) =>
        phrase.word(at + index) === part ||
        phrase.text(at + index) === part ||
        (index === words.length - 1 && same(phrase.word(at + index), part)),
    );
  for (let at = 0; at < phrase.tokens.length; at++) {
    const [found] = known
      .filter(({ words }) => standsAt(at, words))
      .sort((a, b) => b.words.length - a.words.length);
    if (!found) continue;
    const to = at + found.words.length;
    const called = found.words.join(' ');
    for (const one of known)
      if (one.words.join(' ') === called) phrase.names.push({ known: one, from: at, to });
    for (let inside = at; inside < to; inside++)
      if (phrase.tokens[inside]?.kind === 'number') phrase.take(inside, inside + 1);
    at = to - 1;
  }
}

/** Something in quotes is a name as it stands. */
export const quotedName: Recogniser = {
  example: ['call it "moss square 2"', 'name:'],
  read: (phrase, at) => {
    const { tokens } = phrase;
    const opens = tokens[at];
    // Behind a number it is an inch.
    if (opens?.text !== '"' || tokens[at - 1]?.to === opens.from || tokens[at + 1]?.from !== opens.to)
      return undefined;
    const end = tokens.findIndex((one, index) => index > at + 1 && one.text === '"');
    if (end < 0 || end - at > LONGEST_QUOTED) return undefined;
    return phrase.put({ kind: 'name', text: '', from: at, to: end + 1, must: false });
  },
};

/** “a trellis square”, “another furrow”: one of them, where an option asks for a number. */
export function countOneOfAKind(phrase: Phrase): void {
  for (const { known, from } of phrase.names)
    if (
      known.of === 'kind' &&
      /^(a|an|another|one)$/.test(phrase.word(from - 1)) &&
      !phrase.pieces.some((piece) => piece.from < from && from <= piece.to)
    )
      phrase.putOver({
        kind: 'count',
        text: '1',
        value: 1,
        from: from - 1,
        to: from,
        must: false,
        nouns: ['motif'],
      });
}
