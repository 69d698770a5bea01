/** The colours of a blanket: what is known of their yarn, and how they look. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { findHardToTell, MOST_COMPARED } from '../../src/core/blanket/colour.ts';
import { runsOf, yarnOf } from '../../src/core/yarn/motif.ts';
import { firstOfEach, listNames, sameName, suggest } from '../../src/core/base/nearest-name.ts';
import { defined } from '../../src/core/base/defined.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { clip } from '../../src/core/base/quantity.ts';
import { count, g, m, num, money } from '../../src/core/base/reader.ts';
import { looksOf, madeUpOf } from '../../src/projects/looks.ts';
import { findBlanket, kindsOf, putBlanket } from '../../src/projects/blankets.ts';
import { lookAlike } from '../../src/projects/motifs.ts';
import type { Blanket, MakerDoc } from '../../src/projects/schema.ts';
import { action } from '../shared/actions.ts';
import { madeUpWords, shadeAsked } from '../shared/look-words.ts';
import { blanketColour, SAVED, savedBlanket } from './options.ts';
import { alikeWords } from './words.ts';

type Yarn = Blanket['yarns'][number];

export const colours = question({
  name: 'colours',
  says: 'The colours of a blanket: how each looks, its ball, price, and how many are at hand',
  options: {
    colour: blanketColour('The colour to say something of; all are shown if not given').optional(),
    ball: opt.ball().optional(),
    price: opt.money('Price of one ball, in your own money, like 4.50', { example: '4.5' }).optional(),
    balls: opt
      .number('Balls at hand; a part of a ball counts as a part', { max: 10_000, example: '3.5' })
      .optional(),
    hex: opt.text('How it looks, as #rrggbb', { max: 10, example: '#6b7f3a' }).optional(),
    forget: opt.yesno('yes forgets ball, price, balls and look of this colour').optional(),
    name: savedBlanket().optional(),
  },
  example: 'colour:moss ball:170m/100g price:4.5 balls:3',
  refused: { line: 'colour:moos ball:170m/100g', option: 'colour' },
  before: SAVED,
  changes: true,
  asked: {
    changesBy: ['ball', 'price', 'balls', 'hex', 'forget'],
    ways: [
      'colour blanket',
      'colour which',
      'list colour',
      '@colour ball',
      '@colour <ball>',
      '@colour cost',
      'ball @colour getting',
      'colour mine',
      '@colour <money>',
    ],
    also: 'ball colour cost stash getting each mine saved blanket yarn all list show',
    not: 'how-many how-much left group border next enough',
    reports: true,
    saved: 'blanket',
    marks: {
      colour: { takes: 'saved-colour' },
      balls: { takes: 'count', nouns: 'ball', only: true },
      price: { takes: 'money', near: 'cost each' },
      forget: { never: true },
      name: { takes: 'saved-blanket' },
    },
    phrases: ['I have 3 balls of moss, 170m/100g, 4.50 each', 'what colours are in my blanket'],
  },
  async answer(
    { name, colour, ball, price, balls, hex, forget },
    { maker, now, projects, once },
  ): Promise<Answer> {
    const given = { ball, price, balls, hex };
    const change = Object.values(given).some((value) => value !== undefined) || forget === true;
    if (change && colour === undefined)
      throw new Problem('which-colour', 'Which colour is meant is not said.', {
        option: 'colour',
        hint: 'Name one, like colour:moss.',
      });
    const shade = hex === undefined ? undefined : shadeAsked(hex);
    const { doc } =
      change && colour !== undefined
        ? await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
            const was = findBlanket(doc, name);
            const used = colourNamed(doc, was, colour);
            const known = { ball, price, balls, hex: shade };
            const yarns = changedYarns(was.yarns, used, known, forget === true);
            putBlanket(doc, was, { ...was, yarns }, now);
            if (shade !== undefined) lookAlike(doc, was.kinds, used, shade);
            return { name: was.name };
          })
        : { doc: await projects.maker(maker.id, maker.name) };
    const blanket = findBlanket(doc, name);
    if (colour !== undefined) colourNamed(doc, blanket, colour);
    const names = coloursIn(doc, blanket);
    const looks = looksOf(doc, names, blanket.yarns);
    const madeUp = madeUpOf(doc, told(names, colour));
    const lines = told(names, colour).map((one) => colourLine(one, yarnOf(blanket.yarns, one), looks[one]));
    const missing = names.filter((one) => !yarnOf(blanket.yarns, one)?.ball);
    return {
      headline: change
        ? `In ${blanket.name}, ${lines.join(' ')}`
        : `${blanket.name} has ${count(names.length, 'colour')}: ${listNames(names, 60)}.`,
      lines: change ? [] : lines,
      figures: [figure('colours', 'Colours', names.length)],
      assumptions: gather(
        missing.length > 0 &&
          `No ball is known of ${listNames(missing, 60)}: lengths are told, but no balls.`,
        madeUpWords(madeUp),
        names.length > MOST_COMPARED &&
          `Of ${num(names.length)} colours the first ${num(MOST_COMPARED)} were compared with each other.`,
      ),
      cautions: alikeWords(findHardToTell(names.map((one) => ({ name: one, hex: looks[one] ?? '#000000' })))),
      data: { blanket: blanket.name, colours: names, yarns: blanket.yarns, looks },
      actions: [
        action('What to buy', 'blanket materials', { name: blanket.name }),
        action('How far it goes', 'blanket fit', { name: blanket.name }),
      ],
    };
  },
});

/** The colours that something is said of. */
const told = (names: readonly string[], colour: string | undefined) =>
  colour === undefined ? names : names.filter((one) => sameName(one, colour));

