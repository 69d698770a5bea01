/** The life of a group blanket as several makers type it, from opening to putting together. */
import { describe, expect, it } from 'vitest';
import { ask as askQuestion } from '../../src/chat/ask.ts';
import { readLine } from '../../src/chat/line.ts';
import { DEFAULT_SETTINGS } from '../../src/projects/schema.ts';
import { registry } from '../../commands/index.ts';
import { asking, NOON, type Asking } from '../asking.ts';
import { borderOf, groupKinds, groupLooks } from '../../commands/together/looks.ts';
import { piecesOf } from '../../src/core/blanket/pieces.ts';
import { Working } from '../../src/core/base/working.ts';
import { groupPlan } from '../core/group/plan.ts';

const WEEK = 7 * 86_400_000;

async function opened(how = 'name:"Bean row throw" spares:1 closes:2026-05-31'): Promise<Asking> {
  const room = asking();
  for (const line of [
    '/motif define name:furrow shape:diagonal size:12 colours:"12 rows moss, 12 rows sand" gauge:13x10',
    '/motif define name:trellis shape:diagonal size:12 colours:"12 rows moss, 12 rows plum" gauge:13x10',
    '/blanket start name:"Bean rows" kinds:"furrow, trellis" columns:3 rows:4 border:"sc hdc"',
    '/blanket colours colour:moss ball:170m/100g',
    '/blanket colours colour:sand ball:170m/100g',
    '/blanket colours colour:plum ball:170m/100g',
    `/together open side:15cm ${how}`,
  ])
    expect(await room.ask(`ines: ${line}`)).toMatchObject({ ok: true });
  return room;
}

const all = async (room: Asking, ...lines: string[]) => {
  for (const line of lines) expect(await room.ask(line), line).toMatchObject({ ok: true });
};
const refusal = async (room: Asking, line: string) => {
  const said = await room.ask(line);
  expect(said.ok, line).toBe(false);
  return `${said.problem} ${said.hint}`;
};
interface Counted {
  readonly quota: number;
  readonly open: number;
}
const board = async (room: Asking) =>
  (await room.ask('/together board')).data as { readonly kinds: readonly Counted[] };
const openNow = async (room: Asking) => (await board(room)).kinds.map(({ open }) => open);

describe('two hand-ins at once', () => {
  it('are looked at one after the other: the second is asked about, for the first took what was pledged', async () => {
    const room = await opened();
    await all(room, 'rowan: /together pledge kind:furrow motifs:2');
    const line = 'rowan: /together handin kind:furrow motifs:2';
    const both = await Promise.all([room.ask(line), room.ask(line)]);
    expect(both.map(({ data }) => data.pieces as number[])).toEqual([[1, 2], []]);
    expect(both[1].headline).toContain('You pledged no furrow');
    expect((await room.ask('/together board')).figures['handed_in']?.value).toBe(2);
  });
});

