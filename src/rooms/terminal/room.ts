/** The room without Discord: lines in, answers out, one after the other. */
import { createHash } from 'node:crypto';
import { AskedBack, type Waiting } from '../../asked/asked-back.ts';
import type { AnswerFile, Choose, RenderedAnswer } from '../../chat/answer.ts';
import { ask } from '../../chat/ask.ts';
import type { Context, Maker } from '../../chat/context.ts';
import type { FirstWays } from '../../chat/first-ways.ts';
import { readLine, type Line, type RawOptions } from '../../chat/line.ts';
import { readyOptions } from '../../chat/ready-options.ts';
import type { Route, Registry } from '../../chat/registry.ts';
import { Problem, QUESTION } from '../../core/base/problem.ts';
import { plain } from '../../core/base/reader.ts';
import { NotSaved } from '../../projects/not-saved.ts';
import type { Projects } from '../../projects/projects.ts';
import { ownTime } from './clock.ts';
import {
  asJson,
  asText,
  inBrief,
  oneLine,
  refusalJson,
  refusalText,
  workingText,
  type Refusal,
} from './render.ts';

export interface TerminalParts {
  readonly registry: Registry;
  readonly projects: Projects;
  readonly now: () => Date;
  /** Writes the files of an answer; returns where they went. */
  readonly keep: (
    files: readonly Pick<AnswerFile, 'name' | 'content'>[],
    maker: string,
  ) => Promise<readonly string[]>;
  /** Reads the file that an option names; throws a Problem about the option where it cannot. */
  readonly read: (path: string, option: string, maker: string) => Promise<string>;
  /** The units and terms that people of whom nothing is saved begin with; the usual ones if not given. */
  readonly ways?: FirstWays | undefined;
  /** How to see the working of an answer that was just given; by asking why, if not said. */
  readonly how?: string;
  /** Notes a fault of ours with its error and the question it happened to; returns the id to show. */
  readonly fault: (error: unknown, question?: string) => string;
}

export interface Said {
  readonly text: string;
  /** The answer in one line. */
  readonly brief: string;
  /** 0 answered, 2 the question is at fault, 1 ours. */
  readonly status: 0 | 1 | 2;
}

/** Who asks where no name stands before the question. */
export const NOBODY_NAMED = 'me';

/** How others read of whoever gave no name: “me” would be each of them. */
const UNNAMED = 'the unnamed maker';

/** A maker's name before a question: `rowan: /progress next`. */
const SPEAKER = /^\s*([^\s:/"“][^:/"“]{0,39}):\s*(?=\/)/u;

/** A name before plain words: one word, so that “note to self: …” stays what it is. */
const SPEAKER_OF_WORDS = /^\s*([\p{L}\p{N}_-]{2,40}):\s+(?=[^\s/])/u;

/** How long what was understood waits for the option that is missing. */
const WAITS_MS = 10 * 60 * 1000;

/** Asks how the last answer was worked out. */
const WHY = /^\s*\/?why\s*\??\s*$/i;

const ASK_WHY = 'type why.';

/** Reads plain words; loaded where some are said, so that a typed question does not wait for it. */
const plainWords = () => import('../../asked/index.ts');

const saysYes = (typed: string | undefined) => typed !== undefined && /^(yes|y|true|1)$/i.test(typed.trim());

/** How many makers’ unfinished questions are kept, and last answers. */
const MOST_WAITING = 1000;

/** A name with nothing after it. */
const ONLY_SPEAKER = /^\s*([^\s:/"“][^:/"“]{0,39}):\s*$/u;

/** A name is shown to others: nothing unprintable in it. */
const readableName = (name: string) =>
  plain(name)
    .replace(/[\p{Cc}\p{Cf}]/gu, '')
    .trim() || NOBODY_NAMED;

/** A file-safe id for a name typed in the terminal. */
export function terminalId(name: string): string {
  const simple = name.trim().toLowerCase().normalize('NFKC');
  if (/^[a-z0-9][a-z0-9_-]{0,39}$/.test(simple)) return simple;
  // The dot keeps these apart from names that look like them.
  const hex = Buffer.from(simple).toString('hex');
  return `x.${hex.length <= 80 ? hex : createHash('sha256').update(simple).digest('hex')}`;
}

