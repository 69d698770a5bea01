/** What a blanket takes, to the last ball. */
import { figure, gather, type Answer, type Figure } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { countLaid } from '../../src/core/blanket/layout.ts';
import { reckonMaterials, type Materials } from '../../src/core/blanket/materials.ts';
import { planDyeLots, type DyeLot } from '../../src/core/blanket/dye-lots.ts';
import { piecesOf } from '../../src/core/blanket/pieces.ts';
import { readMinutes } from '../../src/core/blanket/by-kind.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { SAMPLE_BALL } from '../../src/core/base/samples.ts';
import { count, hours, m, num, t, money } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { paceByKind, type KindPace } from '../../src/projects/blanket-pace.ts';
import { findBlanket, specOf } from '../../src/projects/blankets.ts';
import type { Blanket } from '../../src/projects/schema.ts';
import { caution } from '../../src/standards/care.ts';
import { SEWING_STRAND } from '../../src/standards/consumption.ts';
import { action } from '../shared/actions.ts';
import { distinct } from '../shared/steps.ts';
import { SAVED, savedBlanket } from './options.ts';
import {
  assumedOf,
  atHandCaution,
  blanketCautions,
  howReckoned,
  howSure,
  needLine,
  sizeFigures,
  sizeWords,
} from './words.ts';

export const materials = question({
  name: 'materials',
  says: 'What a blanket takes, colour by colour: yarn, balls to buy, weight, cost, ends, hours',
  options: {
    name: savedBlanket().optional(),
    reserve: opt.percent('Another reserve than the blanket’s own').optional(),
    minutes: opt
      .text('Minutes that one motif takes you, of the first kind or kind by kind, for the hours', {
        max: 600,
        example: 'A 45, B 60',
      })
      .optional(),
  },
  example: 'minutes:45',
  refused: { line: 'name:"garten trow"', option: 'name' },
  before: [...SAVED, '/blanket colours colour:moss ball:170m/100g price:4.5 balls:1'],
  asked: {
    ways: [
      '?yarn blanket mine',
      '?ball blanket mine',
      '?yarn blanket mine spare',
      'shopping blanket',
      'shopping blanket mine',
      'cost blanket',
      'how-long blanket',
      'shopping',
      '?yarn @blanket',
      '?ball @blanket',
      'how-long blanket motif',
      'cost @blanket',
      'yarn blanket colour',
      '?minute blanket',
    ],
    also: 'blanket mine yarn ball colour each spare cost need minute motif how-long all total',
    not: 'group left <weight> stash enough substitute row claim',
    saved: 'blanket',
    marks: { name: { takes: 'saved-blanket' }, minutes: { takes: 'minutes' } },
    phrases: [
      'how much yarn do I need for my blanket',
      'shopping list for my blanket',
      'what will my blanket cost',
    ],
  },
  async answer({ name, reserve, minutes }, { maker, projects }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const saved = findBlanket(doc, name);
    const blanket = reserve === undefined ? saved : { ...saved, reserve };
    const working = new Working();
    const pieces = piecesOf(specOf(doc, blanket), working);
    const said = minutes === undefined ? [] : readMinutes(minutes, blanket.kinds);
    const paces = paceByKind(doc, blanket, said, working);
    const counts = countLaid(blanket.layout, blanket.kinds.length);
    const needs = reckonMaterials(
      pieces,
      { ...blanket, counts },
      working,
      paces?.map(({ perMinute }) => perMinute),
    );
    if (needs.total <= 0)
      throw new Problem('nothing-to-work', 'Nothing is to be worked.', {
        hint: 'Lay motifs: /blanket layout.',
      });
    const lots = planDyeLots(pieces, counts, needs.colours, working);
    // Of a kind that is not laid nothing is needed.
    const needed = needs.colours.filter(({ total }) => total > 0);
    const unknown = needed.filter(({ balls }) => balls === undefined).map(({ colour }) => colour);
    const atHand = needs.colours.some(({ balls, toBuy }) => balls !== toBuy);
    return {
      headline: materialsHeadline(blanket, needs, { someUnknown: unknown.length > 0, atHand }),
      lines: gather(
        needed.map(buyLine),
        unknown.length > 0 &&
          `No ball is known of ${unknown.join(', ')}, so none are counted: /blanket colours tells one.`,
        `Finished: ${sizeWords(needs)}, ${count(needs.ends, 'end')} to weave in.`,
        needs.hours !== undefined && `${hours(needs.hours)} for the motifs. Joining and border come on top.`,
        howSure(pieces),
      ),
      details: gather(
        needed.map(needLine),
        `${count(needs.seams, 'seam')}, ${m(needs.seamLength)} in all${needs.strands === undefined ? '' : `, sewn with ${count(needs.strands, 'strand')} of ${m(SEWING_STRAND)}, two ends each`}.`,
        needs.border.map(borderLine),
        paces && paceLine(paces.filter((_, kind) => counts[kind] !== 0)),
        lots.map(lotLine),
        howReckoned(pieces),
      ),
      figures: materialsFigures(needs),
      working: distinct(working.steps),
      assumptions: gather(
        assumedOf(pieces),
        unknown.length > 0 &&
          `No ball is known of ${unknown.join(', ')}: /blanket colours colour:${unknown[0] ?? ''} ${SAMPLE_BALL}.`,
        needs.hours === undefined &&
          'No hours: no pace is known yet. Give minutes, keep them with /motif weigh minutes:45, or count rows with /progress next.',
      ),
      cautions: gather(
        blanketCautions(pieces, needs),
        atHandCaution(needs),
        needs.hours !== undefined && caution('hands'),
      ),
      data: {
        blanket: blanket.name,
        colours: needs.colours,
        border: needs.border,
        minutes: (paces ?? []).map(({ kind, minutes: each, from }) => ({
          kind,
          minutes: each,
          from: from.how,
        })),
        dye_lots: lots,
        weighed: pieces.motifs.filter(({ how }) => how === 'weighed').map((motif) => motif.name),
        estimated: pieces.motifs.filter(({ how }) => how !== 'weighed').map((motif) => motif.name),
      },
      actions: [
        action('Will mine do?', 'blanket fit', { name: blanket.name }),
        action('Picture', 'blanket picture', { name: blanket.name }),
      ],
    };
  },
});

