import { beforeEach, describe, expect, it } from 'vitest';
import { asking, NOON, type Asking } from '../asking.ts';

const MOTIFS = [
  '/motif define name:furrow shape:diagonal size:12 colours:"12 rows moss, 12 rows sand" gauge:13x10 hook:5mm',
  '/motif define name:trellis shape:diagonal size:12 colours:"12 rows plum, 12 rows sand" gauge:13x10 hook:5mm',
] as const;
const START = '/blanket start name:"Bean rows" kinds:"furrow, trellis" columns:4 rows:5 border:"sc hdc"';

let room: Asking;
beforeEach(async () => {
  room = asking();
  for (const line of MOTIFS) expect(await room.ask(line)).toMatchObject({ ok: true });
});
const blankets = async () => (await room.projects.maker('me', 'me')).blankets;

describe('/blanket start', () => {
  it('keeps what it lays, and counts from the layout what is to make', async () => {
    const answer = await room.ask(START);
    expect(answer).toMatchObject({ ok: true, data: { counts: [10, 10], arrangement: 'scattered' } });
    expect(answer.figures).toMatchObject({ motifs: { value: 20 }, touches: { value: 0 } });
    const [saved] = await blankets();
    expect(saved).toMatchObject({ name: 'Bean rows', columns: 4, rows: 5, kinds: ['furrow', 'trellis'] });
    expect(saved!.layout.filter(({ kind }) => kind === 0)).toHaveLength(10);
  });

  it('finds columns and rows for a size, the border counted in', async () => {
    const answer = await room.ask(
      '/blanket start name:lap kinds:furrow width:95cm height:125cm border:"sc hdc sc"',
    );
    // Motifs of 15.377 cm and a border of 2.33: 6 by 8 make 96.9 by 127.7.
    expect(answer.figures).toMatchObject({ columns: { value: 6 }, rows: { value: 8 } });
    expect(answer.figures['width']!.value).toBeCloseTo(6 * 15.3771 + 2 * (2 / 3 + 1 + 2 / 3), 3);
  });

  it.each([
    ['/blanket start name:x kinds:furow columns:2 rows:2', 'kinds', 'furrow'],
    ['/blanket start name:x kinds:"furrow, furrow" columns:2 rows:2', 'kinds', 'once'],
    ['/blanket start name:x kinds:furrow columns:2', 'rows', 'columns:6 rows:8'],
    ['/blanket start name:x kinds:furrow columns:2 rows:2 width:90cm', 'width', 'columns'],
    ['/blanket start name:x kinds:furrow map:AB/BA', 'map', 'one kind'],
    ['/blanket start name:x kinds:furrow columns:60 rows:60', 'rows', '2500'],
    ['/blanket start name:x kinds:furrow columns:2 rows:2 border_colours:moss', 'border', 'stitch'],
  ])('refuses %s', async (line, option, hint) => {
    const answer = await room.ask(line);
    expect(answer).toMatchObject({ ok: false, option });
    expect(answer.hint).toContain(hint);
    expect(await blankets()).toEqual([]);
  });
});

