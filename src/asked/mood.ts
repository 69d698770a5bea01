/** Whether a phrase asks, tells, or just talks; and where its sentences end. */
import type { Token } from './tokens.ts';

export interface Mood {
  /** It asks something: a question word, a request, a question mark, or words thrown down like a search. */
  readonly asks: boolean;
  /** Somebody tells of herself, now: “I finished a square”. */
  readonly reports: boolean;
  /** Numbers of a problem laid down without asking: “my gauge is 14, the pattern wants 13”. */
  readonly states: boolean;
  /** For each token, the sentence it stands in. */
  readonly sentence: readonly number[];
  /** Sentences that ask. */
  readonly asking: ReadonlySet<number>;
}

const FILLER =
  /^(so|and|but|hi|hello|hey|hiya|ok|okay|right|just|also|please|pls|plz|um|erm|well|now|then|or|quick|question|anyone|anybody|everyone|all|there|folks|ladies|oh|hmm|yes|no|can|could|would|you|someone|somebody|morning|evening|afternoon|guys|help|sorry|thanks|thx|q|btw|maybe|if|because|for|with|in|on|at|roughly|about|approximately|approx|exactly|possibly|let|let's|,|-|i|i'd|like|love|want|to|wanna|need|me|we|us)$/;
const WH =
  /^(how|what|whats|what's|which|why|when|where|wheres|where's|who|whos|who's|whose|howmany|howmuch)$/;
const AUX =
  /^(is|are|am|was|were|do|does|did|can|could|will|would|should|shall|may|might|have|has|had|isn't|aren't|don't|doesn't|won't|can't)$/;
const SUBJECT =
  /^(i|you|we|they|he|she|it|the|a|an|my|this|that|these|those|there|anyone|anybody|someone|somebody|your|our|his|her|their|uk|us|dc|sc|hdc|acrylic|buttons|blankets|baby|babies|everyone|pompoms|all|\d+|one|any|each)$/;
const IMPERATIVE =
  /^(show|teach|quiz|learn|practise|practice|draw|list|tell|give|convert|calculate|calc|work|figure|compute|estimate|explain|define|describe|find|check|count|switch|use|set|change|make|put|start|open|close|reopen|swap|exchange|scale|rename|invite|remind|accept|hand|release|pledge|claim|undo|save|bring|restore|lay|arrange|scatter|delete|remove|erase|export|download|forget|mark|take|add|spread|increase|decrease|inc|dec|return|send|share|split|divide|write|print|display|help|choose|pick|select|record|store|log|create|begin|new|go|cancel|let|only|keep|join|sign|count|call|turn|move|reject|approve|see|picture|chart|reverse|drop|enlarge|weigh|substitute|substituting|replace|replacing|swapping|joining|edging|pick|look|stop|convert|translate|say|need|want|looking|trying|wondering|wanting|scrap|name|wipe|clear|upload|import|extend|nudge|chase|sort|randomise|shuffle|reserve|invite|allow|make|leave|quit|kick|ban|expel|withdraw|post|evenly|increasing|decreasing|resize)$/;
const REQUEST =
  /\b(need to know|want to know|like to know|wonder(ing)?|not sure (how|what|which|if|whether)|no idea (how|what)|any idea|figure out|work out|tell me|give me|show me|help me|how many|how much|how do i|how should i|how would|how big|how wide|how long|how far|what size|which row|which hook|number of|please|pls|plz|trying to (find|work|figure)|looking for|can you|could you|anyone know|do you know|i'd like|i would like|i want to|want everything|i need|(but|and) (it|the \w+) needs?|where did i|what did i|don't understand|dont understand|don't know|dont know|unsure|what (letter|size|number|mm|hook|weight|row|round)\b|is that right|would that be|will it|so how|would be grateful|what if|i have to go from|squares needed|stitch count|can't work out|cant work out|stuck|hurt|hurts|hurting|sore|aching|aches|painful)\b/;
/** An edge that misbehaves is told to be mended, as what hurts is. */
const LIES_BADLY =
  /\b(border|edge|edging)\b.*\b(rippl(es?|ing)|ruffl(es?|ing)|wavy|wav(es|ing)|curl(s|ing)|cup(s|ping)|pucker(s|ing)|flar(es|ing)|(does|will|is|do|lie|lying)(n't|nt| not) (lie |lay |lying )?flat|won't (lie|lay) flat)\b/;
/** Commands that follow upon a comma. */
const THEN =
  /^(undo|show|tell|give|check|help|convert|draw|list|switch|count|keep|save|delete|remove|put|take|invite|remind|swap|increase|increasing|inc|decrease|decreasing|dec|add|reduce)$/;

/** How somebody marvels, not asks. */
const MARVELS =
  /(love how|believe how|believe it|amaz(ed|ing) how|funny how|knows? how much|tells? you how|wish me|can't wait|cant wait|look at this|here's a photo|how are you|how old|in the end|never check|don't need|dont need|not asking|never mind|nvm)/;
/** The same, where nothing is asked besides. */
const GASPS = /(so many|so much|too many|too much)/;
/** What is wanted, or what a pattern asks: without it numbers are a story. */
const WISHES =
  /\b(wants?|needs?|aim(ing)?|i'd like|would like|hoping|should be|supposed to|calls? for|asks? for|but i(('ve)? only)? (have|got)|but i've got|says|pattern|designer)\b/;
/** What went wrong is told to be mended. */
const GONE_WRONG =
  /\b(miscount(ed)?|went wrong|gone wrong|mistake|but (i|i'm|im) (\w+ )?get(ting)?|something('s| is) (off|wrong)|too (loose|tight))\b/;
/** Yarn at hand beside what one takes of it: “I’ve got 350 g, one square uses 13 g”. */
const AT_HAND =
  /\b(got|have|left)\b.*\d.*\b(one|each|a|per|every)\b.*\b(uses?|takes?|weighs?|needs?|eats?|is)\b.*\d/;
/** Words by which somebody tells of things, and no story: “one square is 11 g”. */
const COPULA = /^(is|are|it's|its|that's|has|have)$/;
/** What is over and done is told, not asked. */
const TOLD = /\b(i|we|i've|we've|it) (just )?(made|finished|bought|took|did|love|loved|like|liked)\b/;
const FIRST = /^(i|i'm|im|i've|ive|i'll|ill|i'd|we|we're|we've|me)$/;
const THIRD =
  /^(she|he|her|his|their|she's|he's|mum|mom|mother|sister|friend|aunt|grandma|grandmother|gran|nan|daughter|husband|neighbour|neighbor|somebody|someone|dog|cat)$/;
const PAST =
  /\b(last (year|month|week|night|summer|winter|christmas)|yesterday|when i was|years? ago|months? ago|weeks? ago|the other day|this morning|in the sale|back then|used to|once upon|tonight|today|weekend)\b/;
const FINITE =
  /^(is|are|was|were|am|i'm|it's|its|that's|they're|have|has|had|made|used|took|take|came|come|went|go|said|love|hate|like|bought|got|ordered|did|do|does|keep|makes|looks|look|ate|sat|taught|gets|tells|turned|sent|gave|pledged|messed|drove|ran|lost|finished|joined|arrived)$/;

/** Ends of sentences: marks that part them, also a comma before a question word. */
function sentencesOf(tokens: readonly Token[]): number[] {
  let current = 0;
  return tokens.map((token, at) => {
    const mine = current;
    const next = tokens[at + 1];
    if (token.kind === 'mark' && /^[.!?;\n…]$/.test(token.text)) {
      // 3.5 was read as a number; a dot between letters is an abbreviation.
      if (!(token.text === '.' && next !== undefined && next.from === token.to)) current++;
    }
    return mine;
  });
}

/** Before a question word in the middle of a sentence: “not sure [how]”. */
const BEFORE_WH =
  /^(,|so|and|or|but|-|:|–|…|know|wondering|wonder|out|sure|idea|me|about|then|is|tell|see|please|to|of|by|\)|how|for|at|question|each)$/;

/** Where a sentence begins that opens with “hi, quick question”. */
function headOf(text: readonly string[]): number {
  const says = (word: string) => WH.test(word) || !(FILLER.test(word) || /^[^\p{L}\d]$/u.test(word));
  const first = text.findIndex(says);
  return first < 0 ? text.length : first;
}

/** Whether a sentence asks in so many words: a question mark, a question word where one may stand. */
function isQuestion(text: readonly string[], first: number): boolean {
  return text.some(
    (word, index) =>
      word === '?' || (WH.test(word) && (index <= first || BEFORE_WH.test(text[index - 1] ?? ''))),
  );
}

/** Whether a sentence asks by its order, “is it”, by a command, or by a request. */
function isRequest(text: readonly string[], first: number): boolean {
  const head = text[first] ?? '';
  const inverted = text.some(
    (word, index) =>
      AUX.test(word) &&
      SUBJECT.test(text[index + 1] ?? '') &&
      (index <= first || /^(,|so|and|-|or|but)$/.test(text[index - 1] ?? '')),
  );
  const opened = AUX.test(head) && !/^(have|has|had|was|were|may)$/.test(head);
  const commanded = IMPERATIVE.test(head) || IMPERATIVE.test(text.find((word) => /\p{L}/u.test(word)) ?? '');
  // “that was a mistake, undo it”
  const then = text.some((word, index) => /^[,–-]$/.test(text[index - 1] ?? '') && THEN.test(word));
  const said = text.join(' ').replaceAll(" ' ", "'");
  return inverted || opened || commanded || then || REQUEST.test(said) || LIES_BADLY.test(said);
}

/** Whether somebody tells of herself, now, and no story. */
const isReport = (lower: string, words: readonly string[]) =>
  !PAST.test(lower) &&
  !MARVELS.test(lower) &&
  !GASPS.test(lower) &&
  !words.some((word) => THIRD.test(word) || /^(you|your|was|were)$/.test(word));

/** Whether enough numbers of a problem are laid down for one that nobody asks in words. */
function isStatement(lower: string, words: readonly string[], numbers: number): boolean {
  const tells = (word: string) =>
    FIRST.test(word) || THIRD.test(word) || (FINITE.test(word) && !COPULA.test(word));
  const atHand = AT_HAND.test(lower);
  const wants = WISHES.test(lower) || GONE_WRONG.test(lower) || atHand || !words.some(tells);
  return wants && !TOLD.test(lower) && numbers >= (atHand || /\bpattern\b/.test(lower) ? 2 : 3);
}

export function moodOf(tokens: readonly Token[], words: readonly string[], phrase: string): Mood {
  const sentence = sentencesOf(tokens);
  const sentences = Array.from({ length: (sentence.at(-1) ?? 0) + 1 }, (_, one) =>
    words.filter((_word, at) => sentence[at] === one),
  );
  const lower = phrase.toLowerCase().replaceAll('’', "'");
  const questions = sentences.filter((text) => isQuestion(text, headOf(text)));
  const asking = new Set(
    sentences.flatMap((text, one) =>
      questions.includes(text) || isRequest(text, headOf(text)) ? [one] : [],
    ),
  );
  // Words thrown down as into a search: no verb, nobody who does anything.
  const talks = words.some((word) => FIRST.test(word) || THIRD.test(word) || FINITE.test(word));
  if (asking.size === 0 && !talks && tokens.length > 0) for (const one of sentences.keys()) asking.add(one);
  const gasps = questions.length === 0 && GASPS.test(lower);
  const reports = isReport(lower, words);
  const numbers = tokens.filter(({ kind }) => kind === 'number').length;
  return {
    asks: asking.size > 0 && !MARVELS.test(lower) && !gasps,
    reports,
    states: reports && isStatement(lower, words, numbers),
    sentence,
    asking,
  };
}
