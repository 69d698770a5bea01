/** A page of a sheet as a drawing: for the README, which cannot show a PDF. The letters stand where they stand in print. */
import PDFDocument from 'pdfkit';
import { createRequire } from 'node:module';
import { escaped, n, rect, text } from '../src/pictures/drawing.ts';
import { FONT } from '../src/pictures/font.ts';
import { layOut, type Mark } from '../src/paper/lay-out.ts';
import type { Paper } from '../src/paper/paper.ts';
import { measureIn } from '../src/paper/pdf.ts';

const SCALE = 1.4;

function drawn(mark: Mark): string {
  switch (mark.mark) {
    case 'text':
      return text(mark.x, mark.y, mark.text, {
        size: mark.size,
        bold: mark.bold,
        fill: mark.pale ? '#3d4148' : '#000000',
      });
    case 'box':
      return rect(
        mark.x,
        mark.y,
        mark.width,
        mark.height,
        `fill="${mark.fill ?? 'none'}" stroke="${mark.stroke ? '#000000' : 'none'}" stroke-width="0.8"`,
      );
    case 'rule':
      return `<path d="M${n(mark.x)} ${n(mark.y)}h${n(mark.width)}" stroke="#000000" stroke-width="0.5"${mark.dashed ? ' stroke-dasharray="5 4"' : ''}/>`;
    case 'drawing':
      return `<g transform="translate(${n(mark.x)} ${n(mark.y)}) scale(${n(mark.scale)})">${mark.svg}</g>`;
  }
}

/** The page as SVG, counted from 1. */
export function pagePicture(paper: Paper, page: number): string {
  const pdf = new PDFDocument({ autoFirstPage: false });
  const { resolve } = createRequire(import.meta.url);
  pdf.registerFont('plain', resolve(FONT.files[0]));
  pdf.registerFont('bold', resolve(FONT.files[1]));
  const { width, height, pages } = layOut(paper, measureIn(pdf));
  const marks = (pages[page - 1]?.groups ?? []).flatMap((group) => group.marks);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" width="${Math.round(width * SCALE)}" height="${Math.round(height * SCALE)}" viewBox="0 0 ${n(width)} ${n(height)}" font-family="${escaped(FONT.family)}">` +
    `${rect(0, 0, width, height, 'fill="#ffffff"')}${rect(0.5, 0.5, width - 1, height - 1, 'fill="none" stroke="#b8bcc2"')}${marks.map(drawn).join('')}</svg>`
  );
}
