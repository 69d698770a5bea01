/** Pages as PDF: the same bytes for the same sheet, fonts embedded, a structure that can be read out. */
import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import { FONT } from '../pictures/font.ts';
import { byId, readDrawing, readTransform, type Element } from './drawing.ts';
import { layOut, type Group, type LaidOut, type Mark, type Measure } from './lay-out.ts';
import type { Paper } from './paper.ts';

const { resolve } = createRequire(import.meta.url);
const [PLAIN, BOLD] = FONT.files;
const INK = '#000000';
const PALE = '#3d4148';

/** Nothing here looks at a clock, and the same sheet is to be the same bytes: the day that a PDF must have is always this. */
const MADE = new Date('2000-01-01T00:00:00Z');

function open(title: string): PDFKit.PDFDocument {
  const pdf = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    pdfVersion: '1.7',
    tagged: true,
    displayTitle: true,
    lang: 'en-US',
    info: { Title: title, Creator: 'Loopwright', Producer: 'Loopwright', CreationDate: MADE, ModDate: MADE },
  });
  pdf.registerFont('plain', resolve(PLAIN));
  pdf.registerFont('bold', resolve(BOLD));
  return pdf;
}

/** Widths as the embedded typeface has them; every word is measured once. */
export function measureIn(pdf: PDFKit.PDFDocument): Measure {
  const known = { plain: new Map<string, number>(), bold: new Map<string, number>() };
  return (text, size, bold) => {
    const face = bold ? 'bold' : 'plain';
    let width = known[face].get(text);
    if (width === undefined) {
      width = pdf.font(face).fontSize(1000).widthOfString(text) / 1000;
      known[face].set(text, width);
    }
    return width * size;
  };
}

/** Letters that run from right to left stand by themselves: the typeface turns a text round whole. */
const RIGHT_TO_LEFT = /([\u0590-\u08ff]+(?:\s+[\u0590-\u08ff]+)*)/u;

class Pen {
  readonly measure: Measure;
  constructor(private readonly pdf: PDFKit.PDFDocument) {
    this.measure = measureIn(pdf);
  }

  /** A text with its baseline at y. */
  text(x: number, y: number, words: string, look: { size: number; bold: boolean; fill: string }): void {
    const { size, bold, fill } = look;
    const put = (run: string, at: number) =>
      this.pdf
        .font(bold ? 'bold' : 'plain')
        .fontSize(size)
        .fillColor(fill)
        .text(run, at, y, { lineBreak: false, baseline: 'alphabetic' });
    let at = x;
    for (const [index, run] of words.split(RIGHT_TO_LEFT).entries()) {
      if (run === '') continue;
      const end = at + this.measure(run, size, bold);
      // Every second one runs from right to left: its first word stands at its right end.
      if (index % 2 === 1) {
        let right = end;
        for (const word of run.split(/\s+/u)) {
          right -= this.measure(word, size, bold);
          put(word, right);
          right -= this.measure(' ', size, bold);
        }
      } else put(run, at);
      at = end;
    }
  }

  mark(mark: Mark): void {
    const { pdf } = this;
    switch (mark.mark) {
      case 'text':
        this.text(mark.x, mark.y, mark.text, {
          size: mark.size,
          bold: mark.bold,
          fill: mark.pale ? PALE : INK,
        });
        break;
      case 'box':
        pdf.rect(mark.x, mark.y, mark.width, mark.height).lineWidth(0.8).strokeColor(INK);
        if (mark.fill === undefined) pdf.stroke();
        else if (mark.stroke) pdf.fillAndStroke(mark.fill, INK);
        else pdf.fill(mark.fill);
        break;
      case 'rule':
        pdf
          .moveTo(mark.x, mark.y)
          .lineTo(mark.x + mark.width, mark.y)
          .lineWidth(0.5)
          .strokeColor(INK);
        if (mark.dashed) pdf.dash(5, { space: 4 }).stroke().undash();
        else pdf.stroke();
        break;
      case 'drawing': {
        const drawing = readDrawing(mark.svg);
        pdf.save();
        pdf.translate(mark.x, mark.y).scale(mark.scale);
        this.children(drawing, byId(drawing));
        pdf.restore();
        break;
      }
    }
  }

  private children(element: Element, known: ReadonlyMap<string, Element>): void {
    for (const child of element.children) if (typeof child !== 'string') this.element(child, known);
  }

