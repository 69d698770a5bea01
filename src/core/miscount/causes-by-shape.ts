/** What goes wrong in each shape. The reasons are common practice; what a difference can mean is derived from the plan. */
import { CORNER_FOR } from '../../standards/growth.ts';
import { count, t } from '../base/reader.ts';
import { makeUp, ripBack, units, type Ranked, type Scene } from './mending.ts';

export function listCausesByShape(scene: Scene): Ranked[] {
  switch (scene.plan.shape) {
    case 'diagonal':
      return ends(scene);
    case 'blocks':
      return blockRows(scene);
    case 'flat':
      return flatRows(scene);
    case 'clusters':
      return clusterRounds(scene);
    case 'solid-square':
      return corners(scene);
    case 'circle':
    case 'hexagon':
      return increasingRounds(scene);
  }
}

/** The diagonal square: one more at each end while it grows, one fewer after the turn. */
function ends(scene: Scene): Ranked[] {
  if (scene.before === undefined) {
    return [
      {
        rank: 20,
        slip: 'first-row',
        cause: `The first row began with ${units(scene, scene.counted)} instead of 3: the skipped chains stand as one, and two go into the first chain.`,
        why: 'Everything after grows from this row.',
        ...ripBack(scene),
      },
    ];
  }
  return scene.step > 0
    ? [...oddEnds(scene, 'increase', -scene.difference), ...decreasedInstead(scene)]
    : [...oddEnds(scene, 'decrease', scene.difference), ...increasedInstead(scene)];
}

/** Changes at the ends that were missed (`missed` above 0) or worked once more than they should be (below 0). */
function oddEnds(scene: Scene, change: 'increase' | 'decrease', missed: number): Ranked[] {
  const { row, too } = scene;
  const rising = change === 'increase';
  const causes: Readonly<Record<number, Omit<Ranked, 'mend' | 'cost'>>> = {
    1: {
      rank: 10,
      slip: `${change}-missed`,
      cause: `The ${change} at one end was missed, most often at the last stitch of the row.`,
      why: `One ${too} is one ${change}; both ends need one.`,
    },
    2: {
      rank: 20,
      slip: `both-${change}s-missed`,
      cause: `The ${change}s at both ends were missed: row ${row} was worked straight.`,
      why: `The count is that of row ${row - 1} again.`,
    },
    [-1]: {
      rank: 14,
      slip: `one-${change}-too-many`,
      cause: rising
        ? 'A stitch was worked into the turning chain and one more beside it, or an end got 3 instead of 2.'
        : 'Three were taken together at one end instead of two, or a stitch was skipped.',
      why: `Both ends did their ${change}, and one ${rising ? 'more came' : 'more went'}.`,
    },
    [-2]: {
      rank: 24,
      slip: `${change}s-too-many`,
      cause: rising
        ? 'Both ends got 3 instead of 2.'
        : 'Three were taken together at both ends instead of two.',
      why: `Two ${too}, and the ${change}s come in pairs.`,
    },
  };
  const cause = causes[missed];
  return cause === undefined ? [] : [{ ...cause, ...makeUp(scene) }];
}

/** In the rising rows: decreases where increases belong. */
function decreasedInstead(scene: Scene): Ranked[] {
  const { difference, row, plan } = scene;
  const back = ripBack(scene);
  if (difference === -2)
    return [
      {
        rank: 40,
        slip: 'one-end-decreased',
        cause: 'One end was decreased instead of increased; the other was increased as it should be.',
        why: 'That too makes two too few, and leaves one edge leaning inwards.',
        ...back,
      },
    ];
  if (difference !== -4) return [];
  return [
    {
      rank: 8,
      slip: 'turned-too-early',
      cause: 'Both ends were decreased instead of increased: the turn was worked too early.',
      why: `The count is 2 fewer than row ${row - 1}; it should be 2 more.`,
      mend: `${back.mend} Or keep the early turn, and make every motif of this size.`,
      cost: `${back.cost} Kept, the motif is ${count(plan.size - row + 1, 'rising row')} smaller than planned.`,
    },
  ];
}

