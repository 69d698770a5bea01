/** How a blanket is spoken of. */
import { figure, gather, type Figure } from '../../src/chat/answer.ts';
import { defined } from '../../src/core/base/defined.ts';
import type { Alike, Sight } from '../../src/core/blanket/colour.ts';
import {
  countLaid,
  isOffMiddle,
  letter,
  readLaidBy,
  type LaidBy,
  withLetter,
} from '../../src/core/blanket/layout.ts';
import { writeMap } from '../../src/core/blanket/map.ts';
import { findUnevenKinds, type Pieces } from '../../src/core/blanket/pieces.ts';
import { unevenWords } from '../shared/uneven-words.ts';
import { type Extent, type Materials } from '../../src/core/blanket/materials.ts';
import type { MotifSpec } from '../../src/core/yarn/motif.ts';
import { sayEstimated } from '../../src/core/yarn/motif-yarn.ts';
import { findFewestTouches, touchesOf } from '../../src/core/blanket/scatter.ts';
import { cm, count, m, num, size, t } from '../../src/core/base/reader.ts';
import type { Blanket } from '../../src/projects/schema.ts';
import { careFor } from '../../src/core/size/cautions.ts';
import { caution } from '../../src/standards/care.ts';
import { writeTurnings } from '../../src/core/blanket/turnings.ts';
import { GAUGED_BAND } from '../../src/standards/consumption.ts';
import { SETTINGS } from '../../src/standards/settings.ts';
import { listed } from '../shared/listed.ts';
import { ARRANGED } from './options.ts';

/** `A moss square 10, B sand square 10` */
export const makeCounts = (names: readonly string[], counts: readonly number[]) =>
  names.map((name, kind) => `${withLetter(kind, name)} ${num(counts[kind] ?? 0)}`).join(', ');

/** `4 across and 5 down` */
export const extentWords = ({ columns, rows }: Pick<Extent, 'columns' | 'rows'>) =>
  `${columns} across and ${rows} down`;

/** The make-counts as figures: `kind_a`, `kind_b` … */
export const kindFigures = (names: readonly string[], counts: readonly number[]): Figure[] =>
  names.map((name, kind) =>
    figure(`kind_${letter(kind).toLowerCase()}`, withLetter(kind, name, ', '), counts[kind] ?? 0),
  );

/** How a layout is laid: `Scattered … Turned as Barn Raising: diamonds …` */
export function laidLines(laid: LaidBy, kinds: number): string[] {
  const { name, says, shape } = SETTINGS[laid.setting];
  return gather(
    `Arrangement: ${laid.arrangement}, ${ARRANGED[laid.arrangement]}${laid.arrangement === 'scattered' ? `, seed ${laid.seed}` : ''}.`,
    laid.turnings !== undefined &&
      `Turned: ${writeTurnings(laid.turnings, kinds)}${laid.turnings === 'random' ? `, seed ${laid.seed}` : ''}.`,
    laid.setting !== 'upright' && `Setting: ${name}, ${says} (${shape}).`,
  );
}

/** More rows than this are not written into an answer: the picture shows them. */
const MOST_LINES = 30;

/** The map as lines, while it can be read. */
export const mapText = ({ layout, columns, rows }: Pick<Blanket, 'layout' | 'columns' | 'rows'>): string[] =>
  rows > MOST_LINES || columns > MOST_LINES
    ? ['The map is too large for a message; /blanket picture shows it.']
    : writeMap(layout, columns);

/** What is said of alike motifs side by side, where there are several kinds. */
export function touchWords(
  blanket: Pick<Blanket, 'kinds' | 'columns' | 'rows' | 'layout'>,
): string | undefined {
  if (blanket.kinds.length < 2) return undefined;
  const { columns, rows, layout } = blanket;
  const touches = touchesOf(
    layout.map(({ kind }) => kind),
    columns,
  );
  const { fewest, crowded } = findFewestTouches(columns, rows, countLaid(layout, blanket.kinds.length));
  if (touches === 0) return 'No two alike lie side by side.';
  const said = `Two alike lie side by side ${touches === 1 ? 'once' : `${num(touches)} times`}`;
  if (touches > fewest)
    return `${said}; ${fewest === 0 ? 'none' : num(fewest)} would have to, with these counts: arrangement scattered finds that.`;
  return crowded === undefined
    ? `${said}.`
    : `${said}: ${blanket.kinds[crowded] ?? ''} fills more than half the places, and no layout has fewer.`;
}

