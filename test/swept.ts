/** What every question has to hold, whoever wrote it: asked of all that are registered, and of the one on the developers' page. */
import { expect } from 'vitest';
import { evaluate } from '../src/core/base/working.ts';
import { isRequired, metaOf } from '../src/chat/options.ts';
import type { Registry, Route } from '../src/chat/registry.ts';
import { asking } from './asking.ts';

const NAME = /^[a-z0-9_-]{1,32}$/;

/** It is declared within what every room can show. */
export function expectShowable({ command, question }: Route): void {
  for (const { name, says } of [command, { name: question.name ?? command.name, says: question.says }]) {
    expect(name).toMatch(NAME);
    expect(says.length).toBeGreaterThan(0);
    expect(says.length).toBeLessThanOrEqual(100);
  }
  const options = Object.entries(question.options);
  expect(options.length).toBeLessThanOrEqual(24); // and one for who may see the answer
  for (const [name, schema] of options) {
    const meta = metaOf(schema);
    expect(name).toMatch(NAME);
    expect(meta.says.length).toBeLessThanOrEqual(100);
    expect(meta.choices?.length ?? 0).toBeLessThanOrEqual(25);
    const required = isRequired(schema);
    expect(typeof required).toBe('boolean');
  }
}

/** It answers its example, with a working that can be worked again. */
export async function expectAnswered({ path, question }: Route, registry?: Registry): Promise<void> {
  const room = asking(undefined, registry);
  for (const line of question.before ?? []) expect(await room.ask(line)).toMatchObject({ ok: true });
  const answer = await room.ask(`/${path} ${question.example}`);
  expect(room.faults).toEqual([]);
  // Plain words are answered with the question that they mean.
  expect(answer).toMatchObject({ ok: true, question: path === 'ask' ? '/resize' : `/${path}` });
  expect(answer.headline.length).toBeGreaterThan(0);
  const everything = JSON.stringify(answer);
  expect(everything).not.toMatch(/[⟦⟧]|undefined|NaN|\[object/);
  for (const { value } of Object.values(answer.figures)) expect(Number.isFinite(value)).toBe(true);
  for (const step of answer.working) {
    expect(evaluate(step.formula, step.with)).toBe(step.result);
    expect(step.source.length).toBeGreaterThan(0);
  }
}

/** It refuses what it says it refuses, in words. */
export async function expectRefused({ path, question }: Route, registry?: Registry): Promise<void> {
  const room = asking(undefined, registry);
  for (const line of question.before ?? []) await room.ask(line);
  const { line, option } = question.refused;
  const answer = await room.ask(`/${path} ${line}`);
  expect(room.faults).toEqual([]);
  expect(answer).toMatchObject({ ok: false, ...(option === undefined ? {} : { option }) });
  expect(answer.problem.length).toBeGreaterThan(0);
  expect(answer.hint.length).toBeGreaterThan(0);
}
