/** Buttons refer to questions by their words and options; what refers to none does not compile. */
import { describe, expect, it } from 'vitest';
import { action, lineOf } from '../../commands/shared/actions.ts';
import { actionLine } from '../../src/chat/answer.ts';
import { readLine } from '../../src/chat/line.ts';
import { asking } from '../asking.ts';

describe('a button', () => {
  it('carries what it asks as values', () => {
    expect(action('Swap them back', 'blanket swap', { a: 3, b: 8, name: undefined })).toEqual({
      label: 'Swap them back',
      question: 'blanket swap',
      options: { a: '3', b: '8' },
    });
    expect(lineOf('blanket remove', { name: 'Bean “row” throw', confirm: true })).toBe(
      String.raw`/blanket remove name:"Bean \“row\” throw" confirm:yes`,
    );
  });

  it('that refers to no question, or gives it no option of its own, does not compile', () => {
    // @ts-expect-error: there is no such question
    action('x', 'blanket swop', {});
    // @ts-expect-error: it has no such option
    action('x', 'blanket swap', { a: 3, b: 8, c: 1 });
    // @ts-expect-error: b must be given
    action('x', 'blanket swap', { a: 3 });
    // @ts-expect-error: not one of its choices
    action('x', 'settings change', { units: 'furlongs' });
    // @ts-expect-error: a bare number would take the reader's own units
    action('x', 'together handin', { side: 15 });
    action('x', 'together handin', { side: '15cm' });
    expect.assertions(0);
  });

  it('finds a group blanket with quotes of every kind in its name', async () => {
    const room = asking();
    for (const line of [
      '/motif define name:furrow shape:diagonal size:12 gauge:13x10',
      '/blanket start name:rows kinds:furrow columns:3 rows:4',
      String.raw`/together open name:"Bean \“row\” \"throw\" \\ it’s" closes:2031-05-31`,
    ])
      expect(await room.ask(line)).toMatchObject({ ok: true });
    const lines = (await room.text('/together board')).match(/(?<=: )\/together .*$/gm) ?? [];
    expect(lines.map((line) => readLine(line).words.join(' '))).toEqual([
      'together pledge',
      'together handin',
      'together mine',
    ]);
    for (const line of lines) expect(await room.ask(line)).toMatchObject({ ok: true });
    const options = { name: 'Bean “row” "throw" \\ it’s' };
    expect(lines).toContain(actionLine({ question: 'together mine', options }));
  });
});
