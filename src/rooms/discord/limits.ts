/**
 * What the platform allows, once each, with the page of its developer documentation that says so
 * (github.com/discord/discord-api-docs, folder developers/). Sizes are characters where no unit is named.
 */

export const MESSAGE = {
  /** resources/message, create message */
  content: 2_000,
  /** resources/message, create message */
  embeds: 10,
  /** resources/message, create message: files of one message, as the official builders check it */
  files: 10,
  /** resources/message, attachment object: alt text */
  altText: 1_024,
  /** resources/message, create message: dedupes messages for some minutes */
  nonce: 25,
} as const satisfies Record<string, number>;

/** resources/message, embed limits */
export const EMBED = {
  title: 256,
  description: 4_096,
  fields: 25,
  fieldName: 256,
  fieldValue: 1_024,
  footer: 2_048,
  /** over all embeds of a message together */
  total: 6_000,
} as const satisfies Record<string, number>;

/** components/reference */
export const BUTTONS = {
  rows: 5,
  inRow: 5,
  label: 80,
  customId: 100,
} as const satisfies Record<string, number>;

/** components/reference, string select */
export const SELECT = {
  options: 25,
  placeholder: 150,
  /** label and value of an option */
  option: 100,
} as const satisfies Record<string, number>;

/** interactions/receiving-and-responding, modal; components/reference, label and text input */
export const MODAL = {
  title: 45,
  components: 5,
  label: 45,
  description: 100,
  placeholder: 100,
  input: 4_000,
} as const satisfies Record<string, number>;

/** interactions/application-commands */
export const COMMAND = {
  options: 25,
  choiceName: 100,
  choiceValue: 100,
  /** maximum length of a text option */
  text: 6_000,
  /** all names, descriptions and values of a command together */
  total: 8_000,
} as const satisfies Record<string, number>;

/** interactions/receiving-and-responding: offers of one autocomplete */
export const SUGGESTIONS = 25;

/** reference, uploading files: what every installation may send; an interaction names its own limit. */
export const FILE_BYTES = 10 * 1024 * 1024;

/** resources/message, create message: all of one request */
export const REQUEST_BYTES = 25 * 1024 * 1024;

/** resources/channel, start thread without message */
export const THREAD = {
  name: 100,
  /** minutes until it sleeps: the longest there is, a week */
  sleepsAfter: 10_080,
} as const satisfies Record<string, number>;

/** resources/guild-scheduled-event */
export const EVENT = {
  name: 100,
  description: 1_000,
  location: 100,
} as const satisfies Record<string, number>;

/** topics/opcodes-and-status-codes */
export const CODE = {
  unknownChannel: 10_003,
  unknownServer: 10_004,
  unknownMessage: 10_008,
  unknownInteraction: 10_062,
  unknownEvent: 10_070,
  tooManyOldEdits: 30_046,
  alreadyAcknowledged: 40_060,
  missingAccess: 50_001,
  missingPermissions: 50_013,
  archivedThread: 50_083,
} as const satisfies Record<string, number>;
