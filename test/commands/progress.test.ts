/** Where a maker is, row by row: a press that arrives twice counts once, everything can be taken back. */
import { describe, expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { ask as askQuestion } from '../../src/chat/ask.ts';
import { readLine } from '../../src/chat/line.ts';
import { DEFAULT_SETTINGS, makerSchema } from '../../src/projects/schema.ts';
import { asking, NOON, type Asking } from '../asking.ts';

const DEFINE =
  '/motif define name:"moss square" shape:diagonal size:12 colours:"4 rows moss, 2 rows sand, three times, then 6 rows moss"';
const MINUTE = 60 * 1000;

async function room(...lines: string[]) {
  const asked = asking();
  for (const line of [DEFINE, ...lines]) expect(await asked.ask(line)).toMatchObject({ ok: true });
  return asked;
}

/** Presses as a chat sends them: with a key of their own, which comes again when the press does. */
const pressing = (asked: Asking) => (line: string, once: string) => {
  const { words, options } = readLine(line);
  return askQuestion(registry.find(words), options, {
    maker: { id: 'me', name: 'me' },
    reader: DEFAULT_SETTINGS,
    place: { manager: false },
    now: NOON,
    once,
    whois: () => undefined,
    projects: asked.projects,
  });
};

describe('/progress next', () => {
  it('says what the coming row is: count, colour, side', async () => {
    const { ask } = await room('/progress at row:3');
    const answer = await ask('/progress next');
    expect(answer.headline).toBe(
      'Row 4 of moss square is done; row 5 of 24 comes next: 11 stitches, changing to sand, right side facing.',
    );
    expect(answer.figures).toMatchObject({
      row: { value: 4 },
      next_row: { value: 5 },
      next_count: { value: 11 },
    });
    expect(answer.lines![0]).toContain('Change to sand with the last pull of row 4');
  });

  it('goes through the whole motif, each count that of the plan, and ends with finished', async () => {
    const { ask } = await room();
    for (let row = 1; row < 24; row++) {
      const { figures } = await ask('/progress next');
      expect(figures['next_count']!.value).toBe(row + 1 <= 12 ? 2 * (row + 1) + 1 : 2 * (24 - row - 1) + 1);
    }
    expect((await ask('/progress next')).headline).toContain('that was the last row');
    expect(await ask('/progress next')).toMatchObject({ ok: false, option: 'motif' });
    expect((await ask('/progress finished')).figures).toMatchObject({
      row: { value: 0 },
      made: { value: 1 },
    });
  });

  it('counts the same button pressed on two devices once', async () => {
    const { ask } = await room();
    const line = '/progress next motif:"moss square" from_row:0';
    const [first, second] = await Promise.all([ask(line), ask(line)]);
    expect([first.data.counted, second.data.counted].sort()).toEqual([false, true]);
    expect((await ask('/progress show')).figures['row']!.value).toBe(1);
    expect(second.headline).toContain('Nothing is counted');
  });

  it('counts a press that is delivered twice once, and says the same', async () => {
    const asked = await room();
    const press = pressing(asked);
    const said = async (once: string) => {
      const shown = await press('/progress next', once);
      return { ...shown, data: shown.data?.() };
    };
    const once = await said('press-1');
    expect(await said('press-1')).toEqual(once);
    await press('/progress next', 'press-2');
    expect((await asked.ask('/progress show')).figures['row']!.value).toBe(2);
    await press('/progress finished confirm:yes', 'press-3');
    await press('/progress finished confirm:yes', 'press-3');
    expect((await asked.ask('/progress show')).figures['made']!.value).toBe(1);
  });

  it('asks before a half-made motif counts as finished', async () => {
    const { ask } = await room('/progress at row:6');
    const asked = await ask('/progress finished');
    expect(asked).toMatchObject({ ok: true, data: { counted: false } });
    expect((await ask('/progress show')).figures).toMatchObject({ row: { value: 6 }, made: { value: 0 } });
    await ask('/progress finished confirm:yes');
    expect((await ask('/progress show')).figures).toMatchObject({ row: { value: 0 }, made: { value: 1 } });
    // Somebody who counts no rows, or all of them, is not asked.
    expect((await ask('/progress finished')).data.counted).toBe(true);
    await ask('/progress at row:24');
    expect((await ask('/progress finished')).data.counted).toBe(true);
  });

  it('is each maker’s own', async () => {
    const { ask } = await room(`rowan: ${DEFINE}`, 'rowan: /progress at row:9');
    expect((await ask('/progress next')).figures['row']!.value).toBe(1);
    expect((await ask('rowan: /progress next')).figures['row']!.value).toBe(10);
  });
});

describe('taking back', () => {
  it('back, and undo through everything to the beginning', async () => {
    const { ask } = await room(
      '/progress next',
      '/progress next',
      '/progress finished confirm:yes',
      '/progress at row:5 made:7',
    );
    expect((await ask('/progress back')).figures['row']!.value).toBe(4);
    const states: [number, number][] = [];
    for (let step = 0; step < 5; step++) {
      const { figures } = await ask('/progress undo');
      states.push([figures['row']!.value, figures['made']!.value]);
    }
    expect(states).toEqual([
      [5, 7],
      [0, 1],
      [2, 0],
      [1, 0],
      [0, 0],
    ]);
    expect(await ask('/progress undo')).toMatchObject({ ok: false });
    expect(await ask('/progress back')).toMatchObject({ ok: false });
  });

  it('forgets old history, never where she was', async () => {
    const { ask, projects } = await room();
    for (let round = 0; round < 5; round++) {
      for (let row = 0; row < 24; row++) await ask('/progress next');
      for (let row = 0; row < 24; row++) await ask('/progress back');
    }
    const doc = makerSchema().parse(await projects.maker('me', 'me'));
    expect(doc.progress[0]!.history).toHaveLength(200);
    let answer = await ask('/progress undo');
    for (let step = 1; step < 200; step++) answer = await ask('/progress undo');
    // 240 changes, the last 200 taken back: forty before them, one way up and sixteen down.
    expect(answer.figures['row']!.value).toBe(8);
    expect(await ask('/progress undo')).toMatchObject({ ok: false });
  });
});

describe('/progress counted', () => {
  it('holds one count against the row she is at', async () => {
    const { ask } = await room('/progress at row:8');
    expect((await ask('/progress counted counts:17')).headline).toContain('has the right count, 17 stitches');
    const even = await ask('/progress counted counts:16');
    expect(even.figures).toMatchObject({ first_wrong_row: { value: 8 }, difference: { value: -1 } });
    const text = await (await room('/progress at row:8')).text('/progress counted counts:19');
    expect(text).toContain('/progress at motif:"moss square" row:9');
  });

  it('holds several, the last one being the row she is at', async () => {
    const { ask } = await room('/progress at row:8');
    const answer = await ask('/progress counted counts:"13 16 17"');
    expect(answer.figures).toMatchObject({
      first_wrong_row: { value: 7 },
      expected: { value: 15 },
      counted: { value: 16 },
    });
    expect(await ask('/progress counted counts:"3 5 7 9 11 13 15 17 19"')).toMatchObject({
      ok: false,
      option: 'counts',
    });
  });

  it('is no change that undo would take back', async () => {
    const { ask } = await room('/progress at row:8', '/progress counted counts:17');
    expect((await ask('/progress undo')).figures['row']!.value).toBe(0);
  });
});

describe('/progress show', () => {
  it('says how much yarn is still to come, from the weighed motif', async () => {
    const { ask } = await room('/motif weigh weight:31.2g', '/progress at row:12');
    const { figures, data } = await ask('/progress show ball:100m/100g');
    // 312 stitches of 0.1 g; 168 are done after the twelfth row.
    expect(figures['weight_to_come']!.value).toBeCloseTo(14.4, 9);
    expect(figures['yarn_to_come']!.value).toBeCloseTo(14.4, 9);
    const colours = data.colours as { colour: string; stitches: number }[];
    expect(colours.map((one) => [one.colour, one.stitches])).toEqual([
      ['moss', 116],
      ['sand', 28],
    ]);
  });

  it('says whether what is left on the scale will do', async () => {
    const { ask } = await room('/motif weigh weight:31.2g', '/progress at row:12');
    const enough = await ask('/progress show left:3g colour:sand');
    expect(enough.headline).toContain('will do');
    expect(enough.figures['spare_weight']!.value).toBeCloseTo(0.2, 9);
    const short = await ask('/progress show left:10g colour:moss');
    expect(short.headline).toContain('will not do');
    expect(short.figures['spare_weight']!.value).toBeCloseTo(-1.6, 9);
    expect(await ask('/progress show left:10g')).toMatchObject({ ok: false, option: 'colour' });
    expect(await ask('/progress show left:10g colour:mos')).toMatchObject({ hint: 'Did you mean moss?' });
  });

  it('agrees with what the blanket takes, its colours of different yarns, weighed or not', async () => {
    for (const weighed of ['/motif weigh weight:12g', '/motif show']) {
      const { ask } = await room(
        '/motif weigh side:15cm',
        '/blanket start name:throw kinds:"moss square" columns:1 rows:1',
        '/blanket colours colour:moss ball:170m/100g',
        '/blanket colours colour:sand ball:400m/50g',
        weighed,
      );
      const takes = await ask('/blanket materials reserve:0');
      const come = await ask('/progress show');
      expect(come.figures['yarn_to_come']!.value).toBeCloseTo(takes.figures['yarn_total']!.value, 9);
      expect(come.figures['weight_to_come']!.value).toBeCloseTo(takes.figures['weight']!.value, 9);
      expect(come.lines![2]!.includes('estimated')).toBe(weighed === '/motif show');
    }
  });

  it('on one colour also says the last row it reaches, as the yardage question does', async () => {
    const { ask } = asking();
    await ask('/motif define name:plain shape:diagonal size:12');
    await ask('/motif weigh weight:12g');
    await ask('/progress at row:6');
    const here = await ask('/progress show left:5g ball:170m/100g');
    const there = await ask(
      '/yardage left left:5g ball:170m/100g shape:diagonal size:12 each:12g done_row:6',
    );
    expect(here.figures['last_row']!.value).toBe(there.figures['last_row']!.value);
    expect(here.figures['spare']!.value).toBeCloseTo(there.figures['spare']!.value, 9);
  });

  it('tells hours from her own rows, and says when they are few', async () => {
    const { ask, at } = await room();
    for (let row = 0; row < 6; row++) {
      at(new Date(NOON.getTime() + row * 5 * MINUTE));
      await ask('/progress next');
    }
    const answer = await ask('/progress show');
    // Rows 2 to 6 have 5 + 7 + 9 + 11 + 13 stitches, five minutes each.
    expect(answer.figures['pace']!.value).toBeCloseTo(45 / 25, 9);
    expect(answer.figures['hours']!.value).toBeCloseTo((312 - 48) / (45 / 25) / 60, 9);
    expect(answer.lines!.join(' ')).toContain('few yet');
    expect(answer.cautions.join(' ')).toContain('pain');
    expect((await (await room()).ask('/progress show')).figures['hours']).toBeUndefined();
  });

  it('counts for the blanket, takes over what was made before it, and draws it', async () => {
    const { ask, files } = await room('/motif weigh weight:12g side:15cm', '/progress at row:0 made:2');
    expect(await ask('/blanket start name:throw kinds:"moss square" columns:2 rows:2')).toMatchObject({
      ok: true,
    });
    expect((await ask('/progress finished')).figures).toMatchObject({
      made: { value: 3 },
      needed: { value: 4 },
      to_make: { value: 1 },
    });
    const answer = await ask('/progress show');
    expect(answer.headline).toContain('3 of 4 motifs made for throw');
    expect(answer.figures).toMatchObject({ blanket_made: { value: 3 }, to_come: { value: 312 } });
    expect(answer.files).toHaveLength(1);
    expect(files.at(-1)!.content).toContain('3 of 4');
    expect((await ask('/progress finished')).headline).toContain('which is all of them');
    expect((await ask('/progress show')).figures['to_come']!.value).toBe(0);
  });
});
