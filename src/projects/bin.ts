/** What was removed and can still come back. Functions on the draft of a maker's document. */
import { sameName } from '../core/base/nearest-name.ts';
import type { z } from 'zod';
import type { binSchema, Blanket, MakerDoc, Motif } from './schema.ts';

export type Binned = z.infer<typeof binSchema>;

interface Things {
  readonly motif: Motif;
  readonly blanket: Blanket;
}

const DAY = 24 * 60 * 60 * 1000;
/** The most things that are kept; the oldest go first. */
const MOST_BINNED = 50;

/** Lets go of what was removed more than a day ago, and of the progress of what is gone for good. */
export function emptyBin(doc: MakerDoc, now: Date): void {
  doc.bin = doc.bin.filter(({ at }) => now.getTime() - new Date(at).getTime() <= DAY);
  const names = (things: readonly { name: string }[]) =>
    new Set(things.map(({ name }) => name.toLowerCase()));
  const motifs = names([...doc.motifs, ...thrown(doc, 'motif')]);
  const blankets = names([...doc.blankets, ...thrown(doc, 'blanket')]);
  doc.progress = doc.progress.filter(
    ({ motif, blanket }) =>
      motifs.has(motif.toLowerCase()) && (blanket === undefined || blankets.has(blanket.toLowerCase())),
  );
}

const thrown = (doc: MakerDoc, kind: Binned['kind']) =>
  doc.bin.filter((one) => one.kind === kind).map(({ thing }) => thing);

/** Keeps something for a day. */
export function throwAway(doc: MakerDoc, thing: Binned, now: Date): void {
  emptyBin(doc, now);
  doc.bin = [...doc.bin, thing].slice(-MOST_BINNED);
}

/** Takes the latest thing of a kind out again, of a name if one is given; undefined where there is none. */
export function takeBack<K extends Binned['kind']>(
  doc: MakerDoc,
  kind: K,
  now: Date,
  name?: string,
): Things[K] | undefined {
  emptyBin(doc, now);
  const at = doc.bin.findLastIndex(
    (one) => one.kind === kind && (name === undefined || sameName(one.thing.name, name)),
  );
  if (at < 0) return undefined;
  const [taken] = doc.bin.splice(at, 1);
  return taken?.thing as Things[K] | undefined;
}

/** Names are the same whatever their capitals. */
