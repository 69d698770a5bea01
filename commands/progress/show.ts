/** How far is she, what is still to come, and is what is left enough? */
import { breathe } from '../../src/chat/breathe.ts';
import { question } from '../../src/chat/command.ts';
import { figure, gather, type Figure, type Answer } from '../../src/chat/answer.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { coloursIn } from '../../src/core/stripes/colour-runs.ts';
import { planOf, yarnOf } from '../../src/core/yarn/motif.ts';
import { findNearest, sameName } from '../../src/core/base/nearest-name.ts';
import { FEW_ROWS, reckonHours, paceOf, reckonSaidPace } from '../../src/core/yarn/pace.ts';
import { defined } from '../../src/core/base/defined.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { SAMPLE_BALL } from '../../src/core/base/samples.ts';
import type { Ball } from '../../src/core/base/quantity.ts';
import { sumCounts, type RowPlan } from '../../src/core/rows/index.ts';
import {
  isTooClose,
  reckonPercentDone,
  reckonSpareWeight,
  reckonToCome,
  type ToCome,
} from '../../src/core/yarn/still-to-come.ts';
import { count, g, m, num, t } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { countMade, countMadeOfNeeded, countStillToMake } from '../../src/core/blanket/made.ts';
import { reckonLeft } from '../../src/core/yarn/left.ts';
import { specOf } from '../../src/projects/blankets.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { blanketOf, finishedRows, madeFor, neededFor, progressOf } from '../../src/projects/progress.ts';
import type { Blanket, MakerDoc, Motif, Progress } from '../../src/projects/schema.ts';
import { caution } from '../../src/standards/care.ts';
import { drawSavedBlanket } from '../shared/blanket-drawing.ts';
import { distinct } from '../shared/steps.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';
import { rowWord, units } from '../shared/motif-words.ts';
import { form, lineOf } from '../shared/actions.ts';
import { coming, madeWords } from './coming.ts';

export const show = question({
  name: 'show',
  says: 'How far you are, how much yarn is still to come, and whether what is left will do',
  options: {
    motif: savedMotif().optional(),
    left: opt.weight('What the yarn that is left weighs', '40g').optional(),
    colour: opt
      .text('Which colour that is, where there are several', { max: LONGEST_NAME, example: 'moss' })
      .optional(),
    ball: opt.ball().optional(),
    minutes_each: opt
      .number('Minutes that one motif takes you; as kept, or from your own rows, if not given', {
        min: 1,
        max: 10_000,
        example: '50',
      })
      .optional(),
  },
  example: 'motif:"moss square" left:40g colour:moss ball:170m/100g minutes_each:50',
  refused: { line: 'motif:"moss square" left:40g', option: 'colour' },
  before: [
    DEFINED,
    '/motif weigh name:"moss square" weight:18g',
    '/progress at motif:"moss square" row:5 made:3',
  ],
  asked: {
    ways: [
      'where-am-i',
      '?row where-am-i',
      'how-many motif done',
      'how-far',
      'show where-am-i',
      'enough left',
      'enough <weight>',
      'left <weight> enough',
      '?row i-am-on',
      'how-much left',
      'how-far motif',
      'where-am-i @motif',
      'how-many left motif mine',
    ],
    also: 'row motif left enough colour ball done mine show yarn blanket how-far which round all still',
    not: 'group claim open-for mistake <count> <row> stitch substitute',
    saved: 'motif',
    marks: {
      motif: { takes: 'saved-motif' },
      left: { takes: 'weight', near: 'left enough getting' },
      colour: { takes: 'saved-colour' },
      minutes_each: { takes: 'minutes' },
    },
    phrases: ['what row am I on', 'how far am I', 'is 40g enough for the rest'],
  },
  async answer(
    { motif: name, left, colour, ball, minutes_each },
    { maker, projects, reader },
  ): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const motif = findMotif(doc, name);
    const working = new Working();
    const standing = findStanding(doc, motif, ball, working);
    const { plan, progress, blanket, needed, motifs, percent, come } = standing;
    const { row } = progress;
    const yarn = yarnWords(motif, plan, come);
    const scale =
      left === undefined
        ? undefined
        : onTheScale({ motif, plan, come, left, colour, ball, blanket, row, working });
    const time = timeWords(motif, plan, come.stitches, minutes_each ?? motif.minutes, working, () =>
      finishedRows(progress, plan),
    );
    const next = coming(motif, progress);
    const all = blanket ? allOf(blanket, madeFor(doc, blanket)) : undefined;
    await breathe();
    const drawn = blanket && (await drawSavedBlanket(doc, blanket, { planOnly: false, reader }));
    return {
      headline: scale?.headline ?? whereWords(motif, standing),
      figures: gather(
        next.figures,
        figure('percent', 'Of the motif on the hook', percent, '%'),
        needed !== undefined && [
          figure('needed', 'Motifs in the blanket', needed),
          figure('to_make', 'Still to make', motifs),
        ],
        figure('to_come', 'Still to work', come.stitches),
        all?.figures ?? [],
        yarn.figures,
        scale?.figures ?? [],
        time.figures,
      ),
      lines: gather(
        scale && [whereWords(motif, standing), ...scale.lines],
        all?.lines ?? [],
        motifs === 0
          ? ['All of this motif are made.']
          : [`${next.says.replace(/^./, (first) => first.toUpperCase())}.`],
        yarn.lines,
        time.lines,
      ),
      working: distinct(working.steps),
      assumptions: [comeWords(standing), ...come.assumptions, ...time.assumptions],
      cautions: time.figures.length > 0 ? [caution('hands')] : [],
      data: {
        ...next.data,
        colours: come.colours.map((one) => ({ ...one })),
        history: progress.history
          .slice(-10)
          .map(({ at, did, row: to, made: of }) => ({ at, did, row: to, made: of })),
      },
      files: drawn ? [drawn.file] : [],
      actions: gather(
        next.actions,
        motif.weight === undefined && form('Weigh one', 'motif weigh', { name: motif.name }, ['weight']),
      ),
    };
  },
});

