/** How far the yarn at hand goes. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { findLargestBlanket, USUAL_STRETCH, type Fit } from '../../src/core/blanket/largest-blanket.ts';
import { countMotifsAlone, type MotifsAlone } from '../../src/core/blanket/motifs-alone.ts';
import { stockOf } from '../../src/core/blanket/yarn-at-hand.ts';
import { findLacking, reckonLeft, type ColourLeft } from '../../src/core/blanket/yarn-left.ts';
import { countLaid, letter, withLetter } from '../../src/core/blanket/layout.ts';
import { countMotifsIn, reckonMaterials, type Extent } from '../../src/core/blanket/materials.ts';
import { piecesOf, type Pieces } from '../../src/core/blanket/pieces.ts';
import { count, m, num } from '../../src/core/base/reader.ts';
import { MOST_PLACES } from '../../src/core/base/limits.ts';
import { Working } from '../../src/core/base/working.ts';
import { findBlanket, layingOf, specOf } from '../../src/projects/blankets.ts';
import type { Blanket } from '../../src/projects/schema.ts';
import { action } from '../shared/actions.ts';
import { distinct } from '../shared/steps.ts';
import { SAVED, savedBlanket } from './options.ts';
import { listed } from '../shared/listed.ts';
import {
  blanketCautions,
  extentWords,
  kindFigures,
  makeCounts,
  sizeFigures,
  sizeWords,
  assumedOf,
  howReckoned,
  howSure,
} from './words.ts';

export const fit = question({
  name: 'fit',
  says: 'The largest blanket that the yarn at hand makes, and which colour runs out first',
  options: {
    name: savedBlanket().optional(),
    stretch: opt
      .percent(
        {
          says: 'How far its proportions may change, per cent',
          assumed: `Proportions within ${USUAL_STRETCH} % of the saved ones, as no stretch was given.`,
        },
        { max: 1000, example: '10' },
      )
      .default(USUAL_STRETCH),
    each: opt.yesno('yes counts motifs alone, without seams and border').optional(),
    reserve: opt.percent('Another reserve than the blanket’s own', { example: '5' }).optional(),
  },
  example: 'name:"garden throw"',
  refused: { line: 'name:"garten trow"', option: 'name' },
  before: [
    ...SAVED,
    '/blanket colours colour:moss ball:170m/100g balls:2',
    '/blanket colours colour:sand ball:170m/100g balls:2',
    '/blanket colours colour:clay ball:170m/100g balls:1.5',
  ],
  asked: {
    ways: [
      'biggest blanket',
      'biggest stash',
      'biggest yarn',
      'which colour enough',
      'enough blanket yarn',
      'how-big blanket stash',
      'stash blanket',
      'stash enough',
      'colour next enough',
    ],
    also: 'blanket yarn stash enough colour mine how-big biggest next motif',
    not: 'group <weight> row round border',
    saved: 'blanket',
    marks: { name: { takes: 'saved-blanket' }, stretch: { never: true }, each: { never: true } },
    phrases: ['how big a blanket can I make with the yarn I have', 'which colour will run out first'],
  },
  async answer({ name, stretch, each, reserve }, { maker, projects }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const saved = findBlanket(doc, name);
    const blanket = reserve === undefined ? saved : { ...saved, reserve };
    const working = new Working();
    const pieces = piecesOf(specOf(doc, blanket), working);
    // Where no yarn is known, counting motifs alone is refused like the rest.
    const largest = findLargestBlanket(pieces, layingOf(blanket), stretch);
    if (each === true) return motifsAlone(blanket, pieces, countMotifsAlone(pieces, working), working);
    return largestBlanket(blanket, pieces, largest, stretch, working);
  },
});

/** The blanket as it is planned. */
const planOf = ({ columns, rows, layout, kinds }: Blanket): Extent => ({
  columns,
  rows,
  counts: countLaid(layout, kinds.length),
});

/** The assumptions that every answer about the yarn at hand makes. */
function assumed(blanket: Blanket, pieces: Pieces): string[] {
  const stock = stockOf(pieces);
  const untold = pieces.colours.filter((_, colour) => stock[colour] === undefined);
  return gather(
    assumedOf(pieces),
    `${num(blanket.reserve)} % kept in reserve.`,
    untold.length > 0 &&
      `How much ${listed(untold)} there is was not said: taken as enough, to be bought as needed.`,
  );
}

