/**
 * Posts the parts of make-alongs, each in its channel at its moment, once. That a part is about to be posted is saved before it is sent: where
 * the process dies between, or the line breaks under it, nobody knows whether it is out, and it is not sent again by itself. What the
 * platform refused outright did not go out, and is tried again later.
 */
import { createHash } from 'node:crypto';
import { DiscordAPIError, Routes } from 'discord.js';
import { ask } from '../../chat/ask.ts';
import type { Registry } from '../../chat/registry.ts';
import { POSTER, type Happening, type Part } from '../../core/along/events.ts';
import { claimPart, nextPosting, partsToPost } from '../../core/along/rules.ts';
import { Problem } from '../../core/base/problem.ts';
import { type AlongState, type Posting } from '../../core/along/state.ts';
import type { AlongDoc } from '../../projects/alongs.ts';
import { NotSaved } from '../../projects/not-saved.ts';
import type { Projects } from '../../projects/projects.ts';
import { listed, raw, sent } from './files.ts';
import { MESSAGE } from './limits.ts';
import { isRefused, refusalFacts, type Log } from './platform.ts';
import { render } from './render.ts';
import { clock } from './text.ts';
import { personNamed } from './typed.ts';

interface PostRest {
  post(route: `/${string}`, options: object): Promise<unknown>;
  delete(route: `/${string}`): Promise<unknown>;
}

export interface PartPostsParts {
  readonly rest: PostRest;
  readonly registry: Registry;
  readonly projects: Projects;
  readonly log: Log;
  readonly fault: (error: unknown) => string;
  readonly now: () => Date;
  /** Whether a make-along's parts are posted by this process; if not given, all are. */
  readonly mine?: ((along: AlongDoc) => boolean) | undefined;
  /** Resolves after so many ms, or when the signal is aborted. */
  readonly wait: (ms: number, signal: AbortSignal) => Promise<void>;
}

/** The clock is looked at this often at least, whatever a machine's does: it may be set, or have slept. */
const LONGEST_WAIT_MS = 5 * 60_000;
/** A part that the platform would not have, or a make-along that could not be read, is tried again after this. */
const AGAIN_MS = 60 * 60_000;
/** Refused again and again, it is tried ever more seldom, at least this often: each time stands among what happened. */
const SELDOM_MS = 6 * AGAIN_MS;
/** From one part to the next in a channel, where several are late. */
const BETWEEN_POSTS_MS = 60_000;

interface AlongInHand {
  readonly doc: AlongDoc;
  readonly state: AlongState;
}

/** A look at a part by nobody in particular. */
const NOBODY = { id: 'board', name: 'board' };

export class PartPosts {
  /** When each make-along has to be looked at next, ms. */
  private readonly moments = new Map<string, number>();
  /** Make-alongs whose part the platform refused: until when nothing is tried, whatever is changed or asked meanwhile. */
  private readonly refusals = new Map<string, { readonly until: number; readonly pause: number }>();
  /** Until when a channel gets no other part, ms. */
  private readonly quiet = new Map<string, number>();
  private readonly stopped = new AbortController();
  private woken = new AbortController();
  private running: Promise<void> = Promise.resolve();
  /** Parts that went out, for the health line. */
  sent = 0;

  constructor(private readonly parts: PartPostsParts) {}

  /** Learns of every make-along there is, and posts from now on. */
  start(): void {
    this.running = this.run().catch((error: unknown) => {
      this.parts.fault(error);
    });
  }

  /** Says that a make-along changed. Returns at once. */
  changed(id: string): void {
    this.moments.set(id, 0);
    this.woken.abort();
  }

  /** Ends; resolves when what was being posted is out. */
  async close(): Promise<void> {
    this.stopped.abort();
    this.woken.abort();
    await this.running;
  }

  private async run(): Promise<void> {
    await this.learn();
    while (!this.stopped.signal.aborted) {
      const pause = await this.look();
      const { signal } = this.woken;
      if (!signal.aborted) await this.parts.wait(pause, signal);
      this.woken = new AbortController();
    }
  }

  /** Reads every make-along of this process that has a channel: what came due while nobody looked is posted now. */
  async learn(): Promise<void> {
    const { mine = () => true, projects } = this.parts;
    for (const { doc } of await projects.alongs.everywhere()) if (mine(doc)) this.moments.set(doc.id, 0);
  }

  /** Does all that is due; returns the ms until something is again, at most so many. */
  async look(): Promise<number> {
    const now = this.parts.now().getTime();
    for (const [id, moment] of [...this.moments]) {
      if (moment > now || this.stopped.signal.aborted) continue;
      // What changes while it is looked at is looked at again.
      this.moments.set(id, now + AGAIN_MS);
      try {
        const next = await this.lookAt(id);
        if (this.moments.get(id) !== 0) {
          if (next === undefined) this.moments.delete(id);
          else this.moments.set(id, next);
        }
      } catch (error) {
        this.parts.fault(error);
      }
    }
    const soonest = Math.min(...this.moments.values());
    return Math.min(LONGEST_WAIT_MS, Math.max(0, soonest - this.parts.now().getTime()));
  }

