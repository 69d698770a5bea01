/** What must have been saved before a question about a group blanket can be asked: for the examples and their tests. */
import { open } from './open.ts';

export const OPENED: readonly string[] = [...(open.before ?? []), `/together open ${open.example}`];

/** The same, with two makers in it. */
export const JOINED = [
  ...OPENED,
  'rowan: /together join per_week:2',
  'ash: /together join per_week:1 colours:moss',
];
