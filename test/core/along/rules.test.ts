/** What may happen to a make-along, rule by rule: who may, when, and what is said where not. */
import { describe, expect, it } from 'vitest';
import { POSTER, type AlongEvent, type Happening } from '../../../src/core/along/events.ts';
import { NO_WAY } from '../../../src/core/along/own.ts';
import { readPace } from '../../../src/core/along/pace.ts';
import { countByPart } from '../../../src/core/along/progress.ts';
import { MOST_PARTS } from '../../../src/core/along/propose.ts';
import {
  addPart,
  changePart,
  claimPart,
  close,
  findPartOf,
  finish,
  giveOut,
  join,
  leave,
  mustTeach,
  nextPartOf,
  nextPosting,
  offerOver,
  partMeant,
  partNamed,
  partNumbered,
  partsBegun,
  partStill,
  partsToPost,
  partsUnsure,
  postAnew,
  readOwnColours,
  removePart,
  reopen,
  setHour,
  stick,
  takeBackPart,
  takeOver,
  undo,
} from '../../../src/core/along/rules.ts';
import { countProgress, replay, type AlongState } from '../../../src/core/along/state.ts';
import { Problem } from '../../../src/core/base/problem.ts';
import { asker, code, history, joins, NOW, plan, TEACHER } from './scene.ts';

const at = (moment: string) => new Date(moment);
/** Parts of the proposal: swatch, two halves, motifs twice, ends, laying out, joining; on Mondays at 09:00 UTC from 6 January. */
const DAYS = [
  '2031-01-06',
  '2031-01-13',
  '2031-01-20',
  '2031-01-27',
  '2031-02-03',
  '2031-02-10',
  '2031-02-17',
  '2031-02-24',
];
const fresh = () => history(joins('rowan'), joins('ash', { ...NO_WAY, named: true }));
const posting = (...happened: readonly Happening[]): AlongEvent[] =>
  happened.map((one, index) => ({ ...one, by: POSTER, at: NOW.toISOString(), once: `post ${index}` }));
const stateOf = (...happened: readonly Happening[]) => replay([...fresh(), ...posting(...happened)]);
const by = (maker: string, state: AlongState, happened: readonly Happening[]) =>
  happened.map((one, index) => ({
    ...one,
    by: maker,
    at: NOW.toISOString(),
    once: `${maker} ${state.standing.length} ${index}`,
  }));