/** In the falling rows: increases where decreases belong. */
function increasedInstead(scene: Scene): Ranked[] {
  const { difference, row, plan } = scene;
  if (difference === 2)
    return [
      {
        rank: 40,
        slip: 'one-end-increased',
        cause: 'One end was increased instead of decreased; the other was decreased as it should be.',
        why: 'That too makes two too many.',
        ...ripBack(scene),
      },
    ];
  if (difference !== 4) return [];
  return [
    {
      rank: 8,
      slip: 'turn-missed',
      cause:
        row === plan.size + 1
          ? 'The turn was missed: both ends were increased where they should be decreased.'
          : 'Both ends were increased instead of decreased.',
      why: `The count is 2 more than row ${row - 1}; after row ${plan.size} it should be 2 fewer.`,
      ...ripBack(scene),
    },
  ];
}

/** Corner-to-corner blocks: one more a row, level rows in a rectangle, one fewer a row. */
function blockRows(scene: Scene): Ranked[] {
  const { before, step } = scene;
  if (before === undefined)
    return [
      {
        rank: 20,
        slip: 'first-row',
        cause: 'The piece begins with one block in the corner.',
        why: 'Everything after grows from it.',
        ...ripBack(scene),
      },
    ];
  return step > 0 ? growingBlocks(scene, before) : otherBlocks(scene);
}

/** A row that has one block more than the `before` of the row below it. */
function growingBlocks(scene: Scene, before: number): Ranked[] {
  const { difference: d, row } = scene;
  if (d > 0)
    return [
      {
        rank: 12,
        slip: 'two-blocks-in-one',
        cause: 'Two blocks were worked into one space.',
        why: 'A growing row gains one block only, at its start.',
        ...ripBack(scene),
      },
    ];
  if (d < -1)
    return [
      {
        rank: 12,
        slip: 'turned-too-early',
        cause: 'The row was begun as a shrinking one: the turn came too early.',
        why: `The count fell from ${before} where it should rise.`,
        ...ripBack(scene),
      },
    ];
  return [
    {
      rank: 10,
      slip: 'block-left-out',
      cause: `The new block at the start of row ${row} was left out, or the last ${t('sl st')} and block were skipped.`,
      why: 'One block too few in a growing row is one block not begun.',
      ...ripBack(scene),
    },
  ];
}

/** A row that keeps the count of the row below it, or has one block fewer. */
function otherBlocks(scene: Scene): Ranked[] {
  const { difference: d, step, row } = scene;
  if (d < 0)
    return [
      {
        rank: 12,
        slip: 'ended-a-block-too-soon',
        cause: 'The row ended a block too soon.',
        why: 'A block of the row before was not worked into.',
        ...ripBack(scene),
      },
    ];
  return [
    {
      rank: 8,
      slip: 'turn-missed',
      cause:
        step === 0
          ? 'A block was added at the start and the last one was not dropped.'
          : `The turn was missed: row ${row} should begin with ${t('sl st')}s over a block and end one block sooner.`,
      why: `From row ${row} on the plan ${step === 0 ? 'keeps its count' : 'loses a block a row'}.`,
      ...ripBack(scene),
    },
  ];
}

function flatRows(scene: Scene): Ranked[] {
  const { difference: d, counts, fromRow, row, expected } = scene;
  const rest = counts.slice(row - fromRow);
  const drifting =
    rest.length >= 2 &&
    rest.every(
      (counted, index) =>
        Math.sign(counted - expected) === Math.sign(d) && Math.abs(counted - expected) > index,
    );
  return [
    {
      rank: drifting ? 6 : 10,
      slip: d < 0 ? 'last-stitch-missed' : 'edge-worked-twice',
      cause:
        d < 0
          ? 'The last stitch of the row was missed: it stands at the very edge and hides under the turning chain.'
          : 'A stitch was worked into the edge twice, at the start or at the end of the row.',
      why: drifting
        ? 'The count drifts the same way row after row, so it happens at an edge every time.'
        : `${Math.abs(d) === 1 ? 'One' : 'A few'} ${scene.too} in a straight piece mostly happens at an edge.`,
      ...makeUp(scene),
    },
  ];
}

