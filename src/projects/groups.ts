/** Group blankets: opened, shown on a board, and cleared of a maker who asks for it. */
import { defined } from '../core/base/defined.ts';
import type { GroupPlan, Happening } from '../core/group/events.ts';
import { goOn, type GroupState } from '../core/group/state.ts';
import { Chronicles, idOf, stamp, type Chronicle, type Doing, type Happened } from './chronicles.ts';
import { idsIn, isOfMaker, withoutMaker } from './group-forgetting.ts';
import { GROUP_ENTRIES, GROUP_VERSION, GROUPS, type GroupDoc } from './group-schema.ts';
import { firstOf, lengthOf } from './grown.ts';
import { mayHappen, mayOpen, OF_GROUPS, type Limits } from './quotas.ts';
import type { Store } from './store.ts';

export type { GroupDoc } from './group-schema.ts';
export type { Doing } from './chronicles.ts';

export type KeptPhoto = NonNullable<GroupDoc['photos']>[number];

/** The address of the message that shows a photo. */
export const photoLink = (server: string | undefined, { channel, message }: Omit<KeptPhoto, 'pieces'>) =>
  `https://discord.com/channels/${server ?? '@me'}/${channel}/${message}`;

const chronicleWithin = (limits: Limits): Chronicle<GroupDoc, Happening, GroupState> => ({
  docs: GROUPS,
  entries: GROUP_ENTRIES,
  called: 'group blanket',
  code: 'group',
  exported: 'groups',
  nameOf: (doc) => {
    const first = firstOf(doc);
    return first?.did === 'opened' ? first.plan.name : undefined;
  },
  idsIn,
  goOn,
  mayOpen: (entries, who) => mayOpen(entries, who, limits),
  mayHappen: (past, { members, organiser }, happened, { by }) =>
    mayHappen(
      {
        ...past,
        happens: happened.length,
        members: members.size,
        joins: happened.filter((one) => one.did === 'joined' && !members.has(one.maker)).length,
        runs: by === organiser,
        by,
      },
      limits,
    ),
  withoutMaker,
  beside: ({ photos = [], server }, state, maker) => {
    const hers = photos.filter(({ pieces }) => isOfMaker(state, pieces, maker));
    return hers.length === 0
      ? {}
      : { photos: hers.map((photo) => ({ pieces: photo.pieces, link: photoLink(server, photo) })) };
  },
  partOf: (name, { organiser }, maker) =>
    organiser === maker
      ? `the running of the group blanket ${name} (hand it over first, if somebody else should run it)`
      : `a part in the group blanket ${name}`,
});

/** Where group blankets are kept. */
export class Groups extends Chronicles<GroupDoc, Happening, GroupState> {
  static readonly idOf = idOf;

  /** `limits`: how much may be kept of each. */
  constructor(store: Store, limits = OF_GROUPS) {
    super(store, chronicleWithin(limits));
  }

  /** Opens a blanket. Throws a Problem where one of that name is there already, readable or not, and where there are too many. */
  async open(
    place: { readonly server?: string | undefined; readonly channel?: string | undefined },
    plan: GroupPlan,
    doing: Doing & { readonly name: string },
  ): Promise<Happened<GroupDoc, Happening, GroupState>> {
    return this.begin(
      plan.name,
      {
        version: GROUP_VERSION,
        id: idOf(place.server, plan.name),
        ...defined({ server: place.server }),
        ...defined({ channel: place.channel }),
        edition: 0,
        events: [stamp({ did: 'opened', name: doing.name, plan }, doing)],
      },
      doing,
    );
  }

  /** Notes where the board is shown. `before` is the message that the caller knew: where it moved meanwhile, the newer place stays. */
  async noteBoard(
    id: string,
    board: GroupDoc['board'],
    before: string | undefined,
  ): Promise<GroupDoc['board']> {
    return this.store.change(GROUPS, id, (doc) => {
      if (!doc) throw this.gone();
      if (doc.board?.message !== before) return { keep: doc, tell: doc.board };
      const keep = { ...doc };
      if (board) keep.board = board;
      else delete keep.board;
      return { keep, tell: board };
    });
  }

  /** Gives the board a channel; where it stood in another, its message moves there. A thread that was wanted elsewhere and is not made yet is not wanted any more. */
  async moveBoard(id: string, channel: string): Promise<void> {
    const moved = await this.store.change<GroupDoc, GroupDoc>(GROUPS, id, (doc) => {
      if (!doc) throw this.gone();
      if (doc.channel === channel) return { keep: doc, tell: doc };
      const keep = { ...doc, channel };
      if (doc.thread?.id === undefined) delete keep.thread;
      return { keep, tell: keep };
    });
    await this.catalogue.note(moved, []);
  }

