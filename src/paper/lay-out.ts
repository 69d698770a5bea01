/** From what a sheet holds to where everything stands on which page. Lengths in points, from the top left. */
import { drawable } from '../pictures/drawing.ts';
import { PAPER_POINTS, type Block, type Cell, type Paper, type Tick } from './paper.ts';

/** The width of a text in points. */
export type Measure = (text: string, size: number, bold: boolean) => number;

export type Mark =
  | {
      readonly mark: 'text';
      readonly x: number;
      /** The line that the letters stand on. */
      readonly y: number;
      readonly text: string;
      readonly size: number;
      readonly bold: boolean;
      readonly pale: boolean;
    }
  | {
      readonly mark: 'box';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly fill?: string;
      readonly stroke: boolean;
    }
  | {
      readonly mark: 'rule';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly dashed: boolean;
    }
  | {
      readonly mark: 'drawing';
      readonly x: number;
      readonly y: number;
      readonly scale: number;
      readonly svg: string;
    };

/** What a reading machine is told of a group of marks. */
export type Role = 'H1' | 'H2' | 'H3' | 'P' | 'Figure' | 'Artifact';

/** Marks that are read together. */
export interface Group {
  readonly role: Role;
  /** What a drawing shows. */
  readonly alt?: string;
  readonly marks: readonly Mark[];
}

/** A strip of a page that is not broken. */
interface Slice {
  readonly height: number;
  /** Room above it, left out at the top of a page. */
  readonly gap: number;
  /** At its own top, 0. */
  readonly groups: readonly Group[];
  /** It does not stand alone at the foot of a page. */
  readonly withNext?: boolean;
  /** Said again at the top of the page where it begins one. */
  readonly head?: Slice;
  /** The same, no higher than that; undefined where it would be too small to be of use. */
  readonly within?: (height: number) => Slice | undefined;
  readonly newPage?: boolean;
}

const MARGIN = 46;
const FOOT = 30;
const SIZES = { usual: 10.5, large: 18 } as const satisfies Record<string, number>;
const LEADING = 1.36;
/** A picture is made smaller to stay on a page, but not by more than this. */
const LEAST_SHRUNK = 0.62;

/** How a page is written: its measures, and the size of its letters. */
interface Desk {
  readonly measure: Measure;
  readonly width: number;
  readonly height: number;
  readonly size: number;
}

/** Breaks a text into lines that fit; a word too long for a line is cut in two. */
export function breakLines(text: string, width: number, widthOf: (text: string) => number): string[] {
  const space = widthOf(' ');
  const lines: string[] = [];
  let line = '';
  let long = 0;
  const put = (word: string) => {
    const own = widthOf(word);
    if (line !== '' && long + space + own > width) {
      lines.push(line);
      line = '';
      long = 0;
    }
    if (own > width && [...word].length > 1) {
      const letters = [...word];
      let fits = 1;
      while (fits < letters.length - 1 && widthOf(letters.slice(0, fits + 1).join('')) <= width) fits++;
      lines.push(letters.slice(0, fits).join(''));
      put(letters.slice(fits).join(''));
      return;
    }
    long += (line === '' ? 0 : space) + own;
    line = line === '' ? word : `${line} ${word}`;
  };
  for (const word of drawable(text).split(' ')) put(word);
  lines.push(line);
  return lines;
}

interface Look {
  readonly size: number;
  readonly bold?: boolean;
  readonly pale?: boolean;
  readonly role?: Role;
}

/** Lines of a text at a place, as marks, and how high they are. */
function write(
  desk: Desk,
  text: string,
  x: number,
  width: number,
  look: Look,
): { marks: Mark[][]; step: number } {
  const { size, bold = false, pale = false } = look;
  const step = size * LEADING;
  const lines = breakLines(text, width, (part) => desk.measure(part, size, bold));
  return {
    step,
    marks: lines.map((line) => [{ mark: 'text', x, y: size, text: line, size, bold, pale }]),
  };
}

const moved = (mark: Mark, dx: number, dy: number): Mark => ({ ...mark, x: mark.x + dx, y: mark.y + dy });
const lower = (groups: readonly Group[], by: number): Group[] =>
  groups.map((group) => ({ ...group, marks: group.marks.map((mark) => moved(mark, 0, by)) }));

