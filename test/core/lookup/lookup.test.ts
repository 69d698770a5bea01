/** What is typed against the rows of the tables that it names, row by row; the tables are held to their pages in test/outside. */
import { describe, expect, it } from 'vitest';
import { findHooksAround, lookUpHook, simplifyHook } from '../../../src/core/lookup/hook.ts';
import {
  findBlanketSize,
  describeBlanketSize,
  lookUpSize,
  SIZE_NAMES,
} from '../../../src/core/lookup/size.ts';
import { Working } from '../../../src/core/base/working.ts';
import { compareStitches, readNamed } from '../../../src/core/lookup/compare-stitches.ts';
import { ALL_TERM_WORDS, lookUpTerm, TERM_WORDS } from '../../../src/core/lookup/term.ts';
import { lookUpYarn, simplifyYarn, YARN_WORDS } from '../../../src/core/lookup/yarn.ts';
import { ABBREVIATIONS, CRAFT_WORDS, STITCH_NAMES } from '../../../src/standards/abbreviations.ts';
import { HOOKS, STEEL_HOOKS } from '../../../src/standards/hooks.ts';
import { SIZES } from '../../../src/standards/sizes.ts';
import { YARN_WEIGHTS } from '../../../src/standards/yarn-weights.ts';
import { asking } from '../../asking.ts';

describe('a hook', () => {
  /** The systems and sizes that a typed size may be. */
  const hooks = (typed: string) => lookUpHook(typed).map(({ system, mm }) => `${system} ${mm}`);

  it.each<[string, string[]]>([
    // Letter and number, parted, joined, with a slash, or one of them.
    ['H-8', ['US 5']],
    ['h8', ['US 5']],
    ['H/8', ['US 5']],
    ['H', ['US 5']],
    ['  us   h-8 ', ['US 5']],
    ['I', ['US 5.25', 'US 5.5']],
    ['M/N-13', ['US 9']],
    ['N13', ['US 9']],
    ['M-13', ['US 9']],
    ['M', ['US 9']],
    ['N', ['US 9', 'US 10']],
    ['M/N', ['US 9']],
    ['13', ['US 9', 'old UK 2.25', 'US steel 0.85']],
    ['15', ['mm 15', 'US 10']],
    ['K-10 1/2', ['US 6.5']],
    ['10 1/2', ['US 6.5']],
    ['S', ['US 19']],
    ['bus 7', []],
    ['P', ['US 10', 'US 11.5', 'US 15']],
    ['P/Q', ['US 15']],
    ['Q', ['US 15', 'US 15.75', 'US 16']],
    // A bare number in all four systems; with a word or with mm in one.
    ['7', ['mm 7', 'US 4.5', 'old UK 4.5', 'US steel 1.65']],
    ['US 7', ['US 4.5']],
    ['UK 7', ['old UK 4.5']],
    ['old uk 7', ['old UK 4.5']],
    ['Canadian 7', ['old UK 4.5']],
    ['Canada 7', ['old UK 4.5']],
    ['steel 7', ['US steel 1.65']],
    ['US steel 7', ['US steel 1.65']],
    ['7mm', ['mm 7']],
    ['7 MM', ['mm 7']],
    ['7.0 mm', ['mm 7']],
    ['4.5', ['mm 4.5']],
    ['00', ['old UK 9', 'US steel 3.5']],
    ['000', ['old UK 10']],
    ['steel 2', ['US steel 2.5']],
    ['UK 8', ['old UK 4', 'old UK 4.25']],
    // What is none.
    ['UK H', []],
    ['steel H', []],
    ['US 4.5', []],
    ['4.6mm', []],
    ['-', []],
    ['mm7', []],
    ['H-9', []],
    ['', []],
  ])('%j', (typed, expected) => {
    expect(hooks(typed)).toEqual(expected);
  });

  it('is told with its other names, its doubts and its source’s notes', () => {
    expect(lookUpHook('2mm')).toEqual([
      { system: 'mm', mm: 2, oldUK: '14', fromMemory: false, note: 'One page calls it US B/1.' },
    ]);
    expect(lookUpHook('7.5mm')).toEqual([{ system: 'mm', mm: 7.5, oldUK: '1', fromMemory: true }]);
    expect(lookUpHook('12mm')).toEqual([{ system: 'mm', mm: 12, fromMemory: true }]);
    expect(lookUpHook('S')).toEqual([{ system: 'US', mm: 19, US: 'S', fromMemory: false }]);
    expect(lookUpHook('steel 14')).toEqual([
      { system: 'US steel', mm: 0.75, US: 'steel 14', fromMemory: false },
    ]);
    expect(lookUpHook('steel 2')).toEqual([
      {
        system: 'US steel',
        mm: 2.5,
        US: 'steel 2',
        fromMemory: false,
        note: 'Other tables give 2.25 mm (from memory).',
      },
    ]);
  });

  it('of every row is found by each of its names', () => {
    for (const { mm, US, oldUK } of HOOKS) {
      expect(lookUpHook(`${mm}mm`).map((one) => one.mm)).toEqual([mm]);
      if (US !== undefined) expect(lookUpHook(`US ${US}`).map((one) => one.mm)).toContain(mm);
      if (oldUK !== undefined) expect(lookUpHook(`UK ${oldUK}`).map((one) => one.mm)).toContain(mm);
    }
    for (const { mm, US } of STEEL_HOOKS)
      expect(lookUpHook(`steel ${US}`).map((one) => one.mm)).toEqual([mm]);
  });

  it('between two rows lies between them', () => {
    expect(findHooksAround(4.6).map(({ mm }) => mm)).toEqual([4.5, 5]);
    expect(findHooksAround(4.5).map(({ mm }) => mm)).toEqual([4.25, 5]);
    expect(findHooksAround(1).map(({ mm }) => mm)).toEqual([2]);
    expect(findHooksAround(40).map(({ mm }) => mm)).toEqual([30]);
  });
});

