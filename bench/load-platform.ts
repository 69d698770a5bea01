/** The platform and its people in a process of their own, so that they take nothing from the bot's thread: for `load.ts`. */
import {
  openStandIn,
  type As,
  type Given,
  type Guild,
  type Message,
  type Outcome,
} from '../test/rooms/discord/stand-in/index.ts';

export interface Asked {
  readonly path: string;
  readonly options: Readonly<Record<string, Given>>;
}

export interface Load {
  /** Asked in turn, or one button pressed again and again on the answer to the first. */
  readonly kind: 'questions' | 'presses';
  readonly questions: readonly Asked[];
  /** Asked once by each maker before anything is measured. */
  readonly before: readonly Asked[];
  readonly inFlight: number;
  /** Makers that take turns. */
  readonly makers: number;
  /** Shards that their servers belong to, in turn; one if not given. The same for all loads of a platform. */
  readonly shards?: number;
  /** Until so many answers or so many milliseconds. */
  readonly answers: number;
  readonly ms: number;
}

export interface Loaded {
  readonly answers: number;
  /** Interactions that got no answer, or were refused by the platform. */
  readonly amiss: number;
  readonly seconds: number;
  /** ms from the asking to what is seen, sorted. */
  readonly p50: number;
  readonly p99: number;
}

const platform = await openStandIn({ remember: 3_000 });

interface Maker {
  readonly as: As;
  /** Whether what comes before was asked. */
  prepared: boolean;
  message: Message | undefined;
}
const makers: Maker[] = [];
const guilds: Guild[] = [];

async function ready(wanted: number, before: readonly Asked[], shards: number): Promise<void> {
  while (guilds.length < shards)
    guilds.push(platform.guild(`Allotment ${guilds.length}`, { shard: [guilds.length, shards] }));
  while (makers.length < wanted) {
    const guild = guilds[makers.length % shards]!;
    const as = { user: platform.person(`maker-${makers.length}`), guild };
    makers.push({ as, prepared: false, message: undefined });
  }
  if (before.length === 0) return;
  const waiting = makers
    .slice(0, wanted)
    .filter(({ prepared }) => !prepared)
    .values();
  const one = async () => {
    for (const maker of waiting) {
      for (const { path, options } of before) await platform.slash(path, options, maker.as);
      maker.prepared = true;
    }
  };
  await Promise.all(Array.from({ length: 16 }, one));
}

async function run({
  kind,
  questions,
  before,
  inFlight,
  makers: wanted,
  shards = 1,
  answers,
  ms,
}: Load): Promise<Loaded> {
  await ready(Math.max(wanted, inFlight), before, shards);
  const times: number[] = [];
  let amiss = 0;
  let asked = 0;
  const began = performance.now();
  const note = (seen: Outcome) => {
    times.push(seen.ms);
    if (seen.kind === 'message' && seen.interaction.failures.length === 0) return;
    amiss += 1;
    process.stderr.write(
      `${seen.kind} after ${Math.round(seen.ms)} ms ${JSON.stringify(seen.interaction.failures)}: ${seen.text}\n`,
    );
  };
  // Each lane has makers of its own, so that no two presses of one maker overlap: one of them would change nothing.
  const makersOfLane = Math.max(1, Math.floor(wanted / inFlight));
  const presser = async (lane: number) => {
    for (let turn = 0; ; turn++) {
      if (asked >= answers || performance.now() - began > ms) return;
      const n = asked++;
      const maker = makers[lane + (turn % makersOfLane) * inFlight];
      if (!maker) throw new Error('no maker');
      const question = questions[n % questions.length];
      if (!question) throw new Error('no question');
      if (kind === 'questions' || maker.message === undefined) {
        const seen = await platform.slash(question.path, question.options, maker.as);
        note(seen);
        if (kind === 'presses') maker.message = seen.message;
        continue;
      }
      const id = maker.message.components[0]?.components?.[0]?.custom_id;
      if (id === undefined) throw new Error(`nothing to press on: ${maker.message.content}`);
      const seen = await platform.press(maker.message, id, maker.as);
      note(seen);
      if (seen.message) maker.message = seen.message;
    }
  };
  await Promise.all(Array.from({ length: inFlight }, (_, lane) => presser(lane)));
  const seconds = (performance.now() - began) / 1000;
  times.sort((a, b) => a - b);
  const at = (share: number) => times[Math.min(times.length - 1, Math.floor(times.length * share))] ?? NaN;
  return { answers: times.length, amiss, seconds, p50: at(0.5), p99: at(0.99) };
}

process.on('message', (load: Load | 'cpu') => {
  if (load === 'cpu') {
    const { user, system } = process.cpuUsage();
    process.send?.({ cpu: (user + system) / 1000 });
    return;
  }
  run(load).then(
    (loaded) => process.send?.({ loaded }),
    (error: unknown) => process.send?.({ error: String(error) }),
  );
});
process.on('disconnect', () => process.exit(0));
process.send?.({ api: platform.api, token: platform.token });