function largestBlanket(
  blanket: Blanket,
  pieces: Pieces,
  fit: Fit,
  stretch: number,
  working: Working,
): Answer {
  const { best, anyShape, sameColumns, first } = fit;
  const made = reckonMaterials(pieces, best ?? anyShape ?? { columns: 1, rows: 1, counts: [1] }, working);
  const spare = reckonLeft(pieces, made.colours, working);
  const planned = reckonMaterials(pieces, planOf(blanket), new Working());
  const lacking = findLacking(pieces, planned.colours);
  return {
    headline: fitHeadline(blanket, fit, stretch),
    lines: gather(
      best && `Finished: ${sizeWords(made)}: ${makeCounts(blanket.kinds, best.counts)}.`,
      !best && anyShape && 'Of that size:',
      fit.otherCounts === true &&
        'Two kinds have equal claims to the odd place; the yarn gives it to the one that can be made.',
      spare.map(leftLine),
      lacking.length > 0 &&
        `The blanket as planned lacks ${listed(lacking.map(({ colour, short }) => `${m(short)} of ${colour}`))}.`,
      sameColumns &&
        `With the ${count(blanket.columns, 'column')} as ${blanket.columns === 1 ? 'it is' : 'they are'}: ${sizeInMotifs(sameColumns)}.`,
      best && anyShape && `In any proportions at all: ${sizeInMotifs(anyShape)}.`,
      howSure(pieces),
    ),
    details: howReckoned(pieces),
    figures: gather(
      figure('motifs', 'Motifs', best ? countMotifsIn(best) : 0),
      figure('columns', 'Across', best?.columns ?? 0),
      figure('rows', 'Down', best?.rows ?? 0),
      best && kindFigures(blanket.kinds, best.counts),
      best && sizeFigures(made),
      figure('tried', 'Sizes tried', fit.tried),
    ),
    working: distinct(working.steps),
    assumptions: assumed(blanket, pieces),
    cautions: blanketCautions(pieces, made),
    data: {
      blanket: blanket.name,
      first_out: first ?? null,
      spare,
      lacking,
      any_shape: anyShape ?? null,
      same_columns: sameColumns ?? null,
    },
    actions: gather(
      best &&
        (fit.otherCounts === true
          ? action('Lay it so', 'blanket layout', {
              name: blanket.name,
              columns: best.columns,
              rows: best.rows,
              counts: best.counts.map((many, kind) => `${letter(kind)} ${many}`).join(', '),
            })
          : action('See it at this size', 'blanket scale', {
              name: blanket.name,
              columns: best.columns,
              rows: best.rows,
            })),
    ),
  };
}

const sizeInMotifs = (extent: Extent) => `${extentWords(extent)}, ${count(countMotifsIn(extent), 'motif')}`;

function fitHeadline(blanket: Blanket, { best, anyShape, first, atLimit }: Fit, stretch: number): string {
  if (!best && anyShape)
    return `Within ${num(stretch)} % of its own proportions the yarn at hand makes no blanket; in any proportions at all it makes ${sizeInMotifs(anyShape)}.`;
  if (!best)
    return `The yarn at hand does not make even one motif with its border${first === undefined ? '' : `; ${first} is what is missing`}.`;
  const asPlanned = best.columns === blanket.columns && best.rows === blanket.rows;
  const beside = asPlanned
    ? 'just as planned'
    : countMotifsIn(best) > blanket.layout.length
      ? 'more than planned'
      : 'fewer than planned';
  if (atLimit === true)
    return `The yarn at hand makes ${sizeInMotifs(best)}, ${beside}, and would go further: no more than ${num(MOST_PLACES)} motifs are laid here.`;
  return `The yarn at hand makes ${sizeInMotifs(best)}, ${beside}${first === undefined ? '' : `; ${first} runs out first`}.`;
}

const leftLine = ({ colour, atHand, need, left }: ColourLeft) =>
  `${colour}: ${m(atHand)} at hand, ${m(need)} needed, ${left < 0 ? `${m(-left)} short` : `${m(left)} left over`}.`;

function motifsAlone(
  blanket: Blanket,
  pieces: Pieces,
  { alone, together, first }: MotifsAlone,
  working: Working,
): Answer {
  const many = (kind: number) => {
    const most = alone[kind];
    return most === undefined ? 'no limit known' : num(most);
  };
  return {
    headline:
      together === undefined
        ? 'Nothing that was said of the yarn at hand limits these motifs.'
        : `The yarn at hand makes ${count(together, 'motif')} of ${blanket.kinds.length === 1 ? (blanket.kinds[0] ?? '') : 'every kind alike'}${first === undefined ? '' : `; ${first} runs out first`}.`,
    lines:
      blanket.kinds.length === 1
        ? []
        : [
            'All the yarn for one kind alone:',
            ...blanket.kinds.map((kind, index) => `${withLetter(index, kind)}: ${many(index)}.`),
          ],
    figures: gather(
      figure('together', 'Of every kind alike', together),
      blanket.kinds.flatMap((kind, index) => {
        const most = alone[index];
        return most === undefined
          ? []
          : [figure(`alone_${letter(index).toLowerCase()}`, `${kind} alone`, most)];
      }),
    ),
    working: distinct(working.steps),
    assumptions: [...assumed(blanket, pieces), 'Seams and border are not counted in.'],
    data: { blanket: blanket.name, alone, together: together ?? null, first_out: first ?? null },
  };
}
