/** Words that several of the settings' answers share. */
import { gather } from '../../src/chat/answer.ts';
import { count } from '../../src/core/base/reader.ts';
import type { MakerDoc, Settings } from '../../src/projects/schema.ts';

export const settingsWords = ({ units, terms, answers, tell }: Settings) =>
  `${units} units, ${terms} terms, answers seen by ${answers === 'me' ? 'only you' : 'everyone'}${tell === undefined ? '' : `, ${TOLD[tell]}`}`;

const TOLD: Readonly<Record<NonNullable<Settings['tell']>, string>> = {
  here: 'told of what concerns you by a mention',
  privately: 'told of what concerns you by a direct message',
  not: 'not told of what concerns you',
};

/** What is kept of a maker, each part in a few words; empty where nothing is. */
export function keptWords(doc: MakerDoc, elsewhere: readonly string[]): string[] {
  const some = (n: number, one: string) => (n === 0 ? [] : [count(n, one)]);
  return gather(
    `your settings: ${settingsWords(doc.settings)}`,
    some(doc.motifs.length, 'motif'),
    some(doc.blankets.length, 'blanket'),
    doc.progress.length !== 0 && `how far you are with ${count(doc.progress.length, 'piece')}`,
    doc.bin.length !== 0 && `${count(doc.bin.length, 'thing')} removed that can still come back`,
    elsewhere,
  );
}
