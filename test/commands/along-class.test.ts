/** A class from its first part to its border, as those who take part read it. */
import { describe, expect, it } from 'vitest';
import { asking, type Asking } from '../asking.ts';

/** A blanket of two kinds in two stitches, its class opened, and one who makes it along. */
export async function klass(): Promise<Asking> {
  const room = asking();
  for (const line of [
    'mara: /motif define name:"harbour square" shape:diagonal size:10 stitch:hdc gauge:14x11 hook:5mm colours:"10 rows navy, 10 rows cream"',
    'mara: /motif define name:"foam square" shape:solid-square size:6 stitch:dc gauge:14x8 hook:5mm colours:"3 rounds cream, 3 rounds navy"',
    'mara: /blanket start name:harbour kinds:"harbour square, foam square" columns:5 rows:6 border:"sc hdc sc" border_colours:"navy, cream, navy" joining:whip',
    'mara: /along open blanket:harbour name:class starts:2026-03-02 every:day',
    'anna: /along join gauge:14x11 hook:5mm ball:170m/100g',
  ])
    expect(await room.ask(line), line).toMatchObject({ ok: true });
  return room;
}

/** The number of the part of that title. */
async function partOf(room: Asking, title: string): Promise<number> {
  const plan = await room.ask('mara: /along plan name:class');
  return 1 + (plan.lines ?? []).filter((line) => /^\d/.test(line)).findIndex((line) => line.includes(title));
}

describe('stuck in the border', () => {
  it('is held against the rounds of the border, not against a motif', async () => {
    const room = await klass();
    const part = await partOf(room, 'Border');
    const answer = await room.ask(`anna: /along stuck part:${part} row:2 counts:"374 390"`);
    // 5 × 11.785 cm at 14 over 10 cm are 82, 6 are 99: 2 × (82 + 99) + 12 = 374, and 8 more every round.
    expect(answer.headline).toBe(
      'Round 2 of your border should have 382 stitches; you counted 390, 8 too many.',
    );
    expect(answer.lines).toEqual(
      expect.arrayContaining([
        'Most likely: Every corner has 2 too many: 3 belong into the middle stitch of each.',
        'Side by side, to find the place: 84 along each width, 101 along each height and 3 in each corner.',
        'Stitches from round 1: 374 382 390.',
      ]),
    );
    const right = await room.ask(`anna: /along stuck part:${part} row:2 counts:"374 382"`);
    expect(right.headline).toBe('Rounds 1 to 2 of your border have the right counts.');
    const words = await room.ask(`anna: /along stuck part:${part} words:"it ruffles"`);
    expect(words.lines).toContain('Stitches from round 1: 374 382 390.');
    const row = await room.ask(`anna: /along stuck part:${part} row:3`);
    expect(row.headline).toMatch(/^Round 3 of the border has 390 stitches: 86 along each width/);
    const troubles = await room.ask('mara: /along troubles');
    expect(troubles.headline).toBe(
      `Most are stuck at part ${part}, Border, round 2, corner stitches: 1 maker of 1.`,
    );
    expect(troubles.lines).toContain(
      'To show next: round 2 of the border has 382 stitches: 84 along each width, 101 along each height and 3 in each corner.',
    );
  });

  it('is held against a motif where one is named', async () => {
    const room = await klass();
    const part = await partOf(room, 'Border');
    const answer = await room.ask(
      `anna: /along stuck part:${part} kind:"harbour square" row:4 counts:"3 5 7 8"`,
    );
    expect(answer.headline).toContain('Row 4 of your harbour square should have 9 stitches');
    expect((await room.ask('mara: /along troubles')).headline).toContain('round 4, increase missed');
  });
});

describe('stuck in the swatch', () => {
  it('is not held against a motif', async () => {
    const room = await klass();
    const uneven = await room.ask('anna: /along stuck part:1 counts:"21 21 20"');
    expect(uneven.headline).toBe(
      'Every row of a swatch has as many stitches as its first; yours went from 21 to 20.',
    );
    const even = await room.ask('anna: /along stuck part:1 row:30 counts:"21 21"');
    expect(even.headline).toBe('All the rows that you counted have 21 stitches, as a swatch should.');
    // One count tells nothing of the others.
    expect((await room.ask('anna: /along stuck part:1 row:7 counts:"13"')).headline).toBe(
      'Your count of 13 is right if the first row of the swatch has as many: all its rows should.',
    );
    // 15 cm at 14 × 11 over 10 cm.
    expect(even.lines!.join(' ')).toContain('about 21 stitches and 17 rows');
    expect((await room.ask('anna: /along stuck part:1 words:"it curls"')).headline).toBe(
      'It is noted in your words.',
    );
  });
});

