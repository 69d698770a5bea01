/** Words in other terms than the asker’s own, where she asks for them: to hand on to somebody who reads the others. */
import type { Answer } from '../../src/chat/answer.ts';
import { opt } from '../../src/chat/options.ts';
import { forReader, type Reader, type Terms } from '../../src/core/base/reader.ts';
import { TERMS } from '../../src/standards/terms.ts';

export const termsOption = () =>
  opt
    .choice(
      'Whose names of stitches; your own if not given',
      [
        { value: 'US', also: ['american', 'us terms'] },
        { value: 'UK', also: ['british', 'uk terms'] },
      ],
      'UK',
    )
    .optional();

/** The asker as a reader of those terms. */
export const readerIn = (reader: Reader, terms: Terms | undefined): Reader =>
  terms === undefined ? reader : { ...reader, terms };

/** An answer that is in this reader's terms, whoever asked for it. */
export function saidTo(answer: Answer, reader: Reader): Answer {
  const say = (text: string) => forReader(text, reader);
  const { lines = [], assumptions = [], cautions = [], figures = [], working = [] } = answer;
  return {
    ...answer,
    headline: say(answer.headline),
    lines: lines.map(say),
    assumptions: assumptions.map(say),
    cautions: cautions.map(say),
    figures: figures.map((figure) => ({ ...figure, label: say(figure.label) })),
    working: working.map((step) => ({ ...step, label: say(step.label), source: say(step.source) })),
  };
}

/** `us`, `uk`: how a file's name ends that is written in them. */
export const termsEnding = ({ terms }: Pick<Reader, 'terms'>) => terms.toLowerCase();

/** Which terms something is written in, with the two names that are most often mistaken. */
export function writtenIn({ terms }: Pick<Reader, 'terms'>): string {
  const other = terms === 'US' ? 'UK' : 'US';
  const said = (short: 'sc' | 'dc', long: 'single crochet' | 'double crochet') =>
    `${TERMS[short][terms]} is ${TERMS[long][terms]} (${other} ${TERMS[short][other]})`;
  return `Written in ${terms} terms: ${said('sc', 'single crochet')}, ${said('dc', 'double crochet')}.`;
}