/** Where she is with a motif, and what is still to come of it. */
interface Standing {
  readonly plan: RowPlan;
  readonly progress: Progress;
  readonly blanket: Blanket | undefined;
  /** Motifs that the blanket has of this one; undefined where there is no blanket. */
  readonly needed: number | undefined;
  /** Motifs still to be finished, the one on the hook among them. */
  readonly motifs: number;
  /** Of the motif on the hook, in per cent. */
  readonly percent: number;
  readonly come: ToCome;
}

function findStanding(doc: MakerDoc, motif: Motif, ball: Ball | undefined, working: Working): Standing {
  const plan = planOf(motif);
  const progress = progressOf(doc, motif.name);
  const { row, made } = progress;
  const blanket = blanketOf(doc, motif.name);
  const needed = blanket && neededFor(blanket, motif.name);
  const motifs = needed === undefined ? 1 : countStillToMake(needed, made);
  const percent = reckonPercentDone(plan, row, working);
  const spec = defined({ ...motif, ball: ball ?? motif.ball });
  const beside =
    blanket && specOf(doc, blanket).kinds.map((kind) => (kind.name === motif.name ? spec : kind));
  const come = reckonToCome({ motif: spec, beside, yarns: blanket?.yarns ?? [], motifs, row }, working);
  return { plan, progress, blanket, needed, motifs, percent, come };
}

function whereWords(motif: Motif, { plan, progress, blanket, needed, percent }: Standing): string {
  const { row, made } = progress;
  const of = `${madeWords(made, needed)}${blanket ? ` for ${blanket.name}` : ''}`;
  const onTheHook = `; on the hook, ${rowWord(plan)} ${row} of ${plan.rows.length} is done, ${num(percent, 0)} % of it`;
  return `${motif.name}: ${of}${row === 0 ? '' : onTheHook}.`;
}

const comeWords = ({ needed, motifs, blanket }: Standing): string =>
  needed === undefined
    ? 'Still to come is the motif on the hook, as no blanket is made of it.'
    : `Still to come ${motifs === 1 ? 'is' : 'are'} the ${count(motifs, 'motif')} of ${blanket?.name ?? ''} that ${motifs === 1 ? 'is' : 'are'} not made.`;

