/** Whether words inquire after a thing or want it done: what changes something is never done on an inquiry. */

/** Begins a question: “how do I”, “should I”, “what if”, “is it”. */
const OPENS =
  /(?:^|[.!?;,–—]\s*|\b(?:and|but|so|or|ok|okay|hi|hello|hey|please|sorry|quick question)[,:]?\s+)(?:how|what|what['’]?s|whats|when|why|who|whose|which|where|whether|should|shall|must|may|might|can|could|do|does|did|is|are|was|were|am|will|would|has|have i|if i|what if)\b/iu;
/** “how many a week”, wherever it stands. */
const HOW =
  /\b(?:how (?:many|much|do|can|to|would|should|long|often|far|big)|what (?:if|happens)|whether|wondering)\b/iu;
/** Asks the program to do it: “can you switch me to inches?”. */
const REQUEST =
  /\b(?:can|could|would|will) you\b|\b(?:can|could|may) (?:i|we) (?:please )?(?:have|get|take)\b/iu;
/** Reports what was done before anything is asked: “done a row, what’s next?” */
const REPORTED = /^\W*(?:i(?:['’]ve| have)?\s+)?(?:just\s+|now\s+)?(?:done|finished|completed)\b/iu;
/** Puts a question mark behind a request or a report: “2 squares handed in, ok?” */
const ASKS = /\?\s*$/u;
const TAG = /,\s*(?:ok|okay|right|please|yes|thanks)\s*\?\s*$/iu;

/** True where somebody asks about a thing rather than that it be done. */
export function inquires(words: string): boolean {
  if (REPORTED.test(words) || (REQUEST.test(words) && !HOW.test(words))) return false;
  return OPENS.test(words) || HOW.test(words) || (ASKS.test(words) && !TAG.test(words));
}
