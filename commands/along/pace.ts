/** How the class comes along, and she herself among them. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { count, hours, num, when } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { reckonOwn } from '../../src/core/along/own.ts';
import { reckonHoursLeft, USUAL_PACE } from '../../src/core/along/numbers.ts';
import { readPace } from '../../src/core/along/pace.ts';
import { action } from '../shared/actions.ts';
import { JOINED } from './example.ts';
import { nameOption, whichAlong } from './which.ts';

export const pace = question({
  name: 'pace',
  says: 'How the class comes along, how far you are yourself, and the hours you have left',
  options: { name: nameOption },
  example: '',
  before: JOINED,
  refused: { line: 'name:"No such class"', option: 'name' },
  asked: {
    ways: [
      'behind',
      'behind along',
      'how-far behind',
      'pace along',
      '?part behind',
      '?part done',
      '?part left',
      '?minute left along',
      'how-long left along',
    ],
    also: 'along part mine done left group minute how-many how-long how-far all still how-to claim',
    not: 'who row stitch yarn others each deadline',
    saved: 'along',
    marks: { name: { takes: 'saved-along' } },
    phrases: ['am I behind with the make-along', 'how many parts have I done'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { state } = await whichAlong(context, name);
    const { id } = context.maker;
    const { givenOut, done, behind, middle, upToDate, ends } = readPace(state, id, context.now);
    const working = new Working();
    const way = state.members.get(id);
    const own = way && reckonOwn(state.plan, way);
    await breathe();
    const left = own && reckonHoursLeft(own, state, id, working);
    const { size: makers } = state.members;
    return {
      headline:
        done === undefined
          ? `${num(givenOut)} of ${num(state.parts.length)} parts are given out; most have done ${num(middle)} or more.`
          : `You have done ${num(done)} of ${num(state.parts.length)} parts; ${behind === 0 ? 'nothing that is given out waits for you' : `${count(behind ?? 0, 'part')} that ${behind === 1 ? 'is' : 'are'} given out ${behind === 1 ? 'waits' : 'wait'} for you`}.`,
      figures: gather(
        figure('given_out', 'Given out', givenOut),
        figure('done', 'Done by you', done),
        figure('behind', 'Waiting for you', behind),
        figure('middle', 'Done by the middle one of the class', middle),
        figure('up_to_date', 'Makers with nothing waiting', upToDate),
        figure('hours_left', 'Hours of motifs left for you', left),
      ),
      lines: gather(
        upToDate === 0
          ? 'Nobody is up to date yet.'
          : `${num(upToDate)} of ${count(makers, 'maker')} ${upToDate === 1 ? 'is' : 'are'} up to date.`,
        left !== undefined &&
          `About ${hours(left)} of motifs left for you${way?.perMinute === undefined ? `, at ${USUAL_PACE} stitches a minute` : ', at your pace'}; ends, joining and border come on top.`,
        ends !== undefined && `The last part is given out on ${when(ends)}.`,
      ),
      working: working.steps,
      actions: [action('My part', 'along mine', { name: state.plan.name })],
    };
  },
});
