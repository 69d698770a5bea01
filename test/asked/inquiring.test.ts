/** What changes something is done on a wish, never on an inquiry. */
import { describe, expect, it } from 'vitest';
import { inquires } from '../../src/asked/inquiring.ts';
import { asking, type Asking } from '../asking.ts';
import { savedAsking } from './check.ts';

/** A blanket of a group in which rowan takes part and has handed something in. */
async function group(): Promise<Asking> {
  const room = asking();
  for (const line of [
    '/motif define name:fern shape:diagonal size:10 gauge:13x10',
    '/blanket start name:garden kinds:fern columns:4 rows:5',
    '/together open blanket:garden name:niece',
    'rowan: /together join name:niece per_week:2',
    'rowan: /together pledge kind:fern motifs:4',
    'rowan: /together handin kind:fern motifs:2',
  ])
    expect(await room.ask(line), line).toMatchObject({ ok: true });
  return room;
}

const everything = async (room: Asking) =>
  JSON.stringify([
    (await room.ask('/together history')).lines,
    (await room.ask('/blanket show')).lines,
    (await room.ask('/motif show')).lines,
    (await room.ask('/progress show')).figures,
    (await room.ask('/settings show')).headline,
    (await room.ask('rowan: /settings show')).headline,
  ]);

describe('an inquiry', () => {
  it.each([
    'rowan: how do i leave the group',
    'rowan: how do I hand in a fern',
    'rowan: should i give back one fern?',
    'rowan: what if i hand in 1 fern',
    'rowan: should i pledge 2 ferns?',
    'should i accept 1?',
    'how do i accept 1 and 2',
    'can i send back 1 because its too small?',
    'how do i close the group',
    'can i hand the blanket over to rowan?',
    'i need to make 80 squares in 12 weeks how many a week',
    'how many squares a week if i have 8 weeks for 60 squares',
    'do i finish the square after row 20?',
    'how do i say that i am at row 6',
    'what happens if i swap 3 and 8',
    'should i make the border sc hdc dc?',
    'should i use uk terms',
    'how do i show my answers only to me',
    'is 14 g too much for a fern?',
    'did i weigh my fern, 13 g?',
    'what do i do when i finished a row',
    'what is my next row',
  ])('%s changes nothing', async (line) => {
    const room = await group();
    const before = await everything(room);
    await room.ask(line);
    expect(await everything(room)).toBe(before);
    expect(room.faults).toEqual([]);
  });

  it('is answered with how the thing is done, and with the line that does it', async () => {
    const room = await group();
    const answer = await room.ask('rowan: how do i leave the group');
    expect(answer).toMatchObject({ ok: true, read_as: '/help about:"together leave"' });
    expect(answer.lines?.[0]).toContain('Nothing is done yet. This does it: /together leave');
  });

  it.each([
    ['switch me to inches', false],
    ['can you switch me to inches?', false],
    ['could you please undo that', false],
    ['can I have 4 of the furrow squares please', false],
    ['done a row, what’s next?', false],
    ['2 squares handed in, ok?', false],
    ['I finished a square', false],
    ['delete my blanket', false],
    ['hi, how do I undo this', true],
    ['could you tell me how to undo this', true],
    ['another square done?', true],
  ])('%j: %s', (words, is) => expect(inquires(words)).toBe(is));
});

/** What is saved of somebody who makes a square, a blanket of it, and takes part in a make-along. */
async function busy(): Promise<Asking> {
  const room = await savedAsking();
  for (const line of ['/progress at motif:"moss square" row:3', '/lesson start lesson:growing'])
    expect(await room.ask(line), line).toMatchObject({ ok: true });
  return room;
}

const allOf = async ({ projects }: Asking) =>
  JSON.stringify([
    await projects.keptOf('me'),
    ...(await projects.alongs.of(undefined)).map(({ doc }) => doc),
    ...(await projects.groups.of(undefined)).map(({ doc }) => doc),
  ]);

describe('what is denied, not so yet, or of somebody else', () => {
  it.each([
    'I’m not done with part 1',
    'I am not done with my part yet',
    'part 1 is not done',
    'almost done with part 1',
    'nearly finished my part',
    'I will be done with part 1 tomorrow',
    'once I finish part 1 I can rest',
    'if only I were done with part 1',
    'half done with part 1',
    'Ana is done with part 1',
    'everyone has finished part 1',
    'I don’t want to leave the make-along',
    'please don’t close the make-along',
    'please, don’t, close the make-along',
    'never close the make-along',
    'the teacher closed the make-along',
    'I can’t join the make-along',
    'too late to join the make-along',
    'my hook broke in the make-along',
    'I’m not stuck',
    'he is stuck at part 1',
    'don’t stop the lesson',
    'don’t undo',
    'don’t. undo',
    'I never undo anything',
    'I haven’t finished row 5',
    'row 5 isn’t done',
    'Tom finished row 5',
    'I can’t pledge 5 trellis squares',
    'don’t show my answers to everyone',
  ])('%s changes nothing', async (line) => {
    const room = await busy();
    const before = await allOf(room);
    await room.ask(line);
    expect(await allOf(room)).toBe(before);
    expect(room.faults).toEqual([]);
  });

  it('is answered with the line that does it', async () => {
    const answer = await (await busy()).ask('I’m not done with part 1');
    expect(answer.lines?.[0]).toContain('Nothing is done yet. This does it: /along done part:1');
  });

  it.each([
    'I’m done with part 1',
    'not sure if this is right but I am on row 6',
    'sorry, not row 5, I am on row 6',
    'I can’t go on, stop the lesson',
    'I don’t have time, I want to leave the make-along',
    'that was not what I wanted, undo it',
    'I use inches not centimetres',
    'close the make-along',
    'everything is done in part 1',
  ])('%s is done', async (line) => {
    const room = await busy();
    const before = await allOf(room);
    expect(await room.ask(line)).toMatchObject({ ok: true });
    expect(await allOf(room)).not.toBe(before);
  });
});

describe('words of a make-along', () => {
  it('are those of the group’s blanket where there is no make-along', async () => {
    const room = await group();
    expect((await room.ask('how far behind are we')).read_as).toMatch(/^\/together board/);
    expect((await room.ask('is the group behind')).code).toBe('not-understood');
  });

  it('take no row check from whoever is in one', async () => {
    const { ask } = await savedAsking();
    const words = 'I’m stuck, my counts are 3 5 7 8 10 on a 12 row diagonal square';
    expect((await ask(words)).read_as).toMatch(/^\/stitches check/);
    expect((await ask('I’m stuck on row 9 of part 1, 18 stitches')).read_as).toMatch(/^\/along stuck/);
  });
});

describe('what is asked back', () => {
  it.each([
    ['how wide is a 9 x 11 blanket of 5.5 inch squares with a 3 inch border', false],
    ['my new kitten is 15 cm long now', false],
    ['6 in', true],
    ['they are about 6 inches each', true],
  ])('is answered by %j: %s', async (words, is) => {
    const { ask } = asking();
    await ask('how many squares for a 4 by 5 foot blanket');
    expect((await ask(words)).ok).toBe(is);
  });
});