describe('/blanket layout', () => {
  beforeEach(async () => {
    await room.ask(START);
  });

  it('lays the same again from the same seed, and turns without moving kinds', async () => {
    const first = await room.ask('/blanket layout seed:7');
    await room.ask('/blanket layout seed:8');
    expect((await room.ask('/blanket layout seed:7')).data.map).toEqual(first.data.map);
    const turned = await room.ask('/blanket layout setting:pinwheel');
    const letters = (map: string[]) => map.map((line) => line.replace(/[0-3 ]/g, ''));
    expect(letters(turned.data.map)).toEqual(letters(first.data.map));
    expect(turned.data.map[0]).toMatch(/^[AB]1 [AB]2 [AB]1 [AB]2$/);
  });

  it('says how few touches there must be where one kind has more than half', async () => {
    const answer = await room.ask('/blanket layout counts:"A 15, B 5"');
    // Five of the other kind keep at most 4 · 3 + 3 · 2 sides apart on 4 by 5: three inner places and two at the edge.
    expect(answer.figures['touches']!.value).toBe(31 - 18);
    expect(answer.lines?.join(' ')).toContain('no layout has fewer');
  });

  it('offers counts in the same proportion where they do not fill the blanket', async () => {
    expect(await room.ask('/blanket layout counts:"A 3, B 1"')).toMatchObject({
      ok: false,
      option: 'counts',
      hint: 'In that proportion it would be counts:"A 15, B 5".',
    });
  });

  it('takes a map of one’s own, which says its size, and echoes it', async () => {
    const line = '/blanket layout map:A0B1A/BBA3';
    // Another size takes places away: it is asked about first.
    expect(await room.ask(line)).toMatchObject({ ok: true, data: { laid: false } });
    expect((await blankets())[0]).toMatchObject({ columns: 4, rows: 5 });
    const answer = await room.ask(`${line} confirm:yes`);
    expect(answer.data).toMatchObject({
      counts: [3, 3],
      map: ['A0 B1 A0', 'B0 B0 A3'],
      arrangement: 'typed',
    });
    expect((await blankets())[0]).toMatchObject({ columns: 3, rows: 2 });
  });

  it('can be taken back, change by change, also under another name, and not after a day', async () => {
    const first = (await blankets())[0]!;
    await room.ask('/blanket layout map:AB/BA confirm:yes');
    await room.ask('/blanket change new_name:Other border:"sc dc"');
    await room.ask('/blanket swap a:1 b:2');
    expect((await room.ask('/blanket undo')).headline).toMatch(
      /^The last change is taken back: .* has its .* as before\.$/,
    );
    expect((await room.ask('/blanket layout')).data.map).toEqual(['AB', 'BA']);
    expect(await room.ask(`/blanket undo name:"${first.name}"`)).toMatchObject({ ok: true });
    expect((await blankets())[0]?.name).toBe(first.name);
    await room.ask('/blanket undo');
    expect((await blankets())[0]).toEqual(first);
    expect(await room.ask('/blanket undo')).toMatchObject({ ok: false, code: 'nothing-to-undo' });
    await room.ask('/blanket swap a:1 b:2');
    room.at(new Date(NOON.getTime() + 25 * 3_600_000));
    expect(await room.ask('/blanket undo')).toMatchObject({ ok: false, code: 'nothing-to-undo' });
  });

  it('says what of it was changed', async () => {
    await room.ask('/blanket change border:"sc dc" reserve:20');
    expect((await room.ask('/blanket undo')).headline).toContain('has its border and its reserve as before.');
    await room.ask('/blanket swap a:1 b:2');
    expect((await room.ask('/blanket undo')).headline).toContain('has its layout as before.');
  });

  it('begins at nothing under the name of one that was removed', async () => {
    const made = async () => (await room.ask('/progress show')).figures['made']?.value;
    const before = (await blankets())[0]!;
    await room.ask('/progress at row:3 made:2');
    expect(await made()).toBe(2);
    await room.ask(`/blanket remove name:"${before.name}" confirm:yes`);
    await room.ask(`/blanket start name:"${before.name}" kinds:${before.kinds[0]!} columns:3 rows:3`);
    expect(await made()).toBe(0);
  });

  it('never takes back what another blanket of that name was before', async () => {
    await room.ask('/blanket change name:"Bean rows" reserve:20');
    await room.ask('/blanket change name:"Bean rows" new_name:Other');
    await room.ask('/blanket remove name:Other confirm:yes');
    await room.ask('/blanket start name:"Bean rows" kinds:furrow columns:7 rows:9');
    const fresh = (await blankets()).find(({ name }) => name === 'Bean rows');
    for (let time = 0; time < 3; time++) await room.ask('/blanket undo name:"Bean rows"');
    expect((await blankets()).find(({ name }) => name === 'Bean rows')).toEqual(fresh);
    expect((await room.ask('/blanket undo name:Other')).ok).toBe(true);
    expect((await blankets()).some(({ name }) => name === 'Other')).toBe(true);
  });

  it('says where a swap broke the setting', async () => {
    await room.ask('/blanket layout setting:pinwheel');
    expect((await room.ask('/blanket swap a:1 b:2')).lines?.[0]).toBe(
      'Each went with its turning, so Pinwheel holds everywhere but at 1 and 2.',
    );
  });

  it('swaps two places, and back', async () => {
    await room.ask('/blanket layout map:AB/BA confirm:yes');
    expect((await room.ask('/blanket swap a:1 b:2')).data.map).toEqual(['BA', 'BA']);
    expect((await room.ask('/blanket swap a:1 b:2')).data.map).toEqual(['AB', 'BA']);
  });

  it('gains and loses kinds', async () => {
    await room.ask(MOTIFS[0].replace('furrow', 'clover').replace('moss', 'clay'));
    expect((await room.ask('/blanket kinds add:clover')).data.counts).toEqual([7, 7, 6]);
    expect((await room.ask('/blanket kinds drop:furrow')).data).toMatchObject({
      kinds: ['trellis', 'clover'],
      counts: [10, 10],
    });
    await room.ask('/blanket layout map:AB/BA confirm:yes');
    expect(await room.ask('/blanket kinds drop:clover')).toMatchObject({ ok: false, option: 'drop' });
  });
});

