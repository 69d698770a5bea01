/** Who holds what: one's own, everybody's for the posting day, and the yarn for it. */
import { figure, gather, type Answer, type Menu } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { listHoldings, parcelsOf } from '../../src/core/group/holdings.ts';
import { mayOrganise } from '../../src/core/group/rules.ts';
import type { GroupState } from '../../src/core/group/state.ts';
import { sum } from '../../src/core/base/sum.ts';
import { countPledged, totalsOf } from '../../src/core/group/totals.ts';
import { heldLines, numbered } from './words.ts';
import { reckonGroupYarn, type GroupYarn, type YarnNeed } from '../../src/core/group/yarn.ts';
import { count, m, num, when } from '../../src/core/base/reader.ts';
import { caution } from '../../src/standards/care.ts';
import { SPREAD_COUNTS } from '../../src/standards/consumption.ts';
import { action, form } from '../shared/actions.ts';
import { OPENED } from './example.ts';
import { parcelsCsv } from './parcels-csv.ts';
import { askerOf } from '../shared/which-kept.ts';
import { nameOption, whichBlanket } from './which.ts';

const PLEDGED = [...OPENED, '/together pledge kind:furrow motifs:2', 'rowan: /together pledge kind:trellis'];

export const mine = question({
  name: 'mine',
  says: 'What you hold: pledged, handed in, accepted, sent back',
  options: { name: nameOption },
  example: '',
  before: PLEDGED,
  refused: { line: 'name:"No such blanket"', option: 'name' },
  private: true,
  asked: {
    ways: [
      'claim which',
      'which motif claim',
      'which group change',
      'which group need change',
      'which claim mine',
      'group left mine',
      'show claim',
      'left group',
      'why send-back',
      'which send-back mine',
      'which mistake send-back',
      'which send-back motif',
    ],
    also: 'motif mine group claim which done left need still kind send-back mistake why',
    not: 'open-for yarn ball give-back weigh parcel how-many @kind',
    saved: 'group',
    marks: { name: { takes: 'saved-group' } },
    phrases: ['what have I pledged', 'which squares am I down for'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { state } = await whichBlanket(context, name);
    const hers = listHoldings(state, context.maker.id);
    const pledged = countPledged(state, context.maker.id);
    const waits = hers.flatMap(({ handedIn }) => handedIn).length;
    const isIn = hers.flatMap(({ accepted }) => accepted).length;
    const asked = state.remindedAt.get(context.maker.id);
    const barred = state.barred.get(context.maker.id);
    const cleared = state.clearedAt.get(context.maker.id);
    const offered = state.offeredTo?.maker === context.maker.id;
    const named = { name: state.plan.name };
    return {
      headline: `For ${state.plan.name} you hold ${count(pledged, 'pledge')}; ${num(waits)} of yours ${waits === 1 ? 'waits' : 'wait'} and ${num(isIn)} ${isIn === 1 ? 'is' : 'are'} accepted.`,
      figures: [
        figure('pledged', 'Pledged', pledged),
        figure('handed_in', 'Handed in, waiting', waits),
        figure('accepted', 'Accepted', isIn),
      ],
      lines: gather(
        barred &&
          `Since ${when(barred.at)}, you are kept from taking part: ${barred.reason}. What was accepted of yours stays in the blanket.`,
        !barred &&
          cleared !== undefined &&
          cleared >= (state.pledgedAt.get(context.maker.id) ?? '') &&
          `What you had pledged and not made was opened to everyone again (${when(cleared)}); you are welcome to pledge anew.`,
        offered && `You are asked to run ${state.plan.name}; nothing changes before you say yes.`,
        asked !== undefined &&
          pledged !== 0 &&
          `${state.organiserName} asked whether your pledges still stand. Either answer is welcome: they stand, or give back what has become too much.`,
        hers.flatMap(heldLines),
      ),
      data: {
        kinds: hers.map(({ returned, ...rest }) => ({
          ...rest,
          returned: returned.map(({ piece }) => piece),
        })),
      },
      actions: gather(
        offered && [
          action('I will run it', 'together handover', { answer: 'yes', ...named }),
          action('No, thank you', 'together handover', { answer: 'no', ...named }),
        ],
        asked !== undefined &&
          pledged !== 0 &&
          action('My pledges stand', 'together keep', { name: state.plan.name }),
        hers
          .filter(({ pledged: held }) => held > 0)
          .slice(0, 8)
          .flatMap(({ kind }) => [
            form(`Hand in ${kind}`, 'together handin', { kind, name: state.plan.name }, []),
            action(`Give back one ${kind}`, 'together giveback', { kind, name: state.plan.name }),
          ]),
      ),
    };
  },
});

export const parcels = question({
  name: 'parcels',
  says: 'Who holds what and what has arrived: a list for posting day, and as a CSV file',
  options: { name: nameOption },
  example: '',
  before: PLEDGED,
  refused: { line: 'name:"No such blanket"', option: 'name' },
  asked: {
    ways: [
      'parcel',
      'parcel list',
      'parcel which',
      'who parcel',
      'who still motif',
      'who left motif',
      'who claim',
      'who done motif',
    ],
    also: 'list who which group motif show place accept still left claim change done',
    not: 'row weigh hook yarn',
    saved: 'group',
    marks: { name: { takes: 'saved-group' } },
    phrases: ['who has what, a list for posting day'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { state } = await whichBlanket(context, name);
    const makers = parcelsOf(state);
    const { handedIn: waiting } = totalsOf(state);
    return {
      headline: `${makers.length === 0 ? `Nobody holds a motif of ${state.plan.name} yet` : `${count(makers.length, 'maker')} ${makers.length === 1 ? 'has' : 'have'} motifs of ${state.plan.name} to make or sent in`}; ${count(waiting, 'motif')} ${waiting === 1 ? 'waits' : 'wait'} to be accepted.`,
      lines: makers.map(
        ({ name: maker, held }) =>
          `${maker}: ${held
            .map(
              (one) =>
                `${one.kind} ${gather(
                  one.pledged > 0 && `${one.pledged} to make`,
                  one.handedIn.length > 0 && `${numbered(one.handedIn)} handed in`,
                  one.accepted.length > 0 && `${one.accepted.length} accepted`,
                ).join(', ')}`,
            )
            .join('; ')}`,
      ),
      data: {
        makers: makers.map(({ name: maker, held }) => ({
          maker,
          held: held.map(({ returned: _, ...rest }) => rest),
        })),
      },
      files: [
        {
          name: 'parcels.csv',
          says: `Who holds what of ${state.plan.name}, for a spreadsheet`,
          content: parcelsCsv(state),
        },
      ],
      ...(mayOrganise(state, askerOf(context)) ? { menu: askingMenu(state, makers) } : {}),
    };
  },
});

/** The makers who hold pledges: one of them is asked whether they stand. */
function askingMenu({ plan }: GroupState, makers: ReturnType<typeof parcelsOf>): Menu {
  const says = 'Ask somebody whether the pledges stand';
  const { question, options } = form(says, 'host remind', { name: plan.name }, ['maker']);
  return {
    question,
    options,
    option: 'maker',
    says,
    single: true,
    choices: makers.flatMap(({ name, held }) => {
      const pledged = sum(held.map((one) => one.pledged));
      return pledged === 0 ? [] : [{ value: name, label: `${name}: ${count(pledged, 'pledge')}` }];
    }),
  };
}

export const yarn = question({
  name: 'yarn',
  says: 'Shopping lists: your pledges, and the whole group’s, bought by each or together',
  options: { name: nameOption },
  example: '',
  before: PLEDGED,
  refused: { line: 'name:"No such blanket"', option: 'name' },
  asked: {
    ways: [
      '?yarn claim',
      'shopping group',
      '?yarn group',
      'yarn group need',
      'shopping claim',
      '?ball group|claim',
    ],
    also: 'group claim mine yarn ball need shopping blanket list all total motif colour',
    not: 'open-for row round weigh',
    saved: 'group',
    marks: { name: { takes: 'saved-group' } },
    phrases: ['how much yarn do I need for my pledges', 'group shopping list'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { state } = await whichBlanket(context, name);
    const organiser = await context.projects.keptOf(state.organiser);
    const needs = reckonGroupYarn(
      state,
      context.maker.id,
      organiser !== undefined && 'motifs' in organiser ? organiser.motifs : [],
    );
    const { open } = totalsOf(state);
    return {
      headline: yarnHeadline(state.plan.name, needs),
      figures: gather(
        figure('yarn_total', 'Yarn for all pledges', needs.metres, 'm'),
        needs.each !== undefined && [
          figure('balls_each', 'Balls, bought by each', needs.each),
          figure('balls_together', 'Balls, bought together', needs.together ?? 0),
        ],
        needs.sure && [
          figure('reserve', 'Your reserve', needs.sure.reserve, '%'),
          figure('band', 'What you need is right to about', needs.sure.band, '%'),
        ],
        needs.sureTogether && [
          figure('yarn_flat', 'Yarn for all pledges, with a flat reserve', needs.sureTogether.flat, 'm'),
          figure('reserve_together', 'Reserve, bought together', needs.sureTogether.reserve, '%'),
          figure('band_together', 'What all need is right to about', needs.sureTogether.band, '%'),
        ],
      ),
      lines: gather(
        needs.together_by_colour.map((one) => `Together, ${need(one)}`),
        needs.makers.map(({ name: maker, needs: hers }) => `${maker}: ${hers.map(need).join('; ')}`),
        sureLines(needs, state.plan.reserve),
        open > 0 && `The ${count(open, 'motif')} still open ${open === 1 ? 'is' : 'are'} not counted.`,
      ),
      working: needs.working.steps,
      assumptions: gather(
        needs.assumptions,
        needs.sureTogether &&
          gather(
            `Makers differ by about ${num(needs.weighed.differ, 0)} %, one maker’s motifs by about ${num(needs.weighed.spread, 0)} %: what is usual, corrected by what was weighed.`,
            'What a maker weighed tells of her other kinds and colours as well.',
            needs.weighed.motifs > 0 &&
              needs.weighed.again < FEW_AGAIN &&
              'How much one maker’s motifs differ is known only where she weighs at more than one hand-in: until several have, the usual is taken, and lists run out oftener where hers differ more.',
          ),
      ),
      cautions: [caution('dye-lot')],
      data: {
        mine: needs.mine,
        makers: needs.makers,
        together: needs.together_by_colour,
        weighed: { motifs: needs.weighed.motifs, makers: needs.weighed.makers },
      },
    };
  },
});

const need = ({ colour, metres, balls }: YarnNeed) =>
  `${colour}: ${m(metres)}${balls === undefined ? '' : `, ${count(balls, 'ball')}`}`;

/** How sure the lists are, and what reserve that comes to beside a flat one. */
function sureLines({ sure, sureTogether, weighed }: GroupYarn, flat: number): string[] {
  if (!sureTogether) return [];
  const from =
    weighed.motifs === 0
      ? 'Rough: nothing of it is weighed yet'
      : `Weighed: ${count(weighed.motifs, 'motif')} by ${count(weighed.makers, 'maker')}`;
  const bands = gather(
    sure && `yours is right to about ${num(sure.band, 0)} %`,
    `all together ${sure ? '' : 'is right '}to about ${num(sureTogether.band, 0)} %`,
  );
  const reserves = gather(
    sure && `${num(sure.reserve, 0)} % on yours`,
    `${num(sureTogether.reserve, 0)} % bought together`,
  );
  const flats = gather(sure && `${m(sure.flat)} for you`, `${m(sureTogether.flat)} together`);
  return gather(
    `${from}; ${bands.join(', ')}.`,
    `A list runs out about once in twenty times with a reserve of ${reserves.join(', ')}; a flat ${num(flat)} % would be ${flats.join(', ')}.`,
    weighed.motifs < FEW_WEIGHED &&
      'Weigh motifs when you hand them in (weight:), and the lists learn from it.',
  );
}

/** Fewer than these, and weighing is asked for. */
const FEW_WEIGHED = 10;

/** Fewer second readings than these say little of how one maker's motifs differ. */
const FEW_AGAIN = SPREAD_COUNTS;

function yarnHeadline(name: string, { mine: hers, makers, each, together = 0, metres }: GroupYarn): string {
  if (hers.length > 0) return `For what you pledged: ${hers.map(need).join('; ')}.`;
  if (makers.length === 0) return `Nothing is pledged for ${name} now, so there is no yarn to buy.`;
  const all =
    each === undefined
      ? m(metres)
      : `${count(each, 'ball')} bought by each, ${count(together, 'ball')} bought together`;
  return `You hold no pledge of ${name}; all that is pledged takes ${all}.`;
}
