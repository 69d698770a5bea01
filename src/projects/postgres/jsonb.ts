/**
 * What a document says, as jsonb takes it. It refuses two things that a text may hold here: the character NUL, and one half of a
 * pair of UTF-16 alone (PostgreSQL, 8.14 JSON Types). They are written as a character of private use and four digits.
 */

/** Begins the writing of a character that jsonb refuses; itself written so too. */
const SIGN = '\uE000';
const REFUSED = /[\0\uE000]|\p{Surrogate}/gu;
const WRITTEN = /\uE000([0-9a-f]{4})/g;
/** What such characters look like in JSON; a backslash before it makes it something else, which the slower way tells apart. */
const SUSPECT = /\\u0000|\\ud[89a-f]|\uE000/;

const write = (char: string) => SIGN + char.charCodeAt(0).toString(16).padStart(4, '0');

/** JSON that jsonb takes. */
export function toJsonb(said: unknown): string {
  const text = JSON.stringify(said);
  if (!SUSPECT.test(text)) return text;
  return JSON.stringify(said, (_, part: unknown) =>
    typeof part === 'string' ? part.replace(REFUSED, write) : part,
  );
}

/** What was said, of the text that jsonb gives back. */
export function fromJsonb(text: string): unknown {
  if (!text.includes(SIGN)) return JSON.parse(text);
  return JSON.parse(text, (_, part: unknown) =>
    typeof part === 'string'
      ? part.replace(WRITTEN, (_all, code: string) => String.fromCharCode(parseInt(code, 16)))
      : part,
  );
}
