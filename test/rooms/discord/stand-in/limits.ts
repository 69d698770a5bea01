/**
 * What the platform allows, each number with its source: discord/discord-api-docs at c98d64bc (2026-08-06), path
 * under `developers/`, unless another is named.
 */
export const LIMITS = {
  /** ms to the first response. interactions/receiving-and-responding.mdx:351 */
  firstResponse: 3_000,
  /** ms in which an interaction's token edits and follows up. receiving-and-responding.mdx:351, 432 */
  tokenLife: 15 * 60_000,
  /** Follow-ups of a user-installed app where the bot is not in the server. receiving-and-responding.mdx:474 */
  userInstalledFollowUps: 5,

  /** Options of a command or subcommand. interactions/application-commands.mdx:33, 77 */
  options: 25,
  /** Choices of an option, and of an autocompletion. application-commands.mdx:76; receiving-and-responding.mdx:313 */
  choices: 25,
  /** Name and string value of a choice. application-commands.mdx, option choice table */
  choice: 100,
  /** Names. application-commands.mdx:18 */
  name: /^[-_'\p{L}\p{N}\p{sc=Deva}\p{sc=Thai}]{1,32}$/u,
  nameLength: 32,
  /** Descriptions, 1 to this. application-commands.mdx, command and option tables */
  description: 100,
  /** Languages that names and descriptions may be given in. reference.mdx:555–590 */
  locales: [
    ...[
      'id',
      'da',
      'de',
      'en-GB',
      'en-US',
      'es-ES',
      'es-419',
      'fr',
      'hr',
      'it',
      'lt',
      'hu',
      'nl',
      'no',
      'pl',
      'pt-BR',
    ],
    ...[
      'ro',
      'fi',
      'sv-SE',
      'vi',
      'tr',
      'cs',
      'el',
      'bg',
      'ru',
      'uk',
      'hi',
      'th',
      'zh-CN',
      'ja',
      'zh-TW',
      'ko',
    ],
  ],
  /** All names, descriptions and values of one command, the longest localisation counting. application-commands.mdx:450 */
  command: 8_000,
  /** min_length and max_length of a string option. application-commands.mdx, option table */
  optionLength: 6_000,
  /** Global commands by type: chat input, user, message, entry point. application-commands.mdx:169–177 */
  commands: { 1: 100, 2: 15, 3: 15, 4: 1 },
  /** INTEGER and NUMBER lie within ±2^53. application-commands.mdx, option types */
  number: 2 ** 53,

  /** resources/message.mdx:1080 */
  content: 2_000,
  /** Length of a nonce. resources/message.mdx, create message */
  nonce: 25,
  /** resources/message.mdx:611–619; trimmed before counting; the sum is over all embeds of a message */
  embed: {
    title: 256,
    description: 4_096,
    fields: 25,
    fieldName: 256,
    fieldValue: 1_024,
    footer: 2_048,
    author: 256,
    sum: 6_000,
  },
  /** interactions/receiving-and-responding.mdx:297 */
  embeds: 10,
  /** components/reference.mdx:2542 */
  rows: 5,
  /** Buttons in a row. components/reference.mdx:94 */
  buttons: 5,
  /** Label of a button. components/reference.mdx:175 */
  label: 80,
  /** components/reference.mdx:81–85; unique in the message */
  customId: 100,
  /** components/reference.mdx:301–302 and the select tables */
  select: { options: 25, placeholder: 150, option: 100 },
  /** Components of the second kind, nested ones included. components/reference.mdx:14–18 */
  components: 40,
  /** Texts of a section; items of a gallery. components/reference.mdx:1509 and the section table */
  section: 3,
  gallery: 10,
  /** Over all text displays. discord.js guide, display-components.mdx:16; not in the API's own pages */
  textDisplays: 4_000,
  /** receiving-and-responding.mdx:320–322; components/reference.mdx:503–507, 2017, 2110 */
  modal: { title: 45, components: 5, label: 45, description: 100, input: 4_000, placeholder: 100 },

  /** resources/channel.mdx, start thread: name, and minutes until it sleeps */
  thread: { name: 100, sleepsAfter: [60, 1_440, 4_320, 10_080] },
  /** Pinned messages of a channel. topics/opcodes-and-status-codes.mdx, 30003 */
  pins: 250,
  /** resources/guild-scheduled-event.mdx: texts, and events of a server that are not over (opcodes-and-status-codes.mdx, 30038) */
  event: { name: 100, description: 1_000, location: 100, most: 100 },

  /** Bytes of a file where nothing was boosted. reference.mdx:430 */
  file: 10 * 1024 * 1024,
  /** Bytes of a request. resources/message.mdx:1072 */
  request: 25 * 1024 * 1024,
  /** Files of a message. @discordjs/builders, messages/Assertions.ts */
  files: 10,
  /** Alt text of a file. resources/message.mdx:651 */
  altText: 1_024,

  /** Bytes of one payload to the gateway. events/gateway.mdx:52 */
  payload: 4_096,
  /** Payloads to the gateway in 60 s. events/gateway.mdx:507 */
  sends: 120,
  /** Identifies in a day. events/gateway.mdx:779 */
  identifies: 1_000,
  /** Requests in a second, interaction endpoints exempt. topics/rate-limits.mdx:122, 128; receiving-and-responding.mdx:437 */
  requests: 50,
} as const;
