/** Which lessons a maker has begun, where each lies, and the task that is open. Functions on a draft of her document. */
import { nextSeed, seedOf } from '../core/base/chance.ts';
import { defined } from '../core/base/defined.ts';
import { sameName } from '../core/base/nearest-name.ts';
import { DAYS_BY_BOX, isDue, isKnown, moveBack, moveOn, TRIES } from '../lessons/boxes.ts';
import { LESSONS, lessonNamed } from '../lessons/index.ts';
import { drawTask, type Given, type Lesson, type Own } from '../lessons/lesson.ts';
import { MOST_TASKS, type LessonKept, type MakerDoc } from './schema.ts';

/** How a lesson stands with her. */
export type LessonState = 'new' | 'begun' | 'due' | 'resting' | 'known';

export const keptOf = (doc: Pick<MakerDoc, 'lessons'>, name: string): LessonKept | undefined =>
  doc.lessons?.find(({ lesson }) => lesson === name);

export function stateOf(kept: LessonKept | undefined, now: Date): LessonState {
  if (kept === undefined) return 'new';
  if (kept.box > 0 && isKnown(kept)) return 'known';
  if (isDue(kept, now)) return 'due';
  return kept.due === undefined ? 'begun' : 'resting';
}

/** The task she is at: the latest that is open; undefined where none is. */
export interface OpenTask {
  readonly lesson: Lesson;
  readonly given: Given;
  readonly triesLeft: number;
  readonly hints: number;
}

export function openTask(doc: Pick<MakerDoc, 'lessons'>): OpenTask | undefined {
  const kept = doc.lessons?.findLast(({ open }) => open !== undefined);
  const lesson = kept && lessonNamed(kept.lesson);
  if (!kept?.open || !lesson) return undefined;
  const { seed, units, terms, size, wrong, hints } = kept.open;
  return { lesson, given: drawTask(lesson, seed, { units, terms, size }), triesLeft: TRIES - wrong, hints };
}

/** Her own diagonal square's rising rows, where the motif she is at is one. */
function ownSize({ motifs, current }: Pick<MakerDoc, 'motifs' | 'current'>): number | undefined {
  const motif = motifs.find(({ name }) => current.motif !== undefined && sameName(name, current.motif));
  return motif?.shape === 'diagonal' ? motif.size : undefined;
}

/** Puts a lesson last in her list, changed. */
function keep(doc: MakerDoc, kept: LessonKept): void {
  doc.lessons = [...(doc.lessons ?? []).filter(({ lesson }) => lesson !== kept.lesson), kept];
}

const without = ({ open: _, ...kept }: LessonKept): LessonKept => kept;

/** Of lessons from a file those that there are, each once: the last of its name. */
export const keepKnown = (lessons: readonly LessonKept[]): LessonKept[] => [
  ...new Map(
    lessons.filter(({ lesson }) => lessonNamed(lesson) !== undefined).map((kept) => [kept.lesson, kept]),
  ).values(),
];

/** Sets every open task down; each lesson stays where it lies. What comes back is what was open. */
export function stop(doc: MakerDoc): OpenTask | undefined {
  const was = openTask(doc);
  if (doc.lessons) doc.lessons = doc.lessons.map(without);
  return was;
}

/** Begins a task of a lesson, with fresh numbers in her ways; any other that is open is set down. */
export function begin(doc: MakerDoc, lesson: Lesson, ways: Pick<Own, 'units' | 'terms'>): OpenTask {
  stop(doc);
  const before = keptOf(doc, lesson.name) ?? { lesson: lesson.name, box: 0, tasks: 0 };
  const tasks = Math.min(before.tasks + 1, MOST_TASKS);
  const open = defined({
    seed: nextSeed(seedOf(`${doc.id} ${lesson.name} ${tasks}`)),
    units: ways.units,
    terms: ways.terms,
    size: ownSize(doc),
    wrong: 0,
    hints: 0,
  });
  keep(doc, { ...before, tasks, open });
  return { lesson, given: drawTask(lesson, open.seed, open), triesLeft: TRIES, hints: 0 };
}

/** What became of an answer. */
export interface Noted {
  readonly triesLeft: number;
  /** Where the lesson lies now, once its task is over. */
  readonly kept: LessonKept;
}

/** Notes an answer to the task that is open: right moves the lesson on, the last wrong one sends it back to the first box. */
export function note(doc: MakerDoc, { lesson, triesLeft }: OpenTask, right: boolean, now: Date): Noted {
  const before = keptOf(doc, lesson.name) ?? { lesson: lesson.name, box: 0, tasks: 1 };
  const over = right || triesLeft <= 1;
  // Somebody who comes back before the day has practised, and the days go on as they were.
  const early = right && before.due !== undefined && !isDue(before, now);
  const at = !right || triesLeft < TRIES ? moveBack(now) : early ? before : moveOn(before, now);
  const kept: LessonKept = over
    ? defined({ lesson: before.lesson, tasks: before.tasks, box: at.box, due: at.due })
    : { ...before, ...(before.open && { open: { ...before.open, wrong: before.open.wrong + 1 } }) };
  keep(doc, kept);
  return { triesLeft: over ? 0 : triesLeft - 1, kept };
}

/** Notes that a hint was given. */
export function noteHint(doc: MakerDoc, { lesson, hints }: OpenTask): void {
  const before = keptOf(doc, lesson.name);
  if (before?.open) keep(doc, { ...before, open: { ...before.open, hints: Math.min(9, hints + 1) } });
}

/** The lessons that are good to know first and that she has not had right once. */
export const lacking = (doc: Pick<MakerDoc, 'lessons'>, { needs }: Lesson): readonly Lesson[] =>
  needs.flatMap((name) => {
    const lesson = lessonNamed(name);
    return lesson !== undefined && (keptOf(doc, name)?.box ?? 0) === 0 ? [lesson] : [];
  });

/** What is best done next: what is due, the longest first; then what was begun; then the first new one whose ground is laid. */
export function pickNext(doc: Pick<MakerDoc, 'lessons'>, now: Date): Lesson | undefined {
  const due = (doc.lessons ?? [])
    .filter((kept) => stateOf(kept, now) === 'due')
    .sort((a, b) => Date.parse(a.due ?? '') - Date.parse(b.due ?? ''))
    .flatMap(({ lesson }) => lessonNamed(lesson) ?? []);
  const open = LESSONS.filter(({ name }) => ['new', 'begun'].includes(stateOf(keptOf(doc, name), now)));
  const begun = open.filter(({ name }) => keptOf(doc, name) !== undefined);
  return due[0] ?? begun[0] ?? open.find((lesson) => lacking(doc, lesson).length === 0) ?? open[0];
}

/** The first day on which something comes back (ISO), where nothing is due now. */
export const nextDue = (doc: Pick<MakerDoc, 'lessons'>): string | undefined =>
  (doc.lessons ?? []).flatMap(({ due }) => due ?? []).sort()[0];

/** How many times a lesson has still to be right, one after the other, until it is known. */
export const timesToKnow = ({ box }: Pick<LessonKept, 'box'>): number =>
  Math.max(0, DAYS_BY_BOX.length + 1 - box);