const materialsFigures = (needs: Materials): Figure[] =>
  gather(
    figure('yarn_total', 'Yarn with the reserve', needs.total, 'm'),
    needs.balls !== undefined && [
      figure('balls', 'Balls', needs.balls),
      figure('to_buy', 'Balls still to buy', needs.toBuy ?? 0),
    ],
    figure('weight', 'Weight', needs.weight, 'g'),
    figure('cost', 'Cost of what is to buy', needs.cost),
    figure('ends', 'Ends to weave in', needs.ends),
    figure('seam_length', 'Seams', needs.seamLength, 'm'),
    sizeFigures(needs),
    figure('hours', 'Hours for the motifs', needs.hours),
  );

/** `1,234 m of yarn … 8 balls of the colours whose ball is known, 5 of them still to buy, 22.5 to pay` */
function materialsHeadline(
  blanket: Blanket,
  { total, balls, toBuy = 0, cost }: Materials,
  { someUnknown, atHand }: { readonly someUnknown: boolean; readonly atHand: boolean },
): string {
  const bought = gather(
    balls !== undefined &&
      `${count(balls, 'ball')}${someUnknown ? ' of the colours whose ball is known' : ''}`,
    balls !== undefined && atHand && `${num(toBuy)} of them still to buy`,
    cost !== undefined && `${money(cost)} to pay`,
  );
  return `${[`${blanket.name} takes ${m(total)} of yarn with ${num(blanket.reserve)} % in reserve`, ...bought].join(', ')}.`;
}

/** What has to be of one dye lot before she begins, and what can wait. */
function lotLine(lot: DyeLot): string {
  const { colour } = lot;
  switch (lot.is) {
    case 'border alone':
      return `Dye lots: ${colour} is in the border alone; it can be bought when the motifs are joined.`;
    case 'border later':
      return `Dye lots: of ${colour} have ${count(lot.first, 'ball')} of one lot before you begin; ${count(lot.later, 'ball')} for the border can be bought later, where another lot shows least.`;
    case 'one kind':
      return `Dye lots: should ${colour} have to be of two lots, the second shows least if it is kept to ${lot.kind}, ${m(lot.metres)}.`;
  }
}

const borderLine = ({ stitch, colour, stitches, metres }: Materials['border'][number], index: number) =>
  `Border, round ${index + 1}: ${count(stitches, 'stitch', 'stitches')} of ${t(stitch)} in ${colour}, ${m(metres)}.`;

/** `moss: 760 m, 5 balls`: what there must be of a colour. */
function buyLine({ colour, total, balls, ballsHigh }: Materials['colours'][number]): string {
  const high = balls !== undefined && ballsHigh !== undefined && ballsHigh > balls;
  const many =
    balls === undefined
      ? ''
      : `: ${count(balls, 'ball')}${high ? `, up to ${ballsHigh} if the estimates run high` : ''}`;
  return `${colour}: ${m(total)} with the reserve${many}.`;
}

/** How long one of each kind takes, by what she said or worked. */
function paceLine(paces: readonly KindPace[]): string {
  const each = paces.map(({ kind, minutes, from }) => {
    const by = {
      said: () => '',
      kept: () => ', as you said before',
      rows: (rows: number) => `, by ${count(rows, 'row')} of yours`,
      like: (other: string) => `, stitch for stitch like ${other}`,
    };
    const how =
      from.how === 'rows' ? by.rows(from.rows) : from.how === 'like' ? by.like(from.kind) : by[from.how]();
    return `${paces.length > 1 ? `${kind} ` : ''}${count(Number(num(minutes, 0)), 'minute')} each${how}`;
  });
  return `For the hours: ${each.join('; ')}.`;
}
