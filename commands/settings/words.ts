/** Words that several of the settings' answers share. */
import { gather } from '../../src/chat/answer.ts';
import { count } from '../../src/core/base/reader.ts';
import type { MakerDoc, Settings } from '../../src/projects/schema.ts';
import type { About, Seen, SeenBy } from '../../src/projects/servers.ts';

export const settingsWords = ({ units, terms, answers, tell, hand }: Settings) =>
  `${units} units, ${terms} terms${hand === undefined ? '' : `, hook in the ${hand} hand`}, answers seen ${answers === undefined ? 'as is usual' : `by ${answers === 'me' ? 'only you' : 'everyone'}`}${tell === undefined ? '' : `, ${TOLD[tell]}`}`;

const TOLD: Readonly<Record<NonNullable<Settings['tell']>, string>> = {
  here: 'told of what concerns you by a mention',
  privately: 'told of what concerns you by a direct message',
  not: 'not told of what concerns you',
};

const SEEN_BY: Readonly<Record<SeenBy, string>> = {
  channel: 'everyone in the channel',
  asker: 'the asker alone',
};

/** Who sees answers in a place where the asker chose nothing herself: `of the craft by everyone in the channel, …`. */
export function seenWords(seen: Readonly<Record<About, Seen>>): string {
  const said = (about: About) => {
    const { by, chosen } = seen[about];
    return `${SEEN_BY[by]}${chosen === undefined ? '' : `, chosen for this ${chosen}`}`;
  };
  return `answers about the craft are seen by ${said('craft')}; about what is the asker’s own, by ${said('own')}`;
}

/** What is kept of a maker, each part in a few words; empty where nothing is. */
export function keptWords(doc: MakerDoc, elsewhere: readonly string[]): string[] {
  const some = (n: number, one: string) => (n === 0 ? [] : [count(n, one)]);
  return gather(
    `your settings: ${settingsWords(doc.settings)}`,
    some(doc.motifs.length, 'motif'),
    some(doc.blankets.length, 'blanket'),
    doc.progress.length !== 0 && `how far you are with ${count(doc.progress.length, 'piece')}`,
    doc.lessons !== undefined &&
      doc.lessons.length !== 0 &&
      `how you stand in ${count(doc.lessons.length, 'lesson')}`,
    doc.bin.length !== 0 && `${count(doc.bin.length, 'thing')} removed that can still come back`,
    elsewhere,
  );
}
