/**
 * Questions whose options are typed into a form. The form's id carries what was given before it was opened, its fields are
 * the question's own options, so that a form that is sent asks what the same question typed in one line asks.
 */
import { createHash } from 'node:crypto';
import {
  ButtonStyle,
  ComponentType,
  TextInputStyle,
  type APILabelComponent,
  type APIModalInteractionResponseCallbackData,
  type ModalSubmitInteraction,
} from 'discord.js';
import type { Choice, OptionMeta } from '../../chat/options.ts';
import { choiceMeant, isRequired, metaOf } from '../../chat/options.ts';
import { readyOptions } from '../../chat/ready-options.ts';
import type { RawOptions } from '../../chat/line.ts';
import type { Route } from '../../chat/registry.ts';
import type { Tongue } from '../../chat/tongues/index.ts';
import { readAsked, writeAsked } from './asked.ts';
import { coded, keptAt, meantBy, readButton, serialOf, writeButton, type Button } from './buttons.ts';
import { BUTTONS, EMBED, MODAL, SELECT } from './limits.ts';
import { saidIn, tongueOf } from './localise.ts';
import { sent } from './files.ts';
import { KEPT } from './render.ts';
import type { Outbound } from './reply.ts';
import { clean, fit, oneLine, unquoted } from './text.ts';

/** Carried beside the options: the fields that the form had. No question has an option of this name. */
const FIELDS = 'zz_fields';

/** What a form is made of. */
export interface Opening {
  readonly found: Route;
  /** Options given so far, and what else is carried under names of its own. */
  readonly given: RawOptions;
  /** The fields that it had before; the question's own if not said. */
  readonly fields?: readonly string[] | undefined;
  readonly asker: string;
  readonly serial: string;
  /** Whether what comes of it takes the place of the message that it was opened from. */
  readonly again: boolean;
  /** What may be chosen for an option; undefined where it is typed. */
  readonly offered: ReadonlyMap<string, readonly Choice[]>;
  /** The platform’s name of the language of whoever fills it in. */
  readonly locale?: string | undefined;
}

/** Whether a question that is asked with some options opens its form: something is missing, or nothing of it is given. */
export function opensForm({ question: { form, options } }: Route, has: (name: string) => boolean): boolean {
  if (!form) return false;
  return (
    (form.needs === undefined && form.asks.every((name) => !has(name))) ||
    readyOptions(options).all.some(({ name, leftOut }) => leftOut === undefined && !has(name)) ||
    (form.needs ?? []).some((list) => !list.some(has))
  );
}

const isOption = ({ question }: Route, name: string) => Object.hasOwn(question.options, name);

/** The fields of a form: what is not given yet first, all in the order of the declaration. */
function fieldsOf({ question: { form } }: Route, given: RawOptions): string[] {
  const asks = form?.asks ?? [];
  const open = asks.filter((name) => !Object.hasOwn(given, name));
  const shown = new Set([...open, ...asks.filter((name) => !open.includes(name))].slice(0, MODAL.components));
  return asks.filter((name) => shown.has(name));
}

/** The form; undefined where there is no room for what was given. */
export function formOf(opening: Opening): APIModalInteractionResponseCallbackData | undefined {
  const { found, given, asker, serial, again, offered } = opening;
  const tongue = tongueOf(opening.locale);
  const asked =
    opening.fields?.filter((name) => isOption(found, name)).slice(0, MODAL.components) ??
    fieldsOf(found, given);
  // Nothing to choose among, and none need be: it is not asked.
  const fields = asked.filter(
    (name) => offered.get(name)?.length !== 0 || isNeeded(found, name, asked, given),
  );
  const filled = new Set(fields);
  const carried = () =>
    writeButton({
      does: again ? 'refill' : 'form',
      owner: coded(asker),
      serial,
      payload: writeAsked({
        question: found.path,
        options: Object.fromEntries(Object.entries(given).filter(([name]) => !filled.has(name))),
      }),
    });
  let customId = carried();
  // What has no room in the id is asked once more, filled in, and the last thing that can wait makes room for it.
  while (customId === undefined) {
    const [longest] = Object.keys(given)
      .filter((name) => !filled.has(name) && isOption(found, name))
      .sort((a, b) => (given[b] ?? '').length - (given[a] ?? '').length);
    if (longest === undefined) return undefined;
    fields.unshift(longest);
    filled.add(longest);
    const last = fields.findLast(
      (name) => !isNeeded(found, name, fields, given) && !Object.hasOwn(given, name),
    );
    if (fields.length > MODAL.components) {
      if (last === undefined) return undefined;
      fields.splice(fields.lastIndexOf(last), 1);
      filled.delete(last);
    }
    customId = carried();
  }
  if (fields.length === 0) return undefined;
  return {
    custom_id: customId,
    title: fit(saidIn(tongue, 'forms', found.question.form?.title ?? `/${found.path}`), MODAL.title),
    components: fields.map((name) =>
      field(found, name, given[name], {
        offered: offered.get(name),
        tongue,
        required: isNeeded(found, name, fields, given),
      }),
    ),
  };
}

