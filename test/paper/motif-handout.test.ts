import { describe, expect, it } from 'vitest';
import { getDocumentProxy } from 'unpdf';
import type { Paper } from '../../src/paper/paper.ts';
import { writePdf } from '../../src/paper/pdf.ts';
import { asking } from '../asking.ts';
import { lost, printed } from './reading.ts';

const COLOURS = '4 rows moss, 2 rows sand, three times, then 6 rows moss';

/** Shapes with their sizes, and the lines that ask for them. */
const MOTIFS = [
  ['diagonal', `shape:diagonal size:12 stitch:hdc hook:5mm gauge:13x10 colours:"${COLOURS}"`],
  ['blocks', 'shape:blocks size:7 stitch:dc'],
  ['clusters', 'shape:clusters size:6 stitch:dc colours:"2 rounds moss, 4 rounds sand"'],
  ['solid-square', 'shape:solid-square size:9 stitch:tr gauge:13x10'],
  ['circle', 'shape:circle size:8 stitch:sc'],
  ['hexagon', 'shape:hexagon size:8 stitch:hdc'],
  ['flat', 'shape:flat size:30 other_size:41 stitch:sc hook:4mm gauge:15x18'],
] as const;

describe('a motif on paper', () => {
  it.each(MOTIFS)('%s: every row of the answer stands on it, with its count', async (name, options) => {
    const { ask, sheets } = asking();
    await ask(`/motif define name:"${name} one" ${options}`);
    for (const terms of ['US', 'UK'] as const) {
      const words = await ask(`/motif words terms:${terms}`);
      const answer = await ask(`/motif handout terms:${terms}`);
      expect(answer.files).toEqual([`${name}-one-handout-${terms.toLowerCase()}.pdf`]);
      const paper = sheets.get(answer.files[0]!)!;
      const back = await printed(paper);
      expect(lost(paper, back)).toEqual([]);
      expect(back.pages[0]).toContain(`Written in ${terms} terms`);
      // A row by itself says its count in its words; rows said together have a box each.
      const squeezed = back.text.replace(/\s+/g, '');
      const lines = words.lines!.filter((line) => /^(?:Row|Round)s? \d/.test(line));
      for (const line of lines) expect(squeezed, line).toContain(line.replace(/\s+/g, '').slice(0, 60));
      const counts = words.data.counts as number[];
      for (const [at, count] of counts.entries()) {
        const alone = lines.some((line) => new RegExp(`^(?:Row|Round) ${at + 1}:.*\\(${count} `).test(line));
        expect(alone || back.text.includes(` ${at + 1}: ${count} `), `row ${at + 1}`).toBe(true);
      }
      for (const key of ['rows', 'total', 'ends'] as const)
        expect(back.text, key).toMatch(new RegExp(`\\b${answer.figures[key]!.value}\\b`));
    }
  });

  it('is the same bytes each time, on the paper that is wished, in the letters that are wished', async () => {
    const { ask, sheets } = asking();
    await ask(`/motif define name:moss ${MOTIFS[0][1]}`);
    const sheet = async (line: string) => printed(sheets.get((await ask(line)).files[0]!)!);
    const first = await sheet('/motif handout');
    const again = await sheet('/motif handout');
    expect(Buffer.compare(first.bytes, again.bytes)).toBe(0);
    // ISO 216: 210 × 297 mm; ANSI Y14.1: 8.5 × 11 in; 72 points an inch.
    expect(first.size.map(Math.round)).toEqual([(210 / 25.4) * 72, (297 / 25.4) * 72].map(Math.round));
    const large = await sheet('/motif handout print:large');
    expect(large.pages.length).toBeGreaterThan(first.pages.length);
    await ask('/settings change units:imperial');
    const letter = await sheet('/motif handout');
    expect(letter.size).toEqual([8.5 * 72, 11 * 72]);
    expect(letter.text).toContain('over 3.94 in');
    expect((await sheet('/motif handout paper:A4')).size.map(Math.round)).toEqual([595, 842]);
  });

  it('leaves out no letter without saying so', async () => {
    const { ask, sheets } = asking();
    await ask(
      '/motif define name:"縫い目 ñandú Ελλάδα Москва" shape:circle size:4 colours:"2 rounds 緑, 2 rounds sauge"',
    );
    const answer = await ask('/motif handout');
    expect(answer.assumptions.join('\n')).toMatch(/The typeface has no 縫, い, 目, 緑: a box \(▢\)/);
    const paper = sheets.get(answer.files[0]!)!;
    const back = await printed(paper);
    expect(lost(paper, back)).toEqual([]);
    expect(back.text).toContain('▢▢▢ ñandú Ελλάδα Москва');
    expect(back.text).toContain('▢ stands for a letter that the typeface of this sheet does not have.');
  });

  it('says which colours are made up, until somebody says how they look', async () => {
    const { ask, files } = asking();
    await ask('/motif define name:week shape:circle size:4 colours:"2 rounds Tuesday, 2 rounds moss"');
    const said = async (line: string) => (await ask(line)).assumptions.filter((one) => /made up/.test(one));
    expect(await said('/motif handout')).toEqual([
      'How Tuesday looks is not known: it is drawn in a colour that is made up, until you say hex.',
    ]);
    expect(await said('/motif chart')).toHaveLength(1);
    await ask('/motif colours colour:tuesday hex:#123456');
    expect(await said('/motif handout')).toEqual([]);
    expect(await said('/motif chart')).toEqual([]);
    expect(files.at(-1)!.content).toContain('#123456');
    // The blanket of it is drawn alike, and remembers what is said of its own yarn first.
    await ask('/blanket start name:throw kinds:week columns:2 rows:2');
    await ask('/blanket picture');
    expect(files.at(-1)!.content).toContain('#123456');
    await ask('/blanket colours colour:Tuesday hex:#654321');
    await ask('/motif chart');
    expect(files.at(-1)!.content).toContain('#654321');
  });
});

describe('names that run from right to left', () => {
  interface Item {
    readonly str?: string;
    readonly transform: readonly number[];
  }

  /** Every piece of text of a page with the place where it begins. */
  async function placed(paper: Paper) {
    const pdf = (await getDocumentProxy(await writePdf(paper))) as unknown as {
      getPage(page: number): Promise<{ getTextContent(): Promise<{ readonly items: readonly Item[] }> }>;
    };
    const { items } = await (await pdf.getPage(1)).getTextContent();
    return items.flatMap(({ str = '', transform }) =>
      str.trim() === '' ? [] : [{ text: str, x: transform[4] ?? 0 }],
    );
  }

  it('stand in their own order, words apart, what runs from left to right after them', async () => {
    const { ask, sheets } = asking();
    await ask('/motif define name:"שמיכה של Dana 12" shape:circle size:4');
    const answer = await ask('/motif handout');
    const found = await placed(sheets.get(answer.files[0]!)!);
    const title = found.slice(
      0,
      found.findIndex(({ text }) => text.includes('Written')),
    );
    const at = (word: string) =>
      title.find(({ text }) => text.includes(word) || text.includes([...word].reverse().join('')))!.x;
    // Read from the right: first “שמיכה”, left of it “של”; then, to the right of both, the rest.
    expect(at('של')).toBeLessThan(at('שמיכה'));
    expect(at('שמיכה')).toBeLessThan(at('Dana'));
  });

  it('of Arabic and Persian lack no letter', async () => {
    const { ask } = asking();
    await ask('/motif define name:"سلام گلیم مکرمه" shape:circle size:4');
    expect((await ask('/motif handout')).assumptions.join()).not.toContain('typeface has no');
  });
});
