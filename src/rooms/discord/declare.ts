/** From a command's one declaration to what the platform registers. */
import {
  ApplicationCommandOptionType as Type,
  ApplicationCommandType,
  ApplicationIntegrationType,
  InteractionContextType,
  type APIApplicationCommandBasicOption,
  type APIApplicationCommandSubcommandOption,
  type LocalizationMap,
  type RESTPostAPIChatInputApplicationCommandsJSONBody,
  type RESTPostAPIContextMenuApplicationCommandsJSONBody,
} from 'discord.js';
import type { Command, Question } from '../../chat/command.ts';
import { isRequired, metaOf, type Option, type OptionMeta } from '../../chat/options.ts';
import { sum } from '../../core/base/sum.ts';
import { COMMAND } from './limits.ts';
import { fit } from './text.ts';

export type Declared = RESTPostAPIChatInputApplicationCommandsJSONBody;

/** What stands in the menu of anybody’s message: its words are read as a question. */
export const WORK_THIS_OUT = {
  type: ApplicationCommandType.Message,
  name: 'Work this out',
  contexts: [
    InteractionContextType.Guild,
    InteractionContextType.BotDM,
    InteractionContextType.PrivateChannel,
  ],
  integration_types: [ApplicationIntegrationType.GuildInstall, ApplicationIntegrationType.UserInstall],
} as const satisfies RESTPostAPIContextMenuApplicationCommandsJSONBody;

/** The option that every question has here, beside its own: who sees the answer. */
export const SEEN_BY = 'seen_by';

const seenBy: APIApplicationCommandBasicOption = {
  type: Type.String,
  name: SEEN_BY,
  description: 'Who sees the answer; your setting if not given',
  required: false,
  choices: [
    { name: 'everyone', value: 'everyone' },
    { name: 'only me', value: 'me' },
  ],
};

const bounds = ({ min, max }: OptionMeta) => ({
  ...(min === undefined ? {} : { min_value: min }),
  ...(max === undefined ? {} : { max_value: max }),
});

function option(name: string, declared: Option, asked: boolean): APIApplicationCommandBasicOption {
  const meta = metaOf(declared);
  const base = { name, description: meta.says, required: isRequired(declared) && !asked };
  switch (meta.kind) {
    case 'integer':
      // A field for whole numbers takes no word.
      return meta.words
        ? { ...base, type: Type.String, ...(meta.suggest === undefined ? {} : { autocomplete: true }) }
        : { ...base, ...bounds(meta), type: Type.Integer };
    case 'number':
      return { ...base, ...bounds(meta), type: Type.Number };
    case 'yesno':
      return { ...base, type: Type.Boolean };
    case 'file':
    case 'photo':
      return { ...base, type: Type.Attachment };
    case 'person':
      return { ...base, type: Type.User };
    case 'choice':
    case 'stitch':
    case 'text':
    case 'length':
    case 'weight':
    case 'gauge':
    case 'ball':
    case 'stitches':
      if (meta.choices) {
        return {
          ...base,
          type: Type.String,
          choices: meta.choices.map(({ value, label }) => ({
            name: fit(label ?? value, COMMAND.choiceName),
            value,
          })),
        };
      }
      return {
        ...base,
        type: Type.String,
        ...(meta.maxLength === undefined ? {} : { max_length: Math.min(meta.maxLength, COMMAND.text) }),
        ...(meta.suggest === undefined ? {} : { autocomplete: true }),
      };
  }
}

function optionsOf(question: Question): APIApplicationCommandBasicOption[] {
  const { asks = [], begins } = question.form ?? {};
  // What is left out is asked by the form.
  const own = Object.entries(question.options)
    .filter(([name]) => begins?.includes(name) ?? true)
    .map(([name, schema]) => option(name, schema, begins === undefined && asks.includes(name)));
  const all = question.private || begins !== undefined ? own : [...own, seenBy];
  if (all.length > COMMAND.options) throw new Error(`a question with ${all.length} options`);
  // The platform wants the required ones first; within both the order is the declaration's.
  return [...all.filter(({ required }) => required), ...all.filter(({ required }) => !required)];
}

/** What is registered for a command. Throws (a fault of ours) for one that the platform would not take. */
export function declaration(command: Command): Declared {
  const declared = declare(command);
  const size = declaredSize(declared);
  if (size > COMMAND.total)
    throw new Error(`/${command.name} says ${size} characters, ${COMMAND.total} are taken`);
  return declared;
}

function declare({ name, says, questions }: Command): Declared {
  const [first] = questions;
  const single = questions.length === 1 && first?.name === undefined ? first : undefined;
  return {
    type: ApplicationCommandType.ChatInput,
    name,
    description: says,
    options: single
      ? optionsOf(single)
      : questions.map((question): APIApplicationCommandSubcommandOption => {
          if (question.name === undefined) throw new Error(`a question of /${name} has no name`);
          return {
            type: Type.Subcommand,
            name: question.name,
            description: question.says,
            options: optionsOf(question),
          };
        }),
    contexts: [
      InteractionContextType.Guild,
      InteractionContextType.BotDM,
      InteractionContextType.PrivateChannel,
    ],
    integration_types: [ApplicationIntegrationType.GuildInstall, ApplicationIntegrationType.UserInstall],
  };
}

/** How much of `COMMAND.total` a command takes: its names, descriptions and values, each in the language where it is longest. */
export function declaredSize(declared: object): number {
  const { name, description, choices, options, ...rest } = declared as Measured;
  const longest = (text: string | undefined, said: Measured['name_localizations']) =>
    Math.max(text?.length ?? 0, ...Object.values(said ?? {}).map((one) => one?.length ?? 0));
  const own = longest(name, rest.name_localizations) + longest(description, rest.description_localizations);
  const chosen = (choices ?? []).map(
    (one) => longest(one.name, one.name_localizations) + (one.value?.length ?? 0),
  );
  return sum([own, ...chosen, ...(options ?? []).map(declaredSize)]);
}

interface Measured {
  readonly name?: string;
  readonly name_localizations?: LocalizationMap | null;
  readonly description?: string;
  readonly description_localizations?: LocalizationMap | null;
  readonly choices?: readonly (Measured & { readonly value?: string })[];
  readonly options?: readonly object[];
}
