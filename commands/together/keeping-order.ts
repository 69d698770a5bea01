/** Who takes part and who runs the blanket, where it takes more than goodwill: keeping a maker out, and handing over. */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import * as rules from '../../src/core/group/rules.ts';
import { count } from '../../src/core/base/reader.ts';
import { countPledged } from '../../src/core/group/totals.ts';
import { action } from '../shared/actions.ts';
import { OPENED } from './example.ts';
import { askerOf, doing, memberNamed } from '../shared/which-kept.ts';
import { memberOption, nameOption, whichBlanket } from './which.ts';

const PLEDGED = [...OPENED, 'rowan: /together pledge kind:furrow motifs:2'];

export const bar = question({
  name: 'bar',
  says: 'Organiser: keep a maker from taking part and give back what is held, or let a maker in again',
  options: {
    maker: memberOption('Whom', ({ members, barred, names }) => [
      ...[...members.values()].map(({ name }) => name),
      ...[...barred.keys()].flatMap((maker) => names.get(maker) ?? []),
    ]),
    reason: opt
      .text('Why, in a friendly sentence; the maker sees it, and so does whoever reads the history', {
        max: 300,
        example: 'pledges all and sends nothing',
      })
      .optional(),
    do: opt
      .choice(
        { says: 'Keep from taking part, or let in again', assumed: '' },
        [
          { value: 'bar', label: 'keep out' },
          { value: 'readmit', label: 'let in again' },
        ],
        'bar',
      )
      .default('bar'),
    name: nameOption,
  },
  example: 'maker:rowan reason:"pledges all and sends nothing"',
  before: PLEDGED,
  refused: { line: 'maker:rowan', option: 'reason' },
  asked: {
    ways: ['bar-out', 'let-back'],
    also: 'group blanket motif claim',
    not: 'row yarn hook stitch weigh',
    saved: 'group',
    marks: {
      maker: { capture: /\b(?:kick|ban|bar|expel|readmit|keep|let)\s+(@?[\p{L}\p{N}_.-]{1,64})/iu },
      do: { choices: { readmit: 'let-back' } },
      reason: { capture: /\b(?:because|as|since)\s+(.{1,300}?)[.!]?$/iu },
      name: { takes: 'saved-group' },
    },
    phrases: ['kick rowan out because she pledges all and sends nothing', 'let rowan back in again'],
  },
  changes: true,
  async answer({ maker, reason, do: what, name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    rules.mustOrganise(state, askerOf(context));
    const who = memberNamed(state, maker, context);
    const { again } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      what === 'bar'
        ? rules.bar(now, askerOf(context), who, reason ?? '')
        : rules.readmit(now, askerOf(context), who),
    );
    const once = again ? 'That was done already: ' : '';
    const named = { name: state.plan.name };
    if (what === 'readmit') {
      return {
        headline: `${once}${who.name} may take part in ${state.plan.name} again.`,
        lines: [`To take part, ${who.name} joins with /together join and pledges anew.`],
        board: doc.id,
        private: true,
      };
    }
    const held = countPledged(state, who.maker);
    const open =
      again || held === 0
        ? ''
        : `; ${count(held, 'pledge')} ${held === 1 ? 'is' : 'are'} open to everyone again`;
    return {
      headline: `${once}${who.name} is kept from taking part in ${state.plan.name}${open}.`,
      figures: again ? [] : [figure('released', 'Open to everyone again', held)],
      lines: [
        `What was accepted of ${who.name} stays in the blanket; what waits can still be accepted or sent back.`,
        `${who.name} reads your reason in /together mine and at every try to pledge. /together undo takes it back.`,
      ],
      actions: [action(`Let ${who.name} in again`, 'host bar', { maker: who.name, do: 'readmit', ...named })],
      board: doc.id,
      private: true,
    };
  },
});

export const handover = question({
  name: 'handover',
  says: 'Organiser: ask somebody to run the blanket, who says yes or no with answer',
  options: {
    maker: memberOption('Whom: somebody who takes part or was named').optional(),
    answer: opt
      .choice(
        'Your answer, where you were asked to run it',
        [
          { value: 'yes', label: 'yes, I will run it' },
          { value: 'no', label: 'no, thank you' },
        ],
        'yes',
      )
      .optional(),
    name: nameOption,
  },
  example: 'maker:rowan',
  before: [...OPENED, 'rowan: /together join per_week:2'],
  refused: { line: 'maker:nobody', option: 'maker' },
  changes: true,
  asked: {
    ways: ['hand-over group', 'hand-over organiser', 'hand-over', 'organiser change'],
    also: 'group blanket organiser change new',
    not: 'motif hand-in',
    saved: 'group',
    marks: {
      maker: {
        capture:
          /\b(?:over to|on to|make|let)\s+(@?[\p{L}\p{N}_.-]+)|(@?[\p{L}\p{N}_.-]{1,64})\s+(?:is|should be|takes over|becomes)\b/iu,
      },
      answer: { never: true },
      name: { takes: 'saved-group' },
    },
    phrases: ['hand the group blanket over to rowan'],
  },
  async answer({ maker, answer: said, name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    const { plan, offeredTo } = state;
    const named = { name: plan.name };
    const happen = (rule: Parameters<typeof context.projects.groups.happen>[2]) =>
      context.projects.groups.happen(doc.id, doing(context), rule);
    if (said !== undefined) {
      await happen((now) => rules.answerOffer(now, askerOf(context), said === 'yes'));
      return {
        headline:
          said === 'yes'
            ? `${context.maker.name} now runs ${plan.name}.`
            : `${context.maker.name} would rather not run ${plan.name}; ${state.organiserName} still does.`,
        board: doc.id,
      };
    }
    if (maker === undefined) {
      return {
        headline: offeredTo
          ? `${offeredTo.name} is asked to run ${plan.name} and has not answered; until then ${state.organiserName} runs it.`
          : `${state.organiserName} runs ${plan.name}, and nobody is asked to take it over.`,
        lines: offeredTo
          ? [`${offeredTo.name} answers with /together handover answer:yes or answer:no.`]
          : [],
      };
    }
    rules.mustOrganise(state, askerOf(context));
    const to = memberNamed(state, maker, context);
    const { state: after } = await happen((now) => rules.offerOver(now, askerOf(context), to));
    if (after.organiser === to.maker) return { headline: `${to.name} now runs ${plan.name}.`, board: doc.id };
    return {
      headline: `${to.name} is asked to run ${plan.name}; until the answer is yes, ${after.organiserName} runs it.`,
      lines: [
        `${to.name} answers here, in /together mine, or with /together handover answer:yes or answer:no.`,
      ],
      actions: [
        action('I will run it', 'together handover', { answer: 'yes', ...named }, { forAnyone: true }),
        action('No, thank you', 'together handover', { answer: 'no', ...named }, { forAnyone: true }),
      ],
      board: doc.id,
    };
  },
});
