/** What is said of the row that comes next, and the buttons under it. */
import { figure, gather, type Action, type Figure } from '../../src/chat/answer.ts';
import { defined } from '../../src/core/base/defined.ts';
import { colourOf } from '../../src/core/stripes/colour-runs.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { count } from '../../src/core/base/reader.ts';
import { facesRight } from '../../src/core/rows/index.ts';
import { writeRow } from '../../src/core/stripes/written-rows.ts';
import type { Motif } from '../../src/projects/schema.ts';
import { rowWord, RowWord, units } from '../shared/motif-words.ts';
import { action, form } from '../shared/actions.ts';

export interface At {
  readonly row: number;
  readonly made: number;
}

export interface Coming {
  /** `row 6 comes next: 13 stitches, in sand` */
  readonly says: string;
  readonly lines: readonly string[];
  readonly figures: readonly Figure[];
  readonly actions: readonly Action[];
  readonly data: Readonly<Record<string, unknown>>;
}

/** The row after the last finished one; at the end, what finishes the motif. */
export function coming(motif: Motif, { row, made }: At): Coming {
  const plan = planOf(motif);
  const rows = plan.rows.length;
  const next = plan.rows[row];
  const called = rowWord(plan);
  const where = { motif: motif.name, from_row: row };
  const figures: Figure[] = [
    figure('row', `${RowWord(plan)}s done`, row),
    figure('rows', `${RowWord(plan)}s in all`, rows),
    figure('made', 'Motifs made', made),
  ];
  const back: Action[] = row === 0 ? [] : [action(`Back one ${called}`, 'progress back', where)];
  const check: Action[] =
    row === 0 ? [] : [form('Check my counts', 'progress counted', { motif: motif.name }, ['counts'])];
  const finished: Action = action('Motif finished', 'progress finished', {
    motif: motif.name,
    from_made: made,
  });
  if (!next) {
    return {
      says: `that was the last ${called}: fasten off, and it is finished`,
      lines: [],
      figures,
      actions: [finished, ...back, ...check],
      data: { motif: motif.name, row, made },
    };
  }
  const colour = colourOf(motif.runs, next.row);
  const { text, change } = writeRow(plan, motif.runs, next.row);
  const changes = change !== undefined;
  const inColour = colour === undefined ? '' : changes ? `, changing to ${colour}` : `, in ${colour}`;
  const side =
    plan.worked === 'rounds' ? '' : `, ${facesRight(plan, next.row) ? 'right' : 'wrong'} side facing`;
  return {
    says: `${called} ${next.row} of ${rows} comes next: ${units(plan, next.count)}${inColour}${side}`,
    lines: gather(change, `${RowWord(plan)} ${next.row}: ${text} (${units(plan, next.count)})`),
    figures: [
      ...figures,
      figure('next_row', `Next ${called}`, next.row),
      figure('next_count', 'Its count', next.count),
    ],
    actions: [action(`${RowWord(plan)} ${next.row} done`, 'progress next', where), ...back, ...check],
    data: defined({ motif: motif.name, row, made, colour, changes_colour: changes }),
  };
}

/** `12 of 20 motifs made`, or without a blanket just how many. */
export const madeWords = (made: number, needed: number | undefined) =>
  needed === undefined ? `${count(made, 'motif')} made` : `${made} of ${count(needed, 'motif')} made`;

/** Said when a button is pressed that was made for another row. */
export const pressedBefore = (motif: Motif, was: number, now: number) => {
  const row = rowWord(planOf(motif));
  return `Nothing is counted: that was for ${row} ${was} done, and ${row} ${now} is where you are`;
};
