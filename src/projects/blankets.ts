/** Saved blankets: found by name, kept, changed, removed and brought back. Functions on a maker's document, or on a draft of it. */
import { defined } from '../core/base/defined.ts';
import { LONGEST_NAME, MOST_BLANKETS } from '../core/base/limits.ts';
import { countLaid, readLaidBy, type Laying } from '../core/blanket/layout.ts';
import type { BlanketSpec } from '../core/blanket/pieces.ts';
import { findMeant, listNames, sameName, suggest } from '../core/base/nearest-name.ts';
import { Problem } from '../core/base/problem.ts';
import { clip } from '../core/base/quantity.ts';
import { count } from '../core/base/reader.ts';
import type { Stitch } from '../standards/stitches.ts';
import { dropBefore, emptyBin, keepBefore, renameBefore, takeBackBlanket, throwAway } from './bin.ts';
import { findMotif } from './motifs.ts';
import type { Blanket, MakerDoc, Motif } from './schema.ts';

/** What is known of a maker's blankets; a draft of her document fits as well. */
type Known = Pick<MakerDoc, 'blankets' | 'current' | 'motifs'>;

/**
 * A saved blanket by its name, whatever its capitals; the current one where none is named. Throws a Problem that names the
 * nearest.
 */
export function findBlanket(doc: Known, name: string | undefined, option = 'name'): Blanket {
  if (doc.blankets.length === 0)
    throw new Problem('no-blanket-saved', 'No blanket is saved yet.', { option, hint: 'Start one first.' });
  const wanted = name ?? doc.current.blanket;
  const blanket = findMeant(doc.blankets, wanted);
  if (blanket) return blanket;
  const names = doc.blankets.map((blanket) => blanket.name);
  if (wanted === undefined)
    throw new Problem('which-blanket', 'Which blanket is meant is not said.', {
      option,
      hint: `Name one of ${listNames(names)}.`,
    });
  throw new Problem('no-such-blanket', `No blanket is called “${clip(wanted)}”.`, {
    option,
    hint: suggest(
      wanted,
      names,
      (saved) => `Saved ${saved.length === 1 ? 'is' : 'are'} ${listNames(saved)}.`,
    ),
  });
}

/** The saved motifs that a blanket is made of, in the order of its kinds. Throws a Problem where one is missing. */
export const kindsOf = (doc: MakerDoc, blanket: Pick<Blanket, 'kinds'>): Motif[] =>
  blanket.kinds.map((kind) => findMotif(doc, kind, 'kinds'));

/** What the core asks of a blanket's pieces. */
export const specOf = (doc: MakerDoc, blanket: Blanket): BlanketSpec => ({
  kinds: kindsOf(doc, blanket),
  joining: blanket.joining,
  border: blanket.border,
  yarns: blanket.yarns,
  reserve: blanket.reserve,
});

/** How a blanket is laid, so that another size continues it; where kinds are free, in the proportion they have now. */
export const layingOf = (blanket: Blanket): Laying => ({
  columns: blanket.columns,
  rows: blanket.rows,
  kinds: blanket.kinds.length,
  laid: readLaidBy(blanket.setting),
  shares: countLaid(blanket.layout, blanket.kinds.length),
});

/**
 * The border of rounds from the inside out, each with its colour: one colour is for all, otherwise there is one a round.
 * Throws a Problem where their numbers differ.
 */
export function borderOf(
  stitches: readonly Stitch[],
  colours: readonly string[],
  corner: number,
): Blanket['border'] {
  if (colours.length > 1 && colours.length !== stitches.length) {
    throw new Problem(
      'border-colours-differ',
      `The border has ${count(stitches.length, 'round')} and ${count(colours.length, 'colour')}.`,
      { option: 'border_colours', hint: 'Name one colour for all rounds, or one for each.' },
    );
  }
  const rounds = stitches.map((stitch, index) => {
    const colour = colours.length === 1 ? colours[0] : colours[index];
    return { stitch, ...defined({ colour }) };
  });
  return { rounds, corner };
}

/** Names with commas between. Throws a Problem where there is none, or one is too long. */
export function readNames(text: string, option: string): string[] {
  const names = text
    .split(/[,;]/)
    .map((name) => name.trim())
    .filter((name) => name !== '');
  const long = names.find((name) => [...name].length > LONGEST_NAME);
  if (names.length === 0 || long !== undefined)
    throw new Problem(
      long === undefined ? 'no-name' : 'name-too-long',
      long === undefined ? 'No name is given.' : `“${clip(long)}” is too long a name.`,
      {
        option,
        hint: `Write names with commas between, at most ${LONGEST_NAME} characters each.`,
      },
    );
  return names;
}