describe('a blanket made by a group', () => {
  it('lives from opening to putting together', async () => {
    const room = await opened();
    expect((await board(room)).kinds.map(({ quota, open }) => [quota, open])).toEqual([
      [6, 7],
      [6, 7],
    ]);
    await all(
      room,
      'rowan: /together join per_week:3 colours:"moss, sand"',
      'ash: /together join per_week:1.5 terms:UK',
      'rowan: /together pledge kind:furrow motifs:5',
      'ash: /together pledge kind:trellis motifs:6',
      'rowan: /together handin kind:furrow motifs:3 side:15.2cm',
      'rowan: /together handin kind:furrow motifs:2 side:14.9cm',
      'ash: /together handin kind:trellis motifs:6 side:15.1cm',
      'ines: /host accept motifs:1-3',
      'ines: /host return motifs:4 reason:"one corner has come loose."',
    );
    expect((await room.ask('rowan: /together mine')).lines).toEqual([
      'furrow: 1 to make',
      'furrow: waiting #5',
      'furrow: accepted #1-3',
      'furrow: #4 came back: one corner has come loose.',
    ]);
    await all(
      room,
      'rowan: /together handin motifs:1 side:15cm',
      // One more than pledged is pledged and handed in at once, while there is room.
      'fern: /together handin kind:furrow side:15cm confirm:yes',
      'ines: /host accept motifs:5-13',
    );
    expect(await refusal(room, 'ines: /host accept motifs:4')).toContain('returned already');
    const put = await room.ask('ines: /host assemble');
    expect(put.figures['missing']?.value).toBe(0);
    expect(put.headline).toMatch(/^All 12 cells are filled; neighbours differ by 0\.\d+ cm on average/);
    expect([...(put.data.cells as number[])].sort((a, b) => a - b)).toEqual([
      1, 2, 3, 5, 6, 7, 8, 9, 10, 11, 12, 13,
    ]);
    expect(put.figures['round_total']?.value).toBe((put.data.border as { total: number }[]).at(-1)?.total);
    expect(put.figures['seam_length']?.value).toBeCloseTo((2 * 4 + 3 * 3) * 0.15, 6);
    expect((await room.ask('/together pace')).headline).toBe('Every motif of Bean row throw is handed in.');
    // What the motifs measured lies between the shortest and the longest, so no two neighbours differ by more.
    expect(put.figures['neighbours_differ']?.value).toBeLessThanOrEqual(0.3);
    expect(room.faults).toEqual([]);
  });

  it('is the organiser’s to run, and nobody else’s in the terminal', async () => {
    const room = await opened();
    await all(
      room,
      'rowan: /together pledge kind:furrow motifs:2',
      'rowan: /together handin kind:furrow motifs:2',
    );
    for (const line of [
      'accept motifs:1',
      'return motifs:1 reason:no',
      'shares apply:yes',
      'remind maker:rowan',
      'invite maker:ash',
      'close',
      'reopen closes:2026-06-30',
      'handover maker:rowan',
      'bar maker:rowan reason:no',
      'bar maker:rowan do:readmit',
    ])
      expect(await refusal(room, `rowan: /together ${line}`), line).toContain('Ask ines, who runs it.');
    expect((await room.ask('ines: /together handover maker:rowan')).headline).toBe(
      'rowan is asked to run Bean row throw; until the answer is yes, ines runs it.',
    );
    expect(await refusal(room, 'rowan: /host accept motifs:1')).toContain('Ask ines, who runs it.');
    for (const [line, code] of [
      ['ines: /together handover answer:yes', 'not-offered'],
      ['ash: /together handover answer:yes', 'not-offered'],
      ['ines: /together handover maker:rowan', 'offered-already'],
    ] as const)
      expect(await room.ask(line), line).toMatchObject({ ok: false, code });
    expect((await room.ask('rowan: /together mine')).lines?.[0]).toBe(
      'You are asked to run Bean row throw; nothing changes before you say yes.',
    );
    // She would rather not, is asked once more, and then does.
    await all(room, 'rowan: /together handover answer:no');
    expect(await room.ask('rowan: /together handover answer:yes')).toMatchObject({ code: 'not-offered' });
    expect(await refusal(room, 'rowan: /host accept motifs:1')).toContain('Ask ines, who runs it.');
    await all(
      room,
      'ines: /together handover maker:rowan',
      'rowan: /together handover answer:yes',
      'rowan: /host accept motifs:1',
    );
    expect((await room.ask('/together history')).lines?.slice(1, 5)).toEqual(
      [
        'rowan became the organiser',
        'ines asked rowan to run it',
        'rowan would rather not run it',
        'ines asked rowan to run it',
      ].map((words) => expect.stringContaining(words) as string),
    );
    expect(await refusal(room, 'ines: /host accept motifs:2')).toContain('Ask rowan, who runs it.');
    expect(await refusal(room, 'rowan: /together handover maker:rowan')).toContain('already');
  });

  it('can be cleared of a maker who holds everything and makes nothing', async () => {
    const room = await opened();
    await all(
      room,
      'rowan: /together pledge kind:furrow motifs:7',
      'rowan: /together handin kind:furrow motifs:2',
      'ines: /host accept motifs:1',
    );
    expect(await room.ask('ines: /host bar maker:rowan')).toMatchObject({ code: 'reason-missing' });
    expect(await room.ask('ines: /host bar maker:rowan reason:" . "')).toMatchObject({ ok: false });
    expect(await room.ask('ines: /host bar maker:rowan do:readmit')).toMatchObject({
      code: 'not-kept-out',
    });
    expect(await room.ask('ines: /host bar maker:ines reason:no')).toMatchObject({
      code: 'organiser-kept',
    });
    const said = await room.ask('ines: /host bar maker:rowan reason:"five weeks without a word."');
    expect(said.headline).toBe(
      'rowan is kept from taking part in Bean row throw; 5 pledges are open to everyone again.',
    );
    expect(said.figures['released']?.value).toBe(5);
    expect(await openNow(room)).toEqual([5, 7]);
    for (const line of [
      'pledge kind:furrow',
      'join per_week:1',
      'handin kind:furrow',
      'release kind:furrow',
      'keep',
      'leave',
    ]) {
      const refused = await room.ask(`rowan: /together ${line}`);
      expect(refused, line).toMatchObject({ ok: false, code: 'kept-out' });
      expect(refused.problem, line).toContain('this blanket: five weeks without a word.');
    }
    for (const line of ['invite maker:rowan', 'handover maker:rowan', 'bar maker:rowan reason:again'])
      expect(await room.ask(`ines: /together ${line}`), line).toMatchObject({ code: 'maker-kept-out' });
    expect((await room.ask('rowan: /together mine')).lines).toEqual([
      'Since 2 March 2026, 12:00 UTC, you are kept from taking part: five weeks without a word. What was accepted of yours stays in the blanket.',
      'furrow: waiting #2',
      'furrow: accepted #1',
    ]);
    expect((await room.ask('/together history')).lines?.[0]).toContain(
      'ines keeps rowan from taking part: five weeks without a word',
    );
    // What she handed in is no more made than it is accepted.
    const seen = await room.ask('/together board');
    expect(seen.headline).toContain(
      '1 of 14 motifs made (2 spares among them), 1 waiting to be accepted, 0 pledged, 12 open',
    );
    expect(seen.lines?.[0]).toBe('A furrow: 1 made, 1 waiting, 0 pledged, 5 open of 7 (1 spare among them)');
    expect((await room.ask('/together pace')).lines?.[0]).toBe(
      'Of the 2 handed in, 1 waits to be accepted; what is sent back comes once more.',
    );
    // What waits of hers is sent back to everybody, not to her.
    await all(room, 'ines: /host return motifs:2 reason:loose');
    expect(await openNow(room)).toEqual([6, 7]);
    // Taken back, she holds what she held; the motif sent back is hers again.
    await all(room, 'ines: /together undo');
    expect((await room.ask('ines: /together undo')).headline).toContain('Taken back: ines keeps rowan');
    expect(await openNow(room)).toEqual([0, 7]);
    await all(
      room,
      'ines: /host bar maker:rowan reason:"by mistake"',
      'ines: /host bar maker:rowan do:readmit',
      'rowan: /together pledge kind:furrow',
    );
    expect((await room.ask('rowan: /together mine')).lines?.[0]).toBe('furrow: 1 to make');
    expect(room.faults).toEqual([]);
  });

  it('lets only those join who were named, where it was opened so', async () => {
    const room = await opened('name:"Bean row throw" who:named');
    expect(await refusal(room, 'rowan: /together join per_week:1')).toContain('/host invite');
    expect(await refusal(room, 'rowan: /together pledge kind:furrow')).toContain('/host invite');
    await all(
      room,
      'ines: /host invite maker:Rowan',
      'ines: /host invite maker:"Ash Tree"',
      'rowan: /together join per_week:1',
      'ash tree: /together pledge kind:furrow',
    );
    expect(await refusal(room, 'ash: /together join per_week:1')).toContain('named');
    expect(await refusal(room, 'ines: /host invite maker:"a/b: c"')).toContain('not clear who');
  });

  it('says what is still open to whoever comes too late', async () => {
    const room = await opened();
    await all(room, 'rowan: /together pledge kind:furrow motifs:6');
    expect(await refusal(room, 'ash: /together pledge kind:furrow motifs:2')).toBe(
      'Only 1 of furrow is still open. Still open: 1 furrow, 7 trellis.',
    );
    await all(room, 'ash: /together pledge kind:furrow');
    expect(await refusal(room, 'fern: /together pledge kind:furrow')).toBe(
      'Every furrow is spoken for. Still open: 7 trellis.',
    );
    // With one kind left there is nothing to choose.
    expect((await room.ask('fern: /together pledge')).headline).toContain('1 pledged motif of trellis');
    expect(await refusal(room, 'rowan: /together handin kind:furrow motifs:7')).toContain(
      'Hand in at most 6.',
    );
    expect(await refusal(room, 'rowan: /together giveback kind:trellis')).toContain('No trellis is pledged');
    expect(await refusal(room, 'rowan: /together giveback kind:furrow motifs:7')).toContain('at most 6');
  });

  it('still answers to what giving back was called before', async () => {
    const room = await opened();
    await all(room, 'rowan: /together pledge kind:furrow motifs:3');
    const back = await room.ask('rowan: /together release kind:furrow');
    expect(back.ok).toBe(true);
    expect(back.figures['pledged']?.value).toBe(2);
  });

  it('asks before more is handed in than was pledged, and gives a maker her last step back', async () => {
    const room = await opened();
    await all(room, 'rowan: /together pledge kind:furrow motifs:2');
    const board = async () => (await room.ask('/together board')).figures;
    const asked = await room.ask('rowan: /together handin kind:furrow motifs:3');
    expect(asked).toMatchObject({ ok: true, data: { pieces: [] } });
    expect(asked.headline).toContain('You pledged 2 of furrow');
    expect((await room.ask('rowan: /together handin kind:trellis')).headline).toContain(
      'You pledged no trellis',
    );
    expect(await board()).toMatchObject({ handed_in: { value: 0 }, pledged: { value: 2 } });
    await all(room, 'rowan: /together handin kind:furrow motifs:3 confirm:yes');
    expect(await board()).toMatchObject({ handed_in: { value: 3 }, pledged: { value: 0 } });
    expect((await room.ask('rowan: /together undo')).headline).toContain(
      'rowan handed in 3 motifs of furrow',
    );
    // All is as it was before that press, numbers that were given stay given.
    expect(await board()).toMatchObject({ handed_in: { value: 0 }, pledged: { value: 2 } });
    await all(room, 'rowan: /together pledge kind:trellis motifs:2');
    expect((await room.ask('rowan: /together undo')).headline).toContain('rowan pledged 2 motifs of trellis');
    expect(await board()).toMatchObject({ handed_in: { value: 0 }, pledged: { value: 2 } });
    expect(await room.ask('ash: /together undo')).toMatchObject({ code: 'not-taking-part' });
    await all(room, 'rowan: /together handin kind:furrow', 'ines: /host accept motifs:4');
    expect(await room.ask('rowan: /together undo')).toMatchObject({ code: 'accepted-already' });
  });

  it('takes nothing new while it is closed, but what was pledged', async () => {
    const room = await opened();
    await all(room, 'rowan: /together pledge kind:furrow motifs:2', 'ines: /host close');
    for (const line of ['join per_week:2', 'pledge kind:furrow', 'handin kind:trellis'])
      expect(await refusal(room, `rowan: /together ${line}`), line).toContain('/host reopen');
    await all(room, 'rowan: /together handin kind:furrow', 'rowan: /together giveback kind:furrow');
    expect((await room.ask('/together board')).headline).toContain('; closed.');
    await all(room, 'ines: /host reopen closes:2026-06-30', 'rowan: /together pledge kind:furrow');
    expect((await room.ask('/together list')).lines).toEqual([
      'Bean row throw: open, wanted by 30 June 2026, 1 maker',
    ]);
    expect(await refusal(room, 'ines: /host reopen')).toContain('is open');
    expect(await refusal(room, 'ines: /host reopen closes:2026-01-01')).toContain('has passed');
  });

  it('shares out what was shown, or nothing', async () => {
    const room = await opened();
    expect(await refusal(room, 'ines: /host shares')).toContain('Nobody has joined');
    await all(
      room,
      'rowan: /together join per_week:2',
      'ash: /together join per_week:1 colours:"moss, sand"',
      'fern: /together join per_week:1 colours:plum',
    );
    const shown = await room.ask('ines: /host shares');
    const [rowan, ash, fern] = (shown.data.shares as { motifs: number[] }[]).map(({ motifs }) => motifs);
    // Two to one, and whoever lacks moss can make neither kind.
    expect(rowan![0]! + rowan![1]!).toBe(8);
    expect(ash).toEqual([4, 0]);
    expect(fern).toEqual([0, 0]);
    expect((await openNow(room))[0]).toBe(7);
    await all(room, 'rowan: /together pledge kind:furrow');
    const mark = shown.data.shown as number;
    expect(await refusal(room, `ines: /host shares apply:yes shown:${mark}`)).toContain('changed');
    const again = (await room.ask('ines: /host shares')).data.shown as number;
    await all(room, `ines: /host shares apply:yes shown:${again}`);
    expect(await openNow(room)).toEqual([1, 1]);
    // The whole share-out is one thing to take back.
    expect((await room.ask('ines: /together undo')).headline).toMatch(/rowan a share.*ash a share/);
    expect(await openNow(room)).toEqual([6, 7]);
    expect((await room.ask('ines: /together undo')).headline).toContain('rowan pledged 1 motif of furrow');
  });

  it('draws a border without colors of its own in those that are bought for it', () => {
    const rounds = [{ stitch: 'sc' }, { stitch: 'hdc', colour: 'navy' }, { stitch: 'sc' }] as const;
    const yarns = [{ colour: 'plum' }, { colour: 'moss' }];
    for (const joining of [{ method: 'whip' }, { method: 'whip', colour: 'sage' }] as const) {
      const plan = groupPlan({ border: { rounds, corner: 3 }, yarns, joining });
      const measured = { ...plan, kinds: plan.kinds.map((kind) => ({ ...kind, side: 15 })) };
      const bought = piecesOf(measured, new Working()).border.rounds.map(({ colour }) => colour);
      expect(borderOf(plan).map(({ colour }) => colour)).toEqual(bought);
      expect(bought).toEqual(['colour' in joining ? 'sage' : 'moss', 'navy', 'navy']);
      expect(Object.keys(groupLooks(plan))).toEqual(expect.arrayContaining(bought));
    }
  });

  it('draws a kind without colours in the colour that its yarn is called by, as every other picture does', () => {
    const plan = groupPlan();
    const plain = { ...plan, kinds: plan.kinds.map((kind) => ({ ...kind, runs: [] })) };
    const [first] = groupKinds(plain);
    expect(first?.runs).toEqual([{ colour: first?.name, rows: 24 }]);
    expect(groupLooks(plain)).toHaveProperty(first!.name);
  });

  it('says less than a tenth a week rather than none, where the closing day is far away', async () => {
    const room = await opened();
    await all(
      room,
      'rowan: /together pledge kind:furrow motifs:2',
      'rowan: /together handin kind:furrow motifs:2 side:15cm',
      'ines: /host reopen closes:2099-12-31',
    );
    expect((await room.ask('/together pace')).headline).toContain('; less than 0.1 a week would do for');
  });

  it('tells on the first day the pace that the end rests on, not that of the first hours', async () => {
    const room = await opened();
    await all(
      room,
      'rowan: /together join per_week:2',
      'rowan: /together pledge kind:furrow motifs:2',
      'rowan: /together handin kind:furrow motifs:2 side:15cm',
    );
    const { headline, figures } = await room.ask('/together pace');
    const value = (key: string) => figures[key]!.value;
    expect(headline).toMatch(
      new RegExp(`to come at about ${value('per_week_expected').toFixed(1)} a week, done about`),
    );
    expect((value('per_week_expected') * value('likely')) / 7).toBeCloseTo(value('to_come'), 9);
    expect(value('per_week_expected')).toBeLessThan(value('per_week'));
  });

  it('asks the quiet ones kindly, and first', async () => {
    const room = await opened();
    await all(room, 'rowan: /together pledge kind:furrow motifs:2', 'ash: /together pledge kind:trellis');
    room.at(new Date(NOON.getTime() + 3 * WEEK));
    await all(room, 'ash: /together handin kind:trellis side:15cm');
    const seen = await room.ask('ines: /together pace');
    expect(seen.data.quiet).toEqual([{ maker: 'rowan', held: 2 }]);
    // Who has gone quiet is nobody else's to see.
    const others = JSON.stringify(await room.ask('ash: /together pace'));
    expect(others).not.toMatch(/rowan|quiet/);
    expect(await refusal(room, 'ines: /host remind maker:rowan do:offer')).toContain('Ask with do:ask');
    await all(room, 'ines: /host remind maker:rowan');
    expect(JSON.stringify(await room.ask('ash: /together history'))).not.toContain('was asked');
    expect(JSON.stringify(await room.ask('ines: /together history'))).toContain('rowan was asked');
    expect(await refusal(room, 'ines: /host remind maker:rowan do:offer')).toContain(
      'rowan was asked today, with 7 days to answer.',
    );
    expect((await room.ask('rowan: /together mine')).lines?.[0]).toMatch(/^ines asked whether/);
    await all(room, 'rowan: /together keep');
    expect((await room.ask('rowan: /together mine')).lines?.[0]).toBe('furrow: 2 to make');
    room.at(new Date(NOON.getTime() + 6 * WEEK));
    expect(await refusal(room, 'ines: /host remind maker:rowan do:offer')).toContain('heard of since');
    await all(room, 'ines: /host remind maker:rowan');
    room.at(new Date(NOON.getTime() + 7 * WEEK));
    expect((await room.ask('ines: /host remind maker:rowan do:offer')).headline).toBe(
      '2 pledges of rowan are open to everyone again.',
    );
    expect((await openNow(room))[0]).toBe(7);
    expect(JSON.stringify(await room.ask('ash: /together history'))).not.toMatch(/rowan[^"]*offered/);
  });

  it('flags a side that is off, and says what can be done', async () => {
    const room = await opened();
    await all(room, 'rowan: /together pledge kind:furrow motifs:4');
    const near = await room.ask('rowan: /together handin kind:furrow side:15.2cm');
    expect(near.headline).toBe('1 motif of furrow handed in to Bean row throw, #1.');
    const wide = await room.ask('rowan: /together handin kind:furrow motifs:2 side:15.6cm hook:5mm');
    expect(wide.headline).toContain('#2-3; 4 % too large; blocking makes nothing smaller.');
    expect(wide.figures['off']?.value).toBeCloseTo(4, 6);
    const far = await room.ask('rowan: /together handin kind:furrow side:17cm hook:5mm');
    expect(far.headline).toContain('blocking makes nothing smaller');
    expect(far.figures['suggested_hook']?.value).toBeLessThan(5);
    expect(far.lines?.join(' ')).toContain('2 cm would have to be eased into every seam');
    expect((await room.ask('ines: /host accept')).lines?.[3]).toMatch(/^#4 \(furrow, rowan, 17 cm\): 13/);
  });

  it('counts whole balls bought by each and together', async () => {
    const room = await opened();
    expect((await room.ask('/together yarn')).headline).toContain('no yarn to buy');
    await all(
      room,
      'rowan: /together pledge kind:furrow motifs:2',
      'ash: /together pledge kind:furrow motifs:2',
    );
    const { figures, data } = await room.ask('rowan: /together yarn');
    const metres = (needs: { metres: number }[]) => needs.reduce((sum, need) => sum + need.metres, 0);
    // What one hand uses more, another uses less: together less is bought to be as sure.
    expect(metres(data.makers[0].needs) + metres(data.makers[1].needs)).toBeGreaterThan(
      metres(data.together),
    );
    expect(figures['reserve']!.value).toBeGreaterThan(figures['reserve_together']!.value);
    // Two makers with two motifs each: a ball of each colour in both baskets, one of each in a shared one.
    expect(figures['balls_each']?.value).toBe(4);
    expect(figures['balls_together']?.value).toBe(2);
  });

  it('learns from what is weighed, at hand-in and by the organiser after opening', async () => {
    const room = await opened();
    await all(
      room,
      'rowan: /together pledge kind:furrow motifs:3',
      'ash: /together pledge kind:trellis motifs:2',
    );
    const lists = async () => {
      const answer = await room.ask('rowan: /together yarn');
      const [, ashes] = answer.data.makers as { needs: { metres: number }[] }[];
      return {
        ...answer,
        value: (key: string) => answer.figures[key]!.value,
        ashes: ashes!.needs[0]!.metres,
      };
    };
    const rough = await lists();
    expect(rough.lines!.join(' ')).toContain('Rough: nothing of it is weighed yet');
    const handed = await room.ask('rowan: /together handin kind:furrow motifs:2 weight:50g');
    expect(handed.figures['weight']!.value).toBe(25);
    await room.ask('rowan: /together pledge kind:furrow motifs:2');
    const weighed = await lists();
    expect(weighed.lines!.join(' ')).toContain('Weighed: 2 motifs by 1 maker');
    expect(weighed.data.weighed).toEqual({ motifs: 2, makers: 1 });
    // Nobody weighed twice: how much one hand's motifs differ is not known, and that is said.
    const said = (of: typeof weighed) => of.assumptions.join(' ');
    expect(said(weighed)).toContain('is known only where she weighs at more than one hand-in');
    expect(said(rough)).not.toContain('more than one hand-in');
    // 25 g are more than the gauge says, and so hers; a little of it is said of Ash as well.
    expect(weighed.value('reserve')).toBeLessThan(rough.value('reserve') / 2);
    expect(weighed.value('band')).toBeLessThan(rough.value('band') / 2);
    expect(weighed.value('band_together')).toBeLessThan(rough.value('band_together'));
    const here = await room.ask('/motif list');
    expect(here.ok).toBe(true);
    await room.ask('ines: /motif weigh name:furrow weight:125g motifs:5');
    const more = await lists();
    expect(more.lines!.join(' ')).toContain('Weighed: 7 motifs by 2 makers');
    expect(more.ashes).toBeGreaterThan(rough.ashes);
    // Undone, it is not known.
    await room.ask('ines: /motif weigh name:furrow weight:125g motifs:5 replace:yes');
    expect((await lists()).ashes).toBeCloseTo(more.ashes, 6);
  });

  it('lists the parcels as a file that spreadsheets read and run nothing of (RFC 4180)', async () => {
    const room = await opened();
    await all(
      room,
      '=1+1: /together pledge kind:furrow',
      'Ash, the tall: /together handin kind:trellis motifs:2 confirm:yes',
      '@fern: /together pledge kind:trellis',
    );
    await room.ask('/host parcels');
    const csv = room.files.findLast(({ name }) => name === 'parcels.csv')!.content;
    expect(csv).toBe(
      [
        'maker,kind,to make,handed in,accepted,numbers',
        "'=1+1,furrow,1,0,0,",
        '"Ash, the tall",trellis,0,2,0,#1 #2',
        "'@fern,trellis,1,0,0,",
        '',
      ].join('\r\n'),
    );
  });

  it('keeps every count when a maker erases her data, and the blanket when the organiser does', async () => {
    const room = await opened();
    await all(
      room,
      'rowan: /together pledge kind:furrow motifs:3',
      'rowan: /together handin kind:furrow motifs:2',
      'ash: /together join per_week:1',
      'ines: /host accept motifs:1',
    );
    const before = await board(room);
    await all(room, 'rowan: /settings erase confirm:yes');
    expect(await board(room)).toEqual(before);
    const said = JSON.stringify([await room.ask('/together history'), await room.ask('/host parcels')]);
    expect(said).toContain('a maker pledged 3 motifs of furrow');
    expect(said).not.toContain('rowan');
    expect(await refusal(room, 'ines: /host remind maker:"a maker"')).toContain('Nobody here is called');
    // What rowan held is nobody's whom one could ask; who comes under that name is another.
    expect((await room.ask('rowan: /together mine')).figures['pledged']?.value).toBe(0);
    await all(room, 'ines: /settings erase confirm:yes');
    expect(await board(room)).toEqual(before);
    expect(await refusal(room, 'fern: /host close')).toContain('take it over with /together handover');
    await all(room, 'ash: /together handover maker:ash', 'ash: /host accept motifs:2');
    expect(JSON.stringify(await room.projects.groups.of(undefined))).not.toMatch(/"(ines|rowan)"/);
    expect(room.faults).toEqual([]);
  });

  it('names the blanket where there are several, and never opens one twice', async () => {
    const room = await opened();
    expect(await refusal(room, 'ines: /together open name:"bean row  throw!"')).toContain(
      'Bean row throw already',
    );
    await all(room, 'ash: /motif define name:furrow shape:diagonal size:6');
    await all(room, 'ash: /blanket start name:shed kinds:furrow columns:2 rows:2');
    await all(room, 'ash: /together open side:10cm');
    expect(await refusal(room, 'rowan: /together pledge')).toContain('Name one of Bean row throw, shed.');
    expect(await refusal(room, 'rowan: /together pledge name:shet')).toContain('Here are shed');
    await all(room, 'rowan: /together pledge name:SHED');
  });

  it('does a press once that arrives twice', async () => {
    const room = await opened();
    const press = async (line: string, once: string) => {
      const { words, options } = readLine(line);
      const found = registry.find(words);
      return askQuestion(found, options, {
        maker: { id: 'rowan', name: 'rowan' },
        reader: DEFAULT_SETTINGS,
        place: { manager: true },
        now: NOON,
        once,
        whois: () => undefined,
        projects: room.projects,
      });
    };
    for (const [index, line] of [
      '/together join per_week:2',
      '/together pledge kind:furrow motifs:3',
      '/together handin kind:furrow motifs:2',
      '/together giveback kind:furrow',
      '/host accept motifs:1',
      '/host return motifs:2 reason:loose',
      '/host shares apply:yes',
      '/host close',
      '/host reopen',
      '/together keep',
      '/together undo',
      '/together leave',
    ].entries()) {
      await press(line, `press ${index}`);
      const [before] = await room.projects.groups.of(undefined);
      await press(line, `press ${index}`);
      const [after] = await room.projects.groups.of(undefined);
      expect(after?.doc.events, line).toEqual(before?.doc.events);
    }
  });

  it('has words for many kinds', async () => {
    const room = asking();
    const kinds = Array.from({ length: 26 }, (_, index) => `patch ${index + 1}`);
    for (const kind of kinds)
      await all(room, `/motif define name:"${kind}" shape:diagonal size:6 gauge:13x10`);
    await all(
      room,
      `/blanket start name:quilt kinds:"${kinds.join(', ')}" columns:13 rows:8`,
      '/together open',
    );
    const pick = await room.text('rowan: /together pledge motifs:2');
    expect(pick).toContain('The kinds without a button are typed: /together pledge kind:…');
    expect(pick).toContain('2 patch 20: /together pledge kind:"patch 20" motifs:2 name:quilt');
    const seen = await room.ask('/together board');
    expect(seen.lines).toHaveLength(27);
    expect(seen.figures['open']?.value).toBe(104);
    expect(room.faults).toEqual([]);
  });
});
