/**
 * A formula's text made ready once, to be evaluated and to be written down: both from one tree, mathjs's own. It is evaluated by
 * small functions made of that tree, which give bit for bit what mathjs gives and take a third of its time; a property test holds
 * them to it.
 */
import {
  absDependencies,
  addDependencies,
  atanDependencies,
  atan2Dependencies,
  ceilDependencies,
  create,
  divideDependencies,
  floorDependencies,
  isConstantNode,
  isFunctionNode,
  isOperatorNode,
  isParenthesisNode,
  isSymbolNode,
  largerDependencies,
  maxDependencies,
  minDependencies,
  modDependencies,
  multiplyDependencies,
  parseDependencies,
  piDependencies,
  powDependencies,
  roundDependencies,
  smallerDependencies,
  sqrtDependencies,
  subtractDependencies,
  unaryMinusDependencies,
  type FactoryFunctionMap,
  type MathNode,
} from 'mathjs/number';

const math = create({
  absDependencies,
  addDependencies,
  atanDependencies,
  atan2Dependencies,
  ceilDependencies,
  divideDependencies,
  floorDependencies,
  largerDependencies,
  maxDependencies,
  minDependencies,
  modDependencies,
  multiplyDependencies,
  parseDependencies,
  piDependencies,
  powDependencies,
  roundDependencies,
  smallerDependencies,
  sqrtDependencies,
  subtractDependencies,
  unaryMinusDependencies,
} as FactoryFunctionMap);

type Values = Readonly<Record<string, number>>;
type Evaluated = (values: Values) => number;

/** How the whole of a formula may be rounded. */
export type Whole = 'ceil' | 'floor' | 'round';
const WHOLE: ReadonlySet<string> = new Set<Whole>(['ceil', 'floor', 'round']);
const isWhole = (name: string): name is Whole => WHOLE.has(name);

export interface Prepared {
  readonly run: Evaluated;
  /** What is written down: the formula without what only guards its rounding, and without the rounding of the whole. */
  readonly inner: Evaluated;
  /** How the whole is rounded behind it. */
  readonly whole: Whole | undefined;
  /** What is written down, with what is between its names, and the names at every odd place. */
  readonly parts: readonly string[];
  /** The same in marks of school. */
  readonly marks: readonly string[];
  /** In marks of school with its names as they are read; undefined where a name may be a unit, which readers have their own of. */
  readonly general: string | undefined;
}

/** A name of a formula as it is read. */
export const speak = (name: string): string => name.replaceAll('_', ' ');

/** Stands around a name in a formula's text; no formula holds it. */
const MARK = '\u0000';

/** The text of a formula for the evaluator, its names marked. */
const plainText = (node: MathNode): string =>
  node.toString({
    handler: (inner: MathNode & { name?: string }) =>
      inner.type === 'SymbolNode' && inner.name !== undefined ? `${MARK}${inner.name}${MARK}` : undefined,
  });

const SIGNS: Readonly<Record<string, string>> = { '*': '×', '/': '÷' };
const RAISED: Readonly<Record<string, string>> = { 2: '²', 3: '³' };
const SAID: Readonly<Record<string, string>> = {
  ceil: 'round up',
  floor: 'round down',
  atan: 'arctan',
  atan2: 'arctan',
  max: 'the greatest of ',
  min: 'the least of ',
};

/** The text of a formula in marks of school, its names marked: ×, ÷, √ and ², and words where there is no mark. */
function schoolText(node: MathNode): string {
  if (isSymbolNode(node)) return node.name === 'pi' ? 'π' : `${MARK}${node.name}${MARK}`;
  if (isParenthesisNode(node)) return `(${schoolText(node.content)})`;
  if (isOperatorNode(node)) {
    const [first, second] = node.args.map(schoolText);
    if (first === undefined) return node.toString();
    if (second === undefined) return `${node.op}${first}`;
    if (node.op === '^') return `${first}${RAISED[second] ?? `^${second}`}`;
    return `${first} ${SIGNS[node.op] ?? node.op} ${second}`;
  }
  if (isFunctionNode(node)) {
    const { name } = node.fn;
    const given = node.args.map(schoolText);
    const closed = node.args.map((one, at) => (isOperatorNode(one) ? `(${given[at]})` : given[at]));
    if (name === 'sqrt') return `√(${given.join('')})`;
    if (name === 'abs') return `|${given.join('')}|`;
    if (name === 'mod') return `the rest of ${closed.join(' ÷ ')}`;
    return `${SAID[name] ?? name}(${given.join(', ')})`;
  }
  return node.toString();
}

/** `round(x, 6)` keeps what binary numbers leave behind the sixth decimal from rounding a count up; nobody writes it down. */
const withoutGuards = (node: MathNode): MathNode =>
  node.transform((inner) =>
    isFunctionNode(inner) && inner.fn.name === 'round' && inner.args.length === 2
      ? (inner.args[0] ?? inner)
      : inner,
  );

/** mathjs's own function for so many numbers, without its look at what it is given; undefined where it has none for them. */
function ownFunction(name: string, numbers: number): ((...given: number[]) => number) | undefined {
  const found: unknown = (math as unknown as Readonly<Record<string, unknown>>)[name];
  const { signatures } = (found ?? {}) as {
    readonly signatures?: Readonly<Record<string, (...given: number[]) => number>>;
  };
  return signatures?.[Array<string>(numbers).fill('number').join(',')];
}