  /** Does what is due in one make-along; when it has to be looked at next, undefined where nothing is to come. */
  private async lookAt(id: string): Promise<number | undefined> {
    const { alongs } = this.parts.projects;
    const [found] = await alongs.these([id]);
    if (!found || found.doc.channel === undefined) return undefined;
    const left = await this.takeAway(found);
    const { channel } = found.doc;
    const free = () => Math.max(this.refusals.get(id)?.until ?? 0, this.quiet.get(channel) ?? 0);
    // Posted anew before its old message is gone, it would stand there twice.
    const due = partsToPost(found.state, this.parts.now()).find((part) => !left.has(part.id));
    if (due && !this.stopped.signal.aborted && free() <= this.parts.now().getTime())
      await this.tryPosting(found, due, channel);
    const [after] = await alongs.these([id]);
    // What was taken back while it was being sent.
    for (const part of after ? await this.takeAway(after) : []) left.add(part);
    const now = this.parts.now();
    const next = after && nextPosting(after.state, now)?.getTime();
    // Nothing but the line holds it up, and other parts are not to wait for it.
    if (left.size > 0) return now.getTime() + LONGEST_WAIT_MS;
    return next === undefined ? undefined : Math.max(next, free());
  }

  /** Posts one part, and notes when the next may be tried. */
  private async tryPosting(found: AlongInHand, part: Part, channel: string): Promise<void> {
    const { id } = found.doc;
    const before = this.refusals.get(id)?.pause ?? 0;
    const posted = await this.post(found, part);
    const now = this.parts.now().getTime();
    if (posted) {
      this.refusals.delete(id);
      this.quiet.set(channel, now + BETWEEN_POSTS_MS);
    } else {
      const pause = Math.min(SELDOM_MS, Math.max(AGAIN_MS, 2 * before));
      this.refusals.set(id, { until: now + pause, pause });
    }
    for (const [other, until] of this.quiet) if (until <= now) this.quiet.delete(other);
  }

  private happen(
    { id, events }: AlongDoc,
    what: string,
    rule: (state: AlongState) => readonly Happening[],
  ): Promise<{
    readonly happened: readonly Happening[];
    readonly doc: AlongDoc;
    readonly state: AlongState;
  }> {
    const doing = { by: POSTER, at: this.parts.now(), once: `${what}.${events.length}` };
    return this.parts.projects.alongs.happen(id, doing, rule);
  }

  /** Claims a part; undefined where so much has happened that nothing more is posted, which is no fault of ours. */
  private async claim(doc: AlongDoc, part: number) {
    try {
      return await this.happen(doc, `claim.${part}`, (at) => claimPart(at, part, this.parts.now()));
    } catch (error) {
      if (!(error instanceof Problem) || error instanceof NotSaved) throw error;
      this.parts.log.warn({ code: error.code }, 'a part of a make-along is not posted any more');
      return undefined;
    }
  }

  /** Posts one part; false where it cannot be now: the platform would not have it, or too much was posted. */
  private async post({ doc, state }: AlongInHand, { id: part }: Part): Promise<boolean> {
    const { rest, log } = this.parts;
    const channel = doc.channel ?? '';
    // Drawn before it is claimed: what cannot be drawn is not out, and nobody need wonder.
    const { body, files } = await this.drawn(doc, state, part);
    const claimed = await this.claim(doc, part);
    if (claimed === undefined) return false;
    if (claimed.happened.length === 0) return true;
    const nonce = createHash('sha256')
      .update(`${doc.id} ${part} ${claimed.doc.events.length}`)
      .digest('base64url')
      .slice(0, MESSAGE.nonce);
    let made: { readonly id: string };
    try {
      made = (await rest.post(Routes.channelMessages(channel), {
        body: { ...body, attachments: listed(files), nonce, enforce_nonce: true },
        files: raw(files),
      })) as { id: string };
    } catch (error) {
      log.warn(refusalFacts(error), 'a part of a make-along was not posted');
      // Only a plain refusal says that it is not out.
      if (!isRefused(error)) return true;
      await this.happen(claimed.doc, `refused.${part}`, () => [{ did: 'not-posted', part }]);
      return false;
    }
    this.sent += 1;
    await this.happen(claimed.doc, `posted.${part}`, () => [
      { did: 'posted', part, channel, message: made.id },
    ]);
    return true;
  }

  /** The messages of parts that were taken back, or are posted anew, go. Gives the parts whose message could not be taken away. */
  private async takeAway({ doc, state }: AlongInHand): Promise<Set<number>> {
    const left = new Set<number>();
    for (const [part, posting] of state.postings) {
      try {
        await this.takeAwayOne(doc, part, posting);
      } catch (error) {
        this.parts.fault(error);
        left.add(part);
      }
    }
    return left;
  }

  private async takeAwayOne(doc: AlongDoc, part: number, { is, channel, message }: Posting): Promise<void> {
    if ((is !== 'taken-back' && is !== 'anew') || channel === undefined || message === undefined) return;
    try {
      await this.parts.rest.delete(Routes.channelMessage(channel, message));
    } catch (error) {
      if (!(error instanceof DiscordAPIError)) throw error;
      this.parts.log.info(refusalFacts(error), 'a part that was taken back left its message behind');
    }
    await this.happen(doc, `gone.${part}.${message}`, () => [{ did: 'message-gone', part }]);
  }

  /** A part as everybody sees it: in the teacher's own units and terms. */
  private async drawn(doc: AlongDoc, state: AlongState, id: number) {
    const { registry, projects } = this.parts;
    const found = registry.find(['along', 'plan']);
    const settings = await projects.savedSettings(state.teacher);
    const shown = await ask(
      found,
      { name: state.plan.name, part: `id${id}` },
      {
        maker: NOBODY,
        reader: { ...settings, clock },
        place: { ...(doc.server === undefined ? {} : { server: doc.server }), manager: false },
        now: this.parts.now(),
        once: doc.id,
        whois: personNamed,
        projects,
      },
    );
    const { content, embeds, components, texts } = render(shown, {
      serial: id.toString(36),
      open: false,
      sharable: false,
      notes: [],
    });
    return {
      body: { content, embeds, components, allowed_mentions: { parse: [] } },
      // What has no room in the message comes with it whole.
      files: texts.map((text) => sent(text.name, text.content, text.says)),
    };
  }
}