/** Slices one under the other as one. */
function stack(slices: readonly Slice[]): Slice {
  let y = 0;
  const groups = slices.flatMap((slice, index) => {
    if (index > 0) y += slice.gap;
    const at = lower(slice.groups, y);
    y += slice.height;
    return at;
  });
  return { height: y, gap: slices[0]?.gap ?? 0, groups };
}

/** A paragraph: short ones whole, of long ones no line stands alone. */
function paragraph(desk: Desk, text: string, look: Look, gap: number, x = 0, width = desk.width): Slice[] {
  const { marks, step } = write(desk, text, x, width, look);
  const role = look.role ?? 'P';
  const cut =
    marks.length <= 4
      ? [marks]
      : [marks.slice(0, 2), ...marks.slice(2, -2).map((one) => [one]), marks.slice(-2)];
  return cut.map((lines, index) => ({
    height: lines.length * step,
    gap: index === 0 ? gap : 0,
    groups: [{ role, marks: lines.flatMap((line, at) => line.map((mark) => moved(mark, 0, at * step))) }],
  }));
}

const textOf = (cell: string | Cell) => (typeof cell === 'string' ? cell : cell.text);

function tableSlices(desk: Desk, { widths, head, rows }: Extract<Block, { kind: 'table' }>): Slice[] {
  const { size } = desk;
  const all = widths.reduce((sum, one) => sum + one, 0);
  const columns = widths.map((one) => (one / all) * desk.width);
  const padding = size * 0.35;
  const row = (cells: readonly (string | Cell)[], bold: boolean): Slice => {
    let x = 0;
    let most = 0;
    const groups = cells.map((cell, index): Group => {
      const column = columns[index] ?? 0;
      const dab = typeof cell === 'string' ? undefined : cell.dab;
      const indent = dab === undefined ? 0 : size * 1.25;
      const { marks, step } = write(desk, textOf(cell), x + indent, column - indent - size * 0.6, {
        size: size * 0.95,
        bold,
      });
      most = Math.max(most, marks.length * step);
      const written = marks.flatMap((line, at) => line.map((mark) => moved(mark, 0, at * step + padding)));
      const square: Mark[] =
        dab === undefined
          ? []
          : [
              {
                mark: 'box',
                x,
                y: padding + size * 0.12,
                width: size * 0.9,
                height: size * 0.9,
                fill: dab,
                stroke: true,
              },
            ];
      x += column;
      return { role: 'P', marks: [...square, ...written] };
    });
    const height = most + padding * 2;
    const under: Mark = { mark: 'rule', x: 0, y: height, width: desk.width, dashed: false };
    return { height, gap: 0, groups: [...groups, { role: 'Artifact', marks: [under] }] };
  };
  const first = { ...row(head, true), gap: size * 0.4, withNext: true };
  return [first, ...rows.map((cells) => ({ ...row(cells, false), head: first }))];
}

/** A square to tick, the height of a letter. */
const tickBox = (x: number, size: number): Mark => ({
  mark: 'box',
  x,
  y: size * 0.12,
  width: size * 0.95,
  height: size * 0.95,
  stroke: true,
});

function tickSlices(desk: Desk, ticks: readonly Tick[]): Slice[] {
  const { size } = desk;
  const indent = size * 1.6;
  return ticks.flatMap(({ text, boxes = [] }) => {
    const words = paragraph(desk, text, { size }, size * 0.4, indent, desk.width - indent);
    const [first] = words;
    if (boxes.length === 0 && first)
      return [
        { ...first, groups: [...first.groups, { role: 'Artifact' as const, marks: [tickBox(0, size)] }] },
        ...words.slice(1),
      ];
    const labels = boxes.map(drawable);
    const each = Math.max(...labels.map((label) => desk.measure(label, size, false))) + size * 2.4;
    const abreast = Math.max(1, Math.floor((desk.width - indent) / each));
    const rows = Array.from({ length: Math.ceil(labels.length / abreast) }, (_, row): Slice => {
      const shown = labels.slice(row * abreast, (row + 1) * abreast);
      const at = (index: number) => indent + index * each;
      return {
        height: size * 1.55,
        gap: row === 0 ? size * 0.15 : 0,
        groups: [
          {
            role: 'P',
            marks: shown.map((label, index): Mark => ({
              mark: 'text',
              x: at(index) + size * 1.25,
              y: size,
              text: label,
              size,
              bold: false,
              pale: false,
            })),
          },
          { role: 'Artifact', marks: shown.map((_, index) => tickBox(at(index), size)) },
        ],
      };
    });
    const last = words.at(-1);
    return last ? [...words.slice(0, -1), { ...last, withNext: true }, ...rows] : rows;
  });
}

