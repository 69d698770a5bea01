/** Motifs of different size made to meet: which to pin out, which to edge, which to leave. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { readLengths } from '../../src/core/base/lists.ts';
import { cm } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { evenUp } from '../../src/core/edges/evening.ts';
import { caution } from '../../src/standards/care.ts';
import { USUAL_YARN } from '../../src/standards/consumption.ts';
import { evenedLines, evenedWords } from '../shared/evened-words.ts';
import { distinct } from '../shared/steps.ts';

export const even = question({
  name: 'even',
  says: 'Motifs of different size made to meet: which to pin out, which to edge, which to leave out',
  options: {
    sides: opt.text('The measured side of every motif, like 14.2 15 15 15.6cm', {
      max: 2000,
      example: '14.2 15 15 15.6cm',
    }),
    wanted: opt
      .length('The side that all are to have; one of theirs, where most of them meet, if not given', '15cm')
      .optional(),
    gauge: opt.gauge('The edge’s stitches over 10 cm, like 13').optional(),
    hook: opt.hook('The hook for the edging').optional(),
    yarn: opt
      .yarn({
        says: 'How thick: a category 0 to 7, its name, or wraps per inch like 11wpi',
        assumed: USUAL_YARN.assumed,
      })
      .default(USUAL_YARN.thickness),
  },
  example: 'sides:"13.2 14.4 15 15.2 17cm" wanted:15cm gauge:13 hook:5mm',
  refused: { line: 'sides:"large and small"', option: 'sides' },
  asked: {
    ways: ['uneven', 'uneven motif', 'uneven <length>', 'uneven side', 'uneven measure'],
    also: 'motif side measure mine block how-big border each',
    not: 'increase decrease group row goes-where',
    marks: {
      sides: {
        capture:
          /((?<!\d)(?:\d+(?:\.\d+)?\s*(?:cm|mm|in\b|inch(?:es)?|")?\s*(?:,\s*|and\s+|&\s*|\s)\s*(?:and\s+)?)+\d+(?:\.\d+)?\s*(?:cm|mm|in\b|inch(?:es)?|")?)/iu,
      },
      wanted: { never: true },
      gauge: { takes: 'gauge', near: 'gauge', only: true },
    },
    phrases: ['even up my squares: they measure 14.2, 15 and 15.6 cm'],
  },
  answer({ sides, wanted, gauge, hook, yarn }, { reader }): Answer {
    const working = new Working();
    const measured = readLengths(sides, reader.units === 'imperial' ? 'in' : 'cm', 'sides');
    const evened = evenUp(measured, { meant: wanted, gauge, hook, wpi: yarn.wpi }, working);
    const { asTheyAre, pinned, edged, leftOut } = evened.counts;
    return {
      headline: `They meet at ${cm(evened.side)}: ${evenedWords(evened)}.`,
      figures: [
        figure('side', 'They meet at', evened.side, 'cm'),
        figure('as_they_are', 'As they are', asTheyAre),
        figure('pinned', 'Pinned out', pinned),
        figure('edged', 'With an edging', edged),
        figure('left_out', 'Left out', leftOut),
        figure('yarn', 'Yarn in the edgings', evened.yarn, 'm'),
      ],
      lines: gather(
        evenedLines(evened, ({ side }) => cm(side)),
        measured.length > 2 &&
          'Laid in order of size, row after row, neighbours differ least; what is still off goes to the rim, where fewer seams meet it.',
      ),
      assumptions: gather(
        wanted === undefined && `They are to meet in one of their own sizes, ${cm(evened.side)}.`,
        gauge === undefined &&
          'The edging’s stitches follow hook and yarn, as no gauge of the edge was given.',
        edged > 0 && 'An edging has three stitches in each corner.',
      ),
      cautions: pinned > 0 ? [caution('heat')] : [],
      working: distinct(working.steps),
      data: {
        motifs: evened.motifs.map(({ side, pin, leave, edging }) => ({
          side,
          pin,
          leave,
          edging: edging ?? null,
        })),
      },
    };
  },
});
