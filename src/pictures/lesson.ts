/** Small drawings of the lessons: what one looks at in the hand. Nothing in them is told by colour alone. */
import type { Reader } from '../core/base/reader.ts';
import type { Drawn } from '../lessons/lesson.ts';
import { planRows } from '../core/rows/index.ts';
import { drawChart } from './chart.ts';
import {
  altText,
  CLOTH,
  INK,
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

const line = (x1: number, y1: number, x2: number, y2: number, width = 4, dash = '') =>
  `<line x1="${n(x1)}" y1="${n(y1)}" x2="${n(x2)}" y2="${n(y2)}" stroke="${INK}" stroke-width="${width}"${dash === '' ? '' : ` stroke-dasharray="${dash}"`} stroke-linecap="round"/>`;

const label = (x: number, y: number, words: string, anchor: 'start' | 'middle' | 'end' = 'middle') =>
  text(x, y, words, { size: SMALL, anchor });

/** The size of the square that is drawn stitch by stitch. */
const SMALL_SQUARE = 5;

const drawSquare = (reader: Reader): Drawing =>
  drawChart(planRows('diagonal', { size: SMALL_SQUARE }), [], {
    title: `A square of ${SMALL_SQUARE} rising rows`,
    reader,
    colours: {},
  });

/** Vs along the top edge of a row, its turning chain at the side where the row was begun. */
function drawEdge({ hand }: Reader): Drawing {
  const vs = 9;
  const room = 66;
  const begin = 40;
  const top = 120;
  const left = hand === 'left';
  const at = (x: number) => (left ? PAGE - x : x);
  const middles = Array.from({ length: vs }, (_, place) => at(begin + (place + 0.5) * room - 6));
  const chainX = at(begin + vs * room + 52);
  const arm = room / 2 - 6;
  const v = (x: number) =>
    `<path d="M${n(x - arm)} ${n(top)}l${n(arm)} 44l${n(arm)} -44" fill="none" stroke="${INK}" stroke-width="7" stroke-linejoin="round"/>`;
  const chain = Array.from(
    { length: 3 },
    (_, link) =>
      `<ellipse cx="${n(chainX)}" cy="${178 - link * 32}" rx="11" ry="16" fill="none" stroke="${INK}" stroke-width="5"/>`,
  ).join('');
  const wide = vs * room - 4;
  const body =
    label(PAGE / 2, 48, 'The top edge of a row, seen from above') +
    rect(
      left ? at(begin - 8) - wide : begin - 8,
      top + 54,
      wide,
      70,
      `fill="${CLOTH}" stroke="${PALE_INK}" stroke-width="2"`,
    ) +
    middles.map(v).join('') +
    middles.map((x, place) => label(x, top - 16, String(vs - place))).join('') +
    chain +
    label(chainX, 232, 'turning') +
    label(chainX, 258, 'chain');
  return page(
    { width: PAGE, height: 280 },
    altText([
      `The top edge of a row seen from above: ${vs} Vs side by side, each one stitch, numbered from the turning chain at the ${left ? 'left' : 'right'}.`,
      'The turning chain stands upright beside the first V.',
    ]),
    '',
    body,
  );
}

/** A square standing on its corner with its two diagonals. */
function drawDiagonals(): Drawing {
  const middle = { x: PAGE / 2, y: 290 };
  const half = { across: 330, along: 210 };
  const corners = [
    [middle.x, middle.y - half.along],
    [middle.x + half.across, middle.y],
    [middle.x, middle.y + half.along],
    [middle.x - half.across, middle.y],
  ] as const;
  const body =
    label(PAGE / 2, 48, 'Off the hook: a diamond, its edges as long as the square’s sides') +
    `<path d="${outline(corners)}" fill="${CLOTH}" stroke="${INK}" stroke-width="6"/>` +
    line(middle.x - half.across, middle.y, middle.x + half.across, middle.y, 4, '14 10') +
    line(middle.x, middle.y - half.along, middle.x, middle.y + half.along, 4, '14 10') +
    label(middle.x + 12, middle.y - 14, 'half the widest row', 'start') +
    label(middle.x + 12, middle.y + 60, 'half the way', 'start') +
    label(middle.x + 12, middle.y + 88, 'from corner to corner', 'start') +
    label(middle.x + half.across / 2 + 24, middle.y + half.along / 2 + 30, 'the side', 'start');
  return page(
    { width: PAGE, height: 530 },
    altText([
      'A diamond with its two diagonals dashed: the widest row from left to right, and the way from the first corner to the last.',
      'Half of each and one edge make a right-angled triangle; the edge is its longest side.',
    ]),
    '',
    body,
  );
}

/** Squares in strips: short seams in a strip, long seams between strips. */
function drawStrips(): Drawing {
  const columns = 4;
  const rows = 3;
  const side = 96;
  const gap = 34;
  const left = 150;
  const top = 84;
  const at = (column: number) => left + column * (side + gap);
  const squares = Array.from({ length: columns }, (_, column) =>
    Array.from({ length: rows }, (_, row) =>
      rect(at(column), top + row * side, side, side, `fill="${CLOTH}" stroke="${INK}" stroke-width="3"`),
    ).join(''),
  ).join('');
  const short = Array.from({ length: columns }, (_, column) =>
    Array.from({ length: rows - 1 }, (_, row) =>
      line(at(column) + 8, top + (row + 1) * side, at(column) + side - 8, top + (row + 1) * side, 9),
    ).join(''),
  ).join('');
  const long = Array.from({ length: columns - 1 }, (_, column) =>
    line(at(column) + side + gap / 2, top, at(column) + side + gap / 2, top + rows * side, 6, '4 14'),
  ).join('');
  const body =
    label(PAGE / 2, 36, 'First the thick seams inside each strip,') +
    label(PAGE / 2, 64, 'then the dotted ones between the strips') +
    squares +
    short +
    long;
  return page(
    { width: PAGE, height: top + rows * side + 40 },
    altText([
      `${columns} strips of ${rows} squares, a little apart. Thick lines: the ${rows - 1} seams inside each strip.`,
      `Dotted lines: the ${columns - 1} long seams between the strips. The outer edges have none.`,
    ]),
    '',
    body,
  );
}

/** A corner of a border: three stitches into one. */
function drawCorner(): Drawing {
  const corner = { x: 250, y: 150 };
  const step = 62;
  const along = Array.from({ length: 7 }, (_, at) => {
    const x = corner.x + (at + 1) * step;
    return line(x, corner.y - 8, x, corner.y - 62, 6) + line(x - 16, corner.y - 62, x + 16, corner.y - 62, 6);
  }).join('');
  const down = Array.from({ length: 3 }, (_, at) => {
    const y = corner.y + (at + 1) * step;
    return line(corner.x - 8, y, corner.x - 62, y, 6) + line(corner.x - 62, y - 16, corner.x - 62, y + 16, 6);
  }).join('');
  const fan = [
    [0, -62],
    [-44, -44],
    [-62, 0],
  ]
    .map(([x = 0, y = 0]) => {
      const long = Math.hypot(x, y);
      const [ax, ay] = [(-y / long) * 14, (x / long) * 14];
      const [tx, ty] = [corner.x + x, corner.y + y];
      return line(corner.x - 4, corner.y - 4, tx, ty, 6) + line(tx - ax, ty - ay, tx + ax, ty + ay, 6);
    })
    .join('');
  const body =
    label(PAGE / 2, 48, 'A corner: 3 stitches go into one, so that it has 2 more than it used up') +
    rect(corner.x, corner.y, 500, 220, `fill="${CLOTH}" stroke="${INK}" stroke-width="4"`) +
    along +
    down +
    fan +
    label(corner.x - 120, corner.y - 40, '3 into 1', 'middle');
  return page(
    { width: PAGE, height: 400 },
    altText([
      'A corner of a blanket with one round of a border: stitches stand side by side along both edges.',
      'Three stitches spread from the one place in the corner.',
    ]),
    '',
    body,
  );
}

const DRAWINGS: Readonly<Record<Drawn, (reader: Reader) => Drawing>> = {
  square: drawSquare,
  edge: drawEdge,
  diagonals: drawDiagonals,
  strips: drawStrips,
  corner: drawCorner,
};

/** The drawing of a lesson, in the reader's terms. */
export const drawLesson = (drawn: Drawn, reader: Reader): Drawing => DRAWINGS[drawn](reader);