/** Whether turning a motif can be seen. */
export const turningShows = (kinds: readonly MotifSpec[]): boolean =>
  kinds.some(({ shape, runs }) => (shape === 'diagonal' || shape === 'blocks') && runs.length > 1);

/** What is said where turning changes nothing that can be seen. */
export function turnAssumptions(laid: LaidBy, kinds: readonly MotifSpec[]): string[] {
  return (laid.setting === 'upright' && laid.turnings === undefined) || turningShows(kinds)
    ? []
    : ['Turning shows only on motifs worked corner to corner in two colours or more; none of these is.'];
}

/** Barn Raising has a middle; an odd number of columns or rows puts it off. */
export const middleNote = (laid: LaidBy, extent: Pick<Extent, 'columns' | 'rows'>): string[] =>
  isOffMiddle(laid, extent)
    ? [
        'Its middle lies between motifs: with an odd number of columns or rows the diamonds lie half a motif off the middle.',
      ]
    : [];

/** `hdc, dc; 3 in each corner` in words. */
export function borderWords({ border }: Pick<Blanket, 'border'>): string {
  const { rounds, corner } = border;
  if (rounds.length === 0) return 'No border.';
  const said = rounds.map(
    ({ stitch, colour }) => `${t(stitch)}${colour === undefined ? '' : ` in ${colour}`}`,
  );
  return `Border, from the inside: ${said.join(', ')}; ${count(corner, 'stitch', 'stitches')} in each corner.`;
}

export const joiningWords = ({ joining }: Pick<Blanket, 'joining'>): string =>
  `Joined with ${{ whip: 'whip stitch', 'slip-stitch': t('slip stitch'), 'single-crochet': t('single crochet') }[joining.method]}${joining.colour === undefined ? '' : ` in ${joining.colour}`}.`;

/** The finished size as figures, where it is known. */
export const sizeFigures = (made: Pick<Materials, 'width' | 'height'> | undefined) =>
  gather(figure('width', 'Width', made?.width, 'cm'), figure('height', 'Height', made?.height, 'cm'));

/** Finished size, as a line. */
export const sizeWords = ({ width, height, border }: Pick<Materials, 'width' | 'height' | 'border'>) =>
  `${size(width, height)}${border.length > 0 ? ', the border counted in' : ''}`;

/** One line a colour: what it is for, in metres, and what to buy. */
export function needLine(need: Materials['colours'][number]): string {
  const parts = [
    ['motifs', need.motifs],
    ['tails', need.tails],
    ['carried', need.carried],
    ['seams', need.seams],
    ['border', need.border],
  ] as const;
  const said = parts.filter(([, metres]) => metres > 0).map(([name, metres]) => `${name} ${m(metres)}`);
  const balls =
    need.balls === undefined
      ? '; no ball is known'
      : `: ${count(need.balls, 'ball')}${need.ballsHigh !== undefined && need.ballsHigh > need.balls ? `, up to ${need.ballsHigh} if the estimates run high` : ''}`;
  return `${need.colour}: ${said.join(', ')}; ${m(need.total)} with the reserve${balls}.`;
}

/** How well the yarn of the motifs is known. */
export function howSure({ motifs }: Pieces): string[] {
  const of = (how: Pieces['motifs'][number]['how']) => motifs.filter((motif) => motif.how === how);
  const named = (how: Pieces['motifs'][number]['how']) => listed(of(how).map(({ name }) => name));
  const weighed = of('weighed').map(({ name, band }) => `${name} (right to about ${num(band, 0)} %)`);
  const asWeighed = of('as-weighed').map(({ name, band }) => `${name} (right to about ${num(band, 0)} %)`);
  return gather(
    weighed.length > 0 && `Weighed: ${listed(weighed)}, tails and carried strands with them.`,
    asWeighed.length > 0 && `As the weighed ones, stitch by stitch: ${listed(asWeighed)}.`,
    of('by-gauge').length > 0 &&
      `Estimated from the ${t('gauge')}, right to about ${num(GAUGED_BAND)} %: ${named('by-gauge')}. Weigh one to be surer.`,
    of('rough').length > 0 && `Estimated from hook and yarn, right to about a quarter: ${named('rough')}.`,
  );
}

