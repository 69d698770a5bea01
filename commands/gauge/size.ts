/** Which size of diagonal square comes out at the wished side? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { findSizeForSide, type SizeAndSide } from '../../src/core/size/size-for-side.ts';
import { cm, count, num } from '../../src/core/base/reader.ts';
import { caution } from '../../src/standards/care.ts';

const told = ({ size, side }: SizeAndSide) => `size ${size} blocks to ${cm(side)}`;

export const size = question({
  name: 'size',
  says: 'Which size of diagonal square comes out at the side you wish, at your own gauge',
  options: {
    gauge: opt.gauge('Your own: stitches x rows over 10 cm, like 13x10, or 13x10 over 4in'),
    side: opt.length('The side that one blocked motif should have', '15cm'),
    size: opt.size('The pattern’s own size in rising rows, to compare').optional(),
  },
  example: 'gauge:13x10 side:15cm size:12',
  refused: { line: 'gauge:13 side:15cm', option: 'gauge' },
  asked: {
    ways: [
      '?size motif <gauge>',
      '?size motif gauge',
      'which size ?motif <gauge>',
      'which size ?motif <length>',
      'need motif gauge <length>',
      '?row motif <length> <gauge>',
      '?row motif <length> gauge',
      '?row|round motif <length>',
      '?size motif <length>',
      'how-big motif gauge <length>',
      '?row <length> side',
    ],
    also: 'motif row round side measure how-big size blocked gauge getting each pattern need across block',
    not: 'blanket border ball yarn left weigh diamond join hook <dims>',
    marks: {
      side: {
        asks: 'How long should a side of the motif be?',
        takes: 'length',
        near: 'motif side measure block',
        not: 'border',
      },
      size: { takes: 'count', nouns: 'row round', near: 'pattern', only: true },
    },
    fills: ['gauge'],
    phrases: [
      'how many rows for a 6 inch diagonal square at 13x10',
      'which size of square comes out at 15 cm with my gauge of 14x11',
    ],
  },
  answer(asked): Answer {
    const found = findSizeForSide(asked);
    const { off, smaller, larger, pattern } = found;
    const same = Math.abs(off) < 0.05;
    return {
      headline: `${count(found.size, 'rising row')} ${found.size === 1 ? 'blocks' : 'block'} to ${cm(found.side)} a side${same ? ', just as wished' : `, ${num(Math.abs(off), 1)} % ${off > 0 ? 'larger' : 'smaller'} than wished and the nearest there is`}.`,
      figures: gather(
        figure('size', 'Rising rows', found.size),
        figure('side', 'Blocked side', found.side, 'cm'),
        pattern && figure('pattern_side', `Side of the pattern’s size ${pattern.size}`, pattern.side, 'cm'),
      ),
      lines: gather(
        pattern &&
          (pattern.size === found.size
            ? `That is the pattern’s own size.`
            : `The pattern’s ${told(pattern)} at your gauge.`),
        [smaller, larger]
          .filter((one) => one !== undefined)
          .map((one) => `${one === smaller ? 'One row fewer' : 'One row more'} each way: ${told(one)}.`),
        'Where the pattern has stripes, keep them whole: change its size by whole stripes.',
      ),
      cautions: [caution('heat')],
      working: found.working.steps,
      assumptions: ['The motif is a diagonal square, blocked.'],
    };
  },
});
