/** Options that the questions about blankets share. */
import type { Context } from '../../src/chat/context.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME, MOST_ALONG } from '../../src/core/base/limits.ts';
import { ARRANGEMENTS, type Arrangement } from '../../src/core/blanket/layout.ts';
import { SETTING_KEYS, SETTINGS } from '../../src/standards/settings.ts';
import { MOST_SEED } from '../../src/core/base/chance.ts';
import { seamChoices } from '../shared/seam-choices.ts';
import { DEFINED } from '../shared/saved-motif.ts';

/** What the examples of these questions have saved before. */
export const SAVED = [
  DEFINED.replace(/$/, ' gauge:13x10 hook:5mm'),
  '/motif define name:"sand square" shape:diagonal size:12 colours:"12 rows sand, 12 rows clay" gauge:13x10 hook:5mm',
  '/blanket start name:"garden throw" kinds:"moss square, sand square" columns:4 rows:5 border:"sc hdc"',
] as const;

async function suggest(typed: string, { projects, maker }: Context) {
  const { blankets } = await projects.maker(maker.id, maker.name);
  const wanted = typed.trim().toLowerCase();
  return blankets
    .filter(({ name }) => name.toLowerCase().includes(wanted))
    .map(({ name, columns, rows }) => ({ value: name, label: `${name} (${columns} × ${rows})` }));
}

/** A saved blanket by name; the current one where it is left out. */
export const savedBlanket = (says = 'The blanket’s name; the current one if not given') =>
  opt.text({ says, suggest, onlyOffered: true }, { max: LONGEST_NAME, example: 'garden throw' });

/** Saved motifs by name, commas between: offers complete the last of them. */
export const savedKinds = (says: string, example = 'moss square, sand square') =>
  opt.text(
    {
      says,
      onlyOffered: true,
      several: ', ',
      suggest: async (typed, { projects, maker }) => {
        const { motifs } = await projects.maker(maker.id, maker.name);
        const [, before = '', last = ''] = /^(.*,\s*)?([^,]*)$/s.exec(typed) ?? [];
        return motifs
          .map(({ name }) => name)
          .filter((name) => name.toLowerCase().includes(last.trim().toLowerCase()))
          .map((name) => ({ value: `${before}${name}` }));
      },
    },
    { max: 1600, example },
  );

/** A colour of the current blanket. */
export const blanketColour = (says: string) =>
  opt.text(
    {
      says,
      suggest: async (typed, { projects, maker }) => {
        const { blankets, motifs, current } = await projects.maker(maker.id, maker.name);
        const blanket = blankets.find(({ name }) => name === current.blanket);
        const names = [
          ...(blanket?.yarns.map(({ colour }) => colour) ?? []),
          ...motifs
            .filter(({ name }) => blanket?.kinds.includes(name))
            .flatMap(({ runs }) => runs.map(({ colour }) => colour)),
        ];
        return [...new Set(names)]
          .filter((name) => name.toLowerCase().includes(typed.trim().toLowerCase()))
          .map((value) => ({ value }));
      },
    },
    { max: LONGEST_NAME, example: 'moss' },
  );

/** What each arrangement does, in words that stand after a name. */
export const ARRANGED: Readonly<Record<Arrangement, string>> = {
  plain: 'one kind everywhere',
  checked: 'kinds in turn, along every row and column',
  stripes: 'a kind a row, in turn',
  scattered: 'as few alike side by side as can be',
  typed: 'a map of your own',
};

/** A typed map comes with `map`; it is no choice by itself. */
export const arrangement = () =>
  opt.choice(
    'How kinds are spread over the places',
    ARRANGEMENTS.filter((name) => name !== 'typed').map((value) => ({
      value,
      label: `${value}: ${ARRANGED[value]}`,
    })),
    'scattered',
  );

export const setting = () =>
  opt.choice(
    'How motifs are turned; for squares split corner to corner',
    SETTING_KEYS.map((value) => ({ value, label: SETTINGS[value].name })),
    'barn-raising',
  );

export const seed = () =>
  opt.whole('Another number scatters kinds another way', { max: MOST_SEED, example: '7' });

export const countsByKind = () =>
  opt.text('How many of each kind, scattered: A 12, B 8', { max: 400, example: 'A 12, B 8' });

export const columns = (says = 'Motifs side by side') => opt.whole(says, { max: MOST_ALONG, example: '6' });
export const rows = (says = 'Motifs under each other') => opt.whole(says, { max: MOST_ALONG, example: '8' });

/** How motifs are joined, and what goes round them: asked when a blanket starts and when it changes. */
export const edges = {
  joining: opt.choice('How motifs are joined; whip if not given', seamChoices, 'whip').optional(),
  join_colour: opt.text('The colour they are joined with', { max: LONGEST_NAME, example: 'moss' }).optional(),
  border: opt.stitches('The border, one stitch a round from the inside', 'sc hdc sc').optional(),
  border_colours: opt
    .text('One colour for the whole border, or one a round', { max: 1000, example: 'moss, sand, moss' })
    .optional(),
  corner: opt
    .whole('Stitches in each corner of the border; 3 if not given', { max: 9, example: '3' })
    .optional(),
  reserve: opt.percent('Yarn to buy beyond what the sum says; 10 % if not given').optional(),
};
