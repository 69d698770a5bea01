/** What may be registered as an application command. */
import { z } from 'zod';
import { check, invalidForm } from './errors.ts';
import { LIMITS } from './limits.ts';

export const OptionType = {
  subcommand: 1,
  group: 2,
  string: 3,
  integer: 4,
  boolean: 5,
  user: 6,
  channel: 7,
  role: 8,
  mentionable: 9,
  number: 10,
  attachment: 11,
} as const;

export interface Choice {
  readonly name: string;
  readonly name_localizations?: Words;
  readonly value: string | number;
}

/** Words by language. */
type Words = Readonly<Record<string, string>> | null | undefined;

export interface CommandOption {
  readonly type: number;
  readonly name: string;
  readonly name_localizations?: Words;
  readonly description: string;
  readonly description_localizations?: Words;
  readonly required?: boolean | undefined;
  readonly options?: readonly CommandOption[] | undefined;
  readonly choices?: readonly Choice[] | undefined;
  readonly autocomplete?: boolean | undefined;
  readonly min_value?: number | undefined;
  readonly max_value?: number | undefined;
  readonly min_length?: number | undefined;
  readonly max_length?: number | undefined;
}

export interface Command {
  readonly id: string;
  readonly application_id: string;
  readonly guild_id?: string;
  readonly version: string;
  readonly type: 1 | 2 | 3 | 4;
  readonly name: string;
  readonly name_localizations?: Words;
  readonly description: string;
  readonly description_localizations?: Words;
  readonly options?: readonly CommandOption[] | undefined;
  readonly contexts?: readonly number[] | null | undefined;
  readonly integration_types?: readonly number[] | undefined;
  readonly default_member_permissions?: string | null | undefined;
}

// interactions/application-commands.mdx:18: where a lower case exists it must be used.
const chatName = z
  .string()
  .max(LIMITS.nameLength)
  .regex(LIMITS.name)
  .refine((name) => name === name.toLowerCase(), {
    message: 'Command name is invalid',
    params: { code: 'APPLICATION_COMMAND_INVALID_NAME' },
  });
const locale = z.enum(LIMITS.locales);
const inLanguages = (words: z.ZodString) => z.partialRecord(locale, words).nullish() as z.ZodType<Words>;
const namesInLanguages = inLanguages(chatName);
const localised = inLanguages(z.string().min(1).max(LIMITS.description));
const choice = z.object({
  name: z.string().min(1).max(LIMITS.choice),
  name_localizations: localised,
  value: z.union([z.string().max(LIMITS.choice), z.number()]),
});

const option: z.ZodType<CommandOption> = z.lazy(() =>
  z
    .object({
      type: z.int().min(1).max(11),
      name: chatName,
      name_localizations: namesInLanguages,
      description: z.string().min(1).max(LIMITS.description),
      description_localizations: localised,
      required: z.boolean().optional(),
      options: z.array(option).max(LIMITS.options).optional(),
      choices: z.array(choice).max(LIMITS.choices).optional(),
      autocomplete: z.boolean().optional(),
      min_value: z.number().min(-LIMITS.number).max(LIMITS.number).optional(),
      max_value: z.number().min(-LIMITS.number).max(LIMITS.number).optional(),
      min_length: z.int().min(0).max(LIMITS.optionLength).optional(),
      max_length: z.int().min(1).max(LIMITS.optionLength).optional(),
      channel_types: z.array(z.int()).optional(),
    })
    .superRefine((given, issues) => {
      const fault = (code: string, message: string, ...path: string[]) =>
        issues.addIssue({ code: 'custom', message, path, params: { code } });
      const typed = given.type === 3 || given.type === 4 || given.type === 10;
      const offers = (given.choices?.length ?? 0) > 0;
      if (offers && given.autocomplete === true)
        fault(
          'APPLICATION_COMMAND_OPTIONS_AUTOCOMPLETE_CHOICES',
          'An option cannot have choices and autocomplete',
          'autocomplete',
        );
      if ((offers || given.autocomplete === true) && !typed)
        fault('BASE_TYPE_CHOICES', 'Only strings and numbers are chosen', 'choices');
      for (const [index, { value }] of (given.choices ?? []).entries()) {
        if (typed && (given.type === 3) !== (typeof value === 'string'))
          fault('BASE_TYPE_INVALID', 'The value has not the option’s type', 'choices', String(index));
        if (given.type === 4 && !Number.isInteger(value))
          fault('NUMBER_TYPE_COERCE', 'Not an integer', 'choices', String(index));
      }
      if (new Set(given.choices?.map(({ name }) => name)).size !== (given.choices?.length ?? 0))
        fault('APPLICATION_COMMAND_OPTIONS_CHOICE_NAME_ALREADY_EXISTS', 'Choice names are unique', 'choices');
      if (given.options !== undefined && given.type > 2 && given.options.length > 0)
        fault('BASE_TYPE_INVALID', 'Only subcommands have options', 'options');
    }),
);

