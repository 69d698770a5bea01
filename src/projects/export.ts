/** Everything kept of a maker as one JSON file, and the same file read back. */
import { defined } from '../core/base/defined.ts';
import { sameName } from '../core/base/nearest-name.ts';
import { Problem } from '../core/base/problem.ts';
import { MOST_PRICE, MOST_ROWS_WORKED } from '../core/base/limits.ts';
import { readBall, readGauge, readLength, readWeight } from '../core/base/quantity.ts';
import { num, plain } from '../core/base/reader.ts';
import { readHook } from '../core/base/trade-words.ts';
import { planOf } from '../core/yarn/motif.ts';
import { keepKnown } from './lessons.ts';
import { MAKERS } from './projects.ts';
import { keepWithin, MOST_OF_MAKER } from './quotas.ts';
import { newMaker, type Blanket, type MakerDoc, type Motif } from './schema.ts';
import { broughtUpToDate } from './versions.ts';

/** What the file says it is, so that no other JSON is taken for it. */
const FORMAT = 'loopwright-maker';

/** The same of what is kept of her in groups: it tells her, and is never taken back. */
const FORMAT_ELSEWHERE = 'loopwright-elsewhere';

/** The longest export there can be, in characters: each thing of a list has a line of its own. */
const LONGEST_EXPORT = MOST_OF_MAKER.size + 64 * 1024;

/** The largest export there can be, in bytes, and so the largest file that is taken back: a character has three at most. */
export const LARGEST_EXPORT = 3 * MOST_OF_MAKER.size + 64 * 1024;

/** JSON for people and small all the same: each thing of a list has a line of its own. */
function written(format: string, parts: Readonly<Record<string, unknown>>): string {
  const lines = Object.entries({ format, ...parts }).map(([key, value]) => {
    const things: unknown[] | undefined = Array.isArray(value) && value.length > 0 ? value : undefined;
    const text = things
      ? `[\n    ${things.map((thing) => JSON.stringify(thing)).join(',\n    ')}\n  ]`
      : JSON.stringify(value);
    return `  ${JSON.stringify(key)}: ${text}`;
  });
  return `{\n${lines.join(',\n')}\n}\n`;
}

/** A maker's own document as a file, which `readExport` takes back. */
export const writeExport = (doc: MakerDoc): string => written(FORMAT, doc);

/** Characters of one file of what is kept elsewhere: within what a platform carries, whatever letters they are. */
const LONGEST_PART = 2_000_000;

/**
 * What is kept of her elsewhere as files, none longer than `longest` characters unless one thing alone is; none where nothing
 * is kept. Pauses (yields) between files.
 */
export function* writeElsewhere(
  elsewhere: Readonly<Record<string, unknown>>,
  longest = LONGEST_PART,
): Generator<void, string[]> {
  const files: string[] = [];
  let parts: Record<string, unknown> = {};
  let size = 0;
  const close = () => {
    if (Object.keys(parts).length > 0) files.push(written(FORMAT_ELSEWHERE, parts));
    parts = {};
    size = 0;
  };
  for (const [key, value] of Object.entries(elsewhere)) {
    if (!Array.isArray(value)) {
      parts[key] = value;
      continue;
    }
    for (const thing of value as unknown[]) {
      const { length } = JSON.stringify(thing);
      if (size > 0 && size + length > longest) {
        close();
        yield;
      }
      const listed = (Object.hasOwn(parts, key) ? parts[key] : []) as unknown[];
      parts[key] = [...listed, thing];
      size += length;
    }
  }
  close();
  return files;
}

const refuse = (code: string, sentence: string, hint = 'Give a file that an export made.') =>
  new Problem(code, sentence, { option: 'file', hint });

/** Text from a file goes into answers and logs like typed text: no tokens, nothing unprintable. */
const cleanText = (text: string) => plain(text).replace(/[\p{Cc}\p{Cf}]/gu, ' ');

/** The same with every text in it clean. */
function clean(value: unknown): unknown {
  if (typeof value === 'string') return cleanText(value);
  if (Array.isArray(value)) return value.map(clean);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, clean(one)]));
}

/** Reads an export back, as the document of this maker. Throws a Problem that names what is wrong with the file. */
export function readExport(text: string, id: string, name: string): MakerDoc {
  if (text.length > LONGEST_EXPORT)
    throw refuse('file-too-large', 'That file is longer than an export can be.');
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    throw refuse('file-not-ours', 'That file is not JSON.');
  }
  const given = parsed as Record<string, unknown> | null;
  if (typeof given === 'object' && given?.['format'] === FORMAT_ELSEWHERE)
    throw refuse(
      'file-of-groups',
      'That file tells what is kept of you in groups. That stays where it is, and is not taken back.',
      'Give the other file of the export, with your motifs and blankets.',
    );
  if (typeof given !== 'object' || given?.['format'] !== FORMAT)
    throw refuse('file-not-ours', 'That file is not an export of saved motifs and blankets.');
  const read = readSafely({ ...given, id, name, done: [] });
  if (read.is === 'newer')
    throw refuse(
      'file-newer',
      `That file is of version ${read.version}, newer than this program's ${MAKERS.version}.`,
      'Bring the program up to date, or export it anew.',
    );
  if (read.is === 'bad')
    throw refuse('file-does-not-fit', `Something in that file does not fit: ${read.why}.`);
  // Checked once more as what is left of it: a name may be nothing but what nobody can see.
  const seen = readSafely(clean(read.doc) as Record<string, unknown>);
  if (seen.is !== 'good') throw refuse('file-does-not-fit', 'A name in that file has no letter in it.');
  // When somebody was told something is known here, not in a file.
  const found: MakerDoc = { ...newMaker(id, name), ...(seen.doc as MakerDoc) };
  const doc: MakerDoc = defined({
    ...found,
    told: undefined,
    lessons: found.lessons && keepKnown(found.lessons),
  });
  checkRanges(doc);
  checkWhole(doc);
  try {
    keepWithin(doc, undefined);
  } catch (error) {
    throw error instanceof Problem ? error.said(error.message, error.hint, 'file') : error;
  }
  return doc;
}

