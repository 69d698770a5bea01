/** Where a maker is: rows finished, motifs made, and every change with its moment. Functions on a draft of her document. */
import { defined } from '../core/base/defined.ts';
import { Problem } from '../core/base/problem.ts';
import { planOf } from '../core/yarn/motif.ts';
import type { RowPlan } from '../core/rows/index.ts';
import type { Finished } from '../core/yarn/pace.ts';
import { sameName } from '../core/base/nearest-name.ts';
import { MOST_MADE, type Blanket, type MakerDoc, type Motif, type Progress } from './schema.ts';

/** Changes that are remembered of each motif; older ones are summed up in where she was before them. */
const REMEMBERED = 200;
const MOST_PROGRESS = 500;

export type Did = Progress['history'][number]['did'];

/** The current blanket, where it is made of this motif: her motifs count for it. */
export const blanketOf = (doc: MakerDoc, motif: string): Blanket | undefined =>
  doc.blankets.find(
    ({ name, kinds }) => name === doc.current.blanket && kinds.some((kind) => sameName(kind, motif)),
  );

/**
 * Where she is with a motif in the current blanket, or by itself; at the very beginning where she has not begun. Motifs
 * made before there was a blanket count for the first one that has them.
 */
export function progressOf(doc: MakerDoc, motif: string): Progress {
  const blanket = blanketOf(doc, motif)?.name;
  const mine = doc.progress.filter((one) => sameName(one.motif, motif));
  const found = mine.find((one) => one.blanket === blanket) ?? mine.find((one) => one.blanket === undefined);
  return {
    ...(found ?? { motif, row: 0, made: 0, history: [] }),
    ...defined({ blanket }),
  };
}

/** How many of each of a blanket's kinds are made, in the order of its kinds. */
export function madeFor(doc: MakerDoc, blanket: Blanket): number[] {
  const current = doc.current.blanket === blanket.name;
  return blanket.kinds.map((kind) => {
    const mine = doc.progress.filter((one) => sameName(one.motif, kind));
    const found =
      mine.find((one) => one.blanket === blanket.name) ??
      (current ? mine.find((one) => one.blanket === undefined) : undefined);
    return found?.made ?? 0;
  });
}

/** How many of a motif a blanket's layout has. */
export function neededFor(blanket: Blanket, motif: string): number {
  const kind = blanket.kinds.findIndex((one) => sameName(one, motif));
  return blanket.layout.filter((cell) => cell.kind === kind).length;
}

function keep(doc: MakerDoc, progress: Progress): void {
  const mine = (one: Progress) => sameName(one.motif, progress.motif);
  const own = doc.progress.findIndex((one) => mine(one) && one.blanket === progress.blanket);
  // What was counted before there was a blanket is taken over by the first one that has the motif.
  const at = own >= 0 ? own : doc.progress.findIndex((one) => mine(one) && one.blanket === undefined);
  if (at >= 0) doc.progress[at] = progress;
  else if (doc.progress.length >= MOST_PROGRESS) {
    throw new Problem('too-much-progress', `Progress is kept of ${MOST_PROGRESS} motifs already.`, {
      hint: 'Remove motifs or blankets that are finished.',
    });
  } else doc.progress.push(progress);
}

/** Writes down where she is now. */
export function record(
  doc: MakerDoc,
  motif: Motif,
  did: Did,
  to: { row: number; made: number },
  now: Date,
): Progress {
  const was = progressOf(doc, motif.name);
  if (to.made > MOST_MADE) {
    throw new Problem('too-many-made', `More than ${MOST_MADE} motifs are not counted.`, {
      option: 'made',
      hint: 'Set the number made anew.',
      facts: { most: MOST_MADE },
    });
  }
  const history = [...was.history, { at: now.toISOString(), did, row: to.row, made: to.made }];
  const dropped = history.slice(0, -REMEMBERED).at(-1);
  const progress: Progress = {
    ...was,
    motif: motif.name,
    row: to.row,
    made: to.made,
    history: history.slice(-REMEMBERED),
    ...(dropped ? { before: { row: dropped.row, made: dropped.made } } : {}),
  };
  keep(doc, progress);
  doc.current.motif = motif.name;
  return progress;
}

/** Takes the last change back; counting alone is no change. Throws a Problem where there is nothing to take back. */
export function undo(doc: MakerDoc, motif: Motif): { progress: Progress; undone: Did } {
  const was = progressOf(doc, motif.name);
  const at = was.history.findLastIndex(({ did }) => did !== 'counted');
  const last = was.history[at];
  if (!last) {
    throw new Problem('nothing-counted', `Nothing is counted of ${motif.name} that could be taken back.`, {
      option: 'motif',
      hint: 'Say where you are.',
    });
  }
  const before = was.history[at - 1] ?? was.before ?? { row: 0, made: 0 };
  const progress: Progress = {
    ...was,
    row: Math.min(before.row, planOf(motif).rows.length),
    made: before.made,
    history: was.history.slice(0, at),
  };
  keep(doc, progress);
  return { progress, undone: last.did };
}

/**
 * Rows finished one after the other, for her pace: each with its stitches and the moments at which the row before and it
 * were finished. Rows that were set, ripped back or taken back say nothing about pace.
 */
export function finishedRows(progress: Progress, plan: RowPlan): Finished[] {
  const out: Finished[] = [];
  for (const [index, entry] of progress.history.entries()) {
    const before = progress.history[index - 1];
    if (entry.did !== 'row' || before?.did !== 'row' || before.row !== entry.row - 1) continue;
    out.push({
      stitches: plan.rows[entry.row - 1]?.count ?? 0,
      minutes: (new Date(entry.at).getTime() - new Date(before.at).getTime()) / 60_000,
    });
  }
  return out;
}
