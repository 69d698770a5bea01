/** Reads a PDF back: its text by page, and the size of its pages. */
import { extractText, getDocumentProxy } from 'unpdf';
import { drawable } from '../../src/pictures/drawing.ts';
import type { Paper } from '../../src/paper/paper.ts';
import { textsOf } from '../../src/paper/paper.ts';
import { writePdf } from '../../src/paper/pdf.ts';

/** What is asked of a document beside its text. */
interface Pages {
  readonly getPage: (page: number) => Promise<{ readonly view: readonly number[] }>;
}

export interface ReadBack {
  readonly bytes: Uint8Array;
  readonly pages: readonly string[];
  /** All of it, with one space between words. */
  readonly text: string;
  /** In points. */
  readonly size: readonly [width: number, height: number];
}

export async function printed(paper: Paper): Promise<ReadBack> {
  const bytes = await writePdf(paper);
  const pdf = await getDocumentProxy(Uint8Array.from(bytes));
  const first = await (pdf as unknown as Pages).getPage(1);
  const { text } = await extractText(pdf, { mergePages: false });
  const [, , width = 0, height = 0] = first.view;
  const pages = text.map((page) => page.replace(/\s+/g, ' '));
  return { bytes, pages, text: pages.join(' '), size: [width, height] };
}

const squeezed = (text: string) => text.replace(/\s+/g, '');

/** Texts of a sheet that did not come out of its PDF again, letter by letter. */
export function lost(paper: Paper, { text }: ReadBack): string[] {
  const all = squeezed(text);
  // A text may go over a page, where the foot of the page lies in between.
  return textsOf(paper.blocks).filter(
    (one) =>
      !one
        .split('. ')
        .every((sentence) => sentence.split(' ').every((word) => all.includes(squeezed(drawable(word))))),
  );
}
