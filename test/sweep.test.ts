/** Every question of the registry: once with its example, once refused. A new question is swept without a test of its own. */
import { describe, expect, it } from 'vitest';
import { registry } from '../commands/index.ts';
import { evaluate } from '../src/core/base/working.ts';
import { isRequired, metaOf } from '../src/chat/options.ts';
import { asking } from './asking.ts';

const NAME = /^[a-z0-9_-]{1,32}$/;

describe.each(registry.routes.map((found) => [found.path, found] as const))(
  '/%s',
  (path, { command, question }) => {
    it('is declared within what every room can show', () => {
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
    });

    it('answers its example', async () => {
      const room = asking();
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
    });

    it('refuses in words', async () => {
      const room = asking();
      for (const line of question.before ?? []) await room.ask(line);
      const { line, option } = question.refused;
      const answer = await room.ask(`/${path} ${line}`);
      expect(room.faults).toEqual([]);
      expect(answer).toMatchObject({ ok: false, ...(option === undefined ? {} : { option }) });
      expect(answer.problem.length).toBeGreaterThan(0);
      expect(answer.hint.length).toBeGreaterThan(0);
    });
  },
);
