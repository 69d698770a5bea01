/** What a printed sheet holds, in reading order: plain data that passes from one thread to another. */

export type PaperSize = 'A4' | 'Letter';

/** Points, 72 to the inch: ISO 216 (210 × 297 mm) and ANSI Y14.1 (8.5 × 11 in). */
export const PAPER_POINTS: Readonly<Record<PaperSize, { readonly width: number; readonly height: number }>> =
  {
    A4: { width: 595.28, height: 841.89 },
    Letter: { width: 612, height: 792 },
  };

/** A text in a cell of a table, with a dab of the colour that it names. */
export interface Cell {
  readonly text: string;
  /** #rrggbb */
  readonly dab?: string;
}

/** One thing to do: its words, and a box to tick for each of its rows. */
export interface Tick {
  readonly text: string;
  /** A label for each box; none for one box before the words. */
  readonly boxes?: readonly string[];
}

export type Block =
  | { readonly kind: 'title' | 'heading' | 'part' | 'text' | 'strong' | 'small'; readonly text: string }
  | { readonly kind: 'list'; readonly items: readonly string[] }
  | { readonly kind: 'facts'; readonly facts: readonly (readonly [label: string, value: string])[] }
  | {
      readonly kind: 'table';
      /** Shares of the width. */
      readonly widths: readonly number[];
      readonly head: readonly string[];
      readonly rows: readonly (readonly (string | Cell)[])[];
    }
  | { readonly kind: 'ticks'; readonly ticks: readonly Tick[] }
  | {
      readonly kind: 'picture';
      /** A drawing of `src/pictures`. */
      readonly svg: string;
      readonly width: number;
      readonly height: number;
      /** What it shows, in words: printed under it, and read out instead of it. */
      readonly says: string;
      /** The most that it takes of the height of a page, 0 to 1. */
      readonly most?: number;
    }
  | { readonly kind: 'caution'; readonly items: readonly string[] }
  /** Empty lines to write on. */
  | { readonly kind: 'notes'; readonly lines: number }
  | { readonly kind: 'new-page' }
  /** Kept on one page where it fits; with `cut`, a line to cut along stands before and after it. */
  | { readonly kind: 'together'; readonly blocks: readonly Block[]; readonly cut?: boolean };

/** Tokens are filled in before: paper has one reader. */
export interface Paper {
  readonly title: string;
  readonly size: PaperSize;
  /** Large print: 18 points, as those who see little ask for (common practice: 16 to 18 and more). */
  readonly large: boolean;
  /** Stands at the foot of every page. */
  readonly foot: string;
  readonly blocks: readonly Block[];
}

/** The same blocks with every text in them said anew: tokens are filled in for one reader. */
export function sayBlocks(blocks: readonly Block[], say: (text: string) => string): Block[] {
  return blocks.map((block): Block => {
    switch (block.kind) {
      case 'list':
      case 'caution':
        return { ...block, items: block.items.map(say) };
      case 'facts':
        return { ...block, facts: block.facts.map(([label, value]) => [say(label), say(value)] as const) };
      case 'table':
        return {
          ...block,
          head: block.head.map(say),
          rows: block.rows.map((row) =>
            row.map((cell) => (typeof cell === 'string' ? say(cell) : { ...cell, text: say(cell.text) })),
          ),
        };
      case 'ticks':
        return {
          ...block,
          ticks: block.ticks.map((tick) => ({
            ...tick,
            text: say(tick.text),
            ...(tick.boxes === undefined ? {} : { boxes: tick.boxes.map(say) }),
          })),
        };
      case 'picture':
        return { ...block, says: say(block.says) };
      case 'together':
        return { ...block, blocks: sayBlocks(block.blocks, say) };
      case 'notes':
      case 'new-page':
        return block;
      case 'title':
      case 'heading':
      case 'part':
      case 'text':
      case 'strong':
      case 'small':
        return { ...block, text: say(block.text) };
    }
  });
}

/** Every text of the blocks, in reading order. */
export function textsOf(blocks: readonly Block[]): string[] {
  const texts: string[] = [];
  sayBlocks(blocks, (text) => {
    texts.push(text);
    return text;
  });
  return texts;
}
