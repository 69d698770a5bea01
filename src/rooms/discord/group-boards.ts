/** The boards of group blankets: what they show is what `/together board` answers, where they stand is in their document. */
import { ask } from '../../chat/ask.ts';
import type { Registry } from '../../chat/registry.ts';
import { lengthOf } from '../../projects/grown.ts';
import type { Projects } from '../../projects/projects.ts';
import type { Board, BoardKeeper } from './boards.ts';
import { clock } from './text.ts';
import { personNamed } from './typed.ts';

/** A look at a board by nobody in particular. */
const NOBODY = { id: 'board', name: 'board' };

export class GroupBoards implements BoardKeeper {
  constructor(
    private readonly registry: Registry,
    private readonly projects: Projects,
    private readonly now: () => Date = () => new Date(),
  ) {}

  async read(id: string): Promise<Board | undefined> {
    const found = this.registry.get('together board');
    const { doc, state } = (await this.projects.groups.whole(id)) ?? {};
    const channel = doc?.channel ?? doc?.board?.channel;
    if (!found || !doc || !state || channel === undefined) return undefined;
    // Everybody reads it: in the organiser's own units and terms.
    const settings = await this.projects.savedSettings(state.organiser);
    const shown = await ask(
      found,
      { name: state.plan.name },
      {
        maker: NOBODY,
        reader: { ...settings, clock },
        place: { ...(doc.server === undefined ? {} : { server: doc.server }), channel, manager: false },
        now: this.now(),
        once: id,
        whois: personNamed,
        projects: this.projects,
      },
    );
    const moved = doc.board !== undefined && doc.board.channel !== channel;
    return {
      channel,
      ...(moved
        ? { message: undefined, before: doc.board }
        : { message: doc.board?.message, before: undefined }),
      lost: doc.lost,
      pinned: doc.thread?.id === channel,
      shown,
      version: lengthOf(doc),
    };
  }

  async posted(id: string, message: string, was: Board): Promise<void> {
    const { channel, version } = was;
    const before = was.before?.message ?? was.message;
    await this.projects.groups.noteBoard(id, { channel, message, events: version }, before);
  }

  async drawn(id: string, { channel, message, version }: Board): Promise<void> {
    if (message === undefined) return;
    await this.projects.groups.noteBoard(id, { channel, message, events: version }, message);
  }

  async lost(id: string, was: Board): Promise<void> {
    await this.projects.groups.loseBoard(id, was.channel);
  }
}