function pictureSlices(desk: Desk, block: Extract<Block, { kind: 'picture' }>): Slice[] {
  const { size } = desk;
  const under = paragraph(desk, block.says, { size: size * 0.85, pale: true }, size * 0.5);
  const most = desk.height * (block.most ?? 0.8);
  const whole = Math.min(desk.width / block.width, most / block.height);
  const drawn = (scale: number): Slice => ({
    height: block.height * scale,
    gap: size * 0.8,
    groups: [
      {
        role: 'Figure',
        alt: block.says,
        marks: [{ mark: 'drawing', x: (desk.width - block.width * scale) / 2, y: 0, scale, svg: block.svg }],
      },
    ],
    withNext: true,
    within: (height) => {
      const scale = height / block.height;
      return scale < whole * LEAST_SHRUNK ? undefined : drawn(scale);
    },
  });
  return [drawn(whole), ...under];
}

function slicesOf(desk: Desk, block: Block): Slice[] {
  const { size } = desk;
  switch (block.kind) {
    case 'title':
      return paragraph(desk, block.text, { size: size * 1.9, bold: true, role: 'H1' }, size);
    case 'heading':
      return paragraph(desk, block.text, { size: size * 1.35, bold: true, role: 'H2' }, size * 1.3).map(
        (slice) => ({ ...slice, withNext: true }),
      );
    case 'part':
      return paragraph(desk, block.text, { size: size * 1.1, bold: true, role: 'H3' }, size * 0.9).map(
        (slice) => ({ ...slice, withNext: true }),
      );
    case 'text':
      return paragraph(desk, block.text, { size }, size * 0.5);
    case 'strong':
      return paragraph(desk, block.text, { size, bold: true }, size * 0.6).map((slice) => ({
        ...slice,
        withNext: true,
      }));
    case 'small':
      return paragraph(desk, block.text, { size: size * 0.85, pale: true }, size * 0.4);
    case 'list':
      return block.items.flatMap((item) => {
        const indent = size * 1.1;
        const [first, ...rest] = paragraph(desk, item, { size }, size * 0.25, indent, desk.width - indent);
        if (!first) return [];
        const dot: Mark = { mark: 'text', x: 0, y: size, text: '•', size, bold: false, pale: false };
        return [
          { ...first, groups: [{ role: 'Artifact' as const, marks: [dot] }, ...first.groups] },
          ...rest,
        ];
      });
    case 'facts': {
      const widest = Math.max(...block.facts.map(([label]) => desk.measure(drawable(label), size, true)));
      const indent = Math.min(desk.width * 0.4, widest + size);
      return block.facts.map(([label, value]) => {
        const name = write(desk, label, 0, indent - size * 0.5, { size, bold: true });
        const said = write(desk, value, indent, desk.width - indent, { size });
        const lines = Math.max(name.marks.length, said.marks.length);
        const marks = [name, said].flatMap(({ marks, step }) =>
          marks.flatMap((line, at) => line.map((mark) => moved(mark, 0, at * step))),
        );
        return { height: lines * size * LEADING, gap: size * 0.2, groups: [{ role: 'P' as const, marks }] };
      });
    }
    case 'table':
      return tableSlices(desk, block);
    case 'ticks':
      return tickSlices(desk, block.ticks);
    case 'picture':
      return pictureSlices(desk, block);
    case 'caution':
      return block.items.flatMap((item) => {
        const inset = size * 0.9;
        const inside = stack(paragraph(desk, item, { size }, 0, inset, desk.width - inset * 2));
        const height = inside.height + inset;
        const frame: Mark = { mark: 'box', x: 0, y: 0, width: desk.width, height, stroke: true };
        return [
          {
            height,
            gap: size * 0.6,
            groups: [{ role: 'Artifact' as const, marks: [frame] }, ...lower(inside.groups, inset * 0.5)],
          },
        ];
      });
    case 'notes':
      return Array.from({ length: block.lines }, () => ({
        height: size * 2.1,
        gap: 0,
        groups: [
          {
            role: 'Artifact' as const,
            marks: [{ mark: 'rule' as const, x: 0, y: size * 2, width: desk.width, dashed: false }],
          },
        ],
      }));
    case 'new-page':
      return [{ height: 0, gap: 0, groups: [], newPage: true }];
    case 'together': {
      const inner = block.blocks.flatMap((one) => slicesOf(desk, one));
      const cutLine: Slice = {
        height: 1,
        gap: size,
        groups: [
          { role: 'Artifact', marks: [{ mark: 'rule', x: 0, y: 0.5, width: desk.width, dashed: true }] },
        ],
      };
      const whole = stack(block.cut === true ? [...inner, cutLine] : inner);
      if (whole.height <= desk.height) return [whole];
      return block.cut === true ? [...inner, cutLine] : inner;
    }
  }
}

