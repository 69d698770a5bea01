/** What every picture is made of: text that survives the typeface, letters on any ground, a page with alt text. */
import { plain } from '../core/base/reader.ts';
import { FONT } from './font.ts';

/** A picture as SVG in pixels, and what it shows in words. */
export interface Drawing {
  readonly svg: string;
  /** At most 1,024 characters, which is what a chat takes. */
  readonly alt: string;
  readonly width: number;
  readonly height: number;
}

/** The width of a picture in pixels; a phone shows it at half. Texts are at least `SMALL` high, so 11 pixels there. */
export const PAGE = 800;
export const SMALL = 22;
export const INK = '#1d1d1f';
export const PALE_INK = '#5b6068';
export const PAPER = '#ffffff';
export const CLOTH = '#efebe2';
export const LONGEST_ALT = 1024;

/**
 * What the typeface can draw, regular and bold: blocks that it covers to the last letter. Anything else (emoji, Chinese,
 * Japanese and Korean among it) would leave nothing behind.
 */
const DRAWN =
  /^[\u0020-\u007e\u00a0-\u02e9\u0300-\u034f\u0391-\u03a1\u03a3-\u03ff\u0400-\u0525\u05d0-\u05ea\u060c\u061b\u061f\u0621-\u063a\u0640-\u0655\u0660-\u0669\u0679-\u06bf\u06cc\u06f0-\u06f9\u1e00-\u1efb\u2010-\u2027\u2030-\u205e\u2074-\u208e\u20a0-\u20b5\u2150-\u2185\u2190-\u22ff\u2500-\u269c\u2701-\u2704\u270c-\u2727]+$/u;
const INVISIBLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}\ufe00-\ufe0f]/gu;
/** Made when the first is needed: it takes as long as all the rest of a start. */
let letters: Intl.Segmenter | undefined;
/** Stands for a letter that the typeface has not. */
export const SUBSTITUTE = '▢';

/** Each letter as it is seen, whether the typeface has it or not. */
function seenLetters(typed: string): string[] {
  const oneLine = plain(typed).normalize('NFC').replace(/\s+/gu, ' ');
  letters ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
  return [...letters.segment(oneLine)].map(({ segment }) => segment.replace(INVISIBLE, ''));
}

/** Most texts of a picture are numbers, letters and plain words: hundreds of them, one in every cell. */
const PLAINEST = /^(?:[!-~]+(?: [!-~]+)*)?$/;

const has = (seen: string) => seen === '' || DRAWN.test(seen);

/** A person's text as it can be drawn: one line, letters that the typeface lacks replaced by a plain box. */
export function drawable(typed: string): string {
  if (PLAINEST.test(typed)) return typed;
  return seenLetters(typed)
    .map((seen) => (has(seen) ? seen : SUBSTITUTE))
    .join('')
    .trim();
}

/** The letters of a text for which a box is drawn, each once. */
export const undrawable = (typed: string): string[] =>
  PLAINEST.test(typed) ? [] : [...new Set(seenLetters(typed).filter((seen) => !has(seen)))];

