/** Handing in, accepting, sending back. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { serverOf, type Context } from '../../src/chat/context.ts';
import { opt } from '../../src/chat/options.ts';
import { checkSide } from '../../src/core/group/size-check.ts';
import * as rules from '../../src/core/group/rules.ts';
import { openFor, pieceOf, type GroupState, type Piece } from '../../src/core/group/state.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { cm, count, g, num } from '../../src/core/base/reader.ts';
import { meanOf } from '../../src/core/yarn/weighings.ts';
import { photoLink, type GroupDoc } from '../../src/projects/groups.ts';
import { caution } from '../../src/standards/care.ts';
import { countBeyondPledge, pledgedOf, totalsOf } from '../../src/core/group/totals.ts';
import { action } from '../shared/actions.ts';
import { OPENED } from './example.ts';
import { chooseKind, manyOf, motifsOption, onlyKind } from './pledging.ts';
import { sideLines, sideWords } from './size-words.ts';
import { numbered } from './words.ts';
import { askerOf, doing } from '../shared/which-kept.ts';
import { kindOption, nameOption, whichBlanket } from './which.ts';

export const handin = question({
  name: 'handin',
  says: 'Hand in finished motifs, with their measured side',
  options: {
    kind: kindOption.optional(),
    motifs: motifsOption,
    side: opt.length('Their measured side, blocked if you blocked them', '15cm').optional(),
    weight: opt.weight('What they weigh, all of them together on the scale', '24g').optional(),
    hook: opt.hook('The hook you used, to be told which to try').optional(),
    photo: opt.photo('A picture of them, shown to everybody in the group’s channel').optional(),
    confirm: opt.yesno('yes hands in more than you pledged; without it you are asked').optional(),
    name: nameOption,
  },
  example: 'kind:furrow side:15.8cm',
  before: [...OPENED, '/together pledge kind:furrow motifs:2'],
  refused: { line: 'kind:furrow motifs:400', option: 'motifs' },
  changes: true,
  form: { title: 'Hand in finished motifs', asks: ['kind', 'motifs', 'side', 'weight', 'hook'] },
  asked: {
    ways: ['hand-in motif', 'hand-in @kind', 'hand-in <count>', 'hand-in'],
    also: 'motif done measure each group kind hook side mine',
    not: 'accept how-many leave row yarn hand-over',
    reports: true,
    saved: 'group',
    marks: {
      kind: { takes: 'saved-kind' },
      motifs: { takes: 'count', nouns: 'motif block kind', loose: true },
      side: { takes: 'length', near: 'measure each motif' },
      confirm: { never: true },
      weight: { takes: 'weight' },
      name: { takes: 'saved-group' },
    },
    phrases: ['handing in 2 furrow squares, 15.1 cm each'],
  },
  async answer({ kind, motifs, photo, confirm, name, ...measured }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    const channel = photo === undefined ? undefined : channelForPhoto(context, doc);
    const inReturn = (answer: Answer) => (channel === undefined ? answer : withoutPhoto(answer));
    const left = mayHandIn(state, context.maker.id);
    const meant = kind ?? onlyKind(state, left);
    if (meant === undefined) return inReturn(chooseWhich(state, { motifs, left, measured }));
    const which = rules.findKindNamed(state, meant);
    const many = manyOf(motifs, left(which));
    // What she holds is looked at in her turn: of two hand-ins at once, the second finds what the first has left.
    let asks: Answer | undefined;
    const { state: after, again } = await context.projects.groups.happen(doc.id, doing(context), (now) => {
      // What cannot be handed in at all is refused before anything is asked.
      const happens = rules.handIn(now, askerOf(context), which, many, measured);
      const held = pledgedOf(now, context.maker.id, which);
      const more = countBeyondPledge(now, context.maker.id, which, many);
      asks =
        more > 0 && confirm !== true
          ? askedFirst({ state: now, which, many, more, held, measured })
          : undefined;
      return asks ? [] : happens;
    });
    if (asks) return inReturn(asks);
    const pieces = latestHandedIn(after, context.maker.id, which).slice(-many);
    return {
      ...handedInWords(after, { which, many, pieces, again, measured }),
      data: { pieces },
      board: doc.id,
      // What arrives twice is shown once.
      ...(channel === undefined || again
        ? {}
        : {
            photo: {
              group: doc.id,
              channel,
              pieces,
              says: `${count(many, `${nameOf(after, which)} motif`)}, handed in by ${context.maker.name}`,
            },
          }),
    };
  },
});

/** What was said of the motifs: their side, what they weigh together, the hook. */
interface Measured {
  readonly side?: number | undefined;
  readonly weight?: number | undefined;
  readonly hook?: number | undefined;
}

