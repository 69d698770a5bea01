/** What reads plain words, as one: whoever only now and then is asked in plain words loads it then. */
export { answerBare, answerWords, otherReadings } from './answer.ts';
export { answerWaiting } from './completing.ts';
export { isName } from './lexicon.ts';
