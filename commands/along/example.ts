/** What must have been saved before a question about a make-along can be asked: for the examples and their tests. */
import { open } from './open.ts';

export const OPENED: readonly string[] = [...(open.before ?? []), `/along open ${open.example}`];

/** The same, with whoever asks in it, her gauge another than the teacher’s. */
export const JOINED: readonly string[] = [...OPENED, '/along join gauge:15x12 ball:170m/100g'];
