/** Which group blanket is meant, and who asks. */
import type { Context } from '../../src/chat/context.ts';
import type { RawOptions } from '../../src/chat/line.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { openFor, type GroupState } from '../../src/core/group/state.ts';
import type { GroupDoc } from '../../src/projects/groups.ts';
import { channelsOwn, whichKept, type Spoken } from '../shared/which-kept.ts';

export interface GroupInHand {
  readonly doc: GroupDoc;
  readonly state: GroupState;
}

/** The option that names a group blanket; the channel's own is meant where it is left out. */
export const nameOption = opt
  .text(
    {
      says: 'Which group blanket; this channel’s if not given',
      suggest: async (typed, context) =>
        // Offered at every key: by what they are called alone, without reading them.
        (await context.projects.groups.listed(context.place.server))
          .map(({ name }) => ({ value: name }))
          .filter(({ value }) => value.toLowerCase().includes(typed.toLowerCase())),
    },
    { max: LONGEST_NAME, example: 'Bean row throw' },
  )
  .optional();

/** A kind of motif, offered from the channel's blanket with what is still open of it. */
export const kindOption = opt.text(
  {
    says: 'Which kind of motif',
    onlyOffered: true,
    suggest: async (typed, context, given) => {
      const here = await meantHere(context, given);
      return (here?.state.plan.kinds ?? [])
        .map(({ name }, kind) => ({
          value: name,
          label: `${name} (${here ? openFor(here.state, kind) : 0} open)`,
        }))
        .filter(({ value }) => value.toLowerCase().includes(typed.toLowerCase()));
    },
  },
  { max: LONGEST_NAME, example: 'furrow' },
);

/** The blanket that is named beside an option that is being typed, or else the channel’s. */
async function meantHere(context: Context, given: RawOptions = {}): Promise<GroupInHand | undefined> {
  const named = given['name'];
  const meant =
    named === undefined ? undefined : await context.projects.groups.named(context.place.server, named);
  return meant ?? (await channelsOwn(context.projects.groups, context));
}

const SPOKEN: Spoken = {
  called: 'group blanket',
  code: 'group',
  opening: 'An organiser opens one from a saved blanket: /together open blanket:"…".',
};

/**
 * The group blanket of that name, or the channel's, or the only one of the server. Throws a Problem that names those
 * there are.
 */
export const whichBlanket = (context: Context, name: string | undefined): Promise<GroupInHand> =>
  whichKept(context.projects.groups, context, name, SPOKEN);

const membersOf = ({ members }: GroupState) => [...members.values()].map(({ name }) => name);

/** An option that names a member of the blanket, or whom `offered` finds in it. */
export const memberOption = (says: string, offered: (state: GroupState) => string[] = membersOf) =>
  opt.person({
    says,
    suggest: async (typed, context, given) => {
      const here = await meantHere(context, given);
      return (here ? offered(here.state) : [])
        .map((value) => ({ value }))
        .filter(({ value }) => value.toLowerCase().includes(typed.toLowerCase()));
    },
  });
