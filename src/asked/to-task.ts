/** What somebody says while a task of a lesson lies open before her: a number, that she does not know, that it is enough. */
import { readNumber } from '../core/base/quantity.ts';

/** Said before an answer: “I think it is 13”. */
const BEFORE =
  /^\W*(?:(?:i (?:think|guess|say|get|got|found)|my guess|maybe|perhaps|is it|is that|it['’]s|it is|that['’]s|that is|(?:my |the )?answer(?: is)?)\s*[:,]?\s+){1,3}/iu;
const AMOUNT =
  /^\d[\d.,]*(?:\s?[½¼¾])?\s*(?:%|per ?cent|stitch(?:es)?|sts?|rows?|cm|m|metres?|meters?|in|inch(?:es)?|yd|yards?|balls?|ends?|squares?|motifs?|chains?)?$/iu;
const LOST =
  /^\W*(?:i (?:really )?(?:don['’]?t|do not) (?:know|get it|understand)(?: (?:it|this|that))?|idk|no idea|(?:i['’]?m |i am )?(?:not sure|stuck|lost|confused)|(?:a )?clue|i give up|(?:show|tell) me(?: the answer)?|what(?: is|['’]?s) the answer)\W*$/iu;
const ENOUGH = /^\W*(?:stop|enough|no more|not now|quit|later)\W*$/iu;

/** The question that such words are, with its options; undefined where they are none of these. */
export function saidToTask(
  words: string,
): { readonly path: string; readonly options: Readonly<Record<string, string>> } | undefined {
  if (LOST.test(words)) return { path: 'lesson hint', options: {} };
  if (ENOUGH.test(words)) return { path: 'lesson stop', options: {} };
  const answer = words
    .replace(BEFORE, '')
    .trim()
    .replace(/[.!?]+$/, '');
  return AMOUNT.test(answer) || readNumber(answer) !== undefined
    ? { path: 'lesson answer', options: { answer } }
    : undefined;
}
