/** Make-alongs: opened, changed by what happens to them, and cleared of a maker who asks for it, her part with her. */
import { defined } from '../core/base/defined.ts';
import { POSTER, type AlongEvent, type AlongPlan, type Happening } from '../core/along/events.ts';
import { goOn, type AlongState } from '../core/along/state.ts';
import { ALONG_ENTRIES, ALONG_VERSION, ALONGS, type AlongDoc } from './along-schema.ts';
import { Chronicles, idOf, stamp, type Chronicle, type Doing, type Happened } from './chronicles.ts';
import { withStranger } from './forgetting.ts';
import { firstOf } from './grown.ts';
import { mayHappen, mayOpen, mayPost, OF_ALONGS } from './quotas.ts';
import type { Store } from './store.ts';

export type { AlongDoc } from './along-schema.ts';

const idsIn = (event: AlongEvent): string[] => [
  ...(event.by === POSTER ? [] : [event.by]),
  ...('to' in event ? [event.to] : []),
];

/** What she told of herself and of her work goes with her. */
function withoutHerWords(event: AlongEvent, maker: string): AlongEvent {
  if (event.by !== maker) return event;
  const { by, at, once } = event;
  if (event.did === 'joined')
    return { did: 'joined', name: event.name, colours: [], named: false, by, at, once };
  if (event.did === 'stuck') return { did: 'stuck', part: event.part, help: false, by, at, once };
  return event;
}

/** The document without her: whatever she said is gone, and she takes no part. */
function withoutMaker(doc: AlongDoc, { members }: AlongState, maker: string): AlongDoc {
  const { events, stranger } = withStranger<AlongEvent>(doc.events, maker, idsIn, (event) =>
    withoutHerWords(event, maker),
  );
  const last = events.at(-1);
  const gone: AlongEvent[] =
    members.has(maker) && last ? [{ did: 'left', by: stranger, at: last.at, once: `${stranger}:gone` }] : [];
  return { ...doc, edition: doc.edition + 1, events: [...events, ...gone] };
}

const ALONG: Chronicle<AlongDoc, Happening, AlongState> = {
  docs: ALONGS,
  entries: ALONG_ENTRIES,
  called: 'make-along',
  code: 'along',
  exported: 'alongs',
  nameOf: (doc) => {
    const first = firstOf(doc);
    return first?.did === 'opened' ? first.plan.name : undefined;
  },
  idsIn,
  goOn,
  mayOpen: (entries, who) => mayOpen(entries, who, OF_ALONGS),
  mayHappen: (past, { members, teacher }, happened, { by }) => {
    // What became of a claim is noted in any case.
    if (happened.some(({ did }) => did === 'claimed' || did === 'post-anew')) mayPost(past.eventsBy(POSTER));
    mayHappen(
      {
        ...past,
        happens: happened.length,
        members: members.size,
        joins: happened.filter(({ did }) => did === 'joined' && !members.has(by)).length,
        runs: by === teacher || by === POSTER,
        by,
      },
      OF_ALONGS,
    );
  },
  withoutMaker,
  partOf: (name, { teacher }, maker) =>
    teacher === maker
      ? `the leading of the make-along ${name} (hand it over first, if somebody else should lead it)`
      : `a part in the make-along ${name}`,
};

/** Where make-alongs are kept. */
export class Alongs extends Chronicles<AlongDoc, Happening, AlongState> {
  static readonly idOf = idOf;

  constructor(store: Store) {
    super(store, ALONG);
  }

  /** Opens one. Throws a Problem where one of that name is there already, readable or not, and where there are too many. */
  async open(
    place: { readonly server?: string | undefined; readonly channel?: string | undefined },
    plan: AlongPlan,
    doing: Doing & { readonly name: string },
  ): Promise<Happened<AlongDoc, Happening, AlongState>> {
    return this.begin(
      plan.name,
      {
        version: ALONG_VERSION,
        id: idOf(place.server, plan.name),
        ...defined({ server: place.server }),
        ...defined({ channel: place.channel }),
        edition: 0,
        events: [stamp({ did: 'opened', name: doing.name, plan }, doing)],
      },
      doing,
    );
  }

  /** Every make-along that has a channel and is read whole: what parts are to be given out. */
  async everywhere(): Promise<{ doc: AlongDoc; state: AlongState }[]> {
    const entries = await this.catalogue.entries();
    return this.these(entries.flatMap(({ id, channel }) => (channel === undefined ? [] : [id])));
  }
}
