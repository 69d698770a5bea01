/** Where a lesson lies, and when it comes back. */
import { describe, expect, it } from 'vitest';
import { readExport, writeExport } from '../../src/projects/export.ts';
import { DAYS_BY_BOX, isDue, isKnown, moveBack, moveOn } from '../../src/lessons/boxes.ts';
import { lessonNamed, LESSONS } from '../../src/lessons/index.ts';
import {
  begin,
  keptOf,
  lacking,
  note,
  openTask,
  pickNext,
  stateOf,
  stop,
} from '../../src/projects/lessons.ts';
import { MOST_TASKS, makerSchema, newMaker } from '../../src/projects/schema.ts';

const WAYS = { units: 'metric', terms: 'US' } as const;
const DAY = 24 * 60 * 60 * 1000;
const NOW = new Date('2031-03-01T10:00:00Z');
const later = (days: number) => new Date(NOW.getTime() + days * DAY);
const growing = lessonNamed('growing')!;

const fresh = () => newMaker('ada', 'Ada');
/** Begins and answers a task. */
function practise(doc: ReturnType<typeof fresh>, right: boolean, at: Date, lesson = growing) {
  begin(doc, lesson, WAYS);
  return note(doc, openTask(doc)!, right, at).kept;
}

describe('boxes', () => {
  // Published: three boxes, every day, every three days, every five days (en.wikipedia.org/wiki/Leitner_system).
  it('have the published days', () => expect(DAYS_BY_BOX).toEqual([1, 3, 5]));

  it('are gone through one by one, then it is known', () => {
    let place = moveOn({ box: 0 }, NOW);
    expect(place).toEqual({ box: 1, due: later(1).toISOString() });
    expect(isDue(place, later(0.9))).toBe(false);
    expect(isDue(place, later(1))).toBe(true);
    place = moveOn(place, NOW);
    expect(place).toEqual({ box: 2, due: later(3).toISOString() });
    place = moveOn(place, NOW);
    expect(place).toEqual({ box: 3, due: later(5).toISOString() });
    expect(isKnown(place)).toBe(false);
    place = moveOn(place, NOW);
    expect(place).toEqual({ box: 4 });
    expect(isKnown(place)).toBe(true);
  });

  it('go back to the first', () => expect(moveBack(NOW)).toEqual({ box: 1, due: later(1).toISOString() }));
});

describe('a lesson', () => {
  it('comes back after longer days each time it is right at once', () => {
    const doc = fresh();
    expect(practise(doc, true, NOW)).toMatchObject({ box: 1, due: later(1).toISOString() });
    expect(practise(doc, true, later(1))).toMatchObject({ box: 2, due: later(4).toISOString() });
    expect(practise(doc, true, later(4))).toMatchObject({ box: 3, due: later(9).toISOString() });
    const known = practise(doc, true, later(9));
    expect(known).toEqual({ lesson: 'growing', box: 4, tasks: 4 });
    expect(stateOf(known, later(400))).toBe('known');
  });

  it('does not move on when it is practised before its day', () => {
    const doc = fresh();
    const first = practise(doc, true, NOW);
    expect(practise(doc, true, later(0.5))).toMatchObject({ box: 1, due: first.due! });
  });

  it('begins anew after three wrong answers, and after one that needed a second try', () => {
    const doc = fresh();
    practise(doc, true, NOW);
    practise(doc, true, later(1));
    begin(doc, growing, WAYS);
    expect(note(doc, openTask(doc)!, false, later(4)).triesLeft).toBe(2);
    expect(openTask(doc)).toMatchObject({ triesLeft: 2 });
    expect(note(doc, openTask(doc)!, true, later(4))).toMatchObject({
      triesLeft: 0,
      kept: { box: 1, due: later(5).toISOString() },
    });
    begin(doc, growing, WAYS);
    for (const left of [2, 1, 0]) expect(note(doc, openTask(doc)!, false, later(6)).triesLeft).toBe(left);
    expect(openTask(doc)).toBeUndefined();
    expect(keptOf(doc, 'growing')).toMatchObject({ box: 1, due: later(7).toISOString() });
  });

  it('has fresh numbers each time, and the same until it is answered', () => {
    const doc = fresh();
    const first = begin(doc, growing, WAYS).given;
    expect(openTask(doc)?.given).toEqual(first);
    stop(doc);
    expect(openTask(doc)).toBeUndefined();
    const others = Array.from({ length: 6 }, () => JSON.stringify(begin(doc, growing, WAYS).given));
    expect(new Set([JSON.stringify(first), ...others]).size).toBeGreaterThan(4);
  });

  it('is about her own square where she has one', () => {
    const doc = fresh();
    doc.motifs.push({ name: 'Moss', shape: 'diagonal', size: 17, stitch: 'hdc', runs: [] });
    doc.current.motif = 'moss';
    expect(begin(doc, growing, WAYS).given).toMatchObject({ size: 17 });
  });

  it('is kept in a document that is whole', () => {
    const doc = fresh();
    practise(doc, true, NOW);
    begin(doc, lessonNamed('border')!, WAYS);
    expect(makerSchema().parse(JSON.parse(JSON.stringify(doc)))).toEqual(doc);
  });

  it('from a file is one that there is, once, and can be gone on with', () => {
    const kept = (lesson: string, box: number) => ({ lesson, box, tasks: MOST_TASKS });
    const hostile = [
      ...Array.from({ length: 97 }, (_, at) => kept(`x${at}`, 1)),
      kept('growing', 1),
      kept('growing', 2),
    ];
    const doc = readExport(
      writeExport({ ...fresh(), told: '9999-01-01T00:00:00.000Z', lessons: hostile }),
      'ada',
      'Ada',
    );
    expect(doc.lessons).toEqual([kept('growing', 2)]);
    expect(doc.told).toBeUndefined();
    begin(doc, growing, WAYS);
    expect(makerSchema().safeParse(doc).success).toBe(true);
  });

  it('that is not there any more is passed over', () => {
    const doc = fresh();
    doc.lessons = [
      {
        lesson: 'of-old',
        box: 1,
        tasks: 1,
        open: { seed: 1, ...WAYS, wrong: 0, hints: 0 },
        due: NOW.toISOString(),
      },
    ];
    expect(openTask(doc)).toBeUndefined();
    expect(pickNext(doc, later(2))?.name).toBe('reading');
  });
});

describe('what is next', () => {
  it('is what is due, the longest first; then what was begun; then the first whose ground is laid', () => {
    const doc = fresh();
    expect(pickNext(doc, NOW)?.name).toBe('reading');
    practise(doc, true, NOW, lessonNamed('reading'));
    expect(pickNext(doc, NOW)?.name).toBe('names');
    begin(doc, lessonNamed('quotas')!, WAYS);
    stop(doc);
    expect(pickNext(doc, NOW)?.name).toBe('quotas');
    expect(pickNext(doc, later(1))?.name).toBe('reading');
  });

  it('names what is lacking', () => {
    const doc = fresh();
    expect(lacking(doc, lessonNamed('shrinking')!).map(({ name }) => name)).toEqual(['growing']);
    practise(doc, true, NOW);
    expect(lacking(doc, lessonNamed('shrinking')!)).toEqual([]);
  });

  it('is nothing while all rest', () => {
    const doc = fresh();
    for (const lesson of LESSONS) practise(doc, true, NOW, lesson);
    expect(pickNext(doc, later(0.5))).toBeUndefined();
    expect(pickNext(doc, later(1))?.name).toBe('reading');
  });
});