describe('a size', () => {
  const IN = 2.54;
  /** Kind and width by height in inches, rounded, of every row that is found. */
  const sizes = (typed: string) =>
    lookUpSize(typed).map(
      ({ kind, width, height }) => `${kind} ${Math.round(width / IN)}x${Math.round(height / IN)}`,
    );

  it.each<[string, string[]]>([
    ['queen', ['mattress 60x80', 'mattress 60x80', 'cover 86x86', 'blanket 90x90', 'blanket 90x100']],
    ['Queen Bed', ['mattress 60x80', 'mattress 60x80']],
    ['queen mattress', ['mattress 60x80', 'mattress 60x80']],
    ['queen comforter', ['cover 86x86']],
    ['queen cover', ['cover 86x86']],
    ['queen blanket', ['blanket 90x90', 'blanket 90x100']],
    ['queen-blanket', ['blanket 90x90', 'blanket 90x100']],
    ['  QUEEN    blanket  ', ['blanket 90x90', 'blanket 90x100']],
    ['UK king', ['mattress 60x78']],
    ['king uk', ['mattress 60x78']],
    ['uk super king mattress', ['mattress 72x78']],
    ['king america', ['mattress 76x80', 'mattress 76x79']],
    // What is called US, or North American.
    ['us king', ['mattress 76x80', 'mattress 76x79', 'cover 100x90']],
    ['europe double', ['mattress 55x79', 'mattress 63x79', 'mattress 71x79']],
    ['cot', ['crib 28x52', 'crib 27x52', 'blanket 45x60']],
    // A crib is no mattress by its kind, but one of its rows is of one.
    ['crib mattress', ['crib 27x52']],
    ['crib blanket', ['blanket 45x60']],
    ['superking', ['mattress 72x78']],
    ['cal king', ['mattress 72x84']],
    ['xl twin', ['mattress 38x80']],
    ['cover', ['cover 68x86', 'cover 76x86', 'cover 86x86', 'cover 100x90']],
    ['comforter', ['cover 68x86', 'cover 76x86', 'cover 86x86', 'cover 100x90']],
    ['throw', ['blanket 50x60']],
    ['throw cover', []],
    ['europe throw', []],
    ['elephant', []],
    ['', []],
    ['uk', []],
    ['constructor', []],
  ])('%j', (typed, expected) => {
    expect(sizes(typed)).toEqual(expected);
  });

  it('is offered under every name once', () => {
    expect(SIZE_NAMES).toEqual([...new Set(SIZE_NAMES)]);
    for (const { of } of SIZES) expect(SIZE_NAMES).toContain(of);
    for (const name of SIZE_NAMES) expect(sizes(name).length).toBeGreaterThan(0);
  });

  it('of a blanket by a word alone is the blanket’s before the cover’s, the cover’s before the bed’s', () => {
    const taken = (typed: string) => {
      const { taken, others } = findBlanketSize(typed);
      return [taken, ...others].map(({ kind }) => kind);
    };
    expect(taken('queen')).toEqual(['blanket', 'blanket', 'cover', 'mattress', 'mattress']);
    expect(taken('full')).toEqual(['cover', 'mattress', 'mattress']);
    expect(taken('crib')).toEqual(['blanket', 'crib', 'crib']);
    expect(taken('california king')).toEqual(['mattress']);
  });

  it('that is no size is refused with what it may have meant', () => {
    const refused = (typed: string) => {
      try {
        findBlanketSize(typed);
      } catch (problem) {
        return problem as { code: string; option: string; hint: string };
      }
      throw new Error('answered');
    };
    expect(refused('quen')).toMatchObject({ code: 'unknown-size-word', option: 'for' });
    expect(refused('quen').hint).toBe(`Did you mean queen? There are ${SIZE_NAMES.join(', ')}.`);
    expect(refused('zzzzzzzz').hint).toBe(`There are ${SIZE_NAMES.join(', ')}.`);
  });

  it('is told with whose it is, with what to add to a mattress, and with its namesakes', () => {
    expect(describeBlanketSize('throw')).toBe(
      '“throw” is taken as ⟦127x152.4 cm⟧ (throw), from memory: common trade size.',
    );
    expect(describeBlanketSize('california king')).toBe(
      '“california king” is taken as ⟦182.88x213.36 cm⟧ (mattress, North America), table of bed sizes, liquisearch.com. That is the top of the mattress: add the drop you want.',
    );
    expect(describeBlanketSize('king')).toContain(
      ' Others by that name: ⟦274.32x254 cm⟧ (bed blanket, longer); ',
    );
    expect(describeBlanketSize('king')).not.toContain('add the drop');
  });
});