describe('/blanket materials', () => {
  it('adds up, and says what was weighed and what is estimated', async () => {
    await room.ask(START);
    await room.ask('/motif weigh name:furrow weight:14g');
    for (const colour of ['moss', 'sand', 'plum'])
      await room.ask(`/blanket colours colour:${colour} ball:170m/100g price:4.5`);
    const answer = await room.ask('/blanket materials minutes:45');
    expect(answer.data).toMatchObject({ weighed: ['furrow'], estimated: ['trellis'] });
    const colours = answer.data.colours as {
      colour: string;
      total: number;
      balls: number;
      motifs: number;
      cost: number;
    }[];
    expect(colours.map(({ colour }) => colour)).toEqual(['moss', 'sand', 'plum']);
    expect(colours.reduce((sum, { total }) => sum + total, 0)).toBeCloseTo(
      answer.figures['yarn_total']!.value,
      6,
    );
    for (const { total, balls, cost } of colours) {
      expect(balls).toBe(Math.ceil(total / 170));
      expect(cost).toBeCloseTo(balls * 4.5, 9);
    }
    // Ten weighed furrows of 14 g hold 238 m, of which moss is 168 of 312 stitches.
    expect(colours[0]!.motifs).toBeCloseTo((238 * 168) / 312, 6);
    // 20 motifs of 45 minutes each, all of 312 stitches.
    expect(answer.figures['hours']!.value).toBeCloseTo(15, 9);
    // The other kind is of the same yarn: it goes by the weighed stitch, whatever the order.
    expect(answer.lines?.join(' ')).toContain('As the weighed ones');
  });

  it('takes minutes kind by kind, keeps them with the motif, and tells by what each was known', async () => {
    await room.ask(START);
    const hours = async (line = '') => {
      const { figures, lines, data } = await room.ask(`/blanket materials ${line}`);
      return { hours: figures['hours']?.value, says: lines!.join(' '), data };
    };
    expect((await hours()).hours).toBeUndefined();
    // Ten of each; both of 312 stitches.
    expect((await hours('minutes:"A 45, B 60"')).hours).toBeCloseTo((10 * 45 + 10 * 60) / 60, 9);
    expect((await hours('minutes:"trellis 60"')).hours).toBeCloseTo(20, 9);
    const kept = await room.ask('/motif weigh name:trellis minutes:60');
    expect(kept.headline).toBe('Kept: one trellis takes 60 minutes.');
    expect((await room.ask('/motif show name:trellis')).lines).toContain('One takes you 60 minutes.');
    const now = await hours();
    expect(now.hours).toBeCloseTo(20, 9);
    expect(now.says).toContain(
      'For the hours: furrow 60 minutes each, stitch for stitch like trellis; trellis 60 minutes each, as you said before.',
    );
    expect(now.data.minutes).toMatchObject([
      { from: 'like' },
      { kind: 'trellis', minutes: 60, from: 'kept' },
    ]);
    // What she says now goes before what she said once.
    expect((await hours('minutes:45')).hours).toBeCloseTo((10 * 45 + 10 * 60) / 60, 9);
    expect((await hours('minutes:"B 30"')).hours).toBeCloseTo(10, 9);
    expect(await room.ask('/blanket materials minutes:"C 30"')).toMatchObject({
      code: 'no-such-kind',
      option: 'minutes',
    });
    // Where she is with one goes by the same.
    const show = await room.ask('/progress show motif:trellis');
    expect(show.lines!.join(' ')).toContain('from 60 minutes for one trellis');
    expect(show.figures['hours']!.value).toBeCloseTo(10, 9);
  });

  it('says nothing of colours of which nothing is needed', async () => {
    await room.ask(START);
    await room.ask('/blanket layout counts:"A 20, B 0"');
    const { lines, assumptions } = await room.ask('/blanket materials');
    expect(lines!.join(' ')).not.toMatch(/plum|: ;/);
    expect(lines!.join(' ')).toContain('No ball is known of moss, sand, so none are counted');
    expect(assumptions.join(' ')).toContain('No ball is known of moss, sand:');
  });

  it('is the same in inches and yards', async () => {
    await room.ask(START);
    const metric = await room.ask('/blanket materials');
    await room.ask('/settings change units:imperial');
    const imperial = await room.ask('/blanket materials');
    expect(imperial.figures).toEqual(metric.figures);
    expect(imperial.headline).toContain('yd');
    expect(imperial.headline).not.toMatch(/\d m\b/);
  });
});

