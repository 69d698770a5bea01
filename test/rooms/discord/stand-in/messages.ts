/** What a message, a modal and a list of offers may hold. */
import { z } from 'zod';
import { check, invalidForm, refusals } from './errors.ts';
import { LIMITS } from './limits.ts';
import type { Upload } from './uploads.ts';

export const Flag = { ephemeral: 1 << 6, loading: 1 << 7, suppressEmbeds: 1 << 2, v2: 1 << 15 } as const;
/** The flags a message may be sent with: those above, SUPPRESS_NOTIFICATIONS and IS_VOICE_MESSAGE. receiving-and-responding.mdx:304 */
const SENDABLE = Flag.ephemeral | Flag.suppressEmbeds | Flag.v2 | (1 << 12) | (1 << 13);

export interface Component {
  readonly type: number;
  readonly custom_id?: string;
  readonly label?: string;
  readonly style?: number;
  readonly url?: string;
  readonly disabled?: boolean;
  readonly options?: readonly {
    readonly label: string;
    readonly value: string;
    readonly description?: string;
    readonly default?: boolean;
  }[];
  readonly min_values?: number;
  readonly max_values?: number;
  readonly content?: string;
  readonly components?: readonly Component[];
  readonly accessory?: Component;
  readonly component?: Component;
  readonly required?: boolean;
  readonly min_length?: number;
  readonly max_length?: number;
  readonly value?: string;
}

export interface Embed {
  readonly title?: string;
  readonly description?: string;
  readonly url?: string;
  readonly color?: number;
  readonly fields?: readonly { readonly name: string; readonly value: string; readonly inline?: boolean }[];
  readonly footer?: { readonly text: string };
  readonly author?: { readonly name: string };
  readonly image?: { readonly url: string };
  readonly thumbnail?: { readonly url: string };
}

export interface AllowedMentions {
  readonly parse?: readonly string[];
  readonly users?: readonly string[];
  readonly roles?: readonly string[];
  readonly replied_user?: boolean;
}

export interface MessageBody {
  readonly content?: string | null;
  readonly embeds?: readonly Embed[] | null;
  readonly components?: readonly Component[] | null;
  readonly attachments?: readonly { id: string; filename?: string; description?: string | null }[] | null;
  readonly allowed_mentions?: AllowedMentions | null;
  readonly message_reference?: { readonly message_id: string } | null;
  readonly flags?: number | null;
}

const trimmed = (most: number) => z.string().trim().max(most);
const address = z
  .string()
  .max(2048)
  .refine((url) => /^(https?|attachment):\/\/\S+$/.test(url), {
    message: "Scheme must be one of ('http', 'https', 'attachment').",
    params: { code: 'URL_TYPE_INVALID_SCHEME' },
  });
const picture = z.object({ url: address }).nullish();
// resources/message.mdx:611–619
const embed = z
  .object({
    title: trimmed(LIMITS.embed.title).nullish(),
    description: trimmed(LIMITS.embed.description).nullish(),
    url: address.nullish(),
    color: z.int().min(0).max(0xffffff).nullish(),
    timestamp: z.iso.datetime({ offset: true }).nullish(),
    fields: z
      .array(
        z.object({
          name: trimmed(LIMITS.embed.fieldName).min(1),
          value: trimmed(LIMITS.embed.fieldValue).min(1),
          inline: z.boolean().optional(),
        }),
      )
      .max(LIMITS.embed.fields)
      .nullish(),
    footer: z.object({ text: trimmed(LIMITS.embed.footer).min(1), icon_url: address.nullish() }).nullish(),
    author: z
      .object({
        name: trimmed(LIMITS.embed.author).min(1),
        url: address.nullish(),
        icon_url: address.nullish(),
      })
      .nullish(),
    image: picture,
    thumbnail: picture,
  })
  .superRefine((given, issues) => {
    const something =
      Boolean(given.title) ||
      Boolean(given.description) ||
      (given.fields?.length ?? 0) > 0 ||
      [given.footer, given.author, given.image, given.thumbnail].some((part) => part != null);
    if (!something)
      issues.addIssue({
        code: 'custom',
        path: ['description'],
        message: 'This field is required',
        params: { code: 'BASE_TYPE_REQUIRED' },
      });
  });

