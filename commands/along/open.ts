/** A make-along, opened from a saved blanket or motif: everybody makes her own, part by part. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import type { Context } from '../../src/chat/context.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { when } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { countLaid } from '../../src/core/blanket/layout.ts';
import { alone, planAlong, type Pattern } from '../../src/core/along/open.ts';
import { NO_WAY, reckonOwn } from '../../src/core/along/own.ts';
import { MOST_SHARES } from '../../src/core/along/propose.ts';
import { readEvery } from '../../src/core/along/read-parts.ts';
import { reckonPart } from '../../src/core/along/numbers.ts';
import { readZone } from '../../src/core/along/zones.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { findBlanket, specOf } from '../../src/projects/blankets.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { action, form } from '../shared/actions.ts';
import { doing } from '../shared/which-kept.ts';
import { asksWords, givenOut } from './words.ts';
import { unevenWords } from '../shared/uneven-words.ts';
import { JOIN_ASKS } from './which.ts';

/** Parts told one by one; the rest is asked for. */
const TOLD = 20;

export const open = question({
  name: 'open',
  says: 'Opens a make-along from a saved blanket or motif: parts with their days, each maker’s own numbers',
  options: {
    blanket: opt
      .text('A blanket you saved; the current one if neither is given', {
        max: LONGEST_NAME,
        example: 'Bean rows',
      })
      .optional(),
    motif: opt
      .text('A motif you saved, where one motif is all', { max: LONGEST_NAME, example: 'furrow' })
      .optional(),
    starts: opt.day('The day of the first part', '2031-01-06').optional(),
    every: opt
      .text(
        {
          says: 'How often a part is given out: week, 2 weeks, 10 days',
          assumed: 'A part a week, as nothing else was said.',
        },
        { max: 30, example: 'week' },
      )
      .default('week'),
    name: opt
      .text('What the make-along is called; the saved one’s name if not given', {
        max: LONGEST_NAME,
        example: 'Bean row class',
      })
      .optional(),
    shares: opt
      .whole('How many parts the motifs are shared over; by their stitches if not given', {
        max: MOST_SHARES,
        example: '4',
      })
      .optional(),
    list: opt
      .text('Your own parts instead, each with its day: 2031-01-06 swatch; 2031-01-13 first square', {
        max: 2000,
        example: '2031-01-06 swatch; 2031-01-13 first square',
      })
      .optional(),
    hour: opt
      .whole(
        { says: 'The hour of the day at which a part is given out', assumed: '' },
        { min: 0, max: 23, example: '9' },
      )
      .default(9),
    zone: opt
      .text(
        {
          says: 'The time zone of that hour, like Europe/Berlin',
          assumed:
            'The hour is that of UTC, as no time zone was given: /along part zone:Europe/Berlin sets it.',
        },
        { max: 60, example: 'Europe/Berlin' },
      )
      .default('UTC'),
  },
  example: 'blanket:"Bean rows" name:"Bean row class" starts:2031-01-06 every:week',
  before: [
    '/motif define name:furrow shape:diagonal size:12 colours:"12 rows moss, 12 rows sand" gauge:13x10',
    '/motif define name:trellis shape:diagonal size:12 colours:"12 rows moss, 12 rows plum" gauge:13x10',
    '/blanket start name:"Bean rows" kinds:"furrow, trellis" columns:3 rows:4',
  ],
  refused: { line: 'blanket:nothing starts:2031-01-06', option: 'blanket' },
  changes: true,
  async answer({ blanket, motif, starts, every, name, shares, list, hour, zone }, context): Promise<Answer> {
    const { pattern, called } = await patternOf(context, { blanket, motif });
    const plan = planAlong({
      pattern,
      name: name ?? called,
      starts,
      every: readEvery(every),
      shares,
      list,
      hour,
      zone: readZone(zone),
      today: context.now.toISOString().slice(0, 10),
    });
    const working = new Working();
    await breathe();
    const own = reckonOwn(plan, NO_WAY);
    await breathe();
    const parts = plan.parts.map((part) => ({
      part,
      asks: asksWords(own, part, reckonPart(own, plan.parts, part, working)),
    }));
    const { mute } = context.place;
    if (mute === 'asker')
      throw new Problem(
        'may-not-write-here',
        'The parts would be given out in this channel, where you may not write.',
        {
          hint: 'Open the make-along in a channel where you may.',
        },
      );
    const { id, state } = await context.projects.alongs.open(context.place, plan, doing(context));
    const [first] = state.parts;
    const last = state.parts.at(-1);
    return {
      headline: `${plan.name} is open: ${state.parts.length} parts${first && last ? `, the first on ${when(first.from)}, the last on ${when(last.from)}` : ''}.`,
      figures: [figure('parts', 'Parts', state.parts.length)],
      lines: gather(
        parts
          .slice(0, TOLD)
          .map(({ part, asks }, index) => `${index + 1}. ${when(part.from)}, ${part.title}: ${asks}`),
        parts.length > TOLD && `… and ${parts.slice(TOLD).length} more: /along plan.`,
        mute === 'bot' &&
          'Parts cannot be posted here yet: this bot may not write in this channel. They wait until it may.',
      ),
      assumptions: gather(
        first && `A part is given out at ${hour}:00 ${plan.zone}; the first on ${givenOut(state, first)}.`,
        list === undefined &&
          'The parts are a proposal, from the stitches there are: /along part changes, moves, adds or removes one.',
      ),
      working: working.steps,
      // What puckers in the teacher's hands puckers in those of her whole class.
      cautions: unevenWords(own.pieces.uneven),
      data: {
        parts: parts.map(({ part, asks }, index) => ({
          number: index + 1,
          title: part.title,
          from: part.from,
          asks,
        })),
      },
      actions: [
        form('Take part', 'along join', { name: plan.name }, JOIN_ASKS, { forAnyone: true }),
        action('All parts', 'along plan', { name: plan.name }, { forAnyone: true }),
      ],
      along: id,
    };
  },
});

/** What is made along, as it is saved now. */
async function patternOf(
  { projects, maker }: Context,
  { blanket, motif }: { blanket?: string | undefined; motif?: string | undefined },
): Promise<{ pattern: Pattern; called: string }> {
  const doc = await projects.maker(maker.id, maker.name);
  if (motif !== undefined) {
    if (blanket !== undefined)
      throw new Problem('pattern-given-twice', 'What is made is given twice, a blanket and a motif.', {
        option: 'motif',
        hint: 'Give one of them.',
      });
    const found = findMotif(doc, motif, 'motif');
    return { pattern: alone(found), called: found.name };
  }
  const saved = findBlanket(doc, blanket, 'blanket');
  return {
    pattern: {
      ...specOf(doc, saved),
      columns: saved.columns,
      rows: saved.rows,
      counts: countLaid(saved.layout, saved.kinds.length),
      setting: saved.setting,
    },
    called: saved.name,
  };
}
