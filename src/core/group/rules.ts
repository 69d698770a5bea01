/**
 * What may happen next to a group blanket. Each rule looks at the state and either gives the events that follow or
 * throws a Problem that says what is still open; so nothing is ever spoken for twice, whoever presses first.
 */
import { defined } from '../base/defined.ts';
import { findKindCalled, letter } from '../blanket/by-kind.ts';
import { sortByNearness } from '../base/nearest-name.ts';
import { LONGEST_NAME, MOST_COLOURS_AT_HAND, MOST_NUMBERED } from '../base/limits.ts';
import { Problem } from '../base/problem.ts';
import { clip } from '../base/quantity.ts';
import { count, num } from '../base/reader.ts';
import { isStranger, SOMEBODY } from '../base/history.ts';
import type { Happening } from './events.ts';
import { openFor, pieceOf, type GroupState, type Piece } from './state.ts';
import { countBeyondPledge } from './totals.ts';

/** Who asks: her id, and whether she may do what only organisers may. */
export interface Asker {
  readonly id: string;
  readonly name: string;
  /** True for the server's managers. */
  readonly manager: boolean;
  /** True in a server, whose managers decide where the organiser has gone. */
  readonly managed: boolean;
}

/**
 * The organiser, and a manager of the server. Where the organiser has erased herself and there is no server, whoever takes
 * part, for there would be nobody else.
 */
export const mayOrganise = (
  state: { readonly organiser: string; readonly members: ReadonlyMap<string, unknown> },
  asker: Asker,
): boolean =>
  asker.manager ||
  asker.id === state.organiser ||
  (isStranger(state.organiser) && !asker.managed && state.members.has(asker.id));

/** Refuses whoever neither runs this blanket nor manages the server. Throws Problem: organisers-only, organiser-gone. */
export function mustOrganise(state: GroupState, asker: Asker): void {
  if (mayOrganise(state, asker)) return;
  const gone = isStranger(state.organiser);
  throw new Problem(
    gone ? 'organiser-gone' : 'organisers-only',
    'Only the organiser of this blanket and the server’s managers can do that.',
    {
      hint: !gone
        ? `Ask ${state.organiserName}, who runs it.`
        : asker.managed
          ? 'Its organiser has gone; a manager of the server can hand it to somebody who takes part.'
          : 'Its organiser has gone; whoever takes part can take it over.',
      facts: { organiser: state.organiserName, server: asker.managed ? 1 : 0 },
    },
  );
}

/** Whom somebody asks who may not do a thing herself. */
const askWho = (state: GroupState) =>
  isStranger(state.organiser)
    ? 'Ask a manager of the server; its organiser has gone.'
    : `Ask ${state.organiserName}, who runs it.`;

/** Refuses whom the organiser keeps from taking part, and tells her why. Throws Problem: kept-out. */
function mustNotBeBarred(state: GroupState, maker: string): void {
  const barred = state.barred.get(maker);
  if (!barred) return;
  throw new Problem('kept-out', `You are kept from taking part in this blanket: ${endless(barred.reason)}.`, {
    hint: askWho(state),
    facts: { since: barred.at },
  });
}

/** A reason without its full stop, for the middle of a sentence. */
export const endless = (reason: string) => reason.replace(/(?<![.\s])[.\s]+$/, '');

function mustBeOpen(state: GroupState): void {
  if (!state.open) {
    throw new Problem('blanket-closed', 'This blanket is closed.', {
      hint: 'The organiser can open it again.',
    });
  }
}

/** The kind of that name, of that letter on the board, or the only one that begins so. Throws Problem: no-such-kind, with the kinds there are, the nearest first. */
export function findKindNamed(state: GroupState, name: string): number {
  const names = state.plan.kinds.map((kind) => kind.name);
  const kind = findKindCalled(name.trim(), names);
  if (kind >= 0) return kind;
  throw new Problem('no-such-kind', 'This blanket has no such kind of motif.', {
    option: 'kind',
    hint: `Its kinds are ${sortByNearness(name, names)
      .map((known) => `${letter(names.indexOf(known))} (${known})`)
      .join(', ')}.`,
  });
}

