/** Numbers of a story: years, children, days. They answer to nothing. */
import { pastDash } from './amounts.ts';
import type { Recogniser } from './phrase.ts';

const OF_A_STORY =
  /^(years?|yrs?|yo|months?|weeks?|wks?|days?|kids?|children|grandchildren|grandkids|daughters?|sons?|girls?|boys?|cats?|dogs?|people|friends?|times|am|pm|oclock|o'clock|members|nieces?|nephews?|evenings?|nights?|questions?|sisters?|brothers?|patterns?|episodes?|tries|attempts?|ladies|women|of us|percent off|sizes?|rooms?|weekends?)$/;

/** What should be there, beside what is: “14 stitches instead of 15”, “it should have 15”. It is known, and answers to nothing. */
const SHOULD =
  /(?:^|\s)(?:instead of|rather than|(?:should|ought to|supposed to)(?: have| be)?|not)(?: the)?$/;
/** Where rows and their stitches are spoken of, and neither a gauge nor a length. */
const OF_ROWS =
  /^(?!.*\b(?:gauge|tension|swatch|over|inch(?:es)?|cm|mm|hook|balls?|border|x)\b)(?=.*\b(?:row|round|rnd)s?\b)/;

/** How far a count is off, “2 stitches too few”: no count itself, and what it is off from has to be said. */
export const offBy: Recogniser = {
  example: ['I have 2 stitches too few', 'aside:2'],
  read: (phrase, at) => {
    const token = phrase.tokens[at];
    if (token?.kind !== 'number' || token.ordinal) return undefined;
    const behind = phrase.between(at + 1, at + 4).join(' ');
    if (!OFF_BY.test(behind)) return undefined;
    const value = token.value ?? NaN;
    return phrase.put({ kind: 'aside', text: token.text, value, from: at, to: at + 1, must: true });
  },
};

const OFF_BY =
  /^(?:(?:st|sts|stitch|stitches) (?:too (?:few|many|much)|short|off|extra|missing)|(?:extra|missing) (?:st|sts|stitch|stitches)|too (?:few|many))\b/;

export const shouldBe: Recogniser = {
  example: ['row 7 has 14 stitches instead of 15', 'aside:15'],
  read: (phrase, at) => {
    const token = phrase.tokens[at];
    if (token?.kind !== 'number' || token.ordinal) return undefined;
    const before = phrase.between(Math.max(0, at - 4), at).join(' ');
    const all = phrase.words.join(' ');
    if (!SHOULD.test(before) || !OF_ROWS.test(all)) return undefined;
    const to = /^(?:st|sts|stitch|stitches)$/.test(phrase.text(at + 1)) ? at + 2 : at + 1;
    return phrase.put({
      kind: 'aside',
      text: token.text,
      value: token.value ?? NaN,
      from: at,
      to,
      must: false,
    });
  },
};

export const aside: Recogniser = {
  example: ['for my 3 year old', 'aside:3'],
  read: (phrase, at) => {
    const token = phrase.tokens[at];
    if (token?.kind !== 'number' || token.ordinal) return undefined;
    const nounAt = pastDash((one) => phrase.text(one), at + 1);
    // “50 x 60 sizes” is a pair.
    if (!OF_A_STORY.test(phrase.text(nounAt)) || /^(x|×|by|\*)$/.test(phrase.text(at - 1))) return undefined;
    return phrase.put({
      kind: 'aside',
      text: token.text,
      value: token.value ?? NaN,
      from: at,
      to: nounAt + 1,
      must: false,
    });
  },
};
