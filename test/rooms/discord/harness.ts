/** The room with Discord, opened on the stand-in with the real client; and typed lines asked through it as slash commands. */
import { registry as everything } from '../../../commands/index.ts';
import { readLine } from '../../../src/chat/line.ts';
import { metaOf } from '../../../src/chat/options.ts';
import { Registry, type Route } from '../../../src/chat/registry.ts';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { Projects } from '../../../src/projects/projects.ts';
import type { Log } from '../../../src/rooms/discord/platform.ts';
import { formKey } from '../../../src/rooms/discord/forms.ts';
import { openDiscordRoom, type DiscordParts, type OpenRoom } from '../../../src/rooms/discord/run.ts';
import { Published, schemaFile } from './published.ts';
import {
  CannotAsk,
  openStandIn,
  type As,
  type Given,
  type Message,
  type Outcome,
  type Person,
  type StandIn,
  type StandInOptions,
} from './stand-in/index.ts';

export interface LogLine {
  readonly level: 'info' | 'warn' | 'error';
  readonly facts: Readonly<Record<string, unknown>>;
  readonly says: string;
}

export interface Harness {
  readonly platform: StandIn;
  readonly log: readonly LogLine[];
  readonly faults: readonly unknown[];
  /** Requests that the platform’s published schema does not describe, as far as it is at hand. */
  readonly unfit: readonly string[];
  room: OpenRoom;
  readonly projects: Projects;
  /** Whether a slash command got an answer of its question's, not a refusal. */
  answered(seen: Outcome): boolean;
  /**
   * Asks a typed line as this person would fill it in, a form that opens with it; throws CannotAsk for what her client does
   * not send. `person`: whom a name means, the person of that name if not given.
   */
  readonly line: (line: string, as: As, person?: (name: string) => Person) => Promise<Outcome>;
  /** Asks with these options, a form that opens with them filled in as well. */
  readonly filledIn: (path: string, given: Readonly<Record<string, Given>>, as: As) => Promise<Outcome>;
  /** Presses, and sends a form that opens as it stands. */
  readonly pressed: (message: Message, which: string, as: As) => Promise<Outcome>;
  /** Closes the room and opens a new one on the same store, as a restart does. */
  readonly restart: (parts?: Partial<DiscordParts>) => Promise<void>;
  /** Rejects where a request was one that the platform does not describe. */
  close(): Promise<void>;
}

/** Read once for all rooms of a test. */
let published: Published | undefined;
const checking = (unfit: string[]) => {
  const file = schemaFile();
  if (file === undefined) return undefined;
  const schema = (published ??= new Published(file));
  return (request: Parameters<Published['fault']>[0]) => {
    const fault = schema.fault(request);
    if (fault !== undefined) unfit.push(fault);
  };
};

/** A picture of nothing: drawing is tested elsewhere, and would be most of the time here. */
const BLANK = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==',
  'base64',
);

