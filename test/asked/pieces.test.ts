/** Each recogniser reads its own example; each joiner puts its own together. */
import { describe, expect, it } from 'vitest';
import { mended } from '../../src/asked/lexicon.ts';
import { SPELLINGS } from '../../src/asked/numbers.ts';
import { JOINERS, PASSES, piecesOf } from '../../src/asked/pieces.ts';
import { tokensOf } from '../../src/asked/tokens.ts';

const piecesIn = (phrase: string, passes = PASSES) => {
  const tokens = tokensOf(phrase);
  return piecesOf(tokens, mended(tokens), [], [], passes).pieces.map(({ kind, text }) => `${kind}:${text}`);
};

describe('what an option could take', () => {
  it.each([...PASSES.flat(), ...JOINERS])('$example', ({ example: [phrase, piece] }) => {
    expect(piecesIn(phrase)).toContain(piece);
  });

  it.each(PASSES.flat())('$example is read by none but its own', (recogniser) => {
    const others = PASSES.map((pass) => pass.filter((one) => one !== recogniser));
    const [phrase] = recogniser.example;
    expect(piecesIn(phrase, others)).not.toEqual(piecesIn(phrase));
  });
});

describe('numbers', () => {
  it.each(SPELLINGS)('$example', ({ example: [typed, value] }) => {
    expect(tokensOf(typed)[0]).toMatchObject({ kind: 'number', value });
  });
});

describe('words with a hyphen between', () => {
  const sensesOf = (phrase: string) => {
    const tokens = tokensOf(phrase);
    return piecesOf(tokens, mended(tokens)).said.flatMap(({ sense, words }) => (words > 1 ? [sense] : []));
  };

  it.each([
    ['make-along', 'make along'],
    ['whip-stitch', 'whip stitch'],
    ['dye-lot', 'dye lot'],
    ['crochet‑along', 'crochet along'],
    ['pom-poms', 'pom poms'],
    ['up-to-date make-alongs', 'up to date make alongs'],
  ])('%s mean what %s do', (hyphened, apart) => {
    expect(sensesOf(hyphened)).toEqual(sensesOf(apart));
    expect(sensesOf(apart)).not.toEqual([]);
  });

  it('but not where a dash stands between two of them', () => {
    expect(sensesOf('make - along')).toEqual([]);
    expect(sensesOf('make -along')).toEqual([]);
  });
});
