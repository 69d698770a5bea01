/** What a part asks, and what is a maker’s own in it, in words. */
import { figure, gather, type Figure } from '../../src/chat/answer.ts';
import { cm, count, hours, m, mm, num, size, t, when } from '../../src/core/base/reader.ts';
import { SAMPLE_BALL } from '../../src/core/base/samples.ts';
import type { Part } from '../../src/core/along/events.ts';
import { countOwnMotifs, SWATCH_SIDE, USUAL_PACE, type PartNumbers } from '../../src/core/along/numbers.ts';
import type { Own } from '../../src/core/along/own.ts';
import { momentOfPart } from '../../src/core/along/rules.ts';
import { numbered, type AlongState, type Member } from '../../src/core/along/state.ts';
import { planOf } from '../../src/core/yarn/motif.ts';
import { SEAM_WORDS } from '../../src/standards/trade-names.ts';
import { described, rowWord } from '../shared/motif-words.ts';

const firstKind = ({ spec }: Own) => {
  const [first] = spec.kinds;
  if (!first) throw new Error('a blanket has at least one kind');
  return first;
};

const gaugeWords = ({ spec }: Own) => {
  const { gauge } = spec.kinds[0] ?? {};
  return gauge === undefined
    ? undefined
    : `${num(gauge.stitches)}${gauge.rows === undefined ? '' : ` × ${num(gauge.rows)}`} over ${cm(gauge.over)}`;
};

/** `6 furrow and 2 trellis` */
export const motifsWords = (own: Own, counts: readonly number[]): string =>
  own.spec.kinds
    .flatMap(({ name }, kind) => {
      const many = counts[kind] ?? 0;
      return many > 0 ? [`${num(many)} ${name}`] : [];
    })
    .join(' and ') || 'no more motifs';

/** What a part asks of whoever makes this blanket: one sentence, without what the teacher says of it. */
export function workWords(own: Own, part: Pick<Part, 'work'>, numbers: PartNumbers): string {
  const first = firstKind(own);
  switch (part.work) {
    case 'swatch': {
      const counts = numbers.swatch
        ? ` About ${count(numbers.swatch.stitches, 'stitch', 'stitches')} and ${count(numbers.swatch.rows, 'row')}${gaugeWords(own) === undefined ? '' : `, by ${gaugeWords(own) ?? ''}`}.`
        : '';
      return `Work a swatch of ${size(SWATCH_SIDE, SWATCH_SIDE)} in ${t(first.stitch)}${first.hook === undefined ? '' : ` with a hook of ${mm(first.hook)}`}, wash it as the blanket will be washed, and count over ${cm(10)}.${counts}`;
    }
    case 'first': {
      const plan = planOf(first);
      const { rows } = numbers;
      return rows === undefined
        ? `Nothing more of the first ${first.name}.`
        : `Work ${rowWord(plan)}s ${rows.from} to ${rows.to} of ${first.name}, ${described(first)}.`;
    }
    case 'motifs':
      return `Make ${motifsWords(own, numbers.motifs ?? [])}.`;
    case 'ends':
      return endsWords(numbers);
    case 'laying-out':
      return `Lay the ${count(countOwnMotifs(own), 'motif')} out, ${count(own.extent.columns, 'column')} of ${count(own.extent.rows, 'row')}, and look at them from afar before you join.`;
    case 'joining':
      return `Join them by ${SEAM_WORDS[own.spec.joining.method][0]}: ${count(numbers.seams ?? 0, 'seam')}, ${m(numbers.seamLength ?? 0)} in all.`;
    case 'border': {
      const rounds = numbers.border ?? [];
      return `Work the border: ${count(rounds.length, 'round')}${rounds.length === 0 ? '' : `, ${rounds.map(({ stitches }) => num(stitches)).join(', ')} stitches`}.`;
    }
    case 'own':
      return 'What the teacher says of it.';
  }
}

