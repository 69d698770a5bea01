/** Why does a diagonal square come off the hook as a diamond, and what does it block to? */
import { figure, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { reckonDiamond } from '../../src/core/size/blocking.ts';
import { cm, num } from '../../src/core/base/reader.ts';
import { caution } from '../../src/standards/care.ts';

/** More rows than this are told in the data only. */
const ROWS_TOLD = 40;

export const shape = question({
  name: 'shape',
  says: 'Why a diagonal square comes off the hook as a diamond, what it blocks to, how to make it square',
  options: { gauge: opt.gauge(), size: opt.size('Rising rows of the diagonal square') },
  example: 'gauge:13x10 size:12',
  refused: { line: 'gauge:13 size:12', option: 'gauge' },
  asked: {
    ways: [
      'diamond',
      'diamond why',
      'blocked motif',
      'blocked how-big',
      'blocked measure',
      'diamond motif',
      'how-big|measure motif <shape:diagonal> <gauge>',
    ],
    also: 'motif row gauge stitch measure how-big mine why getting done round swatch',
    not: 'border join ball weigh blanket <shape:clusters|shape:blocks|shape:solid-square|shape:circle|shape:hexagon|shape:flat> <length>',
    reports: true,
    marks: { size: { takes: 'count', nouns: 'row', near: 'size', lead: 'size', only: true } },
    fills: ['gauge', 'size'],
    phrases: [
      'why is my diagonal square a diamond',
      'what will a 12 row diagonal square measure after blocking at 13x10',
    ],
  },
  answer({ gauge, size }): Answer {
    const found = reckonDiamond(gauge, size);
    const { across, along, side, cornerAngle, pull, increases } = found;
    const form = found.isSquare ? 'a square' : `a ${along > across ? 'tall' : 'wide'} diamond`;
    const told = increases.slice(0, ROWS_TOLD).join(', ');
    return {
      headline: `It comes off the hook as ${form}, ${cm(across)} across and ${cm(along)} along with a corner of ${num(cornerAngle, 1)}°, and blocks to a square of ${cm(side)} a side.`,
      figures: [
        figure('across', 'Across the widest row', across, 'cm'),
        figure('along', 'Along, corner to corner', along, 'cm'),
        figure('blocked_side', 'Blocked side', side, 'cm'),
        figure('corner_angle', 'Corner off the hook', cornerAngle, '°'),
      ],
      lines: [
        found.isSquare
          ? 'A row is about as high as a stitch is wide, so the corners are square as they are.'
          : found.isEven
            ? `A row is as high as a stitch is wide; only the odd stitch in the middle, ${num(found.widest)} stitches across to ${num(found.rows)} rows along, keeps the corner from 90°.`
            : `A row is ${num(found.heightToWidth, 2)} times as high as a stitch is wide, and each edge moves out one stitch a row, so the corners are not square. Every motif leans the same way: joined and blocked they lie flat.`,
        `To block: pin the four corners ${cm(side)} apart along the edges, wet or misted, and let it dry; the widest row ${pull < 0 ? 'draws in' : 'is pulled wider'} by ${num(Math.abs(pull), 1)} %.`,
        `To have it square off the hook, increase at each end, row by row: ${told}${increases.length > ROWS_TOLD ? ' …' : ''}; then decrease the same way back. That makes ${cm(found.squareSide)} a side.`,
      ],
      cautions: [caution('heat')],
      working: found.working.steps,
      data: { increases },
    };
  },
});
