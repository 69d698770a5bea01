/**
 * What a group blanket has around its board in a server, where its organiser said so: a thread of its own, and an event for its
 * closing day. Looked after whenever its board is; what the platform refuses is not tried again until the organiser asks anew.
 */
import {
  ChannelType,
  GuildScheduledEventEntityType,
  GuildScheduledEventPrivacyLevel,
  HTTPError,
  DiscordAPIError,
  Routes,
} from 'discord.js';
import type { GroupDoc } from '../../projects/groups.ts';
import type { Projects } from '../../projects/projects.ts';
import { EVENT, THREAD } from './limits.ts';
import { isEventGone, isForbidden, isPlaceGone, refusalFacts, type Log } from './platform.ts';
import { escaped, fit, oneLine } from './text.ts';

interface SurroundingsRest {
  post(route: `/${string}`, options: object): Promise<unknown>;
  patch(route: `/${string}`, options: object): Promise<unknown>;
  delete(route: `/${string}`): Promise<unknown>;
}

export interface SurroundingsParts {
  readonly rest: SurroundingsRest;
  readonly projects: Projects;
  readonly log: Log;
  readonly now?: (() => Date) | undefined;
}

/** An event must begin in the future: so far ahead that the request is there before it, ms. */
const AHEAD_MS = 60_000;

/** When the event of a day begins and ends, by the clock of Greenwich; undefined once the day is over. */
export function hoursOf(day: string, now: Date): { begins: string; ends: string } | undefined {
  const ends = new Date(`${day}T23:59:00Z`);
  const begins = new Date(Math.max(Date.parse(`${day}T00:00:00Z`), now.getTime() + AHEAD_MS));
  return begins < ends ? { begins: begins.toISOString(), ends: ends.toISOString() } : undefined;
}

export class Surroundings {
  constructor(private readonly parts: SurroundingsParts) {}

  /** Brings thread and event of a blanket up to date. Rejects where the disk will not have it; never for what the platform refuses. */
  async tend(id: string): Promise<void> {
    const doc = await this.parts.projects.groups.read(id);
    if (!doc) return;
    if (doc.thread !== undefined && doc.thread.id === undefined)
      await this.tried(
        () => this.makeThread(doc),
        () => this.parts.projects.groups.wantThread(id, undefined),
      );
    if (doc.event !== undefined && doc.server !== undefined)
      await this.tried(
        () => this.tendEvent(doc),
        async () => {
          await this.parts.projects.groups.wantEvent(id, false);
          await this.parts.projects.groups.noteEvent(id, undefined);
        },
      );
  }

  /** Does something; where the platform will never have it, `giveUp` notes that it is not wanted any more. */
  private async tried(act: () => Promise<void>, giveUp: () => Promise<unknown>): Promise<void> {
    try {
      await act();
    } catch (error) {
      if (!(error instanceof DiscordAPIError || error instanceof HTTPError)) throw error;
      this.parts.log.warn(refusalFacts(error), 'a thread or an event could not be brought up to date');
      if (isForbidden(error) || isPlaceGone(error) || isEventGone(error)) await giveUp();
    }
  }

  private async makeThread({ id, channel, thread, events: [first] }: GroupDoc): Promise<void> {
    // Where the board has moved on, a thread would be made that nothing belongs to, and again with every change.
    if (!thread || channel !== thread.from || first?.did !== 'opened') return;
    const made = (await this.parts.rest.post(Routes.threads(thread.from), {
      body: {
        name: fit(oneLine(first.plan.name), THREAD.name),
        type: ChannelType.PublicThread,
        auto_archive_duration: THREAD.sleepsAfter,
      },
    })) as { id: string };
    await this.parts.projects.groups.noteThread(id, thread.from, made.id);
  }

  private async tendEvent(doc: GroupDoc): Promise<void> {
    const { rest, projects, now } = this.parts;
    const { id, server = '', event } = doc;
    const { open, closes, plan } = projects.groups.stateOf(doc);
    const made = event?.made;
    const day = event?.wanted === true && open ? closes : undefined;
    if (day === undefined) {
      if (made) await rest.delete(Routes.guildScheduledEvent(server, made.id));
      if (made || event?.wanted !== true) await projects.groups.noteEvent(id, undefined);
      return;
    }
    if (made?.closes === day) return;
    const hours = hoursOf(day, now?.() ?? new Date());
    // The platform ends an event whose time is over by itself.
    if (!hours) return;
    const body = {
      name: fit(`${oneLine(plan.name)}: the last day for motifs`, EVENT.name),
      description: fit(
        `By this day the motifs of ${oneLine(plan.name)} are wanted. /together board shows how far it is.`,
        EVENT.description,
        escaped,
      ),
      scheduled_start_time: hours.begins,
      scheduled_end_time: hours.ends,
      privacy_level: GuildScheduledEventPrivacyLevel.GuildOnly,
      entity_type: GuildScheduledEventEntityType.External,
      entity_metadata: { location: 'In the channel of its board' },
    };
    const told = (await (made
      ? rest.patch(Routes.guildScheduledEvent(server, made.id), { body })
      : rest.post(Routes.guildScheduledEvents(server), { body }))) as { id: string };
    await projects.groups.noteEvent(id, { id: told.id, closes: day });
  }
}
