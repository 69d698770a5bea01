/** Lessons: every task has one right way, and every wrong number that is known has one slip. */
import { describe, expect, it } from 'vitest';
import { forReader, type Reader } from '../../src/core/base/reader.ts';
import { writeStep } from '../../src/core/base/working.ts';
import { LESSONS, lessonNamed } from '../../src/lessons/index.ts';
import { drawTask, isClear, judge, listSlips, nearEnough, type Own } from '../../src/lessons/lesson.ts';
import { describeAsked, readAnswer, sayAnswer } from '../../src/lessons/typed-answer.ts';
import { drawLesson } from '../../src/pictures/lesson.ts';
import { asking } from '../asking.ts';
import { SOLUTIONS } from './solutions.ts';

const READERS: readonly Reader[] = (['metric', 'imperial'] as const).flatMap((units) =>
  (['US', 'UK'] as const).map((terms) => ({ units, terms })),
);
const OWNERS: readonly Own[] = READERS.flatMap((reader) => [reader, { ...reader, size: 12 }]);
const SEEDS = Array.from({ length: 24 }, (_, at) => 1 + at * 401);

const tasksOf = (name: string) => {
  const lesson = lessonNamed(name);
  if (!lesson) throw new Error(`no lesson ${name}`);
  return {
    lesson,
    tasks: OWNERS.flatMap((own) => SEEDS.map((seed) => ({ own, given: drawTask(lesson, seed, own) }))),
  };
};

it('has at least fifteen, each after what it needs', () => {
  expect(LESSONS.length).toBeGreaterThanOrEqual(15);
  LESSONS.forEach(({ name, needs }, at) => {
    const before = LESSONS.slice(0, at).map((one) => one.name);
    expect(
      needs.filter((need) => !before.includes(need)),
      name,
    ).toEqual([]);
  });
  expect(new Set(LESSONS.map(({ name }) => name)).size).toBe(LESSONS.length);
});

