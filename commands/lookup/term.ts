/** What does a stitch’s name mean, in US and in UK terms? */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { compareStitches, readNamed, type Named } from '../../src/core/lookup/compare-stitches.ts';
import { lookUpTerm, ALL_TERM_WORDS, type Meaning } from '../../src/core/lookup/term.ts';
import { num } from '../../src/core/base/reader.ts';
import { Working } from '../../src/core/base/working.ts';
import { STITCH_FACTS, type Stitch } from '../../src/standards/stitches.ts';
import { listed } from '../shared/listed.ts';
import { offers, unknown } from './unknown.ts';

const EXAMPLE = 'Try term:dc, term:"UK tr" or term:blo.';

/** One meaning as a clause: `in US terms UK tr (…): how it is worked`. */
function clause({ terms, US, UK }: Meaning): string {
  if (terms === 'both') return US === UK ? 'the same in US and UK terms' : `US ${US}; UK ${UK}`;
  return terms === 'US' ? `in US terms what the UK calls ${UK}` : `in UK terms what the US calls ${US}`;
}

/** `dc is about 2 times as tall as sc and takes about 1.9 times its yarn.` */
function tellApart(named: readonly Named[]): Answer {
  const working = new Working();
  const found = compareStitches(named, working);
  const names = (terms: 'US' | 'UK') => named.map(({ meaning }) => meaning[terms].split(', ')[0] ?? '');
  const typedFor = (stitch: Stitch) => named.find((one) => one.stitch === stitch)?.typed ?? stitch;
  return {
    headline: found
      ? `${typedFor(found.taller)} is about ${num(found.tall, 1)} times as tall as ${typedFor(found.shorter)} and takes about ${num(found.yarn, 1)} times its yarn.`
      : `${listed(named.map(({ typed }) => `“${typed}”`))} are worked differently:`,
    figures: found
      ? [
          figure('times_as_tall', 'Times as tall', found.tall),
          figure('times_the_yarn', 'Times the yarn', found.yarn),
        ]
      : [],
    lines: gather(
      named.map(
        ({ typed, meaning, stitch }) =>
          `${typed}: ${meaning.how}${stitch === undefined ? '' : `; turning chain ${STITCH_FACTS[stitch].turningChain}`}.`,
      ),
      found && `The same in US terms: ${names('US').join(', ')}; in UK terms: ${names('UK').join(', ')}.`,
    ),
    data: { compared: named.map(({ typed, meaning }) => ({ typed, ...meaning })) },
    working: working.steps,
  };
}

export const term = question({
  name: 'term',
  bare: 'term',
  says: 'What a stitch name or abbreviation means, US to UK and back; two of them told apart',
  options: {
    term: opt.text(
      {
        says: 'A name or abbreviation, or two to tell apart: dc, UK tr, sc vs dc',
        suggest: offers(ALL_TERM_WORDS),
      },
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
      'tell-apart @term',
      'tell-apart',
    ],
    also: 'tell-apart stitch us uk terms stitch pattern convert mean which cluster count chain slip-stitch whip',
    not: 'motif border corner gauge ball weigh blanket yarn hook row round how-many how-much evenly join',
    marks: { term: { takes: 'term' } },
    phrases: ['what does htr mean', 'what is a UK treble in US terms'],
  },
  answer({ term: typed }, { reader }): Answer {
    const meanings = lookUpTerm(typed);
    const apart = meanings.length === 0 ? readNamed(typed, reader.terms) : undefined;
    if (apart) return tellApart(apart);
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
