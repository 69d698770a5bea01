/** A blanket as it is asked for: drawn up whole before it is kept. */
import type { OptionsOf } from '../../src/chat/command.ts';
import { seedOf } from '../../src/core/base/chance.ts';
import { MOST_KINDS } from '../../src/core/base/limits.ts';
import { checkSize, DEFAULT_LAID, writeLaidBy } from '../../src/core/blanket/layout.ts';
import { piecesOf } from '../../src/core/blanket/pieces.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { SAMPLE_SIZE } from '../../src/core/base/samples.ts';
import { resize } from '../../src/core/size/resize.ts';
import { Working } from '../../src/core/base/working.ts';
import { borderOf, readNames, specOf } from '../../src/projects/blankets.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import { relaid } from '../../src/projects/relaying.ts';
import type { Blanket, MakerDoc } from '../../src/projects/schema.ts';
import { USUAL_RESERVE } from '../../src/standards/consumption.ts';
import { defined } from '../../src/core/base/defined.ts';
import type { start } from './start.ts';

/** Three in each corner lie flat in the shortest stitch. */
const USUAL_CORNER = 3;

type Asked = OptionsOf<typeof start>;

/** The blanket as asked, not yet kept. Throws Problem: kind-twice, too-many-kinds, no-border, size-given-twice, size-missing. */
export function drawUp(doc: MakerDoc, asked: Asked, working: Working): Blanket {
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
    joining: defined({ method: asked.joining ?? 'whip', colour: asked.join_colour }),
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
    const { best, working: steps } = resize({
      width: asked.width,
      height: asked.height,
      border: pieces.border.width,
      side: pieces.side,
    });
    working.steps.push(...steps.steps);
    checkSize(best.columns, best.rows);
    return { columns: best.columns, rows: best.rows };
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
      hint: `Give columns:6 rows:8, or ${SAMPLE_SIZE}, or a map.`,
    });
  checkSize(asked.columns, asked.rows);
  return { columns: asked.columns, rows: asked.rows };
}
