/** Hooks: letters with their numbers, and numbers beside the word. Millimetres are lengths until an option asks for a hook. */
import { lookUpHook } from '../../core/lookup/hook.ts';
import type { Phrase, Recogniser } from './phrase.ts';

/** The highest number that stands behind a letter, S-19, and of a hook by its number alone. */
const HIGHEST_LETTERED = 19;
const HIGHEST_NUMBER = 30;

/** The US size of a letter where only one has it: H is H-8. */
function hookOfLetter(letter: string): string {
  const found = lookUpHook(`US ${letter}`);
  return found.length === 1 ? (found[0]?.US ?? letter.toUpperCase()) : letter.toUpperCase();
}

interface Letter {
  readonly letter: string;
  /** The token of its number, where that may be one: the 8 of `H-8`, `H 8`. */
  readonly joint: number;
  readonly numbered: boolean;
  /** Whether the words beside it make a hook of it. */
  readonly beside: boolean;
}

function letterAt(phrase: Phrase, at: number): Letter | undefined {
  const { tokens } = phrase;
  const token = tokens[at];
  if (token?.kind !== 'word' || !/^[b-u]$/.test(token.text) || phrase.inShape(at)) return undefined;
  const letter = token.text;
  const joint = /^[-/]$/.test(phrase.word(at + 1)) ? at + 2 : at + 1;
  const number = tokens[joint];
  const numbered =
    number?.kind === 'number' &&
    !phrase.isTaken(joint) &&
    (number.value ?? 99) <= HIGHEST_LETTERED &&
    (joint === at + 2 || number.from - token.to <= 1);
  const beside =
    phrase.says('hook', at + 1) ||
    phrase.says('hook', at - 1) ||
    // “what hook is a K”
    (/^(a|an)$/.test(phrase.word(at - 1)) &&
      phrase.word(at - 2) === 'is' &&
      phrase.saysNear('hook', at, 4)) ||
    phrase.word(at - 1) === 'size' ||
    (numbered && phrase.says('hook', joint + 1)) ||
    (phrase.word(at + 1) === 'crochet' && phrase.says('hook', at + 2));
  return { letter, joint, numbered, beside };
}

/** A letter with its number. “I” is seldom one: it must be joined. */
export const numberedLetter: Recogniser = {
  example: ['my H/8 hook', 'hook:H-8'],
  read: (phrase, at) => {
    const found = letterAt(phrase, at);
    if (!found?.numbered) return undefined;
    const { letter, joint, beside } = found;
    const [token, number] = [phrase.tokens[at], phrase.tokens[joint]];
    const gap = (number?.from ?? NaN) - (token?.to ?? NaN);
    if (letter === 'i' && joint !== at + 2 && gap !== 0) return undefined;
    if (!beside && !phrase.saysNear('hook', at, 8) && gap > 1) return undefined;
    const text = number?.value === 10.5 ? '10 1/2' : (number?.text ?? '');
    return phrase.put({
      kind: 'hook',
      text: `${letter.toUpperCase()}-${text}`,
      from: at,
      to: joint + 1,
      must: true,
    });
  },
};

export const letter: Recogniser = {
  example: ['a size H hook', 'hook:H-8'],
  read: (phrase, at) => {
    const found = letterAt(phrase, at);
    if (!found?.beside) return undefined;
    if (found.letter === 'i' && !(phrase.word(at - 1) === 'size' && phrase.says('hook', at + 1)))
      return undefined;
    return phrase.put({ kind: 'hook', text: hookOfLetter(found.letter), from: at, to: at + 1, must: false });
  },
};

/** A number that may be a hook’s, and where what is said of it begins: `size`, `number`, `#`. */
function numberAt(phrase: Phrase, at: number) {
  const token = phrase.tokens[at];
  if (token?.kind !== 'number' || token.loose || token.ordinal || (token.value ?? 99) > HIGHEST_NUMBER)
    return undefined;
  if (phrase.inShape(at)) return undefined;
  return { token, first: /^(size|number|no|nr|#)$/.test(phrase.word(at - 1)) ? at - 1 : at };
}

/** Whose numbers they are: those of steel hooks are a row of their own. */
function whoseNumbers(phrase: Phrase, first: number): 'steel' | 'UK' | 'US' | undefined {
  const owner = phrase.word(first - 1);
  if (owner === 'steel' || phrase.word(first - 2) === 'steel') return 'steel';
  if (/^(uk|british|canadian)$/.test(owner)) return 'UK';
  return /^(us|american)$/.test(owner) ? 'US' : undefined;
}

export const ownedNumber: Recogniser = {
  example: ['what hook is a UK 8', 'hook:UK 8'],
  read: (phrase, at) => {
    const found = numberAt(phrase, at);
    const whose = found && whoseNumbers(phrase, found.first);
    if (!found || whose === undefined) return undefined;
    const { token, first } = found;
    if (phrase.word(first - 1) === 'the') return undefined;
    if (whose !== 'steel' && !phrase.saysNear('hook', at, 5)) return undefined;
    return phrase.put({
      kind: 'hook',
      text: `${whose} ${token.text}`,
      from: first - 1,
      to: at + 1,
      must: true,
    });
  },
};

export const numberBeside: Recogniser = {
  example: ['with a 7 hook', 'hook:7'],
  read: (phrase, at) => {
    const found = numberAt(phrase, at);
    if (!found) return undefined;
    const { token, first } = found;
    const isHook =
      /^hooks?$/.test(phrase.word(at + 1)) ||
      (phrase.word(at + 1) === 'crochet' && phrase.word(at + 2) === 'hook') ||
      (/^hooks?$/.test(phrase.word(first - 1)) && first < at) ||
      (phrase.word(at - 1) === 'hook' && !Number.isInteger(token.value));
    if (!isHook) return undefined;
    const old = phrase.word(first - 1) === 'uk' || phrase.word(first - 2) === 'uk';
    return phrase.put({
      kind: 'hook',
      text: `${old ? 'UK ' : ''}${token.text}`,
      value: token.value ?? NaN,
      from: first,
      to: at + 1,
      must: true,
    });
  },
};