/** The ends that the motifs have by now, and those that are still to come. */
function endsWords({ ends = 0, endsIn }: PartNumbers): string {
  return endsIn === undefined || endsIn.later === 0
    ? `Weave in the ends that are left, of ${count(ends, 'end')} in all.`
    : `Weave in the ends that are left, of ${num(endsIn.motifs)} in the motifs; joining and border have ${num(endsIn.later)} more.`;
}

/** What a part asks: what follows from the work, and what the teacher says. */
export const asksWords = (own: Own, part: Part, numbers: PartNumbers): string =>
  part.work === 'own' && part.asks !== undefined
    ? part.asks
    : gather(workWords(own, part, numbers), part.asks).join(' ');

/** The numbers of a part as figures. */
export const partFigures = (own: Own, numbers: PartNumbers): Figure[] => {
  const first = firstKind(own);
  const { rows, swatch, yarn, border } = numbers;
  const last = border?.at(-1);
  return gather(
    figure('size', 'Size of her own motif', first.size),
    figure('side', 'Side of one', own.kinds[0]?.side ?? 0, 'cm'),
    swatch && [
      figure('swatch_stitches', 'Stitches of the swatch', swatch.stitches),
      figure('swatch_rows', 'Rows of the swatch', swatch.rows),
    ],
    rows && [
      figure('row_from', `First ${rowWord(planOf(first))}`, rows.from),
      figure('row_to', `Last ${rowWord(planOf(first))}`, rows.to),
    ],
    figure('motifs', 'Motifs in this part', numbers.motifsInAll),
    figure('stitches', 'Stitches', numbers.stitches),
    figure('yarn', 'Yarn for this part', yarn, 'm'),
    figure('ends', 'Ends', numbers.ends),
    figure('seams', 'Seams', numbers.seams),
    figure('seam_length', 'Length of all seams', numbers.seamLength, 'm'),
    last && figure('round_total', 'Stitches in the last round', last.stitches),
    figure('hours', 'Hours for this part', numbers.hours),
    figure('columns', 'Columns', own.extent.columns),
    figure('rows', 'Rows of motifs', own.extent.rows),
    figure('width', 'Width', own.materials.width, 'cm'),
    figure('height', 'Height', own.materials.height, 'cm'),
    figure('yarn_total', 'Yarn for all of it', own.materials.total, 'm'),
    figure('balls', 'Balls for all of it', own.materials.balls),
  );
};

/** The counts of the rows, yarn by colour, hours: what a maker keeps beside her hook. */
export function partLines(own: Own, numbers: PartNumbers): string[] {
  const plan = planOf(firstKind(own));
  const { rows, colours = [], strands = [], hours: needed } = numbers;
  return gather(
    rows &&
      `${plan.counted === 'blocks' ? 'Blocks' : 'Stitches'} ${rowWord(plan)} by ${rowWord(plan)}, from ${rowWord(plan)} ${rows.from}: ${rows.counts.map((one) => num(one)).join(' ')}.`,
    colours.length > 0 &&
      `Yarn for ${rows ? 'the whole of it' : 'it'}: ${colours.map(({ colour, total }) => `${colour} ${m(total)}`).join(', ')}, the reserve counted in.`,
    strands.length > 0 &&
      `Yarn for it: ${strands.map(({ colour, metres }) => `${colour} ${m(metres)}`).join(', ')}.`,
    needed !== undefined &&
      `About ${hours(needed)}${own.perMinute === undefined ? ` at ${USUAL_PACE} stitches a minute` : ' at your pace'}.`,
  );
}

/** What all of her blanket takes. */
export function wholeLines(own: Own): string[] {
  const { columns, rows } = own.extent;
  const { width, height, colours } = own.materials;
  return gather(
    columns === 1 && rows === 1
      ? []
      : [`All of it: ${num(columns)} × ${num(rows)} motifs, ${size(width, height)}.`],
    `Yarn for all of it: ${colours
      .map(
        ({ colour, total, balls }) =>
          `${colour} ${m(total)}${balls === undefined ? '' : ` (${count(balls, 'ball')})`}`,
      )
      .join(', ')}.`,
  );
}