/** The yarns with what is known of a colour now; a colour of which nothing is known is none of them. */
function changedYarns(
  yarns: readonly Yarn[],
  colour: string,
  known: { readonly [Part in Exclude<keyof Yarn, 'colour'>]: Yarn[Part] | undefined },
  forget: boolean,
): Yarn[] {
  const before = forget ? undefined : yarnOf(yarns, colour);
  const yarn: Yarn = { ...before, colour: before?.colour ?? colour, ...defined(known) };
  const others = yarns.filter((other) => !sameName(other.colour, colour));
  return Object.keys(yarn).length === 1 ? others : [...others, yarn];
}

/** Every colour that the blanket uses, in the order in which it is met. */
function coloursIn(doc: MakerDoc, blanket: Blanket): string[] {
  const all = gather(
    kindsOf(doc, blanket).flatMap((motif) => runsOf(motif).map(({ colour }) => colour)),
    blanket.joining.colour,
    blanket.border.rounds.flatMap(({ colour }) => (colour === undefined ? [] : [colour])),
  );
  return firstOfEach(all);
}

/** A colour of the blanket as it is written there. Throws Problem: no-such-colour. */
function colourNamed(doc: MakerDoc, blanket: Blanket, colour: string): string {
  const all = coloursIn(doc, blanket);
  const known = all.find((name) => sameName(name, colour));
  if (known !== undefined) return known;
  throw new Problem('no-such-colour', `Nothing of ${blanket.name} is in “${clip(colour)}”.`, {
    option: 'colour',
    hint: suggest(colour, all, (colours) => `Its colours are ${colours.slice(0, 12).join(', ')}.`),
  });
}

function colourLine(name: string, yarn: Yarn | undefined, look: string | undefined): string {
  const said = gather(
    yarn?.ball && `${m(yarn.ball.m)} in ${g(yarn.ball.g)}`,
    yarn?.price !== undefined && `${money(yarn.price)} a ball`,
    yarn?.balls !== undefined && `${count(yarn.balls, 'ball')} at hand`,
    look !== undefined && `drawn as ${look}`,
  );
  return `${name}: ${said.join(', ')}.`;
}