describe('the plan', () => {
  it('says which part comes next, and when', async () => {
    const room = await klass();
    room.at(new Date('2026-03-04T12:00:00Z'));
    expect((await room.ask('anna: when is the next part?')).headline).toBe(
      'class has 10 parts, each given out at 9:00 UTC; the next, part 4, on 5 March 2026.',
    );
    room.at(new Date('2026-05-04T12:00:00Z'));
    expect((await room.ask('anna: /along plan')).headline).toContain('; all of them are out.');
  });
});

describe('two kinds that do not fit side by side', () => {
  it('are told of to the teacher when she opens it and to whoever takes part, not when the seams pucker', async () => {
    const room = await klass();
    // 15 cm beside 11.785 cm.
    const puckers = expect.arrayContaining([
      expect.stringMatching(/^foam square measures 15 cm beside 11\.8 cm of harbour square/),
    ]) as unknown;
    const opened = await room.ask('mara: /along open blanket:harbour name:second starts:2026-03-02');
    expect(opened.cautions).toEqual(puckers);
    const joined = await room.ask('anna: /along join name:class');
    expect(joined.cautions).toEqual(puckers);
    const joining = await room.ask(`anna: /along mine name:class part:${await partOf(room, 'Joining')}`);
    expect(joining.cautions).toEqual(puckers);
    expect((await room.ask('anna: /along save name:class')).cautions).toEqual(puckers);
  });
});

describe('her own numbers', () => {
  it('tell the ends that there are by then, and the yarn of seams and border by colour', async () => {
    const room = await klass();
    const mine = async (title: string) => room.ask(`anna: /along mine part:${await partOf(room, title)}`);
    // 15 motifs of two colours with 4 ends each, and 15 more; 34 strands and 3 lengths of the border have two each.
    expect((await mine('Ends')).headline).toBe(
      `Part ${await partOf(room, 'Ends')}, Ends: Weave in the ends that are left, of 120 in the motifs; joining and border have 74 more.`,
    );
    const joining = await mine('Joining');
    expect(joining.lines).toContainEqual(expect.stringMatching(/^Yarn for it: navy 15\.\d m\.$/));
    const border = await mine('Border');
    const [, navy, cream] =
      /^Yarn for it: navy ([\d.]+) m, cream ([\d.]+) m\.$/m.exec(border.lines!.join('\n')) ?? [];
    expect(Number(navy) + Number(cream)).toBeCloseTo(border.figures['yarn']!.value, 0);
  });

  it('tell less than an hour in minutes', async () => {
    const room = await klass();
    const half = await room.ask(`anna: /along mine part:${await partOf(room, 'first half')}`);
    // 3 + 5 + … + 21 = 120 stitches at 15 a minute.
    expect(half.lines).toContain('About 8 minutes at 15 stitches a minute.');
  });
});

describe('taking part', () => {
  it('hears colours in plain words, rather than leaving them out', async () => {
    const room = await klass();
    const said = async (words: string) => (await room.ask(words)).read_as;
    expect(await said('dora: join the class with gauge 14x11, colours purple and white')).toBe(
      '/along join gauge:14x11 colours:"purple and white" name:class',
    );
    expect(
      await said('dora: join the class, my colours are purple, white and my gauge is 14x11 over 10 cm'),
    ).toContain('colours:"purple, white"');
    expect((await room.ask('dora: join the class with colours purple and white')).lines).toContain(
      'Your colours: purple for navy, white for cream.',
    );
  });

  it('takes black and white for two colours only where two are asked', async () => {
    const room = await klass();
    const joined = await room.ask('dora: /along join colours:"black and white, red"');
    expect(joined.lines).toContain('Your colours: black and white for navy, red for cream.');
  });

  it('speaks of no balls where none are known', async () => {
    const room = await klass();
    const joined = await room.ask('dora: /along join gauge:14x11');
    expect(joined.assumptions).toContainEqual(
      expect.stringMatching(/^No ball is known, so none are counted/),
    );
    expect(joined.assumptions.join(' ')).not.toContain('The pattern’s balls');
  });
});

describe('a class that went on without its teacher', () => {
  it('gives out many parts in one line, and says who is up to date without turning it round', async () => {
    const room = await klass();
    room.at(new Date('2026-04-20T12:00:00Z'));
    expect((await room.ask('mara: /along due')).headline).toMatch(
      /^Parts 1, 2, 3, .* of class are given out\.$/,
    );
    expect((await room.ask('anna: /along pace')).lines).toContain('Nobody is up to date yet.');
    expect(
      (await room.ask('mara: /along part part:2 title:"The first harbour square, first half"')).headline,
    ).toBe('Nothing was changed.');
  });
});
