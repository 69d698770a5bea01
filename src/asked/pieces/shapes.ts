/** Shapes by their names. */
import { SHAPE_WORDS } from '../tables.ts';
import { listByFirst, listedAt } from './listed.ts';
import type { Phrase, Recogniser } from './phrase.ts';

const SHAPES = listByFirst(SHAPE_WORDS);

/** Shapes that are not reckoned here, behind the name of one that is: “granny triangle”. */
const OTHER_SHAPES =
  /^(stripes?|triangles?|octagons?|pentagons?|hearts?|stars?|rectangles?|flowers?|ripples?)$/;

const shapeAt = (phrase: Phrase, at: number) => listedAt(SHAPES, phrase, at);

/** A granny stripe is no granny square: what is not known here is no shape at all. */
export const otherShape: Recogniser = {
  example: ['a granny stripe blanket', 'aside:granny stripe'],
  read: (phrase, at) => {
    const shape = shapeAt(phrase, at);
    if (shape?.value !== 'clusters' || !OTHER_SHAPES.test(phrase.word(shape.to))) return undefined;
    return phrase.put({
      kind: 'aside',
      text: `${phrase.text(at)} ${phrase.word(shape.to)}`,
      from: at,
      to: shape.to + 1,
      must: true,
    });
  },
};

export const shape: Recogniser = {
  example: ['mitred squares', 'shape:diagonal'],
  read: (phrase, at) => {
    const found = shapeAt(phrase, at);
    // “my hexagon-free blanket”
    if (!found || (phrase.word(found.to) === '-' && phrase.word(found.to + 1) === 'free')) return undefined;
    return phrase.putOver({ kind: 'shape', text: found.value, from: at, to: found.to, must: false });
  },
};