  /** Notes that the channel of the board is no more, unless it moved meanwhile. */
  async loseBoard(id: string, channel: string): Promise<void> {
    const left = await this.store.change<GroupDoc, GroupDoc>(GROUPS, id, (doc) => {
      if (!doc) throw this.gone();
      if ((doc.channel ?? doc.board?.channel) !== channel) return { keep: doc, tell: doc };
      // Where it was to move there, it stays where it stands.
      if (doc.board !== undefined && doc.board.channel !== channel)
        return { keep: { ...doc, channel: doc.board.channel }, tell: { ...doc, channel: doc.board.channel } };
      const keep = { ...doc, lost: (doc.lost ?? 0) + 1 };
      delete keep.channel;
      delete keep.board;
      delete keep.thread;
      return { keep, tell: keep };
    });
    await this.catalogue.note(left, []);
  }

  private async altered(id: string, alter: (doc: GroupDoc) => GroupDoc): Promise<GroupDoc> {
    const altered = await this.store.change<GroupDoc, GroupDoc>(GROUPS, id, (doc) => {
      if (!doc) throw this.gone();
      const keep = alter(doc);
      return { keep, tell: keep };
    });
    await this.catalogue.note(altered, []);
    return altered;
  }

  /** Notes which message shows motifs of a maker, unless they are not hers any more. */
  async notePhoto(id: string, maker: string, photo: KeptPhoto): Promise<void> {
    await this.altered(id, (doc) =>
      isOfMaker(this.withState(doc).state, photo.pieces, maker)
        ? { ...doc, photos: [...(doc.photos ?? []), photo] }
        : doc,
    );
  }

  /** Forgets where a photo stood. */
  async forgetPhoto(id: string, message: string): Promise<void> {
    await this.altered(id, ({ photos = [], ...doc }) => {
      const left = photos.filter((photo) => photo.message !== message);
      return left.length === 0 ? doc : { ...doc, photos: left };
    });
  }

  /** Wants a thread of a channel for the board; without one, the board goes back to the channel. */
  async wantThread(id: string, from: string | undefined): Promise<GroupDoc> {
    return this.altered(id, (doc) => {
      if (from !== undefined)
        return doc.thread?.from === from ? doc : { ...doc, channel: from, thread: { from } };
      const { thread, ...rest } = doc;
      return thread === undefined || doc.channel !== thread.id ? rest : { ...rest, channel: thread.from };
    });
  }

  /** Notes the thread that was made of a channel: the board belongs there now, unless it moved or was sent back meanwhile. */
  async noteThread(id: string, from: string, thread: string): Promise<void> {
    await this.altered(id, (doc) =>
      doc.thread?.from === from && doc.channel === from
        ? { ...doc, channel: thread, thread: { from, id: thread } }
        : doc,
    );
  }

  /** Wants an event of the server for the closing day, or none any more. */
  async wantEvent(id: string, wanted: boolean): Promise<GroupDoc> {
    return this.altered(id, (doc) => ({ ...doc, event: { ...doc.event, wanted } }));
  }

  /** Notes the event as the platform has it; undefined where it has none any more. */
  async noteEvent(id: string, made: { id: string; closes: string } | undefined): Promise<void> {
    await this.altered(id, (doc) => {
      const wanted = doc.event?.wanted === true;
      if (made) return { ...doc, event: { wanted, made } };
      if (wanted) return { ...doc, event: { wanted } };
      const keep = { ...doc };
      delete keep.event;
      return keep;
    });
  }

  /** Blankets whose one message does not show all that happened, or is not there yet though it has a channel; of servers that are asked for. */
  async unshown(of: (server: string | undefined) => boolean = () => true): Promise<string[]> {
    const behind: string[] = [];
    for (const { id, channel, server } of await this.catalogue.entries()) {
      if (channel === undefined || !of(server)) continue;
      const [found] = await this.these([id]);
      if (!found) continue;
      const { board, thread, event } = found.doc;
      const unmade =
        (thread !== undefined && thread.id === undefined) ||
        (event && event.wanted !== (event.made !== undefined));
      if (board?.events !== lengthOf(found.doc) || unmade === true) behind.push(id);
    }
    return behind;
  }
}
