/** Which kind lies where, and how it is turned. */
import { gather, type Answer, type Menu } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { showTouches } from '../../src/core/blanket/scatter.ts';
import { nextSeed } from '../../src/core/base/chance.ts';
import { count } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { findBlanket, kindsOf, putBlanket } from '../../src/projects/blankets.ts';
import type { Blanket } from '../../src/projects/schema.ts';
import { relaid } from '../../src/projects/relaying.ts';
import { SETTING_KEYS, SETTINGS, type SettingKey } from '../../src/standards/settings.ts';
import { action } from '../shared/actions.ts';
import { arrangement, columns, countsByKind, rows, SAVED, savedBlanket, seed, setting } from './options.ts';
import { extentWords, layoutFacts, makeCounts, turningShows } from './words.ts';

export const layout = question({
  name: 'layout',
  says: 'Lays the motifs: which kind where, and how it is turned; shows the layout if nothing is asked',
  options: {
    name: savedBlanket().optional(),
    arrange: arrangement().optional(),
    setting: setting().optional(),
    turnings: opt
      .text('Instead of a setting: quarter turns by kind, A 0, B 1, C 2; or random, with seed', {
        max: 200,
        example: 'A 0, B 1',
      })
      .optional(),
    counts: countsByKind().optional(),
    map: opt
      .text('A map of your own: letters, rows parted by /; a digit turns: A0B1/B2A3', {
        max: 3500,
        example: 'AB/BA',
      })
      .optional(),
    seed: seed().optional(),
    columns: columns('Another number of columns').optional(),
    rows: rows('Another number of rows').optional(),
    confirm: opt.yesno('yes lays a map of another size; without it you are asked').optional(),
  },
  example: 'arrange:scattered setting:pinwheel counts:"A 12, B 8"',
  refused: { line: 'counts:"A 12, B 9"', option: 'counts' },
  before: SAVED,
  changes: true,
  asked: {
    changesBy: ['arrange', 'setting', 'turnings', 'counts', 'map', 'seed', 'columns', 'rows'],
    ways: [
      'layout show',
      'layout which',
      'layout mine',
      'layout blanket',
      'layout motif',
      'scatter motif',
      'scatter blanket',
      'checked motif',
      'choose layout',
      'layout',
      'layout scatter|checked',
    ],
    also: 'motif blanket layout scatter checked striped mine choose show change kind settings place',
    not: 'how-many group goes-where remove board exchange',
    saved: 'blanket',
    marks: {
      name: { takes: 'saved-blanket' },
      arrange: { choices: { scattered: 'scatter', checked: 'checked', stripes: 'striped' } },
      setting: {
        choices: {
          'barn-raising': 'barn_raising',
          'straight-furrow': 'straight_furrow',
          pinwheel: 'pinwheel pin_wheel',
          'broken-dishes': 'broken_dishes',
          'flying-geese': 'flying_geese',
          zigzag: 'zigzag zig_zag',
          upright: 'upright same_way_up',
        },
      },
      counts: { never: true },
      map: { never: true },
      confirm: { never: true },
      columns: { takes: 'count', nouns: 'across', only: true },
      rows: { takes: 'count', nouns: 'row down', only: true },
    },
    phrases: ['show the layout of my blanket', 'scatter the squares', 'lay it out as barn raising'],
  },
  async answer(asked, { maker, now, projects, once }): Promise<Answer> {
    const { name, arrange, confirm, ...rest } = asked;
    if (rest.map !== undefined && confirm !== true) {
      const was = findBlanket(await projects.maker(maker.id, maker.name), name);
      const { columns, rows } = relaid(was, { arrangement: arrange, ...rest });
      const asksFor = rest.columns ?? rest.rows;
      if (asksFor === undefined && (columns !== was.columns || rows !== was.rows))
        return askedFirst(was, { columns, rows, map: rest.map });
    }
    const change = Object.values({ arrange, ...rest }).some((value) => value !== undefined);
    const { doc } = change
      ? await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
          const was = findBlanket(doc, name);
          putBlanket(doc, was, relaid(was, { arrangement: arrange, ...rest }), now);
          return { name: was.name };
        })
      : { doc: await projects.maker(maker.id, maker.name) };
    const blanket = findBlanket(doc, name);
    const motifs = kindsOf(doc, blanket);
    const facts = layoutFacts(blanket, motifs);
    const working = new Working();
    if (facts.laid.arrangement === 'scattered') {
      showTouches(working, blanket.columns, blanket.rows, facts.counts);
    }
    return {
      headline: `${blanket.name} ${change ? 'is laid' : 'lies'}: ${count(blanket.layout.length, 'motif')} to make, ${makeCounts(blanket.kinds, facts.counts)}.`,
      lines: [...facts.lines, 'Places are numbered row by row from the top left.'],
      figures: facts.figures,
      working: working.steps,
      assumptions: facts.assumptions,
      cautions: facts.cautions,
      data: facts.data,
      actions: gather(
        action('Picture', 'blanket picture', { name: blanket.name }),
        change && action('Take it back', 'blanket undo', { name: blanket.name }),
        facts.laid.arrangement === 'scattered' &&
          action('Scatter again', 'blanket layout', {
            name: blanket.name,
            seed: nextSeed(facts.laid.seed),
          }),
      ),
      ...(turningShows(motifs) ? { menu: otherSettings(blanket.name, facts.laid.setting) } : {}),
    };
  },
});

/** The settings in which it does not lie already. */
const otherSettings = (name: string, now: SettingKey): Menu => ({
  ...action('Turn them another way', 'blanket layout', { name }),
  says: 'Turn them another way',
  option: 'setting',
  single: true,
  choices: SETTING_KEYS.filter((key) => key !== now).map((value) => ({
    value,
    label: `${SETTINGS[value].name}: ${SETTINGS[value].says}`,
  })),
});

/** A map of another size takes places away or adds some: nobody is to lose a layout by a slip. */
const askedFirst = (
  was: Blanket,
  { columns, rows, map }: { readonly columns: number; readonly rows: number; readonly map: string },
): Answer => ({
  headline: `That map is ${extentWords({ columns, rows })}; ${was.name} is ${extentWords(was)}. Lay it at the size of the map?`,
  lines: ['Nothing is changed yet; confirm:yes lays it so.'],
  data: { blanket: was.name, laid: false },
  actions: [
    action('Lay it so', 'blanket layout', { name: was.name, map, confirm: true }),
    action('Keep it', 'blanket show', { name: was.name }),
  ],
});
