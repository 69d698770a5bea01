/**
 * Messages that stay and are kept up to date: one for each board, never two. A storm of changes becomes few edits; a
 * board that somebody deleted is posted again, one in a sleeping thread wakes it, one whose channel is gone waits to be
 * asked for somewhere else.
 */
import { createHash } from 'node:crypto';
import { setMaxListeners } from 'node:events';
import { setTimeout as wait } from 'node:timers/promises';
import { DiscordAPIError, HTTPError, Routes } from 'discord.js';
import type { RenderedAnswer } from '../../chat/answer.ts';
import type { Makers } from '../../chat/made-file.ts';
import { NotSaved } from '../../projects/not-saved.ts';
import { listed, outgoing, raw, sent } from './files.ts';
import { MESSAGE } from './limits.ts';
import { isAsleep, isMessageGone, isPlaceGone, isTooOften, refusalFacts, type Log } from './platform.ts';
import { render } from './render.ts';
import { Turns } from './turns.ts';

/** Where a message stands. */
interface Standing {
  readonly channel: string;
  readonly message: string;
}

/** One board as it is now, read anew before every edit. */
export interface Board {
  /** The channel it stands in. */
  readonly channel: string;
  /** The message it is, once it was posted. */
  readonly message: string | undefined;
  /** The message that it was before it moved to this channel. */
  readonly before?: Standing | undefined;
  /** How often its channel was lost: what is posted after that is another message. */
  readonly lost?: number | undefined;
  /** Whether it is to be pinned where it is posted. */
  readonly pinned?: boolean | undefined;
  readonly shown: RenderedAnswer;
  /** Different whenever what it shows is: a count of changes. Its buttons carry it. */
  readonly version: number;
}

/** Where a board's state is read and its message's id is kept. */
export interface BoardKeeper {
  /** The board as it stands; undefined once there is none any more. */
  read(board: string): Promise<Board | undefined>;
  /** Keeps the message's id; resolves when it is saved. `was` is the board as it was read. */
  posted(board: string, message: string, was: Board): Promise<void>;
  /** Keeps that the message shows the board as it was read. */
  drawn(board: string, was: Board): Promise<void>;
  /** Keeps that there is no channel for the board any more. */
  lost(board: string, was: Board): Promise<void>;
}

interface BoardRest {
  post(route: `/${string}`, options: object): Promise<unknown>;
  patch(route: `/${string}`, options: object): Promise<unknown>;
  put(route: `/${string}`): Promise<unknown>;
  delete(route: `/${string}`): Promise<unknown>;
}

export interface BoardClaims {
  /** False where another process shows the board just now. */
  take(board: string): Promise<boolean>;
  isMine(board: string): boolean;
  give(board: string): Promise<void>;
}

export interface BoardParts {
  readonly rest: BoardRest;
  readonly keeper: BoardKeeper;
  /** Where several processes share what is kept: one of them shows a board at a time. */
  readonly claims?: BoardClaims | undefined;
  /** Looks after what a board has around it, before it is shown. */
  readonly tend?: ((board: string) => Promise<void>) | undefined;
  readonly log: Log;
  readonly fault: (error: unknown) => string;
  readonly makers: Makers;
  /** ms between two edits of one board. */
  readonly gap?: number;
}

/** Five edits in five seconds are what a channel takes; this leaves room for answers. */
const GAP_MS = 1_000;
/** So many times the gap lies between two tries while the platform is in trouble, or will not have this board. */
const TROUBLE = 15;

/** A board that is being shown: whether it changed since it was read. */
interface Turn {
  again: boolean;
  done: Promise<void>;
}

export class Boards {
  private readonly turns = new Map<string, Turn>();
  private readonly stopped = new AbortController();
  /** However many boards change at once, one picture is made after the other. */
  private readonly pictures = new Turns('pictures');
  /** Edits and posts that went out, for the health line. */
  sent = 0;

  constructor(private readonly parts: BoardParts) {
    // Each board that was just shown listens for the end, however many there are.
    setMaxListeners(0, this.stopped.signal);
  }

  /** Says that a board changed. Returns at once; the newest state is shown within about a second. */
  changed(board: string): void {
    const turn = this.turns.get(board);
    if (turn) {
      turn.again = true;
      return;
    }
    const started: Turn = { again: false, done: Promise.resolve() };
    this.turns.set(board, started);
    started.done = this.turn(board, started);
  }

  /** Resolves when every board shows what it was last told of. */
  async settled(): Promise<void> {
    while (this.turns.size > 0) await Promise.all([...this.turns.values()].map(({ done }) => done));
  }

  /** Shows what is still to be shown, without waiting between, and stops. */
  async close(): Promise<void> {
    this.stopped.abort();
    await this.settled();
  }

