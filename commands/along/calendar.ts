/** The days of the parts as a calendar file. */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { forReader } from '../../src/core/base/reader.ts';
import { writeCalendar } from '../../src/core/base/calendar.ts';
import { Working } from '../../src/core/base/working.ts';
import { NO_WAY, reckonOwn } from '../../src/core/along/own.ts';
import { reckonPart } from '../../src/core/along/numbers.ts';
import { fileName } from '../shared/file-name.ts';
import { OPENED } from './example.ts';
import { asksWords, partName } from './words.ts';
import { nameOption, whichAlong } from './which.ts';

export const calendar = question({
  name: 'calendar',
  says: 'The days of the parts as a calendar file, for any calendar that reads iCalendar',
  options: { name: nameOption },
  example: '',
  before: OPENED,
  refused: { line: 'name:"No such class"', option: 'name' },
  asked: {
    ways: ['calendar along', 'calendar part', 'calendar my-part'],
    also: 'along part mine when all show deadline',
    saved: 'along',
    marks: { name: { takes: 'saved-along' } },
    phrases: ['calendar of the make-along'],
  },
  async answer({ name }, context): Promise<Answer> {
    const { doc, state } = await whichAlong(context, name);
    const own = reckonOwn(state.plan, NO_WAY);
    const { name: called } = state.plan;
    const content = await writeCalendar({
      name: called,
      changed: doc.events.at(-1)?.at ?? context.now.toISOString(),
      days: state.parts.map((part) => ({
        uid: `${doc.id}.part-${part.id}@loopwright`,
        day: part.from,
        title: `${called}: ${partName(state, part)}`,
        says: forReader(
          asksWords(own, part, reckonPart(own, state.parts, part, new Working())),
          context.reader,
        ),
      })),
    });
    return {
      headline: `The ${state.parts.length} days of ${called}, for your calendar.`,
      figures: [figure('days', 'Days', state.parts.length)],
      lines: [
        'Taken in again after the teacher has moved a part, it changes that day instead of adding another.',
      ],
      files: [
        { name: `${fileName(called)}.ics`, says: `The days of ${called} as an iCalendar file`, content },
      ],
    };
  },
});
