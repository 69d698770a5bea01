/** A new blanket from saved motifs. */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { letter } from '../../src/core/blanket/layout.ts';
import { reckonMaterials } from '../../src/core/blanket/materials.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { showApportioned } from '../../src/core/blanket/apportion.ts';
import { showTouches } from '../../src/core/blanket/scatter.ts';
import { count } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { addBlanket, kindsOf } from '../../src/projects/blankets.ts';
import { USUAL_RESERVE } from '../../src/standards/consumption.ts';
import { action, form } from '../shared/actions.ts';
import { piecesIfKnown } from '../shared/blanket-drawing.ts';
import {
  arrangement,
  columns,
  countsByKind,
  edges,
  rows,
  SAVED,
  savedKinds,
  seed,
  setting,
} from './options.ts';
import { extentWords, layoutFacts, makeCounts, sizeFigures, sizeWords } from './words.ts';
import { drawUp } from './draw-up.ts';

export const start = question({
  name: 'start',
  says: 'Starts a blanket from saved motifs: its kinds, columns and rows, layout, joining, border',
  options: {
    name: opt.text('What you call it', { max: LONGEST_NAME, example: 'garden throw' }),
    kinds: savedKinds('Saved motifs, commas between; the first is A, the next B'),
    columns: columns().optional(),
    rows: rows().optional(),
    width: opt.length('Instead of columns and rows: about how wide', '120cm').optional(),
    height: opt.length('Instead of columns and rows: about how high', '150cm').optional(),
    arrange: arrangement().optional(),
    setting: setting().optional(),
    counts: countsByKind().optional(),
    map: opt
      .text('A map of your own: letters, rows parted by /; a digit turns: A0B1/B2A3', {
        max: 3500,
        example: 'AB/BA',
      })
      .optional(),
    seed: seed().optional(),
    ...edges,
  },
  example: 'name:"porch blanket" kinds:"moss square, sand square" columns:4 rows:5 border:"sc hdc"',
  refused: { line: 'name:"porch blanket" kinds:"mos square" columns:4 rows:5', option: 'kinds' },
  before: SAVED.slice(0, 2),
  changes: true,
  form: {
    title: 'Start a blanket',
    asks: ['kinds', 'columns', 'rows', 'arrange', 'setting', 'border', 'joining'],
    needs: [
      ['columns', 'width', 'map'],
      ['rows', 'height', 'map'],
    ],
    // All the rest can be changed later, in /blanket layout and /blanket change.
    begins: ['name', 'columns', 'rows'],
  },
  asked: {
    ways: ['new blanket', 'new blanket @motif', 'blanket @motif <pair>', 'save blanket'],
    also: 'motif across down rename layout scatter checked border join mean new row kind',
    not: 'group picture cost weigh show how-many how-much',
    reports: true,
    saved: 'motif',
    marks: {
      name: {
        capture:
          /(?:\b(?:called|named|name it|call it|blanket)\s+)(?:"([^"]+)"|“([^”]+)”|([\p{L}'’ -]+?)(?=\s*(?:[.,;:?!]|$|\bwith\b|\bin\b|\bof\b|\bfrom\b|\bmade\b)))/iu,
      },
      kinds: { takes: 'saved-motif', with: 'several' },
      arrange: { choices: { scattered: 'scatter', checked: 'checked', stripes: 'striped' } },
      setting: {},
      counts: { never: true },
      map: { never: true },
      border: { takes: 'stitches' },
      border_colours: { never: true },
      join_colour: { never: true },
      joining: { choices: { whip: 'whip', 'slip-stitch': 'slip-stitch' }, with: 'join' },
      rows: { takes: 'count', nouns: 'row down', only: true },
    },
    pairs: { grid: ['columns', 'rows'], dims: ['width', 'height'] },
    phrases: ['start a blanket called "porch" from moss square and sand square, 4 by 5'],
  },
  async answer(asked, { maker, now, projects, once }): Promise<Answer> {
    let working = new Working();
    const { tell, doc } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
      // Begun anew where this is asked again.
      working = new Working();
      const made = drawUp(doc, asked, working);
      addBlanket(doc, made, now);
      return { name: made.name };
    });
    const blanket = doc.blankets.find(({ name }) => name === tell.name);
    if (!blanket)
      throw new Problem('blanket-gone', `${tell.name} is not there any more.`, {
        option: 'name',
        hint: 'Start it under this name again.',
      });
    const facts = layoutFacts(blanket, kindsOf(doc, blanket));
    if (facts.laid.arrangement === 'scattered') {
      if (asked.counts === undefined && blanket.kinds.length > 1)
        showApportioned(
          working,
          blanket.layout.length,
          blanket.kinds.map((name, kind) => ({ name: `${letter(kind)} (${name})`, share: 1 })),
        );
      showTouches(working, blanket.columns, blanket.rows, facts.counts);
    }
    const pieces = piecesIfKnown(doc, blanket, new Working());
    const known =
      pieces instanceof Problem
        ? undefined
        : reckonMaterials(pieces, { ...blanket, counts: facts.counts }, new Working());
    return {
      headline: `${blanket.name} is started: ${extentWords(blanket)}, ${count(blanket.layout.length, 'motif')} to make: ${makeCounts(blanket.kinds, facts.counts)}.`,
      lines: gather(
        known && `Finished: ${sizeWords(known)}.`,
        pieces instanceof Problem && `${pieces.message} ${pieces.hint}`,
        facts.lines,
      ),
      figures: gather(facts.figures, sizeFigures(known)),
      working: working.steps,
      assumptions: gather(
        asked.arrange === undefined &&
          asked.counts === undefined &&
          asked.map === undefined &&
          (blanket.kinds.length === 1
            ? 'One kind everywhere, as there is one.'
            : 'Kinds scattered in equal shares, as no arrangement was named.'),
        asked.border === undefined && 'No border, as none was given.',
        asked.reserve === undefined && `${USUAL_RESERVE} % in reserve, as none was given.`,
        facts.assumptions,
      ),
      cautions: facts.cautions,
      data: facts.data,
      actions: [
        action('Picture', 'blanket picture', { name: blanket.name }),
        action('What to buy', 'blanket materials', { name: blanket.name }),
        form('Joining and border', 'blanket change', { name: blanket.name }, ['border']),
      ],
    };
  },
});
