/** Runs the terminal room: one question from the arguments, a line each from standard input, or a talk. */
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { waysOf } from '../../chat/first-ways.ts';
import type { Makers } from '../../chat/made-file.ts';
import type { Registry } from '../../chat/registry.ts';
import type { Projects } from '../../projects/projects.ts';
import { readTextFile, writeFiles } from './files.ts';
import { folderOf } from './kept-files.ts';
import { linesOf } from './lines.ts';
import { TerminalRoom } from './room.ts';

export interface Running {
  readonly registry: Registry;
  readonly projects: Projects;
  readonly fault: (error: unknown, question?: string) => string;
  /** The folder that answers' files are written to. */
  readonly files: string;
  readonly makers: Makers;
  /** Aborted when the process is asked to stop: the answer in hand is finished, no other is begun. */
  readonly stop: AbortSignal;
}

function room({ files, makers, ...parts }: Running, how: string): TerminalRoom {
  const own = (maker: string) => folderOf(files, maker);
  return new TerminalRoom({
    ...parts,
    how,
    // Set for measures alone, it is somebody's own wish; LANG is set to en_US on many a machine that nobody asked.
    ways: waysOf(process.env['LC_MEASUREMENT'] ?? ''),
    now: () => new Date(),
    read: (path, option, maker) => readTextFile(path, option, own(maker)),
    keep: (made, maker) => saying(made, writeFiles(own(maker), made, makers)),
  });
}

/** From here on somebody wonders whether anything happens. */
const SAID_AFTER_MS = 1000;

/** Says that files are being made where it takes its time; beside the answers, which programs read. */
async function saying<T>(files: readonly { readonly name: string }[], work: Promise<T>): Promise<T> {
  const names = files.map(({ name }) => name.replace(/\.svg$/, '.png')).join(', ');
  const timer = setTimeout(() => process.stderr.write(`Being made: ${names} …\n`), SAID_AFTER_MS);
  try {
    return await work;
  } finally {
    clearTimeout(timer);
  }
}

/** Writes, and waits where the reader is slower: answers must not pile up in memory. */
async function say(text: string): Promise<void> {
  if (!process.stdout.write(text)) await once(process.stdout, 'drain');
}

/** Answers the question in the arguments, or each line of standard input in order; returns the exit status. */
export async function askOnce(args: readonly string[], running: Running): Promise<number> {
  const json = args.includes('--json');
  const whole = args.includes('--working');
  const question = args.filter((arg) => arg !== '--json' && arg !== '--working').join(' ');
  const terminal = room(running, 'the same with --working.');
  if (question !== '') {
    const { text, status } = await terminal.answer(question, json, whole);
    await say(`${text}\n`);
    return status;
  }
  let worst = 0;
  for await (const line of linesOf(process.stdin)) {
    if (running.stop.aborted) break;
    // Many questions at once: each line has one answer, an empty one too, so that whoever counts them stays in step. Each answer is one line, its headline or its JSON.
    const { text, brief, status } = await terminal.answer(line, json);
    await say(`${json ? text : brief}\n`);
    worst = worst === 1 || status === 1 ? 1 : Math.max(worst, status);
  }
  return worst;
}

/** Talks until the input ends or someone types bye. */
export async function talk(running: Running, greeting: readonly string[]): Promise<number> {
  const terminal = room(running, 'type why.');
  await say(`${greeting.join('\n')}\n`);
  const lines = createInterface({ input: process.stdin, output: process.stdout, prompt: '> ' });
  // Piped input has often ended before its first question is answered; there is nobody to prompt then.
  const input = { open: true };
  lines.once('close', () => {
    input.open = false;
  });
  const end = () => lines.close();
  lines.on('SIGINT', end);
  running.stop.addEventListener('abort', end);
  lines.prompt();
  for await (const line of lines) {
    const typed = line.trim();
    if (/^(bye|exit|quit)$/i.test(typed)) break;
    // In a talk the slash may be left out of the one question that somebody who is lost will type.
    if (typed !== '')
      await say(`${(await terminal.answer(/^help\b/i.test(typed) ? `/${typed}` : line, false)).text}\n\n`);
    if (input.open) lines.prompt();
  }
  lines.close();
  return 0;
}
