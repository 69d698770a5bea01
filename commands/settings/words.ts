/** Words that several of the settings' answers share. */
import { gather } from '../../src/chat/answer.ts';
import { listNames } from '../../src/core/base/nearest-name.ts';
import { count } from '../../src/core/base/reader.ts';
import type { MakerDoc, Settings } from '../../src/projects/schema.ts';
import type { About, Seen, SeenBy } from '../../src/projects/servers.ts';

export const settingsWords = ({ units, terms, answers, tell, hand }: Settings) =>
  `${units} units, ${terms} terms${hand === undefined ? '' : `, hook in the ${hand} hand`}${answers === undefined ? '' : `, answers seen by ${answers === 'me' ? 'only you' : 'everyone'}`}${tell === undefined ? '' : `, ${TOLD[tell]}`}`;

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
  const named = (all: readonly { readonly name: string }[], one: string) =>
    all.length > 0 && `${count(all.length, one)}: ${listNames(all.map(({ name }) => name))}`;
  return gather(
    `your settings: ${settingsWords(doc.settings)}`,
    named(doc.motifs, 'motif'),
    named(doc.blankets, 'blanket'),
    doc.progress.length !== 0 && `how far you are with ${count(doc.progress.length, 'piece')}`,
    doc.lessons !== undefined &&
      doc.lessons.length !== 0 &&
      `how far you are in ${count(doc.lessons.length, 'lesson')}`,
    doc.bin.length !== 0 && `${count(doc.bin.length, 'thing')} removed that can still come back`,
    elsewhere,
  );
}
