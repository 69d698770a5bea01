/** Phrases as people type them, each with what is meant; a third of them is held out and not looked at while the grammar is worked on. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';

export type Meant =
  | { readonly kind: 'line'; readonly line: string; readonly saved: boolean }
  | { readonly kind: 'missing'; readonly option: string; readonly line: string }
  | { readonly kind: 'nothing' };

export interface Phrase {
  readonly phrase: string;
  readonly meant: Meant;
  readonly heldOut: boolean;
}

/** A third of all phrases, by what their hash begins with. */
export const isHeldOut = (phrase: string) =>
  (createHash('sha256').update(phrase.toLowerCase()).digest()[0] ?? 0) % 3 === 0;

const lines = (name: string) =>
  readFileSync(new URL(name, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.startsWith('#'));

function grouped(name: string, meant: (head: string) => Meant): Phrase[] {
  let head: Meant = { kind: 'nothing' };
  return lines(name).flatMap((line) => {
    if (!line.startsWith('  ')) {
      head = meant(line);
      return [];
    }
    const phrase = line.trim();
    return [{ phrase, meant: head, heldOut: isHeldOut(phrase) }];
  });
}

export const corpus = (): Phrase[] => [
  ...grouped('answered.txt', (line) => ({ kind: 'line', line, saved: false })),
  ...grouped('saved.txt', (line) => ({ kind: 'line', line, saved: true })),
  ...grouped('missing.txt', (line) => {
    const [, option = '', rest = ''] = /^\? (\S+) (.*)$/.exec(line) ?? [];
    return { kind: 'missing', option, line: rest };
  }),
  ...lines('chat.txt').map((phrase): Phrase => ({
    phrase,
    meant: { kind: 'nothing' },
    heldOut: isHeldOut(phrase),
  })),
];