/** Whether it must be filled in: it is declared so, or it is the only one left of a list of which one is needed. */
function isNeeded(
  { question: { options, form } }: Route,
  name: string,
  fields: readonly string[],
  given: RawOptions,
): boolean {
  const schema = options[name];
  if (schema !== undefined && isRequired(schema)) return true;
  return (form?.needs ?? []).some(
    (list) =>
      list.includes(name) &&
      !list.some((other) => other !== name && (fields.includes(other) || Object.hasOwn(given, other))),
  );
}

const called = (name: string) => {
  const words = name.replaceAll('_', ' ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
};

/** What may be chosen: few enough for a menu, and each with room in it. */
const choosable = (choices: readonly Choice[] | undefined) =>
  choices !== undefined &&
  choices.length > 0 &&
  choices.length <= SELECT.options &&
  choices.every(({ value }) => value.length > 0 && value.length <= SELECT.option)
    ? choices
    : undefined;

function field(
  found: Route,
  name: string,
  given: string | undefined,
  {
    offered,
    required,
    tongue,
  }: {
    readonly offered: readonly Choice[] | undefined;
    readonly required: boolean;
    readonly tongue: Tongue | undefined;
  },
): APILabelComponent {
  const schema = found.question.options[name];
  const meta: OptionMeta = schema ? metaOf(schema) : { kind: 'text', says: name, example: '' };
  const label = {
    type: ComponentType.Label,
    label: fit(called(saidIn(tongue, 'options', name)), MODAL.label),
    description: fit(oneLine(saidIn(tongue, 'says', meta.says)), MODAL.description),
  } as const;
  const choices = choosable(meta.choices ?? offered);
  // What somebody saved is called as she called it.
  const labelOf = ({ label: said, value }: Choice) =>
    meta.choices === undefined ? (said ?? value) : saidIn(tongue, 'choices', said ?? value);
  const chosen = choices && chosenAmong(choices, given, meta);
  // What was typed before and is none of them is typed again, rather than lost.
  if (choices && chosen) {
    return {
      ...label,
      component: {
        type: ComponentType.StringSelect,
        custom_id: name,
        required,
        min_values: required ? 1 : 0,
        max_values: meta.several === undefined ? 1 : choices.length,
        options: choices.map((choice) => ({
          value: choice.value,
          label: fit(oneLine(labelOf(choice)), SELECT.option) || '…',
          ...(chosen.includes(choice) ? { default: true } : {}),
        })),
      },
    };
  }
  const longest = Math.min(meta.maxLength ?? PLAIN, MODAL.input);
  return {
    ...label,
    component: {
      type: ComponentType.TextInput,
      custom_id: name,
      style: longest > LONG ? TextInputStyle.Paragraph : TextInputStyle.Short,
      required,
      max_length: longest,
      placeholder: fit(`${saidIn(tongue, 'forms', 'like')} ${oneLine(meta.example)}`, MODAL.placeholder),
      ...(given === undefined || given === '' ? {} : { value: clean(given).slice(0, longest) }),
    },
  };
}

/** Characters of a field for which nothing is declared: a number. */
const PLAIN = 100;
/** Longer ones get several lines. */
const LONG = 200;

/** Those that were given; undefined where what was given is none of them. */
function chosenAmong(
  choices: readonly Choice[],
  given: string | undefined,
  { several }: OptionMeta,
): readonly Choice[] | undefined {
  if (given === undefined || given.trim() === '') return [];
  const parts = several === undefined ? [given] : given.split(several.trim());
  const meant = parts.map((part) => choiceMeant(choices, part));
  return meant.every((choice) => choice !== undefined) ? meant : undefined;
}

/** What a form that was sent asks; undefined for what was not written here. */
export interface Sent {
  readonly found: Route;
  /** What was carried and what was typed, without what was left empty. */
  readonly given: RawOptions;
  readonly fields: readonly string[];
}

/** The custom id of a form that was sent; undefined for another. */
export function formIn({ customId }: Pick<ModalSubmitInteraction, 'customId'>): Button | undefined {
  const button = readButton(customId);
  return button?.does === 'form' || button?.does === 'refill' ? button : undefined;
}

/** Reads a form that was sent. */
export function readForm(
  { payload }: Pick<Button, 'payload'>,
  interaction: Pick<ModalSubmitInteraction, 'fields'>,
  found: (path: string) => Route | undefined,
): Sent | undefined {
  const asked = readAsked(payload);
  const route = asked && found(asked.question);
  if (!asked || !route) return undefined;
  const given: Record<string, string> = { ...asked.options };
  const fields: string[] = [];
  for (const [name, typed] of interaction.fields.fields) {
    if (!isOption(route, name)) continue;
    fields.push(name);
    const schema = route.question.options[name];
    const { several = ' ' } = schema ? metaOf(schema) : {};
    const text =
      typed.type === ComponentType.TextInput
        ? unquoted(typed.value)
        : typed.type === ComponentType.StringSelect
          ? typed.values.join(several)
          : '';
    if (text.trim() !== '') given[name] = text;
  }
  return { found: route, given, fields };
}

/**
 * The same for a form that is sent twice, because the answer to the first sending was lost; another for the next form
 * that is opened.
 */
export const formKey = (user: string, customId: string) =>
  `form.${createHash('sha256').update(`${user} ${customId}`).digest('base64url').slice(0, 22)}`;

/** What opens the form again as it was sent; where there is no room for it in the message, what was typed stands in a file. */
export function refilling(
  { found, given, fields }: Sent,
  { id, user }: { readonly id: string; readonly user: { readonly id: string } },
): Required<Pick<Outbound, 'embeds' | 'components' | 'files'>> {
  // The fields that a question's form always has need not be said.
  const asks = fieldsOf(found, given);
  const usual = fields.every((name) => asks.includes(name));
  const options = usual ? given : { ...given, [FIELDS]: fields.join(' ') };
  const meaning = writeAsked({ question: found.path, options });
  const bears = { does: 'refill', owner: coded(user.id), serial: serialOf(id) } as const;
  const whole = writeButton({ ...bears, payload: meaning });
  const footer = `Typed${KEPT}${meaning}`;
  const customId =
    whole ?? (footer.length <= EMBED.footer ? writeButton({ ...bears, payload: keptAt(0) }) : undefined);
  if (customId === undefined) {
    const typed = Object.entries(given).map(([name, value]) => `${name}: ${clean(value)}\n`);
    return { embeds: [], components: [], files: [sent('typed.txt', typed.join(''), 'What you typed')] };
  }
  return {
    embeds: whole === undefined ? [{ description: 'What you typed is kept.', footer: { text: footer } }] : [],
    components: [
      {
        type: ComponentType.ActionRow,
        components: [
          {
            type: ComponentType.Button,
            style: ButtonStyle.Primary,
            label: fit('Change what I typed', BUTTONS.label),
            custom_id: customId,
          },
        ],
      },
    ],
    files: [],
  };
}

/** What a button that opens a form means; undefined for another button. `kept`: what its message keeps. */
export function openedBy(
  button: Button,
  kept: readonly string[],
): (Pick<Opening, 'given' | 'fields' | 'again'> & { readonly path: string }) | undefined {
  if (button.does !== 'form' && button.does !== 'refill') return undefined;
  const asked = meantBy(button, kept);
  if (!asked) return undefined;
  const { [FIELDS]: fields, ...given } = asked.options;
  return {
    path: asked.question,
    given,
    fields: fields?.split(' ').filter((name) => name !== ''),
    again: button.does === 'refill',
  };
}