/** Whoever goes by this name in the terminal: anybody may begin a line with it. */
function personNamed(typed: string): Maker | undefined {
  const name = readableName(typed.replace(/^@/, ''));
  return SPEAKER.test(`${name}: /`) ? { id: terminalId(name), name } : undefined;
}

const refused = (refusal: Refusal, json: boolean, status: 1 | 2): Said => ({
  text: json ? refusalJson(refusal) : refusalText(refusal),
  brief: oneLine(`${refusal.problem} ${refusal.hint}`),
  status,
});

export class TerminalRoom {
  private asked = 0;
  /** What waits for a missing option, by the maker who was asked for it. */
  private readonly waiting = new Map<
    string,
    { readonly waiting: Waiting; readonly until: number; readonly only?: ReadonlySet<string> }
  >();
  /** The last answer of each maker, for those who ask why. */
  private readonly last = new Map<string, { readonly question: string; readonly shown: RenderedAnswer }>();

  constructor(private readonly parts: TerminalParts) {}

  /** Answers one line. Never throws: a fault of ours is noted and answered with its id. */
  async answer(text: string, json: boolean, whole = false): Promise<Said> {
    let asked: string | undefined;
    let asker = NOBODY_NAMED;
    try {
      const { name, line } = await this.speaker(text);
      const maker = { id: terminalId(name), name: name === NOBODY_NAMED ? UNNAMED : name };
      asker = maker.id;
      if (WHY.test(line)) return this.why(maker.id, json);
      const words = this.isTyped(line) ? undefined : line.trim();
      const typed = words === undefined ? readLine(line) : { words: ['ask'], options: { words } };
      const { ways } = this.parts;
      const untold =
        ways && (await this.parts.projects.beginWith(maker.id, { units: ways.units, terms: ways.terms }));
      const settings = await this.parts.projects.settings(maker.id);
      const context: Context = {
        maker,
        reader: { ...settings, clock: (iso) => ownTime(iso) },
        // Nobody manages the terminal: who opens a group blanket runs it.
        place: { manager: false },
        now: this.parts.now(),
        once: `${process.pid}-${this.parts.now().getTime()}-${this.asked++}`,
        whois: personNamed,
        projects: this.parts.projects,
        ...(ways ? { greets: () => (untold?.() === true ? ways.says : undefined) } : {}),
      };
      const bare = await this.withBareWords(typed, context);
      const { route: found, options: all } = bare ?? this.parts.registry.locate(typed);
      const { working, ...options } = all;
      asked = found.path;
      const shown =
        bare?.shown ??
        (words === undefined ? undefined : await this.completing(words, context)) ??
        (await ask(found, await this.withFiles(found, options, maker.id), context));
      this.waiting.delete(maker.id);
      this.leadOn(maker.id, shown.choose);
      const written = await this.parts.keep(shown.files, maker.id);
      this.remember(maker.id, { question: `/${found.path}`, shown });
      const full = { whole: whole || saysYes(working), how: this.parts.how ?? ASK_WHY };
      return {
        text: json ? asJson(`/${found.path}`, shown, written) : asText(shown, written, full),
        brief: inBrief(shown),
        status: 0,
      };
    } catch (error) {
      if (error instanceof Problem) {
        const back = error instanceof AskedBack ? error : undefined;
        this.wait(asker, back?.waiting);
        const refusal = {
          problem: error.message,
          code: error.code,
          option: error.option,
          hint: error.hint,
          readAs: back?.readAs,
        };
        return refused(refusal, json, error instanceof NotSaved ? 1 : 2);
      }
      const id = this.parts.fault(error, asked);
      const refusal = {
        problem: `Something went wrong here; it is noted as ${id}.`,
        code: 'fault',
        hint: 'Ask again; if it stays, report that id.',
      };
      return refused(refusal, json, 1);
    }
  }

