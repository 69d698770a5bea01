/**
 * One interaction's answer. It goes out at once when it is there in time; otherwise the interaction is deferred, once,
 * and the answer follows. Nothing here throws: what the platform refuses becomes one line of the log.
 *
 * Answers go straight to the platform's routes, what is answered at once past the client's queues as well (`callbacks.ts`), the rest by
 * its own REST: the methods of an interaction would make a message's body anew from all that a message could have, and an object of
 * what comes back, which nobody reads.
 */
import {
  InteractionResponseType as Responds,
  MessageFlags,
  Routes,
  type APIEmbed,
  type ButtonInteraction,
  type ChatInputCommandInteraction,
  type MessageContextMenuCommandInteraction,
  type ModalMessageModalSubmitInteraction,
  type ModalSubmitInteraction,
  type StringSelectMenuInteraction,
  type UserContextMenuCommandInteraction,
} from 'discord.js';
import type { Respond } from './callbacks.ts';
import type { Companion } from './companion.ts';
import { listed, raw, type Sent } from './files.ts';
import { isAnsweredAlready, isBrokenLine, isOver, isRefused, refusalFacts, type Log } from './platform.ts';
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

const ORIGINAL = '@original';
/** Nobody is mentioned, whatever a text says. */
const SILENT: { readonly parse: readonly never[] } = { parse: [] };

/** A message for the platform; what an edit leaves out stays as it is. */
const bodyOf = (
  { content, embeds, components, files, replaceFiles = false }: Outbound,
  { hidden = false } = {},
) => ({
  content,
  embeds,
  components,
  allowed_mentions: SILENT,
  flags: hidden ? MessageFlags.Ephemeral : undefined,
  attachments: files ? listed(files) : replaceFiles ? [] : undefined,
});

/** What a request of an interaction carries beside its route: it shows no token but its own. */
const carrying = (body: object, files: readonly Sent[] = []) => ({ body, files: raw(files), auth: false });

interface Deferred {
  readonly where: Where;
  readonly hidden: boolean;
}

/** Whether what was deferred becomes the answer, or the answer needs a message of its own. */
const editsIn = (deferred: Deferred, where: Where, hidden: boolean) =>
  deferred.where === where && (where === 'same' || deferred.hidden || !hidden);

/** What came of sending something. */
type Went = 'sent' | 'refused' | 'lost';

