/** How a group blanket comes along: motifs by day, where the end may lie, the closing day, and what each week must bring. */
import { count, num } from '../core/base/reader.ts';
import {
  altText,
  drawable,
  fitted,
  hatch,
  INK,
  lines,
  n,
  outline,
  page,
  PAGE,
  PALE_INK,
  rect,
  SMALL,
  text,
  type Drawing,
} from './drawing.ts';

export interface PaceView {
  readonly title: string;
  /** Motifs that came, by the day since the opening, in order. */
  readonly arrivals: readonly { readonly day: number; readonly motifs: number }[];
  /** Days since the opening. */
  readonly today: number;
  readonly wanted: number;
  /** Days from today; unset where the end cannot be said. */
  readonly ends?: { readonly early: number; readonly middle: number; readonly late: number } | undefined;
  /** Days from today to the end of the closing day, and that day in words. */
  readonly daysLeft?: number | undefined;
  readonly closing?: string | undefined;
  /** Motifs a week that the closing day needs. */
  readonly needed?: number | undefined;
  /** A day since the opening in words: `31 May`. */
  readonly dayWords: (day: number) => string;
}

/** From the title to the upper edge of the plot, with one line under the title. */
const TOP = 110;
const PLOT = 354;
const LINE = 28;
const LEFT = 86;
const RIGHT = 40;
/** From the lower edge of the plot to the end, with one line of key. */
const BOTTOM = 86;
const BLUE = '#3a6ea5';
const RUST = '#a5482a';
/** The end is drawn as far as so many times the days up to now, or the days to the middle: one slow spell must not flatten everything. */
const FARTHEST = 4;
const PAST_MIDDLE = 2;
/** No further than this is drawn for what may come, and for the closing day: ten years, and two. */
const FARTHEST_DAYS = 3650;
const FARTHEST_CLOSING = 730;

/** A round number of steps along an axis: 1, 2 or 5 times a power of ten, at most `most` of them. */
function stepFor(span: number, most: number): number {
  const rough = span / most;
  const power = 10 ** Math.floor(Math.log10(rough));
  return Math.max(1, [1, 2, 5, 10].map((times) => times * power).find((step) => step >= rough) ?? rough);
}