const nameOf = ({ plan }: GroupState, kind: number) => plan.kinds[kind]?.name ?? '';

/** How many of a kind she may mean: what she pledged, or what is open where she pledged nothing. */
function mayHandIn(state: GroupState, maker: string): (kind: number) => number {
  const hers = (kind: number) => pledgedOf(state, maker, kind);
  return state.plan.kinds.some((_, kind) => hers(kind) > 0) ? hers : (kind) => openFor(state, kind);
}

/** Options as they would be typed again. */
const typedAgain = ({ side, weight }: Measured) => ({
  side: side === undefined ? undefined : (`${side}cm` as const),
  weight: weight === undefined ? undefined : (`${weight}g` as const),
});

/** Which kind is handed in, asked back. */
const chooseWhich = (
  state: GroupState,
  {
    motifs,
    left,
    measured,
  }: {
    readonly motifs: Parameters<typeof manyOf>[0];
    readonly left: (kind: number) => number;
    readonly measured: Measured;
  },
): Answer =>
  chooseKind(state, {
    verb: 'hand in',
    typed: '/together handin',
    motifs: manyOf(motifs),
    left,
    ask: (label, options) => action(label, 'together handin', { ...options, ...typedAgain(measured) }),
  });

/** The numbers of hers of a kind that wait, the latest last. */
const latestHandedIn = ({ pieces }: GroupState, maker: string, kind: number): number[] =>
  pieces
    .filter((piece) => piece.maker === maker && piece.kind === kind && piece.state === 'handed-in')
    .map(({ piece }) => piece);

interface HandedIn {
  readonly which: number;
  readonly many: number;
  readonly pieces: readonly number[];
  readonly again: boolean;
  readonly measured: Measured;
}

/** What is said of motifs that were handed in. */
function handedInWords(
  state: GroupState,
  { which, many, pieces, again, measured: { side, weight, hook } }: HandedIn,
): Answer {
  const check = side === undefined ? undefined : checkSide(state.plan, side, hook);
  const each = weight === undefined ? undefined : meanOf([{ weight, motifs: many }]);
  return {
    headline: `${again ? 'That was counted already: ' : ''}${count(many, 'motif')} of ${nameOf(state, which)} handed in to ${state.plan.name}, ${numbered(pieces)}${check?.flagged ? `; ${sideWords(check)}` : ''}.`,
    figures: gather(
      figure('handed_in', 'Waiting for the organiser', state.tally[which]?.handedIn ?? 0),
      figure('weight', 'Weight of one', each, 'g'),
      check && figure('off', 'Off the wanted side', check.percent, '%'),
      figure('suggested_hook', 'Hook to try', check?.flagged?.hook?.mm, 'mm'),
    ),
    lines: gather(
      pieces.length === 1
        ? `Write its number on its label: ${numbered(pieces)}.`
        : `Write the numbers on their labels, one each: ${numbered(pieces)}.`,
      check && sideLines(check, state.plan.side, hook),
      weight !== undefined &&
        each !== undefined &&
        `${many === 1 ? `It weighs ${g(weight)}` : `Together they weigh ${g(weight)}, ${g(each)} each`}: from that, the shopping lists learn how much yarn you use.`,
    ),
    working: check?.working.steps ?? [],
    assumptions: side === undefined ? [`Not measured; ${cm(state.plan.side)} is wanted.`] : [],
    cautions: check?.flagged?.blocks ? [caution('heat')] : [],
  };
}

/** Where a photo of hers is shown. Throws Problem: photo-in-server-only, photo-elsewhere, photo-not-allowed. */
function channelForPhoto({ pictured, place }: Context, { channel, board, thread }: GroupDoc): string {
  const option = 'photo';
  const hint = 'Hand in without it.';
  if (pictured !== true || serverOf(place) === undefined)
    throw new Problem('photo-in-server-only', 'A photo can be shown in a server only.', { option, hint });
  const where = channel ?? board?.channel;
  // Elsewhere nobody has said whether she may write where the group reads.
  if (where === undefined || (place.channel !== where && place.channel !== thread?.from)) {
    throw new Problem('photo-elsewhere', 'A photo is shown where the board stands, which is not here.', {
      option,
      hint: 'Hand in there, or without the photo.',
    });
  }
  if (place.mute === 'asker')
    throw new Problem('photo-not-allowed', 'You may not write here, so no photo of yours is shown.', {
      option,
      hint,
    });
  return where;
}

