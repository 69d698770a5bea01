import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { seedOf } from '../../src/core/base/chance.ts';
import { LONGEST_NAME, MOST_KINDS } from '../../src/core/base/limits.ts';
import { checkSize, DEFAULT_LAID, letter, writeLaidBy } from '../../src/core/blanket/layout.ts';
import { reckonMaterials } from '../../src/core/blanket/materials.ts';
import { piecesOf } from '../../src/core/blanket/pieces.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { showApportioned } from '../../src/core/blanket/apportion.ts';
import { resize } from '../../src/core/size/resize.ts';
import { showTouches } from '../../src/core/blanket/scatter.ts';
import { count } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { addBlanket, borderOf, kindsOf, readNames, specOf } from '../../src/projects/blankets.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { relaid } from '../../src/projects/relaying.ts';
import type { Blanket, MakerDoc } from '../../src/projects/schema.ts';
import { USUAL_RESERVE } from '../../src/standards/consumption.ts';
import { action } from '../shared/actions.ts';
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
import { extentWords, layoutFacts, makeCounts, sizeWords } from './words.ts';

/** Three in each corner lie flat in the shortest stitch. */
const USUAL_CORNER = 3;

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
    const working = new Working();
    const { tell, doc } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
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
      figures: gather(
        facts.figures,
        known && [
          figure('width', 'Width', known.width, 'cm'),
          figure('height', 'Height', known.height, 'cm'),
        ],
      ),
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
      data: facts.data,
      actions: [
        action('Picture', 'blanket picture', { name: blanket.name }),
        action('What to buy', 'blanket materials', { name: blanket.name }),
      ],
    };
  },
});

type Asked = {
  name: string;
  kinds: string;
  columns?: number | undefined;
  rows?: number | undefined;
  width?: number | undefined;
  height?: number | undefined;
  arrange?: 'plain' | 'checked' | 'stripes' | 'scattered' | 'typed' | undefined;
  counts?: string | undefined;
  map?: string | undefined;
  seed?: number | undefined;
  setting?: Parameters<typeof relaid>[1]['setting'];
  joining?: Blanket['joining']['method'] | undefined;
  join_colour?: string | undefined;
  border?: readonly Blanket['border']['rounds'][number]['stitch'][] | undefined;
  border_colours?: string | undefined;
  corner?: number | undefined;
  reserve?: number | undefined;
};

/** The blanket as asked, not yet kept. Throws a Problem. */
function drawUp(doc: MakerDoc, asked: Asked, working: Working): Blanket {
  const names = readNames(asked.kinds, 'kinds').map((kind) => findMotif(doc, kind, 'kinds').name);
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  if (twice !== undefined)
    throw new Problem('kind-twice', `${twice} is named twice.`, {
      option: 'kinds',
      hint: 'Name each kind once.',
    });
  if (names.length > MOST_KINDS)
    throw new Problem('too-many-kinds', `More than ${MOST_KINDS} kinds have no letters left.`, {
      facts: { most: MOST_KINDS, given: names.length },
      option: 'kinds',
      hint: `Name at most ${MOST_KINDS}.`,
    });
  if (asked.border_colours !== undefined && asked.border === undefined)
    throw new Problem('no-border', 'The border has colours and no rounds.', {
      option: 'border',
      hint: 'Name one stitch a round, like border:"sc hdc sc".',
    });
  const base: Blanket = {
    name: asked.name,
    kinds: names,
    columns: 1,
    rows: 1,
    layout: [],
    setting: writeLaidBy({
      ...DEFAULT_LAID,
      arrangement: names.length > 1 ? 'scattered' : 'plain',
      seed: seedOf(asked.name),
    }),
    joining: {
      method: asked.joining ?? 'whip',
      ...(asked.join_colour === undefined ? {} : { colour: asked.join_colour }),
    },
    border: borderOf(
      asked.border ?? [],
      asked.border_colours === undefined ? [] : readNames(asked.border_colours, 'border_colours'),
      asked.corner ?? USUAL_CORNER,
    ),
    yarns: [],
    reserve: asked.reserve ?? USUAL_RESERVE,
  };
  return relaid(
    { ...base, ...sized(doc, base, asked, working) },
    {
      arrangement: asked.arrange,
      setting: asked.setting,
      counts: asked.counts,
      map: asked.map,
      seed: asked.seed,
    },
  );
}

/** Columns and rows: as given, from a map, or nearest to a size. */
function sized(doc: MakerDoc, base: Blanket, asked: Asked, working: Working) {
  const counted = asked.columns !== undefined || asked.rows !== undefined;
  const measured = asked.width !== undefined || asked.height !== undefined;
  if (asked.map !== undefined) {
    if (counted || measured)
      throw new Problem('size-given-twice', 'A map says by itself how many columns and rows there are.', {
        option: counted ? 'columns' : 'width',
        hint: 'Leave that out, or leave map out.',
      });
    return {};
  }
  if (counted && measured)
    throw new Problem('size-given-twice', 'The size is given twice, in motifs and in length.', {
      option: 'width',
      hint: 'Give columns and rows, or width and height.',
    });
  if (asked.width !== undefined && asked.height !== undefined) {
    const pieces = piecesOf(specOf(doc, base), new Working());
    const found = resize({
      width: asked.width,
      height: asked.height,
      border: pieces.border.width,
      side: pieces.side,
    });
    working.steps.push(...found.working.steps);
    checkSize(found.best.columns, found.best.rows);
    return { columns: found.best.columns, rows: found.best.rows };
  }
  if (asked.columns === undefined || asked.rows === undefined)
    throw new Problem('size-missing', 'How many motifs it has is not said.', {
      option: measured
        ? asked.width === undefined
          ? 'width'
          : 'height'
        : asked.columns === undefined
          ? 'columns'
          : 'rows',
      hint: 'Give columns:6 rows:8, or width:120cm height:160cm, or a map.',
    });
  checkSize(asked.columns, asked.rows);
  return { columns: asked.columns, rows: asked.rows };
}
