/** Everything kept of a maker as one JSON file, and the same file read back. */
import { sameName } from '../core/base/nearest-name.ts';
import { Problem } from '../core/base/problem.ts';
import { plain } from '../core/base/reader.ts';
import { MAKERS } from './projects.ts';
import { newMaker, type MakerDoc } from './schema.ts';
import { upToDate } from './versions.ts';

/** What the file says it is, so that no other JSON is taken for it. */
const FORMAT = 'loopwright-maker';

/** A maker's document as a file for people: indented, with what is kept elsewhere beside it. */
export function writeExport(doc: MakerDoc, elsewhere: Readonly<Record<string, unknown>>): string {
  return `${JSON.stringify({ format: FORMAT, ...doc, ...(Object.keys(elsewhere).length === 0 ? {} : { elsewhere }) }, null, 2)}\n`;
}

const refuse = (sentence: string, hint = 'Give a file that /settings export made.') =>
  new Problem('unsorted', sentence, { option: 'file', hint });

/** Text from a file goes into answers and logs like typed text: no tokens, nothing unprintable. */
const clean = (_key: string, value: unknown) =>
  typeof value === 'string' ? plain(value).replace(/[\p{Cc}\p{Cf}]/gu, ' ') : value;

/** Reads an export back, as the document of this maker. Throws a Problem that names what is wrong with the file. */
export function readExport(text: string, id: string, name: string): MakerDoc {
  let parsed: unknown;
  try {
    parsed = JSON.parse(text, clean);
  } catch {
    throw refuse('That file is not JSON.');
  }
  const given = parsed as Record<string, unknown> | null;
  if (typeof given !== 'object' || given?.['format'] !== FORMAT)
    throw refuse('That file is not an export of saved motifs and blankets.');
  const read = readSafely({ ...given, id, name, done: [] });
  if (read.is === 'newer')
    throw refuse(
      `That file is of version ${read.version}, newer than this program's ${MAKERS.version}.`,
      'Bring the program up to date, or export it anew.',
    );
  if (read.is === 'bad') throw refuse(`Something in that file does not fit: ${read.why}.`);
  const doc = { ...newMaker(id, name), ...(read.doc as MakerDoc) };
  checkWhole(doc);
  return doc;
}

function readSafely(doc: Record<string, unknown>) {
  try {
    return upToDate(MAKERS, JSON.stringify(doc));
  } catch {
    return { is: 'bad', why: 'it cannot be brought up to date' } as const;
  }
}

/** What the shape of each part cannot say: that the parts fit each other. */
function checkWhole(doc: MakerDoc): void {
  for (const [what, names] of [
    ['motif', doc.motifs.map((motif) => motif.name)],
    ['blanket', doc.blankets.map((blanket) => blanket.name)],
  ] as const) {
    const twice = names.find((name, index) => names.slice(0, index).some((other) => sameName(other, name)));
    if (twice !== undefined) throw refuse(`The ${what} ${twice} is in that file twice.`);
  }
  for (const blanket of doc.blankets) {
    const missing = blanket.kinds.find((kind) => !doc.motifs.some((motif) => sameName(motif.name, kind)));
    if (missing !== undefined)
      throw refuse(`The blanket ${blanket.name} uses the motif ${missing}, which is not in that file.`);
    if (blanket.layout.some((cell) => cell.kind >= blanket.kinds.length))
      throw refuse(`The layout of the blanket ${blanket.name} names a kind that it does not have.`);
  }
}