/** The Problem that is thrown. */
function problem(act: () => unknown): Problem {
  try {
    act();
  } catch (error) {
    if (error instanceof Problem) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('who leads', () => {
  it('is asked, or named, by whoever may not', () => {
    const state = stateOf();
    expect(() => mustTeach(state, TEACHER)).not.toThrow();
    expect(() => mustTeach(state, { ...asker('fern'), manager: true })).not.toThrow();
    expect(problem(() => mustTeach(state, asker('rowan')))).toMatchObject({
      code: 'teachers-only',
      hint: 'Ask ines, who leads it.',
      facts: { teacher: 'ines', server: 1 },
    });
  });

  it('is said to have gone, and who can go on', () => {
    const gone = replay(
      fresh().map((event) => (event.by === 'ines' ? { ...event, by: 'somebody.1' } : event)),
    );
    expect(problem(() => mustTeach(gone, asker('rowan')))).toMatchObject({
      code: 'teacher-gone',
      hint: expect.stringContaining('manager of the server') as string,
      facts: { server: 1 },
    });
    expect(problem(() => mustTeach(gone, { ...asker('fern'), managed: false }))).toMatchObject({
      hint: expect.stringContaining('whoever takes part can take it over') as string,
      facts: { server: 0 },
    });
    expect(() => mustTeach(gone, { ...asker('rowan'), managed: false })).not.toThrow();
  });

  it('stays while others take part, and may leave alone', () => {
    const alone = replay(history(joins('ines')));
    expect(leave(alone, TEACHER)).toEqual([{ did: 'left' }]);
    expect(problem(() => leave(replay(history(joins('ines'), joins('rowan'))), TEACHER)).facts).toEqual({
      makers: 2,
    });
    expect(() => leave(replay(history(joins('rowan'))), TEACHER)).toThrow(code('teacher-stays'));
    // Nobody takes part, nor does she.
    expect(() => leave(replay(history()), TEACHER)).toThrow(code('not-making-along'));
    expect(leave(stateOf(), asker('rowan'))).toEqual([{ did: 'left' }]);
    expect(() => leave(stateOf(), asker('fern'))).toThrow(code('not-making-along'));
  });

  it('is asked first and says yes, or names herself and leads at once', () => {
    const state = stateOf();
    const [offered] = offerOver(state, TEACHER, { maker: 'rowan', name: 'rowan' });
    expect(offered).toEqual({ did: 'offered-over', to: 'rowan', name: 'rowan' });
    const asked = replay([...fresh(), ...by('ines', state, [offered!])]);
    expect(takeOver(asked, asker('rowan'))).toEqual([{ did: 'handed-over', to: 'rowan', name: 'rowan' }]);
    expect(problem(() => takeOver(asked, asker('ash'))).hint).toContain('rowan is asked');
    expect(problem(() => takeOver(state, asker('ash'))).hint).toContain('Name the one');
    expect(offerOver(state, { ...asker('fern'), manager: true }, { maker: 'fern', name: 'fern' })).toEqual([
      { did: 'handed-over', to: 'fern', name: 'fern' },
    ]);
  });

  it('closes and opens again', () => {
    const state = stateOf();
    expect(() => reopen(state, TEACHER)).toThrow(code('along-open'));
    const closed = replay([...fresh(), ...by('ines', state, close(state, TEACHER))]);
    expect(() => close(closed, TEACHER)).toThrow(code('along-closed'));
    expect(reopen(closed, TEACHER)).toEqual([{ did: 'reopened' }]);
    expect(() => reopen(closed, asker('rowan'))).toThrow(code('teachers-only'));
    expect(join(state, asker('fern'), NO_WAY)).toEqual([{ did: 'joined', name: 'fern', ...NO_WAY }]);
  });
});

describe('which part is meant', () => {
  const state = stateOf();

  it('is told by its number or by the id that stays its own', () => {
    expect(partNumbered(state, 2).from).toBe(DAYS[1]);
    expect(problem(() => partNumbered(state, 9))).toMatchObject({
      hint: 'Give a part from 1 to 8.',
      facts: { part: 9, parts: 8 },
    });
    const none = replay([
      ...fresh(),
      ...by(
        'ines',
        state,
        state.parts.map(({ id }) => ({ did: 'part-removed' as const, part: id })),
      ),
    ]);
    expect(problem(() => partNumbered(none, 1)).hint).toContain('No part is left');
    expect(() => partMeant(none, { maker: 'rowan', now: NOW })).toThrow(code('no-parts'));
    const without = replay([...fresh(), ...by('ines', state, [{ did: 'part-removed', part: 1 }])]);
    expect(partNamed(without, { id: 3 })).toEqual(partNumbered(without, 2));
    expect(partNamed(without, { number: 1 }).id).toBe(2);
    expect(() => partNamed(without, { id: 1 })).toThrow(code('part-removed'));
    expect(partMeant(without, { named: { id: 4 }, maker: 'rowan', now: NOW }).id).toBe(4);
    expect(partStill(without, { id: 2, title: 'x' }).id).toBe(2);
    expect(() => partStill(without, { id: 1, title: 'Swatch' })).toThrow(code('part-gone'));
  });

  it('is the first that has begun and is not done; else the next to come; else the last', () => {
    const moment = at(`${DAYS[1]!}T09:00:00Z`);
    expect(partsBegun(state, moment).map(({ id }) => id)).toEqual([1, 2]);
    expect(partsBegun(state, new Date(moment.getTime() - 1)).map(({ id }) => id)).toEqual([1]);
    const done = (...parts: number[]) =>
      replay([
        ...fresh(),
        ...by(
          'rowan',
          state,
          parts.map((part) => ({ did: 'done' as const, part })),
        ),
      ]);
    expect(findPartOf(state, 'rowan', moment)?.id).toBe(1);
    expect(findPartOf(done(1), 'rowan', moment)?.id).toBe(2);
    expect(findPartOf(done(1, 2), 'rowan', moment)?.id).toBe(3);
    expect(findPartOf(done(1, 2), 'ash', moment)?.id).toBe(1);
    expect(findPartOf(done(1, 2, 3, 4, 5, 6, 7, 8), 'rowan', moment)?.id).toBe(8);
    expect(nextPartOf(done(1), 'rowan', moment)).toMatchObject({ part: { id: 2 }, begun: true });
    expect(nextPartOf(done(1, 2), 'rowan', moment)).toMatchObject({ part: { id: 3 }, begun: false });
    expect(nextPartOf(done(1), 'rowan', new Date(moment.getTime() - 1))).toMatchObject({ begun: false });
    expect(nextPartOf(done(1, 2, 3, 4, 5, 6, 7, 8), 'rowan', moment)).toBeUndefined();
  });

  it('is finished once, by who takes part', () => {
    expect(finish(state, asker('rowan'), partNumbered(state, 2))).toEqual([{ did: 'done', part: 2 }]);
    expect(() => finish(state, asker('fern'), partNumbered(state, 2))).toThrow(code('not-making-along'));
    expect(stick(state, asker('rowan'), partNumbered(state, 2), { words: 'it leans', help: true })).toEqual([
      { did: 'stuck', part: 2, words: 'it leans', help: true },
    ]);
    expect(() => stick(state, asker('fern'), partNumbered(state, 2), { help: false })).toThrow(
      code('not-making-along'),
    );
  });
});

describe('a change of a part', () => {
  const state = stateOf();
  const third = partNumbered(state, 3);
  const change = (more: Parameters<typeof changePart>[3], of = third, within = state, now = NOW) =>
    changePart(within, TEACHER, of, more, now);

  it('is nothing where nothing differs, and what differs alone otherwise', () => {
    expect(change({})).toEqual([]);
    expect(change({ title: third.title, from: third.from })).toEqual([]);
    expect(change({ title: 'Corner', asks: 'Bring it' })).toEqual([
      { did: 'part-changed', part: 3, title: 'Corner', asks: 'Bring it' },
    ]);
    expect(change({ from: '2031-01-21', title: third.title })).toEqual([
      { did: 'part-changed', part: 3, from: '2031-01-21' },
    ]);
    expect(change({ from: '2031-01-22', rest: true })).toEqual([
      { did: 'part-changed', part: 3, from: '2031-01-22', after: 2 },
    ]);
    expect(() => changePart(state, asker('rowan'), third, { title: 'x' }, NOW)).toThrow(
      code('teachers-only'),
    );
  });

  it('keeps the parts in the order of their days, which may be the same', () => {
    expect(change({ from: DAYS[1]! })).toHaveLength(1);
    expect(change({ from: DAYS[3]! })).toHaveLength(1);
    const early = problem(() => change({ from: '2031-01-12' }));
    expect(early).toMatchObject({
      code: 'parts-out-of-order',
      facts: { from: '2031-01-12', before: DAYS[1], after: DAYS[3] },
    });
    expect(early.message).toMatch(/^Part 2 .* part 3 would come before it\.$/);
    expect(early.hint).toMatch(/^Give a day not before .* and not after [^,]*\.$/);
    const late = problem(() => change({ from: '2031-01-28' }));
    expect(late.message).toMatch(/^Part 4 .* part 3 would come after it\.$/);
    expect(late.hint).toContain('rest:yes');
    // The first has none before it, the last none after.
    expect(problem(() => change({ from: '2031-01-14' }, state.parts[0])).hint).toMatch(
      /^Give a day not after/,
    );
    expect(problem(() => change({ from: '2031-02-01' }, state.parts[7])).hint).toMatch(
      /^Give a day not before [^,]*\.$/,
    );
    expect(change({ from: '2031-03-01' }, state.parts[7])).toHaveLength(1);
    // With those after it, it only has to come after the one before.
    expect(change({ from: '2031-05-01', rest: true })).toHaveLength(1);
    expect(() => change({ from: '2031-01-12', rest: true })).toThrow(code('parts-out-of-order'));
  });

  it('takes a day until it is over everywhere in the zone', () => {
    const first = state.parts[0]!;
    const over = at('2031-01-03T00:00:00Z');
    expect(change({ from: '2031-01-02' }, first, state, new Date(over.getTime() - 1))).toHaveLength(1);
    expect(problem(() => change({ from: '2031-01-02' }, first, state, over))).toMatchObject({
      code: 'day-passed',
      facts: { from: '2031-01-02', hour: 9 },
    });
  });

  it('moves no part that is out, unless it is taken back', () => {
    for (const is of [
      [{ did: 'claimed', part: 3 }],
      [
        { did: 'claimed', part: 3 },
        { did: 'posted', part: 3 },
      ],
    ] as const) {
      const out = stateOf(...is);
      expect(problem(() => change({ from: '2031-01-21' }, third, out))).toMatchObject({
        code: 'given-out-already',
        message: 'Part 3 has been given out already.',
        facts: { part: 3 },
      });
      expect(change({ from: '2031-01-21', takenBack: true }, third, out)).toHaveLength(1);
      expect(change({ title: 'Corner' }, third, out)).toHaveLength(1);
      expect(change({ from: '2031-01-28', rest: true }, partNumbered(out, 4), out)).toHaveLength(1);
    }
    const back = stateOf(
      { did: 'claimed', part: 3 },
      { did: 'posted', part: 3 },
      { did: 'taken-back', part: 3 },
    );
    expect(change({ from: '2031-01-21' }, third, back)).toHaveLength(1);
    expect(
      change(
        { from: '2031-01-21' },
        third,
        stateOf({ did: 'claimed', part: 3 }, { did: 'not-posted', part: 3 }),
      ),
    ).toHaveLength(1);
  });

  it('adds until there are as many as are kept, with an id of its own', () => {
    expect(addPart(state, TEACHER, { title: 'Tea', from: '2031-03-01', work: 'own' }, NOW)).toEqual([
      { did: 'part-added', part: { id: 9, title: 'Tea', from: '2031-03-01', work: 'own' } },
    ]);
    const more = (upTo: number) =>
      replay([
        ...fresh(),
        ...by(
          'ines',
          state,
          Array.from({ length: upTo - state.parts.length }, (_, index) => ({
            did: 'part-added' as const,
            part: {
              id: 9 + index,
              title: 'x',
              from: `2031-${String(3 + Math.floor(index / 28)).padStart(2, '0')}-${String(1 + (index % 28)).padStart(2, '0')}`,
              work: 'own' as const,
            },
          })),
        ),
      ]);
    const added = { title: 'x', from: '2031-09-01', work: 'own' } as const;
    expect(addPart(more(MOST_PARTS - 1), TEACHER, added, NOW)).toHaveLength(1);
    expect(problem(() => addPart(more(MOST_PARTS), TEACHER, added, NOW))).toMatchObject({
      code: 'too-many-parts',
      facts: { most: MOST_PARTS },
    });
    expect(() => addPart(state, TEACHER, { ...added, from: '2030-12-01' }, NOW)).toThrow(code('day-passed'));
  });

  it('crowds no day that it moves parts to, and leaves alone those that are crowded already', () => {
    const two = stateOf({ did: 'part-changed', part: 2, from: DAYS[2]! });
    expect(problem(() => change({ from: DAYS[2]! }, partNumbered(two, 4), two))).toMatchObject({
      code: 'too-many-parts-a-day',
      facts: { from: DAYS[2], most: 2 },
    });
    const three = stateOf(
      { did: 'part-changed', part: 2, from: DAYS[2]! },
      { did: 'part-changed', part: 4, from: DAYS[2]! },
    );
    expect(change({ from: '2031-02-04' }, partNumbered(three, 5), three)).toHaveLength(1);
  });

  it('sets the hour and the zone where they differ', () => {
    expect(setHour(state, TEACHER, 9, 'UTC')).toEqual([]);
    expect(setHour(state, TEACHER, 10, 'UTC')).toEqual([{ did: 'hour-set', hour: 10, zone: 'UTC' }]);
    expect(setHour(state, TEACHER, 9, 'Europe/Berlin')).toEqual([
      { did: 'hour-set', hour: 9, zone: 'Europe/Berlin' },
    ]);
    expect(() => setHour(state, asker('rowan'), 10, 'UTC')).toThrow(code('teachers-only'));
  });
});

describe('what is given out', () => {
  const moment = at(`${DAYS[1]!}T09:00:00Z`);
  const CLAIMED = { did: 'claimed', part: 1 } as const;
  const POSTED = [CLAIMED, { did: 'posted', part: 1, channel: '9', message: '8' }] as const;
  const BACK = [...POSTED, { did: 'taken-back', part: 1 }] as const;
  const ANEW = [...POSTED, { did: 'post-anew', part: 1 }] as const;
  const ids = (parts: readonly { id: number }[]) => parts.map(({ id }) => id);

  it('is what has begun and is not out, each once', () => {
    expect(ids(partsToPost(stateOf(), moment))).toEqual([1, 2]);
    expect(ids(partsToPost(stateOf(CLAIMED), moment))).toEqual([2]);
    expect(ids(partsToPost(stateOf(...POSTED), moment))).toEqual([2]);
    expect(ids(partsToPost(stateOf(...BACK), moment))).toEqual([2]);
    expect(ids(partsToPost(stateOf(...ANEW), moment))).toEqual([1, 2]);
    expect(partsToPost(stateOf({ did: 'closed' }), moment)).toEqual([]);
    expect(claimPart(stateOf(), 2, moment)).toEqual([{ did: 'claimed', part: 2 }]);
    expect(claimPart(stateOf(), 3, moment)).toEqual([]);
    expect(claimPart(stateOf(CLAIMED), 1, moment)).toEqual([]);
    expect(giveOut(stateOf(CLAIMED), moment)).toEqual([{ did: 'posted', part: 2 }]);
    expect(
      ids(partsUnsure(stateOf(CLAIMED, { did: 'claimed', part: 2 }, { did: 'posted', part: 2 }))),
    ).toEqual([1]);
  });

  it('comes next at the moment of the first that is not out, now where it is late', () => {
    expect(nextPosting(stateOf(), NOW)).toEqual(at(`${DAYS[0]!}T09:00:00Z`));
    expect(nextPosting(stateOf(...POSTED), NOW)).toEqual(moment);
    expect(nextPosting(stateOf(...ANEW), NOW)).toEqual(at(`${DAYS[0]!}T09:00:00Z`));
    expect(nextPosting(stateOf(), moment)).toEqual(moment);
    expect(nextPosting(stateOf({ did: 'closed' }), NOW)).toBeUndefined();
    const all = stateOf(...[1, 2, 3, 4, 5, 6, 7, 8].map((part) => ({ did: 'claimed' as const, part })));
    expect(nextPosting(all, NOW)).toBeUndefined();
  });

  it('is taken back, posted anew, or removed by who leads', () => {
    const take = (state: AlongState, who = TEACHER) => takeBackPart(state, who, partNumbered(state, 1));
    const anew = (state: AlongState, who = TEACHER) => postAnew(state, who, partNumbered(state, 1));
    const remove = (state: AlongState, who = TEACHER) => removePart(state, who, partNumbered(state, 1));
    for (const act of [take, anew, remove])
      expect(() => act(stateOf(...POSTED), asker('rowan'))).toThrow(code('teachers-only'));
    expect(() => take(stateOf())).toThrow(code('not-given-out'));
    expect(take(stateOf(CLAIMED))).toEqual([{ did: 'taken-back', part: 1 }]);
    expect(take(stateOf(...POSTED))).toEqual([{ did: 'taken-back', part: 1 }]);
    expect(take(stateOf(...BACK))).toEqual([]);
    expect(anew(stateOf())).toEqual([]);
    expect(anew(stateOf(...POSTED))).toEqual([{ did: 'post-anew', part: 1 }]);
    expect(anew(stateOf(...BACK))).toEqual([{ did: 'post-anew', part: 1 }]);
    expect(anew(stateOf(...ANEW))).toEqual([]);
    const removed = { did: 'part-removed', part: 1 };
    expect(remove(stateOf())).toEqual([removed]);
    expect(remove(stateOf(...BACK))).toEqual([removed]);
    expect(remove(stateOf(CLAIMED))).toEqual([{ did: 'taken-back', part: 1 }, removed]);
    expect(remove(stateOf(...POSTED))).toEqual([{ did: 'taken-back', part: 1 }, removed]);
  });
});

describe('taking back what was said', () => {
  it('takes all of one press, of hers alone, and a teacher’s changes only from who leads', () => {
    const events = fresh();
    const press = (once: string, who: string, ...happened: Happening[]) =>
      happened.map((one): AlongEvent => ({ ...one, by: who, at: NOW.toISOString(), once }));
    events.push(
      ...press('a', 'rowan', { did: 'done', part: 1 }),
      ...press(
        'b',
        'ines',
        { did: 'hour-set', hour: 10, zone: 'UTC' },
        { did: 'part-changed', part: 2, title: 'x' },
      ),
      ...press('c', 'ash', { did: 'stuck', part: 1, help: false }),
    );
    const state = replay(events);
    expect(undo(state, TEACHER)).toEqual([
      { did: 'undone', event: 4 },
      { did: 'undone', event: 5 },
    ]);
    expect(undo(state, asker('rowan'))).toEqual([{ did: 'undone', event: 3 }]);
    expect(undo(state, asker('ash'))).toEqual([{ did: 'undone', event: 6 }]);
    // What she changed while she led is not hers to take back any more; that she joined is no slip.
    const handed = replay([
      ...events,
      ...press('d', 'ines', { did: 'handed-over', to: 'rowan', name: 'rowan' }),
    ]);
    expect(() => undo(handed, TEACHER)).toThrow(code('nothing-to-take-back'));
    expect(() => undo(replay(fresh()), asker('rowan'))).toThrow(code('nothing-to-take-back'));
    // That it was opened stays, though it came of the same press.
    const opening = replay([
      ...fresh(),
      { did: 'hour-set', hour: 11, zone: 'UTC', by: 'ines', at: NOW.toISOString(), once: 'open' },
    ]);
    expect(undo(opening, TEACHER)).toEqual([{ did: 'undone', event: 3 }]);
  });
});

describe('her colours for the teacher’s', () => {
  const THEIRS = ['moss', 'sand'];
  it('are in their order, or each with the one it is for', () => {
    expect(readOwnColours(' teal ; cream,', THEIRS)).toEqual([
      { of: 'moss', hers: 'teal' },
      { of: 'sand', hers: 'cream' },
    ]);
    for (const typed of ['Sand = cream', 'sand:cream', 'sand → cream', 'sand->cream', 'sand  =  cream '])
      expect(readOwnColours(typed, THEIRS), typed).toEqual([{ of: 'sand', hers: 'cream' }]);
    expect(readOwnColours('moss=a=b', THEIRS)).toEqual([{ of: 'moss', hers: 'a=b' }]);
  });

  it('are refused with the pattern’s own', () => {
    expect(problem(() => readOwnColours('teal', THEIRS))).toMatchObject({
      code: 'colours-differ',
      message: 'The pattern has 2 colours, and 1 colour is given.',
      facts: { needed: 2, given: 1 },
      hint: expect.stringContaining('which is for which: moss=teal') as string,
    });
    expect(problem(() => readOwnColours('a, b, c', THEIRS)).message).toMatch(/3 colours are given/);
    expect(problem(() => readOwnColours('navy = teal', THEIRS))).toMatchObject({
      code: 'no-such-colour',
      message: 'The pattern has no colour navy.',
      hint: 'The pattern’s colours are moss, sand.',
    });
    expect(problem(() => readOwnColours('moss=teal, cream', THEIRS)).message).toBe(
      'Which colour cream is for is not said.',
    );
  });
});

describe('how the class comes along', () => {
  const moment = at(`${DAYS[2]!}T09:00:00Z`);
  const made = (done: Readonly<Record<string, readonly number[]>>) => {
    const events = history(...Object.keys(done).map((maker) => joins(maker)));
    const state = replay(events);
    return replay([
      ...events,
      ...Object.entries(done).flatMap(([maker, parts]) =>
        by(
          maker,
          state,
          parts.map((part) => ({ did: 'done' as const, part })),
        ),
      ),
    ]);
  };

  it('tells what is out, what she has done of it, and the middle one of all', () => {
    const state = made({ a: [], b: [1], c: [1, 2, 3], d: [1, 2, 3, 4, 5, 6, 7, 8] });
    expect(readPace(state, 'b', moment)).toEqual({
      givenOut: 3,
      done: 1,
      behind: 2,
      middle: 1,
      upToDate: 2,
      ends: DAYS[7],
    });
    expect(readPace(state, 'd', moment)).toMatchObject({ done: 8, behind: 0 });
    const stranger = readPace(state, 'fern', moment);
    expect(stranger).not.toHaveProperty('done');
    expect(stranger).not.toHaveProperty('behind');
    // Of an odd number the middle one, whatever the order they came in; by number, not as words are sorted.
    expect(readPace(made({ a: [1, 2, 3, 4, 5], b: [], c: [1, 2] }), 'a', moment).middle).toBe(2);
    expect(readPace(made({}), 'a', moment)).toMatchObject({ middle: 0, upToDate: 0 });
    const none = replay([
      ...fresh(),
      ...by(
        'ines',
        state,
        state.parts.map(({ id }) => ({ did: 'part-removed' as const, part: id })),
      ),
    ]);
    expect(readPace(none, 'rowan', moment)).toEqual({
      givenOut: 0,
      done: 0,
      behind: 0,
      middle: 0,
      upToDate: 2,
    });
  });

  it('is the same in one pass over all that anybody was stuck at as part by part', () => {
    const base = made({ a: [1], b: [1, 2], c: [] });
    const state = replay([
      ...history(joins('a'), joins('b'), joins('c')),
      ...by('a', base, [
        { did: 'done', part: 1 },
        { did: 'stuck', part: 1, help: false },
        { did: 'stuck', part: 2, row: 7, help: false },
        { did: 'stuck', part: 2, row: 8, help: false },
      ]),
      ...by('b', base, [
        { did: 'stuck', part: 2, help: true },
        { did: 'done', part: 3 },
      ]),
    ]);
    const counted = countByPart(state);
    expect([...counted.keys()]).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    for (const { id } of state.parts) expect(counted.get(id), String(id)).toEqual(countProgress(state, id));
    expect(counted.get(1)).toEqual({ done: 1, stuck: 0, notBegun: 2 });
    expect(counted.get(2)).toEqual({ done: 0, stuck: 2, notBegun: 1 });
    expect(plan().parts).toHaveLength(8);
  });
});
