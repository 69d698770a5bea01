/** How fast motifs come in, when it will be done, and how likely that is by the closing day. */
import { figure, gather, type Answer, type Figure } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { START_DAYS } from '../../src/core/group/at-work.ts';
import { FEW_PARCELS, reckonGroupPace, type GroupPace, findDayAfter } from '../../src/core/group/pace.ts';
import { mayOrganise } from '../../src/core/group/rules.ts';
import type { GroupState } from '../../src/core/group/state.ts';
import { count, forReader, num, when } from '../../src/core/base/reader.ts';
import { drawPace } from '../../src/pictures/pace.ts';
import { defined } from '../../src/core/base/defined.ts';
import { JOINED } from './example.ts';
import { askerOf } from '../shared/which-kept.ts';
import { nameOption, whichBlanket } from './which.ts';

/** Fewer a week than this is no number that anybody would say. */
const LEAST_SAID = 0.1;

const saidDay = (day: string | undefined) =>
  day === undefined ? 'some day more than ten years away' : when(day);

/** One sentence that answers: how far, when, and what the closing day needs. */
function headline({ plan, closes }: GroupState, pace: GroupPace, likely: string | undefined): string {
  const { done, toCome, forecast } = pace;
  if (toCome === 0) return `Every motif of ${plan.name} is handed in.`;
  const { needed, expected, chance } = forecast;
  const goal = when(closes ?? '');
  const wanted =
    needed === undefined
      ? ''
      : needed > (expected ?? 0)
        ? `; ${num(needed, 1)} a week would be needed for ${goal}`
        : `; ${weekly(needed)} a week would do for ${goal}`;
  const odds = chance === undefined || needed === undefined ? '' : ` (${num(chance, 0)} % likely)`;
  if (done === 0) return `Nothing is handed in yet; ${count(toCome, 'motif')} to come${wanted}${odds}.`;
  const goes =
    expected === undefined
      ? ', how fast is not known yet'
      : ` at about ${weekly(expected)} a week, done about ${saidDay(likely)}`;
  return `${count(done, 'motif')} in and ${num(toCome)} to come${goes}${wanted}${odds}.`;
}

const weekly = (motifs: number) => (motifs < LEAST_SAID ? `less than ${num(LEAST_SAID)}` : num(motifs, 1));

export const pace = question({
  name: 'pace',
  says: 'How fast motifs come in, what the closing day needs, and when it will be done',
  options: { name: nameOption },
  example: '',
  before: [
    ...JOINED,
    'rowan: /together pledge kind:furrow motifs:2',
    'rowan: /together handin kind:furrow motifs:2',
  ],
  refused: { line: 'name:"No such blanket"', option: 'name' },
  asked: {
    ways: ['pace', 'pace group', 'when pace', 'pace deadline', 'when done group', 'pace motif'],
    also: 'group deadline when motif blanket done how-far all close',
    not: 'row yarn weigh stitch reopen',
    saved: 'group',
    marks: { name: { takes: 'saved-group' } },
    phrases: ['will we be done in time', 'when will the group blanket be finished'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { state } = await whichBlanket(context, name);
    const mayKnow = mayOrganise(state, askerOf(context));
    const pace = reckonGroupPace(state, context.now);
    const { toCome, motifs, daysLeft, forecast, quiet, arrivals } = pace;
    const { ends, needed } = forecast;
    const [soonest, likely, latest] = [ends?.early, ends?.middle, ends?.late].map((days) =>
      findDayAfter(context.now, days),
    );
    const opened = new Date(state.standing.at(0)?.happened.at ?? context.now);
    const drawn = drawPace({
      title: state.plan.name,
      arrivals,
      today: pace.days,
      wanted: motifs,
      ends,
      daysLeft,
      closing: state.closes === undefined ? undefined : forReader(when(state.closes), context.reader),
      needed,
      dayWords: (day) => forReader(saidDay(findDayAfter(opened, day)), context.reader),
    });
    return {
      headline: headline(state, pace, likely),
      figures: paceFigures(pace),
      lines: gather(
        standingLines(state, pace),
        ends !== undefined &&
          `Four times in five it ends between ${saidDay(soonest)} and ${saidDay(latest)}${arrivals.length < FEW_PARCELS ? '; with every parcel that comes it will be known better' : ''}.`,
        mayKnow &&
          quiet.map(
            ({ name: maker, since, held }) =>
              `${maker} holds ${count(held, 'pledge')} and was last heard of ${when(since.slice(0, 10))}; perhaps a friendly word (for you only).`,
          ),
      ),
      working: pace.working.steps,
      assumptions:
        toCome === 0
          ? []
          : [
              `Everybody is taken to go on as since the beginning, by chance sooner or later, and who has not begun to begin; from ${count(START_DAYS, 'day')} after joining, silence counts. If people slow down, the end moves out. What one maker hands in on one day is one parcel.`,
            ],
      data: {
        soonest,
        likely,
        latest,
        ...defined({
          quiet: mayKnow ? quiet.map(({ name: maker, held }) => ({ maker, held })) : undefined,
        }),
      },
      files: [{ name: 'pace.svg', says: drawn.alt, content: drawn.svg }],
      // Who has gone quiet is for the organiser alone.
      private: mayKnow && quiet.length > 0,
    };
  },
});

const paceFigures = ({
  done,
  toCome,
  forecast: { rate, expected, needed, ends, chance },
}: GroupPace): Figure[] =>
  gather(
    figure('handed_in', 'Handed in or accepted', done),
    figure('to_come', 'Still to come', toCome),
    figure('per_week', 'A week so far', rate),
    figure('per_week_expected', 'A week expected', expected),
    figure('per_week_needed', 'A week needed', needed),
    ends !== undefined && [
      figure('early', 'Days to the end, at the soonest', ends.early),
      figure('likely', 'Days to the end, the middle', ends.middle),
      figure('late', 'Days to the end, at the latest', ends.late),
    ],
    figure('chance', 'Chance of the closing day', chance, '%'),
  );

/** What waits for the organiser, and whether the closing day is over. */
const standingLines = (state: GroupState, { done, waiting, toCome, daysLeft }: GroupPace): string[] =>
  gather(
    waiting > 0 &&
      `Of the ${num(done)} handed in, ${num(waiting)} ${waiting === 1 ? 'waits' : 'wait'} to be accepted; what is sent back comes once more.`,
    daysLeft !== undefined &&
      daysLeft <= 0 &&
      toCome > 0 &&
      `The closing day, ${when(state.closes ?? '')}, has passed; the organiser can move it with /host reopen.`,
  );