const customId = z.string().min(1).max(LIMITS.customId);
const emoji = z.object({
  id: z.string().nullish(),
  name: z.string().nullish(),
  animated: z.boolean().nullish(),
});
const needs = (what: string) => ({ message: what, params: { code: 'BASE_TYPE_REQUIRED' } });
const button = z
  .object({
    type: z.literal(2),
    style: z.int().min(1).max(6),
    label: z.string().min(1).max(LIMITS.label).nullish(),
    emoji: emoji.nullish(),
    custom_id: customId.nullish(),
    url: address.nullish(),
    sku_id: z.string().nullish(),
    disabled: z.boolean().nullish(),
  })
  .refine(
    ({ label, emoji, style }) => style === 6 || label != null || emoji != null,
    needs('A button needs a label or an emoji'),
  )
  .refine(({ style, custom_id }) => style > 4 || custom_id != null, needs('A custom id required'))
  .refine(({ style, url }) => (style === 5) === (url != null), {
    message: 'A url is for link buttons',
    params: { code: 'BUTTON_COMPONENT_CUSTOM_ID_URL_MUTUALLY_EXCLUSIVE' },
  })
  .refine(({ style, custom_id }) => style <= 4 || custom_id == null, {
    message: 'A custom id and url cannot both be specified',
    params: { code: 'BUTTON_COMPONENT_CUSTOM_ID_URL_MUTUALLY_EXCLUSIVE' },
  });
const selectBase = {
  custom_id: customId,
  placeholder: z.string().max(LIMITS.select.placeholder).nullish(),
  min_values: z.int().min(0).max(LIMITS.select.options).nullish(),
  max_values: z.int().min(1).max(LIMITS.select.options).nullish(),
  disabled: z.boolean().nullish(),
  required: z.boolean().nullish(),
};
const select = z
  .object({
    ...selectBase,
    type: z.literal(3),
    options: z
      .array(
        z.object({
          label: z.string().min(1).max(LIMITS.select.option),
          value: z.string().min(1).max(LIMITS.select.option),
          description: z.string().max(LIMITS.select.option).nullish(),
          emoji: emoji.nullish(),
          default: z.boolean().nullish(),
        }),
      )
      .min(1)
      .max(LIMITS.select.options),
  })
  .superRefine(({ options, min_values, max_values }, issues) => {
    const fault = (path: string, code: string, message: string) =>
      issues.addIssue({ code: 'custom', path: [path], message, params: { code } });
    if (new Set(options.map(({ value }) => value)).size < options.length)
      fault(
        'options',
        'SELECT_COMPONENT_OPTION_VALUE_DUPLICATED',
        'The specified option value is already used',
      );
    if ((max_values ?? 1) > options.length || (min_values ?? 1) > options.length)
      fault('max_values', 'NUMBER_TYPE_MAX', 'More than there are options');
    if (options.filter((option) => option.default === true).length > (max_values ?? 1))
      fault('options', 'SELECT_COMPONENT_TOO_MANY_DEFAULT_VALUES', 'More defaults than may be chosen');
  });
const autoSelect = z.object({ ...selectBase, type: z.literal([5, 6, 7, 8]) });
const row = z
  .object({
    type: z.literal(1),
    components: z.array(z.discriminatedUnion('type', [button, select, autoSelect])).min(1),
  })
  .superRefine(({ components }, issues) => {
    const fault = (message: string) =>
      issues.addIssue({
        code: 'custom',
        path: ['components'],
        message,
        params: { code: 'COMPONENT_LAYOUT_WIDTH_EXCEEDED' },
      });
    // components/reference.mdx:94
    const buttons = components.filter(({ type }) => type === 2).length;
    if (buttons > LIMITS.buttons) fault('The specified component exceeds the maximum width');
    if (buttons < components.length && components.length > 1) fault('A row holds buttons or one select menu');
  });

const media = z.object({ url: address });
const text = z.object({ type: z.literal(10), content: z.string().min(1).max(LIMITS.textDisplays) });
const thumbnail = z.object({
  type: z.literal(11),
  media,
  description: z.string().max(LIMITS.altText).nullish(),
});
const section = z.object({
  type: z.literal(9),
  components: z.array(text).min(1).max(LIMITS.section),
  accessory: z.discriminatedUnion('type', [button, thumbnail]),
});
const gallery = z.object({
  type: z.literal(12),
  items: z
    .array(z.object({ media, description: z.string().max(LIMITS.altText).nullish() }))
    .min(1)
    .max(LIMITS.gallery),
});
const shownFile = z.object({ type: z.literal(13), file: media });
const separator = z.object({ type: z.literal(14), spacing: z.int().min(1).max(2).nullish() });
const inside = z.discriminatedUnion('type', [row, text, section, gallery, shownFile, separator]);
const container = z.object({
  type: z.literal(17),
  accent_color: z.int().min(0).max(0xffffff).nullish(),
  components: z.array(inside).min(1),
});

const mentions = z
  .object({
    parse: z.array(z.enum(['roles', 'users', 'everyone'])).optional(),
    users: z.array(z.string()).max(100).optional(),
    roles: z.array(z.string()).max(100).optional(),
    replied_user: z.boolean().optional(),
  })
  .nullish();
