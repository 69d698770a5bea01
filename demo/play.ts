/** Plays a story in the terminal room, as if its people typed, and leaves the pictures in a folder. */
import { join } from 'node:path';
import { registry } from '../commands/index.ts';
import { FileStore } from '../src/projects/file-store.ts';
import { Projects } from '../src/projects/projects.ts';
import { readTextFile, writeFiles } from '../src/rooms/terminal/files.ts';
import { TerminalRoom } from '../src/rooms/terminal/room.ts';
import { pagePicture } from '../tools/page-picture.ts';
import type { AnswerFile } from '../src/chat/answer.ts';
import type { Makers } from '../src/chat/made-file.ts';
import type { Scene } from './story.ts';

export interface Stage {
  /** What is saved on the way is kept here. */
  readonly data: string;
  readonly pictures: string;
  readonly makers: Makers;
  readonly say: (text: string) => void;
}

export interface Played {
  readonly asked: number;
  /** Lines that were refused, each with what was said. */
  readonly refused: readonly string[];
  /** Where pictures and tables went, in order. */
  readonly files: readonly string[];
}

interface Answer {
  readonly ok: boolean;
  readonly headline: string;
  readonly lines?: readonly string[];
  readonly working: readonly { readonly label: string; readonly shown: string }[];
  readonly cautions: readonly string[];
  readonly files: readonly string[];
  readonly problem: string;
  readonly hint: string;
}

/** A sheet to print, and its first two pages as pictures beside it. */
function withPages({
  name,
  content,
}: Pick<AnswerFile, 'name' | 'content'>): Pick<AnswerFile, 'name' | 'content'>[] {
  if (typeof content === 'string') return [{ name, content }];
  const page = (number: number) => ({
    name: name.replace(/\.pdf$/, `-page-${number}.svg`),
    content: pagePicture(content, number),
  });
  return [{ name, content }, page(1), page(2)];
}

/** The story begins on a morning in March; every line takes a minute. */
const BEGINS = Date.UTC(2026, 2, 2, 9);
const MINUTE = 60_000;
const DAY = 24 * 60 * MINUTE;
/** So many lines of an answer are told; a row-by-row instruction has many more. */
const MOST_LINES = 7;

const indented = (lines: readonly string[]) => lines.map((line) => `    ${line}`);

function told(
  { headline, lines = [], working, files }: Answer,
  cautions: readonly string[],
  why: boolean,
): string {
  const more = lines.length - MOST_LINES;
  const shown = more > 1 ? [...lines.slice(0, MOST_LINES), `… and ${more} lines more`] : lines;
  return [
    `  ${headline}`,
    ...indented(shown),
    ...(why ? indented(working.map((step) => `${step.label}: ${step.shown}`)) : []),
    ...indented(cautions.map((caution) => `Take care: ${caution}`)),
    ...indented(files.map((file) => `→ ${file}`)),
  ].join('\n');
}

export async function play(story: readonly Scene[], { data, pictures, makers, say }: Stage): Promise<Played> {
  const store = await FileStore.open({ folder: data, stays: true });
  let now = BEGINS;
  let asked = 0;
  const refused: string[] = [];
  const files: string[] = [];
  const warned = new Set<string>();
  const room = new TerminalRoom({
    registry,
    projects: new Projects(store),
    now: () => new Date(now),
    // Two charts of two motifs are two pictures: each answer's files bear its number.
    keep: (made) =>
      writeFiles(
        pictures,
        made.flatMap(withPages).map(({ name, content }) => ({
          name: `${String(asked).padStart(2, '0')}-${name}`,
          content,
        })),
        makers,
      ),
    read: (path, option) => readTextFile(join(pictures, path), option, pictures),
    fault: (error) => {
      say(String(error instanceof Error ? error.stack : error));
      return 'told above';
    },
  });
  try {
    for (const scene of story) {
      if ('tell' in scene) say(`\n${scene.tell}\n`);
      else if ('days' in scene) now += scene.days * DAY;
      else {
        now += MINUTE;
        asked += 1;
        const answer = JSON.parse((await room.answer(scene.ask, true)).text) as Answer;
        say(`> ${scene.ask}`);
        if (answer.ok) {
          files.push(...answer.files);
          // A caution is told the first time; every answer that needs it carries it all the same.
          const fresh = answer.cautions.filter((caution) => !warned.has(caution));
          for (const caution of fresh) warned.add(caution);
          say(told(answer, fresh, scene.working === true));
        } else {
          refused.push(`${scene.ask}: ${answer.problem} ${answer.hint}`);
          say(`  Refused: ${answer.problem} ${answer.hint}`);
        }
      }
    }
  } finally {
    await store.close();
  }
  return { asked, refused, files };
}
