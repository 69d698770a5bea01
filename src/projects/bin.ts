/** What was removed or changed and can still come back. Functions on the draft of a maker's document. */
import { sameName } from '../core/base/nearest-name.ts';
import type { z } from 'zod';
import type { binSchema, Blanket, MakerDoc, Motif } from './schema.ts';

export type Binned = z.infer<ReturnType<typeof binSchema>>;

interface Things {
  readonly motif: Motif;
  readonly blanket: Blanket;
  readonly 'blanket-before': Blanket;
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

/** Changes of blankets that can be taken back; the oldest go first. */
const MOST_BEFORE = 5;

/** Keeps a blanket as it was before a change, for a day. */
export function keepBefore(doc: MakerDoc, was: Blanket, since: string, now: Date): void {
  throwAway(doc, { at: now.toISOString(), kind: 'blanket-before', thing: was, since }, now);
  const before = doc.bin.filter(({ kind }) => kind === 'blanket-before').slice(0, -MOST_BEFORE);
  doc.bin = doc.bin.filter((one) => !before.includes(one));
}

/** Lets go of what a blanket of this name was before: another one goes by it now. */
export function dropBefore(doc: MakerDoc, name: string): void {
  doc.bin = doc.bin.filter((one) => one.kind !== 'blanket-before' || !sameName(one.since, name));
}

/** What a blanket was before its changes goes with it where it gets another name. */
export function renameBefore(doc: MakerDoc, called: string, name: string): void {
  doc.bin = doc.bin.map((one) =>
    one.kind === 'blanket-before' && sameName(one.since, called) ? { ...one, since: name } : one,
  );
}

/** Takes out the latest that can be undone of blankets, of a name if one is given: one that was removed, or one as it was. */
export function takeBackBlanket(
  doc: MakerDoc,
  now: Date,
  name?: string,
): Extract<Binned, { readonly thing: Blanket }> | undefined {
  emptyBin(doc, now);
  const at = doc.bin.findLastIndex(
    (one) =>
      one.kind !== 'motif' &&
      // A change can be taken back where the blanket still goes by the name that it got by it.
      (one.kind === 'blanket' || doc.blankets.some((blanket) => blanket.name === one.since)) &&
      (name === undefined ||
        sameName(one.thing.name, name) ||
        (one.kind === 'blanket-before' && sameName(one.since, name))),
  );
  const [taken] = at < 0 ? [] : doc.bin.splice(at, 1);
  return taken?.kind === 'motif' ? undefined : taken;
}

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
