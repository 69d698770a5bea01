/** What one of the makers has of a group blanket. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { listHoldings } from '../../src/core/group/holdings.ts';
import { mayOrganise } from '../../src/core/group/rules.ts';
import { countPledged } from '../../src/core/group/totals.ts';
import { count, num } from '../../src/core/base/reader.ts';
import { action } from '../shared/actions.ts';
import { OPENED } from './example.ts';
import { askerOf, memberNamed } from '../shared/which-kept.ts';
import { memberOption, nameOption, whichBlanket } from './which.ts';
import { heldLines } from './words.ts';

export const maker = question({
  name: 'maker',
  says: 'What one of the makers has of the group blanket: pledged, handed in, accepted',
  options: { maker: memberOption('Whose motifs'), name: nameOption },
  example: 'maker:rowan',
  before: [...OPENED, 'rowan: /together pledge kind:furrow motifs:2'],
  refused: { line: 'maker:nobody', option: 'maker' },
  bare: 'maker',
  pointed: { at: 'person', name: 'Motifs in this group', option: 'maker' },
  async answer({ maker, name }, context): Promise<Answer> {
    const { state } = await whichBlanket(context, name);
    const who = memberNamed(state, maker, context);
    const held = listHoldings(state, who.maker);
    const pledged = countPledged(state, who.maker);
    const waits = held.flatMap(({ handedIn }) => handedIn).length;
    const isIn = held.flatMap(({ accepted }) => accepted).length;
    return {
      headline: `${who.name} holds ${count(pledged, 'pledge')} for ${state.plan.name}; ${num(waits)} ${waits === 1 ? 'waits' : 'wait'} to be accepted and ${num(isIn)} ${isIn === 1 ? 'is' : 'are'} accepted.`,
      figures: [
        figure('pledged', 'Pledged', pledged),
        figure('handed_in', 'Handed in, waiting', waits),
        figure('accepted', 'Accepted', isIn),
      ],
      // Why something came back is between its maker and the organiser.
      lines: held.flatMap((one) => heldLines({ ...one, returned: [] })),
      data: { kinds: held.map(({ returned: _, ...rest }) => rest) },
      actions: gather(
        pledged > 0 &&
          who.maker !== context.maker.id &&
          mayOrganise(state, askerOf(context)) &&
          action('Ask whether the pledges stand', 'host remind', {
            maker: who.name,
            name: state.plan.name,
          }),
      ),
    };
  },
});
