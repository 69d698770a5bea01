/** A yarn's category by its number, its name, its type, its wraps per inch or its ball band. */
import { G_PER_POUND, M_PER_YARD } from '../../standards/units.ts';
import { YARN_NAMES, YARN_WEIGHTS, type YarnName, type YarnWeight } from '../../standards/yarn-weights.ts';
import { defined } from '../base/defined.ts';
import { readNumber } from '../base/number.ts';
import { partsOfBall, readBall, type Ball } from '../base/quantity.ts';
import { remembered } from '../base/remembered.ts';
import { formula, Working } from '../base/working.ts';

export const METRES_PER_GRAM = formula({
  label: 'Length for its weight',
  formula: 'length / weight',
  given: { length: 'm', weight: 'g' },
  unit: 'm/g',
  source: 'derived: the put-up on the ball band',
});

export interface YarnFound {
  readonly by: 'category' | 'name' | 'type' | 'wraps' | 'ball';
  readonly yarns: readonly YarnWeight[];
  readonly wraps?: number;
  readonly ball?: Ball;
  /** The other name that it was found by, with its source and its conflict. */
  readonly called?: YarnName;
  readonly working: Working;
}

/** The metres in a gram at the thick and the thin end of a category, by the spinning magazine's chart. */
function metresPerGram({ yardsPerPound }: YarnWeight): readonly [number, number] | undefined {
  if (yardsPerPound === undefined) return undefined;
  const [least, most] = yardsPerPound;
  // The chart counts in whole yards: 900 ends one category and 901 begins the next.
  const low = ((least - 0.5) * M_PER_YARD) / G_PER_POUND;
  return [low, ((most + 0.5) * M_PER_YARD) / G_PER_POUND];
}

/** `Worsted-weight yarn` is worsted, `4-ply` is 4 ply, `#4` and `weight 4` are 4. */
export const simplifyYarn = (typed: string) =>
  typed
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, ' ')
    .replace(/^(?:category|cyc|weight|yarn|no\.?|number|size|#)\s*(?=\d+$)/, '')
    .replace(/(?:\s+(?:weight|wt|yarn|wool|cotton|acrylic))+$/, '')
    .replace(/^(\d+) ?ply$/, '$1 ply')
    .trim();

const typesOf = remembered(({ types }: YarnWeight) => types.split(', ').map(simplifyYarn));

/** Every category a description may mean: wraps overlap, and `baby` stands in two. Empty where none fits. */
export function lookUpYarn(typed: string): YarnFound {
  const text = simplifyYarn(typed);
  const working = new Working();
  const wraps = /^(.+?) ?(?:wpi|wraps(?: per inch| an inch)?)$/.exec(text)?.[1];
  const wpi = wraps === undefined ? undefined : readNumber(wraps);
  if (wpi !== undefined)
    return {
      by: 'wraps',
      wraps: wpi,
      yarns: YARN_WEIGHTS.filter(({ wpi: [low, high] }) => wpi >= low && wpi <= high),
      working,
    };
  if (partsOfBall(text) !== undefined || text.includes('/')) {
    const ball = readBall(text);
    const thin = working.do(METRES_PER_GRAM, { length: ball.m, weight: ball.g });
    const yarns = YARN_WEIGHTS.filter((yarn) => {
      const range = metresPerGram(yarn);
      return range !== undefined && thin >= range[0] && thin < range[1];
    });
    return { by: 'ball', ball, yarns, working };
  }
  const number = YARN_WEIGHTS.filter(({ category }) => String(category) === text);
  if (number.length > 0) return { by: 'category', yarns: number, working };
  const named = YARN_WEIGHTS.filter(({ name }) => name.toLowerCase() === text);
  if (named.length > 0) return { by: 'name', yarns: named, working };
  // Read as what is typed is: a type with a hyphen is offered, and must be found.
  const yarns = YARN_WEIGHTS.filter((yarn) => typesOf(yarn).includes(text));
  if (yarns.length > 0) return { by: 'type', yarns, working };
  const called = YARN_NAMES.find(({ name }) => name === text);
  return defined({
    by: 'name',
    yarns: YARN_WEIGHTS.filter(({ category }) => category === called?.category),
    called,
    working,
  });
}

/** Everything that can be looked up, for offers while typing. */
export const YARN_WORDS: readonly string[] = [
  ...new Set([
    ...YARN_WEIGHTS.flatMap(({ category, name }) => [String(category), name]),
    ...YARN_WEIGHTS.flatMap(({ types }) => types.split(', ')),
    ...YARN_NAMES.map(({ name }) => name),
  ]),
];
