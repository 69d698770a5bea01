/**
 * Whether words say of a thing that it is not so, not yet, only if, or done by somebody else: “I’m not done with part 3”, “please don’t
 * close it”. What changes something is not done on them.
 */
import type { Asked } from '../chat/asked.ts';
import type { Heard } from './heard.ts';
import type { Said } from './lexicon.ts';
import type { SenseName } from './words.ts';

const DENIES =
  /^(?:not|never|cannot|nobody|neither|nor|hardly|barely|refuse|refused|\w+n't|dont|doesnt|didnt|cant|wont|isnt|wasnt|havent|hasnt)$/;
/** Parts what is said from what is said besides; “and” and “or” hang on what stands before them. */
const PARTS = /^(?:[,.!?;:\n…–—]|-|but|so|because)$/;

/** Not yet, or only if. */
const NOT_YET = new RegExp(
  [
    String.raw`\b(?:almost|nearly|half|half ?way|not quite|mostly) (?:there|done|finished|through|made|ready)\b`,
    String.raw`\b(?:almost|nearly) (?:finished|completed|done|at|on|through)\b`,
    String.raw`\b(?:once|until|till|unless|before|as soon as|if only|if|when|wish|hope) (?:\w+ )?(?:i|i'm|i've|we|we're|we've)\b`,
    String.raw`\b(?:will|'ll|shall|should|must|want to|need to|have to|hope to|plan to|going to|gonna|about to|trying to|try to) (?:\w+ )?(?:be (?:done|finished|through|ready)|finish|complete)\b`,
    String.raw`\btoo (?:late|early|busy|soon) (?:for me )?to\b`,
  ].join('|'),
);

/** Somebody else, before what she does. */
const OTHERS =
  /^(?:she|he|they|mum|mom|mother|dad|father|sister|brother|friend|aunt|grandma|grandmother|gran|nan|daughter|son|husband|wife|neighbour|neighbor|someone|somebody|everyone|everybody|nobody|teacher|organiser|organizer|host)$/;
const DOES =
  /^(?:is|are|was|has|have|had|finished|completed|did|made|joined|left|closed|opened|pledged|wants|got|'s|just|already)$/;

interface Clause {
  readonly from: number;
  readonly to: number;
}

function clausesOf(words: readonly string[]): Clause[] {
  const clauses: Clause[] = [];
  let from = 0;
  for (let at = 0; at <= words.length; at++) {
    if (at < words.length && !PARTS.test(words[at] ?? '')) continue;
    if (at > from) clauses.push({ from, to: at });
    from = at + 1;
  }
  return clauses;
}

const sensesIn = (lists: readonly string[]) =>
  new Set(lists.flatMap((list) => list.split(/[ |]/)) as SenseName[]);
const choicesOf = ({ marks = {} }: Asked) =>
  Object.values(marks).flatMap(({ choices = {} }) => Object.values(choices));

/**
 * Whether a negation stands before something that is said there. Not where it is itself what is meant, “I can’t make two after all”, and
 * not where one thing is chosen over another: “centimetres not inches”.
 */
function denies({ words, said }: Heard, asked: Asked, { from, to }: Clause): boolean {
  const senses = sensesIn(asked.ways);
  const choices = sensesIn(choicesOf(asked));
  return words.slice(from, to).some((word, index) => {
    const at = from + index;
    if (!DENIES.test(word)) return false;
    if (said.some((one) => one.words > 1 && one.from <= at && at < one.to && senses.has(one.sense)))
      return false;
    const isSaidBefore = ({ sense }: Said) =>
      said.some((one) => one.sense === sense && one.from >= from && one.to <= at);
    if (
      word === 'not' &&
      said.some((one) => one.from === at + 1 && (choices.has(one.sense) || isSaidBefore(one)))
    )
      return false;
    return isBare(words, { from, to }) || said.some((one) => one.from > at && one.from < to);
  });
}

/** Says nothing by itself, and hangs on what comes after it: “please don’t”. */
const isBare = (words: readonly string[], { from, to }: Clause) =>
  words
    .slice(from, to)
    .every((word) => /^(?:please|no|not|never|ever|don't|dont|do|just|oh|hey|ok|okay|now)$/.test(word));

/** Whether somebody else is said to have done it, by a name that nothing here knows, or as she and he. */
function isOfAnother({ tokens, words, strangers }: Heard, { from, to }: Clause): boolean {
  return words.slice(from, to - 1).some((word, index) => {
    const at = from + index;
    const named =
      tokens[at]?.kind === 'word' &&
      !/^(?:everything|all)$/.test(word) &&
      strangers.includes(tokens[at].text.replace(/'s$/, ''));
    return (
      (OTHERS.test(word) || named) &&
      DOES.test(words[at + 1] ?? '') &&
      !words.slice(from, at).some((before) => /^(?:i|i'm|i've|im|ive|we|we've)$/.test(before))
    );
  });
}

/**
 * What is left of a phrase without what is said to be not so; undefined where nothing of it is. What is left means what the whole did, or the
 * whole did not mean it.
 */
export function withoutDisowned(heard: Heard, asked: Asked): string | undefined {
  const { words, tokens, phrase } = heard;
  const clauses = clausesOf(words);
  const left: Clause[] = [];
  let found = false;
  let hangs = false;
  for (const clause of clauses) {
    const text = words.slice(clause.from, clause.to).join(' ').replaceAll(" ' ", "'");
    const here = denies(heard, asked, clause) || NOT_YET.test(text) || isOfAnother(heard, clause);
    const small = isBare(words, clause);
    found ||= here;
    if (!here && !hangs) left.push(clause);
    // “never, ever, close it”
    hangs = small && (here || hangs);
  }
  if (!found) return undefined;
  return left
    .map(({ from, to }) => phrase.slice(tokens[from]?.from, tokens[to - 1]?.to))
    .join(', ')
    .trim();
}
