/** Runs the terminal room: one question from the arguments, a line each from standard input, or a talk. */
import { createInterface } from 'node:readline';
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Registry } from '../../chat/registry.ts';
import type { Projects } from '../../projects/projects.ts';
import { TerminalRoom } from './room.ts';

export interface Running {
  readonly registry: Registry;
  readonly projects: Projects;
  readonly fault: (error: unknown) => string;
  /** The folder that answers' files are written to. */
  readonly files: string;
}

function room({ files, ...parts }: Running): TerminalRoom {
  return new TerminalRoom({
    ...parts,
    now: () => new Date(),
    keep: async (made) => {
      if (made.length > 0) await mkdir(files, { recursive: true });
      return Promise.all(
        made.map(async ({ name, content }) => {
          const path = join(files, name);
          await writeFile(path, content);
          return path;
        }),
      );
    },
  });
}

/** Answers the question in the arguments, or each line of standard input in order; returns the exit status. */
export async function askOnce(args: readonly string[], running: Running): Promise<number> {
  const json = args.includes('--json');
  const question = args.filter((arg) => arg !== '--json').join(' ');
  const terminal = room(running);
  if (question !== '') {
    const { text, status } = await terminal.answer(question, json);
    process.stdout.write(`${text}\n`);
    return status;
  }
  let worst = 0;
  for await (const line of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
    if (line.trim() === '') continue;
    // Many questions at once: each answer is one line, its headline or its JSON.
    const { text, brief, status } = await terminal.answer(line, json);
    process.stdout.write(`${json ? text : brief}\n`);
    worst = worst === 1 || status === 1 ? 1 : Math.max(worst, status);
  }
  return worst;
}

/** Talks until the input ends or someone types bye. */
export async function talk(running: Running, greeting: readonly string[]): Promise<number> {
  const terminal = room(running);
  process.stdout.write(`${greeting.join('\n')}\n`);
  const lines = createInterface({ input: process.stdin, output: process.stdout, prompt: '> ' });
  lines.prompt();
  for await (const line of lines) {
    if (/^\s*(bye|exit|quit)\s*$/i.test(line)) break;
    if (line.trim() !== '') process.stdout.write(`${(await terminal.answer(line, false)).text}\n\n`);
    lines.prompt();
  }
  lines.close();
  return 0;
}