describe('/blanket fit and scale', () => {
  beforeEach(async () => {
    await room.ask(START);
    for (const colour of ['moss', 'sand', 'plum'])
      await room.ask(`/blanket colours colour:${colour} ball:170m/100g balls:3`);
  });

  it('makes the largest blanket, and says what runs out first', async () => {
    const answer = await room.ask('/blanket fit');
    const spare = answer.data.spare as { colour: string; left: number }[];
    expect(spare.every(({ left }) => left >= -1e-6)).toBe(true);
    expect(answer.data.first_out).toBe('sand');
    const { columns, rows, motifs } = answer.figures;
    expect(motifs!.value).toBe(columns!.value * rows!.value);
    // One more row of the same columns takes more sand than there is.
    const more = await room.ask(`/blanket scale columns:${columns!.value} rows:${rows!.value + 1}`);
    const after = more.data.after.colours as { colour: string; metres: number }[];
    const sand = after.find(({ colour }) => colour === 'sand');
    expect(sand!.metres).toBeGreaterThan(510);
  });

  it('says where only its proportions stand in the way', async () => {
    await room.ask('/blanket colours colour:sand balls:1');
    const tight = await room.ask('/blanket fit stretch:1');
    expect(tight.figures['motifs']!.value).toBe(0);
    const { columns, rows } = tight.data.any_shape as { columns: number; rows: number };
    expect(tight.headline).toMatch(`it makes ${columns} across and ${rows} down`);
    const spare = tight.data.spare as { left: number }[];
    expect(spare.every(({ left }) => left >= -1e-6)).toBe(true);
  });

  it('shows another size before and after, and keeps it only when asked', async () => {
    const shown = await room.ask('/blanket scale columns:8 rows:5');
    expect(shown.data).toMatchObject({
      kept: false,
      before: { counts: [10, 10] },
      after: { counts: [20, 20] },
    });
    expect((await blankets())[0]!.columns).toBe(4);
    await room.ask('/blanket scale columns:8 rows:5 keep:yes');
    expect((await blankets())[0]).toMatchObject({ columns: 8, rows: 5 });
    expect((await room.ask('/blanket show')).data.counts).toEqual([20, 20]);
  });

  it('keeps the proportion of free kinds by largest remainders', async () => {
    await room.ask('/blanket layout counts:"A 14, B 6"');
    // 0.7 and 0.3 of 54: 37.8 and 16.2.
    expect((await room.ask('/blanket scale columns:6 rows:9')).data.after.counts).toEqual([38, 16]);
  });

  it('continues a setting as it was', async () => {
    await room.ask('/blanket layout arrange:checked setting:straight-furrow');
    const before = (await room.ask('/blanket layout')).data.map as string[];
    await room.ask('/blanket scale columns:7 rows:8 keep:yes');
    const after = (await room.ask('/blanket layout')).data.map as string[];
    before.forEach((line, row) => expect(after[row]!.startsWith(line)).toBe(true));
  });
});