/** What is still open, in words: "12 moss square, 3 sand square". */
export function stillOpen(state: GroupState): string {
  const open = state.plan.kinds.flatMap((kind, index) => {
    const motifs = openFor(state, index);
    return motifs > 0 ? [`${motifs} ${kind.name}`] : [];
  });
  return open.length === 0 ? 'nothing; every motif is spoken for' : open.join(', ');
}

/**
 * A maker takes part, or changes what she said when she joined.
 *
 * Throws Problem: kept-out, blanket-closed, not-named, name-too-long, too-many-colours.
 */
export function join(
  state: GroupState,
  asker: Asker,
  said: { perWeek: number; colours: readonly string[] },
): Happening[] {
  mustNotBeBarred(state, asker.id);
  mustBeOpen(state);
  const known = state.members.has(asker.id) || state.invited.has(asker.id) || mayOrganise(state, asker);
  if (state.plan.joinable === 'named' && !known) {
    throw new Problem('not-named', 'This blanket is for makers whom the organiser has named.', {
      hint: `Ask ${state.organiserName} to name you.`,
      facts: { organiser: state.organiserName },
    });
  }
  const long = said.colours.find((colour) => colour.length > LONGEST_NAME);
  if (long !== undefined) {
    throw new Problem('name-too-long', `“${clip(long)}” is too long for a colour.`, {
      option: 'colours',
      hint: 'Give colours with commas between, like moss, sand.',
      facts: { most: LONGEST_NAME, given: long.length },
    });
  }
  if (said.colours.length > MOST_COLOURS_AT_HAND) {
    throw new Problem('too-many-colours', `${num(said.colours.length)} colours are more than are noted.`, {
      option: 'colours',
      hint: `Give at most ${MOST_COLOURS_AT_HAND}, those that the blanket has.`,
      facts: { most: MOST_COLOURS_AT_HAND, given: said.colours.length },
    });
  }
  return [{ did: 'joined', maker: asker.id, name: asker.name, ...said }];
}

/** A maker leaves; what she has pledged and not made is open again, what she handed in stays. Throws Problem: not-taking-part, kept-out. */
export function leave(state: GroupState, asker: Asker): Happening[] {
  mustTakePart(state, asker.id);
  return [{ did: 'left', maker: asker.id }];
}

/** A maker says that her pledges stand, asked or not. Throws Problem: not-taking-part, kept-out. */
export function keep(state: GroupState, asker: Asker): Happening[] {
  mustTakePart(state, asker.id);
  return [{ did: 'kept', maker: asker.id }];
}

function mustTakePart(state: GroupState, maker: string): void {
  mustNotBeBarred(state, maker);
  if (!state.members.has(maker)) {
    throw new Problem('not-taking-part', 'You do not take part in this blanket yet.', {
      hint: 'Join first.',
    });
  }
}

/**
 * So many of a kind for one maker. A pledge that asks for more than is open is refused whole, with what is open.
 *
 * Throws Problem: too-few-open, blanket-closed, and those of joining.
 */
export function pledge(state: GroupState, asker: Asker, kind: number, motifs: number): Happening[] {
  mustNotBeBarred(state, asker.id);
  mustBeOpen(state);
  const open = openFor(state, kind);
  const name = state.plan.kinds[kind]?.name ?? '';
  if (motifs > open) {
    throw new Problem(
      'too-few-open',
      open === 0
        ? `Every ${name} is spoken for.`
        : `Only ${num(open)} of ${name} ${open === 1 ? 'is' : 'are'} still open.`,
      {
        option: open === 0 ? 'kind' : 'motifs',
        hint: `Still open: ${stillOpen(state)}.`,
        facts: { needed: motifs, given: open },
      },
    );
  }
  const pledged: Happening = { did: 'pledged', maker: asker.id, kind, motifs };
  // A first pledge is a way of joining; she can say how many a week whenever she likes.
  return state.members.has(asker.id)
    ? [pledged]
    : [...join(state, asker, { perWeek: 1, colours: [] }), pledged];
}