const common = {
  content: z.string().max(LIMITS.content).nullish(),
  embeds: z.array(embed).max(LIMITS.embeds).nullish(),
  attachments: z
    .array(
      z.object({
        id: z.union([z.string(), z.number()]).transform(String),
        filename: z.string().optional(),
        description: z.string().max(LIMITS.altText).nullish(),
      }),
    )
    .nullish(),
  allowed_mentions: mentions,
  message_reference: z
    .object({ message_id: z.string(), fail_if_not_exists: z.boolean().optional() })
    .nullish(),
  nonce: z.union([z.string().max(LIMITS.nonce), z.int()]).nullish(),
  flags: z.int().nullish(),
};
const legacy = z.object({ ...common, components: z.array(row).max(LIMITS.rows).nullish() });
const second = z.object({
  ...common,
  components: z
    .array(z.discriminatedUnion('type', [row, text, section, gallery, shownFile, separator, container]))
    .nullish(),
});

/** Every component, nested ones included, with its place. */
export function* walk(
  components: readonly Component[] | null | undefined,
  path: readonly string[] = ['components'],
): Generator<{ component: Component; path: string[] }> {
  for (const [index, component] of (components ?? []).entries()) {
    const at = [...path, String(index)];
    yield { component, path: at };
    yield* walk(component.components, [...at, 'components']);
    if (component.accessory) yield { component: component.accessory, path: [...at, 'accessory'] };
    if (component.component) yield { component: component.component, path: [...at, 'component'] };
  }
}

function repeatedIds(components: readonly Component[] | null | undefined, path: readonly string[]) {
  const seen = new Set<string>();
  const faults: { path: string[]; code: string; message: string }[] = [];
  for (const { component, path: at } of walk(components, path)) {
    if (component.custom_id === undefined) continue;
    if (seen.has(component.custom_id))
      faults.push({
        path: [...at, 'custom_id'],
        code: 'COMPONENT_CUSTOM_ID_DUPLICATED',
        message: 'Component custom id cannot be duplicated',
      });
    seen.add(component.custom_id);
  }
  return faults;
}

const inEmbed = ({ title, description, fields, footer, author }: Embed) =>
  [
    title,
    description,
    footer?.text,
    author?.name,
    ...(fields ?? []).flatMap(({ name, value }) => [name, value]),
  ].reduce((sum, part) => sum + (part?.length ?? 0), 0);

/**
 * Checks a message as sent or edited; `before` is what it was, of which an edit keeps what it does not name. Throws
 * 50035, 50006 where nothing would be left, 40005 where the files are too large.
 */
export function checkMessage(
  body: unknown,
  uploads: readonly Upload[],
  {
    before,
    under = [],
    fileLimit = LIMITS.file,
  }: {
    before?: {
      flags: number;
      content: string;
      embeds: readonly Embed[];
      components: readonly Component[];
      attachments: readonly { id: string }[];
    };
    under?: readonly string[];
    fileLimit?: number;
  } = {},
): MessageBody {
  const flags = (body as { flags?: number } | null)?.flags ?? 0;
  const v2 = ((flags | (before?.flags ?? 0)) & Flag.v2) !== 0;
  const message = check<MessageBody>(
    (v2 ? second : legacy) as unknown as z.ZodType<MessageBody>,
    body,
    under,
  );
  const faults = repeatedIds(message.components, [...under, 'components']);
  const fault = (path: string, code: string, text: string) =>
    faults.push({ path: [...under, ...path.split('.')], code, message: text });

  if (before === undefined && (flags & ~SENDABLE) !== 0)
    fault('flags', 'BITFIELD_INVALID', 'These flags cannot be set');
  // resources/message.mdx:611–619: the sum is over all embeds
  if ((message.embeds ?? []).reduce((sum, each) => sum + inEmbed(each), 0) > LIMITS.embed.sum)
    fault('embeds', 'MAX_EMBED_SIZE_EXCEEDED', `Embed size exceeds maximum size of ${LIMITS.embed.sum}`);
  if (uploads.length + keptFiles(message, before).length > LIMITS.files)
    fault('attachments', 'BASE_TYPE_MAX_LENGTH', `Must be ${LIMITS.files} or fewer in length.`);
  for (const { id } of message.attachments ?? [])
    if (!uploads.some((file) => file.index === id) && !before?.attachments.some((file) => file.id === id))
      fault('attachments', 'ATTACHMENT_NOT_FOUND', `There is no file ${id}`);
  if (v2) {
    // components/reference.mdx:14–18
    if (Boolean(message.content) || (message.embeds?.length ?? 0) > 0)
      fault(
        'content',
        'MESSAGE_CANNOT_USE_LEGACY_FIELDS_WITH_COMPONENTS_V2',
        'No content or embeds beside these components',
      );
    const all = [...walk(message.components)].map(({ component }) => component);
    if (all.length > LIMITS.components)
      fault(
        'components',
        'COMPONENT_MAX_TOTAL_COMPONENTS_EXCEEDED',
        `At most ${LIMITS.components} components`,
      );
    if (
      all.reduce((sum, { type, content }) => sum + (type === 10 ? (content?.length ?? 0) : 0), 0) >
      LIMITS.textDisplays
    )
      fault(
        'components',
        'COMPONENT_DISPLAYABLE_TEXT_SIZE_EXCEEDED',
        `At most ${LIMITS.textDisplays} characters`,
      );
    const names = new Set(uploads.map(({ filename }) => filename));
    for (const [, name] of JSON.stringify(message.components ?? []).matchAll(/"attachment:\/\/([^"]+)"/g))
      if (name !== undefined && !names.has(name) && before === undefined)
        fault('components', 'UNFURLED_MEDIA_ITEM_REFERENCED_ATTACHMENT_NOT_FOUND', `No file ${name}`);
  }
  if (faults.length > 0) throw invalidForm(faults);
  if (uploads.some(({ bytes }) => bytes.length > fileLimit)) throw refusals.tooLarge();

  const content = message.content === undefined ? before?.content : message.content;
  const embeds = message.embeds === undefined ? before?.embeds : message.embeds;
  const components = message.components === undefined ? before?.components : message.components;
  const files = uploads.length + keptFiles(message, before).length;
  const filled = Boolean(content?.trim()) || (embeds?.length ?? 0) > 0 || files > 0;
  if (!filled && !(v2 && (components?.length ?? 0) > 0)) throw refusals.empty();
  return message;
}