describe.each(LESSONS.map(({ name }) => name))('%s', (name) => {
  const { lesson, tasks } = tasksOf(name);
  const { practice } = lesson;

  it('comes to what a second way comes to', () => {
    const solve = SOLUTIONS[name];
    expect(solve).toBeDefined();
    for (const { given } of [...tasks, lesson.example, ...(lesson.inInches ? [lesson.inInches] : [])])
      expect(practice.solve(given).value, JSON.stringify(given)).toBeCloseTo(solve!(given), 6);
  });

  it('tells every slip from every other and from the right way', () => {
    for (const { given } of tasks) {
      const asks = practice.asks(given);
      const right = practice.solve(given).value;
      const slips = listSlips(lesson, given);
      expect(slips.length).toBeGreaterThan(0);
      expect(isClear(lesson, given)).toBe(true);
      expect(judge(lesson, given, right)).toEqual({ right: true });
      for (const { slip, value } of slips) {
        expect(Math.abs(value - right), slip.key).toBeGreaterThan(nearEnough(asks, right));
        expect(judge(lesson, given, value)).toEqual({ right: false, slip });
      }
      // A number that nothing leads to is no slip.
      const far = 3 * Math.max(right, ...slips.map(({ value }) => Math.abs(value))) + 1;
      expect(judge(lesson, given, far)).toEqual({ right: false });
    }
  });

  it('meets each of its slips in some task', () => {
    const met = new Set(tasks.flatMap(({ given }) => listSlips(lesson, given).map(({ slip }) => slip.key)));
    expect([...met].sort()).toEqual(practice.slips.map(({ key }) => key).sort());
  });

  it('draws other numbers from other seeds, and the same from the same', () => {
    const { own } = tasks[0]!;
    const drawn = SEEDS.map((seed) => JSON.stringify(drawTask(lesson, seed, own)));
    expect(drawn).toEqual(SEEDS.map((seed) => JSON.stringify(drawTask(lesson, seed, own))));
    expect(new Set(drawn).size).toBeGreaterThan(name === 'names' ? 1 : 12);
  });

  it('says whole sentences in all units and terms, and gives nothing away', () => {
    for (const reader of READERS)
      for (const { own, given } of tasks.filter(
        (task) => task.own.units === reader.units && task.own.terms === reader.terms,
      )) {
        const task = forReader(practice.says(given), reader);
        const right = forReader(sayAnswer(practice.asks(given), practice.solve(given).value), reader);
        const texts = [
          lesson.title,
          forReader(lesson.idea, reader),
          task,
          forReader(practice.first(given), reader),
          ...practice.slips
            .filter((slip) => slip.value(given) !== undefined)
            .map((slip) => forReader(slip.says(given), reader)),
        ];
        for (const text of texts) {
          expect(text).toMatch(/^[A-Z“‘\d].*[.?!)]$|^[A-Z].*[a-z]$/s);
          expect(text).not.toMatch(/[⟦⟧]|undefined|NaN|Infinity|['"]/);
        }
        expect(task).toMatch(/[?.]$/);
        const number = /^[\d.,]+/.exec(right)?.[0];
        const words = (text: string): readonly string[] => text.match(/\d[\d.,]*\d|\d/g) ?? [];
        // What the task names itself may be named again.
        if (number !== undefined && Number(number) > 12 && !words(task).includes(number))
          for (const text of texts.slice(3)) expect(words(text), text).not.toContain(number);
        expect(own.units).toBe(reader.units);
      }
  });

  it('shows a working that ends in the result', () => {
    for (const { given } of tasks.slice(0, 20)) {
      const { value, working } = practice.solve(given);
      if (name === 'names') expect(working).toEqual([]);
      // A row is found by going along the rows: what is shown is the counting at that place.
      else if (practice.asks(given).kind === 'row') expect(working.length).toBeGreaterThan(0);
      else expect(working.map(({ result }) => result)).toContainEqual(expect.closeTo(value, 9));
      for (const step of working) expect(writeStep(step, READERS[0]!)).toContain('=');
    }
  });

  it('reads its own result as it is said', () => {
    for (const reader of READERS)
      for (const { given } of tasks.filter(({ own }) => own.units === reader.units).slice(0, 40)) {
        const asks = practice.asks(given);
        const { value } = practice.solve(given);
        const typed = forReader(sayAnswer(asks, value), reader);
        expect(judge(lesson, given, readAnswer(asks, typed, reader)).right, typed).toBe(true);
        expect(describeAsked(asks)).toMatch(/^(how|the|a) /);
      }
  });
});

it('gives no border half a stitch, which some round up and others down', () => {
  for (const { given } of tasksOf('border').tasks as readonly { given: Record<string, number> }[]) {
    const { width = 0, height = 0, stitches = 0, over = 1, corner = 0 } = given;
    const by = (round: (exact: number) => number) =>
      2 * (round((width * stitches) / over) + round((height * stitches) / over)) + 4 * corner;
    const up = by((exact) => Math.floor(exact + 0.501));
    const down = by((exact) => Math.ceil(exact - 0.501));
    expect([up, down], JSON.stringify(given)).toEqual([up, up]);
  }
});

describe('examples', () => {
  const room = asking();
  it.each(LESSONS.flatMap(({ name, example: { figure } }) => (figure === undefined ? [] : [name])))(
    '%s is what the question answers',
    async (name) => {
      const { example, inInches, practice } = lessonNamed(name)!;
      for (const { line, given, figure = '' } of inInches ? [example, inInches] : [example]) {
        const answer = await room.ask(`/${line}`);
        expect(answer.figures[figure]!.value, line).toBeCloseTo(practice.solve(given).value, 6);
      }
    },
  );

  it.each(LESSONS.flatMap(({ draws }) => draws ?? []))('draws %s, and says what is drawn', (drawn) => {
    const { svg, alt } = drawLesson(drawn, READERS[0]!);
    const left = drawLesson(drawn, { ...READERS[0]!, hand: 'left' });
    if (drawn === 'edge')
      expect([left.alt.includes('at the left'), alt.includes('at the right')]).toEqual([true, true]);
    expect(svg).toMatch(/^<svg .*<\/svg>$/s);
    expect(alt.length).toBeGreaterThan(60);
  });
});

describe('an answer', () => {
  const count = { kind: 'count', of: 'stitches' } as const;
  const metric = { units: 'metric' } as const;

  it.each([
    ['19', 19],
    ['19 stitches', 19],
    ['I think 19', 19],
    ['nineteen', 19],
    ['1,795', 1795],
    ['12½', 12.5],
  ])('%s is a number', (typed, value) => expect(readAnswer(count, typed, metric)).toBe(value));

  it.each([
    ['18', 'metric', 18],
    ['18 cm', 'imperial', 18],
    ['7', 'imperial', 17.78],
    ['7"', 'metric', 17.78],
    ['0.18 m', 'metric', 18],
  ] as const)('%s is a length to a reader of %s', (typed, units, cm) =>
    expect(readAnswer({ kind: 'cm', of: 'the side' }, typed, { units })).toBeCloseTo(cm, 9),
  );

  it.each([
    ['1,795 m', 'metric', 1795],
    ['1795', 'metric', 1795],
    ['200 yards', 'metric', 182.88],
    ['200', 'imperial', 182.88],
  ] as const)('%s is yarn to a reader of %s', (typed, units, m) =>
    expect(readAnswer({ kind: 'm', of: 'yarn' }, typed, { units })).toBeCloseTo(m, 9),
  );

  it.each([
    ['dc', 'US', 2],
    ['double crochet', 'US', 2],
    ['tr', 'UK', 2],
    ['US dc', 'UK', 2],
    ['UK treble', 'US', 2],
  ] as const)('%s is a stitch in %s terms', (typed, terms, place) =>
    expect(readAnswer({ kind: 'stitch', of: 'stitch', terms }, typed, metric)).toBe(place),
  );

  it.each([
    [count, 'soon'],
    [count, '3 or 4'],
    [{ kind: 'cm', of: 'the side' }, '12 grams'],
    [{ kind: 'stitch', of: 'stitch', terms: 'US' }, 'knit'],
  ] as const)('%o: %s is refused', (asks, typed) => {
    expect(() => readAnswer(asks, typed, metric)).toThrow(
      expect.objectContaining({ code: 'answer-unread', option: 'answer' }),
    );
  });
});
