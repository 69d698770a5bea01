/** The command about gauge. */
import { command } from '../../src/chat/command.ts';
import { compare } from './compare.ts';
import { shape } from './shape.ts';
import { size } from './size.ts';

export const gauge = command({
  name: 'gauge',
  says: 'Your own stitch and row against the pattern’s',
  about: 'craft',
  questions: [compare, shape, size],
});
