/** The parts of the pages that are written from the program itself, each between two marks in its page. */
import { readFileSync } from 'node:fs';
import { registry } from '../commands/index.ts';
import { commandsMarkdown, referenceMarkdown } from '../src/chat/reference.ts';
import { LESSONS } from '../src/lessons/index.ts';
import { MemoryStore } from '../src/projects/memory.ts';
import { Projects } from '../src/projects/projects.ts';
import { measureAnswers, type Length } from '../test/rooms/discord/lengths.ts';
import { TerminalRoom } from '../src/rooms/terminal/room.ts';

/** The question that the README answers in full. */
const SHOWN = 'my counts are 3 5 7 8 10 on a 12 row diagonal square, where did I go wrong?';

/** A lesson as it goes: begun, a slip, and the right answer. */
const TAUGHT = ['/lesson start lesson:growing', '/lesson answer 19', '/lesson answer 17'] as const;

/** A page as it stands, from the folder of the project. */
export const readPage = (page: string) => readFileSync(new URL(`../${page}`, import.meta.url), 'utf8');

/** The page with a part written anew. Throws where the page has lost its place for it. */
export function withPart(text: string, name: string, by: string, fresh: string): string {
  const start = `<!-- ${name}: written by \`${by}\` -->`;
  const end = `<!-- end of ${name} -->`;
  const from = text.indexOf(start);
  const to = text.indexOf(end, from);
  if (from < 0 || to < 0) throw new Error(`there is no place between ${start} and ${end}`);
  return `${text.slice(0, from)}${start}\n\n${fresh}\n\n${text.slice(to)}`;
}

/** What stands before the first blank line: what answers, without what it rests on and what can be done next. */
const firstBlock = (text: string) => text.split('\n\n')[0] ?? '';

/** What the terminal room says first to lines, one after the other, from a store with nothing in it. */
async function answered(...lines: readonly string[]): Promise<string> {
  const room = new TerminalRoom({
    registry,
    projects: new Projects(new MemoryStore()),
    now: () => new Date('2031-03-01T10:00:00Z'),
    keep: () => Promise.resolve([]),
    read: () => Promise.reject(new Error('no file is read here')),
    fault: (error) => {
      throw error;
    },
  });
  const said: string[] = [];
  for (const line of lines) said.push(`> ${line}`, firstBlock((await room.answer(line, false)).text));
  return said.join('\n');
}

/** Answers that are shown as they stand in a channel. */
const LOOKED_OVER: readonly string[] = [
  'ask',
  'stitches row',
  'stitches check',
  'stitches spread',
  'gauge compare',
  'gauge shape',
  'yardage weighed',
  'yardage rough',
  'resize',
  'border spacing',
  'joining',
  'motif show',
  'motif weigh',
  'blanket start',
  'blanket materials',
  'progress next',
  'progress counted',
  'lookup term',
  'together board',
  'together pledge',
];

/** First answers as people see them before they unfold anything. */
const answersMarkdown = (answers: readonly Length[]): string =>
  LOOKED_OVER.flatMap((path) => answers.find((answer) => answer.path === path) ?? [])
    .map(({ line, content, buttons }) =>
      [
        `\`${line}\``,
        '',
        '```text',
        content,
        ...(buttons.length === 0 ? [] : [buttons.map((label) => `[${label}]`).join(' ')]),
        '```',
      ].join('\n'),
    )
    .join('\n\n');

const row = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;

/** Every lesson, what it needs first, and the slips that it knows. */
const lessonsMarkdown = (): string =>
  [
    row(['lesson', 'about', 'after', 'slips that it knows']),
    row(['---', '---', '---', '---']),
    ...LESSONS.map(({ name, title, needs, practice }) =>
      row([`\`${name}\``, title, needs.join(', '), practice.slips.map(({ key }) => key).join(', ')]),
    ),
  ].join('\n');

/** Every page with a written part, with what stands in it and what belongs in it. */
export async function writtenPages(): Promise<readonly { page: string; stands: string; belongs: string }[]> {
  const example = ['```', await answered(SHOWN, 'why'), '```'].join('\n');
  const parts = [
    { page: 'README.md', name: 'answer', fresh: example },
    {
      page: 'README.md',
      name: 'lesson',
      fresh: ['```', await answered(...TAUGHT), '```'].join('\n'),
    },
    { page: 'docs/lessons.md', name: 'lessons', fresh: lessonsMarkdown() },
    { page: 'README.md', name: 'commands', fresh: commandsMarkdown(registry) },
    { page: 'docs/questions.md', name: 'questions', fresh: referenceMarkdown(registry) },
    { page: 'docs/answers.md', name: 'answers', fresh: answersMarkdown(await measureAnswers()) },
  ];
  return [...new Set(parts.map(({ page }) => page))].map((page) => {
    const stands = readPage(page);
    const belongs = parts
      .filter((part) => part.page === page)
      .reduce((text, { name, fresh }) => withPart(text, name, 'npm run reference', fresh), stands);
    return { page, stands, belongs };
  });
}
