/** The teacher’s hand on the parts: changed, moved, added, removed, taken back, posted anew; their hour and zone. */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { when } from '../../src/core/base/reader.ts';
import { WORKS, type Happening, type Part } from '../../src/core/along/events.ts';
import * as rules from '../../src/core/along/rules.ts';
import { workIn } from '../../src/core/along/read-parts.ts';
import type { AlongState } from '../../src/core/along/state.ts';
import { readZone } from '../../src/core/along/zones.ts';
import type { OptionsOf } from '../../src/chat/command.ts';
import type { Context } from '../../src/chat/context.ts';
import type { AlongDoc } from '../../src/projects/alongs.ts';
import { LONGEST_ASKS } from '../../src/projects/along-schema.ts';
import { action } from '../shared/actions.ts';
import { askerOf, doing } from '../shared/which-kept.ts';
import { OPENED } from './example.ts';
import { givenOut, numberOf, partName } from './words.ts';
import { byId, nameOption, partOption, whichAlong } from './which.ts';

export const part = question({
  name: 'part',
  says: 'Teacher: change, move, add or remove a part, take it back or post it anew; set the hour',
  options: {
    part: partOption('Which part, by its number').optional(),
    do: opt
      .choice(
        { says: 'What to do with it', assumed: '' },
        [{ value: 'change' }, { value: 'add' }, { value: 'remove' }],
        'change',
      )
      .default('change'),
    title: opt.text('What it is called', { max: LONGEST_NAME, example: 'Border and blocking' }).optional(),
    from: opt.day('The day it is given out', '2031-01-27').optional(),
    rest: opt
      .yesno({ says: 'Whether the parts after it move by as many days', assumed: '' }, 'no')
      .default(false),
    asks: opt
      .text('What it asks, beside what follows from the work', {
        max: LONGEST_ASKS,
        example: 'Bring your swatch',
      })
      .optional(),
    work: opt
      .choice(
        'What is done in a part that is added; read off its title if not given',
        WORKS.map((value) => ({ value })),
        'border',
      )
      .optional(),
    post: opt
      .choice(
        'A part that was given out: take it back, or post it anew',
        [
          { value: 'back', label: 'take it back' },
          { value: 'anew', label: 'post it anew' },
        ],
        'back',
      )
      .optional(),
    hour: opt
      .whole('The hour of the day at which parts are given out', { min: 0, max: 23, example: '18' })
      .optional(),
    zone: opt
      .text('The time zone of that hour, like Europe/Berlin', { max: 60, example: 'Europe/Berlin' })
      .optional(),
    name: nameOption,
  },
  example: 'part:4 from:2031-01-28 asks:"Bring your swatch"',
  before: OPENED,
  refused: { line: 'part:4 from:2031-03-30', option: 'from' },
  changes: true,
  async answer(given, context): Promise<Answer> {
    const { doc, state } = await whichAlong(context, given.name);
    const meant = given.part === undefined ? undefined : rules.partNamed(state, given.part);
    const { state: after, happened } = await context.projects.alongs.happen(doc.id, doing(context), (now) => {
      const changes = changesOf(now, given, { meant, asker: askerOf(context), now: context.now });
      if (changes.some(speaks)) mustSpeakThere(doc, context);
      return changes;
    });
    const added = happened.flatMap((one) => (one.did === 'part-added' ? [one.part] : []))[0];
    const still = added ?? after.parts.find(({ id }) => id === meant?.id);
    const { name: called } = after.plan;
    return {
      headline: headlineOf(after, happened, { meant, still }),
      lines: gather(
        still &&
          !happened.some(({ did }) => did === 'taken-back') &&
          `It is given out on ${givenOut(after, still)}.`,
        happened.some((one) => one.did === 'part-changed' && one.after !== undefined) &&
          after.parts.map((one) => `${numberOf(after, one)}. ${when(one.from)}, ${one.title}`),
      ),
      data: {
        parts: after.parts.map((one) => ({
          number: numberOf(after, one),
          title: one.title,
          from: one.from,
          asks: one.asks ?? '',
        })),
      },
      actions: gather(
        still &&
          action('The part', 'along plan', { part: numberOf(after, still), name: called }, byId(still)),
        action('All parts', 'along plan', { name: called }),
      ),
      along: doc.id,
    };
  },
});

