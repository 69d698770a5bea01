/** The kinds of motif in a blanket, and how many of each. */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { MOST_KINDS } from '../../src/core/base/limits.ts';
import { withLetter } from '../../src/core/blanket/layout.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { count, num } from '../../src/core/base/reader.ts';
import { sameName } from '../../src/core/base/nearest-name.ts';
import { findBlanket, kindsOf, putBlanket, readNames } from '../../src/projects/blankets.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { madeFor } from '../../src/projects/progress.ts';
import { withKinds } from '../../src/projects/relaying.ts';
import type { Blanket, MakerDoc } from '../../src/projects/schema.ts';
import { described } from '../shared/motif-words.ts';
import { action } from '../shared/actions.ts';
import { SAVED, savedBlanket, savedKinds } from './options.ts';
import { layoutFacts, makeCounts } from './words.ts';

export const kinds = question({
  name: 'kinds',
  says: 'The kinds of motif in a blanket and how many of each to make; adds or drops one',
  options: {
    name: savedBlanket().optional(),
    add: savedKinds('Saved motifs to add, commas between', 'sand square').optional(),
    drop: savedKinds('Kinds to take out, commas between', 'sand square').optional(),
  },
  example: 'name:"garden throw"',
  refused: { line: 'drop:"clay square"', option: 'drop' },
  before: SAVED,
  changes: true,
  asked: {
    changesBy: ['add', 'drop'],
    ways: [
      'how-many kind',
      'kind blanket',
      'how-many each blanket motif mine',
      '?motif kind',
      'kind motif',
      'how-many @motif blanket',
      'how-many each motif blanket',
    ],
    also: 'blanket motif each need mine layout',
    not: 'group claim left <dims> gauge border weigh yarn',
    saved: 'blanket',
    marks: { name: { takes: 'saved-blanket' }, add: { takes: 'none' }, drop: { takes: 'none' } },
    // Kinds that are named are only spoken of: all of them are told.
    extras: { of: { takes: 'saved-motif', with: 'several' } },
    phrases: ['how many of each kind do I need to make'],
  },
  async answer({ name, add, drop }, { maker, now, projects, once }): Promise<Answer> {
    const change = add !== undefined || drop !== undefined;
    const { doc } = change
      ? await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
          const was = findBlanket(doc, name);
          putBlanket(doc, was, changed(doc, was, add, drop), now);
          return { name: was.name };
        })
      : { doc: await projects.maker(maker.id, maker.name) };
    const blanket = findBlanket(doc, name);
    const motifs = kindsOf(doc, blanket);
    const facts = layoutFacts(blanket, motifs);
    const made = madeFor(doc, blanket);
    return {
      headline: `${blanket.name} has ${count(blanket.kinds.length, 'kind')}: ${makeCounts(blanket.kinds, facts.counts)}.`,
      lines: gather(
        motifs.map((motif, kind) => {
          const need = facts.counts[kind] ?? 0;
          const done = made[kind] ?? 0;
          return `${withLetter(kind, motif.name)}, ${described(motif)}: ${num(need)} to make${done > 0 ? `, ${num(done)} made` : ''}.`;
        }),
        change && facts.lines,
      ),
      figures: facts.figures,
      assumptions: ['How many of each to make is counted from the layout.'],
      cautions: facts.cautions,
      data: { ...facts.data, made },
      actions: [
        action('Layout', 'blanket layout', { name: blanket.name }),
        action('Picture', 'blanket picture', { name: blanket.name }),
      ],
    };
  },
});

function changed(
  doc: MakerDoc,
  blanket: Blanket,
  add: string | undefined,
  drop: string | undefined,
): Blanket {
  const out = drop === undefined ? [] : readNames(drop, 'drop');
  const unknown = out.find((kind) => !blanket.kinds.some((known) => sameName(known, kind)));
  if (unknown !== undefined)
    throw new Problem('no-such-kind', `${blanket.name} has no kind called “${unknown}”.`, {
      option: 'drop',
      hint: `Its kinds are ${blanket.kinds.join(', ')}.`,
    });
  const stay = blanket.kinds.filter((known) => !out.some((kind) => sameName(known, kind)));
  const more = add === undefined ? [] : readNames(add, 'add').map((kind) => findMotif(doc, kind, 'add').name);
  const twice = more.find((kind, index) => stay.includes(kind) || more.indexOf(kind) !== index);
  if (twice !== undefined)
    throw new Problem('kind-twice', `${twice} is one of its kinds already.`, {
      option: 'add',
      hint: 'Name another motif.',
    });
  const now = [...stay, ...more];
  const hint = 'Add one and drop another in one go, or remove the blanket with /blanket remove.';
  if (now.length === 0)
    throw new Problem('no-kinds', 'A blanket needs at least one kind.', { option: 'drop', hint });
  if (now.length > MOST_KINDS)
    throw new Problem('too-many-kinds', `At most ${MOST_KINDS} kinds have letters.`, {
      option: 'add',
      hint,
      facts: { most: MOST_KINDS, given: now.length },
    });
  return withKinds(
    blanket,
    now,
    now.map((kind) => {
      const before = blanket.kinds.indexOf(kind);
      return before < 0 ? undefined : before;
    }),
  );
}
