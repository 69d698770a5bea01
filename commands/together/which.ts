/** Which group blanket is meant, and who asks. */
import type { Context } from '../../src/chat/context.ts';
import type { RawOptions } from '../../src/chat/line.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { isStranger, SOMEBODY } from '../../src/core/base/history.ts';
import type { Asker } from '../../src/core/group/rules.ts';
import { openFor, type GroupState } from '../../src/core/group/state.ts';
import { looksLike, sortByNearness } from '../../src/core/base/nearest-name.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { clip } from '../../src/core/base/quantity.ts';
import type { Doing, GroupDoc } from '../../src/projects/groups.ts';

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

/** The blanket of the channel, where there is no doubt. */
async function channelsOwn(context: Context): Promise<GroupInHand | undefined> {
  const { groups } = context.projects;
  const all = await groups.listed(context.place.server);
  const { channel: here, within } = context.place;
  const standingIn = (place: string | undefined) =>
    place === undefined ? [] : all.filter((entry) => entry.channel === place || entry.from === place);
  // In a thread of a channel, those of the thread itself go before those of the channel.
  const channel = [...standingIn(within), ...standingIn(here)];
  let latest: GroupInHand | undefined;
  // The latest that is open; they are read one by one until there is one.
  for (const { id } of channel.toReversed()) {
    const [found] = await groups.these([id]);
    if (found?.state.open) return found;
    latest ??= found;
  }
  const [only] = all;
  return latest ?? (only && all.length === 1 ? (await groups.these([only.id]))[0] : undefined);
}

/** The blanket that is named beside an option that is being typed, or else the channel’s. */
async function meantHere(context: Context, given: RawOptions = {}): Promise<GroupInHand | undefined> {
  const named = given['name'];
  const meant =
    named === undefined ? undefined : await context.projects.groups.named(context.place.server, named);
  return meant ?? (await channelsOwn(context));
}

/**
 * The group blanket of that name, or the channel's, or the only one of the server. Throws a Problem that names those
 * there are.
 */
export async function whichBlanket(context: Context, name: string | undefined): Promise<GroupInHand> {
  const { groups } = context.projects;
  const meant = name === undefined ? undefined : await groups.named(context.place.server, name);
  if (meant) return meant;
  const all = await groups.listed(context.place.server);
  const names = all.map((entry) => entry.name);
  if (all.length === 0) {
    throw new Problem('no-group-yet', 'No group blanket has been opened here yet.', {
      hint: 'An organiser opens one from a saved blanket: /together open blanket:"…".',
    });
  }
  if (name !== undefined) {
    throw new Problem('group-name-unknown', `There is no group blanket called ${clip(name)} here.`, {
      option: 'name',
      hint: `Here ${names.length === 1 ? 'is' : 'are'} ${sortByNearness(name, names).slice(0, 10).join(', ')}.`,
    });
  }
  const here = await channelsOwn(context);
  if (here) return here;
  throw new Problem('which-group', 'It is not clear which group blanket is meant.', {
    option: 'name',
    hint: `Name one of ${names.slice(-10).join(', ')}.`,
  });
}

export const askerOf = ({ maker, place }: Context): Asker => ({
  id: maker.id,
  name: maker.name,
  manager: place.manager,
  managed: place.server !== undefined,
});

export const doing = ({ maker, now, once }: Context): Doing & { readonly name: string } => ({
  by: maker.id,
  name: maker.name,
  at: now,
  once,
});

/** Somebody of this blanket, found by a mention or by the name she goes by. Throws a Problem that names the members. */
export function memberNamed(
  state: GroupState,
  typed: string,
  { whois }: Pick<Context, 'whois'>,
): { maker: string; name: string } {
  const wanted = typed.trim().replace(/^@/, '').toLowerCase();
  const here = [...state.names].filter(([id]) => !isStranger(id));
  const mentioned = whois(typed);
  const byId = here.filter(([id]) => id === mentioned?.id);
  // Whoever calls herself almost like another is not to be taken for her: both are meant then.
  const found = byId.length > 0 ? byId : here.filter(([, name]) => looksLike(name, wanted));
  const [one] = found;
  if (one && found.length === 1) return { maker: one[0], name: one[1] };
  const names = [...state.members.values()].map(({ name }) => name);
  throw new Problem(
    found.length > 1 ? 'which-maker' : 'no-such-maker',
    found.length > 1
      ? `More than one maker is called ${clip(typed)}, or almost.`
      : mentioned === undefined || mentioned.name === typed
        ? `Nobody here is called ${clip(typed)}.`
        : `${mentioned.name === SOMEBODY ? 'Whoever you mean' : clip(mentioned.name)} does not take part in ${state.plan.name}.`,
    {
      option: 'maker',
      hint:
        found.length > 1
          ? 'Mention the one you mean, with @.'
          : names.length === 0
            ? 'Nobody has joined yet.'
            : `Makers: ${sortByNearness(typed, names).slice(0, 15).join(', ')}.`,
    },
  );
}

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
