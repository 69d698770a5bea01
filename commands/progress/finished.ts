/** A motif is finished: how many are still to be made? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { defined } from '../../src/core/base/defined.ts';
import { countStillToMake } from '../../src/core/blanket/made.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { blanketOf, neededFor, progressOf, record } from '../../src/projects/progress.ts';
import { MOST_MADE, type Motif } from '../../src/projects/schema.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { action, form } from '../shared/actions.ts';
import { change } from './change.ts';
import { coming, madeWords } from './coming.ts';

export const finished = question({
  name: 'finished',
  says: 'A motif is finished: one more is made, and the next begins with its first row',
  options: {
    motif: savedMotif().optional(),
    from_made: opt
      .whole('Only if so many were made before: so that nothing is counted twice', {
        min: 0,
        max: MOST_MADE,
        example: '6',
      })
      .optional(),
    confirm: opt
      .yesno('yes counts one that is only half made by its rows; without it you are asked')
      .optional(),
  },
  example: 'motif:"moss square"',
  refused: { line: 'motif:"mos squar"', option: 'motif' },
  before: [DEFINED],
  changes: true,
  asked: {
    ways: [
      'done motif',
      'done motif next',
      'done motif mine',
      'done motif new',
      'done @motif',
      'done motif count',
    ],
    also: 'motif done next mine count change',
    not: 'row round how-many how-much weigh measure group claim hand-in left blanket border join gauge where-am-i who',
    reports: true,
    saved: 'motif',
    marks: { motif: { takes: 'saved-motif' }, confirm: { never: true } },
    phrases: ['I finished a square', 'another square done'],
  },
  async answer({ motif: name, from_made, confirm }, context): Promise<Answer> {
    const tell = await change(context, name, (doc, motif) => {
      const was = progressOf(doc, motif.name);
      const blanket = blanketOf(doc, motif.name);
      const half = confirm !== true && was.row > 0 && was.row < planOf(motif).rows.length;
      const counted = !half && (from_made === undefined || from_made === was.made);
      if (counted) record(doc, motif, 'finished', { row: 0, made: was.made + 1 }, context.now);
      return defined({
        row: counted ? 0 : was.row,
        made: counted ? was.made + 1 : was.made,
        counted,
        half,
        blanket: blanket?.name,
        needed: blanket && neededFor(blanket, motif.name),
      });
    });
    const { motif, made, counted, half, blanket, needed } = tell;
    if (half) return askedFirst(motif, tell);
    const found = coming(motif, tell);
    const of = `${madeWords(made, needed)}${blanket === undefined ? '' : ` for ${blanket}`}`;
    const all = needed !== undefined && made >= needed;
    return {
      ...found,
      headline: counted
        ? `One more ${motif.name} is finished: ${of}${all ? ', which is all of them' : ''}.`
        : `Nothing is counted: that was already finished. ${of.charAt(0).toUpperCase()}${of.slice(1)}.`,
      lines: all ? [] : found.lines,
      figures: gather(
        found.figures,
        needed !== undefined && [
          figure('needed', 'Motifs in the blanket', needed),
          figure('to_make', 'Still to make', countStillToMake(needed, made)),
        ],
      ),
      data: { ...found.data, counted },
      actions: gather(
        !all && found.actions,
        action('How far it all is', 'progress show', { motif: motif.name }),
        motif.weight === undefined && form('Weigh one', 'motif weigh', { name: motif.name }, ['weight']),
      ),
    };
  },
});

/** Rows that were not counted, or a motif that is not finished: only she knows. */
const askedFirst = (
  motif: Motif,
  { row, made }: { readonly row: number; readonly made: number },
): Answer => ({
  headline: `Only row ${row} of ${planOf(motif).rows.length} of ${motif.name} is counted as done. Count the motif as finished all the same?`,
  lines: ['Nothing is counted yet; confirm:yes counts it.'],
  figures: [figure('row', 'Row', row)],
  data: { counted: false },
  actions: [
    action('It is finished', 'progress finished', { motif: motif.name, from_made: made, confirm: true }),
    action('Where I am', 'progress show', { motif: motif.name }),
  ],
});
