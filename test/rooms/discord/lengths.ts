/** How long first answers are to the eye: every question's example, drawn as a message. */
import { registry } from '../../../commands/index.ts';
import { ask } from '../../../src/chat/ask.ts';
import { readLine } from '../../../src/chat/line.ts';
import { Projects } from '../../../src/projects/projects.ts';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { render, type Drawn } from '../../../src/rooms/discord/render.ts';
import { askedAgain } from '../../../src/rooms/discord/typed.ts';
import { clock } from '../../../src/rooms/discord/text.ts';
import { NOON } from '../../asking.ts';

/** Characters of a line on a desktop and on a phone. */
export const DESKTOP = 90;
export const PHONE = 44;

export interface Length {
  readonly path: string;
  readonly characters: number;
  readonly desktop: number;
  readonly phone: number;
  readonly content: string;
  /** The line that was asked. */
  readonly line: string;
  readonly buttons: readonly string[];
}

const textOf = ({ content, embeds }: Drawn): string =>
  [
    content,
    ...embeds.flatMap(({ title, description, fields, footer }) => [
      title,
      description,
      ...(fields ?? []).flatMap(({ name, value }) => [name, value]),
      footer?.text,
    ]),
  ]
    .filter((text) => text !== undefined && text !== '')
    .join('\n')
    // Marks that the platform takes away.
    .replace(/^-# /gm, '')
    .replaceAll('**', '')
    .replace(/\\([^0-9A-Za-z\s])/g, '$1');

/** Lines of a text where so many characters stand in one. */
export const linesAt = (text: string, width: number): number =>
  text.split('\n').reduce((sum, line) => sum + Math.max(1, Math.ceil(line.length / width)), 0);

/** Whoever goes by a name: her id is made of it. */
const person = (name: string) => ({ id: BigInt(`0x${Buffer.from(name).toString('hex')}`).toString(), name });

/** The first answer to every question's example, as it stands in a channel. */
export async function measureAnswers(): Promise<readonly Length[]> {
  const lengths: Length[] = [];
  for (const route of registry.routes) {
    const { path, question } = route;
    const context = {
      maker: { id: '1', name: 'rowan' },
      reader: { units: 'metric', terms: 'US', clock } as const,
      place: { manager: true, server: '2', channel: '3' },
      now: NOON,
      whois: person,
      projects: new Projects(new MemoryStore()),
    };
    let times = 0;
    let file = '';
    const answer = async (line: string) => {
      const found = registry.locate(readLine(line.replace(/^\w+: (?=\/)/, '')));
      // Whoever speaks is named before the line.
      const name = /^(\w+): \//.exec(line)?.[1];
      const maker = name === undefined ? context.maker : person(name);
      const options = 'file' in found.options ? { ...found.options, file } : found.options;
      const shown = await ask(found.route, options, { ...context, maker, once: `${path}${(times += 1)}` });
      const [first] = shown.files;
      if (typeof first?.content === 'string') file = first.content;
      return shown;
    };
    for (const line of question.before ?? []) await answer(line);
    const line = `/${path} ${question.example}`.trim();
    const shown = await answer(line);
    const again = askedAgain(route, readLine(line).options, context.reader);
    const drawn = render(shown, {
      again,
      kept: again === undefined ? '@abc' : undefined,
      asker: '1',
      serial: 'abc',
      open: false,
      sharable: false,
    });
    const content = textOf(drawn);
    lengths.push({
      path,
      characters: content.length,
      desktop: linesAt(content, DESKTOP),
      phone: linesAt(content, PHONE),
      content,
      line,
      buttons: drawn.components.flatMap(({ components }) => components.map(({ label = '' }) => label)),
    });
  }
  return lengths;
}