describe('a term', () => {
  it.each<[string, [terms: string, US: string, UK: string][]]>([
    [
      'dc',
      [
        ['UK', 'sc, single crochet', 'dc, double crochet'],
        ['US', 'dc, double crochet', 'tr, treble'],
      ],
    ],
    ['US dc', [['US', 'dc, double crochet', 'tr, treble']]],
    ['uk   DC.', [['UK', 'sc, single crochet', 'dc, double crochet']]],
    [
      '  double   crochet ',
      [
        ['UK', 'sc, single crochet', 'dc, double crochet'],
        ['US', 'dc, double crochet', 'tr, treble'],
      ],
    ],
    ['chain', [['both', 'ch, chain', 'ch, chain']]],
    ['skip', [['US', 'sk, skip', 'miss']]],
    ['miss', [['UK', 'sk, skip', 'miss']]],
    ['us htr', []],
    ['BLO', [['both', 'BLO', 'BLO']]],
    ['between', [['both', 'bet', 'bet']]],
    ['t-ch', [['both', 't-ch', 't-ch']]],
    ['*', [['both', '*', '*']]],
    ['constructor', []],
    ['', []],
  ])('%j', (typed, expected) => {
    expect(lookUpTerm(typed).map(({ terms, US, UK }) => [terms, US, UK])).toEqual(expected);
  });

  it('is told with how it is worked, its symbol and its trap', () => {
    expect(lookUpTerm('hdc')).toEqual([
      {
        terms: 'US',
        US: 'hdc, half double crochet',
        UK: 'htr, half treble',
        how: 'yarn over, hook in and pull a loop up, yarn over and through all three loops',
        symbol: 'plain T',
        source: expect.stringContaining('interweave.com') as string,
      },
    ]);
    expect(lookUpTerm('gauge')[0]).not.toHaveProperty('symbol');
    expect(lookUpTerm('gauge')[0]).not.toHaveProperty('trap');
    expect(lookUpTerm('single')[0]!.trap).toContain('slip stitch');
    expect(lookUpTerm('inc')[0]).toMatchObject({
      how: 'increase: one stitch more',
      source: expect.stringContaining('from memory') as string,
    });
  });

  it('of chains tells a loop that is there from one to be made', () => {
    const how = (typed: string) => lookUpTerm(typed).map((one) => one.how);
    expect(how('ch-5')).toEqual([
      'a loop of 5 chains that is there already; without the dash it is 5 chains to make',
    ]);
    expect(how('ch 5')).toEqual(['make 5 chains; with a dash (ch-5) it is a loop that is there already']);
    expect(how('CH 1')).toEqual(['make 1 chain; with a dash (ch-1) it is a loop that is there already']);
    expect(how('ch-120')).toHaveLength(1);
    expect(how('FPdc')).toEqual([
      'dc, in the pattern’s own terms, at the front post: round the stem, from in front',
    ]);
    expect(how('bp htr')).toEqual([
      'htr, in the pattern’s own terms, at the back post: round the stem, from behind',
    ]);
    expect(how('fsc')[0]).toMatch(/^foundation sc, in the pattern’s own terms/);
    for (const none of ['fpx', 'fch', 'ftog', 'xfpdc', 'fpdcx', 'fp.dc', 'xfdc', 'fdcx'])
      expect(how(none)).toEqual([]);
    for (const none of ['ch-1200', 'ch5', 'xch 5', 'ch 5x', 'ch-']) expect(how(none)).toEqual([]);
  });

  it('by a German name is worked as the stitch is, where it is one', () => {
    const how = (typed: string) => lookUpTerm(typed).map((one) => one.how);
    expect(how('feste Masche')).toEqual([`a German name; ${how('sc')[0]}`]);
    expect(how('stb')).toEqual([`a German name; ${how('US dc')[0]}`]);
    expect(how('dreifstb')).toEqual([`a German name; ${how('US dtr')[0]}`]);
    // A ring is no stitch that is counted.
    expect(how('Fadenring')).toEqual(['a German name']);
  });

  it('is offered by all names', () => {
    expect(ALL_TERM_WORDS).toEqual(expect.arrayContaining([...TERM_WORDS, 'feste masche', 'fadenring']));
    for (const { names } of CRAFT_WORDS) expect(ALL_TERM_WORDS).toEqual(expect.arrayContaining([...names]));
    for (const word of ALL_TERM_WORDS) expect(lookUpTerm(word), word).not.toEqual([]);
    expect(TERM_WORDS).toEqual([...new Set(TERM_WORDS)]);
    for (const { US, UK } of STITCH_NAMES)
      for (const name of [...US, ...UK]) expect(TERM_WORDS).toContain(name);
    for (const { short } of ABBREVIATIONS) expect(TERM_WORDS).toContain(short);
    for (const word of TERM_WORDS) expect(lookUpTerm(word).length).toBeGreaterThan(0);
  });
});

