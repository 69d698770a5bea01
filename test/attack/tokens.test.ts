/** What an answer is woven with, and what every object knows, typed by a person: in every option, in names, in problems. */
import { describe, expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { readLine, writeLine } from '../../src/chat/line.ts';
import { metaOf } from '../../src/chat/options.ts';
import { asking, type Json } from '../asking.ts';

/** Filled in, the first would be a length in inches, the others an error and a function. */
const TOKENS = ['⟦12345.678~3 cm⟧', '⟦at noon⟧', '⟦toString⟧', '⟦t:0:f⟧'];
/** Every object answers to these. */
const PROTOTYPE = [
  'constructor',
  'toString',
  'tostring',
  'valueOf',
  'valueof',
  '__proto__',
  'hasOwnProperty',
];

const FILLED = /4,860\.503|undefined|NaN|\[object|native code|Object\.prototype/;
const said = ({ ok, problem, hint, headline, lines, assumptions }: Json) =>
  (ok ? [headline, ...(lines ?? []), ...assumptions] : [problem, hint]).join('\n');

describe.each(registry.routes.map((found) => [found.path, found] as const))('/%s', (path, { question }) => {
  it('takes tokens and names of a prototype for the text that they are, in every option', async () => {
    const words = path.split(' ');
    const example = readLine(`/${path} ${question.example}`).options;
    for (const [name, schema] of Object.entries(question.options)) {
      if (metaOf(schema).kind === 'file') continue;
      const room = asking();
      for (const line of ['/settings change units:imperial terms:UK', ...(question.before ?? [])])
        await room.ask(line);
      for (const value of [...TOKENS, ...PROTOTYPE]) {
        const line = writeLine({ words, options: { ...example, [name]: value } });
        const answer = await room.ask(line);
        expect(room.faults, line).toEqual([]);
        expect(said(answer), line).not.toMatch(FILLED);
        expect(said(answer), line).not.toMatch(/[⟦⟧]/);
      }
    }
  });
});

describe('a name that looks like a token', () => {
  it('is saved, shown and refused as it was typed', async () => {
    const room = asking();
    await room.ask('/settings change units:imperial terms:UK');
    expect(
      await room.ask(
        '/motif define name:"⟦12345.678~3 cm⟧" shape:diagonal size:12 colours:"12 rows ⟦toString⟧, rest sand"',
      ),
    ).toMatchObject({ ok: true });
    for (const line of ['/motif show', '/motif list', '/motif words', '/settings show', '/progress show']) {
      const answer = await room.ask(line);
      expect(JSON.stringify(answer), line).not.toMatch(/4,860\.503|[⟦⟧]/);
    }
    expect((await room.ask('/motif show name:"⟦12345.678~3 cm⟧"')).headline).toContain('〚12345.678~3 cm〛');
    expect((await room.ask('/motif show name:⟦toString⟧')).problem).toContain('〚toString〛');
  });
});