export async function openHarness({
  registry = everything,
  projects = new Projects(new MemoryStore()),
  platform: options,
  ...parts
}: {
  registry?: Registry;
  projects?: Projects;
  platform?: StandInOptions;
} & Partial<Omit<DiscordParts, 'registry' | 'projects'>> = {}): Promise<Harness> {
  const unfit: string[] = [];
  const hears = checking(unfit);
  const platform = await openStandIn({ ...options, ...(hears ? { hears } : {}) });
  const log: LogLine[] = [];
  const faults: unknown[] = [];
  const at = (level: LogLine['level']) => (facts: object, says: string) =>
    void log.push({ level, facts: { ...facts }, says });
  const writes: Log = { info: at('info'), warn: at('warn'), error: at('error') };
  const answered = new Set<string>();
  const watched = new Registry(
    registry.commands.map((command) => ({
      ...command,
      questions: command.questions.map((question) => ({
        ...question,
        async answer(...asked: Parameters<typeof question.answer>) {
          const answer = await question.answer(...asked);
          answered.add(asked[1].once);
          return answer;
        },
      })),
    })),
  );
  const open = (more: Partial<DiscordParts> = {}) =>
    openDiscordRoom({
      registry: watched,
      projects,
      token: platform.token,
      log: writes,
      fault: (error) => `fault-${faults.push(error)}`,
      api: platform.api,
      attachmentHosts: ['127.0.0.1'],
      pace: { burst: 1e6, perSecond: 1e6 },
      makers: { toPng: () => Promise.resolve(BLANK), toPdf: () => Promise.resolve(BLANK) },
      ...parts,
      ...more,
    });
  const received = new Map<string, Buffer>();
  /** What the command takes is filled in there, the rest into the form that it opens. */
  const ask = async (
    found: Route,
    given: Readonly<Record<string, Given>>,
    typed: Readonly<Record<string, string>>,
    as: As,
  ): Promise<Outcome> => {
    const { begins } = found.question.form ?? {};
    const names = Object.keys(given);
    const first = names.filter((name) => begins?.includes(name) ?? true);
    const left = new Set(names.filter((name) => !first.includes(name)));
    const options = Object.fromEntries(first.map((name) => [name, given[name]!]));
    const seen = await platform.slash(found.path, options, as);
    if (seen.kind !== 'modal') return seen;
    for (const name of fieldsOf(seen)) left.delete(name);
    if (left.size > 0) throw new CannotAsk(`neither the command nor the form has ${[...left].join(', ')}`);
    return platform.submitModal(seen, filled(seen, found, typed), as);
  };
  const harness: Harness = {
    platform,
    log,
    faults,
    unfit,
    projects,
    room: await open(),
    answered: ({ interaction: { id, user, customId } }) =>
      answered.has(id) || (customId !== undefined && answered.has(formKey(user.id, customId))),
    line: async (line, as, person = (name) => known(platform, name)) => {
      const { found, given, typed } = asGiven(line, registry, {
        received: (name) => received.get(`${as.user.id}/${name}`),
        person,
      });
      const seen = await ask(found, given, typed, as);
      for (const file of seen.files) received.set(`${as.user.id}/${file.filename}`, file.bytes);
      return seen;
    },
    filledIn: (path, given, as) => {
      const texts = Object.entries(given).map(([name, value]) => [name, asText(value)] as const);
      return ask(registry.find(path.split(' ')), given, Object.fromEntries(texts), as);
    },
    pressed: async (message, which, as) => {
      const seen = await platform.press(message, which, as);
      return seen.kind === 'modal'
        ? platform.submitModal(seen, {}, { ...as, channel: message.channel })
        : seen;
    },
    restart: async (more) => {
      await harness.room.close();
      harness.room = await open(more);
    },
    async close() {
      await harness.room.close();
      await platform.close();
      if (unfit.length > 0)
        throw new Error(`not as the platform describes it:\n${[...new Set(unfit)].join('\n')}`);
    },
  };
  return harness;
}

/** The latest person of a name. Throws CannotAsk where there is none. */
function known({ world }: StandIn, name: string): Person {
  const found = [...world.people.values()].findLast(({ username }) => username === name.replace(/^@/, ''));
  if (!found) throw new CannotAsk(`nobody is called ${name}`);
  return found;
}

const controls = ({ interaction: { modal } }: Outcome) =>
  (modal?.components ?? []).flatMap(({ component }) =>
    component?.custom_id === undefined ? [] : [component],
  );

/** The fields of a form that is open. */
export const fieldsOf = (seen: Outcome): string[] => controls(seen).map(({ custom_id = '' }) => custom_id);

/** What is typed and chosen in an open form, of these options as text. */
export function filled(seen: Outcome, { question }: Route, typed: Readonly<Record<string, string>>) {
  const values: Record<string, string | string[]> = {};
  for (const { custom_id: name = '', type, options = [] } of controls(seen)) {
    const text = typed[name];
    if (text === undefined) continue;
    const meta = metaOf(question.options[name]!);
    const chosen = (part: string) => {
      const wanted = asText(asValue(meta, part.trim())).toLowerCase();
      return (
        options.find(({ value, label }) => [value, label].some((said) => said.toLowerCase() === wanted))
          ?.value ?? part.trim()
      );
    };
    // What is chosen is not typed: it has no quotes around it.
    const bare = text.replace(/^["“](.*)["”]$/su, '$1');
    values[name] =
      type === 3 ? (meta.several === undefined ? [bare] : bare.split(meta.several.trim())).map(chosen) : text;
  }
  return values;
}

