/** Asks in the terminal room with a memory store, as the tests do. */
import { registry } from '../commands/index.ts';
import type { Paper } from '../src/paper/paper.ts';
import { Problem } from '../src/core/base/problem.ts';
import { MemoryStore } from '../src/projects/memory.ts';
import { Projects } from '../src/projects/projects.ts';
import { TerminalRoom } from '../src/rooms/terminal/room.ts';

export interface Json {
  ok: boolean;
  question: string;
  read_as?: string;
  headline: string;
  figures: Record<string, { value: number; unit: string }>;
  data: any; // eslint-disable-line @typescript-eslint/no-explicit-any
  lines?: string[];
  working: {
    label: string;
    formula: string;
    with: Record<string, number>;
    result: number;
    unit: string;
    source: string;
    shown: string;
  }[];
  assumptions: string[];
  cautions: string[];
  files: string[];
  problem: string;
  code: string;
  option: string | null;
  hint: string;
}

export const NOON = new Date('2026-03-02T12:00:00Z');

export interface Asking {
  /** Asks a line (a leading `name:` chooses the maker) and reads the JSON. */
  readonly ask: (line: string) => Promise<Json>;
  /** The value of one figure. */
  readonly figure: (line: string, key: string) => Promise<number | undefined>;
  readonly text: (line: string) => Promise<string>;
  readonly faults: unknown[];
  readonly files: { name: string; content: string }[];
  /** Sheets to print, under their names. */
  readonly sheets: Map<string, Paper>;
  readonly projects: Projects;
  /** Moves the clock. */
  readonly at: (moment: Date) => void;
}

export function asking(projects = new Projects(new MemoryStore()), questions = registry): Asking {
  const faults: unknown[] = [];
  const files: { name: string; content: string }[] = [];
  const sheets = new Map<string, Paper>();
  let now = NOON;
  const room = new TerminalRoom({
    registry: questions,
    projects,
    now: () => now,
    keep: (made) => {
      for (const { name, content } of made) {
        if (typeof content === 'string') files.push({ name, content });
        else sheets.set(name, content);
      }
      return Promise.resolve(made.map(({ name }) => name));
    },
    // A file that an answer has brought can be handed in by its name.
    read: (path, option) => {
      const file = files.findLast(({ name }) => name === path);
      return file === undefined
        ? Promise.reject(
            new Problem('unsorted', 'That file is not there.', { option, hint: 'Ask for one first.' }),
          )
        : Promise.resolve(file.content);
    },
    fault: (error) => {
      faults.push(error);
      return 'fault';
    },
  });
  const ask = async (line: string) => JSON.parse((await room.answer(line, true)).text) as Json;
  return {
    ask,
    figure: async (line, key) => (await ask(line)).figures[key]?.value,
    text: async (line) => (await room.answer(line, false)).text,
    faults,
    files,
    sheets,
    projects,
    at: (moment) => {
      now = moment;
    },
  };
}