/** Gives back so many of a kind that are pledged and not made. Throws Problem: kept-out, nothing-pledged, too-few-pledged. */
export function giveBack(state: GroupState, maker: string, kind: number, motifs: number): Happening[] {
  mustNotBeBarred(state, maker);
  const held = state.pledges.get(maker)?.[kind] ?? 0;
  const name = state.plan.kinds[kind]?.name ?? '';
  if (motifs > held) {
    throw new Problem(
      held === 0 ? 'nothing-pledged' : 'too-few-pledged',
      held === 0
        ? `No ${name} is pledged there.`
        : `Only ${held} of ${name} ${held === 1 ? 'is' : 'are'} pledged there.`,
      {
        option: 'motifs',
        hint: held === 0 ? 'Look at what you hold.' : `Give back at most ${held}.`,
        facts: { needed: motifs, given: held },
      },
    );
  }
  return [{ did: 'released', maker, kind, motifs }];
}

/**
 * Hands in finished motifs, pledging those that were not while there is room: their `side` in cm, and the `weight` in g of all of
 * them together, as far as they were measured and weighed.
 *
 * Throws Problem: too-few-open, too-many-numbered, and those of a pledge.
 */
export function handIn(
  state: GroupState,
  asker: Asker,
  kind: number,
  motifs: number,
  { side, weight }: { side?: number | undefined; weight?: number | undefined } = {},
): Happening[] {
  const held = state.pledges.get(asker.id)?.[kind] ?? 0;
  const more = countBeyondPledge(state, asker.id, kind, motifs);
  if (state.pieces.length + motifs > MOST_NUMBERED) {
    throw new Problem(
      'too-many-numbered',
      `${num(MOST_NUMBERED)} motifs have numbers in this blanket already.`,
      {
        option: 'motifs',
        hint: 'Those that were taken back count as well; the organiser can go on in a new blanket.',
        facts: { most: MOST_NUMBERED, given: motifs },
      },
    );
  }
  if (held > 0 && state.open && more > openFor(state, kind)) {
    const most = held + openFor(state, kind);
    throw new Problem(
      'too-few-open',
      `You hold ${num(held)} of ${state.plan.kinds[kind]?.name ?? ''}, and no more than ${num(most - held)} can be added.`,
      {
        option: 'motifs',
        hint: `Hand in at most ${num(most)}. Still open: ${stillOpen(state)}.`,
        facts: { needed: motifs, given: most },
      },
    );
  }
  const pledged = more > 0 ? pledge(state, asker, kind, more) : [];
  return [...pledged, defined({ did: 'handed-in', maker: asker.id, kind, motifs, side, weight })];
}

/** The motifs of these numbers that wait for the organiser. Throws Problem: not-waiting, no-such-motif. */
function waiting(state: GroupState, pieces: readonly number[]): Piece[] {
  return [...new Set(pieces)].map((number) => {
    const piece = pieceOf(state, number);
    if (piece?.state === 'handed-in') return piece;
    const wait = state.pieces.filter((one) => one.state === 'handed-in').map((one) => one.piece);
    throw new Problem(
      piece ? 'not-waiting' : 'no-such-motif',
      piece ? `Motif ${number} was ${piece.state} already.` : `There is no motif ${number}.`,
      {
        option: 'motifs',
        hint: wait.length === 0 ? 'No motif is waiting.' : `Waiting: ${wait.slice(0, 30).join(', ')}.`,
        facts: defined({ motif: number, state: piece?.state }),
      },
    );
  });
}