describe('/blanket picture', () => {
  it('draws every place, and fills in what is made', async () => {
    await room.ask(START);
    await room.ask('/blanket picture');
    expect(room.files.at(-1)!.content.match(/class="cell"/g)).toHaveLength(20);
    expect(room.files.at(-1)!.content).not.toContain('data-state');
    await room.ask('/progress at motif:furrow row:0 made:3');
    const answer = await room.ask('/blanket picture');
    expect(answer.figures['made']!.value).toBe(3);
    expect(room.files.at(-1)!.content.match(/data-state="made"/g)).toHaveLength(3);
  });
});

describe('saved blankets', () => {
  beforeEach(async () => {
    await room.ask(START);
    await room.ask('/blanket start name:"Porch" kinds:furrow columns:2 rows:2');
  });

  it('are listed and chosen by name', async () => {
    expect((await room.ask('/blanket list')).data).toEqual({
      blankets: ['Bean rows', 'Porch'],
      current: 'Porch',
    });
    await room.ask('/blanket choose name:"bean rows"');
    expect((await room.ask('/blanket show')).headline).toContain('Bean rows');
    expect(await room.ask('/blanket show name:"Been row"')).toMatchObject({
      ok: false,
      option: 'name',
      hint: 'Did you mean Bean rows?',
    });
  });

  it('are removed only when confirmed, and come back within a day', async () => {
    expect((await room.ask('/blanket remove')).data.removed).toBe(false);
    expect(await blankets()).toHaveLength(2);
    expect((await room.ask('/blanket remove confirm:yes')).data.removed).toBe(true);
    expect(await blankets()).toHaveLength(1);
    room.at(new Date(NOON.getTime() + 23 * 3_600_000));
    expect(await room.ask('/blanket undo')).toMatchObject({ ok: true });
    expect(await blankets()).toHaveLength(2);
    await room.ask('/blanket remove name:Porch confirm:yes');
    room.at(new Date(NOON.getTime() + 48 * 3_600_000));
    expect(await room.ask('/blanket undo')).toMatchObject({ ok: false });
  });

  it('change their edges and their name, and keep their progress', async () => {
    await room.ask('/progress at motif:furrow row:0 made:2');
    await room.ask('/blanket change new_name:"Back porch" border:"sc dc" border_colours:sand reserve:15');
    expect((await blankets())[1]).toMatchObject({
      name: 'Back porch',
      reserve: 15,
      border: {
        rounds: [
          { stitch: 'sc', colour: 'sand' },
          { stitch: 'dc', colour: 'sand' },
        ],
      },
    });
    expect((await room.ask('/blanket show')).figures['made']!.value).toBe(2);
    expect(await room.ask('/blanket change new_name:"Bean rows"')).toMatchObject({
      ok: false,
      option: 'new_name',
    });
  });

  it('say what their colours are, and refuse one that nothing is in', async () => {
    expect((await room.ask('/blanket colours colour:moss hex:#3f5d2a')).data.yarns).toEqual([
      { colour: 'moss', hex: '#3f5d2a' },
    ]);
    expect(await room.ask('/blanket colours colour:mos balls:2')).toMatchObject({
      ok: false,
      hint: 'Did you mean moss?',
    });
    expect((await room.ask('/blanket colours colour:moss forget:yes')).data.yarns).toEqual([]);
  });
});
