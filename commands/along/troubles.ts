/** The teacher’s view: where the class got stuck, in numbers; who asked to be helped; what to show next. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { count } from '../../src/core/base/reader.ts';
import { NO_WAY, reckonOwn, type Own } from '../../src/core/along/own.ts';
import { mustTeach, partsBegun } from '../../src/core/along/rules.ts';
import { countByPart } from '../../src/core/along/progress.ts';
import { numbered, type AlongState } from '../../src/core/along/state.ts';
import { listHelpWanted, listTroubles, exampleToShow, type Trouble } from '../../src/core/along/troubles.ts';
import { kindOfPart } from '../../src/core/along/stuck.ts';
import type { BorderRounds } from '../../src/core/along/stuck-border.ts';
import { reckonPart } from '../../src/core/along/numbers.ts';
import { Working } from '../../src/core/base/working.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { action } from '../shared/actions.ts';
import { causeLines, departedHeadline } from '../shared/miscount-words.ts';
import { RowWord, rowWord, units } from '../shared/motif-words.ts';
import { askerOf } from '../shared/which-kept.ts';
import { JOINED } from './example.ts';
import { numberOf, partName } from './words.ts';
import { roundWords } from './stuck-border.ts';
import { byId, nameOption, whichAlong } from './which.ts';

/** Places told one by one. */
const TOLD = 8;

/** `row 7, increase missed` */
const placeWords = ({ row, slip }: Trouble, called: string) =>
  gather(row !== undefined && `${called} ${row}`, slip?.replaceAll('-', ' ')).join(', ') ||
  `no ${called} said`;

