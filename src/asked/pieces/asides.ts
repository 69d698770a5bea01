/** Numbers of a story: years, children, days. They answer to nothing. */
import { pastDash } from './amounts.ts';
import type { Recogniser } from './phrase.ts';

const OF_A_STORY =
  /^(years?|yrs?|yo|months?|weeks?|wks?|days?|kids?|children|grandchildren|grandkids|daughters?|sons?|girls?|boys?|cats?|dogs?|people|friends?|times|am|pm|oclock|o'clock|members|nieces?|nephews?|evenings?|nights?|questions?|sisters?|brothers?|patterns?|episodes?|tries|attempts?|ladies|women|of us|percent off|sizes?|rooms?|weekends?)$/;

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