/** A question in return: what was attached is not at hand when it is answered. */
const withoutPhoto = (answer: Answer): Answer => ({
  ...answer,
  lines: gather(
    answer.lines,
    'The photo is not kept meanwhile: to show it, ask once more in full and attach it again.',
  ),
});

/** What was not pledged takes a place that is open to everybody: it may be a slip. */
function askedFirst({
  state,
  which,
  many,
  more,
  held,
  measured,
}: {
  readonly state: GroupState;
  readonly which: number;
  readonly many: number;
  readonly more: number;
  readonly held: number;
  readonly measured: Measured;
}): Answer {
  const kind = nameOf(state, which);
  const { side, weight } = typedAgain(measured);
  const given = { kind, name: state.plan.name, side };
  return {
    headline: `You pledged ${held === 0 ? `no ${kind}` : `${num(held)} of ${kind}`} in ${state.plan.name}. Hand in ${num(many)} all the same, and so take ${count(more, 'open place')}?`,
    lines: [`Nothing is handed in yet; confirm:yes hands ${many === 1 ? 'it' : 'them'} in.`],
    data: { pieces: [] },
    actions: gather(
      // What lay on the scale were all of them.
      action(many === 1 ? 'Hand it in' : `Hand in all ${num(many)}`, 'together handin', {
        ...given,
        motifs: many,
        confirm: true,
        weight,
      }),
      held > 0 && action(`Only the ${num(held)}`, 'together handin', { ...given, motifs: held }),
    ),
    private: true,
  };
}

/** `12 (furrow, rowan, 15.3 cm)`. */
function pieceWords(state: GroupState, { piece, kind, maker, side }: Piece): string {
  const parts = [state.plan.kinds[kind]?.name ?? '', state.names.get(maker) ?? 'a maker'];
  return `#${piece} (${gather(parts, side !== undefined && cm(side)).join(', ')})`;
}

/** What is said of a side that is off; undefined where it fits, or was not measured. */
function offOf(state: GroupState, { side }: Piece): string | undefined {
  const check = side === undefined ? undefined : checkSide(state.plan, side, undefined);
  return check?.flagged ? sideWords(check) : undefined;
}

const waitingWords = (state: GroupState, piece: Piece): string =>
  gather(pieceWords(state, piece), offOf(state, piece)).join(': ');

const waiting = (state: GroupState) => state.pieces.filter((piece) => piece.state === 'handed-in');
const HANDED_IN = [
  ...OPENED,
  '/together pledge kind:furrow motifs:2',
  '/together handin kind:furrow motifs:2 side:15.1cm',
];

export const accept = question({
  name: 'accept',
  says: 'Organiser: accept motifs that were handed in; without numbers, lists those that wait',
  options: {
    motifs: opt.numbersOrAll('Their numbers, like 3 5 7-9, or all that wait').optional(),
    confirm: opt.yesno('yes accepts those too whose side is off; without it you are asked').optional(),
    name: nameOption,
  },
  example: 'motifs:1',
  before: HANDED_IN,
  refused: { line: 'motifs:99', option: 'motifs' },
  changes: true,
  asked: {
    changesBy: ['motifs'],
    ways: ['accept', 'accept motif', 'accept <count|counts>', 'which accept'],
    also: 'motif which group show all place',
    not: 'send-back pattern terms parcel hand-in',
    saved: 'group',
    marks: {
      motifs: { takes: 'numbers', only: false },
      confirm: { never: true },
      name: { takes: 'saved-group' },
    },
    phrases: ['accept motifs 3 to 6', 'what is waiting to be accepted'],
  },
  async answer({ motifs: asked, confirm, name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    const wait = waiting(state);
    const motifs = asked === 'all' ? wait.map(({ piece }) => piece) : asked;
    if (motifs === undefined || motifs.length === 0) {
      const named = { name: state.plan.name };
      const fits = wait.filter((piece) => !offOf(state, piece));
      return {
        headline:
          wait.length === 0
            ? 'No motif waits to be accepted.'
            : `${count(wait.length, 'motif')} ${wait.length === 1 ? 'waits' : 'wait'} to be accepted.`,
        lines: wait.slice(0, 60).map((piece) => {
          const photo = doc.photos?.find(({ pieces }) => pieces.includes(piece.piece));
          return gather(waitingWords(state, piece), photo && photoLink(doc.server, photo)).join('; photo: ');
        }),
        data: { waiting: wait.map(({ piece }) => piece) },
        actions: gather(
          fits.length > 0 &&
            action(
              fits.length === wait.length ? 'Accept all' : `Accept the ${num(fits.length)} that fit`,
              'host accept',
              { motifs: fits.map(({ piece }) => piece).join(' '), ...named },
            ),
        ),
        menu: {
          ...action('Accept those that are chosen', 'host accept', named),
          says: 'Accept those that are chosen',
          option: 'motifs',
          // Those that will not fit stand apart, at the end.
          choices: [...fits, ...wait.filter((piece) => !fits.includes(piece))].map((piece) => ({
            value: String(piece.piece),
            label: waitingWords(state, piece),
          })),
        },
        private: true,
      };
    }
    const off = wait.filter((piece) => motifs.includes(piece.piece) && offOf(state, piece) !== undefined);
    if (off.length > 0 && confirm !== true && rules.mayOrganise(state, askerOf(context)))
      return offFirst(state, motifs, off);
    const { state: after } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      rules.accept(now, askerOf(context), motifs),
    );
    const { accepted, quota } = totalsOf(after);
    return {
      headline: `Accepted ${numbered(motifs)}; ${num(accepted)} accepted, ${num(quota)} wanted for the layout.`,
      figures: [figure('accepted', 'Accepted in all', accepted)],
      board: doc.id,
    };
  },
});