/** Whether it puts words of the teacher’s before the channel. */
const speaks = (one: Happening): boolean =>
  one.did === 'part-added' ||
  one.did === 'post-anew' ||
  (one.did === 'part-changed' && (one.title !== undefined || one.asks !== undefined));

/**
 * What this bot posts for somebody it posts only where she may write herself, and only there is it known; a manager of the server may
 * anywhere. Throws Problem: part-from-elsewhere, may-not-write-here.
 */
function mustSpeakThere({ channel }: AlongDoc, { place }: Context): void {
  if (channel === undefined || place.manager) return;
  if (place.channel !== channel)
    throw new Problem('part-from-elsewhere', 'What is posted in the make-along’s channel is said there.', {
      hint: 'Ask the same in its channel. Days can be moved, and parts taken back or removed, from anywhere.',
    });
  if (place.mute === 'asker')
    throw new Problem(
      'may-not-write-here',
      'The part would be posted in this channel, where you may not write.',
      {
        hint: 'Days can be moved, and parts taken back or removed, all the same.',
      },
    );
}

type GivenPart = OptionsOf<{ options: typeof part.options }>;

/** What follows from what is given. Throws Problem: nothing-to-change, part-missing, title-missing, day-missing, and those of the rules. */
function changesOf(
  state: AlongState,
  given: GivenPart,
  { meant, asker, now }: { meant: Part | undefined; asker: rules.Asker; now: Date },
): readonly Happening[] {
  rules.mustTeach(state, asker);
  const { do: what, title, from, rest, asks, work, post, hour, zone } = given;
  const set =
    hour === undefined && zone === undefined
      ? []
      : rules.setHour(state, asker, hour ?? state.hour, zone === undefined ? state.zone : readZone(zone));
  if (what === 'add') {
    if (title === undefined)
      throw missing('title', 'What the new part is called is not said.', 'title:"Border and blocking"');
    if (from === undefined) throw missing('from', 'The day of the new part is not said.', 'from:2031-03-10');
    return [...set, ...rules.addPart(state, asker, { title, asks, from, work: work ?? workIn(title) }, now)];
  }
  const changes = [title, from, asks, post].some((one) => one !== undefined) || what === 'remove';
  if (!changes) {
    if (hour !== undefined || zone !== undefined) return set;
    throw new Problem('nothing-to-change', 'What is to be changed is not said.', {
      option: 'title',
      hint: 'Give title, from, asks, do:remove, post:back or post:anew; or hour and zone.',
    });
  }
  if (meant === undefined) throw missing('part', 'Which part is meant is not said.', 'part:4');
  const here = rules.partStill(state, meant);
  if (what === 'remove') return [...set, ...rules.removePart(state, asker, here)];
  const posting =
    post === undefined
      ? []
      : post === 'back'
        ? rules.takeBackPart(state, asker, here)
        : rules.postAnew(state, asker, here);
  return [
    ...set,
    ...posting,
    ...rules.changePart(state, asker, here, { title, asks, from, rest, takenBack: post === 'back' }, now),
  ];
}

const missing = (option: string, sentence: string, example: string) =>
  new Problem(`${option}-missing`, sentence, { option, hint: `Like ${example}.` });

function headlineOf(
  after: AlongState,
  happened: readonly Happening[],
  { meant, still }: { meant: Part | undefined; still: Part | undefined },
): string {
  const did = new Set(happened.map((one) => one.did));
  if (did.has('part-added') && still) return `${partName(after, still)} is added.`;
  if (did.has('part-removed'))
    return `${meant?.title ?? 'The part'} is removed; ${after.parts.length} parts are left.`;
  if (did.has('taken-back') && still)
    return `${partName(after, still)} is taken back; it is not given out again before you say post:anew.`;
  if (did.has('post-anew') && still) return `${partName(after, still)} will be posted anew.`;
  if (did.has('part-changed') && still) return `${partName(after, still)} is changed.`;
  if (did.has('hour-set')) return `Parts are given out at ${after.hour}:00 ${after.zone} from now on.`;
  return 'Nothing was changed.';
}
