/** Tables as people read them, against the pages they were published on; what is from memory is not checked here. */
import { describe, expect, it } from 'vitest';
import { asking, type Json } from '../asking.ts';

const room = asking();
const ask = async (line: string) => {
  const answer = await room.ask(line);
  expect(answer.ok, line).toBe(true);
  return answer;
};

const sizesOf = ({ data }: Json) => (data.hooks as { mm: number }[]).map(({ mm }) => mm);

describe('terms', () => {
  // sugarplumcrochet.wordpress.com, "decoding crochet patterns"; interweave.com, 2017: the US name is one yarn over fewer;
  // funcrochetdesigns.com for the double treble.
  it.each([
    ['US sc', 'dc'],
    ['US hdc', 'htr'],
    ['US dc', 'tr'],
    ['US tr', 'dtr'],
    ['US dtr', 'trtr'],
  ])('%s is UK %s, and back', async (us, uk) => {
    const there = await ask(`/lookup term term:"${us}"`);
    expect(there.data.meanings[0].UK).toMatch(new RegExp(`^${uk},`));
    const back = await ask(`/lookup term term:"UK ${uk}"`);
    expect(back.data.meanings[0].US).toMatch(new RegExp(`^${us.slice(3)},`));
  });

  // beautybady.com, "US vs UK crochet terminology": dc and tr are ambiguous, sc is not.
  it('says when a word is two stitches', async () => {
    for (const word of ['dc', 'tr', 'double crochet', 'double treble'])
      expect((await ask(`/lookup term term:"${word}"`)).figures['meanings']!.value).toBe(2);
    for (const word of ['sc', 'hdc', 'htr', 'chain'])
      expect((await ask(`/lookup term term:"${word}"`)).figures['meanings']!.value).toBe(1);
  });

  // FrancophonIA/crochet_terms prints the UK slip stitch as "single crochet".
  it('names the old trap', async () => {
    expect((await ask('/lookup term term:"single crochet"')).lines!.join(' ')).toContain('slip stitch');
  });

  // reference.com, "What do stitch abbreviations mean": ch-5 is a loop that is there, ch 5 is to be made.
  it('tells ch-5 from ch 5', async () => {
    expect((await ask('/lookup term term:ch-5')).headline).toContain('there already');
    expect((await ask('/lookup term term:"ch 5"')).headline).toContain('make 5 chains');
  });
});

describe('hooks', () => {
  // matifs.com/crochet-hooks-size-chart.
  it.each([
    ['H-8', 5],
    ['I-9', 5.5],
    ['J-10', 6],
    ['K-10 1/2', 6.5],
    ['"UK 6"', 5],
    ['"UK 9"', 3.5],
    ['B-1', 2.25],
  ])('%s', async (typed, size) => {
    expect((await ask(`/lookup hook hook:${typed}`)).figures['hook']!.value).toBe(size);
  });

  // deborah.makarios.nz: no British size between 3.5 and 4.0; 8 could be 4.0 or 4.25; the two systems cross at 7.
  it('keeps the gaps and doubles of the old British numbers', async () => {
    expect((await ask('/lookup hook hook:3.75mm')).headline).toContain('no old UK number');
    const eight = await ask('/lookup hook hook:"UK 8"');
    expect(sizesOf(eight)).toEqual([4, 4.25]);
    expect((await ask('/lookup hook hook:"US 7"')).data.hooks[0]).toMatchObject({ mm: 4.5, oldUK: '7' });
  });

  // omgheart.com, 2010-11-17: US steel 7 is 1.65 mm, 00 is 3.5, 14 is 0.75; a bare 7 is also 4.5 mm.
  it('reads a bare number in every system', async () => {
    const sizes = sizesOf(await ask('/lookup hook hook:7'));
    expect(sizes).toEqual(expect.arrayContaining([4.5, 1.65]));
    expect((await ask('/lookup hook hook:"steel 14"')).figures['hook']!.value).toBe(0.75);
    expect((await ask('/lookup hook hook:"steel 00"')).figures['hook']!.value).toBe(3.5);
  });

  // crochetonatrain.com, "Standard yarn weight system": steel 6, 7, 8 beside 1.6–1.4 mm, against omgheart.com.
  it('shows that steel sizes conflict', async () => {
    expect((await ask('/lookup hook hook:"steel 7"')).lines!.join(' ')).toContain('1.6 to 1.4');
  });
});

