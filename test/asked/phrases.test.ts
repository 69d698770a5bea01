/** Phrases as people type them, held to what is meant. Of those that are held out, counts alone are told. */
import { beforeAll, describe, expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { asking } from '../asking.ts';
import { around, judge, read, savedAsking, type Outcome } from './check.ts';
import { corpus, type Phrase } from './corpus.ts';

const phrases = corpus();
const surrounding: { bare?: Awaited<ReturnType<typeof around>>; saved?: Awaited<ReturnType<typeof around>> } =
  {};

beforeAll(async () => {
  surrounding.bare = await around(asking());
  surrounding.saved = await around(await savedAsking());
});

const outcome = async ({ phrase, meant }: Phrase): Promise<Outcome> =>
  judge(
    meant,
    await read(phrase, meant.kind === 'line' && meant.saved ? surrounding.saved! : surrounding.bare!),
  );

const counted = async (which: readonly Phrase[]) => {
  const counts: Record<Outcome, number> = { right: 0, 'asked back': 0, wrong: 0 };
  for (const phrase of which) counts[await outcome(phrase)]++;
  return counts;
};

describe('phrases as people type them', () => {
  it('are many, and each stands once', () => {
    const of = (kind: Phrase['meant']['kind']) => phrases.filter(({ meant }) => meant.kind === kind).length;
    expect(of('line')).toBeGreaterThanOrEqual(450);
    expect(of('nothing')).toBeGreaterThanOrEqual(150);
    expect(of('missing')).toBeGreaterThanOrEqual(60);
    expect(new Set(phrases.map(({ phrase }) => phrase)).size).toBe(phrases.length);
    const held = phrases.filter(({ heldOut }) => heldOut).length;
    expect(held / phrases.length).toBeGreaterThan(0.28);
    expect(held / phrases.length).toBeLessThan(0.4);
  });

  it.each([false, true])('are read as they are meant, or asked back (held out: %s)', async (heldOut) => {
    const counts = await counted(
      phrases.filter((one) => one.heldOut === heldOut && one.meant.kind === 'line'),
    );
    const all = counts.right + counts['asked back'] + counts.wrong;
    expect(counts.right / all).toBeGreaterThanOrEqual(LEAST_RIGHT);
    expect(counts.wrong / all).toBeLessThanOrEqual(MOST_WRONG);
  });

  it.each([false, true])('that ask nothing are declined (held out: %s)', async (heldOut) => {
    const counts = await counted(
      phrases.filter((one) => one.heldOut === heldOut && one.meant.kind === 'nothing'),
    );
    const all = counts.right + counts['asked back'] + counts.wrong;
    expect(counts.wrong / all).toBeLessThanOrEqual(0.01);
  });

  it.each([false, true])('with one thing missing are never answered (held out: %s)', async (heldOut) => {
    const counts = await counted(
      phrases.filter((one) => one.heldOut === heldOut && one.meant.kind === 'missing'),
    );
    const all = counts.right + counts['asked back'] + counts.wrong;
    expect(counts.wrong).toBe(0);
    expect(counts.right / all).toBeGreaterThanOrEqual(0.8);
  });
});

/** The aims for phrases that nobody looked at while the grammar was worked on. */
const LEAST_RIGHT = 0.9;
const MOST_WRONG = 0.015;

describe('what questions declare', () => {
  const declared = registry.routes.flatMap(({ path, question }) =>
    (question.asked?.phrases ?? []).map((phrase) => [phrase, path] as const),
  );

  it.each(declared)('“%s” is read as /%s', async (phrase, path) => {
    const [best] = (await read(phrase, surrounding.saved!)).readings;
    expect(best?.route.path).toBe(path);
  });
});
