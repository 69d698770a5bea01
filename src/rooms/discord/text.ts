/**
 * Texts on their way into a message: whatever a person typed stays what it looks like. Everything that an answer says
 * passes through `escaped`; the only markdown in a message is what the renderer itself puts around it.
 */
import { inWords } from '../../core/base/reader.ts';

/** Control characters and halves of characters, which the platform refuses or shows as nothing. */
const UNSHOWABLE = /[^\P{Cc}\n]|\p{Cs}/gu;

/** Marks that change the direction of the text around them, or hide in it: a name must not reorder a sentence. */
const HIDDEN = /[\u200b\u200e\u200f\u202a-\u202e\u2060-\u2069\ufeff]/g;

/**
 * A moment or a day on its way to the reader's own time: the brackets are those that no typed text keeps. A day is
 * shown by its noon, UTC, which is the same day nearly everywhere.
 */
export function clock(iso: string): string {
  const day = !iso.includes('T');
  const seconds = Math.floor(Date.parse(day ? `${iso}T12:00:00Z` : iso) / 1000);
  return `⟦t:${seconds}:${day ? 'D' : 'f'}⟧`;
}
const TIMES = /⟦t:(-?\d+):([Df])⟧/g;
/** A moment that was cut in its middle. */
const CUT_TIME = /⟦[^⟧…]*(?=…?$)/;

/** Whatever one of those might be in, found in one look: most texts have nothing of it. */
const SUSPECT = /[\x00-\x09\x0b-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2060-\u2069\ud800-\udfff\ufeff⟦]/;

const bare = (text: string) =>
  SUSPECT.test(text) ? text.replace(UNSHOWABLE, ' ').replace(HIDDEN, '').replace(CUT_TIME, '') : text;

/** Text that is shown as it stands, where the platform fills no times in: they are in words, UTC. */
export const clean = (text: string) =>
  bare(text).replace(TIMES, (_, seconds: string, style: string) => {
    const iso = new Date(Number(seconds) * 1000).toISOString();
    return inWords(style === 'D' ? iso.slice(0, 10) : iso);
  });

/** One line, its moments still to be filled in. */
export function oneLine(text: string): string {
  const shown = bare(text);
  return (UNEVEN.test(shown) ? shown.replace(/\s+/g, ' ') : shown).trim();
}
/** More than single spaces between words. */
const UNEVEN = /[^\S ]| {2}/;

/**
 * Whatever of a text might have to be made literal, found in one look: most texts are words, numbers and full stops. Text of
 * several lines is looked at closely always.
 */
const MARKED =
  /[\x00-\x1f\x7f-\x9f\u200b-\u200f\u2028-\u202e\u2060-\u2069\ud800-\udfff\ufeff⟦\\*_~|`[\]<@>#+]|:\/\/|\.[^\s\d]|^\s*(?:-|\d{1,9}[.)]\s)/;

/** Text with every mark that the platform would read as formatting, mention, emoji or link made literal. */
export function escaped(text: string): string {
  if (!MARKED.test(text)) return text;
  return (
    bare(text)
      .replace(/[\\*_~|`[\]<@]/g, '\\$&')
      // Quotes, headings, small print and lists begin a line.
      .replace(/^([^\S\n]*)([>#+-])/gm, '$1\\$2')
      .replace(/^([^\S\n]*\d{1,9})([.)])(?=\s)/gm, '$1\\$2')
      // Addresses become links by themselves, invitations even without a scheme.
      .replace(/:(?=\/\/)/g, '\\:')
      // The point first, then what is before it: looking behind at every character costs five times as much.
      .replace(/\.(?<=[\p{L}\p{N}]\.)(?=\p{L}{2})/gu, '\\.')
      .replace(TIMES, '<t:$1:$2>')
  );
}

/** Text cut to at most `most` characters once it is dressed; what was cut ends with an ellipsis. */
export function fit(text: string, most: number, dress: (text: string) => string = clean): string {
  const whole = dress(text);
  if (whole.length <= most) return whole;
  const points = [...text];
  let least = 0;
  let high = Math.min(points.length, most);
  const cut = (length: number) => dress(`${points.slice(0, length).join('').trimEnd()}…`);
  while (least < high) {
    const middle = Math.ceil((least + high) / 2);
    if (cut(middle).length <= most) least = middle;
    else high = middle - 1;
  }
  return cut(least);
}

/** Double quotes around the whole, then single ones; and the quotes of that kind that would be in the way inside. */
const QUOTED = [
  { whole: /^["“”„](.+)["“”]$/s, inside: /(?<!\d)["“”„]/ },
  { whole: /^['‘](.+)['’]$/s, inside: /(?<!\p{L})['‘’]|['‘’](?!\p{L})/u },
];

/**
 * What was typed into a form, without the quotes that it wants in a line: one pair around the whole. Quotes of its own
 * inside stay (apostrophes, inches, a pair within the pair), and so do two that are no pair around the whole.
 */
export function unquoted(typed: string): string {
  const text = typed.trim();
  for (const { whole, inside } of QUOTED) {
    const inner = whole.exec(text)?.[1];
    if (inner !== undefined) return whole.test(inner) || !inside.test(inner) ? inner : typed;
  }
  return typed;
}

/** What has to be typed into a form so that `unquoted` gives this. */
export const asTyped = (value: string): string =>
  [value, `"${value}"`, `'${value}'`].find((typed) => unquoted(typed) === value) ?? value;

/** A question as it is filled into a form, where no value needs quotes. */
export const asFilledIn = (line: string) => line.replace(/\b([a-z][a-z0-9_]*):"([^"\n]*)"/g, '$1:$2');

export interface Taken {
  readonly taken: readonly string[];
  readonly left: readonly string[];
}

const NONE: readonly never[] = [];

/** As many lines, from the first, as fit into `budget` characters with a line break between them. */
export function take(lines: readonly string[], budget: number): Taken {
  let used = 0;
  const over = lines.findIndex((line, index) => {
    used += line.length + (index === 0 ? 0 : 1);
    return used > budget;
  });
  return over < 0 ? { taken: lines, left: NONE } : { taken: lines.slice(0, over), left: lines.slice(over) };
}
