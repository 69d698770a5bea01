/** What people write of a row that went wrong, words that are asked after alone, and greetings. */
import { beforeAll, describe, expect, it } from 'vitest';
import { asking, type Asking } from '../asking.ts';
import { savedAsking } from './check.ts';

describe('a row as somebody tells of it', () => {
  let room: Asking;
  beforeAll(async () => {
    room = await savedAsking();
  });

  it.each([
    'row 7 has 14 stitches',
    'I have 14 stitches in row 7',
    'I counted 14 in row 7',
    'I have 14 stitches in row 7 instead of 15',
    'my row 7 has 14 stitches, it should have 15',
  ])('is held against her motif: %s', async (words) => {
    const answer = await room.ask(words);
    expect(answer.read_as).toMatch(/^\/stitches check .*counts:14 from_row:7/);
    expect(answer.headline).toContain('14 stitches where 15 belong, 1 too few');
  });

  it('is held against what she makes along, where she is stuck', async () => {
    const answer = await room.ask('I am stuck on row 7, I have 14 stitches instead of 15');
    expect(answer.read_as).toBe('/along stuck row:7 counts:14');
  });

  it.each(['I have 2 stitches too few in row 7', 'row 7 has 2 extra stitches', 'I have 2 stitches too many'])(
    'is never taken for the count where it is how far it is off: %s',
    async (words) => {
      expect(await room.ask(words)).toMatchObject({ ok: false });
    },
  );

  it('leaves alone what is no row', async () => {
    const { read_as } = await room.ask('my gauge is 14 stitches instead of 16 over 10 cm, what now');
    expect(read_as ?? '').not.toMatch(/stitches check/);
  });
});

describe('a word that is asked after alone', () => {
  const room = asking();
  it.each([
    ['what is gauge', 'gauge'],
    ['what does tension mean?', 'tension'],
    ['explain gauge', 'gauge'],
    ['what is a dye lot', 'dye lot'],
    ['what is a granny square?', 'granny square'],
  ])('%s', async (words, term) => {
    const answer = await room.ask(words);
    expect(answer.read_as).toBe(`/lookup term term:${term.includes(' ') ? `"${term}"` : term}`);
  });
  it('is a matter like any other in a longer question', async () => {
    expect((await room.ask('what is my gauge if I have 18 stitches over 12 cm')).read_as ?? '').not.toContain(
      'lookup term',
    );
    expect((await room.ask('how many granny squares of 15 cm for a 120 by 160 cm blanket')).read_as).toMatch(
      /^\/resize/,
    );
  });
});

describe('a greeting', () => {
  const room = asking();
  it.each([
    ['hello', 'Hello.'],
    ['Good morning everyone!', 'Hello.'],
    ['thanks!', 'You are welcome.'],
    ['ok, thank you so much', 'You are welcome.'],
  ])('%s is met as one', async (words, said) => {
    expect(await room.ask(words)).toMatchObject({ ok: false, code: 'asks-nothing', problem: said });
  });
  it('before a question is passed over', async () => {
    expect((await room.ask('hello, how many 15 cm squares for a 120 by 160 cm blanket?')).read_as).toMatch(
      /^\/resize/,
    );
  });
});
