/** A line asked in a place of a server, as a room asks it. */
import { registry } from '../commands/index.ts';
import type { RenderedAnswer } from '../src/chat/answer.ts';
import { ask } from '../src/chat/ask.ts';
import type { Place } from '../src/chat/context.ts';
import { readLine } from '../src/chat/line.ts';
import type { Projects } from '../src/projects/projects.ts';
import { DEFAULT_SETTINGS } from '../src/projects/schema.ts';

let asked = 0;

/** Asks as a maker, the teacher if none is named; every asking is a press of its own unless `once` says otherwise. */
export function askLine(
  projects: Projects,
  line: string,
  { now, place, maker = 'ines', once }: { now: Date; place: Place; maker?: string; once?: string },
): Promise<RenderedAnswer> {
  const { route, options } = registry.locate(readLine(line));
  return ask(route, options, {
    maker: { id: maker, name: maker },
    reader: DEFAULT_SETTINGS,
    place,
    now,
    once: once ?? `press ${(asked += 1)}`,
    whois: () => undefined,
    projects,
  });
}