/** What is taken for granted of a blanket’s yarn, where how well it is known is said beside it. */
export function assumedOf({ motifs, assumptions }: Pieces): string[] {
  const said = new Set(motifs.map(({ name }) => sayEstimated(name)));
  return assumptions.filter((text) => !said.has(text));
}

/** How the border, the seams and the side of a motif are known. */
export const howReckoned = (pieces: Pieces): string[] => [
  pieces.border.rounds.length > 0
    ? `The border’s yarn is ${pieces.borderWeighed ? 'reckoned from the weighed stitch' : 'estimated like the motifs’'}; seams are reckoned by geometry.`
    : 'Seams are reckoned by geometry.',
  `Motifs of ${cm(pieces.side)}, ${pieces.sideHow === 'measured' ? 'as measured' : `as their ${t('gauge')} says, blocked`}.`,
];

/** What was weighed and what is estimated, said of each part. */
export const sureness = (pieces: Pieces): string[] => [...howSure(pieces), ...howReckoned(pieces)];

/** Said where some of the balls are at hand and others are to be bought. */
export const atHandCaution = ({ colours }: Pick<Materials, 'colours'>): string[] =>
  colours.some(({ balls, toBuy }) => balls !== toBuy)
    ? ['Balls at hand and balls bought may be of two dye lots: hold them together in daylight.']
    : [];

/** Cautions of every answer about a blanket's yarn and size. */
export function blanketCautions(pieces: Pieces, made: Materials): string[] {
  return gather(
    pieces.motifs.some(({ how }) => how === 'rough') ? [caution('rough-estimate')] : [caution('dye-lot')],
    careFor(made.width, made.height),
    unevenWords(pieces.uneven),
  );
}

const SEEN_BY: Readonly<Record<Sight, string>> = {
  usual: 'to most eyes',
  protanopia: 'to eyes without red cones (protanopia)',
  deuteranopia: 'to eyes without green cones (deuteranopia)',
  tritanopia: 'to eyes without blue cones (tritanopia)',
};

/** Pairs that somebody would mix up, one line a pair. */
export function alikeWords(pairs: readonly Alike[]): string[] {
  const by = new Map<string, Alike[]>();
  for (const pair of pairs) {
    const key = `${pair.first} and ${pair.second}`;
    by.set(key, [...(by.get(key) ?? []), pair]);
  }
  return [...by].map(([names, all]) => {
    const worst = all.find(({ sight }) => sight === 'usual') ?? all[0];
    const who = worst?.sight === 'usual' ? SEEN_BY.usual : listed(all.map(({ sight }) => SEEN_BY[sight]));
    return `${names} are hard to tell apart ${who}: colour difference ${num(worst?.difference ?? 0, 1)} (CIEDE2000), contrast ${num(worst?.contrast ?? 1, 2)} to 1 (WCAG). Go by the letters.`;
  });
}

/** What every answer about a layout shows of it. */
export function layoutFacts(blanket: Blanket, kinds: readonly MotifSpec[]) {
  const laid = readLaidBy(blanket.setting);
  const counts = countLaid(blanket.layout, blanket.kinds.length);
  const touches = touchWords(blanket);
  return {
    laid,
    counts,
    lines: gather(laidLines(laid, kinds.length), middleNote(laid, blanket), touches, mapText(blanket)),
    figures: gather(
      figure('motifs', 'Motifs', blanket.layout.length),
      figure('columns', 'Across', blanket.columns),
      figure('rows', 'Down', blanket.rows),
      kindFigures(blanket.kinds, counts),
      blanket.kinds.length > 1 &&
        figure(
          'touches',
          'Times two alike lie side by side',
          touchesOf(
            blanket.layout.map(({ kind }) => kind),
            blanket.columns,
          ),
        ),
    ) satisfies Figure[],
    assumptions: turnAssumptions(laid, kinds),
    cautions: unevenWords(findUnevenKinds(kinds)),
    data: defined({
      blanket: blanket.name,
      arrangement: laid.arrangement,
      setting: laid.setting,
      turnings: laid.turnings,
      seed: laid.seed,
      kinds: blanket.kinds,
      counts,
      map: writeMap(blanket.layout, blanket.columns),
    }),
  };
}
