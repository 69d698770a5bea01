/** Every question of the registry: once with its example, once refused. A new question is swept without a test of its own. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { registry } from '../commands/index.ts';
import { expectAnswered, expectRefused, expectShowable } from './swept.ts';

describe.each(registry.routes.map((route) => [route.path, route] as const))('/%s', (_, route) => {
  it('is declared within what every room can show', () => expectShowable(route));
  it('answers its example', () => expectAnswered(route));
  it('refuses in words', () => expectRefused(route));
});

describe('a command', () => {
  it.each(registry.commands.map(({ name, questions }) => [name, questions.length] as const))(
    '/%s has few enough questions to look through',
    (_, questions) => expect(questions).toBeLessThanOrEqual(20),
  );

  it('is still found by what its questions were called before', () => {
    expect(registry.find(['together', 'accept']).path).toBe('host accept');
    expect(registry.get('together bar')?.path).toBe('host bar');
    // Nobody is offered them any more.
    expect(() => registry.find(['together', 'acept'])).toThrow(
      expect.objectContaining({ hint: expect.not.stringContaining('/together accept') as string }),
    );
  });
});

describe('every file of commands', () => {
  const folder = join(import.meta.dirname, '..', 'commands');
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) =>
    file.endsWith('.ts'),
  );
  const known = new Set<unknown>([...registry.commands, ...registry.routes.map(({ question }) => question)]);

  it.each(files)('%s declares no question and no command that nobody can ask', async (file) => {
    const module = (await import(join(folder, file))) as Readonly<Record<string, unknown>>;
    const forgotten = Object.entries(module).filter(([, value]) => isDeclared(value) && !known.has(value));
    expect(forgotten.map(([name]) => name)).toEqual([]);
  });

  it.each(files)('%s says first which question it answers, or what it is for', (file) => {
    expect(readFileSync(join(folder, file), 'utf8')).toMatch(
      /^\/\*\*\s(?:\*\s)?\s*\S(?:(?!\*\/)[^])*[.?]\s+\*\//,
    );
  });

  it('is looked through for questions and for commands', () => {
    expect(files.length).toBeGreaterThan(registry.commands.length);
    for (const declared of known) expect(isDeclared(declared)).toBe(true);
  });
});

/** A question has an answer and an example, a command has questions. */
const isDeclared = (value: unknown) =>
  typeof value === 'object' &&
  value !== null &&
  (('answer' in value && 'example' in value) || ('questions' in value && 'says' in value));
