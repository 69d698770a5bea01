/**
 * One interaction's answer. It goes out at once when it is there in time; otherwise the interaction is deferred, once,
 * and the answer follows. Nothing here throws: what the platform refuses becomes one line of the log.
 */
import {
  MessageFlags,
  type APIEmbed,
  type ButtonInteraction,
  type ChatInputCommandInteraction,
  type MessageContextMenuCommandInteraction,
  type ModalMessageModalSubmitInteraction,
  type ModalSubmitInteraction,
  type StringSelectMenuInteraction,
  type UserContextMenuCommandInteraction,
} from 'discord.js';
import type { Sent } from './files.ts';
import { isBrokenLine, isOver, isRefused, refusalFacts, type Log } from './platform.ts';
import type { Row, SelectRow } from './render.ts';

export type Answerable =
  | ChatInputCommandInteraction
  | ButtonInteraction
  | MessageContextMenuCommandInteraction
  | StringSelectMenuInteraction
  | ModalSubmitInteraction
  | UserContextMenuCommandInteraction;

/** A message as it is sent; keys left out of an edit stay as they are. */
export interface Outbound {
  readonly content?: string;
  readonly embeds?: readonly APIEmbed[];
  readonly components?: readonly (Row | SelectRow)[];
  readonly files?: readonly Sent[];
  /** True where an edit takes away the files that were there. */
  readonly replaceFiles?: boolean;
}

/** Whether it comes from a control of a message, which it may change. */
const isOnMessage = (
  interaction: Answerable,
): interaction is ButtonInteraction | StringSelectMenuInteraction | ModalMessageModalSubmitInteraction =>
  interaction.isMessageComponent() || (interaction.isModalSubmit() && interaction.isFromMessage());

/** A message of its own, or the message that the pressed button is on. */
export type Where = 'new' | 'same';

/** Deferred after this long: the platform waits for three seconds, and a slow line needs some of them. */
export const DEFER_AFTER_MS = 1_000;

const SILENT = { parse: [] as never[] };

const body = ({ content, embeds, components, files, replaceFiles }: Outbound) => ({
  ...(content === undefined ? {} : { content }),
  ...(embeds === undefined ? {} : { embeds: [...embeds] }),
  ...(components === undefined ? {} : { components: [...components] }),
  ...(files === undefined ? {} : { files: files.map((file) => ({ ...file })) }),
  ...(replaceFiles ? { attachments: [] } : {}),
  allowedMentions: SILENT,
});

const ephemeral = (hidden: boolean) => (hidden ? { flags: MessageFlags.Ephemeral as const } : {});

interface Deferred {
  readonly where: Where;
  readonly hidden: boolean;
}

/** Whether what was deferred becomes the answer, or the answer needs a message of its own. */
const editsIn = (deferred: Deferred, where: Where, hidden: boolean) =>
  deferred.where === where && (where === 'same' || deferred.hidden || !hidden);

export class Reply {
  private timer: NodeJS.Timeout | undefined;
  private deferring: Promise<void> | undefined;
  /** How it was deferred: where to, and whether only the asker sees it. */
  private deferred: Deferred | undefined;
  /** Whether the announcement of a deferral was taken back. */
  private withdrawn = false;
  /** The platform takes no answer any more. */
  private over = false;
  private where: Where = 'new';
  private hidden = true;

  constructor(
    private readonly interaction: Answerable,
    private readonly log: Log,
    deferAfter: number,
  ) {
    this.timer = setTimeout(() => {
      this.timer = undefined;
      this.deferring = this.defer();
    }, deferAfter);
  }

  /** Says where the answer is going to be and who sees it, in case it has to be deferred; until then, only the asker. */
  expect(where: Where, hidden: boolean): void {
    this.where = where;
    this.hidden = hidden;
  }

  /** Ends the waiting. Returns whether the answer will be the asker's alone: a deferral may have settled that. */
  async settle(hidden: boolean): Promise<boolean> {
    clearTimeout(this.timer);
    this.timer = undefined;
    await this.deferring;
    return hidden || (this.deferred?.where === 'new' && this.deferred.hidden);
  }

  /** Sends the answer; false where it did not reach the asker. */
  async send(message: Outbound, where: Where, hidden: boolean): Promise<boolean> {
    await this.settle(hidden);
    if (this.over) return false;
    const give = (what: Outbound, to: Where, alone: boolean) =>
      this.attempt(
        () =>
          this.deferred === undefined
            ? this.first(what, to, alone)
            : this.later(what, to, alone, this.deferred),
        this.deferred === undefined || editsIn(this.deferred, to, alone),
      );
    const went = await give(message, where, hidden);
    if (went !== 'refused') return went === 'sent';
    // She still hears that an answer is there.
    const content =
      'There is an answer, but this place did not take it. It is noted; ask again in another way.';
    await give({ content }, 'new', true);
    return false;
  }

  /** One more message after the answer. */
  async follow(message: Outbound, hidden: boolean): Promise<boolean> {
    if (this.over) return false;
    const went = await this.attempt(
      () => this.interaction.followUp({ ...body(message), ...ephemeral(hidden) }),
      false,
    );
    return went === 'sent';
  }

  /** Acknowledges a press that changes nothing any more. */
  async nothing(): Promise<boolean> {
    await this.settle(true);
    const { interaction } = this;
    if (this.over || this.deferred !== undefined || !isOnMessage(interaction)) return !this.over;
    return (await this.attempt(() => interaction.deferUpdate())) === 'sent';
  }

  private async defer(): Promise<void> {
    const { hidden, where, interaction } = this;
    await this.attempt(async () => {
      if (where === 'same' && isOnMessage(interaction)) await interaction.deferUpdate();
      else await interaction.deferReply(ephemeral(hidden));
      this.deferred = { where, hidden };
    });
  }

  private async first(message: Outbound, where: Where, hidden: boolean): Promise<void> {
    const { interaction } = this;
    if (where === 'same' && isOnMessage(interaction)) await interaction.update(body(message));
    else await interaction.reply({ ...body(message), ...ephemeral(hidden) });
  }

  private async later(message: Outbound, where: Where, hidden: boolean, deferred: Deferred): Promise<void> {
    const { interaction } = this;
    if (editsIn(deferred, where, hidden)) {
      await interaction.editReply(body(message));
      return;
    }
    // What was announced to all turned out to be for her alone: the announcement goes first, so that nothing of it shows.
    if (deferred.where === 'new' && !this.withdrawn) {
      await interaction.deleteReply();
      this.withdrawn = true;
    }
    await interaction.followUp({ ...body(message), ...ephemeral(hidden) });
  }

  /**
   * Where the line breaks under it, it is sent once more: of a first answer the platform takes one only, and an edit
   * twice is the same edit. A message of its own might come twice, and is not.
   */
  private async attempt(act: () => Promise<unknown>, again = true): Promise<'sent' | 'refused' | 'lost'> {
    try {
      await act().catch((error: unknown) => {
        if (!again || !isBrokenLine(error)) throw error;
        return act();
      });
      return 'sent';
    } catch (error) {
      this.over ||= isOver(error);
      const refused = isRefused(error);
      const facts = refusalFacts(error);
      if (refused) this.log.error(facts, 'the platform refused an answer');
      else this.log.warn(facts, this.over ? 'came too late for an answer' : 'an answer did not go out');
      return refused ? 'refused' : 'lost';
    }
  }
}