/** Accepts motifs by their numbers. Throws Problem: not-waiting, no-such-motif, organisers-only, organiser-gone. */
export function accept(state: GroupState, asker: Asker, pieces: readonly number[]): Happening[] {
  mustOrganise(state, asker);
  return [{ did: 'accepted', pieces: waiting(state, pieces).map(({ piece }) => piece) }];
}

/**
 * Sends motifs back with a reason; each is pledged again by its maker, to be mended or made anew.
 *
 * Throws Problem: not-waiting, no-such-motif, reason-missing, organisers-only, organiser-gone.
 */
export function sendBack(
  state: GroupState,
  asker: Asker,
  pieces: readonly number[],
  reason: string,
): Happening[] {
  mustOrganise(state, asker);
  if (endless(reason) === '') {
    throw new Problem('reason-missing', 'No reason is given.', {
      option: 'reason',
      hint: 'Say in a friendly sentence what is to be mended.',
    });
  }
  return [{ did: 'returned', pieces: waiting(state, pieces).map(({ piece }) => piece), reason }];
}

/**
 * Gives several makers their shares at once, on the organiser's word; each pledge is checked against what is open then.
 *
 * Throws Problem: shares-changed, blanket-closed, organisers-only, organiser-gone.
 */
export function giveShares(
  state: GroupState,
  asker: Asker,
  shares: readonly { readonly maker: string; readonly motifs: readonly number[] }[],
  asShown = true,
): Happening[] {
  mustOrganise(state, asker);
  mustBeOpen(state);
  const changed = () =>
    new Problem('shares-changed', 'Something has changed since these shares were worked out.', {
      hint: 'Ask for the shares again and look at the new ones.',
    });
  if (!asShown) throw changed();
  const asked = state.plan.kinds.map((_, kind) =>
    shares.reduce((sum, { motifs }) => sum + (motifs[kind] ?? 0), 0),
  );
  asked.forEach((motifs, kind) => {
    if (motifs > openFor(state, kind)) {
      throw changed();
    }
  });
  return shares.flatMap(({ maker, motifs }) =>
    motifs.flatMap((share, kind): Happening[] =>
      share > 0 && state.members.has(maker) ? [{ did: 'pledged', maker, kind, motifs: share }] : [],
    ),
  );
}

/** Refuses to give anything to a maker who is kept out. Throws Problem: maker-kept-out. */
function mustBeLetIn(state: GroupState, { maker, name }: { maker: string; name: string }): void {
  if (!state.barred.has(maker)) return;
  throw new Problem('maker-kept-out', `${name} is kept from taking part in this blanket.`, {
    option: 'maker',
    hint: `Let ${name} in again first.`,
    facts: { maker: name },
  });
}

/**
 * Keeps a maker from taking part. What she has pledged and not made is open again; what was accepted of hers stays, and
 * what waits can be accepted or sent back. She is told `reason`.
 *
 * Throws Problem: organisers-only, organiser-gone, organiser-kept, maker-kept-out, reason-missing.
 */
export function bar(
  state: GroupState,
  asker: Asker,
  who: { maker: string; name: string },
  reason: string,
): Happening[] {
  mustOrganise(state, asker);
  if (who.maker === state.organiser) {
    throw new Problem('organiser-kept', `${who.name} runs this blanket and cannot be kept out of it.`, {
      option: 'maker',
      hint: 'Hand the blanket over first.',
    });
  }
  mustBeLetIn(state, who);
  if (endless(reason) === '') {
    throw new Problem('reason-missing', `Say why ${who.name} is kept out.`, {
      option: 'reason',
      hint: 'A friendly sentence is enough; the maker and everybody who reads the history sees it.',
    });
  }
  return [{ did: 'barred', maker: who.maker, reason: endless(reason) }];
}

