import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { countLaid } from '../../src/core/blanket/layout.ts';
import { reckonMaterials } from '../../src/core/blanket/materials.ts';
import { piecesOf } from '../../src/core/blanket/pieces.ts';
import { saidPace } from '../../src/core/yarn/pace.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { count, m, num, t } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { blanketPace } from '../../src/projects/blanket-pace.ts';
import { findBlanket, specOf } from '../../src/projects/blankets.ts';
import { caution } from '../../src/standards/care.ts';
import { action } from '../shared/actions.ts';
import { SAVED, savedBlanket } from './options.ts';
import { blanketCautions, distinct, needLine, sizeWords, sureness } from './words.ts';

export const materials = question({
  name: 'materials',
  says: 'What a blanket takes, colour by colour: yarn, balls to buy, weight, cost, ends, hours',
  options: {
    name: savedBlanket().optional(),
    reserve: opt.percent('Another reserve than the blanket’s own').optional(),
    minutes: opt
      .number('Minutes that one motif of the first kind takes you, for the hours', {
        min: 1,
        max: 10_000,
        example: '45',
      })
      .optional(),
  },
  example: 'minutes:45',
  refused: { line: 'name:"garten trow"', option: 'name' },
  before: [...SAVED, '/blanket colours colour:moss ball:170m/100g price:4.5 balls:1'],
  asked: {
    ways: [
      '?yarn blanket mine',
      '?ball blanket mine',
      '?yarn blanket mine spare',
      'shopping blanket',
      'shopping blanket mine',
      'cost blanket',
      'how-long blanket',
      'shopping',
      '?yarn @blanket',
      '?ball @blanket',
      'how-long blanket motif',
      'cost @blanket',
      'yarn blanket colour',
      '?minute blanket',
    ],
    also: 'blanket mine yarn ball colour each spare cost need minute motif how-long all total',
    not: 'group left <weight> stash enough substitute row claim',
    saved: 'blanket',
    marks: { name: { takes: 'saved-blanket' }, minutes: { takes: 'minutes' } },
    phrases: [
      'how much yarn do I need for my blanket',
      'shopping list for my blanket',
      'what will my blanket cost',
    ],
  },
  async answer({ name, reserve, minutes }, { maker, projects }): Promise<Answer> {
    const doc = await projects.maker(maker.id, maker.name);
    const saved = findBlanket(doc, name);
    const blanket = reserve === undefined ? saved : { ...saved, reserve };
    const working = new Working();
    const pieces = piecesOf(specOf(doc, blanket), working);
    const inOne = pieces.motifs[0]?.stitches ?? 0;
    const own = minutes === undefined ? blanketPace(doc, blanket, working) : undefined;
    const perMinute = minutes === undefined ? own?.perMinute : saidPace(inOne, minutes, working);
    const found = reckonMaterials(
      pieces,
      { ...blanket, counts: countLaid(blanket.layout, blanket.kinds.length) },
      working,
      perMinute,
    );
    const unknown = found.colours.filter(({ balls }) => balls === undefined).map(({ colour }) => colour);
    const atHand = found.colours.some(({ balls, toBuy }) => balls !== toBuy);
    if (found.total <= 0)
      throw new Problem('nothing-to-work', 'Nothing is to be worked.', {
        hint: 'Lay motifs: /blanket layout.',
      });
    const { border } = found;
    return {
      headline: `${blanket.name} takes ${m(found.total)} of yarn with ${num(blanket.reserve)} % in reserve${
        found.balls === undefined
          ? ''
          : `, ${count(found.balls, 'ball')}${unknown.length > 0 ? ' of the colours whose ball is known' : ''}${atHand ? `, ${num(found.toBuy ?? 0)} of them still to buy` : ''}`
      }${found.cost === undefined ? '' : `, ${num(found.cost, 2)} to pay`}.`,
      lines: gather(
        found.colours.map(needLine),
        `Finished: ${sizeWords(found)}.`,
        `${count(found.ends, 'end')} to weave in; ${count(found.seams, 'seam')}, ${m(found.seamLength)} in all.`,
        border.map(
          ({ stitch, colour, stitches, metres }, index) =>
            `Border, round ${index + 1}: ${count(stitches, 'stitch', 'stitches')} of ${t(stitch)} in ${colour}, ${m(metres)}.`,
        ),
        found.hours !== undefined &&
          `${count(Math.round(found.hours * 10) / 10, 'hour')} for the motifs${own ? `, at your own pace at ${own.kind} over ${count(own.rows, 'row')}` : ''}; joining and border come on top.`,
        sureness(pieces),
      ),
      figures: gather(
        figure('yarn_total', 'Yarn with the reserve', found.total, 'm'),
        found.balls !== undefined && [
          figure('balls', 'Balls', found.balls),
          figure('to_buy', 'Balls still to buy', found.toBuy ?? 0),
        ],
        figure('weight', 'Weight', found.weight, 'g'),
        figure('cost', 'Cost of what is to buy', found.cost),
        figure('ends', 'Ends to weave in', found.ends),
        figure('seam_length', 'Seams', found.seamLength, 'm'),
        figure('width', 'Width', found.width, 'cm'),
        figure('height', 'Height', found.height, 'cm'),
        figure('hours', 'Hours for the motifs', found.hours),
      ),
      working: distinct(working.steps),
      assumptions: gather(
        pieces.assumptions,
        unknown.length > 0 &&
          `No ball is known of ${unknown.join(', ')}: /blanket colours colour:${unknown[0] ?? ''} ball:170m/100g.`,
        found.hours === undefined &&
          'No hours: no pace is known yet. Give minutes, or count rows with /progress next.',
      ),
      cautions: gather(
        blanketCautions(pieces, found),
        atHand && `Balls at hand and balls bought may differ: ${caution('dye-lot')}`,
        found.hours !== undefined && caution('hands'),
      ),
      data: {
        blanket: blanket.name,
        colours: found.colours,
        border: found.border,
        weighed: pieces.motifs.filter(({ how }) => how === 'weighed').map((motif) => motif.name),
        estimated: pieces.motifs.filter(({ how }) => how !== 'weighed').map((motif) => motif.name),
      },
      actions: [
        action('Will mine do?', 'blanket fit', { name: blanket.name }),
        action('Picture', 'blanket picture', { name: blanket.name }),
      ],
    };
  },
});