export class Reply {
  private readonly began = performance.now();
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
    /** Sends a first answer that has no files; the client's own REST where it is not given. */
    private readonly respondAtOnce?: Respond,
    private readonly companion?: Companion,
  ) {
    this.deferLater(deferAfter);
  }

  private deferLater(after: number): void {
    this.timer = setTimeout(() => {
      this.timer = undefined;
      const left = this.companion?.hasLeft(this.began) ?? 0;
      if (left > 0) this.deferLater(left);
      else this.deferring = this.defer();
    }, after);
  }

  /** Waits until another process that can answer has done so; no longer than the platform does. */
  async letOther(): Promise<void> {
    if (this.deferring !== undefined || this.companion === undefined) return;
    this.stopWaiting();
    await this.companion.yields(this.began);
  }

  /** Says where the answer is going to be and who sees it, in case it has to be deferred; until then, only the asker. */
  expect(where: Where, hidden: boolean): void {
    this.where = where;
    this.hidden = hidden;
  }

  /** Ends the waiting. Returns whether the answer will be the asker's alone: a deferral may have settled that. */
  async settle(hidden: boolean): Promise<boolean> {
    this.stopWaiting();
    if (this.deferring) await this.deferring;
    return hidden || (this.deferred?.where === 'new' && this.deferred.hidden);
  }

  private stopWaiting(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
  }

  /** Sends the answer; false where it did not reach the asker. */
  async send(message: Outbound, where: Where, hidden: boolean): Promise<boolean> {
    this.stopWaiting();
    if (this.deferring) await this.deferring;
    if (this.over) return false;
    const went = await this.give(message, where, hidden);
    if (went !== 'refused') return went === 'sent';
    // She still hears that an answer is there.
    const content =
      'There is an answer, but this place did not take it. It is noted; ask again in another way.';
    await this.give({ content }, 'new', true);
    return false;
  }

  private give(message: Outbound, where: Where, hidden: boolean): Promise<Went> {
    return this.attempt(
      (again) =>
        this.deferred === undefined
          ? this.first(message, where, hidden, again)
          : this.later(message, where, hidden, this.deferred),
      this.deferred === undefined || editsIn(this.deferred, where, hidden),
    );
  }

  /** One more message after the answer. */
  async follow(message: Outbound, hidden: boolean): Promise<boolean> {
    if (this.over) return false;
    return (await this.attempt(() => this.add(message, hidden), false)) === 'sent';
  }

  /** Acknowledges a press that changes nothing any more. */
  async nothing(): Promise<boolean> {
    await this.settle(true);
    if (this.over || this.deferred !== undefined || !isOnMessage(this.interaction)) return !this.over;
    return (
      (await this.attempt((again) => this.respond({ type: Responds.DeferredMessageUpdate }, again))) ===
      'sent'
    );
  }

  private async defer(): Promise<void> {
    const { hidden, where } = this;
    await this.attempt(async (again) => {
      if (where === 'same' && isOnMessage(this.interaction))
        await this.respond({ type: Responds.DeferredMessageUpdate }, again);
      else {
        const data = { flags: hidden ? MessageFlags.Ephemeral : 0 };
        await this.respond({ type: Responds.DeferredChannelMessageWithSource, data }, again);
      }
      this.deferred = { where, hidden };
    });
  }

  private first(message: Outbound, where: Where, hidden: boolean, again: boolean): Promise<unknown> {
    return where === 'same' && isOnMessage(this.interaction)
      ? this.respond({ type: Responds.UpdateMessage, data: bodyOf(message) }, again, message.files)
      : this.respond(
          { type: Responds.ChannelMessageWithSource, data: bodyOf(message, { hidden }) },
          again,
          message.files,
        );
  }

  private async later(message: Outbound, where: Where, hidden: boolean, deferred: Deferred): Promise<void> {
    const { rest } = this.interaction.client;
    if (editsIn(deferred, where, hidden)) {
      await rest.patch(this.original, carrying(bodyOf(message), message.files));
      return;
    }
    // What was announced to all turned out to be for her alone: the announcement goes first, so that nothing of it shows.
    if (deferred.where === 'new' && !this.withdrawn) {
      await rest.delete(this.original, { auth: false });
      this.withdrawn = true;
    }
    await this.add(message, hidden);
  }

  /** `again`: the line broke under the same before. */
  private async respond(body: object, again: boolean, files?: readonly Sent[]): Promise<void> {
    const { client, id, token } = this.interaction;
    try {
      if (this.respondAtOnce && (files === undefined || files.length === 0))
        await this.respondAtOnce(this.interaction, body);
      else await client.rest.post(Routes.interactionCallback(id, token), carrying(body, files));
    } catch (error) {
      // It had arrived then.
      if (!(again && isAnsweredAlready(error))) throw error;
    }
  }

  private add(message: Outbound, hidden: boolean): Promise<unknown> {
    const { client, applicationId, token } = this.interaction;
    return client.rest.post(
      Routes.webhook(applicationId, token),
      carrying(bodyOf(message, { hidden }), message.files),
    );
  }

  private get original() {
    const { applicationId, token } = this.interaction;
    return Routes.webhookMessage(applicationId, token, ORIGINAL);
  }

  /**
   * Where the line breaks under it, it is sent once more: of a first answer the platform takes one only, and an edit
   * twice is the same edit. A message of its own might come twice, and is not.
   */
  private async attempt(
    act: (again: boolean) => Promise<unknown>,
    mayAgain = true,
    again = false,
  ): Promise<Went> {
    try {
      await act(again);
      return 'sent';
    } catch (error) {
      if (mayAgain && isBrokenLine(error)) return this.attempt(act, false, true);
      this.over ||= isOver(error);
      if (isAnsweredAlready(error)) this.companion?.notice();
      const refused = isRefused(error);
      const facts = refusalFacts(error);
      if (refused) this.log.error(facts, 'the platform refused an answer');
      else this.log.warn(facts, this.over ? 'came too late for an answer' : 'an answer did not go out');
      return refused ? 'refused' : 'lost';
    }
  }
}
