/** Registers the commands, and only when what is registered differs from what is declared. */
import { Routes, type RESTGetAPIApplicationCommandsResult } from 'discord.js';
import type { Registered } from './localise.ts';

/** The part of the client's REST that is used here. */
export interface Rest {
  get(route: `/${string}`, options?: { query: URLSearchParams }): Promise<unknown>;
  put(route: `/${string}`, options: { body: unknown }): Promise<unknown>;
}

export interface Difference {
  readonly added: readonly string[];
  readonly changed: readonly string[];
  readonly removed: readonly string[];
}

/** Fields whose absence means a value; the platform fills some of them in and leaves others out. */
const DEFAULTS: Readonly<Record<string, unknown>> = {
  // A message command has none, and the platform says so with an empty one.
  description: '',
  required: false,
  autocomplete: false,
  nsfw: false,
  default_member_permissions: null,
  options: [],
  choices: [],
};
const COMPARED = [
  'type',
  'name',
  'description',
  'required',
  'min_value',
  'max_value',
  'min_length',
  'max_length',
  'autocomplete',
  'nsfw',
  'default_member_permissions',
];

type Plain = Readonly<Record<string, unknown>>;

/** Words by language, in one order; none where there are none. */
const byLanguage = (words: unknown) => Object.entries(words ?? {}).sort(([a], [b]) => (a < b ? -1 : 1));
const inLanguages = (given: Plain) => [
  byLanguage(given['name_localizations']),
  byLanguage(given['description_localizations']),
];

const listed = (value: unknown) => (Array.isArray(value) ? (value as Plain[]) : []);

/** A command or option as it is compared: known fields in one order, absent ones as what they mean. */
function normal(given: Plain, top: boolean): unknown {
  return [
    ...COMPARED.map((key) => given[key] ?? DEFAULTS[key] ?? null),
    inLanguages(given),
    listed(given['choices']).map((choice) => [choice['name'], choice['value'], inLanguages(choice)]),
    listed(given['options']).map((inner) => normal(inner, false)),
    // Only a command has these, and their order means nothing.
    ...(top
      ? [
          [...((given['contexts'] ?? []) as number[])].sort(),
          [...((given['integration_types'] ?? []) as number[])].sort(),
        ]
      : []),
  ];
}

/** What registering would change; pure. */
export function difference(registered: readonly object[], declared: readonly Registered[]): Difference {
  const keyed = (commands: readonly object[]) =>
    new Map(
      commands.map((each) => [
        (each as Plain)['name'] as string,
        JSON.stringify(normal(each as Plain, true)),
      ]),
    );
  const there = keyed(registered);
  const wanted = keyed(declared);
  return {
    added: [...wanted.keys()].filter((name) => !there.has(name)),
    changed: [...wanted]
      .filter(([name, text]) => there.has(name) && there.get(name) !== text)
      .map(([name]) => name),
    removed: [...there.keys()].filter((name) => !wanted.has(name)),
  };
}

export const isNothing = ({ added, changed, removed }: Difference) =>
  added.length + changed.length + removed.length === 0;

/** Under which id the platform knows each command. */
function idsIn(commands: unknown): ReadonlyMap<string, string> {
  const named = listed(commands).flatMap(({ name, id }) =>
    typeof name === 'string' && typeof id === 'string' ? [[name, id] as const] : [],
  );
  return new Map(named);
}

const route = (application: string) => Routes.applicationCommands(application);

/** The commands as they are registered now. Rejects as the REST does. */
const readRegistered = (rest: Rest, application: string) =>
  rest.get(route(application), {
    // Without this, the platform leaves out what it has in other languages, and all would seem changed.
    query: new URLSearchParams({ with_localizations: 'true' }),
  }) as Promise<RESTGetAPIApplicationCommandsResult>;

/** Learns of the commands that are registered, whatever they are. Rejects as the REST does. */
export const idsRegistered = async (rest: Rest, application: string) =>
  idsIn(await readRegistered(rest, application));

/** Makes the registered commands what is declared; returns what that changed. Rejects as the REST does. */
export async function register(
  rest: Rest,
  application: string,
  declared: readonly Registered[],
  /** Told under which id the platform knows each command. */
  learn: (ids: ReadonlyMap<string, string>) => void = () => undefined,
): Promise<Difference> {
  const registered = await readRegistered(rest, application);
  const changes = difference(registered, declared);
  learn(idsIn(isNothing(changes) ? registered : await rest.put(route(application), { body: declared })));
  return changes;
}
