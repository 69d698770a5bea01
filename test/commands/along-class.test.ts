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
  const plan = await room.ask('mara: /along plan');
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
    expect((await room.ask('mara: /along troubles')).headline).toContain('row 4');
  });
});