  private element(element: Element, known: ReadonlyMap<string, Element>): void {
    const { pdf } = this;
    const { name, attributes } = element;
    if (name === 'defs' || name === 'desc') return;
    const transform = attributes.get('transform');
    if (transform !== undefined) {
      pdf.save();
      pdf.transform(...readTransform(transform));
    }
    const at = (key: string) => Number(attributes.get(key) ?? 0);
    switch (name) {
      case 'g':
        this.children(element, known);
        break;
      case 'use': {
        const meant = known.get((attributes.get('href') ?? '').slice(1));
        if (meant) this.children(meant, known);
        break;
      }
      case 'path':
        this.paint(attributes, () => pdf.path(attributes.get('d') ?? ''));
        break;
      case 'rect':
        this.paint(attributes, () =>
          attributes.has('rx')
            ? pdf.roundedRect(at('x'), at('y'), at('width'), at('height'), at('rx'))
            : pdf.rect(at('x'), at('y'), at('width'), at('height')),
        );
        break;
      case 'circle':
        this.paint(attributes, () => pdf.circle(at('cx'), at('cy'), at('r')));
        break;
      case 'ellipse':
        this.paint(attributes, () => pdf.ellipse(at('cx'), at('cy'), at('rx'), at('ry')));
        break;
      case 'text':
        this.label(element);
        break;
      default:
        throw new Error(`no drawing of ours has a ${name}`);
    }
    if (transform !== undefined) pdf.restore();
  }

  private paint(attributes: ReadonlyMap<string, string>, outline: () => unknown): void {
    const { pdf } = this;
    const of = (key: string) => {
      const value = attributes.get(key);
      return value === undefined || value === 'none' || value.startsWith('url(') ? undefined : value;
    };
    const stroke = of('stroke');
    const fill = attributes.has('fill') ? of('fill') : INK;
    if (stroke === undefined && fill === undefined) return;
    const number = (key: string, usual: number) => Number(attributes.get(key) ?? usual);
    outline();
    pdf.lineWidth(number('stroke-width', 1));
    pdf.lineCap(attributes.get('stroke-linecap') === 'round' ? 'round' : 'butt');
    const dashes = attributes.get('stroke-dasharray');
    if (dashes !== undefined) {
      const [on = 1, off = on] = dashes.split(/[\s,]+/).map(Number);
      pdf.dash(on, { space: off });
    }
    pdf.fillOpacity(number('fill-opacity', 1)).strokeOpacity(number('stroke-opacity', 1));
    if (stroke !== undefined && fill !== undefined) pdf.fillAndStroke(fill, stroke);
    else if (stroke !== undefined) pdf.stroke(stroke);
    else if (fill !== undefined) pdf.fill(fill);
    if (dashes !== undefined) pdf.undash();
    pdf.fillOpacity(1).strokeOpacity(1);
  }

  /** A text of a drawing. Where it has a rim, a ground of paper lies under it instead. */
  private label({ attributes, children }: Element): void {
    const { pdf } = this;
    const words = children.filter((child) => typeof child === 'string').join('');
    const size = Number(attributes.get('font-size') ?? 10);
    const bold = attributes.get('font-weight') === 'bold';
    const long = this.measure(words, size, bold);
    const anchor = attributes.get('text-anchor');
    const x =
      Number(attributes.get('x') ?? 0) - (anchor === 'middle' ? long / 2 : anchor === 'end' ? long : 0);
    const y = Number(attributes.get('y') ?? 0);
    const rim = attributes.get('stroke');
    if (rim !== undefined)
      pdf
        .fillOpacity(0.85)
        .roundedRect(x - size * 0.12, y - size * 0.84, long + size * 0.24, size * 1.02, size * 0.2)
        .fill(rim)
        .fillOpacity(1);
    this.text(x, y, words, { size, bold, fill: attributes.get('fill') ?? INK });
  }
}

function write(pdf: PDFKit.PDFDocument, laid: LaidOut, pen: Pen): void {
  const root = pdf.struct('Document');
  pdf.addStructure(root);
  const put = (group: Group) => {
    for (const mark of group.marks) pen.mark(mark);
  };
  for (const { groups } of laid.pages) {
    pdf.addPage({ size: [laid.width, laid.height], margin: 0 });
    for (const group of groups) {
      if (group.role === 'Artifact') {
        pdf.markContent('Artifact', { type: 'Layout' });
        put(group);
        pdf.endMarkedContent();
      } else
        root.add(
          pdf.struct(group.role, group.alt === undefined ? {} : { alt: group.alt }, [
            () => {
              put(group);
            },
          ]),
        );
    }
  }
  root.end();
}

/** The sheet as the bytes of a PDF. It takes the thread that it runs in for as long as it takes. */
export function writePdf(paper: Paper): Promise<Uint8Array> {
  const pdf = open(paper.title);
  const parts: Buffer[] = [];
  const done = new Promise<Uint8Array>((made, failed) => {
    pdf.on('data', (part: Buffer) => parts.push(part));
    pdf.on('end', () => {
      made(Uint8Array.from(Buffer.concat(parts)));
    });
    pdf.on('error', failed);
  });
  const pen = new Pen(pdf);
  write(pdf, layOut(paper, pen.measure), pen);
  pdf.end();
  return done;
}
