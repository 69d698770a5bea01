/** Saved motifs: found by name, kept, removed and brought back. Functions on a maker's document, or on a draft of it. */
import { MOST_MOTIFS } from '../core/base/limits.ts';
import { findMeant, listNames, sameName, suggest } from '../core/base/nearest-name.ts';
import type { Ball } from '../core/base/quantity.ts';
import { Problem } from '../core/base/problem.ts';
import { clip } from '../core/base/quantity.ts';
import { refuseUnlikelySide } from '../core/yarn/measured-motif.ts';
import { planOf } from '../core/yarn/motif.ts';
import { addWeighing, meanOf, weighingsOf, type Weighing } from '../core/yarn/weighings.ts';
import { defined } from '../core/base/defined.ts';
import { emptyBin, takeBack, throwAway } from './bin.ts';
import { progressOf } from './progress.ts';
import type { MakerDoc, Motif } from './schema.ts';

/** Names stand in lists with commas between: a name has none of its own. */
export function motifName(typed: string): string {
  const name = typed.replace(/\s+/g, ' ').trim();
  if (/[,;]/.test(name)) {
    throw new Problem('comma-in-name', `“${clip(name)}” has a comma in it.`, {
      option: 'name',
      hint: 'Choose a name without commas, such as moss square.',
    });
  }
  return name;
}

/**
 * A saved motif by its name, whatever its capitals; the current one where none is named. Throws a Problem that names the
 * nearest.
 */
export function findMotif(doc: MakerDoc, name: string | undefined, option = 'motif'): Motif {
  if (doc.motifs.length === 0) {
    throw new Problem('no-motif-saved', 'No motif is saved yet.', { option, hint: 'Save one first.' });
  }
  const wanted = name ?? doc.current.motif;
  const motif = findMeant(doc.motifs, wanted);
  if (motif) return motif;
  const names = doc.motifs.map((motif) => motif.name);
  if (wanted === undefined) {
    throw new Problem('which-motif', 'Which motif is meant is not said.', {
      option,
      hint: `Name one of ${listNames(names)}.`,
    });
  }
  throw new Problem('no-such-motif-saved', `No motif is called “${clip(wanted)}”.`, {
    option,
    hint: suggest(
      wanted,
      names,
      (saved) => `Saved ${saved.length === 1 ? 'is' : 'are'} ${listNames(saved)}.`,
    ),
  });
}

export interface Kept {
  readonly motif: Motif;
  readonly replaced: boolean;
  /** Whether the weight and side of the motif that was replaced still hold. */
  readonly weighedStill: boolean;
  /** The row that was done of the motif on the hook, where it has fewer now. */
  readonly wasAtRow?: number;
}

/**
 * Keeps a motif and makes it the current one. One of the same name is replaced only when asked; it can be brought back
 * for a day, and its weight and side are kept where shape, size and stitch stay. Throws a Problem.
 */
export function keepMotif(doc: MakerDoc, motif: Motif, now: Date, replace = false): Kept {
  emptyBin(doc, now);
  const at = doc.motifs.findIndex(({ name }) => sameName(name, motif.name));
  const before = doc.motifs[at];
  if (before && !replace) {
    throw new Problem('motif-name-taken', `There is a motif called ${before.name} already.`, {
      option: 'name',
      hint: 'Choose another name, or add replace:yes; the old one can be brought back for a day.',
    });
  }
  if (!before && doc.motifs.length >= MOST_MOTIFS) {
    throw new Problem('too-many-motifs', `${MOST_MOTIFS} motifs are saved already.`, {
      option: 'name',
      hint: 'Remove one first.',
      facts: { most: MOST_MOTIFS },
    });
  }
  const same =
    before?.shape === motif.shape &&
    before.size === motif.size &&
    before.otherSize === motif.otherSize &&
    before.stitch === motif.stitch;
  const kept: Motif = {
    ...(same && before.weight !== undefined
      ? { weight: before.weight, weighings: [...weighingsOf(before)] }
      : {}),
    ...(same && before.side !== undefined ? { side: before.side } : {}),
    ...(same && before.ball !== undefined ? { ball: before.ball } : {}),
    ...(same && before.minutes !== undefined ? { minutes: before.minutes } : {}),
    ...(before?.looks === undefined ? {} : { looks: before.looks }),
    ...motif,
    // The name that blankets and progress know stays as it is spelt there.
    name: before?.name ?? motif.name,
  };
  if (before) {
    throwAway(doc, { at: now.toISOString(), kind: 'motif', thing: before }, now);
    doc.motifs[at] = kept;
  } else doc.motifs.push(kept);
  // Defined anew after it was removed, it goes on where it was.
  const { row } = progressOf(doc, kept.name);
  fitProgress(doc, kept);
  doc.current.motif = kept.name;
  return defined({
    motif: kept,
    replaced: before !== undefined,
    weighedStill: same && kept.weight !== undefined,
    wasAtRow: progressOf(doc, kept.name).row < row ? row : undefined,
  });
}

/** A motif that became shorter cannot be further along than its last row. */
function fitProgress(doc: MakerDoc, motif: Motif): void {
  const rows = planOf(motif).rows.length;
  doc.progress = doc.progress.map((one) =>
    sameName(one.motif, motif.name) && one.row > rows ? { ...one, row: rows } : one,
  );
}