  private async turn(board: string, turn: Turn): Promise<void> {
    const { signal } = this.stopped;
    do {
      turn.again = false;
      const gap = this.parts.gap ?? GAP_MS;
      let pause = gap;
      try {
        // On the way out it is left to the other process, or to the next start, which finds that it is not shown.
        if (!(await this.showAlone(board)) && !signal.aborted) turn.again = true;
      } catch (error) {
        if (error instanceof NotSaved) {
          this.parts.log.warn({ code: error.code }, 'a board was not shown: what is kept is out of reach');
          pause = gap * TROUBLE;
          if (!signal.aborted) turn.again = true;
        } else if (error instanceof DiscordAPIError || error instanceof HTTPError) {
          this.parts.log.warn(refusalFacts(error), 'a board was not shown');
          pause = gap * TROUBLE;
          // A platform in trouble gets over it; a channel that is closed to us stays closed until the board changes.
          if ((error.status >= 500 || isTooOften(error)) && !signal.aborted) turn.again = true;
        } else this.parts.fault(error);
      }
      if (!signal.aborted) await wait(pause, undefined, { signal, ref: false }).catch(() => undefined);
    } while (turn.again);
    this.turns.delete(board);
    // What cannot be given back runs out.
    await this.parts.claims?.give(board).catch(() => undefined);
  }

  /** Shows a board while no other process does; false where it has to be shown again. */
  private async showAlone(board: string): Promise<boolean> {
    const { claims } = this.parts;
    if (claims === undefined) {
      await this.show(board);
      return true;
    }
    if (!(await claims.take(board))) return false;
    await this.show(board);
    // Another process may have shown something newer meanwhile, and this one something older over it.
    return claims.isMine(board);
  }

  private async show(id: string): Promise<void> {
    await this.parts.tend?.(id);
    const board = await this.parts.keeper.read(id);
    if (!board) return;
    try {
      await this.put(id, board);
    } catch (error) {
      if (!isPlaceGone(error)) throw error;
      this.parts.log.warn(refusalFacts(error), 'the channel of a board is gone');
      await this.parts.keeper.lost(id, board);
    }
  }

  private async put(id: string, board: Board): Promise<void> {
    const { body, files } = await this.drawn(id, board);
    let { before } = board;
    if (board.message !== undefined) {
      try {
        await this.parts.rest.patch(Routes.channelMessage(board.channel, board.message), {
          // Listing no file but the new ones takes the old ones away.
          body: { ...body, attachments: listed(files) },
          files: raw(files),
        });
        this.sent += 1;
        await this.parts.keeper.drawn(id, board);
        return;
      } catch (error) {
        if (isAsleep(error)) before = { channel: board.channel, message: board.message };
        else if (!isMessageGone(error)) throw error;
      }
    }
    // Posted and not kept, because this process died between: the platform gives the same message back for the same
    // nonce for some minutes. It differs when a message that was kept is gone.
    const nonce = createHash('sha256')
      .update(`${id} ${board.message ?? before?.message ?? ''} ${board.lost ?? 0}`)
      .digest('base64url')
      .slice(0, MESSAGE.nonce);
    const made = (await this.parts.rest.post(Routes.channelMessages(board.channel), {
      body: { ...body, attachments: listed(files), nonce, enforce_nonce: true },
      files: raw(files),
    })) as { id: string };
    this.sent += 1;
    if (before !== undefined) await this.takeAway(before);
    await this.parts.keeper.posted(id, made.id, board);
    if (board.pinned === true) await this.pin({ channel: board.channel, message: made.id });
  }

  private async pin({ channel, message }: Standing): Promise<void> {
    try {
      await this.parts.rest.put(Routes.channelMessagesPin(channel, message));
    } catch (error) {
      if (!(error instanceof DiscordAPIError)) throw error;
      this.parts.log.warn(refusalFacts(error), 'a board was not pinned');
    }
  }

  /** There is one board: the message that it was goes, where it still can be reached. */
  private async takeAway({ channel, message }: Standing): Promise<void> {
    try {
      await this.parts.rest.delete(Routes.channelMessage(channel, message));
    } catch (error) {
      if (!(error instanceof DiscordAPIError)) throw error;
      this.parts.log.info(refusalFacts(error), 'a board that moved left its old message behind');
    }
  }

  private async drawn(id: string, { shown, version }: Board) {
    const { makers, fault } = this.parts;
    const { files, notes } = await outgoing(shown.files, {
      fault,
      makers: { ...makers, toPng: (svg) => this.pictures.take(id, () => makers.toPng(svg)) },
    });
    const { content, embeds, components, texts } = render(shown, {
      serial: Math.abs(Math.trunc(version)).toString(36),
      open: false,
      sharable: false,
      notes,
    });
    return {
      body: { content, embeds, components, allowed_mentions: { parse: [] } },
      files: [...files, ...texts.map((text) => sent(text.name, text.content, text.says))],
    };
  }
}