/** All kinds of the blanket together. */
function allOf(blanket: Blanket, made: readonly number[]): { lines: string[]; figures: Figure[] } {
  const needed = blanket.kinds.map((kind) => neededFor(blanket, kind));
  const done = countMade(needed, made);
  const each = countMadeOfNeeded(needed, made).map(
    (one, kind) => `${blanket.kinds[kind] ?? ''} ${one} of ${needed[kind] ?? 0}`,
  );
  return {
    lines: [
      `${blanket.name}: ${done} of ${count(blanket.layout.length, 'motif')} made${each.length > 1 ? ` (${each.join(', ')})` : ''}.`,
    ],
    figures: [
      figure('blanket_made', `Made for ${blanket.name}`, done),
      figure('blanket_motifs', `Motifs in ${blanket.name}`, blanket.layout.length),
    ],
  };
}

/** How sure the metres are. */
const SURE: Readonly<Record<ToCome['how'], string>> = {
  weighed: '',
  'as-weighed': ', as the weighed kinds take it',
  'by-gauge': `, estimated from its ${t('gauge')}`,
  rough: ', estimated from hook and yarn',
};

/** What is still to come, by colour, and how sure that is. */
function yarnWords(motif: Motif, plan: RowPlan, come: ToCome): { lines: string[]; figures: Figure[] } {
  const { weight, metres, how, stitches, colours, band, weightBand } = come;
  // Weighed without a ball of its own, its grams are sure and its metres are not.
  const sure = SURE[how];
  const yarn =
    weight === undefined || sure === '' || weightBand === band
      ? `${gather(weight !== undefined && g(weight), m(metres)).join(', ')} of yarn in ${units(plan, stitches)}${sure}, right to about ${num(band, 0)} %`
      : `${g(weight)} of yarn in ${units(plan, stitches)}, right to about ${num(weightBand, 0)} %; ${m(metres)}${sure}, right to about ${num(band, 0)} %`;
  return {
    lines: gather(
      stitches > 0 && `Still to come: ${yarn}.`,
      colours.length > 1 &&
        colours.map(
          (one) =>
            `${one.colour}: ${gather(units(plan, one.stitches), one.weight !== undefined && g(one.weight), m(one.metres)).join(', ')}`,
        ),
      (how === 'by-gauge' || how === 'rough') &&
        motif.weight === undefined &&
        stitches > 0 &&
        `Weigh a finished one to be surer: ${lineOf('motif weigh', { name: motif.name, weight: '18g' })}`,
    ),
    figures: gather(
      figure('weight_to_come', 'Weight of the yarn still to come', weight, 'g'),
      figure('yarn_to_come', 'Yarn still to come', metres, 'm'),
      figure('band', 'Its metres are right to about', band, '%'),
    ),
  };
}

interface Scale {
  readonly motif: Motif;
  readonly plan: RowPlan;
  readonly come: ToCome;
  readonly left: number;
  readonly colour: string | undefined;
  readonly ball: Ball | undefined;
  readonly blanket: Blanket | undefined;
  readonly row: number;
  readonly working: Working;
}

/** Which colour lies on the scale: the only one, or the one that is named. */
function whichColour(motif: Motif, colour: string | undefined): string | undefined {
  const colours = coloursIn(motif.runs);
  if (colours.length < 2 && colour === undefined) return undefined;
  const found = colours.find((one) => colour !== undefined && sameName(one, colour));
  if (found !== undefined) return found;
  const near = colour === undefined ? undefined : findNearest(colour, colours);
  throw new Problem(
    colour === undefined ? 'which-colour' : 'no-such-colour',
    colour === undefined
      ? `${motif.name} has several colours.`
      : `${motif.name} has no colour called “${colour}”.`,
    {
      option: 'colour',
      hint:
        near === undefined
          ? colours.length === 0
            ? 'It is of one colour: leave colour out.'
            : `Say which is left: colour:${colours.join(' or colour:')}.`
          : `Did you mean ${near}?`,
    },
  );
}

