/** How the colours of a motif look. */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { firstOfEach, listNames, sameName, suggest } from '../../src/core/base/nearest-name.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { clip } from '../../src/core/base/quantity.ts';
import { count } from '../../src/core/base/reader.ts';
import { runsOf } from '../../src/core/yarn/motif.ts';
import { looksOf, madeUpOf } from '../../src/projects/looks.ts';
import { findMotif, lookLike } from '../../src/projects/motifs.ts';
import type { Motif } from '../../src/projects/schema.ts';
import { action } from '../shared/actions.ts';
import { madeUpWords, shadeAsked } from '../shared/look-words.ts';
import { DEFINED, savedMotif } from '../shared/saved-motif.ts';

export const colours = question({
  name: 'colours',
  says: 'The colours of a motif and how they are drawn; hex says how one looks',
  options: {
    colour: opt
      .text('The colour to say something of; all are shown if not given', {
        max: LONGEST_NAME,
        example: 'moss',
      })
      .optional(),
    hex: opt.text('How it looks, as #rrggbb', { max: 10, example: '#6b7f3a' }).optional(),
    forget: opt.yesno('yes forgets the look of this colour').optional(),
    name: savedMotif().optional(),
  },
  example: 'colour:moss hex:#6b7f3a',
  refused: { line: 'colour:moos hex:#6b7f3a', option: 'colour' },
  before: [DEFINED],
  changes: true,
  asked: {
    changesBy: ['hex', 'forget'],
    ways: ['colour motif', 'colour which motif', 'colour @motif'],
    also: 'motif mine saved show which list',
    not: 'how-many how-much left group border ball cost blanket row round',
    reports: true,
    saved: 'motif',
    marks: { colour: { never: true }, forget: { never: true }, name: { takes: 'saved-motif' } },
    phrases: ['which colours are in my motif'],
  },
  async answer({ name, colour, hex, forget }, { maker, projects }): Promise<Answer> {
    const change = hex !== undefined || forget === true;
    if (change && colour === undefined)
      throw new Problem('which-colour', 'Which colour is meant is not said.', {
        option: 'colour',
        hint: 'Name one, like colour:moss.',
      });
    const shade = hex === undefined ? undefined : shadeAsked(hex);
    if (change && colour !== undefined)
      await projects.changeMaker(maker.id, maker.name, (doc) => {
        const motif = findMotif(doc, name, 'name');
        lookLike(doc, motif, colourNamed(motif, colour), shade);
      });
    const doc = await projects.maker(maker.id, maker.name);
    const motif = findMotif(doc, name, 'name');
    const names = coloursIn(motif);
    const told = colour === undefined ? names : [colourNamed(motif, colour)];
    const looks = looksOf(doc, names, motif.looks);
    const lines = told.map((one) => `${one}: drawn as ${looks[one] ?? ''}.`);
    return {
      headline: change
        ? `In ${motif.name}, ${lines.join(' ')}`
        : `${motif.name} has ${count(names.length, 'colour')}: ${listNames(names, 60)}.`,
      lines: change ? [] : lines,
      figures: [figure('colours', 'Colours', names.length)],
      assumptions: madeUpWords(madeUpOf(doc, told)),
      data: { motif: motif.name, colours: names, looks },
      actions: [action('Chart', 'motif chart', { name: motif.name })],
    };
  },
});

const coloursIn = (motif: Motif) => firstOfEach(runsOf(motif).map(({ colour }) => colour));

/** A colour of the motif as it is written there. Throws Problem: no-such-colour. */
function colourNamed(motif: Motif, colour: string): string {
  const all = coloursIn(motif);
  const known = all.find((name) => sameName(name, colour));
  if (known !== undefined) return known;
  throw new Problem('no-such-colour', `Nothing of ${motif.name} is in “${clip(colour)}”.`, {
    option: 'colour',
    hint: suggest(colour, all, (colours) => `Its colours are ${listNames(colours, 12)}.`),
  });
}