/** A typed line as a client's form: numbers as numbers, choices by what they send, files with their bytes. */
export function asGiven(
  line: string,
  registry: Registry,
  { received, person }: { received: (name: string) => Buffer | undefined; person: (name: string) => Person },
) {
  const { words, options } = readLine(line);
  const found = registry.find(words);
  const given: Record<string, Given> = {};
  const texts: Record<string, string> = {};
  // Into a field for text goes what is typed, its quotes with it: the platform takes none off.
  const verbatim = (name: string, text: string, value: Given) =>
    value === text
      ? ([`"${text}"`, `“${text}”`].find((quoted) => line.includes(`${name}:${quoted}`)) ?? text)
      : value;
  for (const [name, text] of Object.entries(options)) {
    const schema = found.question.options[name];
    const meta = schema && metaOf(schema);
    // Whoever is meant is chosen among the people of the place.
    given[name] = !meta
      ? verbatim(name, text, text)
      : meta.kind === 'person'
        ? person(text)
        : verbatim(name, text, asValue(meta, text, received));
    texts[name] = asText(verbatim(name, text, text));
  }
  return { found, given, typed: texts };
}

/** What is typed into a field for text. */
export const asText = (value: Given): string => (typeof value === 'object' ? '' : String(value));

export function asValue(
  { kind, choices, words }: ReturnType<typeof metaOf>,
  text: string,
  received: (name: string) => Buffer | undefined = () => undefined,
): Given {
  // Where a word may stand for the number, the form takes text.
  if ((kind === 'integer' || kind === 'number') && words === undefined) {
    const number = Number(text.replace(/%$/, ''));
    return Number.isNaN(number) ? text : number;
  }
  if (kind === 'yesno') return text === 'yes' ? true : text === 'no' ? false : text;
  if (kind === 'file')
    return { name: text, bytes: received(text) ?? Buffer.from(text), type: 'application/json' };
  if (kind === 'photo') return { name: text, bytes: BLANK, type: 'image/png' };
  const typed = text.toLowerCase();
  // A choice is sent by its value: a stitch says whose terms it is in.
  const choice = choices?.find(({ value, label }) =>
    [value, label, value.replace(/^US /, '')].some((said) => said?.toLowerCase() === typed),
  );
  return choice?.value ?? text;
}

/** The longest value that an option's declaration allows. */
export function longest(found: Route, name: string): Given {
  const meta = metaOf(found.question.options[name]!);
  const { kind, choices, words, max, maxLength, example } = meta;
  if (choices && kind !== 'yesno')
    return choices.reduce((long, { value }) => (value.length > long.length ? value : long), '');
  if (kind === 'integer' || kind === 'number')
    return words === undefined ? (max ?? 2 ** 53) : String(max ?? 2 ** 53);
  if (kind === 'yesno') return true;
  if (kind === 'file')
    return { name: 'long.json', bytes: Buffer.alloc(1024 * 1024, '['), type: 'application/json' };
  if (kind === 'photo') return { name: `${'p'.repeat(200)}.png`, bytes: BLANK, type: 'image/png' };
  // An example that goes on and on, as far as the form lets it; then wide characters.
  const room = maxLength ?? 6_000;
  return (
    `${example} `
      .repeat(Math.ceil(room / (example.length + 1)))
      .slice(0, room)
      .trimEnd() || 'W'.repeat(room)
  );
}

/** What the bot told the platform that it will mention: nothing at all, on every message it ever sent. */
export const mentions = (messages: Iterable<Message>) =>
  [...messages]
    .filter(({ author, edits, flags }) => author.bot && (edits > 0 || (flags & 128) === 0))
    .filter(({ allowedMentions: allowed }) => JSON.stringify(allowed) !== '{"parse":[]}');