/** A page: groups of marks in reading order. */
export interface Page {
  readonly groups: readonly Group[];
}

export interface LaidOut {
  readonly width: number;
  readonly height: number;
  readonly pages: readonly Page[];
}

/** Every page of a sheet. */
export function layOut(paper: Paper, measure: Measure): LaidOut {
  const { width, height } = PAPER_POINTS[paper.size];
  const size = paper.large ? SIZES.large : SIZES.usual;
  const desk: Desk = { measure, width: width - 2 * MARGIN, height: height - 2 * MARGIN - FOOT, size };
  const slices = paper.blocks.flatMap((block) => slicesOf(desk, block));
  const pages: Group[][] = [[]];
  let y = 0;
  const put = (slice: Slice) => {
    pages[pages.length - 1]?.push(
      ...slice.groups.map((group) => ({
        ...group,
        marks: group.marks.map((mark) => moved(mark, MARGIN, MARGIN + y)),
      })),
    );
    y += slice.height;
  };
  const turn = () => {
    if (y === 0) return;
    pages.push([]);
    y = 0;
  };
  for (const [index, wanted] of slices.entries()) {
    let slice = wanted;
    if (slice.newPage === true) {
      turn();
      continue;
    }
    // What belongs to what follows goes over the page with it; a picture among it may do with less.
    let needed = slice.gap + slice.height;
    let spared = 0;
    for (let at = index; ; at++) {
      const one = slices[at];
      if (one?.within) spared = one.height * (1 - LEAST_SHRUNK);
      const next = slices[at + 1];
      if (one?.withNext !== true || !next) break;
      needed += next.gap + next.height;
    }
    const room = desk.height - y;
    if (y > 0 && needed > room && needed - spared <= room) {
      slice = slice.within?.(slice.height - (needed - room)) ?? slice;
      needed = Math.min(needed, room);
    }
    const fitsSomewhere = needed <= desk.height;
    if (y > 0 && y + (fitsSomewhere ? needed : slice.gap + slice.height) > desk.height) turn();
    if (y > 0) y += slice.gap;
    else if (slice.head) put(slice.head);
    put(slice);
  }
  if (pages.length > 1 && pages.at(-1)?.length === 0) pages.pop();
  const foot = (page: number): Group => {
    const small = Math.min(size, 12) * 0.85;
    const words = drawable(paper.foot);
    const number = `${page} of ${pages.length}`;
    const y = height - MARGIN + small;
    const own = { mark: 'text', y, size: small, bold: false, pale: true } as const;
    const room = desk.width - measure(number, small, false) - size;
    const [first = ''] = breakLines(words, room, (part) => measure(part, small, false));
    return {
      role: 'Artifact',
      marks: [
        { ...own, x: MARGIN, text: first },
        { ...own, x: MARGIN + desk.width - measure(number, small, false), text: number },
      ],
    };
  };
  return { width, height, pages: pages.map((groups, at) => ({ groups: [...groups, foot(at + 1)] })) };
}
