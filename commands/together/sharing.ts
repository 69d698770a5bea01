/** A fair proposal for what is open, and a word to those who have gone quiet. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import type { Context } from '../../src/chat/context.ts';
import { opt } from '../../src/chat/options.ts';
import * as rules from '../../src/core/group/rules.ts';
import { proposeShares, type Proposal } from '../../src/core/group/proposal.ts';
import type { GroupState } from '../../src/core/group/state.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { count, num } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { countPledged } from '../../src/core/group/totals.ts';
import { sum } from '../../src/core/base/sum.ts';
import { defined } from '../../src/core/base/defined.ts';
import { action } from '../shared/actions.ts';
import { JOINED } from './example.ts';
import { askerOf, doing, memberNamed } from '../shared/which-kept.ts';
import { memberOption, nameOption, whichBlanket } from './which.ts';

export const shares = question({
  name: 'shares',
  says: 'A fair split of what is still open, by what each can make by the day; shown first, then applied',
  options: {
    apply: opt
      .yesno({ says: 'Organiser: pledge these shares now', assumed: 'Shown only; apply:yes pledges.' })
      .default(false),
    spares: opt
      .yesno({
        says: 'Share out the spares as well',
        assumed: 'The spares are left out; spares:yes shares them too.',
      })
      .default(false),
    shown: opt
      .whole('The number under the shares that were shown: apply those, or none', {
        min: 0,
        max: 999_999_999,
        example: '123456',
      })
      .optional(),
    name: nameOption,
  },
  example: '',
  before: JOINED,
  refused: { line: 'apply:perhaps', option: 'apply' },
  changes: true,
  asked: {
    changesBy: ['apply'],
    ways: ['share', 'share left', 'share motif', 'share group', 'share open-for'],
    also: 'motif group left open-for who each evenly claim all blanket who',
    not: 'stitch row increase decrease yarn',
    saved: 'group',
    marks: { spares: { never: true }, name: { takes: 'saved-group' } },
    phrases: ['share out what is left fairly'],
  },
  async answer({ apply, spares, shown, name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    // Among hundreds a split is a piece of work of its own, and so is what is said of it.
    await breathe();
    const proposed = apply
      ? await applyShares(doc.id, context, { spares, shown })
      : proposeNow(state, context, spares);
    if (proposed === undefined) return { headline: 'Those shares are pledged already.', board: doc.id };
    const { proposal, working } = proposed;
    await breathe();
    const kinds = state.plan.kinds.map((kind) => kind.name);
    const total = sum(proposal.shares.flatMap(({ motifs }) => motifs));
    const left = sum(proposal.unplaced);
    return {
      headline: `${apply ? 'Pledged as proposed' : 'A fair split'}: ${splitWords(proposal, kinds)}.`,
      figures: [figure('shared', 'Motifs shared out', total), figure('unplaced', 'Without a maker', left)],
      lines: gather(
        proposal.shares.map(
          ({ name: maker, motifs, capacity, held }) =>
            `${maker}: ${shareWords(motifs, kinds) || 'nothing more'} (can make ${num(capacity, 1)}, holds ${held})`,
        ),
        !apply &&
          total !== 0 &&
          `Nothing is pledged by this yet: the organiser applies it with apply:yes shown:${proposal.mark}.`,
      ),
      working: working.steps,
      assumptions: gather(
        proposal.usualDays !== undefined &&
          `No closing day is set: shares for ${num(proposal.usualDays)} days.`,
        'Everyone carries as nearly as can be the same part of what each can make; pledges already held count.',
      ),
      data: {
        shares: proposal.shares.map(({ name: maker, motifs, capacity, held }) => ({
          maker,
          motifs,
          capacity,
          held,
        })),
        kinds,
        unplaced: proposal.unplaced,
        shown: proposal.mark,
      },
      actions: gather(
        !apply &&
          total > 0 &&
          rules.mayOrganise(state, askerOf(context)) &&
          action('Organiser: pledge these', 'host shares', {
            apply: true,
            shown: proposal.mark,
            spares: spares || undefined,
            name: state.plan.name,
          }),
      ),
      ...defined({ board: apply ? doc.id : undefined }),
    };
  },
});

interface Proposed {
  readonly proposal: Proposal;
  readonly working: Working;
}

function proposeNow(state: GroupState, { now }: Context, spares: boolean): Proposed {
  const working = new Working();
  return { proposal: proposeShares(state, now, spares, working), working };
}

/** Pledges what was shown, or nothing; undefined where that is done already. */
async function applyShares(
  id: string,
  context: Context,
  { spares, shown }: { readonly spares: boolean; readonly shown: number | undefined },
): Promise<Proposed | undefined> {
  let proposed: Proposed | undefined;
  await context.projects.groups.happen(id, doing(context), (now) => {
    proposed = proposeNow(now, context, spares);
    const { shares, mark } = proposed.proposal;
    return rules.giveShares(now, askerOf(context), shares, shown === undefined || shown === mark);
  });
  return proposed;
}

