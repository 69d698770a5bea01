/** Which blankets there are, which is the current one, and letting one go. */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { count } from '../../src/core/base/reader.ts';
import { sum } from '../../src/core/base/sum.ts';
import { findBlanket, removeBlanket, restoreBlanket } from '../../src/projects/blankets.ts';
import { madeFor } from '../../src/projects/progress.ts';
import { action } from '../shared/actions.ts';
import { listed } from '../shared/listed.ts';
import { SAVED, savedBlanket } from './options.ts';
import { extentWords } from './words.ts';

/** Buttons for as many blankets as a message has room for. */
const MOST_BUTTONS = 5;

export const list = question({
  name: 'list',
  says: 'All the blankets you saved, and which is the current one',
  options: {},
  example: '',
  refused: { line: 'name:throw', option: 'name' },
  before: SAVED,
  asked: {
    ways: [
      'list blanket',
      'which blanket saved',
      'which blanket getting',
      '?blanket saved',
      'saved blanket all',
      'list blanket mine',
    ],
    also: 'saved mine show which all',
    not: 'group colour motif kind',
    phrases: ['list my blankets', 'which blankets have I saved'],
  },
  async answer(_, { maker, projects }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const { blankets, current } = doc;
    return {
      headline:
        blankets.length === 0
          ? 'No blanket is saved yet; /blanket start begins one.'
          : `${count(blankets.length, 'blanket')} ${blankets.length === 1 ? 'is' : 'are'} saved${current.blanket === undefined ? '' : `; ${current.blanket} is the current one`}.`,
      lines: blankets.map((blanket) => {
        const made = sum(madeFor(doc, blanket));
        return `${blanket.name}: ${extentWords(blanket)}, ${blanket.kinds.join(', ')}${made > 0 ? `; ${count(made, 'motif')} made` : ''}.`;
      }),
      figures: [figure('blankets', 'Blankets', blankets.length)],
      data: { blankets: blankets.map(({ name }) => name), current: current.blanket ?? null },
      actions: blankets
        .filter(({ name }) => name !== current.blanket)
        .slice(0, MOST_BUTTONS)
        .map(({ name }) => action(`Choose ${name}`, 'blanket choose', { name })),
    };
  },
});

export const choose = question({
  name: 'choose',
  says: 'Makes a saved blanket the current one, which all questions mean if none is named',
  options: { name: savedBlanket('The blanket’s name') },
  example: 'name:"garden throw"',
  refused: { line: 'name:"garten trow"', option: 'name' },
  before: SAVED,
  changes: true,
  asked: {
    ways: ['choose @blanket', 'change @blanket', 'choose blanket'],
    also: 'choose mine blanket next',
    not: 'group rename border join motif scale picture remove colour',
    saved: 'blanket',
    marks: { name: { takes: 'saved-blanket' } },
    phrases: ['switch to the garden throw'],
  },
  async answer({ name }, { maker, projects }): Promise<Answer> {
    const chosen = await projects.changeMaker(maker.id, maker.name, (doc) => {
      const blanket = findBlanket(doc, name);
      doc.current.blanket = blanket.name;
      return blanket;
    });
    return {
      headline: `${chosen.name} is the current blanket: ${extentWords(chosen)}, ${count(chosen.layout.length, 'motif')}.`,
      data: { blanket: chosen.name },
      actions: [action('Show it', 'blanket show', { name: chosen.name })],
    };
  },
});

export const remove = question({
  name: 'remove',
  says: 'Removes a saved blanket; asks first, and it can be undone for a day',
  options: {
    name: savedBlanket().optional(),
    confirm: opt.yesno('yes removes it; without it you are asked').optional(),
  },
  example: 'name:"garden throw" confirm:yes',
  refused: { line: 'name:"garten trow" confirm:yes', option: 'name' },
  before: SAVED,
  changes: true,
  asked: {
    changesBy: ['confirm'],
    ways: ['remove blanket mine', 'remove @blanket', 'remove blanket saved'],
    also: 'mine saved all erase',
    not: 'border group motif restore colour join',
    saved: 'blanket',
    marks: { name: { takes: 'saved-blanket' } },
    phrases: ['delete my blanket'],
  },
  async answer({ name, confirm }, { maker, now, projects, once }): Promise<Answer> {
    if (confirm !== true) {
      const blanket = findBlanket(await projects.maker(maker.id, maker.name), name);
      return {
        headline: `Remove ${blanket.name}, ${extentWords(blanket)}, with its layout and colours? It can be brought back for a day; its motifs stay.`,
        data: { blanket: blanket.name, removed: false },
        actions: [
          action('Remove it', 'blanket remove', { name: blanket.name, confirm: true }),
          action('Keep it', 'blanket show', { name: blanket.name }),
        ],
      };
    }
    const { tell } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
      const blanket = findBlanket(doc, name);
      removeBlanket(doc, blanket, now);
      return { name: blanket.name };
    });
    return {
      headline: `${tell.name} is removed. It can be brought back for a day.`,
      data: { blanket: tell.name, removed: true },
      actions: [action('Bring it back', 'blanket undo', { name: tell.name })],
    };
  },
});

const PART_WORDS: Readonly<Record<string, string>> = {
  name: 'its name',
  kinds: 'its kinds',
  columns: 'its size',
  rows: 'its size',
  layout: 'its layout',
  joining: 'its joining',
  border: 'its border',
  yarns: 'its colors',
  reserve: 'its reserve',
};

/** `its size and its layout`; what was put back without having differed is all of it. */
const partsWords = (parts: readonly string[]): string =>
  parts.length === 0 ? 'everything' : listed([...new Set(parts.map((part) => PART_WORDS[part] ?? part))]);

export const undo = question({
  name: 'undo',
  says: 'Takes back the last change of a blanket, its removal among them, within a day',
  options: {
    name: opt
      .text('Its name, if it was not the last one', { max: LONGEST_NAME, example: 'garden throw' })
      .optional(),
  },
  example: '',
  refused: { line: 'name:"porch blanket"', option: 'name' },
  before: [...SAVED, '/blanket remove name:"garden throw" confirm:yes'],
  changes: true,
  asked: {
    ways: ['restore blanket', 'undo blanket remove', 'restore blanket remove', 'undo blanket change', 'undo'],
    also: 'mine remove blanket erase',
    not: 'group motif row count border',
    saved: 'blanket',
    undoes: 'blanket',
    marks: { name: { takes: 'saved-blanket' } },
    phrases: ['bring back the blanket I deleted'],
  },
  async answer({ name }, { maker, now, projects, once }): Promise<Answer> {
    const { tell } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
      const { blanket, was, parts } = restoreBlanket(doc, now, name);
      return { name: blanket.name, columns: blanket.columns, rows: blanket.rows, was, parts };
    });
    return {
      headline:
        tell.was === 'removed'
          ? `${tell.name} is back: ${extentWords(tell)}. It is the current blanket.`
          : `The last change is taken back: ${tell.name}, ${extentWords(tell)}, has ${partsWords(tell.parts)} as before.`,
      data: { blanket: tell.name },
      actions: [action('Show it', 'blanket show', { name: tell.name })],
    };
  },
});