/** Lets a maker take part again who was kept out. Throws Problem: organisers-only, organiser-gone, not-kept-out. */
export function readmit(state: GroupState, asker: Asker, who: { maker: string; name: string }): Happening[] {
  mustOrganise(state, asker);
  if (!state.barred.has(who.maker)) {
    const out = [...state.barred.keys()].map((maker) => state.names.get(maker) ?? 'a maker');
    throw new Problem('not-kept-out', `${who.name} is not kept from taking part.`, {
      option: 'maker',
      hint: out.length === 0 ? 'Nobody is.' : `Kept out: ${out.slice(0, 15).join(', ')}.`,
    });
  }
  return [{ did: 'readmitted', maker: who.maker }];
}

/** Names somebody who may join. Throws Problem: organisers-only, organiser-gone, maker-kept-out. */
export function invite(state: GroupState, asker: Asker, who: { maker: string; name: string }): Happening[] {
  mustOrganise(state, asker);
  mustBeLetIn(state, who);
  return [{ did: 'invited', ...who }];
}

/** Asks a maker whether her old pledges still stand. Throws Problem: organisers-only, organiser-gone. */
export function remind(state: GroupState, asker: Asker, maker: string): Happening[] {
  mustOrganise(state, asker);
  return [{ did: 'reminded', maker }];
}

/** How many days a maker has to answer a reminder before her pledges may be offered to others again. */
export const NOTICE_DAYS = 7;
export const MS_PER_DAY = 86_400_000;

/**
 * Offers a quiet maker's pledges to everyone again, once she was asked and the notice has run out.
 *
 * Throws Problem: not-asked, notice-running, organisers-only, organiser-gone.
 */
export function offerAgain(state: GroupState, asker: Asker, maker: string, now: Date): Happening[] {
  mustOrganise(state, asker);
  const reminded = state.remindedAt.get(maker);
  const name = state.names.get(maker) ?? SOMEBODY;
  if (reminded === undefined) {
    throw new Problem(
      'not-asked',
      `${name} has not been asked whether the pledges still stand, or has been heard of since.`,
      {
        option: 'maker',
        hint: `Ask with do:ask; the pledges can be offered again ${count(NOTICE_DAYS, 'day')} later.`,
      },
    );
  }
  const waited = (now.getTime() - Date.parse(reminded)) / MS_PER_DAY;
  if (waited < NOTICE_DAYS) {
    const days = Math.floor(waited);
    throw new Problem(
      'notice-running',
      `${name} was asked ${days === 0 ? 'today' : `${count(days, 'day')} ago`}, with ${count(NOTICE_DAYS, 'day')} to answer.`,
      {
        option: 'maker',
        hint: `Try again in ${count(Math.ceil(NOTICE_DAYS - waited), 'day')}.`,
        facts: { needed: NOTICE_DAYS, given: waited },
      },
    );
  }
  return (state.pledges.get(maker) ?? []).flatMap((motifs, kind): Happening[] =>
    motifs > 0 ? [{ did: 'released', maker, kind, motifs }] : [],
  );
}

/** Closes it to new pledges. Throws Problem: blanket-closed, organisers-only, organiser-gone. */
export function close(state: GroupState, asker: Asker): Happening[] {
  mustOrganise(state, asker);
  mustBeOpen(state);
  return [{ did: 'closed' }];
}

/** Opens it again, or moves its closing day. Throws Problem: blanket-open, organisers-only, organiser-gone. */
export function reopen(state: GroupState, asker: Asker, closes: string | undefined): Happening[] {
  mustOrganise(state, asker);
  if (state.open && closes === undefined) {
    throw new Problem('blanket-open', 'This blanket is open.', {
      hint: 'Give closes: a new date to move its end.',
    });
  }
  return [defined({ did: 'reopened', closes })];
}

/**
 * Asks somebody to run the blanket; nothing changes before she says yes. Whoever may organise it and names herself has
 * said so, and runs it at once.
 *
 * Throws Problem: organiser-already, offered-already, maker-kept-out, organisers-only, organiser-gone.
 */