/** The files of before that an edit keeps: all of them where it does not list any. */
export function keptFiles<T extends { id: string }>(
  message: Pick<MessageBody, 'attachments'>,
  before: { attachments: readonly T[] } | undefined,
): readonly T[] {
  if (before === undefined) return [];
  if (message.attachments == null) return before.attachments;
  const kept = new Set(message.attachments.map(({ id }) => id));
  return before.attachments.filter(({ id }) => kept.has(id));
}

export interface Modal {
  readonly custom_id: string;
  readonly title: string;
  readonly components: readonly Component[];
}

const input = {
  type: z.literal(4),
  custom_id: customId,
  style: z.int().min(1).max(2),
  min_length: z.int().min(0).max(LIMITS.modal.input).nullish(),
  max_length: z.int().min(1).max(LIMITS.modal.input).nullish(),
  placeholder: z.string().max(LIMITS.modal.placeholder).nullish(),
  value: z.string().max(LIMITS.modal.input).nullish(),
  required: z.boolean().nullish(),
};
const modal = z.object({
  custom_id: customId,
  title: z.string().min(1).max(LIMITS.modal.title),
  components: z
    .array(
      z.union([
        z.object({
          type: z.literal(1),
          components: z
            .array(z.object({ ...input, label: z.string().min(1).max(LIMITS.modal.label) }))
            .length(1),
        }),
        z.object({
          type: z.literal(18),
          label: z.string().min(1).max(LIMITS.modal.label),
          description: z.string().max(LIMITS.modal.description).nullish(),
          component: z.discriminatedUnion('type', [
            z.object(input),
            select,
            autoSelect,
            z.object({
              type: z.literal(19),
              custom_id: customId,
              max_values: z.int().min(1).max(10).nullish(),
              required: z.boolean().nullish(),
            }),
          ]),
        }),
        text,
      ]),
    )
    .min(1)
    .max(LIMITS.modal.components),
});

export function checkModal(body: unknown): Modal {
  const checked = check(modal, body, ['data']) as Modal;
  const faults = repeatedIds(checked.components, ['data', 'components']);
  for (const { component, path } of walk(checked.components, ['data', 'components'])) {
    // components/reference.mdx: what is filled in already keeps to the field's own bounds
    if (component.type === 4 && (component.value?.length ?? 0) > (component.max_length ?? LIMITS.modal.input))
      faults.push({
        path: [...path, 'value'],
        code: 'BASE_TYPE_MAX_LENGTH',
        message: `Must be ${component.max_length ?? LIMITS.modal.input} or fewer in length.`,
      });
    // components/reference.mdx, string select: nothing in a form is disabled
    if (component.disabled === true)
      faults.push({ path: [...path, 'disabled'], code: 'BASE_TYPE_INVALID', message: 'Not in a modal' });
  }
  if (faults.length > 0) throw invalidForm(faults);
  return checked;
}

/** Offers of an autocompletion: text for a string option, numbers for the others. */
export function checkChoices(body: unknown, type: number) {
  const value =
    type === 3
      ? z.string().max(LIMITS.choice)
      : type === 4
        ? z.int()
        : z.number().min(-LIMITS.number).max(LIMITS.number);
  const schema = z.object({
    choices: z.array(z.object({ name: z.string().min(1).max(LIMITS.choice), value })).max(LIMITS.choices),
  });
  return check(schema, body, ['data']).choices;
}
