/** What does a stitch’s name mean, in US and in UK terms? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { lookUpTerm, ALL_TERM_WORDS, type Meaning } from '../../src/core/lookup/term.ts';
import { offers, unknown } from './unknown.ts';

const EXAMPLE = 'Try term:dc, term:"UK tr" or term:blo.';

/** One meaning as a clause: `in US terms UK tr (…): how it is worked`. */
function clause({ terms, US, UK }: Meaning): string {
  if (terms === 'both') return US === UK ? 'the same in US and UK terms' : `US ${US}; UK ${UK}`;
  return terms === 'US' ? `in US terms what the UK calls ${UK}` : `in UK terms what the US calls ${US}`;
}

export const term = question({
  name: 'term',
  bare: 'term',
  says: 'What a stitch name or abbreviation means, US to UK and back',
  options: {
    term: opt.text(
      { says: 'A name or abbreviation: dc, UK tr, blo', suggest: offers(ALL_TERM_WORDS) },
      { max: 40, example: 'dc' },
    ),
  },
  example: 'term:dc',
  refused: { line: 'term:zigzagstitchery', option: 'term' },
  asked: {
    ways: [
      'mean',
      'mean abbreviation',
      'how-to @term',
      'mean @term',
      'mean stitch pattern',
      'mean <stitch>',
      'which <stitch>',
      '<stitch> us|uk',
      'convert <stitch>',
      'mean us|uk',
      'mean stitch',
      'which terms',
      '@term',
      '@term mean',
    ],
    also: 'us uk terms stitch pattern convert mean which cluster count chain slip-stitch whip',
    not: 'motif border corner gauge ball weigh blanket yarn hook row round how-many how-much evenly join',
    marks: { term: { takes: 'term' } },
    phrases: ['what does htr mean', 'what is a UK treble in US terms'],
  },
  answer({ term: typed }): Answer {
    const meanings = lookUpTerm(typed);
    const [only] = meanings;
    if (only === undefined) throw unknown('term', typed, ALL_TERM_WORDS, EXAMPLE);
    const differ = meanings.length > 1;
    const pair = only.terms !== 'both' || only.US !== only.UK;
    return {
      headline: differ
        ? `“${typed}” is ${meanings.length} different stitches: ${meanings.map(clause).join('; ')}.`
        : pair
          ? `“${typed}” is US ${only.US}; UK ${only.UK}: ${only.how}.`
          : `“${typed}”: ${only.how}.`,
      figures: [figure('meanings', 'Meanings', meanings.length)],
      lines: gather(
        differ && meanings.map(({ US, UK, how }) => `US ${US}; UK ${UK}: ${how}.`),
        meanings.flatMap(({ symbol, US }) =>
          symbol === undefined ? [] : [`In charts (US ${US}): ${symbol}.`],
        ),
        differ &&
          'Which is meant, the pattern must say. If it has sc anywhere it is in US terms; htr or miss speaks for UK ones. The US name is one yarn over fewer than the UK one.',
        meanings.flatMap(({ trap }) => (trap === undefined ? [] : [trap])),
        [...new Set(meanings.map(({ source }) => source))].map((source) => `Source: ${source}.`),
      ),
      data: { meanings },
    };
  },
});
