/** Plain words in the terminal room: answered, asked back, completed. */
import { describe, expect, it } from 'vitest';
import { asking, NOON } from '../asking.ts';

describe('a line without a slash', () => {
  it('is answered as the question it means, and says which', async () => {
    const { ask } = asking();
    const said = await ask('how many 6 inch squares for a 4 by 5 foot blanket with a 2 in border');
    const typed = await ask('/resize width:4ft height:5ft side:6in border:2in');
    expect(said).toMatchObject({
      ok: true,
      question: '/resize',
      read_as: '/resize width:4ft height:5ft side:6in border:2in',
    });
    expect(said.figures).toEqual(typed.figures);
  });

  it('that asks for something not saved yet is told how it is saved', async () => {
    const { ask } = asking();
    const unsaved = await ask('show me my blanket');
    expect(unsaved).toMatchObject({ ok: false, code: (await ask('/blanket show')).code });
    expect(await ask('next row please')).toMatchObject({
      ok: false,
      code: (await ask('/progress next')).code,
    });
    expect((await ask('look at this square I made!')).code).toBe('not-understood');
  });

  it('says that a swatch of one measure is read as square', async () => {
    const { ask } = asking();
    const said = await ask(
      'how many balls for a throw if a 4 inch swatch weighs 10 g and balls are 100g/200m',
    );
    expect(said.assumptions).toContain('A swatch of 4in is read as square, 4in each way.');
    const wide = await ask(
      'a 4 inch wide swatch weighs 10 g, how many balls of 100g/200m for a 120x160cm blanket',
    );
    expect(wide.ok).toBe(false);
  });

  it('is asked for what is missing, and the next line completes it', async () => {
    const { ask } = asking();
    expect(await ask('how many squares for a 4 by 5 foot blanket')).toMatchObject({
      ok: false,
      code: 'option-missing',
      option: 'side',
      read_as: '/resize width:4ft height:5ft',
    });
    expect(await ask('6 in')).toMatchObject({
      ok: true,
      read_as: '/resize width:4ft height:5ft side:"6 in"',
    });
    // What was completed is over: the next line begins anew.
    expect(await ask('6 in')).toMatchObject({ ok: false, option: 'question' });
  });

  it('waits for ten minutes, for the one who was asked', async () => {
    const { ask, at } = asking();
    await ask('rowan: how many squares for a 4 by 5 foot blanket');
    expect(await ask('6 in')).toMatchObject({ ok: false, option: 'question' });
    at(new Date(NOON.getTime() + 11 * 60_000));
    expect(await ask('rowan: 6 in')).toMatchObject({ ok: false, option: 'question' });
    await ask('rowan: how many squares for a 4 by 5 foot blanket');
    at(new Date(NOON.getTime() + 20 * 60_000));
    expect(await ask('rowan: 6 in')).toMatchObject({ ok: true });
  });

  it('asks for one thing after the other', async () => {
    const { ask } = asking();
    expect(await ask('how many stitches in row 9')).toMatchObject({ ok: false, option: 'shape' });
    expect(await ask('a diagonal square')).toMatchObject({ ok: false, option: 'size' });
    const said = await ask('12 rows');
    expect(said).toMatchObject({ ok: true, read_as: '/stitches row shape:diagonal size:12 row:9' });
    expect(said.figures['stitches']?.value).toBe(19);
  });

  it('lets a new question come between', async () => {
    const { ask } = asking();
    await ask('how many squares for a 4 by 5 foot blanket');
    expect(await ask('what does dc mean')).toMatchObject({ ok: true, question: '/lookup term' });
    expect(await ask('6 in')).toMatchObject({ ok: false, option: 'question' });
  });

  it('declines what asks nothing, with near questions where there are some', async () => {
    const { ask } = asking();
    for (const words of ['good morning everyone', 'I love this yarn', 'tell me a joke'])
      expect(await ask(words)).toMatchObject({ ok: false, option: 'question' });
    expect(await ask('how many squares 12 15 18 20 blanket?')).toMatchObject({
      ok: false,
      option: 'question',
    });
  });

  it('takes what is saved, and says so', async () => {
    const { ask } = asking();
    await ask('/motif define name:moss shape:diagonal size:12 gauge:13x10');
    await ask('/blanket start name:throw kinds:moss columns:4 rows:5');
    const said = await ask('my square weighs 12 g, how much for all of them? 170m/100g');
    expect(said).toMatchObject({
      ok: true,
      question: '/yardage weighed',
      read_as: '/yardage weighed motif:12g ball:170m/100g motifs:20',
    });
    expect(said.assumptions.join(' ')).toContain('from your saved blanket throw');
    const row = await ask('how many stitches in row 9 of my square');
    expect(row.figures['stitches']?.value).toBe(19);
    expect(row.assumptions.join(' ')).toContain('from your saved motif moss');
  });

  it('takes what is saved in the units in which it was typed', async () => {
    const { ask, text } = asking();
    await ask('/settings change units:imperial');
    await ask('/motif define name:moss shape:diagonal size:12 gauge:"14x10 over 4in"');
    await ask('/motif weigh name:moss weight:0.6oz side:6in ball:170yd/100g');
    expect(await ask('how many balls for 48 moss squares')).toMatchObject({
      ok: true,
      read_as: '/yardage weighed motif:0.6oz ball:170yd/100g motifs:48',
    });
    const shown = await text('how many balls for 48 moss squares');
    expect(shown).not.toMatch(/155\.|17\.0/);
    expect(await ask('what will my 12 row diagonal square block to')).toMatchObject({
      read_as: expect.stringContaining('over 4in') as string,
    });
  });

  it('takes back what was done last where only undo is said', async () => {
    const { ask, at } = asking();
    const later = (minutes: number) => at(new Date(NOON.getTime() + minutes * 60_000));
    await ask('/motif define name:moss shape:diagonal size:12');
    await ask('/blanket start name:throw kinds:moss columns:4 rows:5');
    await ask('/progress next');
    later(1);
    await ask('/blanket change joining:whip');
    later(2);
    expect(await ask('undo')).toMatchObject({ ok: true, question: '/blanket undo' });
    expect(await ask('undo that')).toMatchObject({ ok: true, question: '/progress undo' });
    expect(await ask('undo')).toMatchObject({ ok: false, code: 'nothing-counted' });
    // Whoever says what is to be taken back means that.
    await ask('/progress next');
    later(3);
    await ask('/blanket change joining:whip');
    expect(await ask('undo my last row')).toMatchObject({ ok: true, question: '/progress undo' });
  });

  it('offers the next readings', async () => {
    const { ask } = asking();
    const said = await ask('/ask words:"how many 6 inch squares for a 4 by 5 foot blanket" other:yes');
    expect(said.ok).toBe(true);
  });

  it('names the maker where a name can be nothing else', async () => {
    const { ask, projects } = asking();
    await ask('rowan: switch me to inches');
    expect((await projects.maker('rowan', 'rowan')).settings.units).toBe('imperial');
    expect((await projects.maker('me', 'me')).settings.units).toBe('metric');
    expect(await ask('gauge: 13x10 and 12 rows, what will my diagonal square block to?')).toMatchObject({
      ok: true,
    });
    expect(await projects.knows('gauge')).toBe(false);
  });
});

describe('the help', () => {
  it('is led on by one of its words alone, and by nothing else', async () => {
    const { ask } = asking();
    const led = async (word: string) => {
      await ask('/help');
      return ask(word);
    };
    for (const word of ['yarn', 'ends', 'border', 'lost'])
      expect(await led(word)).toMatchObject({ ok: true, question: '/help' });
    expect(await ask('/help yarn')).toMatchObject({ ok: true });
    expect(await ask('yardage left')).toMatchObject({
      ok: true,
      question: '/help',
      headline: expect.stringMatching(/^\/yardage left: /) as string,
    });
    expect(await led('how many 6 inch squares for a 4 by 5 foot blanket')).toMatchObject({
      ok: true,
      read_as: '/resize width:4ft height:5ft side:6in',
    });
    expect(await led('thanks')).toMatchObject({ ok: false });
  });
});