/** Removes a motif for a day's grace. Throws a Problem where a blanket is made of it. */
export function removeMotif(doc: MakerDoc, motif: Motif, now: Date): void {
  const blanket = doc.blankets.find(({ kinds }) => kinds.some((kind) => sameName(kind, motif.name)));
  if (blanket) {
    throw new Problem('motif-in-blanket', `The blanket ${blanket.name} is made of ${motif.name}.`, {
      option: 'name',
      hint: 'Give the blanket other kinds, or remove it first.',
    });
  }
  throwAway(doc, { at: now.toISOString(), kind: 'motif', thing: motif }, now);
  doc.motifs = doc.motifs.filter(({ name }) => name !== motif.name);
  if (doc.current.motif === motif.name) {
    const last = doc.motifs.at(-1);
    if (last) doc.current.motif = last.name;
    else delete doc.current.motif;
  }
}

/**
 * Brings back the motif that was removed or replaced last, within a day; the one that stands in its place goes where it
 * came from. Throws a Problem where there is none.
 */
export function restoreMotif(
  doc: MakerDoc,
  now: Date,
  name?: string,
): { readonly motif: Motif; readonly inPlaceOf: boolean } {
  const motif = takeBack(doc, 'motif', now, name);
  if (!motif) {
    throw new Problem(
      'no-motif-removed',
      name === undefined
        ? 'No motif was removed or changed within the last day.'
        : `No motif called “${clip(name)}” was removed or changed within the last day.`,
      {
        ...(name === undefined ? {} : { option: 'name' }),
        hint: 'What was removed can come back for one day.',
      },
    );
  }
  const at = doc.motifs.findIndex((one) => sameName(one.name, motif.name));
  const standing = doc.motifs[at];
  if (standing) {
    doc.motifs[at] = motif;
    throwAway(doc, { at: now.toISOString(), kind: 'motif', thing: standing }, now);
    fitProgress(doc, motif);
  } else if (doc.motifs.length >= MOST_MOTIFS) {
    throw new Problem('too-many-motifs', `${MOST_MOTIFS} motifs are saved already.`, {
      hint: 'Remove another one first.',
      facts: { most: MOST_MOTIFS },
    });
  } else doc.motifs.push(motif);
  doc.current.motif = motif.name;
  return { motif, inPlaceOf: standing !== undefined };
}

/**
 * Keeps what finished motifs weigh (g) and measure (cm), the minutes one takes, and the hook (mm) and ball they were worked with. Another hook or ball
 * than before, or `replace`, forgets the earlier readings of the scale.
 *
 * Throws Problem: side-unlike-gauge.
 */
export function measureMotif(
  doc: MakerDoc,
  motif: Motif,
  found: {
    weighing?: Weighing | undefined;
    replace?: boolean;
    side?: number | undefined;
    hook?: number | undefined;
    ball?: Ball | undefined;
    minutes?: number | undefined;
  },
): Motif {
  const { weighing, side, hook, ball, minutes } = found;
  const other =
    found.replace === true ||
    (hook !== undefined && motif.hook !== undefined && hook !== motif.hook) ||
    (ball !== undefined && motif.ball !== undefined && !isSameBall(ball, motif.ball));
  const weighings = weighing && addWeighing(other ? [] : weighingsOf(motif), weighing);
  const measured: Motif = {
    ...motif,
    ...(weighings === undefined ? {} : { weighings, weight: meanOf(weighings) }),
    ...defined({ side }),
    ...defined({ hook }),
    ...defined({ ball }),
    ...defined({ minutes }),
  };
  if (side !== undefined) refuseUnlikelySide(measured);
  doc.motifs = doc.motifs.map((one) => (one.name === motif.name ? measured : one));
  doc.current.motif = motif.name;
  return measured;
}

const isSameBall = (one: Ball, other: Ball) => one.m * other.g === one.g * other.m;

/** A motif with how one of its colours looks, #rrggbb; without, where none is given. */
export function withLook(motif: Motif, colour: string, hex: string | undefined): Motif {
  const { looks = [], ...rest } = motif;
  const others = looks.filter((look) => !sameName(look.colour, colour));
  const now = hex === undefined ? others : [...others, { colour, hex }];
  return now.length === 0 ? rest : { ...rest, looks: now };
}

/**
 * Keeps how a colour of a motif looks, #rrggbb; forgets it where none is given. Blankets of it that said something else of that colour
 * say the same from now on: a colour looks the same in every picture.
 */
export function lookLike(doc: MakerDoc, motif: Motif, colour: string, hex: string | undefined): void {
  doc.motifs = doc.motifs.map((one) => (one.name === motif.name ? withLook(one, colour, hex) : one));
  doc.blankets = doc.blankets.map((blanket) =>
    hex === undefined || !blanket.kinds.some((kind) => sameName(kind, motif.name))
      ? blanket
      : {
          ...blanket,
          yarns: blanket.yarns.map((yarn) =>
            yarn.hex !== undefined && sameName(yarn.colour, colour) ? { ...yarn, hex } : yarn,
          ),
        },
  );
}

/** The other way round: what is said of a blanket’s colour holds for those of its motifs that said something else. */
export function lookAlike(doc: MakerDoc, kinds: readonly string[], colour: string, hex: string): void {
  doc.motifs = doc.motifs.map((motif) =>
    motif.looks?.some((look) => sameName(look.colour, colour)) === true &&
    kinds.some((kind) => sameName(kind, motif.name))
      ? withLook(motif, colour, hex)
      : motif,
  );
}