/** How her blanket differs from the teacher’s, and why. */
export function differsLines(
  own: Own,
  theirs: Own,
  way: Pick<Member, 'gauge' | 'side' | 'colours'>,
): string[] {
  const gauge = gaugeWords(own);
  const why =
    way.side !== undefined
      ? `yours measures ${cm(way.side)}`
      : gauge === undefined
        ? 'your yarn is another'
        : `at your ${t('gauge')} of ${gauge}`;
  // Kinds that come out alike are told of together.
  const alike = new Map<string, { names: string[]; says: (names: string) => string }>();
  for (const { motif, pattern, side, patternSide } of own.kinds) {
    const plan = planOf(motif);
    const resized = motif.size !== pattern.size || motif.otherSize !== pattern.otherSize;
    if (!resized && side === patternSide) continue;
    const what = resized
      ? `${described(motif)}, the pattern’s ${described(pattern)}: ${why} yours comes to ${cm(side)}, beside ${cm(patternSide)}.`
      : `the pattern’s ${count(plan.rows.length, rowWord(plan))}; ${why} it comes to ${cm(side)}, beside ${cm(patternSide)}.`;
    const known = alike.get(what);
    if (known) known.names.push(motif.name);
    else
      alike.set(what, {
        names: [motif.name],
        says: (names) => `Your ${names} ${resized ? 'is' : 'has'} ${what}`,
      });
  }
  const kinds = [...alike.values()].map(({ names, says }) =>
    names.length === 1
      ? says(names[0] ?? '')
      : says(`${names.join(', ')}, each,`).replace(', each,', ', each'),
  );
  const { extent, materials } = own;
  const otherExtent = extent.columns !== theirs.extent.columns || extent.rows !== theirs.extent.rows;
  const changed = way.colours.filter(({ of, hers }) => of !== hers);
  return gather(
    kinds,
    otherExtent &&
      `You make ${num(extent.columns)} × ${num(extent.rows)} motifs where the pattern has ${num(theirs.extent.columns)} × ${num(theirs.extent.rows)}: the size you wish comes nearest so, ${size(materials.width, materials.height)}.`,
    changed.length > 0 && `Your colours: ${changed.map(({ of, hers }) => `${hers} for ${of}`).join(', ')}.`,
  );
}

/** What her numbers take for granted. */
export const ownAssumptions = ({ notes, pieces, materials }: Own): string[] =>
  gather(
    notes.includes('no-gauge') &&
      `The pattern’s ${t('gauge')}, as you have given none: once your swatch is counted, /along join gauge: and yours.`,
    notes.includes('slanting') &&
      'Blocks lie slanting, so a gauge does not tell their size: measure a finished one and say /along join side:.',
    notes.includes('no-ball') &&
      (materials.balls === undefined
        ? `No ball is known, so none are counted: /along join ${SAMPLE_BALL}.`
        : `The pattern’s balls, as you have named none: /along join ${SAMPLE_BALL}.`),
    notes.includes('no-pace') &&
      `${USUAL_PACE} stitches a minute, as you have said no pace (common practice).`,
    pieces.assumptions,
  );

/** `Part 2, The first furrow, first half` */
export function partName(state: AlongState, part: Part): string {
  const { number = 0 } = numbered(state).find((one) => one.part.id === part.id) ?? {};
  return `Part ${number}, ${part.title}`;
}

/** The number that people read. */
export const numberOf = (state: AlongState, part: Pick<Part, 'id'>): number =>
  numbered(state).find((one) => one.part.id === part.id)?.number ?? 0;

/** `given out on 6 January 2031, 09:00`, in her own time. */
export const givenOut = (state: AlongState, part: Part) => when(momentOfPart(state, part).toISOString());
