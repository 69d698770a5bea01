/** Every figure of every answer, by key, unit and value: `figures.ts` says what they must be. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { registry } from '../commands/index.ts';
import type { Route } from '../src/chat/registry.ts';
import { asking } from './asking.ts';
import { FIGURES, type Expected } from './figures.ts';

/** Decimals that must agree: the last ones of the machine, and of an area added up in strips, need not. */
const PLACES = 6;

/** The same with every number as one to be come near to. */
function near(value: unknown): unknown {
  if (typeof value === 'number') return expect.closeTo(value, PLACES);
  if (Array.isArray(value)) return value.map(near);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, near(one)]));
}

/** The figures as they are to be, each with its unit. */
const wanted = ({ figures }: Expected) =>
  near(
    Object.fromEntries(
      Object.entries(figures).map(([key, figure]) => [
        key,
        typeof figure === 'number' ? { value: figure, unit: '' } : { ...figure },
      ]),
    ),
  );

async function expectFigures({ path, question }: Route, expected: Expected): Promise<void> {
  const room = asking();
  for (const line of [...(question.before ?? []), ...(expected.before ?? [])])
    expect(await room.ask(line), line).toMatchObject({ ok: true });
  const answer = await room.ask(`/${path} ${expected.line ?? question.example}`);
  expect(answer.ok, answer.problem).toBe(true);
  expect(answer.figures).toEqual(wanted(expected));
  if (expected.data !== undefined) expect(answer.data).toMatchObject(near(expected.data) as object);
}

describe.each(registry.routes.map((route) => [route.path, route] as const))('/%s', (path, route) => {
  it('gives the figures that are worked out for its example', async () => {
    const [example] = FIGURES[path] ?? [];
    expect(example, 'no figures are worked out for it').toBeDefined();
    expect(example?.line, 'the first is the example').toBeUndefined();
    await expectFigures(route, example!);
  });

  it.each(
    (FIGURES[path] ?? []).slice(1).map((expected) => [expected.line ?? 'its example', expected] as const),
  )('gives those of %s', (_, expected) => expectFigures(route, expected));
});

describe('what is worked out', () => {
  it('is of questions that there are', () => {
    expect(Object.keys(FIGURES).sort()).toEqual(registry.routes.map(({ path }) => path).sort());
  });

  /** Keys that are written in a command’s file, and the questions that may give them: its own, or all of its command. */
  const folder = join(import.meta.dirname, '..', 'commands');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => ({
      file,
      keys: [...readFileSync(join(folder, file), 'utf8').matchAll(/\bfigure\(\s*'(\w+)'/g)].map(
        ([, key = '']) => key,
      ),
    }))
    .filter(({ keys }) => keys.length > 0);

  it.each(files)('leaves out no figure that $file can give', async ({ file, keys }) => {
    const declared = new Set(Object.values((await import(join(folder, file))) as Record<string, unknown>));
    const own = registry.routes.filter(
      ({ command, question }) => declared.has(question) || declared.has(command),
    );
    const command = file.split(/[/\\]/)[0];
    const routes = own.length > 0 ? own : registry.routes.filter((route) => route.command.name === command);
    const seen = new Set(
      routes.flatMap(({ path }) => (FIGURES[path] ?? []).flatMap(({ figures }) => Object.keys(figures))),
    );
    expect(keys.filter((key) => !seen.has(key))).toEqual([]);
  });
});