function readSafely(doc: Record<string, unknown>) {
  try {
    return broughtUpToDate(MAKERS, doc);
  } catch {
    return { is: 'bad', why: 'it cannot be brought up to date' } as const;
  }
}

/** Reads each quantity as if it had been typed: what nobody can type, no file brings in. */
function checkRanges(doc: MakerDoc): void {
  const typed = (value: number) => value.toFixed(6);
  const check = (place: string, read: () => unknown) => {
    try {
      read();
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      throw refuse('file-out-of-range', `${place}: ${error.message}`, error.hint);
    }
  };
  const ofMotif = (motif: Motif, at: string) => {
    const { hook, gauge, weight, weighings = [], side, runs } = motif;
    if (hook !== undefined) check(`${at}.hook`, () => readHook(`${typed(hook)}mm`));
    if (weight !== undefined) check(`${at}.weight`, () => readWeight(`${typed(weight)}g`));
    weighings.forEach((one, index) => {
      check(`${at}.weighings[${index + 1}].weight`, () => readWeight(`${typed(one.weight)}g`));
      check(`${at}.weighings[${index + 1}].step`, () => readWeight(`${typed(one.step)}g`));
    });
    if (side !== undefined) check(`${at}.side`, () => readLength(`${typed(side)}cm`));
    if (gauge !== undefined) {
      const rows = gauge.rows === undefined ? '' : `x${typed(gauge.rows)}`;
      check(`${at}.gauge`, () => readGauge(`${typed(gauge.stitches)}${rows} over ${typed(gauge.over)}cm`));
    }
    check(`${at}.runs`, () => {
      const striped = runs.reduce((sum, { rows }) => sum + rows, 0);
      const most = planOf(motif).rows.length;
      if (striped > most)
        throw new Problem('too-many-rows', `${striped} rows have colours, and the motif has ${most}.`, {
          hint: 'Give as many as it has.',
        });
    });
  };
  const ofBlanket = ({ yarns }: Blanket, at: string) => {
    yarns.forEach(({ ball, price }, index) => {
      const yarn = `${at}.yarns[${index + 1}]`;
      if (ball) check(`${yarn}.ball`, () => readBall(`${typed(ball.m)}m/${typed(ball.g)}g`));
      if (price !== undefined && price > MOST_PRICE)
        throw refuse('file-out-of-range', `${yarn}.price: ${num(price)} is too large here.`);
    });
  };
  doc.motifs.forEach((motif, index) => ofMotif(motif, `motifs[${index + 1}]`));
  doc.blankets.forEach((blanket, index) => ofBlanket(blanket, `blankets[${index + 1}]`));
  doc.bin.forEach((one, index) => {
    if (one.kind === 'motif') ofMotif(one.thing, `bin[${index + 1}].thing`);
    else ofBlanket(one.thing, `bin[${index + 1}].thing`);
  });
  for (const [index, { motif, row }] of doc.progress.entries()) {
    const of = doc.motifs.find(({ name }) => sameName(name, motif));
    const most = of ? planOf(of).rows.length : MOST_ROWS_WORKED;
    if (row > most)
      throw refuse(
        'file-out-of-range',
        `progress[${index + 1}].row: ${num(row)} is beyond row ${most}, the last.`,
      );
  }
}

/** What the shape of each part cannot say: that the parts fit each other. */
function checkWhole(doc: MakerDoc): void {
  for (const [what, names] of [
    ['motif', doc.motifs.map((motif) => motif.name)],
    ['blanket', doc.blankets.map((blanket) => blanket.name)],
  ] as const) {
    const twice = names.find((name, index) => names.slice(0, index).some((other) => sameName(other, name)));
    if (twice !== undefined) throw refuse('file-names-twice', `The ${what} ${twice} is in that file twice.`);
  }
  for (const blanket of doc.blankets) {
    const missing = blanket.kinds.find((kind) => !doc.motifs.some((motif) => sameName(motif.name, kind)));
    if (missing !== undefined)
      throw refuse(
        'file-lacks-motif',
        `The blanket ${blanket.name} uses the motif ${missing}, which is not in that file.`,
      );
    if (blanket.layout.some((cell) => cell.kind >= blanket.kinds.length))
      throw refuse(
        'file-lacks-kind',
        `The layout of the blanket ${blanket.name} names a kind that it does not have.`,
      );
  }
}