describe('a yarn', () => {
  it.each<[string, string, number[]]>([
    ['4', 'category', [4]],
    ['category 4', 'category', [4]],
    [' Category   4 ', 'category', [4]],
    ['0', 'category', [0]],
    ['8', 'name', []],
    ['subcategory 4', 'name', []],
    ['Super Bulky', 'name', [6]],
    ['super   bulky', 'name', [6]],
    ['fine', 'name', [2]],
    ['baby', 'type', [1, 2]],
    ['dk', 'type', [3]],
    ['roving', 'type', [6, 7]],
    ['light worsted', 'type', [3]],
    ['worst', 'name', []],
    ['12 wpi', 'wraps', [2, 3, 4]],
    ['12wraps', 'wraps', [2, 3, 4]],
    // Both ends of a range belong to it.
    ['9 wpi', 'wraps', [4, 5]],
    ['5 wpi', 'wraps', [6]],
    ['4.5 wpi', 'wraps', []],
    ['x wpi', 'name', []],
    ['12 wpi yarn', 'wraps', [2, 3, 4]],
    ['', 'name', []],
  ])('%j by %s', (typed, by, categories) => {
    const found = lookUpYarn(typed);
    expect(found.by).toBe(by);
    expect(found.yarns.map(({ category }) => category)).toEqual(categories);
    expect(found.wraps).toBe(by === 'wraps' ? Number.parseFloat(typed) : undefined);
    expect(found.working.steps).toEqual([]);
  });

  it('by its ball band lies where the chart’s whole yards put it', () => {
    // 900.5 yards in a pound end medium: 900.5 × 0.9144 ÷ 453.59237 m to a gram, so 181.533 m to 100 g.
    const category = (ball: string) => lookUpYarn(ball).yarns.map((yarn) => yarn.category);
    expect(category('181.5m/100g')).toEqual([4]);
    expect(category('181.6m/100g')).toEqual([3]);
    const found = lookUpYarn('181.5m/100g');
    expect(found).toMatchObject({ by: 'ball', ball: { m: 181.5, g: 100 } });
    expect(found.working.steps.map(({ result }) => result)).toEqual([1.815]);
  });

  it('is offered by number, name and type', () => {
    expect(YARN_WORDS).toEqual([...new Set(YARN_WORDS)]);
    for (const { category, name, types } of YARN_WEIGHTS)
      for (const word of [String(category), name, ...types.split(', ')]) expect(YARN_WORDS).toContain(word);
    for (const word of YARN_WORDS) expect(lookUpYarn(word).yarns.length).toBeGreaterThan(0);
  });
});

