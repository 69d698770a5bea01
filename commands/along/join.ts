/** Taking part: how a maker makes hers, as far as it is other than the teacher’s. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { defined } from '../../src/core/base/defined.ts';
import { cm, count, size } from '../../src/core/base/reader.ts';
import { coloursOfPlan, NO_WAY, ownPace, reckonOwn } from '../../src/core/along/own.ts';
import { join as takePart, readOwnColours } from '../../src/core/along/rules.ts';
import { readWishedSize } from '../../src/core/size/wished-size.ts';
import { described } from '../shared/motif-words.ts';
import { distinct } from '../shared/steps.ts';
import { action } from '../shared/actions.ts';
import { unevenWords } from '../shared/uneven-words.ts';
import { askerOf } from '../shared/which-kept.ts';
import { OPENED } from './example.ts';
import { differsLines, ownAssumptions, wholeLines } from './words.ts';
import { JOIN_ASKS, nameOption, onceMore, whichAlong } from './which.ts';

export const join = question({
  name: 'join',
  says: 'Take part with your own yarn, gauge, hook, colours and size; or say any of them anew',
  options: {
    gauge: opt
      .gauge('Your gauge in the first motif’s stitch, like 15x12; later, if you have none yet')
      .optional(),
    hook: opt.hook('Your hook').optional(),
    ball: opt.ball('Your yarn: length and weight of a ball, like 170m/100g').optional(),
    colours: opt
      .text('Your colours for the pattern’s, in their order, or moss=teal, sand=cream', {
        max: 400,
        example: 'teal, cream, rose',
      })
      .optional(),
    width: opt.length('How wide yours is to be; the pattern’s columns if not given', '100cm').optional(),
    height: opt.length('How high yours is to be', '130cm').optional(),
    for: opt.blanketSize().optional(),
    side: opt.length('What one finished motif of yours measures, where you have one', '15cm').optional(),
    minutes: opt
      .number('Minutes that one motif takes you', { min: 1, max: 10_000, example: '45' })
      .optional(),
    named: opt.yesno({ says: 'Whether the others may see by name how far you are', assumed: '' }).optional(),
    name: nameOption,
  },
  example: 'gauge:15x12 ball:170m/100g colours:"teal, cream, rose"',
  before: OPENED,
  refused: { line: 'colours:"teal, cream"', option: 'colours' },
  changes: true,
  form: { title: 'Take part', asks: JOIN_ASKS },
  asked: {
    ways: [
      'take-part along',
      'join along',
      'claim along',
      'gauge along <gauge>',
      'along <ball>',
      'along <hook>',
    ],
    also: 'along mine join gauge yarn ball hook colour size change how-to wish across down',
    not: 'where who need this-week leave part stuck close open',
    saved: 'along',
    marks: {
      colours: {
        capture:
          /\bcolou?rs\b(?:\s+(?:are|will be))?\s*[:=]?\s*(\p{L}[\p{L} ,;&'’=-]{2,200}?)(?=\s*[.!]?$|[,.]?\s+(?:(?:and|with)\s+)?(?:my|a|gauge|hook|ball|yarn|on|at)\b)/iu,
      },
      named: { never: true },
      name: { takes: 'saved-along' },
    },
    phrases: ['I want to join the make-along', 'join the make-along with gauge 15x12'],
  },
  async answer(
    { gauge, hook, ball, colours, width, height, for: bed, side, minutes, named, name },
    context,
  ): Promise<Answer> {
    const { doc, state } = await whichAlong(context, name);
    // Of one side alone, the other stays as the pattern has it, or as she said before.
    const wish = bed === undefined ? { width, height } : readWishedSize({ width, height, for: bed });
    const mapped = colours === undefined ? undefined : readOwnColours(colours, coloursOfPlan(state.plan));
    const { id } = context.maker;
    const { state: after } = await context.projects.alongs.happen(doc.id, onceMore(context, doc), (now) => {
      const before = now.members.get(id) ?? NO_WAY;
      const said = defined({
        gauge: gauge ?? before.gauge,
        hook: hook ?? before.hook,
        ball: ball ?? before.ball,
        // A new gauge is of another swatch than what was measured before.
        side: side ?? (gauge === undefined ? before.side : undefined),
        colours: mapped ?? before.colours,
        width: wish?.width ?? before.width,
        height: wish?.height ?? before.height,
        perMinute: before.perMinute,
        named: named ?? before.named,
      });
      const plan = now.plan;
      const perMinute = minutes === undefined ? said.perMinute : ownPace(plan, said, minutes);
      const way = defined({ ...said, perMinute });
      // What cannot be made is refused before anybody has joined with it.
      reckonOwn(plan, way);
      return takePart(now, askerOf(context), way);
    });
    const way = after.members.get(id) ?? NO_WAY;
    const own = reckonOwn(after.plan, way);
    await breathe();
    const theirs = reckonOwn(after.plan, NO_WAY);
    await breathe();
    const [first] = own.kinds;
    return {
      headline: `You take part in ${after.plan.name}; ${count(after.members.size, 'maker')} so far. Your ${first?.motif.name ?? 'motif'} is ${first ? described(first.motif) : ''}, ${cm(first?.side ?? 0)} along a side${own.extent.columns === 1 && own.extent.rows === 1 ? '' : `, and your blanket ${size(own.materials.width, own.materials.height)}`}.`,
      figures: gather(
        figure('size', 'Size of your own motif', first?.motif.size ?? 0),
        figure('side', 'Side of one', first?.side ?? 0, 'cm'),
        figure('width', 'Width', own.materials.width, 'cm'),
        figure('height', 'Height', own.materials.height, 'cm'),
        figure('yarn_total', 'Yarn with the reserve', own.materials.total, 'm'),
        figure('balls', 'Balls', own.materials.balls),
      ),
      lines: gather(differsLines(own, theirs, way), wholeLines(own)),
      working: distinct(own.working.steps),
      assumptions: ownAssumptions(own),
      cautions: unevenWords(own.pieces.uneven),
      data: { members: after.members.size },
      actions: [
        action('My part', 'along mine', { name: after.plan.name }),
        action('Save my blanket', 'along save', { name: after.plan.name }),
      ],
    };
  },
});
