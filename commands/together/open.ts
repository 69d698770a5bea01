/** A group blanket, opened from a saved one. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { findUnevenKinds } from '../../src/core/blanket/pieces.ts';
import { careFor } from '../../src/core/size/cautions.ts';
import { planGroup } from '../../src/core/group/open.ts';
import { cm, count, when } from '../../src/core/base/reader.ts';
import { findBlanket, specOf } from '../../src/projects/blankets.ts';
import { edgesOf } from '../../src/core/group/totals.ts';
import { sum } from '../../src/core/base/sum.ts';
import { action } from '../shared/actions.ts';
import { unevenWords } from '../shared/uneven-words.ts';
import { doing } from '../shared/which-kept.ts';
import { mayHaveThread, noBoardHere } from './words.ts';

export const open = question({
  name: 'open',
  says: 'Opens a group blanket from a saved one: quotas by kind, spares, a closing day; posts the board',
  options: {
    blanket: opt
      .text('A blanket you saved; the current one if not given', { max: LONGEST_NAME, example: 'Bean rows' })
      .optional(),
    name: opt
      .text('What the group blanket is called; the saved one’s name if not given', { max: LONGEST_NAME })
      .optional(),
    spares: opt
      .whole(
        {
          says: 'Motifs of each kind beyond what the layout needs',
          assumed: 'No spares, as none were asked for.',
        },
        { min: 0, max: 100, example: '1' },
      )
      .default(0),
    closes: opt.day('The day by which motifs are wanted').optional(),
    side: opt
      .length('What one motif should measure; reckoned from the motif if not given', '15cm')
      .optional(),
    tolerance: opt
      .percent(
        {
          says: 'How far off a side may be before it is flagged',
          assumed: 'A side may be 3 % off before it is flagged, as nothing else was said.',
        },
        { example: '3' },
      )
      .default(3),
    who: opt
      .choice(
        { says: 'Who may join', assumed: 'Anyone may join, as nothing else was said.' },
        [
          { value: 'anyone', label: 'anyone' },
          { value: 'named', label: 'only whom the organiser names' },
        ],
        'anyone',
      )
      .default('anyone'),
  },
  example: 'name:"Bean row throw" spares:1 closes:2031-05-31',
  before: [
    '/motif define name:furrow shape:diagonal size:12 colours:"12 rows moss, 12 rows sand" gauge:13x10',
    '/motif define name:trellis shape:diagonal size:12 colours:"12 rows moss, 12 rows plum" gauge:13x10',
    '/blanket start name:"Bean rows" kinds:"furrow, trellis" columns:3 rows:4',
  ],
  refused: { line: 'blanket:nothing', option: 'blanket' },
  changes: true,
  asked: {
    ways: ['open group', 'new group', 'open group blanket', 'open blanket group', 'open group blanket mine'],
    also: 'blanket group new spare each deadline close rename mine motif mean',
    not: 'reopen claim take-part leave picture',
    marks: {
      blanket: { takes: 'saved-blanket' },
      name: {
        capture:
          /\b(?:called|named)\s+(?:"([^"]+)"|“([^”]+)”|([\p{L}'’ -]+?)(?=\s*(?:[.,;:?!]|$|\bwith\b|\bfrom\b)))/iu,
      },
      spares: { takes: 'count', nouns: 'spare', near: 'spare', only: true },
      tolerance: { never: true },
      who: { never: true },
      side: { takes: 'length', near: 'motif each', only: true },
    },
    phrases: ['open a group blanket from my blanket, closing on 31 May 2031'],
  },
  async answer({ blanket, name, spares, closes, side, tolerance, who }, context): Promise<Answer> {
    const doc = await context.projects.maker(context.maker.id, context.maker.name);
    const saved = findBlanket(doc, blanket, 'blanket');
    const { plan, working, sideTaken } = planGroup({
      ...specOf(doc, saved),
      name: name ?? saved.name,
      columns: saved.columns,
      rows: saved.rows,
      layout: saved.layout,
      spares,
      side,
      tolerance,
      closes,
      joinable: who,
      today: context.now.toISOString().slice(0, 10),
    });
    const { mute } = context.place;
    if (mute === 'asker') {
      throw new Problem(
        'may-not-write-here',
        'The board would stand in this channel, where you may not write.',
        {
          hint: 'Open the blanket in a channel where you may.',
        },
      );
    }
    const { width, height } = edgesOf(plan);
    const { id } = await context.projects.groups.open(context.place, plan, doing(context));
    const motifs = sum(plan.kinds.flatMap(({ quota, spares: more }) => [quota, more]));
    return {
      headline: `${plan.name} is open: ${count(motifs, 'motif')} of ${count(plan.kinds.length, 'kind')}, ${cm(plan.side)} along a side${closes === undefined ? '' : `, by ${when(closes)}`}.`,
      figures: [
        figure('motifs', 'Motifs wanted, spares with them', motifs),
        figure('side', 'Side of one', plan.side, 'cm'),
      ],
      lines: gather(
        plan.kinds.map(
          (kind) =>
            `${kind.name}: ${kind.quota}${kind.spares > 0 ? ` and ${count(kind.spares, 'spare')}` : ''}`,
        ),
        mute === 'bot' && noBoardHere(context.place),
      ),
      cautions: gather(careFor(width, height), unevenWords(findUnevenKinds(plan.kinds))),
      working: working.steps,
      assumptions:
        sideTaken === undefined
          ? []
          : [`A side of ${cm(plan.side)}, as ${sideTaken} for ${plan.kinds[0]?.name ?? plan.name}.`],
      data: {
        kinds: plan.kinds.map(({ name: kind, quota, spares: more }) => ({ name: kind, quota, spares: more })),
      },
      actions: gather(
        action('Pledge motifs', 'together pledge', { name: plan.name }, { forAnyone: true }),
        action('See the board', 'together board', { name: plan.name }, { forAnyone: true }),
        mayHaveThread(context.place) &&
          action('Give it a thread', 'host announce', { name: plan.name, thread: true }),
      ),
      board: id,
    };
  },
});
