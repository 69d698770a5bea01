/** Joining, leaving, naming who may join. */
import { figure, type Answer, gather } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import * as rules from '../../src/core/group/rules.ts';
import { SOMEBODY } from '../../src/core/base/history.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { count } from '../../src/core/base/reader.ts';
import { countPledged } from '../../src/core/group/totals.ts';
import { action } from '../shared/actions.ts';
import { askerOf, doing } from '../shared/which-kept.ts';
import { nameOption, whichBlanket } from './which.ts';
import { NotSaved } from '../../src/projects/not-saved.ts';
import { OPENED } from './example.ts';

export const join = question({
  name: 'join',
  says: 'Take part, or change what you said: motifs a week, colours at hand, terms',
  options: {
    per_week: opt.number('How many motifs a week you can make', { min: 0.1, max: 100, example: '3' }),
    colours: opt
      .text('Colours you have, with commas between; all of them if not given', {
        max: 400,
        example: 'moss, sand',
      })
      .optional(),
    terms: opt
      .choice(
        'Whose stitch names you read',
        [
          { value: 'US', label: 'US terms' },
          { value: 'UK', label: 'UK terms' },
        ],
        'US',
      )
      .optional(),
    name: nameOption,
  },
  example: 'per_week:3 colours:"moss, sand"',
  before: OPENED,
  refused: { line: 'per_week:0', option: 'per_week' },
  changes: true,
  asked: {
    ways: [
      'take-part',
      'take-part per-week',
      'take-part group',
      'per-week claim',
      'join group',
      'motif per-week',
    ],
    also: 'group blanket per-week motif join claim take-part colour',
    not: 'leave invite how-much weigh border whip slip-stitch',
    reports: true,
    saved: 'group',
    marks: {
      per_week: { takes: 'count', nouns: 'motif block per-week', near: 'per-week' },
      colours: { never: true },
      terms: { never: true },
      name: { takes: 'saved-group' },
    },
    phrases: ['count me in for the group blanket, 3 squares a week'],
  },
  async answer({ per_week, colours, terms, name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    const has = (colours ?? '')
      .split(',')
      .map((colour) => colour.trim())
      .filter((colour) => colour !== '');
    const wanted = new Set(
      state.plan.kinds.flatMap(({ runs }) => runs.map(({ colour }) => colour.toLowerCase())),
    );
    const strange = has.filter((colour) => !wanted.has(colour.toLowerCase()));
    const { state: after } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      rules.join(now, askerOf(context), { perWeek: per_week, colours: has }),
    );
    // She takes part whatever becomes of the rest.
    const noted =
      terms === undefined ||
      (await context.projects
        .changeMaker(context.maker.id, context.maker.name, (maker) => {
          maker.settings.terms = terms;
          return true;
        })
        .catch((error: unknown) => {
          if (error instanceof NotSaved) return false;
          throw error;
        }));
    return {
      headline: `You take part in ${state.plan.name} with ${count(per_week, 'motif')} a week; ${count(after.members.size, 'maker')} so far.`,
      lines: [`Still open: ${rules.stillOpen(after)}.`],
      assumptions: gather(
        strange.length > 0 && `The blanket has no ${strange.join(', ')}; it was noted all the same.`,
        !noted && 'Your terms could not be saved just now; they are as they were.',
      ),
      data: { members: after.members.size },
      actions: [action('Pledge motifs', 'together pledge', { name: state.plan.name })],
      board: doc.id,
    };
  },
});

export const leave = question({
  name: 'leave',
  says: 'Leave; what you pledged and have not made is open to others again',
  options: { name: nameOption },
  example: '',
  before: [...OPENED, '/together join per_week:2'],
  refused: { line: 'name:"No such blanket"', option: 'name' },
  changes: true,
  asked: {
    ways: ['leave group', 'leave', 'leave blanket group'],
    also: 'group blanket need mine',
    not: 'motif row yarn border left',
    reports: true,
    saved: 'group',
    marks: { name: { takes: 'saved-group' } },
    phrases: ['I want to leave the group blanket'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    const held = countPledged(state, context.maker.id);
    await context.projects.groups.happen(doc.id, doing(context), (now) => rules.leave(now, askerOf(context)));
    return {
      headline: `You have left ${state.plan.name}; ${held === 0 ? 'nothing was pledged' : `${count(held, 'pledged motif')} ${held === 1 ? 'is' : 'are'} open again`}. What you handed in stays in the blanket.`,
      board: doc.id,
    };
  },
});

export const keep = question({
  name: 'keep',
  says: 'Say that what you pledged still stands',
  options: { name: nameOption },
  example: '',
  before: [...OPENED, '/together pledge kind:furrow motifs:2'],
  refused: { line: 'name:"No such blanket"', option: 'name' },
  changes: true,
  asked: {
    ways: ['claim still', 'still motif', 'still', 'still group'],
    also: 'motif mine group claim blanket save',
    not: 'how-many left row weigh open-for who',
    reports: true,
    saved: 'group',
    marks: { name: { takes: 'saved-group' } },
    phrases: ['my pledge still stands', 'I still want my squares'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { doc } = await whichBlanket(context, name);
    const { state } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      rules.keep(now, askerOf(context)),
    );
    const held = countPledged(state, context.maker.id);
    return {
      headline: `Thank you; it is noted that ${held === 0 ? 'you are still with us' : `your ${count(held, 'pledge')} ${held === 1 ? 'stands' : 'stand'}`}.`,
      figures: [figure('pledged', 'Pledged', held)],
      private: true,
    };
  },
});

export const invite = question({
  name: 'invite',
  says: 'Organiser: name somebody who may join',
  options: {
    maker: opt.person('Whom'),
    name: nameOption,
  },
  example: 'maker:rowan',
  before: OPENED,
  refused: { line: 'maker:rowan name:"No such blanket"', option: 'name' },
  changes: true,
  asked: {
    ways: ['invite group', 'invite'],
    also: 'group blanket',
    not: 'leave',
    saved: 'group',
    marks: {
      maker: { capture: /\b(?:invite|inviting|allow|add|let)\s+(@?[\p{L}\p{N}_.-]+)/iu },
      name: { takes: 'saved-group' },
    },
    phrases: ['invite rowan to the group blanket'],
  },
  async answer({ maker, name }, context): Promise<Answer> {
    const { doc } = await whichBlanket(context, name);
    const who = context.whois(maker);
    if (!who) {
      throw new Problem('which-maker', 'It is not clear who that is.', {
        option: 'maker',
        hint: 'Choose somebody of this server, so that there is no doubt whom you mean.',
      });
    }
    const { state } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      rules.invite(now, askerOf(context), { maker: who.id, name: who.name }),
    );
    return {
      headline: `${who.name === SOMEBODY ? 'Whoever you mean' : who.name} may join ${state.plan.name}.`,
      lines: ['That is done with /together join per_week: and how many motifs a week are possible.'],
    };
  },
});