export const troubles = question({
  name: 'troubles',
  says: 'Teacher: where the class got stuck most, in numbers; who asked for help; what to show next',
  options: { name: nameOption },
  example: '',
  before: [
    ...JOINED,
    '/along stuck part:2 row:7 counts:"11 13 14"',
    'rowan: /along join',
    'rowan: /along stuck part:2 row:3 help:yes',
  ],
  refused: { line: 'name:"No such class"', option: 'name' },
  asked: {
    ways: [
      'stuck where',
      'stuck group',
      'stuck who',
      'stuck which',
      'stuck along group',
      'who help',
      'who help along',
      '?row stuck',
      'show next-week',
      'show along next-week',
    ],
    also: 'along part which need show group others row all mine how-many claim next-week',
    not: 'i-am-on my-part',
    saved: 'along',
    marks: { name: { takes: 'saved-along' } },
    phrases: ['where is everybody stuck', 'what should I show next week'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { state } = await whichAlong(context, name);
    mustTeach(state, askerOf(context));
    await breathe();
    const found = listTroubles(state);
    await breathe();
    const own = reckonOwn(state.plan, NO_WAY);
    await breathe();
    const calledAt = callingOf(state, own);
    // Hundreds of places and of makers are told with the numbers of their parts.
    const numbers = new Map(numbered(state).map(({ part, number }) => [part.id, number]));
    const numberAt = (part: number) => numbers.get(part) ?? 0;
    const told = found.map((trouble) => ({
      part: numberAt(trouble.part),
      row: trouble.row ?? null,
      slip: trouble.slip ?? null,
      makers: trouble.makers,
    }));
    await breathe();
    const help = listHelpWanted(state);
    await breathe();
    const progress = countByPart(state);
    await breathe();
    const [most] = found;
    const place = most && {
      kind: kindAt(state, own, most),
      rounds: roundsAt(state, own, most),
    };
    await breathe();
    const next = most && place && showNext(most, own, place);
    await breathe();
    return {
      headline: most
        ? `Most are stuck at ${placeOf(state, most).replace(/^P/, 'p')}, ${placeWords(most, calledAt(most))}: ${count(most.makers, 'maker')} of ${state.members.size}.`
        : `Nobody has been stuck in ${state.plan.name} so far.`,
      figures: [
        figure('places', 'Places where somebody was stuck', found.length),
        figure('helped', 'Who ask to be helped', help.length),
      ],
      lines: gather(
        found
          .slice(0, TOLD)
          .map(
            (trouble) =>
              `${placeOf(state, trouble)}, ${placeWords(trouble, calledAt(trouble))}: ${count(trouble.makers, 'maker')}`,
          ),
        found.length > TOLD && `… and ${found.slice(TOLD).length} more places.`,
        partsBegun(state, context.now).flatMap((part) => {
          const { notBegun } = progress.get(part.id) ?? { notBegun: 0 };
          return notBegun > 0 ? [`${partName(state, part)}: ${count(notBegun, 'maker')} not begun.`] : [];
        }),
        help.map(
          ({ maker, part, row, words }) =>
            `${state.names.get(maker) ?? 'A maker'} asks to be helped with part ${numberAt(part)}${row === undefined ? '' : `, ${calledAt({ part, row })} ${row}`}${words === undefined ? '' : `: “${words}”`}.`,
        ),
        next,
      ),
      data: { troubles: told, help: help.map(({ maker }) => state.names.get(maker) ?? 'a maker') },
      actions: gather(
        most &&
          action(
            'The part',
            'along plan',
            { part: numberOf(state, { id: most.part }), name: state.plan.name },
            byId({ id: most.part }),
          ),
      ),
      private: true,
    };
  },
});

const placeOf = (state: AlongState, { part }: Pick<Trouble, 'part'>) => {
  const found = state.parts.find(({ id }) => id === part);
  return found ? partName(state, found) : 'A part';
};

/** The kind of motif that a part is about. */
function kindAt(state: AlongState, own: Own, { part }: Pick<Trouble, 'part'>): number {
  const found = state.parts.find(({ id }) => id === part);
  return found ? kindOfPart(own, found, reckonPart(own, state.parts, found, new Working())) : 0;
}

/** The rounds of the border, where the trouble is with one of them. */
function roundsAt(
  state: AlongState,
  own: Own,
  { part, row }: Pick<Trouble, 'part' | 'row'>,
): BorderRounds | undefined {
  const found = state.parts.find(({ id }) => id === part);
  if (found?.work !== 'border') return undefined;
  const { border = [] } = reckonPart(own, state.parts, found, new Working());
  return row === undefined || row <= border.length ? border : undefined;
}

/** What is counted at a place: rounds in the border, else rows or rounds, as the kinds are worked. Hundreds of places are asked after. */
function callingOf(state: AlongState, own: Own): (trouble: Pick<Trouble, 'part' | 'row'>) => string {
  // Kinds may be worked in rows and in rounds.
  const called = [...new Set(own.spec.kinds.map((kind) => rowWord(planOf(kind))))].join(' or ');
  const rounds = own.spec.border.rounds.length;
  const borders = new Set(state.parts.flatMap(({ id, work }) => (work === 'border' ? [id] : [])));
  return ({ part, row }) => (borders.has(part) && (row === undefined || row <= rounds) ? 'round' : called);
}

interface Place {
  readonly kind: number;
  readonly rounds: BorderRounds | undefined;
}

/** What to show next: the row in the pattern, and the same slip worked as an example. */
function showNext(trouble: Trouble, own: Own, { kind, rounds }: Place): string[] {
  if (rounds) {
    const round = roundWords(rounds, trouble.row ?? 1, own.spec.border.corner);
    return round === undefined ? [] : [`To show next: ${round.replace(/^R/, 'r')}`];
  }
  const shown = exampleToShow(own, trouble, kind);
  if (shown === undefined)
    return ['To show next: ask those who are stuck for their row and counts, and show that row.'];
  const { motif, row, found } = shown;
  const plan = planOf(motif);
  const here = plan.rows[row - 1]?.count ?? 0;
  const { wrong } = found ?? {};
  return gather(
    `To show next: ${rowWord(plan)} ${row} of ${motif.name}, ${units(plan, here)} in the pattern.`,
    found &&
      wrong &&
      [
        `Worked as it goes wrong: ${departedHeadline(plan, motif.name, found, wrong)}`,
        causeLines(wrong.causes.filter(({ slip }) => slip === trouble.slip)),
      ].flat(),
    found === undefined &&
      `${RowWord(plan)}s from there: ${plan.rows
        .slice(row - 1, row + 1)
        .map(({ count: one }) => one)
        .join(' ')}.`,
  );
}
