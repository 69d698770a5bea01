/**
 * Hostile lines, made from what the registry says of itself: every question, every option, values that fit and values that
 * should not be typed there, cut, doubled, quoted wrongly. The same in every run. Asked by several makers of one server, in
 * turn as typed lines in the terminal and as options in Discord, where no line is read.
 */
import { loadDays } from '../../src/asked/days.ts';
import { registry } from '../../commands/index.ts';
import { isRequired, metaOf } from '../../src/chat/options.ts';
import type { Route } from '../../src/chat/registry.ts';
import { readLine, writeLine, type RawOptions } from '../../src/chat/line.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { MemoryStore } from '../../src/projects/memory.ts';
import { Projects } from '../../src/projects/projects.ts';
import { BUTTONS, EMBED, MESSAGE } from '../../src/rooms/discord/limits.ts';
import type { Drawn } from '../../src/rooms/discord/render.ts';
import { asking, NOON } from '../asking.ts';
import { answerAsDiscord, longestHold } from './largest.ts';

/** Numbers in [0, 1) that look like chance and are the same in every run. */
export function chances(seed: number): () => number {
  let state = seed | 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

const SCRAPS = [
  '"', '“', '”', "'", '\\', '\\"', '`', '|', ':', '/', '//', ' ', '  ', '\t', '\n', '\r\n', '\0', '\u001b[31m', '\u200b', '\u202e', '\u2066', '\ufeff',
  '\ud800', '👩‍👩‍👧‍👦', '𝔪𝔬𝔰𝔰', 'ﬁ', 'İ', 'ß', '１２', '½', '⅔', '×', '−', '–', '…', '⟦', '⟧', '⟦120 cm⟧', '⟦toString⟧', '⟦at 2026-13-99⟧', '⟦t:9e99:D⟧', '▸', 'name:', 'motifs:50',
  '<@1>', '<@!100000000000000001>', '<@&1>', '<#1>', '<t:1:R>', '@everyone', '@here', '[x](http://127.0.0.1)', 'https://example.org', '**', '||', '```', '> ', '# ', '-# ',
  '-', '-1', '0', '1e308', '1e-308', '1e999', 'NaN', 'Infinity', '0x10', '9'.repeat(40), '.5', '1,000', '1.000,5', '1/0', '1/3', '12in', '3cm', '5parsec', '100m', '0g', '13x10', '170m/100g',
  '__proto__', 'constructor', 'toString', 'hasOwnProperty', 'prototype', '[object Object]', 'undefined', 'null', '${1}', '{{x}}', '%s', '../../etc/passwd', 'C:\\x', '; rm -rf /', "' OR 1=1", 'f(x)=x', 'import("fs")',
  'moss', 'Moss', 'moss\u200b', 'mоss', 'rowan', 'rowan:', 'yes', 'no', 'all', 'hdc', 'treble', '2 rows moss, 1 row sand', 'twice', '9 times', '(', ')', '((((', '))))', ',', ',,,,', ';', '1-9', '9-1', '1-999999999',
]; // prettier-ignore

/** Who asks: names that others bear, or almost. */
export const MAKERS = ['rowan', 'Ines', 'rowan\u200b', 'constructor', '__proto__', 'a b'];

export interface FuzzReport {
  readonly lines: number;
  readonly answered: number;
  readonly refused: number;
  /** Lines that ended in a fault of ours, with what was thrown. */
  readonly faults: readonly { readonly line: string; readonly error: string }[];
  /** Answers that no room could show, or that showed what is ours alone. */
  readonly unsound: readonly { readonly line: string; readonly what: string }[];
  /** The longest that one line kept the thread, in ms of its work, and which. */
  readonly longest: { readonly ms: number; readonly line: string };
  /** Lines that kept it longer than was to be. */
  readonly over: readonly { readonly ms: number; readonly line: string }[];
}

/** Something of a question, as it might be typed by somebody who means ill. */
class Fuzz {
  constructor(private readonly chance: () => number) {}

  pick<T>(from: readonly T[]): T {
    return from[Math.floor(this.chance() * from.length)]!;
  }
  private readonly often = (share: number) => this.chance() < share;

  private value(route: Route, name: string): string {
    const { kind, choices, max, min, maxLength, example } = metaOf(route.question.options[name]!);
    const plain = () => {
      if (choices && this.often(0.7)) return this.pick(choices).value;
      if ((kind === 'integer' || kind === 'number') && this.often(0.6))
        return String(this.pick([max ?? 9, (max ?? 9) + 1, min ?? 0, (min ?? 0) - 1, 1, 2, 3, 12, 0.5]));
      if (this.often(0.3)) return this.pick(SCRAPS);
      return example;
    };
    let text = plain();
    while (this.often(0.35)) {
      const at = Math.floor(this.chance() * (text.length + 1));
      const way = this.chance();
      if (way < 0.5) text = `${text.slice(0, at)}${this.pick(SCRAPS)}${text.slice(at)}`;
      else if (way < 0.65) text = text.slice(at) + text.slice(0, at);
      else if (way < 0.75) text = text.slice(0, at);
      else if (way < 0.85)
        text = text.replace(/\d+/g, () => this.pick(['0', '1', '999', '1e9', '-3', '2.5']));
      else if (way < 0.95) text = `${text}, ${plain()}`;
      else text = text.repeat(Math.ceil((maxLength ?? 200) / (text.length + 1)) + 1);
    }
    return text.slice(0, 3_900);
  }

  asked(): { route: Route; options: RawOptions; by: string } {
    const route = this.pick(registry.routes);
    const options = Object.fromEntries(
      Object.entries(route.question.options).flatMap(([name, schema]) =>
        this.often(isRequired(schema) ? 0.95 : 0.35) ? [[name, this.value(route, name)] as const] : [],
      ),
    );
    return { route, options, by: this.pick(MAKERS) };
  }

  /** A line that says so, or almost. */
  line(): string {
    const { route, options, by } = this.asked();
    const way = this.chance();
    let line =
      way < 0.6
        ? writeLine({ words: [route.path], options })
        : way < 0.8
          ? `/${route.path} ${Object.entries(options)
              .map(([name, value]) => `${name}:${this.often(0.5) ? `"${value}"` : value}`)
              .join(' ')}`
          : way < 0.9
            ? `${this.pick(route.question.asked?.phrases ?? ['how many'])} ${Object.values(options).join(' ')}`
            : `/${route.path} ${route.question.example}`;
    while (this.often(0.15)) {
      const at = Math.floor(this.chance() * (line.length + 1));
      line = `${line.slice(0, at)}${this.pick(SCRAPS)}${line.slice(this.often(0.5) ? at : at + 3)}`;
    }
    return this.often(0.5) ? `${by}: ${line}` : line;
  }
}

/** What is wrong with a message: longer than the platform takes, or with something in it that is ours alone. */
function wrongWith({ content, embeds, components }: Drawn): string | undefined {
  const size = embeds.reduce(
    (sum, { title = '', description = '', footer, fields = [] }) =>
      sum +
      title.length +
      description.length +
      (footer?.text.length ?? 0) +
      fields.reduce((all, { name, value }) => all + name.length + value.length, 0),
    0,
  );
  if (content.length > MESSAGE.content) return `a text of ${content.length} characters`;
  if (size > EMBED.total) return `embeds of ${size} characters`;
  for (const { components: row } of components)
    for (const { custom_id: id, label = '' } of row)
      if (id.length > BUTTONS.customId || label.length > BUTTONS.label)
        return `a button of ${id.length} and ${label.length} characters`;
  return unsaid(content);
}

/** What was typed may come back; what we make of it holds no brackets of ours and nothing that has no value. */
const unsaid = (text: string) => (/⟦[^⟧]*⟧/.test(text) ? 'a token that was not filled in' : undefined);

/** Asks so many lines; a new beginning, with nothing saved, every so often. */
export async function fuzz(lines: number, seed: number, over: number): Promise<FuzzReport> {
  // As a room that stays.
  await loadDays();
  const fuzz = new Fuzz(chances(seed));
  const count = { answered: 0, refused: 0 };
  const faults: { line: string; error: string }[] = [];
  const unsound: { line: string; what: string }[] = [];
  const long: { ms: number; line: string }[] = [];
  let longest = { ms: 0, line: '' };
  let room = asking();
  for (let n = 0; n < lines; n += 1) {
    if (n % FRESH_AFTER === 0) room = asking(await withThings());
    const inTerminal = n % 2 === 0;
    // Presses are told apart by their moment.
    room.at(new Date(NOON.getTime() + (n + 1) * 60_000));
    const asked = fuzz.asked();
    const line = inTerminal
      ? fuzz.line()
      : `${asked.by}: ${asked.route.path} ${JSON.stringify(asked.options)}`;
    const ms = await longestHold(async () => {
      try {
        if (inTerminal) {
          const answer = await room.ask(line);
          count[answer.ok ? 'answered' : 'refused'] += 1;
          for (const error of room.faults.splice(0))
            faults.push({ line, error: String((error as Error).stack ?? error) });
          const what = answer.ok ? unsaid(answer.headline) : undefined;
          if (what !== undefined) unsound.push({ line, what });
        } else {
          const by = String(100_000_000_000_000_000n + BigInt(MAKERS.indexOf(asked.by)));
          const drawn = await answerAsDiscord(room.projects, { ...asked, by });
          count[drawn ? 'answered' : 'refused'] += 1;
          const what = drawn && wrongWith(drawn);
          if (what !== undefined && what !== false) unsound.push({ line, what });
        }
      } catch (error) {
        if (!(error instanceof Problem))
          faults.push({ line, error: String((error as Error).stack ?? error) });
      }
    });
    if (ms > longest.ms) longest = { ms, line };
    if (ms > over) long.push({ ms, line });
  }
  return { lines, ...count, faults, unsound, longest, over: long };
}

const FRESH_AFTER = 3_000;

/** Something saved to be asked about, of two makers: what the questions' own examples save. */
async function withThings(): Promise<Projects> {
  const projects = new Projects(new MemoryStore());
  const { ask } = asking(projects);
  const saved = new Set(registry.routes.flatMap(({ question }) => question.before ?? []));
  for (const line of saved) await ask(line);
  for (const line of saved) {
    const { words, options } = readLine(line);
    const route = registry.get(words.join(' '));
    if (route)
      await answerAsDiscord(projects, { route, options, by: '100000000000000000' }).catch(() => false);
  }
  return projects;
}
