/** Every command, named once. A new one is a file beside this and a line here. */
import { Registry } from '../src/chat/registry.ts';
import { stitches } from './stitches/index.ts';

export const registry = new Registry([stitches]);
