/** A make-along: its parts shared by stitches, its moments by the zone's clocks, her own blanket, its state after whatever happened. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Working } from '../../../src/core/base/working.ts';
import { NO_WAY, reckonOwn } from '../../../src/core/along/own.ts';
import { reckonPart } from '../../../src/core/along/numbers.ts';
import { readEvery, readParts, workIn } from '../../../src/core/along/read-parts.ts';
import {
  addPart,
  changePart,
  close,
  findPartOf,
  finish,
  join,
  leave,
  offerOver,
  partNumbered,
  readOwnColours,
  stick,
  takeOver,
  undo,
} from '../../../src/core/along/rules.ts';
import { cutByWeight, shareMotifs } from '../../../src/core/along/share.ts';
import { countProgress, goOn, replay } from '../../../src/core/along/state.ts';
import { listHelpWanted, listTroubles } from '../../../src/core/along/troubles.ts';
import { momentOf, readZone } from '../../../src/core/along/zones.ts';
import { findSizeForSide } from '../../../src/core/size/size-for-side.ts';
import { resize } from '../../../src/core/size/resize.ts';
import { asker, code, history, joins, NOW, PATTERN, plan, TEACHER } from './scene.ts';

describe('work shared by its stitches', () => {
  it('is cut as near to equal shares as whole things allow, none empty', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 1, max: 12 }),
        (weights, parts) => {
          const cuts = cutByWeight(weights, parts);
          expect(cuts.reduce((sum, many) => sum + many, 0)).toBe(weights.length);
          if (parts <= weights.length) expect(Math.min(...cuts)).toBeGreaterThan(0);
          const all = weights.reduce((sum, weight) => sum + weight, 0);
          let at = 0;
          cuts.slice(0, -1).forEach((many, part) => {
            at += many;
            const upTo = (end: number) => weights.slice(0, end).reduce((sum, weight) => sum + weight, 0);
            const off = (end: number) => Math.abs(upTo(end) - (all * (part + 1)) / parts);
            // No cut a thing earlier would lie nearer, unless it left nothing; a later one may be kept for the parts to come.
            if (many > 1) expect(off(at)).toBeLessThanOrEqual(off(at - 1));
          });
        },
      ),
      { numRuns: 60 },
    );
  });

  it('has every share of what is alike as long as the others', () => {
    expect(cutByWeight([1, 1, 1, 1, 1, 1], 3)).toEqual([2, 2, 2]);
    expect(cutByWeight([5, 5, 5, 5, 5, 5, 5, 5], 4)).toEqual([2, 2, 2, 2]);
  });

  it('puts the last kind off until the one before is learnt, and loses no motif', () => {
    expect(shareMotifs([4, 2], [100, 400], 3)).toEqual([
      [4, 0],
      [0, 1],
      [0, 1],
    ]);
  });

  it('gives parts that together hold every row and motif once', () => {
    const own = reckonOwn(plan(), NO_WAY);
    const { parts } = plan();
    const numbers = parts.map((part) => reckonPart(own, parts, part, new Working()));
    const rows = numbers.flatMap(({ rows: span }) => (span ? span.counts : []));
    expect(rows).toEqual([
      3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23, 25, 23, 21, 19, 17, 15, 13, 11, 9, 7, 5, 3, 1,
    ]);
    expect(numbers.reduce((sum, { motifsInAll = 0 }) => sum + motifsInAll, 0)).toBe(12 - 1);
  });
});

describe('the moment of a part', () => {
  // Published rules of the zones: EU since 1996 (last Sundays of March and October, 01:00 UTC), US since 2007, Samoa without 30 December 2011.
  it.each([
    ['2031-01-06', 9, 'Europe/Berlin', '2031-01-06T08:00:00.000Z'],
    ['2031-03-30', 2, 'Europe/Berlin', '2031-03-30T01:00:00.000Z'],
    ['2031-10-26', 2, 'Europe/Berlin', '2031-10-26T00:00:00.000Z'],
    ['2031-03-09', 2, 'America/New_York', '2031-03-09T07:00:00.000Z'],
    ['2031-11-02', 1, 'America/New_York', '2031-11-02T05:00:00.000Z'],
    ['2031-06-01', 0, 'Asia/Kathmandu', '2031-05-31T18:15:00.000Z'],
    ['2011-12-30', 9, 'Pacific/Apia', '2011-12-30T19:00:00.000Z'],
  ])('%s at %i:00 in %s is %s', (day, hour, zone, moment) => {
    expect(momentOf(day, hour, zone).toISOString()).toBe(moment);
  });

  it('takes zones whatever their capitals, and names the nearest of one that is none', () => {
    expect(readZone('europe/berlin')).toBe('Europe/Berlin');
    expect(readZone('america/new york')).toBe('America/New_York');
    expect(readZone('UTC')).toBe('UTC');
    expect(() => readZone('Europe/Berln')).toThrow(
      expect.objectContaining({
        code: 'unknown-zone',
        hint: expect.stringContaining('Europe/Berlin') as string,
      }),
    );
    expect(() => readZone('Berlin')).toThrow(
      expect.objectContaining({ hint: expect.stringContaining('Europe/Berlin') as string }),
    );
    for (const zone of ['+02:00', '__proto__', '', 'x'.repeat(60)])
      expect(() => readZone(zone), zone).toThrow(code('unknown-zone'));
  });
});

describe('what a teacher types', () => {
  it.each([
    ['week', 7],
    ['weekly', 7],
    ['every 2 weeks', 14],
    ['fortnight', 14],
    ['10 days', 10],
    ['3', 3],
    ['a day', 1],
    ['every other week', 14],
  ])('%s is every %i days', (text, days) => expect(readEvery(text)).toBe(days));

  it.each(['', 'month', '0 days', '200 days', '1.5 weeks', '-7'])('%j says no such thing', (text) => {
    expect(() => readEvery(text)).toThrow(code('not-so-often'));
  });

  it('reads parts with their days, and refuses what is out of order or has none', () => {
    const list =
      '2031-01-06 Swatch; 2031-01-13: first square; 20 January 2031 squares; 2031-01-27 blocking day';
    expect(readParts(list, '2031-01-01').map(({ from, title, work }) => [from, title, work])).toEqual([
      ['2031-01-06', 'Swatch', 'swatch'],
      ['2031-01-13', 'first square', 'first'],
      ['2031-01-20', 'squares', 'motifs'],
      ['2031-01-27', 'blocking day', 'own'],
    ]);
    const refused = (text: string) => () => readParts(text, '2031-01-01');
    expect(refused('2031-01-13 swatch; 2031-01-06 squares')).toThrow(code('parts-out-of-order'));
    expect(refused('swatch')).toThrow(code('part-without-day'));
    expect(refused('2031-02-30 swatch')).toThrow(code('not-a-day'));
    expect(refused('2030-02-03 swatch')).toThrow(code('day-passed'));
    expect(refused('2031-02-03')).toThrow(code('part-without-title'));
    expect(refused(' ; ')).toThrow(code('no-parts'));
    expect(workIn('Join the strips')).toBe('joining');
    expect(() => plan({ starts: '2030-12-31' })).toThrow(code('day-passed'));
    expect(() => plan({ starts: undefined })).toThrow(code('start-missing'));
  });
});

describe('her own blanket', () => {
  it('is the teacher’s where she says nothing', () => {
    const own = reckonOwn(plan(), NO_WAY);
    expect(own.spec.kinds).toEqual(PATTERN.kinds);
    expect(own.extent).toEqual({ columns: 3, rows: 4, counts: [12] });
  });

  it('has the size that her gauge calls for, as it is asked for by itself', () => {
    fc.assert(
      fc.property(fc.integer({ min: 8, max: 30 }), fc.integer({ min: 6, max: 30 }), (stitches, rows) => {
        const gauge = { stitches, rows, over: 10 };
        const own = reckonOwn(plan(), { ...NO_WAY, gauge });
        const [kind] = own.kinds;
        const found = findSizeForSide({ gauge, side: kind!.patternSide });
        expect(kind!.motif.size).toBe(found.size);
        expect(kind!.side).toBeCloseTo(found.side, 9);
        // Her stripes cover her rows.
        expect(kind!.motif.runs.reduce((sum, run) => sum + run.rows, 0)).toBe(2 * found.size);
      }),
      { numRuns: 15 },
    );
  });

  it('has the columns and rows that come nearest to what she wishes', () => {
    const own = reckonOwn(plan(), { ...NO_WAY, width: 100, height: 130 });
    const { best } = resize({ width: 100, height: 130, border: 0, side: own.kinds[0]!.side });
    expect(own.extent).toMatchObject({ columns: best.columns, rows: best.rows, counts: [best.motifs] });
  });

  it('is in her colours and of her balls, and drops what the teacher weighed', () => {
    const weighed = plan({
      pattern: { ...PATTERN, kinds: [{ ...PATTERN.kinds[0]!, weight: 30, ball: { m: 100, g: 50 } }] },
    });
    const ball = { m: 170, g: 100 };
    const colours = readOwnColours('teal, cream', ['moss', 'sand']);
    const own = reckonOwn(weighed, { ...NO_WAY, ball, colours });
    expect(own.spec.yarns).toEqual([
      { colour: 'teal', ball },
      { colour: 'cream', ball },
    ]);
    expect(own.spec.kinds[0]).not.toHaveProperty('weight');
    expect(own.materials.colours.map(({ colour }) => colour)).toEqual(['teal', 'cream']);
    expect(readOwnColours('sand=cream', ['moss', 'sand'])).toEqual([{ of: 'sand', hers: 'cream' }]);
    expect(() => readOwnColours('teal', ['moss', 'sand'])).toThrow(code('colours-differ'));
    expect(() => readOwnColours('navy=cream', ['moss', 'sand'])).toThrow(code('no-such-colour'));
  });

  it('wants rows in a gauge', () => {
    expect(() => reckonOwn(plan(), { ...NO_WAY, gauge: { stitches: 13, over: 10 } })).toThrow(
      code('gauge-rows-missing'),
    );
  });
});

describe('the state', () => {
  const busy = () =>
    history(
      joins('rowan'),
      joins('ash', { ...NO_WAY, named: true }),
      ['rowan', (state) => finish(state, asker('rowan'), partNumbered(state, 1))],
      [
        'rowan',
        (state) =>
          stick(state, asker('rowan'), partNumbered(state, 2), {
            row: 7,
            slip: 'increase-missed',
            help: true,
          }),
      ],
      [
        'ash',
        (state) =>
          stick(state, asker('ash'), partNumbered(state, 2), {
            row: 7,
            slip: 'increase-missed',
            help: false,
          }),
      ],
      [
        'ines',
        (state) =>
          changePart(state, TEACHER, partNumbered(state, 3), { from: '2031-01-22', rest: true }, NOW),
      ],
      ['ash', (state) => finish(state, asker('ash'), partNumbered(state, 2))],
    );

  it('is the same whether all is replayed or one goes on from before', () => {
    const events = busy();
    for (let known = 1; known < events.length; known++)
      expect(goOn(replay(events.slice(0, known)), known, events.slice(known), new Set())).toEqual(
        replay(events),
      );
  });

  it('never alters the state before it', () => {
    const events = busy();
    const before = replay(events);
    const by = { by: 'ash', at: NOW.toISOString(), once: 'leaves' };
    goOn(
      before,
      events.length,
      [
        { did: 'done', part: 1, ...by },
        { did: 'left', ...by },
      ],
      new Set(),
    );
    expect(before).toEqual(replay(events));
  });

  it('counts the done, the stuck and those who have not begun, and tells troubles in numbers', () => {
    const state = replay(busy());
    expect(countProgress(state, 1)).toEqual({ done: 1, stuck: 0, notBegun: 1 });
    expect(countProgress(state, 2)).toEqual({ done: 1, stuck: 1, notBegun: 0 });
    expect(listTroubles(state)).toEqual([{ part: 2, row: 7, slip: 'increase-missed', makers: 2 }]);
    expect(listHelpWanted(state).map(({ maker }) => maker)).toEqual(['rowan']);
    expect(state.parts.slice(2).map(({ from }) => from)[0]).toBe('2031-01-22');
    expect(state.parts.at(-1)?.from).toBe('2031-02-26');
    expect(findPartOf(state, 'rowan', NOW)?.id).toBe(2);
  });

  it('takes a maker’s part out when she leaves', () => {
    const events = [...busy(), { did: 'left', by: 'ash', at: NOW.toISOString(), once: 'leaves' } as const];
    const state = replay(events);
    expect(countProgress(state, 2)).toEqual({ done: 0, stuck: 1, notBegun: 0 });
    expect(listTroubles(state)).toEqual([{ part: 2, row: 7, slip: 'increase-missed', makers: 1 }]);
  });

  it('lets everybody take back what she said last, and the teacher a change of the parts', () => {
    const events = busy();
    const state = replay(events);
    expect(undo(state, asker('ash'))).toEqual([{ did: 'undone', event: 7 }]);
    expect(undo(state, TEACHER)).toEqual([{ did: 'undone', event: 6 }]);
    expect(() => undo(state, asker('fern'))).toThrow(code('nothing-to-take-back'));
  });

  it('refuses with what would do instead', () => {
    const state = replay(busy());
    const change =
      (from: string, rest = false) =>
      () =>
        changePart(state, TEACHER, partNumbered(state, 3), { from, rest }, NOW);
    expect(change('2031-01-10')).toThrow(code('parts-out-of-order'));
    expect(change('2031-03-30')).toThrow(code('parts-out-of-order'));
    expect(change('2030-12-30')).toThrow(code('day-passed'));
    expect(change('2031-03-30', true)).not.toThrow();
    expect(change('2199-12-31', true)).toThrow(code('day-too-far'));
    // The days of the others move with it: the last of them is given out weeks later.
    expect(change('2041-01-01', true)).toThrow(code('day-too-far'));
    expect(() =>
      changePart(state, TEACHER, state.parts.at(-1)!, { from: '2199-12-31', rest: true }, NOW),
    ).toThrow(code('day-too-far'));
    expect(() => addPart(state, TEACHER, { title: 'x', from: '2199-12-31', work: 'own' }, NOW)).toThrow(
      code('day-too-far'),
    );
    expect(() =>
      addPart(state, asker('rowan'), { title: 'x', from: '2031-04-01', work: 'own' }, NOW),
    ).toThrow(code('teachers-only'));
    expect(() => partNumbered(state, 40)).toThrow(code('no-such-part'));
    expect(() => finish(state, asker('fern'), partNumbered(state, 1))).toThrow(code('not-making-along'));
    expect(finish(state, asker('rowan'), partNumbered(state, 1))).toEqual([]);
    expect(() => leave(state, TEACHER)).toThrow(code('teacher-stays'));
    expect(() => takeOver(state, asker('ash'))).toThrow(code('not-offered'));
    expect(() => offerOver(state, TEACHER, { maker: 'ines', name: 'ines' })).toThrow(code('teacher-already'));
    const closed = replay([
      ...busy(),
      { ...close(state, TEACHER)[0]!, by: 'ines', at: NOW.toISOString(), once: 'close' },
    ]);
    expect(() => join(closed, asker('fern'), NO_WAY)).toThrow(code('along-closed'));
  });

  it('gives out no more than two parts on one day, whether listed, added or moved', () => {
    const list = (...days: string[]) =>
      plan({ starts: undefined, list: days.map((day) => `${day} x`).join(';') });
    expect(() => list('2031-02-01', '2031-02-01')).not.toThrow();
    expect(() => list('2031-02-01', '2031-02-01', '2031-02-01')).toThrow(code('too-many-parts-a-day'));
    expect(() => list('2031-02-01', '2199-02-01')).toThrow(code('day-too-far'));
    expect(() => plan({ starts: '2199-02-01' })).toThrow(code('day-too-far'));
    const state = replay([
      {
        did: 'opened',
        name: 'ines',
        plan: list('2031-02-01', '2031-02-01', '2031-02-08'),
        by: 'ines',
        at: NOW.toISOString(),
        once: 'open',
      },
    ]);
    const added = { title: 'x', from: '2031-02-01', work: 'own' } as const;
    expect(() => addPart(state, TEACHER, added, NOW)).toThrow(code('too-many-parts-a-day'));
    expect(() => changePart(state, TEACHER, partNumbered(state, 3), { from: '2031-02-01' }, NOW)).toThrow(
      code('too-many-parts-a-day'),
    );
    expect(() => addPart(state, TEACHER, { ...added, from: '2031-02-08' }, NOW)).not.toThrow();
  });

  it('may be led by managers and by who takes it over, once its teacher has gone', () => {
    const events = busy().map((event) => (event.by === 'ines' ? { ...event, by: 'somebody.1' } : event));
    const state = replay(events);
    expect(() => close(state, asker('ash'))).toThrow(code('teacher-gone'));
    expect(close(state, { ...asker('fern'), manager: true })).toEqual([{ did: 'closed' }]);
    expect(offerOver(state, { ...asker('ash'), managed: false }, { maker: 'ash', name: 'ash' })).toEqual([
      { did: 'handed-over', to: 'ash', name: 'ash' },
    ]);
  });
});