/** `3 furrow, 2 trellis` */
const shareWords = (motifs: readonly number[], kinds: readonly string[]): string =>
  motifs.flatMap((share, kind) => (share > 0 ? [`${share} ${kinds[kind] ?? ''}`] : [])).join(', ');

/** `12 motifs among 3 makers; nothing is left over` */
function splitWords({ shares, unplaced }: Proposal, kinds: readonly string[]): string {
  const total = sum(shares.flatMap(({ motifs }) => motifs));
  const makers = shares.filter(({ motifs }) => motifs.some((n) => n > 0)).length;
  const left = sum(unplaced);
  const rest =
    left === 0
      ? 'nothing is left over'
      : `${count(left, 'motif')} ${left === 1 ? 'finds' : 'find'} no maker (${shareWords(unplaced, kinds)})`;
  return `${count(total, 'motif')} among ${count(makers, 'maker')}; ${rest}`;
}

export const remind = question({
  name: 'remind',
  says: 'Organiser: ask a quiet maker whether the pledges stand; a week later offer them again',
  options: {
    maker: memberOption('Whom'),
    do: opt
      .choice(
        { says: 'Ask, or offer the pledges to others once the week is over', assumed: '' },
        [
          { value: 'ask', label: 'ask' },
          { value: 'offer', label: 'offer the pledges again' },
        ],
        'ask',
      )
      .default('ask'),
    name: nameOption,
  },
  example: 'maker:rowan',
  before: [...JOINED, 'rowan: /together pledge kind:furrow'],
  refused: { line: 'maker:nobody', option: 'maker' },
  changes: true,
  asked: {
    ways: ['remind motif', 'remind claim', 'remind group', 'remind @kind'],
    also: 'motif claim group who',
    not: 'next',
    saved: 'group',
    marks: {
      maker: { capture: /\b(?:remind|nudge|chase(?: up)?|poke)\s+(@?[\p{L}\p{N}_.-]+)/iu },
      do: { never: true },
      name: { takes: 'saved-group' },
    },
    phrases: ['remind rowan about her squares'],
  },
  async answer({ maker, do: what, name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    rules.mustOrganise(state, askerOf(context));
    const who = memberNamed(state, maker, context);
    const held = countPledged(state, who.maker);
    if (held === 0) {
      throw new Problem('holds-no-pledge', `${who.name} holds no pledge.`, {
        option: 'maker',
        hint: '/host parcels shows who holds what.',
      });
    }
    await context.projects.groups.happen(doc.id, doing(context), (now) =>
      what === 'ask'
        ? rules.remind(now, askerOf(context), who.maker)
        : rules.offerAgain(now, askerOf(context), who.maker, context.now),
    );
    return what === 'ask'
      ? {
          headline: `Noted that you asked ${who.name}. If nothing is heard in ${count(rules.NOTICE_DAYS, 'day')}, the ${count(held, 'pledge')} can be offered again.`,
          lines: [
            `${who.name} is told, and sees the question in /together mine, where either answer can be given.`,
            `You could write: “Hello ${who.name}, you hold ${count(held, 'motif')} for ${state.plan.name}. Is it still going well? Say so with /together keep; if it has become too much, give some back with /together giveback, no harm done.”`,
          ],
          tells: [
            {
              maker: who.maker,
              channel: doc.channel,
              words: `${state.organiserName} asks whether your ${count(held, 'pledge')} for ${state.plan.name} still stand: /together mine. Either answer is welcome.`,
            },
          ],
          private: true,
        }
      : {
          tells: [
            {
              maker: who.maker,
              channel: doc.channel,
              words: `What you had pledged for ${state.plan.name} is open to everyone again; you are welcome to pledge anew.`,
            },
          ],
          headline: `${count(held, 'pledge')} of ${who.name} ${held === 1 ? 'is' : 'are'} open to everyone again.`,
          board: doc.id,
        };
  },
});
