import { describe, expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { num } from '../../src/core/base/reader.ts';
import { asking } from '../asking.ts';
import { lost, printed } from './reading.ts';

const squeezed = (text: string) => text.replace(/\s+/g, '');

describe('a blanket on paper', () => {
  it('carries the figures of the answers: yarn, balls, layout, joining, border, every motif’s rows', async () => {
    const { ask, sheets } = asking();
    for (const line of registry.get('blanket handout')!.question.before!) await ask(line);
    await ask('/blanket colours colour:moss ball:170m/100g price:4.5 balls:1');
    const materials = await ask('/blanket materials');
    const layout = await ask('/blanket layout');
    const answer = await ask('/blanket handout');
    expect(answer.figures['yarn_total']!.value).toBeCloseTo(materials.figures['yarn_total']!.value, 9);
    const paper = sheets.get(answer.files[0]!)!;
    const back = await printed(paper);
    expect(lost(paper, back)).toEqual([]);
    const all = squeezed(back.text);
    for (const line of materials.lines!.filter((one) => /^(?:moss|sand|clay): motifs /.test(one)))
      expect(all, line).toContain(squeezed(line));
    expect(back.text).toContain(`${num(materials.figures['ends']!.value)} ends to weave in`);
    // Places are numbered row by row, four in a row: the map of the answer, told one by one.
    const map = layout.data.map as string[];
    map.forEach((row, at) => {
      const letters = row.replace(/\s/g, '').match(/[A-Z]\d?/g)!;
      const told = letters.map((letter, column) => `${at * 4 + column + 1} ${letter.replace('0', '')}`);
      expect(back.text).toContain(`Row ${at + 1}: ${told.join(', ')}`);
    });
    // Four by five motifs share 3 × 5 + 4 × 4 sides.
    const strips = back.text.match(/\b\d+ to \d+\b/g)!.filter((pair) => !/Strip/.test(pair));
    expect(new Set(strips).size).toBe(3 * 5 + 4 * 4);
    for (const [round, { stitch, stitches }] of (
      materials.data.border as { stitch: string; stitches: number }[]
    ).entries())
      expect(back.text).toMatch(new RegExp(`Round ${round + 1}, in moss: [^☐]*?\\(${stitches} ${stitch}\\)`));
    for (const name of ['moss square', 'sand square']) {
      const words = await ask(`/motif words name:"${name}"`);
      for (const line of words.lines!.filter((one) => /^Rows? \d/.test(one)))
        expect(all, line).toContain(squeezed(line).slice(0, 50));
    }
    for (const caution of materials.cautions) expect(all).toContain(squeezed(caution).slice(0, 60));
  });

  it('tells the yarn of a kind as the blanket does, where another kind was weighed', async () => {
    const { ask, sheets } = asking();
    for (const line of [
      '/motif define name:tide shape:diagonal size:10 stitch:hdc gauge:14x11 hook:5mm colours:"20 rows navy"',
      '/motif define name:foam shape:solid-square size:5 stitch:dc gauge:14x11 hook:5mm colours:"5 rounds sand"',
      '/motif weigh name:tide weight:15g ball:170m/100g',
      '/blanket start name:harbour kinds:"tide, foam" columns:2 rows:2',
    ])
      expect(await ask(line), line).toMatchObject({ ok: true });
    const answer = await ask('/blanket handout');
    const { text } = await printed(sheets.get(answer.files[0]!)!);
    // 25.5 m are in 220 stitches of hdc; a stitch of dc takes 1.92/1.48 of that, and foam has 12 + 28 + 44 + 60 + 76 of them.
    const each = ((25.5 / 220) * 1.92 * 220) / 1.48;
    expect(text).toContain(`sand 220 ${num(each)} m`);
    expect(text).toContain(`sand: motifs ${num(2 * each)} m`);
    expect(text).toContain('Yarn from the weight of another kind, stitch by stitch');
  });

  it('says what is not known instead of a figure, and prints the rest', async () => {
    const { ask, sheets } = asking();
    await ask('/motif define name:plain shape:diagonal size:6');
    await ask('/blanket start name:bare kinds:plain columns:2 rows:2');
    const answer = await ask('/blanket handout terms:UK print:large');
    expect(answer.ok).toBe(true);
    expect(answer.figures).not.toHaveProperty('yarn_total');
    // No size is told where none is known: not in the picture either.
    const drawn = sheets.get(answer.files[0]!)!.blocks.find(({ kind }) => kind === 'picture');
    expect(JSON.stringify(drawn)).not.toMatch(/\d × \d+(?:\.\d+)? (?:cm|in)/);
    const back = await printed(sheets.get(answer.files[0]!)!);
    expect(back.pages[0]).toContain('Written in UK terms');
    expect(back.text).toContain('How large one plain is, is not known.');
    expect(back.text).toContain('Strip 1 to strip 2, the corners pinned first: 1 to 3, 2 to 4.');
  });

  it('prints as many kinds as a blanket may have, each on a page of its own', async () => {
    const { ask, sheets } = asking();
    const names = Array.from({ length: 26 }, (_, kind) => `kind ${kind + 1}`);
    for (const [kind, name] of names.entries())
      await ask(`/motif define name:"${name}" shape:diagonal size:${4 + (kind % 5)} stitch:sc gauge:13x13`);
    await ask(`/blanket start name:many kinds:"${names.join(', ')}" columns:6 rows:5 border:"sc sc"`);
    const answer = await ask('/blanket handout');
    expect(answer.ok, answer.problem).toBe(true);
    const paper = sheets.get(answer.files[0]!)!;
    const back = await printed(paper);
    expect(lost(paper, back)).toEqual([]);
    expect(back.pages.length).toBeGreaterThan(26);
    names.forEach((name, kind) => {
      expect(
        back.pages.some((page) => page.startsWith(`${String.fromCharCode(65 + kind)}, ${name} `)),
        name,
      ).toBe(true);
    });
    expect(back.pages.at(-1)).toMatch(new RegExp(`${back.pages.length} of ${back.pages.length}$`));
  });
});

describe('a group blanket on paper', () => {
  it('is a sheet for the wall, and a slip for each maker with what she pledged', async () => {
    const { ask, sheets } = asking();
    for (const line of registry.get('together handout')!.question.before!) await ask(line);
    await ask('rowan: /together handin kind:furrow motifs:1');
    const board = await ask('/together board');
    const answer = await ask('/together handout');
    const paper = sheets.get(answer.files[0]!)!;
    const back = await printed(paper);
    expect(lost(paper, back)).toEqual([]);
    for (const key of ['accepted', 'pledged', 'open', 'wanted'])
      expect(answer.figures[key], key).toEqual(board.figures[key]);
    // Six wanted and a spare of each: two were pledged, one of them is in and waits. Made, waiting, pledged, open are all of the seven.
    expect(back.pages[0]).toMatch(/A, furrow 6 1 0 1 1 5 B, trellis 6 1 0 0 0 7/);
    const slips = back.pages.slice(1).join(' ');
    expect(slips).toMatch(/rowan For Bean row throw\.[^]*A, furrow: 1 still to make, handed in #1\. 1 /);
    expect(slips).toMatch(/ash For Bean row throw\.[^]*Nothing is pledged yet\./);
  });

  it('warns the wall, as it warned her who opened it, of kinds that do not fit side by side', async () => {
    const { ask, sheets } = asking();
    for (const line of [
      '/motif define name:tide shape:diagonal size:10 gauge:14x11',
      '/motif define name:foam shape:solid-square size:6 stitch:dc gauge:14x8',
      '/blanket start name:harbour kinds:"tide, foam" columns:2 rows:2',
      '/together open blanket:harbour',
    ])
      expect(await ask(line), line).toMatchObject({ ok: true });
    const answer = await ask('/together handout');
    const back = await printed(sheets.get(answer.files[0]!)!);
    expect(back.text).toContain('foam measures 15 cm beside 11.8 cm of tide');
  });

  it('shows whoever asks what a kind is, in her own terms, also before she has pledged', async () => {
    const { ask, files, sheets } = asking();
    for (const line of registry.get('together motif')!.question.before!) await ask(line);
    await ask('wren: /settings change terms:UK hand:left');
    const answer = await ask('wren: /together motif kind:furrow');
    expect(answer.files).toEqual(['furrow-chart-uk.svg', 'furrow-words-uk.txt', 'furrow-handout-uk.pdf']);
    expect(answer.lines!.join('\n')).not.toMatch(/hdc/);
    expect(files.at(-1)!.content).toContain('Written in UK terms');
    expect(files.at(-2)!.content).toContain('<g class="mirrored"');
    const back = await printed(sheets.get('furrow-handout-uk.pdf')!);
    expect(back.text).toContain('for the hook in the left hand');
    expect((await ask('ash: /together motif kind:furrow terms:US')).lines!.join('\n')).toMatch(/hdc/);
    expect(await ask('ash: /together motif kind:nonsense')).toMatchObject({ ok: false, option: 'kind' });
  });
});
