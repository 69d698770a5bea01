/**
 * What plain words left out, asked for: a menu where it is one of a few, otherwise a button that opens a form to type it
 * in. What was understood so far is carried as values, as buttons carry theirs.
 */
import {
  ButtonStyle,
  ComponentType,
  TextInputStyle,
  type APIEmbed,
  type APIModalInteractionResponseCallbackData,
} from 'discord.js';
import type { Waiting } from '../../asked/asked-back.ts';
import { isAttachment, metaOf } from '../../chat/options.ts';
import type { Registry } from '../../chat/registry.ts';
import { readAsked, writeAsked } from './asked.ts';
import { coded, keptAt, serialOf, writeButton, type Button } from './buttons.ts';
import { BUTTONS, EMBED, MODAL, SELECT } from './limits.ts';
import { saidIn, tongueOf } from './localise.ts';
import { KEPT, type Row, type SelectRow } from './render.ts';
import { fit, oneLine } from './text.ts';

/** The one field of the form. */
export const TYPED = 'typed';

/** Carried beside the options: what was taken from elsewhere than the words. No question has an option of this name. */
const ASSUMED = 'zz_assumed';
const BETWEEN = '\n';

export interface AsksFor {
  readonly components: readonly (Row | SelectRow)[];
  readonly embeds: readonly APIEmbed[];
}

/** The control that asks for what is missing; undefined where there is no room to carry what was understood. */
export function askingFor(
  waiting: Waiting,
  registry: Registry,
  { id, user }: { readonly id: string; readonly user: { readonly id: string } },
): AsksFor | undefined {
  const schema = registry.get(waiting.path)?.question.options[waiting.option];
  const meta = schema && metaOf(schema);
  if (!meta || isAttachment(meta.kind)) return undefined;
  const { path, option, options, assumed } = waiting;
  const carried = writeAsked({
    question: path,
    options: { ...options, ...(assumed.length === 0 ? {} : { [ASSUMED]: assumed.join(BETWEEN) }) },
  });
  const bears = { does: 'missing', owner: coded(user.id), serial: serialOf(id) } as const;
  const whole = writeButton({ ...bears, payload: `${option}=${carried}` });
  const customId = whole ?? writeButton({ ...bears, payload: `${option}=${keptAt(0)}` });
  const footer = `So far${KEPT}${carried}`;
  if (customId === undefined || (whole === undefined && footer.length > EMBED.footer)) return undefined;
  const embeds = whole === undefined ? [{ description: 'Understood so far', footer: { text: footer } }] : [];
  const choices = meta.choices ?? [];
  const chosen =
    choices.length > 0 &&
    choices.length <= SELECT.options &&
    choices.every(({ value }) => value.length <= SELECT.option);
  const row: Row | SelectRow = chosen
    ? {
        type: ComponentType.ActionRow,
        components: [
          {
            type: ComponentType.StringSelect,
            custom_id: customId,
            placeholder: fit(oneLine(meta.says), SELECT.placeholder),
            options: choices.map(({ value, label }) => ({
              value,
              label: fit(oneLine(label ?? value), SELECT.option),
            })),
          },
        ],
      }
    : {
        type: ComponentType.ActionRow,
        components: [
          {
            type: ComponentType.Button,
            style: ButtonStyle.Primary,
            label: fit(`Say the ${named(option)}`, BUTTONS.label),
            custom_id: customId,
          },
        ],
      };
  return { components: [row], embeds };
}

const named = (option: string) => option.replaceAll('_', ' ');

/** Reads back what waits; undefined where nothing does. `kept` is what the message keeps. */
export function waitingIn({ payload }: Button, kept: readonly string[]): Waiting | undefined {
  const [, option, carried = ''] = /^([a-z][a-z0-9_]*)=(.*)$/su.exec(payload) ?? [];
  const asked = readAsked(carried === keptAt(0) ? (kept[0] ?? '') : carried);
  if (option === undefined || !asked) return undefined;
  const { [ASSUMED]: assumed, ...options } = asked.options;
  return {
    path: asked.question,
    option,
    options,
    assumed: assumed === undefined ? [] : assumed.split(BETWEEN),
  };
}

/** The form in which what is missing is typed; undefined where the question has no such option. */
export function formFor(
  { path, option }: Waiting,
  customId: string,
  registry: Registry,
  locale?: string,
): APIModalInteractionResponseCallbackData | undefined {
  const schema = registry.get(path)?.question.options[option];
  if (!schema) return undefined;
  const { says, example, maxLength } = metaOf(schema);
  const tongue = tongueOf(locale);
  return {
    custom_id: customId,
    title: fit(`/${path}`, MODAL.title),
    components: [
      {
        type: ComponentType.Label,
        label: fit(named(saidIn(tongue, 'options', option)), MODAL.label),
        description: fit(oneLine(saidIn(tongue, 'says', says)), MODAL.description),
        component: {
          type: ComponentType.TextInput,
          custom_id: TYPED,
          style: TextInputStyle.Short,
          max_length: Math.min(maxLength ?? 200, MODAL.input),
          placeholder: fit(oneLine(example), MODAL.placeholder),
          required: true,
        },
      },
    ],
  };
}
