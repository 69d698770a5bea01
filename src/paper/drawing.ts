/** A drawing of `src/pictures` read back into its parts, for those who draw it elsewhere than on a screen. */

export interface Element {
  readonly name: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly (Element | string)[];
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };
const unescaped = (text: string) =>
  text.replace(/&(amp|lt|gt|quot|#39);/g, (whole, name: string) => ENTITIES[name] ?? whole);

/** Reads an SVG as our pictures write it: every attribute in double quotes, no comments. Throws an Error where it is none. */
export function readDrawing(svg: string): Element {
  const root = { name: '', attributes: new Map<string, string>(), children: [] as (Element | string)[] };
  const open = [root];
  for (const [, end, name, attributes = '', closed, text] of svg.matchAll(
    /<(\/)?([A-Za-z]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/)?>|([^<]+)/g,
  )) {
    const at = open[open.length - 1] ?? root;
    if (text !== undefined) at.children.push(unescaped(text));
    else if (end !== undefined) open.pop();
    else {
      const element = {
        name: name ?? '',
        attributes: new Map(
          [...attributes.matchAll(/(?<![\w:-])([\w:-]+)="([^"]*)"/g)].map(([, key = '', value = '']) => [
            key,
            unescaped(value),
          ]),
        ),
        children: [] as (Element | string)[],
      };
      at.children.push(element);
      if (closed === undefined) open.push(element);
    }
  }
  const [drawing] = root.children;
  if (open.length !== 1 || drawing === undefined || typeof drawing === 'string' || drawing.name !== 'svg')
    throw new Error('this is no drawing of ours');
  return drawing;
}

export type Matrix = readonly [number, number, number, number, number, number];
const UNMOVED: Matrix = [1, 0, 0, 1, 0, 0];

const times = (p: Matrix, q: Matrix): Matrix => [
  p[0] * q[0] + p[2] * q[1],
  p[1] * q[0] + p[3] * q[1],
  p[0] * q[2] + p[2] * q[3],
  p[1] * q[2] + p[3] * q[3],
  p[0] * q[4] + p[2] * q[5] + p[4],
  p[1] * q[4] + p[3] * q[5] + p[5],
];

/** `translate(…) scale(…) rotate(…)` as one matrix. */
export function readTransform(text = ''): Matrix {
  let matrix = UNMOVED;
  for (const [, kind, inside = ''] of text.matchAll(/(translate|scale|rotate)\(([^)]*)\)/g)) {
    const [a = 0, b, c] = inside
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    if (kind === 'translate') matrix = times(matrix, [1, 0, 0, 1, a, b ?? 0]);
    else if (kind === 'scale') matrix = times(matrix, [a, 0, 0, b ?? a, 0, 0]);
    else {
      const angle = (a * Math.PI) / 180;
      const turn: Matrix = [Math.cos(angle), Math.sin(angle), -Math.sin(angle), Math.cos(angle), 0, 0];
      const [x, y] = [b ?? 0, c ?? 0];
      matrix = times(times(times(matrix, [1, 0, 0, 1, x, y]), turn), [1, 0, 0, 1, -x, -y]);
    }
  }
  return matrix;
}

/** Everything that has an id in it: cells refer to their kinds. */
export function byId(drawing: Element): Map<string, Element> {
  const found = new Map<string, Element>();
  const look = (element: Element) => {
    const id = element.attributes.get('id');
    if (id !== undefined) found.set(id, element);
    for (const child of element.children) if (typeof child !== 'string') look(child);
  };
  look(drawing);
  return found;
}
