/** Every command, named once. A new one is a file beside this and a line here. */
import { Registry } from '../src/chat/registry.ts';
import { along } from './along/index.ts';
import { ask } from './ask/index.ts';
import { blanket } from './blanket/index.ts';
import { border } from './border/index.ts';
import { gauge } from './gauge/index.ts';
import { help } from './help/index.ts';
import { host } from './together/host.ts';
import { joining } from './joining/index.ts';
import { lesson } from './lesson/index.ts';
import { motif } from './motif/index.ts';
import { progress } from './progress/index.ts';
import { resize } from './resize/index.ts';
import { settings } from './settings/index.ts';
import { lookup } from './lookup/index.ts';
import { stitches } from './stitches/index.ts';
import { together } from './together/index.ts';
import { yardage } from './yardage/index.ts';

const commands = [
  ask(() => registry),
  stitches,
  gauge,
  yardage,
  resize,
  border,
  joining,
  motif,
  blanket,
  progress,
  settings,
  lookup,
  together,
  host,
  lesson,
  along,
] as const;

const every = [...commands, help(commands)] as const;

/** The commands as types: what each question takes. */
export type Commands = (typeof every)[number];

/** Questions that were part of another command once: buttons of old messages and people's habits still say so. */
const MOVED = new Map<string, string>([
  ...host.questions.map(({ name }) => [`${together.name} ${name}`, `${host.name} ${name}`] as const),
  // Giving back what was pledged; the parts of a make-along are what is released.
  ['together release', 'together giveback'],
]);

export const registry: Registry = new Registry(every, MOVED);