describe('yarns', () => {
  // crochetonatrain.com, "Standard yarn weight system".
  it.each([
    ['1', '21–32', '2.25–3.5'],
    ['2', '16–20', '3.5–4.5'],
    ['3', '12–17', '4.5–5.5'],
    ['4', '11–14', '5.5–6.5'],
    ['5', '8–11', '6.5–9'],
  ])('category %s', async (category, stitches, hook) => {
    const { headline } = await ask(`/lookup yarn yarn:${category}`);
    expect(headline).toContain(stitches);
    expect(headline).toContain(hook);
  });

  // ihookdesign.com/what-is-wpi: the ranges overlap; 12 fits categories 2, 3 and 4.
  it('gives every category that wraps fit', async () => {
    expect((await ask('/lookup yarn yarn:12wpi')).data.categories).toEqual([2, 3, 4]);
    expect((await ask('/lookup yarn yarn:5wpi')).data.categories).toEqual([6]);
  });

  // scribd.com/document/657653690, "Yarn standards": 601–900 yards in a pound is medium, 901–1200 light.
  it('reads a ball band', async () => {
    expect((await ask('/lookup yarn yarn:601yd/1lb')).data.categories).toEqual([4]);
    expect((await ask('/lookup yarn yarn:900yd/1lb')).data.categories).toEqual([4]);
    expect((await ask('/lookup yarn yarn:901yd/1lb')).data.categories).toEqual([3]);
    expect((await ask('/lookup yarn yarn:2500yd/1lb')).data.categories).toEqual([0]);
  });

  // issuhub.com, id 3342, p. 64, against crochetnerd.com: editions differ for category 6.
  it('shows editions that differ', async () => {
    const lines = (await ask('/lookup yarn yarn:6')).lines!.join(' ');
    expect(lines).toContain('9–16 mm');
    expect(lines).toContain('9–15 mm');
  });
});

describe('sizes', () => {
  // liquisearch.com, table of bed sizes: queen 60 × 80 in, UK king 60 × 78 in, European single 90 × 200 cm.
  it('beds', async () => {
    expect((await ask('/lookup size size:queen')).figures).toMatchObject({
      width: { value: 60 * 2.54, unit: 'cm' },
      height: { value: 80 * 2.54 },
    });
    expect((await ask('/lookup size size:"UK king"')).figures['height']!.value).toBeCloseTo(78 * 2.54, 9);
    expect((await ask('/lookup size size:"single europe"')).figures).toMatchObject({
      width: { value: 90 },
      height: { value: 200 },
    });
  });

  // projectlinusoregon.org: baby at least 30 × 36 in; AAP 2022: no loose blanket under 12 months.
  it('babies, with the caution', async () => {
    const baby = await ask('/lookup size size:baby');
    expect(baby.figures['width']!.value).toBeCloseTo(30 * 2.54, 9);
    expect(baby.cautions.join()).toContain('12 months');
  });

  it('are shown in the reader’s own units', async () => {
    await ask('wren: /settings change units:imperial');
    expect((await ask('wren: /lookup size size:queen')).headline).toContain('60 × 80 in');
  });
});

describe('care', () => {
  // AAP, Pediatrics 150(1):e2022057990; 16 CFR 1501.4; NHS, repetitive strain injury; Drycleaning & Laundry Institute.
  it.each([
    ['baby', '12 months', 'AAP 2022'],
    ['hands', 'stop at pain', 'NHS'],
    ['heat', 'acrylic', 'Drycleaning'],
    ['"small parts"', 'under three', '16 CFR 1501.4'],
  ])('%s', async (topic, says, source) => {
    const { headline, lines } = await ask(`/lookup care topic:${topic}`);
    expect(headline).toContain(says);
    expect(lines!.join(' ')).toContain(source);
  });
});