  /** Whether a line is typed as a question: with its slash, in quotes, or with an option behind a command’s name. */
  private isTyped(line: string): boolean {
    if (/^\s*(?:[/"“]|\?+\s*$)/.test(line) || line.trim() === '') return true;
    const [first = ''] = line.trim().toLowerCase().split(/\s+/);
    return /\s[a-z_]+[:=]\S/i.test(line) && this.parts.registry.commands.some(({ name }) => name === first);
  }

  /** A question with words behind its own: answered where they can be nothing but some of its options. */
  private async withBareWords(typed: Line, context: Context) {
    const { registry } = this.parts;
    const begun = registry.begun(typed.words);
    if (!begun || begun.route.question.bare !== undefined || registry.get(typed.words.join(' ')))
      return undefined;
    const options = Object.fromEntries(Object.entries(typed.options).filter(([name]) => name !== 'working'));
    const { answerBare } = await plainWords();
    const shown = await answerBare(begun.route, begun.rest, options, context);
    return shown && { route: begun.route, options: typed.options, shown };
  }

  /** How the last answer was worked out. */
  private why(maker: string, json: boolean): Said {
    const last = this.last.get(maker);
    if (!last) {
      throw new Problem('nothing-to-explain', 'Nothing was answered just now.', {
        option: QUESTION,
        hint: 'Ask something first; why then shows how it was worked out.',
      });
    }
    const { question, shown } = last;
    return {
      text: json ? asJson(question, shown) : workingText(shown),
      brief: oneLine(shown.working.map((step) => `${step.label}: ${step.shown}`).join('; ')),
      status: 0,
    };
  }

  private remember(maker: string, answered: { question: string; shown: RenderedAnswer }): void {
    this.last.delete(maker);
    this.last.set(maker, answered);
    if (this.last.size <= MOST_WAITING) return;
    const [oldest] = this.last.keys();
    if (oldest !== undefined) this.last.delete(oldest);
  }

  /** An option that takes a file is typed as its path, and handed on as what the file says. */
  private async withFiles({ question }: Route, typed: RawOptions, maker: string): Promise<RawOptions> {
    let options = typed;
    for (const { name, meta } of readyOptions(question.options).all) {
      const path = typed[name];
      if (path !== undefined && meta.kind === 'file')
        options = { ...options, [name]: await this.parts.read(path, name, maker) };
    }
    return options;
  }

  /** Keeps what was understood for the next line of this maker; the oldest go where too many wait. */
  private wait(maker: string, waiting: Waiting | undefined, only?: ReadonlySet<string>): void {
    this.waiting.delete(maker);
    if (!waiting) return;
    this.waiting.set(maker, {
      waiting,
      until: this.parts.now().getTime() + WAITS_MS,
      ...(only ? { only } : {}),
    });
    for (const [oldest] of this.waiting) {
      if (this.waiting.size <= MOST_WAITING) break;
      this.waiting.delete(oldest);
    }
  }

  /** After an answer that leads on, one of its words alone is enough. */
  private leadOn(maker: string, choose: Choose | undefined): void {
    if (!choose) return;
    const { question: path, option, choices } = choose;
    this.wait(maker, { path, option, options: {}, assumed: [] }, new Set(choices.map(({ value }) => value)));
  }

  /** The answer to what waited for these words; undefined where nothing did, or they say something else. */
  private async completing(words: string, context: Context): Promise<RenderedAnswer | undefined> {
    const kept = this.waiting.get(context.maker.id);
    if (!kept || kept.until < context.now.getTime()) return undefined;
    if (kept.only?.has(words.toLowerCase()) === false) return undefined;
    const { answerWaiting } = await plainWords();
    return answerWaiting(words, kept.waiting, this.parts.registry, context);
  }

  private async speaker(text: string): Promise<{ name: string; line: string }> {
    const alone = ONLY_SPEAKER.exec(text)?.[1];
    if (alone !== undefined) {
      const name = readableName(alone);
      throw new Problem('no-question-after-name', `There is no question after the name ${name}.`, {
        option: QUESTION,
        hint: `Write the question behind it, like ${name}: /settings show.`,
      });
    }
    const match = SPEAKER.exec(text);
    const name = match?.[1];
    if (!match || name === undefined) {
      const before = SPEAKER_OF_WORDS.exec(text);
      const called = before?.[1];
      if (
        before &&
        called !== undefined &&
        ((await plainWords()).isName(called) || (await this.parts.projects.knows(terminalId(called))))
      )
        return { name: readableName(called), line: text.slice(before[0].length) };
      return { name: NOBODY_NAMED, line: text };
    }
    return { name: readableName(name), line: text.slice(match[0].length) };
  }
}