/** Keeps a new blanket and makes it the current one. Throws a Problem where the name is taken. */
export function addBlanket(doc: MakerDoc, blanket: Blanket, now: Date, fresh = true): void {
  emptyBin(doc, now);
  const there = doc.blankets.find(({ name }) => sameName(name, blanket.name));
  if (there) {
    throw new Problem('blanket-name-taken', `There is a blanket called ${there.name} already.`, {
      option: 'name',
      hint: 'Choose another name, or change that one.',
    });
  }
  if (doc.blankets.length >= MOST_BLANKETS) {
    throw new Problem('too-many-blankets', `${MOST_BLANKETS} blankets are saved already.`, {
      option: 'name',
      hint: 'Remove one first.',
      facts: { most: MOST_BLANKETS },
    });
  }
  if (fresh) {
    dropBefore(doc, blanket.name);
    // How far a removed one of that name was is not how far this one is.
    doc.progress = doc.progress.filter(
      (one) => one.blanket === undefined || !sameName(one.blanket, blanket.name),
    );
  }
  doc.blankets.push(blanket);
  doc.current.blanket = blanket.name;
}

/**
 * Puts a changed blanket in its place, also under a new name, and makes it the current one; as it was it can come back for a
 * day. Throws a Problem where the name is taken.
 */
export function putBlanket(doc: MakerDoc, was: Blanket, blanket: Blanket, now: Date): void {
  replaceBlanket(doc, was.name, blanket);
  keepBefore(doc, was, blanket.name, now);
}

function replaceBlanket(doc: MakerDoc, called: string, blanket: Blanket): void {
  const at = doc.blankets.findIndex(({ name }) => name === called);
  if (at < 0) throw new Error(`no blanket ${called} to put`);
  if (doc.blankets.some(({ name }, index) => index !== at && sameName(name, blanket.name))) {
    throw new Problem('blanket-name-taken', `There is a blanket called ${blanket.name} already.`, {
      option: 'new_name',
      hint: 'Choose another name.',
    });
  }
  doc.blankets[at] = blanket;
  if (blanket.name !== called) {
    renameBefore(doc, called, blanket.name);
    doc.progress = doc.progress.map((one) =>
      one.blanket === called ? { ...one, blanket: blanket.name } : one,
    );
  }
  doc.current.blanket = blanket.name;
}

/** Removes a blanket for a day's grace. */
export function removeBlanket(doc: MakerDoc, blanket: Blanket, now: Date): void {
  throwAway(doc, { at: now.toISOString(), kind: 'blanket', thing: blanket }, now);
  doc.blankets = doc.blankets.filter(({ name }) => name !== blanket.name);
  if (doc.current.blanket === blanket.name) {
    const last = doc.blankets.at(-1);
    if (last) doc.current.blanket = last.name;
    else delete doc.current.blanket;
  }
}

export interface Restored {
  readonly blanket: Blanket;
  /** Whether it was removed, or a change of it was taken back. */
  readonly was: 'removed' | 'changed';
  /** What of it was changed and is as before. */
  readonly parts: readonly (keyof Blanket)[];
}

const PARTS = [
  'name',
  'kinds',
  'columns',
  'rows',
  'layout',
  'joining',
  'border',
  'yarns',
  'reserve',
] as const;

/**
 * Takes back the latest change of a blanket, its removal among them, within a day. Throws Problem: nothing-to-undo where
 * there is none, blanket-name-taken, motif-removed-too where one of its motifs is gone.
 */
export function restoreBlanket(doc: MakerDoc, now: Date, name?: string): Restored {
  const taken = takeBackBlanket(doc, now, name);
  if (!taken) {
    throw new Problem(
      'nothing-to-undo',
      name === undefined
        ? 'No blanket was changed or removed within the last day.'
        : `No blanket called “${clip(name)}” was changed or removed within the last day.`,
      {
        ...(name === undefined ? {} : { option: 'name' }),
        hint: 'What was changed or removed can come back for one day.',
      },
    );
  }
  const blanket = taken.thing;
  const gone = blanket.kinds.find((kind) => !doc.motifs.some((motif) => sameName(motif.name, kind)));
  if (gone !== undefined) {
    throw new Problem('motif-removed-too', `${blanket.name} is made of ${gone}, which was removed too.`, {
      hint: `Bring ${gone} back first.`,
      facts: { motif: gone },
    });
  }
  if (taken.kind === 'blanket') {
    addBlanket(doc, blanket, now, false);
    return { blanket, was: 'removed', parts: [] };
  }
  const changed = doc.blankets.find(({ name: called }) => called === taken.since);
  replaceBlanket(doc, taken.since, blanket);
  const parts = PARTS.filter((part) => JSON.stringify(changed?.[part]) !== JSON.stringify(blanket[part]));
  return { blanket, was: 'changed', parts };
}