describe('what is typed', () => {
  it.each([
    ['  size k – 10½ ', 'K-10 1/2'],
    ['k-10.5', 'K-10 1/2'],
    ['10.55', '10.55'],
    ['10.5 mm', '10.5 MM'],
    ['no 7', '7'],
    ['NO. 7', '7'],
    ['number 7', '7'],
    ['hook 7', '7'],
    ['7 hook', '7'],
    ['7 hooks', '7 HOOKS'],
    ['steelhook', 'STEELHOOK'],
    ['#7', '7'],
    ['5 #', '5'],
    ['h   8', 'H-8'],
    ['m/n 13', 'M/N-13'],
    ['old   uk 7', 'OLD UK 7'],
  ])('of a hook, %j, is %s', (typed, written) => {
    expect(simplifyHook(typed)).toBe(written);
  });

  it('of a hook in millimetres, in the singular too, is in no other system', () => {
    for (const typed of ['5mm', '5 mm', '5 millimetre', '5 millimeters', '5 MM hook'])
      expect(lookUpHook(typed).map(({ system, mm }) => [system, mm])).toEqual([['mm', 5]]);
    for (const none of ['mm 5', 'x us 7', '5 mmm']) expect(lookUpHook(none)).toEqual([]);
  });

  it('names a hook with what the table has of it, and leaves out what it has not', () => {
    const [first] = lookUpHook('4.25mm');
    expect(first).not.toHaveProperty('US');
    expect(first).toMatchObject({ oldUK: '8', fromMemory: false });
    expect(lookUpHook('2.75mm')[0]).not.toHaveProperty('oldUK');
    expect(lookUpHook('5mm')[0]).not.toHaveProperty('note');
    expect(lookUpHook('5.25mm')[0]).toMatchObject({ fromMemory: true });
    // Steel 9 has no note, steel 8 has one.
    expect(lookUpHook('steel 9')[0]).toEqual({
      system: 'US steel',
      mm: 1.4,
      US: 'steel 9',
      fromMemory: false,
    });
    expect(lookUpHook('steel 8')[0]).toHaveProperty('note');
  });

  it.each([
    [' Worsted-weight yarn ', 'worsted'],
    ['worsted  weight', 'worsted'],
    ['dk wt', 'dk'],
    ['dk wool soft', 'dk wool soft'],
    ['weight', 'weight'],
    ['#4', '4'],
    ['no 4', '4'],
    ['no.4', '4'],
    ['cyc 4', '4'],
    ['category 12', '12'],
    ['category 4x', 'category 4x'],
    ['my category 4', 'my category 4'],
    ['4ply', '4 ply'],
    ['4-ply', '4 ply'],
    ['10 ply wool', '10 ply'],
    ['x4ply', 'x4ply'],
    ['4plyx', '4plyx'],
    ['#', '#'],
  ])('of a yarn, %j, is %s', (typed, written) => {
    expect(simplifyYarn(typed)).toBe(written);
  });

  it('of a yarn are wraps only at the end, and a ball with or without its stroke', () => {
    expect(lookUpYarn('11 wraps per inch')).toMatchObject({ by: 'wraps', wraps: 11 });
    expect(lookUpYarn('11wpi')).toMatchObject({ by: 'wraps', wraps: 11 });
    expect(lookUpYarn('11 wraps an inch')).toMatchObject({ by: 'wraps', wraps: 11 });
    expect(lookUpYarn('11 wpi soft').by).toBe('name');
    for (const ball of ['170m/100g', '100 g 170 m'])
      expect(lookUpYarn(ball)).toMatchObject({
        by: 'ball',
        ball: { m: 170, g: 100 },
        yarns: [{ category: 4 }],
      });
    expect(() => lookUpYarn('soft/thick')).toThrow(expect.objectContaining({ code: 'not-a-ball' }));
    expect(lookUpYarn('moonlight')).not.toHaveProperty('called');
  });

  it('is offered from everything that can be found, each once', () => {
    for (const { category, name, types } of YARN_WEIGHTS)
      expect(YARN_WORDS).toEqual(expect.arrayContaining([String(category), name, ...types.split(', ')]));
    for (const word of YARN_WORDS) expect(lookUpYarn(word).yarns.length, word).toBeGreaterThan(0);
    expect(new Set(YARN_WORDS).size).toBe(YARN_WORDS.length);
  });
});