/** Text as it may stand in SVG, between tags and inside quotes. */
export const escaped = (text: string) =>
  // Most texts have none of them: a large blanket has thousands.
  /[&<>"']/.test(text)
    ? text
        .replaceAll('&', '&amp;')
        .replaceAll('<', '&lt;')
        .replaceAll('>', '&gt;')
        .replaceAll('"', '&quot;')
        .replaceAll("'", '&#39;')
    : text;

/** Rather more than the width of a text in pixels: the widths of the typeface, by kinds of letters. */
export function widthOf(text: string, size: number, bold = false): number {
  let ems = 0;
  for (const char of text) {
    if (/[ijl]/u.test(char)) ems += 0.28;
    else if (/[ .,:;'|!·]/u.test(char)) ems += 0.34;
    else if (/[ftrI\-/[\]()]/u.test(char)) ems += 0.42;
    else if (/[mwMW@%—…]/u.test(char)) ems += 1;
    else if (/[A-Z×+=]/u.test(char)) ems += 0.78;
    else if (/[ckszvxy]/u.test(char)) ems += 0.595;
    else if (/[a-z0-9]/u.test(char)) ems += 0.64;
    else ems += 0.9;
  }
  return ems * size * (bold ? 1.12 : 1);
}

/** As much of a text as fits, with an ellipsis where some was cut. */
export function fitted(text: string, width: number, size: number, bold = false): string {
  if (widthOf(text, size, bold) <= width) return text;
  const all = [...text];
  while (all.length > 1 && widthOf(`${all.join('').trimEnd()}…`, size, bold) > width) all.pop();
  return `${all.join('').trimEnd()}…`;
}

/** A text broken into lines that fit. A word too long for a line is cut. */
export function lines(text: string, width: number, size: number): string[] {
  const out: string[] = [];
  for (const word of text.split(' ')) {
    const last = out.at(-1);
    if (last !== undefined && widthOf(`${last} ${word}`, size) <= width)
      out[out.length - 1] = `${last} ${word}`;
    else out.push(fitted(word, width, size));
  }
  return out;
}

export interface TextLook {
  readonly size: number;
  readonly bold?: boolean;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly fill?: string;
  /** A rim of paper around the letters, so that they can be read on any ground. */
  readonly rim?: boolean;
  readonly role?: string;
}

/** A number for SVG: two decimals, no trailing zeros. */
export const n = (value: number) => String(Math.round(value * 100) / 100);

/** A text with its baseline at y. The text is made drawable and escaped here: nowhere else does text enter a picture. */
export function text(x: number, y: number, words: string, look: TextLook): string {
  const { size, bold = false, anchor = 'start', fill = INK, rim = false, role } = look;
  const rimmed = rim
    ? ` stroke="${PAPER}" stroke-width="${n(size * 0.22)}" stroke-linejoin="round" paint-order="stroke"`
    : '';
  return (
    `<text x="${n(x)}" y="${n(y)}" font-size="${n(size)}"${bold ? ' font-weight="bold"' : ''}` +
    `${anchor === 'start' ? '' : ` text-anchor="${anchor}"`} fill="${fill}"${rimmed}` +
    `${role === undefined ? '' : ` class="${role}"`}>${escaped(drawable(words))}</text>`
  );
}

export function rect(x: number, y: number, width: number, height: number, rest: string): string {
  return `<rect x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}" ${rest}/>`;
}

/** A closed outline through points. */
export const outline = (points: readonly (readonly [number, number])[]) =>
  `M${points.map(([x, y]) => `${n(x)} ${n(y)}`).join('L')}Z`;

/** Thin slanted lines over what is still to come: seen without any colour. */
export const hatch = (id: string, gap: number, stroke: string, width: number) =>
  `<pattern id="${id}" width="${n(gap)}" height="${n(gap)}" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">` +
  `<rect width="${n(width)}" height="${n(gap)}" fill="${stroke}"/></pattern>`;

/** A pattern of dots, one in every square of `gap`. */
export const dotted = (id: string, gap: number, fill: string) =>
  `<pattern id="${id}" width="${n(gap)}" height="${n(gap)}" patternUnits="userSpaceOnUse">` +
  `<circle cx="${n(gap / 2)}" cy="${n(gap / 2)}" r="${n(gap * 0.18)}" fill="${fill}"/></pattern>`;

/** Sentences joined while they fit into an alt text; the first is cut if it alone is too long, later ones are left out. */
export function altText(sentences: readonly string[]): string {
  let alt = '';
  for (const sentence of sentences) {
    const longer = alt === '' ? sentence : `${alt} ${sentence}`;
    if (longer.length <= LONGEST_ALT) alt = longer;
    else if (alt === '') alt = `${longer.slice(0, LONGEST_ALT - 1).replace(/[\ud800-\udbff]$/, '')}…`;
  }
  return alt;
}

/** The finished page. `defs` are patterns and shapes used more than once. */
export function page(
  size: { width: number; height: number },
  alt: string,
  defs: string,
  body: string,
): Drawing {
  const width = Math.ceil(size.width);
  const height = Math.ceil(size.height);
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" ` +
    `font-family="${FONT.family}" role="img"><desc>${escaped(alt.replace(INVISIBLE, ''))}</desc><defs>${defs}</defs>` +
    `${rect(0, 0, width, height, `fill="${PAPER}"`)}${body}</svg>`;
  return { svg, alt, width, height };
}
