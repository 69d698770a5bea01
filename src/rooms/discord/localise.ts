/** What is registered, in every language that there is: names, descriptions and choices. Whatever is asked arrives in English. */
import {
  ApplicationCommandOptionType as Type,
  ApplicationCommandType,
  type LocalizationMap,
  type RESTPostAPIContextMenuApplicationCommandsJSONBody,
} from 'discord.js';
import { TONGUES, type Part, type Tongue } from '../../chat/tongues/index.ts';
import { declaredSize, type Declared } from './declare.ts';
import { COMMAND } from './limits.ts';

/** Whatever is registered: slash commands, and what stands in menus. */
export type Registered = Declared | RESTPostAPIContextMenuApplicationCommandsJSONBody;

/** A command, an option or a choice, as far as it is said in words. */
interface Said {
  readonly name: string;
  readonly description?: string;
  readonly options?: readonly (Said & { readonly type: number })[];
  readonly choices?: readonly Said[];
}

/** Told of each text, and says what stands for it; undefined where nothing does. */
type Say = (part: Part, text: string) => LocalizationMap | undefined;

function localised(said: Said, part: Part, say: Say): object {
  const { name, description, options, choices } = said;
  const names = say(part, name);
  const descriptions = description === undefined ? undefined : say('says', description);
  return {
    ...said,
    ...(names && { name_localizations: names }),
    ...(descriptions && { description_localizations: descriptions }),
    ...(options && {
      options: options.map((one) =>
        localised(one, one.type === (Type.Subcommand as number) ? 'questions' : 'options', say),
      ),
    }),
    ...(choices && { choices: choices.map((one) => localised(one, 'choices', say)) }),
  };
}

const partOf = ({ type }: Registered): Part =>
  type === undefined || type === ApplicationCommandType.ChatInput ? 'commands' : 'menus';

const wordIn = (tongue: Tongue, part: Part, text: string): string | undefined =>
  Object.hasOwn(tongue[part], text) ? tongue[part][text] : undefined;

/** The language that the platform calls so; undefined for English, and for one that there is not. */
export const tongueOf = (locale: string | undefined): Tongue | undefined =>
  TONGUES.find(({ locales }) => locale !== undefined && locales.includes(locale));

/** A text of a declaration in a language; in English where that lacks it. */
export const saidIn = (tongue: Tongue | undefined, part: Part, text: string): string =>
  (tongue && wordIn(tongue, part, text)) ?? text;

/**
 * A command as it is registered, with its names and descriptions in other languages; what a language lacks is English there.
 * Throws (a fault of ours) for one that the platform would not take.
 */
export function inTongues<C extends Registered>(declared: C, tongues: readonly Tongue[] = TONGUES): C {
  const whole = localised(declared as Said, partOf(declared), (part, text) => {
    const all = tongues.flatMap((tongue) => {
      const word = wordIn(tongue, part, text);
      return word === undefined ? [] : tongue.locales.map((locale) => [locale, word]);
    });
    return all.length === 0 ? undefined : (Object.fromEntries(all) as LocalizationMap);
  }) as C;
  const size = declaredSize(whole);
  if (size > COMMAND.total)
    throw new Error(
      `${declared.name} says ${size} characters in its longest languages, ${COMMAND.total} are taken`,
    );
  return whole;
}

/** The texts of a command that a language has no words for, each with the part that should hold it. */
export function missingIn(tongue: Tongue, declared: Registered): { part: Part; text: string }[] {
  const missing: { part: Part; text: string }[] = [];
  localised(declared as Said, partOf(declared), (part, text) => {
    if (wordIn(tongue, part, text) === undefined) missing.push({ part, text });
    return undefined;
  });
  return missing;
}
