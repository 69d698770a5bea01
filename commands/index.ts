/** Every command, named once. A new one is a file beside this and a line here. */
import { Registry } from '../src/chat/registry.ts';
import { gauge } from './gauge/index.ts';
import { help } from './help/index.ts';
import { settings } from './settings/index.ts';
import { stitches } from './stitches/index.ts';

const commands = [stitches, gauge, settings];

export const registry = new Registry([...commands, help(commands)]);
