/** A maker is done with a part. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { finish, nextPartOf, partMeant } from '../../src/core/along/rules.ts';
import { countProgress } from '../../src/core/along/state.ts';
import { action } from '../shared/actions.ts';
import { askerOf } from '../shared/which-kept.ts';
import { JOINED } from './example.ts';
import { givenOut, numberOf, partName } from './words.ts';
import { byId, nameOption, onceMore, partOption, whichAlong } from './which.ts';

export const done = question({
  name: 'done',
  says: 'Say that you are done with a part',
  options: { part: partOption().optional(), name: nameOption },
  example: 'part:1',
  before: JOINED,
  refused: { line: 'part:40', option: 'part' },
  changes: true,
  asked: {
    ways: ['done part', 'done my-part', 'done part along', 'done this-week along'],
    also: 'along part mine i-am-on this-week my-part',
    not: 'how-many which who where when stuck behind undo motif row',
    reports: true,
    saved: 'along',
    marks: { name: { takes: 'saved-along' } },
    phrases: ['I’m done with part 3', 'finished my part'],
  },
  async answer({ part: named, name }, context): Promise<Answer> {
    const { doc, state } = await whichAlong(context, name);
    const { id } = context.maker;
    const meant = partMeant(state, { named, maker: id, now: context.now });
    const { state: after, happened } = await context.projects.alongs.happen(
      doc.id,
      onceMore(context, doc),
      (now) => finish(now, askerOf(context), meant),
    );
    const next = nextPartOf(after, id, context.now);
    const progress = countProgress(after, meant.id);
    const { name: called } = after.plan;
    return {
      headline:
        happened.length > 0
          ? `${partName(after, meant)} is done${next === undefined ? ', and that was the last: well made' : ''}.`
          : `You were done with ${partName(after, meant).replace(/^P/, 'p')} already.`,
      figures: [
        figure('done', 'Done with this part', progress.done),
        figure('makers', 'Makers', after.members.size),
      ],
      lines: gather(
        next && next.begun
          ? `Next: ${partName(after, next.part)}.`
          : next && `Next: ${partName(after, next.part)}, given out on ${givenOut(after, next.part)}.`,
      ),
      data: { part: numberOf(after, meant), next: next && numberOf(after, next.part) },
      actions: gather(
        next &&
          action(
            'My next part',
            'along mine',
            { part: numberOf(after, next.part), name: called },
            byId(next.part),
          ),
        action('Where everybody is', 'along show', { name: called }),
      ),
      private: true,
    };
  },
});