describe('stitches told apart', () => {
  const names = (typed: string, terms: 'US' | 'UK') =>
    readNamed(typed, terms)?.map(({ stitch, meaning }) => stitch ?? meaning.US);

  it.each([
    ['sc vs dc', 'US', ['sc', 'dc']],
    ['dc and tr', 'UK', ['sc', 'dc']],
    ['single crochet or double crochet', 'US', ['sc', 'dc']],
    // Terms before the first are for all; each may have its own.
    ['UK dc, tr', 'US', ['sc', 'dc']],
    ['US dc vs UK dc', 'US', ['dc', 'sc']],
    ['blo/flo', 'US', ['BLO', 'FLO']],
  ] as const)('%s, for a reader of %s terms', (typed, terms, expected) => {
    expect(names(typed, terms)).toEqual(expected);
  });

  it('are written as terms are, however they were typed', () => {
    expect(readNamed('us dc, uk dc', 'US')?.map(({ typed }) => typed)).toEqual(['US dc', 'UK dc']);
  });

  it('are none where one is unknown, or only one is named', () => {
    expect(readNamed('sc vs zigzagstitchery', 'US')).toBeUndefined();
    expect(readNamed('sc', 'US')).toBeUndefined();
    expect(readNamed('vs', 'US')).toBeUndefined();
  });

  it('by height and yarn as published: a dc row end takes two sc, a tr one three; 53 and 102 inches over the same row', () => {
    // carol-mycrochetpage.blogspot.com, “Picot edging” (2009); windchilde.com/bluedepth.
    const compared = (typed: string) => compareStitches(readNamed(typed, 'US')!, new Working());
    expect(compared('sc vs dc')).toMatchObject({ shorter: 'sc', taller: 'dc', tall: 2 });
    expect(compared('sc vs dc')!.yarn).toBeCloseTo(102 / 53, 2);
    expect(compared('tr, sc')).toMatchObject({ shorter: 'sc', taller: 'tr', tall: 3 });
    expect(compared('sc vs US sc')).toBeUndefined();
    expect(compared('sc vs blo')).toBeUndefined();
  });

  it('are said as they were typed, in the reader’s terms', async () => {
    const { ask } = asking();
    expect((await ask('/lookup term term:"sc vs dc"')).headline).toBe(
      'dc is about 2 times as tall as sc and takes about 1.9 times its yarn.',
    );
    await ask('/settings change terms:UK');
    const uk = await ask('/lookup term term:"dc vs tr"');
    expect(uk.headline).toBe('tr is about 2 times as tall as dc and takes about 1.9 times its yarn.');
    expect(uk.lines).toContain('The same in US terms: sc, dc; in UK terms: dc, tr.');
  });
});