/** Draws the plot. */
export function drawPace(view: PaceView): Drawing {
  const { arrivals, today, wanted, ends, daysLeft, needed } = view;
  const done = arrivals.reduce((sum, { motifs }) => sum + motifs, 0);
  const farthest = Math.max(
    Math.max(today, 1) * FARTHEST,
    Math.min((ends?.middle ?? 0) * PAST_MIDDLE, FARTHEST_DAYS),
    daysLeft !== undefined && daysLeft <= FARTHEST_CLOSING ? daysLeft : 0,
  );
  const late = ends === undefined ? undefined : Math.min(ends.late, farthest);
  const span = Math.max(today + Math.max(late ?? 0, Math.min(daysLeft ?? 0, farthest)), today * 1.1, 7);
  const summary = `${count(done, 'motif')} of ${num(wanted)} in after ${count(Math.round(today), 'day')}`;
  const said = [
    `${summary}.`,
    ...(ends === undefined
      ? []
      : [
          `Four times in five it ends between ${view.dayWords(today + ends.early)} and ${view.dayWords(today + ends.late)}.`,
        ]),
    ...(daysLeft === undefined
      ? []
      : [`The closing day is ${view.closing ?? view.dayWords(today + daysLeft)}.`]),
    ...(needed === undefined ? [] : [`Each week must bring ${num(needed, 1)}.`]),
  ];
  const heads = lines(said.slice(1).join(' ') || summary, PAGE - 2 * RIGHT, SMALL);
  const top = TOP + (heads.length - 1) * LINE;
  const foot = top + PLOT;
  const x = (day: number) => LEFT + (day / span) * (PAGE - LEFT - RIGHT);
  const y = (motifs: number) => foot - (motifs / wanted) * PLOT;
  const axis = (x1: number, y1: number, x2: number, y2: number, rest = '') =>
    `<path d="M${n(x1)} ${n(y1)}L${n(x2)} ${n(y2)}" fill="none" stroke="${INK}" stroke-width="1.5" ${rest}/>`;

  let sofar = 0;
  const came = arrivals.map(({ day, motifs }) => {
    const before = sofar;
    sofar += motifs;
    return `L${n(x(day))} ${n(y(before))}L${n(x(day))} ${n(y(sofar))}`;
  });
  const steps = `<path d="M${n(x(0))} ${n(y(0))}${came.join('')}L${n(x(today))} ${n(y(done))}" fill="none" stroke="${BLUE}" stroke-width="5" stroke-linejoin="round"/>`;
  const middle = ends !== undefined && ends.middle <= farthest;
  const shape =
    ends === undefined || late === undefined
      ? undefined
      : outline([
          [x(today), y(done)],
          [x(today + Math.min(ends.early, farthest)), y(wanted)],
          [x(today + late), y(wanted)],
          // Cut off at the edge, where the latest end lies beyond it.
          ...(ends.late > farthest
            ? [[x(today + late), y(done + ((wanted - done) * farthest) / ends.late)] as const]
            : []),
        ]);
  const band =
    shape === undefined
      ? ''
      : `<path class="band" d="${shape}" fill="#cddcec"/><path class="hatched" d="${shape}" fill="url(#guess)" fill-opacity="0.6"/>` +
        (middle
          ? `<path class="middle" d="M${n(x(today))} ${n(y(done))}L${n(x(today + ends.middle))} ${n(y(wanted))}" fill="none" stroke="${INK}" stroke-width="2.5" stroke-dasharray="10 7"/>`
          : '');
  const closing =
    daysLeft === undefined || daysLeft > farthest || today + daysLeft < 0
      ? ''
      : `<path class="closing" d="M${n(x(today + daysLeft))} ${n(top - 6)}V${n(foot)}" stroke="${RUST}" stroke-width="4" stroke-dasharray="3 5"/>` +
        (needed === undefined
          ? ''
          : `<path class="needed" d="M${n(x(today))} ${n(y(done))}L${n(x(today + daysLeft))} ${n(y(wanted))}" stroke="${RUST}" stroke-width="3" fill="none"/>`);
  const upBy = stepFor(wanted, 6);
  const up = Array.from({ length: Math.floor(wanted / upBy) + 1 }, (_, index) => index * upBy).map(
    (motifs) =>
      rect(LEFT, y(motifs), PAGE - LEFT - RIGHT, 1, 'fill="#d8d8d8"') +
      text(LEFT - 10, y(motifs) + 8, num(motifs), { size: SMALL, anchor: 'end', fill: PALE_INK }),
  );
  const along = [0, 0.5, 1].map((part) =>
    text(x(span * part), foot + 30, view.dayWords(span * part), {
      size: SMALL,
      anchor: part === 0 ? 'start' : part === 1 ? 'end' : 'middle',
      fill: PALE_INK,
    }),
  );
  const key = [
    'Thick line: motifs in.',
    ...(ends === undefined
      ? []
      : [
          `Hatched: where it goes four times in five${ends.late > farthest ? ', further than drawn' : ''}${middle ? '; dashes: the middle' : ''}.`,
        ]),
    ...(closing !== ''
      ? ['Dots: the closing day.']
      : daysLeft !== undefined && daysLeft > farthest
        ? ['The closing day lies beyond the right edge.']
        : []),
    ...(needed === undefined || closing === '' ? [] : ['Thin line: what it needs.']),
  ].join(' ');
  const keyLines = lines(key, PAGE - 2 * RIGHT, SMALL);
  const body =
    text(RIGHT, 48, fitted(drawable(view.title), PAGE - 2 * RIGHT, 32, true), { size: 32, bold: true }) +
    heads
      .map((line, index) => text(RIGHT, 84 + index * LINE, line, { size: SMALL, fill: PALE_INK }))
      .join('') +
    up.join('') +
    band +
    steps +
    closing +
    axis(LEFT, foot, PAGE - RIGHT, foot) +
    axis(x(today), top, x(today), foot, 'stroke-opacity="0.35"') +
    along.join('') +
    keyLines.map((line, index) => text(RIGHT, foot + 62 + index * LINE, line, { size: SMALL })).join('');
  return page(
    { width: PAGE, height: foot + BOTTOM + (keyLines.length - 1) * LINE },
    altText([`How ${drawable(view.title)} comes along: ${said.join(' ')}`]),
    hatch('guess', 12, BLUE, 2),
    body,
  );
}
