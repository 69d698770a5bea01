/** Which of the things that several make together is meant, and who asks. */
import type { Context } from '../../src/chat/context.ts';
import { isStranger, SOMEBODY } from '../../src/core/base/history.ts';
import { looksLike, sortByNearness } from '../../src/core/base/nearest-name.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { clip } from '../../src/core/base/quantity.ts';
import type { Asker } from '../../src/core/group/rules.ts';
import type { Doing } from '../../src/projects/chronicles.ts';

/** What is kept of one kind of such things, as far as finding one needs. */
export interface Kept<InHand> {
  listed(server: string | undefined): Promise<
    readonly {
      readonly id: string;
      readonly name: string;
      readonly channel?: string;
      /** The channel whose thread it stands in. */
      readonly from?: string;
    }[]
  >;
  these(ids: readonly string[]): Promise<readonly InHand[]>;
  named(server: string | undefined, name: string): Promise<InHand | undefined>;
}

/** How it is spoken of. */
export interface Spoken {
  /** `group blanket` */
  readonly called: string;
  /** The codes of the problems are made of this: `group` makes `no-group-yet`. */
  readonly code: string;
  /** What to do where there is none: a whole sentence. */
  readonly opening: string;
}

interface Opened {
  readonly state: { readonly open: boolean };
}

/** The one of the channel, where there is no doubt. */
export async function channelsOwn<InHand extends Opened>(
  kept: Kept<InHand>,
  { place }: Pick<Context, 'place'>,
): Promise<InHand | undefined> {
  const all = await kept.listed(place.server);
  const standingIn = (where: string | undefined) =>
    where === undefined ? [] : all.filter((entry) => entry.channel === where || entry.from === where);
  // In a thread of a channel, those of the thread itself go before those of the channel.
  const channel = [...standingIn(place.within), ...standingIn(place.channel)];
  let latest: InHand | undefined;
  // The latest that is open; they are read one by one until there is one.
  for (const { id } of channel.toReversed()) {
    const [found] = await kept.these([id]);
    if (found?.state.open) return found;
    latest ??= found;
  }
  const [only] = all;
  return latest ?? (only && all.length === 1 ? (await kept.these([only.id]))[0] : undefined);
}

/** The one of that name, or the channel’s, or the only one of the server. Throws a Problem that names those there are. */
export async function whichKept<InHand extends Opened>(
  kept: Kept<InHand>,
  context: Pick<Context, 'place'>,
  name: string | undefined,
  { called, code, opening }: Spoken,
): Promise<InHand> {
  const { server } = context.place;
  const meant = name === undefined ? undefined : await kept.named(server, name);
  if (meant) return meant;
  const all = await kept.listed(server);
  const names = all.map((entry) => entry.name);
  if (all.length === 0)
    throw new Problem(`no-${code}-yet`, `No ${called} has been opened here yet.`, { hint: opening });
  if (name !== undefined)
    throw new Problem(`${code}-name-unknown`, `There is no ${called} called ${clip(name)} here.`, {
      option: 'name',
      hint: `Here ${names.length === 1 ? 'is' : 'are'} ${sortByNearness(name, names).slice(0, 10).join(', ')}.`,
    });
  const here = await channelsOwn(kept, context);
  if (here) return here;
  throw new Problem(`which-${code}`, `It is not clear which ${called} is meant.`, {
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

/** Somebody who takes part, found by a mention or by the name she goes by. Throws a Problem that names the members. */
export function memberNamed(
  state: {
    readonly names: ReadonlyMap<string, string>;
    /** `named: false`: she is not told of by name unless whoever asks names her. */
    readonly members: ReadonlyMap<string, { readonly name: string; readonly named?: boolean }>;
    readonly plan: { readonly name: string };
  },
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
  const names = [...state.members.values()].flatMap(({ name, named }) => (named === false ? [] : [name]));
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
          : state.members.size === 0
            ? 'Nobody has joined yet.'
            : names.length === 0
              ? 'Mention her with @, or give the name she goes by.'
              : `Makers: ${sortByNearness(typed, names).slice(0, 15).join(', ')}.`,
    },
  );
}