/** What will not fit is accepted knowingly or not at all. */
function offFirst(state: GroupState, motifs: readonly number[], off: readonly Piece[]): Answer {
  const named = { name: state.plan.name };
  const rest = motifs.filter((number) => off.every(({ piece }) => piece !== number));
  return {
    headline: `${numbered(off.map(({ piece }) => piece))} ${off.length === 1 ? 'is' : 'are'} off the wanted side of ${cm(state.plan.side)}. Accept ${motifs.length === 1 ? 'it' : 'them all'} all the same?`,
    lines: [
      'Nothing is accepted yet; confirm:yes accepts them.',
      ...off.map((piece) => waitingWords(state, piece)),
    ],
    data: { waiting: off.map(({ piece }) => piece) },
    actions: gather(
      rest.length > 0 &&
        action(`Only the ${num(rest.length)} that fit`, 'host accept', { motifs: rest.join(' '), ...named }),
      action('Accept all the same', 'host accept', { motifs: motifs.join(' '), confirm: true, ...named }),
    ),
    private: true,
  };
}

export const sentBack = question({
  name: 'return',
  says: 'Organiser: send motifs back with a reason; they are their makers’ again',
  options: {
    motifs: opt.numbers('Their numbers, like 3 5 7-9'),
    reason: opt.text('Why, in a friendly sentence', { max: 300, example: 'one corner has come loose' }),
    name: nameOption,
  },
  example: 'motifs:1 reason:"one corner has come loose"',
  before: HANDED_IN,
  refused: { line: 'motifs:99 reason:none', option: 'motifs' },
  changes: true,
  asked: {
    ways: ['send-back motif', 'send-back <count|counts>', 'send-back'],
    also: 'motif corner join why place weigh mistake',
    not: 'yarn shop parcel',
    saved: 'group',
    marks: {
      motifs: { takes: 'numbers', only: false, nouns: 'motif' },
      reason: {
        capture:
          /\b(?:because(?:\s+of)?|as|since|reason:?|for being|:)\s+(?:"([^"]+)"|“([^”]+)”|(.+?)[.!]?$)/iu,
      },
      name: { takes: 'saved-group' },
    },
    phrases: ['send back motif 4 because "one corner has come loose"'],
  },
  async answer({ motifs, reason, name }, context): Promise<Answer> {
    const { doc } = await whichBlanket(context, name);
    const { state } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      rules.sendBack(now, askerOf(context), motifs, reason),
    );
    const makers = new Set(
      motifs.map((number) => state.names.get(pieceOf(state, number)?.maker ?? '') ?? 'a maker'),
    );
    const back = motifs.map((number) => pieceOf(state, number)).filter((piece) => piece !== undefined);
    return {
      tells: [...new Set(back.map(({ maker }) => maker))].map((maker) => ({
        maker,
        words: `${numbered(back.filter((piece) => piece.maker === maker).map(({ piece }) => piece))} of yours came back from ${state.plan.name}: ${rules.endless(reason)}. /together mine has it.`,
        channel: doc.channel,
      })),
      // It is told to its maker, not to the channel.
      private: true,
      headline: `Sent back ${numbered(motifs)} to ${[...makers].join(', ')}: ${rules.endless(reason)}.`,
      data: { returned: motifs },
      board: doc.id,
    };
  },
});
