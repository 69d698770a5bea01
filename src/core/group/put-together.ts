/** Putting a group's motifs together: where each goes, what the seams and the border take. */
import type { Chance } from '../base/chance.ts';
import { reckonMaterials } from '../blanket/materials.ts';
import { piecesOf, type Pieces } from '../blanket/pieces.ts';
import { Problem } from '../base/problem.ts';
import { sum } from '../base/sum.ts';
import { formula, Working } from '../base/working.ts';
import { assembling, measureStrain, listTouching, type MotifToPlace } from './assemble.ts';
import { evenUp, sideOnceEvened, type Evening } from '../edges/evening.ts';
import { wpiOf } from '../yarn/thickness.ts';
import { yarnOf } from '../yarn/motif.ts';
import type { GroupPlan } from './events.ts';
import type { GroupState, Piece } from './state.ts';
import type { Stitch } from '../../standards/stitches.ts';

export const MEAN_GAP = formula({
  label: 'Neighbours differ once they are evened up, root mean square',
  // The root is taken before, so that a length is handed in: squares of lengths have no unit here.
  formula: 'root_of_squares / sqrt(seams)',
  given: { root_of_squares: 'cm', seams: '' },
  unit: 'cm',
  source: 'derived: squared differences of touching sides, averaged, and the root of it',
});

/** What joins the motifs and goes round them. */
interface Edges {
  /** m */
  readonly seamLength: number;
  readonly seamYarn: number;
  readonly seamColour: string;
  readonly borderYarn: number;
  readonly border: readonly {
    readonly stitch: Stitch;
    readonly colour: string;
    readonly across: number;
    readonly down: number;
    readonly total: number;
  }[];
  /** cm, finished. */
  readonly width: number;
  readonly height: number;
}

export interface PutTogether extends Edges {
  /** By cell, row by row. */
  readonly placed: readonly (MotifToPlace | undefined)[];
  /** Whether every exchange of two that helps was found; otherwise it was looked for long enough. */
  readonly whole: boolean;
  /** Numbers of the accepted motifs that are left over. */
  readonly over: readonly number[];
  readonly missing: number;
  /** cm */
  readonly meanGap: number;
  readonly arrivalGap: number;
  /** What becomes of the motifs that were measured, so that all meet in the wanted side, each with its number. */
  readonly evening: Evening;
  readonly numbers: readonly number[];
  /** Motifs accepted without a measured side: taken to be of the wanted one. */
  readonly unmeasured: number;
  /** What the pieces of the blanket take for granted. */
  readonly assumptions: readonly string[];
  readonly working: Working;
}

/** Places the accepted motifs, with pauses (yields): many of one kind take a while. Throws Problem: nothing-accepted. */
export function* putTogether(state: GroupState, chance: Chance): Generator<void, PutTogether> {
  const { plan } = state;
  const accepted = state.pieces.filter((piece) => piece.state === 'accepted');
  if (accepted.length === 0) {
    throw new Problem('nothing-accepted', 'No motif is accepted yet, so there is nothing to lay out.', {
      hint: 'Accept what was handed in.',
    });
  }
  const working = new Working();
  const pieces = { ...piecesOf(plan, working), side: plan.side };
  // Neighbours are to fit as they are laid: pinned out or with their edgings.
  const evened = evenMotifs(accepted, plan, pieces.seam.colour, new Working());
  const motifs = accepted.map(({ piece, kind, side = plan.side }, index) => {
    const one = evened.motifs[index];
    return { piece, kind, side: one ? sideOnceEvened(one, plan.side) : side, measured: side };
  });
  const layout = plan.layout.map(({ kind }) => kind);
  const { placed, whole } = yield* assembling(motifs, layout, plan.columns, plan.side, chance);
  const touches = listTouching(plan.columns, plan.rows);

  yield;

  const meanGap = reckonGap(placed, touches, working);
  const arrivalGap = reckonGap(inOrder(motifs, layout), touches, working, 'The same, in order of arrival');

  const edges = reckonEdges(plan, pieces, working);
  const used = new Set(placed.map((motif) => motif?.piece));
  const measured = accepted.filter(({ piece, side }) => side !== undefined && used.has(piece));
  return {
    placed,
    whole,
    over: accepted.map(({ piece }) => piece).filter((piece) => !used.has(piece)),
    missing: placed.filter((motif) => motif === undefined).length,
    meanGap,
    arrivalGap,
    ...edges,
    evening: evenMotifs(measured, plan, pieces.seam.colour, working),
    numbers: measured.map(({ piece }) => piece),
    unmeasured: accepted.filter((piece) => piece.side === undefined).length,
    assumptions: pieces.assumptions,
    working,
  };
}

/** What the seams and the border take, and how large it is with them. */
function reckonEdges(plan: GroupPlan, pieces: Pieces & { side: number }, working: Working): Edges {
  const need = reckonMaterials(
    pieces,
    { columns: plan.columns, rows: plan.rows, counts: plan.kinds.map(({ quota }) => quota) },
    working,
  );
  return {
    seamLength: need.seamLength,
    seamYarn: sum(need.colours.map(({ seams }) => seams)),
    seamColour: pieces.seam.colour,
    borderYarn: sum(need.border.map(({ metres }) => metres)),
    border: need.border.map(({ stitch, colour, across, down, stitches: total }) => ({
      stitch,
      colour,
      across,
      down,
      total,
    })),
    width: need.width,
    height: need.height,
  };
}

/** What makes the measured motifs meet in the wanted side, edged in the yarn of the seams. */
function evenMotifs(
  measured: readonly Pick<Piece, 'side'>[],
  plan: GroupPlan,
  seamColour: string,
  working: Working,
): Evening {
  const [first] = plan.kinds;
  return evenUp(
    measured.map(({ side = plan.side }) => side),
    {
      meant: plan.side,
      gauge: first?.gauge,
      hook: first?.hook,
      wpi: wpiOf(yarnOf(plan.yarns, seamColour)?.ball ?? first?.ball),
    },
    working,
  );
}

/** By how much neighbours differ (cm, root mean square); 0 where no two touch. */
function reckonGap(
  cells: readonly (MotifToPlace | undefined)[],
  touches: ReturnType<typeof listTouching>,
  working: Working,
  label?: string,
): number {
  const seams = touches.reduce(
    (sum, others, cell) => sum + others.filter((other) => other > cell && cells[cell] && cells[other]).length,
    0,
  );
  if (seams === 0) return 0;
  const squares = measureStrain(
    cells.map((motif) => motif?.side),
    touches,
  );
  return working.do(MEAN_GAP, { root_of_squares: Math.sqrt(squares), seams }, label);
}

/** Each motif in the first free cell of its kind, as it came. */
function inOrder(motifs: readonly MotifToPlace[], layout: readonly number[]): (MotifToPlace | undefined)[] {
  const waiting = new Map<number, MotifToPlace[]>();
  for (const motif of motifs) waiting.set(motif.kind, [...(waiting.get(motif.kind) ?? []), motif]);
  return layout.map((kind) => waiting.get(kind)?.shift());
}
