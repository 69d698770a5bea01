/** How are increases or decreases spread evenly over a row? */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { completeCounts, readChange, spreadChanges, writeSegment } from '../../src/core/rows/spacing.ts';
import { count } from '../../src/core/base/reader.ts';

/** An instruction of more stretches than this is told line by line under the headline. */
const IN_ONE_BREATH = 3;

export const spread = question({
  name: 'spread',
  says: 'Increases or decreases spread evenly over a row or round, as an instruction to work',
  options: {
    from: opt.whole('Stitches there are', { max: 2000, example: '40' }),
    to: opt.whole('Stitches there should be', { max: 4000, example: '48' }),
    worked: opt
      .choice(
        { says: 'Flat in rows, or in the round; flat if not given', assumed: 'Worked flat.' },
        ['flat', 'round'],
        'round',
      )
      .default('flat'),
  },
  example: 'from:40 to:48 worked:round',
  refused: { line: 'from:40 to:81', option: 'to' },
  asked: {
    ways: [
      'increase evenly',
      'decrease evenly',
      'increase stitch',
      'decrease stitch',
      'evenly <counts>',
      'evenly stitch',
      'evenly across',
      'increase round',
      'decrease round',
      'evenly <count>',
      'stitch wish',
    ],
    also: 'border row round turned stitch across where pattern getting wanted getting total need left how-many',
    not: 'motif gauge ball yarn repeat weigh blanket group',
    marks: {
      from: {
        takes: 'count',
        nouns: 'stitch across row round',
        lead: 'from over across a_row_of a_round_of row_of round_of out_of total_of my have got on with into in',
      },
      to: {
        takes: 'count',
        nouns: 'stitch',
        lead: 'to need want have_to into wanting should_be needs',
        led: true,
      },
      worked: { choices: { round: 'turned round evenly_around around_evenly all_around' }, with: 'first' },
    },
    extras: {
      // “increase 8”, “increase by 8”; “increase 60 to 68” is told apart below.
      more: {
        takes: 'count',
        nouns: 'increase',
        lead: 'increase increasing inc increase_by increasing_by inc_by',
        only: true,
      },
      fewer: {
        takes: 'count',
        nouns: 'decrease',
        lead: 'decrease decreasing dec reduce reducing decrease_by decreasing_by dec_by reduce_by',
        only: true,
      },
      added: { takes: 'count', lead: 'add adding gain gaining plus extra', led: true },
      taken: {
        takes: 'count',
        lead: 'lose losing remove removing minus take_out taking_out take_away get_rid_of drop',
        led: true,
      },
      wish: { takes: 'count', lead: 'get_to end_up_with reach become down_to up_to make', led: true },
    },
    settle: ({ from, to, ...options }, { more, fewer, added, taken, wish }) => {
      const known = (typed: string | undefined) => (typed === undefined ? undefined : Number(typed));
      const counts = { from: known(from), to: known(wish ?? to) };
      const said =
        more !== undefined || fewer !== undefined
          ? readChange(counts, more === undefined ? 'decrease' : 'increase', Number(more ?? fewer))
          : added !== undefined || taken !== undefined
            ? completeCounts(
                // “add 7 to 56” begins with 56.
                added !== undefined && wish === undefined && counts.from === undefined
                  ? { from: counts.to }
                  : counts,
                Number(added === undefined ? `-${taken ?? 0}` : added),
              )
            : counts;
      const filled = Object.entries(said).flatMap(([option, count]) =>
        count === undefined ? [] : [[option, String(count)] as const],
      );
      return { ...options, ...Object.fromEntries(filled) };
    },
    phrases: [
      'how do I increase evenly from 40 to 48 stitches in the round',
      'decrease 8 stitches evenly across 60',
    ],
  },
  answer({ from, to, worked }): Answer {
    const { change, changes, runs, instruction, working } = spreadChanges(from, to, worked);
    const stretches = instruction.map((segment) => writeSegment(segment, change));
    const figures = [figure('changes', 'Changes', changes)] as const;
    const data = { change, runs, instruction: stretches };
    if (change === 'none') {
      return { headline: `Nothing changes: work all ${from}.`, figures, data, working: working.steps };
    }
    const place = worked === 'flat' ? 'row' : 'round';
    const takes = `${count(changes, change)} in this ${place} ${changes === 1 ? 'takes' : 'take'} ${count(from, 'stitch', 'stitches')} to ${to}`;
    const short = stretches.length <= IN_ONE_BREATH;
    return {
      headline: short ? `${takes}: ${stretches.join('; then ')}.` : `${takes}:`,
      figures,
      lines: short
        ? []
        : stretches.map((stretch, index) =>
            `${index === 0 ? '' : 'Then '}${stretch}.`.replace(/^./, (first) => first.toUpperCase()),
          ),
      working: working.steps,
      data,
    };
  },
});