/** The four ways of reckoning; mathjs does no more for numbers. */
const PLAIN: Readonly<Record<string, (first: Evaluated, second: Evaluated) => Evaluated>> = {
  add: (first, second) => (values) => first(values) + second(values),
  subtract: (first, second) => (values) => first(values) - second(values),
  multiply: (first, second) => (values) => first(values) * second(values),
  divide: (first, second) => (values) => first(values) / second(values),
};

/**
 * The greatest or the least as mathjs finds it, for numbers: the first of those that it takes for equal, and what is no number if
 * there is one.
 */
function outermost(name: 'max' | 'min', args: readonly Evaluated[]): Evaluated | undefined {
  const [first, ...others] = args;
  const beyond = ownFunction(name === 'max' ? 'larger' : 'smaller', 2);
  if (!first || !beyond) return undefined;
  return (values) => {
    let found = first(values);
    for (const other of others) {
      const value = other(values);
      if (Number.isNaN(value) || beyond(value, found)) found = value;
    }
    return found;
  };
}

/** So near to where it would be rounded the other way, the digits that mathjs reads decide. */
const NEAR = 1e-6;
/** Within this, a number times a power of ten is exact to far less than that. */
const EXACT = 1e9;
/** Within this, so is what mathjs takes for a whole number: 12 digits of it. */
const WHOLE_SURE = 1e5;

/** How far a number lies above the whole number below it; NaN where it is larger than `most`. */
const above = (value: number, most: number) => (Math.abs(value) < most ? value - Math.floor(value) : NaN);
const isBetween = (part: number) => part > NEAR && part < 1 - NEAR;

/**
 * Rounding as mathjs does it. That writes a number's digits down to read them again, and is asked only where they could make a
 * difference.
 */
function rounding(name: Whole, [value, places]: readonly Evaluated[]): Evaluated | undefined {
  const own = ownFunction(name, places ? 2 : 1);
  if (!value || !own) return undefined;
  if (name === 'round')
    return (values) => {
      const given = value(values);
      const decimals = places ? places(values) : 0;
      const tenfold = 10 ** decimals;
      const scaled = given * tenfold;
      const part = above(scaled, EXACT);
      return Number.isInteger(tenfold) && scaled !== 0 && Math.abs(part - 0.5) > NEAR
        ? Math.round(scaled) / tenfold
        : own(given, decimals);
    };
  if (places) return (values) => own(value(values), places(values));
  return (values) => {
    const given = value(values);
    return isBetween(above(given, WHOLE_SURE)) ? Math[name](given) : own(given);
  };
}

function called(name: string, args: readonly Evaluated[]): Evaluated | undefined {
  const [first, second] = args;
  if (!first) return undefined;
  if (name === 'max' || name === 'min') return outermost(name, args);
  if (args.length > 2) return undefined;
  if (isWhole(name)) return rounding(name, args);
  const plain = second && PLAIN[name];
  if (plain) return plain(first, second);
  const own = ownFunction(name, args.length);
  if (!own) return undefined;
  return second ? (values) => own(first(values), second(values)) : (values) => own(first(values));
}

function named(name: string): Evaluated {
  const constant = name === 'pi' ? math.pi : undefined;
  return (values) => {
    const value = values[name] ?? constant;
    if (value === undefined) throw new Error(`a formula is not handed its ${name}`);
    return value;
  };
}

/** A part of a formula as a function of its values. What no formula has needed so far is left to mathjs whole. */
function evaluated(node: MathNode): Evaluated {
  if (isParenthesisNode(node)) return evaluated(node.content);
  if (isSymbolNode(node)) return named(node.name);
  if (isConstantNode(node) && typeof node.value === 'number') {
    const { value } = node;
    return () => value;
  }
  const name = isOperatorNode(node) ? node.fn : isFunctionNode(node) ? node.fn.name : undefined;
  const args = isOperatorNode(node) || isFunctionNode(node) ? node.args.map(evaluated) : [];
  const made = name === undefined ? undefined : called(name, args);
  if (made) return made;
  const whole = node.compile();
  return (values) => whole.evaluate({ ...values }) as number;
}

function prepared(text: string): Prepared {
  const node = math.parse(text);
  const bare = withoutGuards(node);
  const [rounded] = isFunctionNode(bare) ? bare.args : [];
  const whole = isFunctionNode(bare) && isWhole(bare.fn.name) ? bare.fn.name : undefined;
  const inner = whole === undefined || rounded === undefined ? bare : rounded;
  const marks = schoolText(inner).split(MARK);
  return {
    run: evaluated(node),
    inner: evaluated(inner),
    whole,
    parts: plainText(inner).split(MARK),
    marks,
    general: marks.some((part) => part.includes('_per_')) ? undefined : marks.map(speak).join(''),
  };
}

const known = new Map<string, Prepared>();

/** The formula, made ready when it is first asked for. */
export function prepare(text: string): Prepared {
  let found = known.get(text);
  if (!found) {
    found = prepared(text);
    known.set(text, found);
  }
  return found;
}
