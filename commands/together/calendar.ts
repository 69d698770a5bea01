/** The closing day as a calendar file, and the day on which the blanket was opened. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { count } from '../../src/core/base/reader.ts';
import { writeCalendar } from '../../src/core/base/calendar.ts';
import { fileName } from '../shared/file-name.ts';
import { OPENED } from './example.ts';
import { nameOption, whichBlanket } from './which.ts';

export const calendar = question({
  name: 'calendar',
  says: 'The closing day as a calendar file, for any calendar that reads iCalendar',
  options: { name: nameOption },
  example: '',
  before: OPENED,
  refused: { line: 'name:"No such blanket"', option: 'name' },
  async answer({ name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    const { name: called } = state.plan;
    const opened = state.standing.at(0)?.happened.at.slice(0, 10);
    if (state.closes === undefined)
      throw new Problem('no-closing-day', `${called} has no closing day.`, {
        option: 'name',
        hint: 'The organiser sets one with /host reopen closes: and a day.',
      });
    const days = gather(
      opened !== undefined && { uid: `${doc.id}.opened@loopwright`, day: opened, title: `${called} is open` },
      {
        uid: `${doc.id}.closes@loopwright`,
        day: state.closes,
        title: `${called}: motifs are wanted by today`,
      },
    );
    return {
      headline: `${count(days.length, 'day')} of ${called}, for your calendar.`,
      figures: [figure('days', 'Days', days.length)],
      files: [
        {
          name: `${fileName(called)}.ics`,
          says: `The days of ${called} as an iCalendar file`,
          content: await writeCalendar({
            name: called,
            days,
            changed: doc.events.at(-1)?.at ?? context.now.toISOString(),
          }),
        },
      ],
    };
  },
});