export function offerOver(state: GroupState, asker: Asker, to: { maker: string; name: string }): Happening[] {
  mustOrganise(state, asker);
  if (to.maker === state.organiser) {
    throw new Problem('organiser-already', `${to.name} runs this blanket already.`, {
      option: 'maker',
      hint: 'Name somebody else who takes part.',
    });
  }
  mustBeLetIn(state, to);
  if (to.maker === asker.id) return [{ did: 'handed-over', to: to.maker, name: to.name }];
  if (to.maker === state.offeredTo?.maker) {
    throw new Problem('offered-already', `${to.name} was asked already and has not answered.`, {
      option: 'maker',
      hint: 'Wait for the answer, or ask somebody else instead.',
    });
  }
  return [{ did: 'offered-over', to: to.maker, name: to.name }];
}

/** The answer of whoever was asked to run the blanket. Throws Problem: not-offered, kept-out. */
export function answerOffer(state: GroupState, asker: Asker, yes: boolean): Happening[] {
  mustNotBeBarred(state, asker.id);
  if (state.offeredTo?.maker !== asker.id) {
    throw new Problem('not-offered', 'You are not asked to run this blanket.', {
      option: 'answer',
      hint: state.offeredTo
        ? `${state.offeredTo.name} is asked, and nobody else can answer.`
        : 'Nobody is asked just now.',
    });
  }
  return yes
    ? [{ did: 'handed-over', to: asker.id, name: asker.name }]
    : [{ did: 'declined', maker: asker.id }];
}

/**
 * Takes back what a maker did last herself: a pledge that she still holds, or a hand-in of which nothing is accepted or sent
 * back yet. The motifs of a hand-in keep their numbers.
 *
 * Throws Problem: nothing-to-take-back, accepted-already.
 */
function takeBackOwn(state: GroupState, asker: Asker): Happening[] {
  const hers = state.standing.filter(
    ({ happened }) =>
      happened.by === asker.id && (happened.did === 'pledged' || happened.did === 'handed-in'),
  );
  const last = hers.at(-1)?.happened;
  // All that came of one press goes together: what was handed in beyond a pledge was pledged by it.
  const press = hers.filter(({ happened }) => happened.once === last?.once).map(({ event }) => event);
  const back: Happening[] = press.map((event) => ({ did: 'undone', event }));
  if (last?.did === 'pledged' && (state.pledges.get(asker.id)?.[last.kind] ?? 0) >= last.motifs) return back;
  if (last?.did === 'handed-in') {
    const pieces = state.pieces
      .filter((piece) => piece.maker === asker.id && piece.kind === last.kind && piece.state !== 'taken-back')
      .slice(-last.motifs);
    if (pieces.some((piece) => piece.state === 'accepted')) {
      throw new Problem('accepted-already', 'What you handed in last was accepted already.', {
        hint: askWho(state),
      });
    }
    if (pieces.length > 0 && pieces.every((piece) => piece.state === 'handed-in')) return back;
  }
  throw new Problem('nothing-to-take-back', 'You did nothing lately that could be taken back.', {
    hint: `A last pledge that you still hold can be, and a last hand-in until it is accepted. ${askWho(state)}`,
  });
}

/**
 * Takes back the latest press that still counts: all that came of it, such as the pledges of a share-out. Whoever does not
 * run the blanket takes back her own last pledge or hand-in.
 *
 * Throws Problem: nothing-to-take-back, accepted-already, kept-out.
 */
export function undo(state: GroupState, asker: Asker): Happening[] {
  if (!mayOrganise(state, asker)) {
    mustTakePart(state, asker.id);
    return takeBackOwn(state, asker);
  }
  const last = state.standing.at(-1);
  if (!last || last.event === 0) {
    throw new Problem('nothing-to-take-back', 'There is nothing to take back.', {
      hint: 'Opening the blanket cannot be taken back; close it instead.',
    });
  }
  return state.standing
    .filter(({ event, happened }) => event > 0 && happened.once === last.happened.once)
    .map(({ event }) => ({ did: 'undone', event }));
}