/** Order, names and nesting of a level of options. */
function levelFaults(
  options: readonly CommandOption[],
  path: readonly string[],
  depth: 'command' | 'group' | 'subcommand',
): { path: string[]; code: string; message: string }[] {
  const faults: { path: string[]; code: string; message: string }[] = [];
  const seen = new Set<string>();
  let optional = false;
  const kinds = new Set(options.map(({ type }) => (type <= 2 ? 'nested' : 'plain')));
  if (kinds.size > 1)
    faults.push({
      path: [...path],
      code: 'APPLICATION_COMMAND_OPTIONS_TYPE_INVALID',
      message: 'Sub-command and sub-command group option types are mutually exclusive to all other types',
    });
  for (const [index, given] of options.entries()) {
    const at = [...path, String(index)];
    // interactions/application-commands.mdx:86
    if (seen.has(given.name))
      faults.push({
        path: [...at, 'name'],
        code: 'APPLICATION_COMMAND_OPTIONS_NAME_ALREADY_EXISTS',
        message: 'Option name already exists',
      });
    seen.add(given.name);
    // interactions/application-commands.mdx:1080–1088
    for (const [language, word] of Object.entries(given.name_localizations ?? {})) {
      const said = `${language} ${word}`;
      if (seen.has(said))
        faults.push({
          path: [...at, 'name_localizations', language],
          code: 'APPLICATION_COMMAND_OPTIONS_NAME_ALREADY_EXISTS',
          message: `Option name already exists: ${word}`,
        });
      seen.add(said);
    }
    // interactions/application-commands.mdx:65
    if (given.required === true && optional)
      faults.push({
        path: at,
        code: 'APPLICATION_COMMAND_OPTIONS_REQUIRED_INVALID',
        message: 'Required options must be placed before non-required options',
      });
    if (given.required !== true && given.type > 2) optional = true;
    // interactions/application-commands.mdx:558–561: command, group, subcommand, and no deeper
    const allowed = depth === 'command' || (depth === 'group' ? given.type === 1 : given.type > 2);
    if (!allowed)
      faults.push({
        path: [...at, 'type'],
        code: 'APPLICATION_COMMAND_OPTIONS_TYPE_INVALID',
        message: 'This type cannot be nested here',
      });
    else if (given.type <= 2)
      faults.push(
        ...levelFaults(given.options ?? [], [...at, 'options'], given.type === 2 ? 'group' : 'subcommand'),
      );
  }
  return faults;
}

const longest = (text: string, localised: Words) =>
  Math.max(text.length, ...Object.values(localised ?? {}).map((said) => said.length));

interface Sized extends Omit<CommandOption, 'options' | 'choices' | 'description'> {
  description?: string;
  options?: readonly Sized[];
  choices?: readonly Choice[];
}

/** Characters of all names, descriptions and values. interactions/application-commands.mdx:450 */
export function sizeOf(given: object): number {
  const { name, name_localizations, description, description_localizations, choices, options } =
    given as Sized;
  let size = longest(name, name_localizations) + longest(description ?? '', description_localizations);
  for (const each of choices ?? [])
    size += longest(each.name, each.name_localizations) + String(each.value).length;
  for (const each of options ?? []) size += sizeOf(each);
  return size;
}

const base = {
  default_member_permissions: z.string().regex(/^\d+$/).nullish(),
  nsfw: z.boolean().optional(),
  dm_permission: z.boolean().optional(),
  contexts: z.array(z.int().min(0).max(2)).nullish(),
  integration_types: z.array(z.int().min(0).max(1)).min(1).optional(),
  name_localizations: localised,
  description_localizations: localised,
};
const schemas = {
  1: z.object({
    ...base,
    type: z.literal(1).default(1),
    name: chatName,
    name_localizations: namesInLanguages,
    description: z.string().min(1).max(LIMITS.description),
    options: z.array(option).max(LIMITS.options).optional(),
  }),
  // Names of user and message commands may have capitals and spaces; they have no description.
  2: z.object({
    ...base,
    type: z.union([z.literal(2), z.literal(3)]),
    name: z.string().min(1).max(LIMITS.nameLength),
    description: z.string().max(0).default(''),
  }),
};

/** A command as it is told to whoever does not ask for its languages. */
export const withoutLanguages = <C extends object>(command: C): C =>
  JSON.parse(
    JSON.stringify(command, (key, value: unknown) => (key.endsWith('_localizations') ? undefined : value)),
  ) as C;

export type NewCommand = Omit<Command, 'id' | 'application_id' | 'version'>;

/** Checks one command. Throws 50035. */
export function checkCommand(body: unknown, under: readonly string[] = []): NewCommand {
  const type = (body as { type?: number } | null)?.type ?? 1;
  const command: NewCommand =
    type === 2 || type === 3 ? check(schemas[2], body, under) : check(schemas[1], body, under);
  const faults = levelFaults(command.options ?? [], [...under, 'options'], 'command');
  // interactions/application-commands.mdx:308
  if (command.contexts?.includes(2) === true && command.integration_types?.includes(1) !== true)
    faults.push({
      path: [...under, 'contexts'],
      code: 'APPLICATION_COMMAND_CONTEXTS_INVALID',
      message: 'The private channel context needs user installation',
    });
  const size = sizeOf(body as object);
  if (size > LIMITS.command)
    faults.push({
      path: [...under],
      code: 'APPLICATION_COMMAND_TOO_LARGE',
      message: `Command exceeds maximum size (${LIMITS.command}): ${size}`,
    });
  if (faults.length > 0) throw invalidForm(faults);
  return command;
}

/** Checks a whole list that replaces another. Throws 50035. */
export function checkCommands(body: unknown): NewCommand[] {
  const list = check(z.array(z.unknown()), body);
  const commands = list.map((each, index) => checkCommand(each, [String(index)]));
  const faults: { path: string[]; code: string; message: string }[] = [];
  const seen = new Set<string>();
  for (const [index, { type, name }] of commands.entries()) {
    if (seen.has(`${type} ${name}`))
      faults.push({
        path: [String(index), 'name'],
        code: 'APPLICATION_COMMANDS_DUPLICATE_NAME',
        message: 'Application command names must be unique',
      });
    seen.add(`${type} ${name}`);
  }
  for (const [type, most] of Object.entries(LIMITS.commands))
    if (commands.filter((each) => String(each.type) === type).length > most)
      faults.push({ path: [], code: 'BASE_TYPE_MAX_LENGTH', message: `Must be ${most} or fewer in length.` });
  if (faults.length > 0) throw invalidForm(faults);
  return commands;
}