function clusterRounds(scene: Scene): Ranked[] {
  const { difference: d, row, before, counted } = scene;
  const found: Ranked[] = [];
  if (before !== undefined && counted === before)
    found.push({
      rank: 10,
      slip: 'corners-left-out',
      cause: `Each corner got one cluster instead of two: round ${row} was worked without its corners.`,
      why: `The count is that of round ${row - 1} again.`,
      ...ripBack(scene),
    });
  if (d % 3 === 0)
    found.push({
      rank: 15,
      slip: d < 0 ? 'cluster-missed' : 'cluster-too-many',
      cause: `${count(Math.abs(d) / 3, 'whole cluster')} ${d < 0 ? 'missing: a space was passed over, or a corner got one cluster instead of two' : 'more: a space was worked twice, or a corner got three clusters'}.`,
      why: 'The difference is a multiple of 3, and a cluster is 3 stitches.',
      ...ripBack(scene),
    });
  else
    found.push({
      rank: 15,
      slip: 'cluster-of-other-size',
      cause: `A cluster has ${d < 0 ? '2 stitches' : '4 stitches'} instead of 3, or the starting chain was ${d < 0 ? 'not counted as a stitch' : 'counted beside a whole cluster'}.`,
      why: 'The difference is no multiple of 3, so it is not a whole cluster.',
      ...ripBack(scene),
    });
  return found;
}

function corners(scene: Scene): Ranked[] {
  const { difference: d, plan, row } = scene;
  const corner = CORNER_FOR[plan.stitch];
  const whole = Math.abs(d) / (corner - 1);
  const found: Ranked[] = [];
  if (row > 1 && Number.isInteger(whole) && whole <= 4)
    found.push({
      rank: 10,
      slip: d < 0 ? 'corner-missed' : 'corner-too-many',
      cause:
        d < 0
          ? `${count(whole, 'corner')} missed: one stitch there instead of ${corner}.`
          : `${count(whole, 'corner')} too many: ${corner} worked where one belongs.`,
      why: `A corner makes ${corner} of one, so each is worth ${corner - 1}.`,
      ...ripBack(scene),
    });
  if (row > 1 && Math.abs(d) < corner - 1)
    found.push({
      rank: 12,
      slip: 'corner-of-other-size',
      cause: `A corner got ${corner + d} stitches instead of ${corner}.`,
      why: `${units(scene, Math.abs(d))} ${scene.too} is less than a whole corner.`,
      ...makeUp(scene),
    });
  return found;
}

function increasingRounds(scene: Scene): Ranked[] {
  const { difference: d, step, before, counted, row } = scene;
  if (before === undefined) return [];
  if (counted === before)
    return [
      {
        rank: 10,
        slip: 'increases-left-out',
        cause: `Round ${row} was worked without its increases.`,
        why: `The count is that of round ${row - 1} again.`,
        ...ripBack(scene),
      },
    ];
  const found: Ranked[] = [];
  if (d < 0 && -d < step)
    found.push({
      rank: 12,
      slip: 'increase-missed',
      cause: `${count(-d, 'increase')} of ${step} missed.`,
      why: 'Each increase is worth one stitch.',
      ...makeUp(scene),
    });
  if (d > 0)
    found.push({
      rank: 12,
      slip: 'one-increase-too-many',
      cause: `${count(d, 'increase')} too many: the increases came too close together.`,
      why: 'Each increase is worth one stitch.',
      ...makeUp(scene),
    });
  return found;
}
