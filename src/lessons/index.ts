/** All lessons, in the order in which they build on one another. */
import { balls } from './balls.ts';
import { border } from './border.ts';
import { colours } from './colours.ts';
import { diamond } from './diamond.ts';
import { ends } from './ends.ts';
import { gauge } from './gauge.ts';
import { growing } from './growing.ts';
import { howMany } from './how-many.ts';
import { joining } from './joining.ts';
import type { Lesson } from './lesson.ts';
import { names } from './names.ts';
import { quotas } from './quotas.ts';
import { reading } from './reading.ts';
import { repeats } from './repeats.ts';
import { rounds } from './rounds.ts';
import { runningOut } from './running-out.ts';
import { shrinking } from './shrinking.ts';
import { spacing } from './spacing.ts';
import { swatch } from './swatch.ts';
import { weighing } from './weighing.ts';
import { whereWrong } from './where-wrong.ts';
import { whichRow } from './which-row.ts';

export const LESSONS: readonly Lesson[] = [
  reading,
  names,
  growing,
  shrinking,
  whichRow,
  whereWrong,
  swatch,
  gauge,
  diamond,
  colours,
  ends,
  weighing,
  balls,
  runningOut,
  spacing,
  repeats,
  howMany,
  joining,
  border,
  rounds,
  quotas,
];

const byName = new Map(LESSONS.map((lesson) => [lesson.name, lesson]));

export const lessonNamed = (name: string): Lesson | undefined => byName.get(name);