/** Whether what is left on the scale will do. */
function onTheScale({ motif, plan, come, left, colour, ball, blanket, row, working }: Scale): {
  headline: string;
  lines: string[];
  figures: Figure[];
} {
  const which = whichColour(motif, colour);
  const of = come.colours.find((one) => which === undefined || one.colour === which);
  const known = motif.weight !== undefined || come.how === 'weighed' || come.how === 'as-weighed';
  if (!known || of === undefined) {
    throw new Problem('motif-not-weighed', `What one ${motif.name} weighs is not known yet.`, {
      option: 'left',
      hint: `Weigh a finished one: ${lineOf('motif weigh', { name: motif.name, weight: '18g' })}`,
    });
  }
  if (of.weight === undefined) {
    throw new Problem('ball-missing', `Of ${of.colour} no ball is known, so its weight is not.`, {
      option: 'ball',
      hint: `Give its length and weight from the ball band: ${SAMPLE_BALL}.`,
    });
  }
  const spare = reckonSpareWeight(left, of.weight, working);
  const close = isTooClose(spare, of.weight, come.weightBand);
  const what = which === undefined ? 'yarn' : which;
  const enough = spare >= 0;
  const figures: Figure[] = [figure('spare_weight', 'Left over or missing', spare, 'g')];
  const lines = gather(
    close &&
      `That is closer than is known: what is still to come is right to about ${num(come.weightBand, 0)} %. Weigh more finished ones to be surer.`,
  );
  const own = ball ?? yarnOf(blanket?.yarns ?? [], of.colour)?.ball;
  const { shape, size, otherSize, stitch, weight } = motif;
  if (own && weight !== undefined && coloursIn(motif.runs).length < 2 && row < plan.rows.length) {
    const found = reckonLeft({ left, ball: own, shape, size, otherSize, stitch, each: weight, doneRow: row });
    working.steps.push(...found.working.steps);
    lines.push(
      found.lastRow >= plan.rows.length
        ? `It finishes the motif on the hook${found.more === undefined || found.more === 0 ? '' : ` and ${count(found.more, 'more after it', 'more after it')}`}, a tail kept back.`
        : `On the hook it reaches to the end of ${rowWord(plan)} ${found.lastRow}, a tail kept back.`,
    );
    figures.push(
      figure('last_row', `Last ${rowWord(plan)} that can be finished`, found.lastRow),
      figure('spare', 'Left after it', found.spare, 'm'),
    );
  }
  return {
    headline: enough
      ? `The ${g(left)} of ${what} will do: ${g(of.weight)} are still to come, and ${g(spare)} would be left.`
      : `The ${g(left)} of ${what} will not do: ${g(of.weight)} are still to come, ${g(-spare)} are missing.`,
    lines,
    figures,
  };
}

/** Hours at her own pace, from her rows or from what she says. */
function timeWords(
  motif: Motif,
  plan: RowPlan,
  stitches: number,
  minutesEach: number | undefined,
  working: Working,
  rows: () => Parameters<typeof paceOf>[0],
): { lines: string[]; figures: Figure[]; assumptions: string[] } {
  if (stitches === 0) return { lines: [], figures: [], assumptions: [] };
  const own = minutesEach === undefined ? paceOf(rows(), working) : undefined;
  const perMinute =
    minutesEach === undefined ? own?.perMinute : reckonSaidPace(sumCounts(plan), minutesEach, working);
  if (perMinute === undefined) return { lines: [], figures: [], assumptions: [] };
  const hours = reckonHours(stitches, perMinute, working);
  const from = own
    ? `from ${count(own.rows, rowWord(plan))} counted one after the other${own.rows < FEW_ROWS ? ', few yet: take it as rough' : ''}`
    : `from ${num(minutesEach ?? 0)} minutes for one ${motif.name}`;
  return {
    lines: [`About ${count(Number(num(hours, 1)), 'hour')} at your pace, ${from}.`],
    figures: [figure('hours', 'Hours still to come', hours), figure('pace', 'Stitches a minute', perMinute)],
    assumptions: ['Ends, seams, border and breaks are not in the hours.'],
  };
}
