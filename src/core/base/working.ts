/**
 * Named steps, each a formula that is evaluated and shown: what is printed as working is what was computed.
 * A formula is text of our own; nothing that a person typed ever reaches the evaluator.
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
  type EvalFunction,
  type FactoryFunctionMap,
  isFunctionNode,
  isOperatorNode,
  isParenthesisNode,
  isSymbolNode,
  type MathNode,
} from 'mathjs/number';
import { num, ownUnit, toOwn, type Unit, type Units, type Reader } from './reader.ts';

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

/** A formula of the craft: its text is shown and evaluated, its names carry their units, its source is stated. */
export interface Formula<Name extends string = string> {
  /** What the result is, in words: "stitches in the row". */
  readonly label: string;
  /** In the evaluator's notation: `2 * row + 1`. */
  readonly formula: string;
  /** The unit of every name in it; '' for counts and ratios. */
  readonly given: Readonly<Record<Name, Unit>>;
  /** The unit of the result. */
  readonly unit: Unit;
  /** Where it comes from: a publication, "common practice", "derived: …", or "from memory: …". */
  readonly source: string;
}

/** Declares a formula; the names in `given` become the names that a step must be handed. */
export function formula<const Name extends string>(declared: Formula<Name>): Formula<Name> {
  return declared;
}

/** One step of a working: the formula, its values, its result, in the core's units. */
export interface Step {
  readonly label: string;
  readonly formula: string;
  readonly with: Readonly<Record<string, number>>;
  readonly units: Readonly<Record<string, Unit>>;
  readonly result: number;
  readonly unit: Unit;
  readonly source: string;
}

interface Parsed {
  readonly run: EvalFunction;
  /** What is written down: the formula without what only guards its rounding, and without the rounding of the whole. */
  readonly inner: EvalFunction;
  /** How the whole is rounded behind it. */
  readonly whole: Whole | undefined;
  /** What is written down, with what is between its names, and the names at every odd place. */
  readonly parts: readonly string[];
  /** The same in marks of school. */
  readonly marks: readonly string[];
}

type Whole = 'ceil' | 'floor' | 'round';
const WHOLE: ReadonlySet<string> = new Set<Whole>(['ceil', 'floor', 'round']);
const isWhole = (name: string): name is Whole => WHOLE.has(name);

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

const parsed = new Map<string, Parsed>();
function parse(text: string): Parsed {
  let known = parsed.get(text);
  if (!known) {
    const node = math.parse(text);
    const bare = withoutGuards(node);
    const [rounded] = isFunctionNode(bare) ? bare.args : [];
    const whole = isFunctionNode(bare) && isWhole(bare.fn.name) ? bare.fn.name : undefined;
    const inner = whole === undefined || rounded === undefined ? bare : rounded;
    known = {
      run: node.compile(),
      inner: inner.compile(),
      whole,
      parts: plainText(inner).split(MARK),
      marks: schoolText(inner).split(MARK),
    };
    parsed.set(text, known);
  }
  return known;
}

/** Evaluates a formula at these values. Throws a plain Error (a fault of ours) when the result is not a finite number. */
export function evaluate(text: string, values: Readonly<Record<string, number>>): number {
  const result: unknown = parse(text).run.evaluate({ ...values });
  if (typeof result !== 'number' || !Number.isFinite(result)) {
    throw new Error(`formula ${text} gave ${String(result)} for ${JSON.stringify(values)}`);
  }
  return result;
}

/** The steps of one answer, in the order in which they were computed. */
export class Working {
  readonly steps: Step[] = [];

  /** Computes a step and keeps it. `label` replaces the formula's own where one answer uses it more than once. */
  do<Name extends string>(
    what: Formula<Name>,
    values: Readonly<Record<NoInfer<Name>, number>>,
    label?: string,
  ): number {
    const result = evaluate(what.formula, values);
    this.steps.push({
      label: label ?? what.label,
      formula: what.formula,
      with: values,
      units: what.given,
      result,
      unit: what.unit,
      source: what.source,
    });
    return result;
  }
}

/** A number in a working: digits enough to go on with by pencil. */
function workingNumber(value: number): string {
  const size = Math.abs(value);
  return num(value, size < 1 ? 4 : size < 100 ? 3 : 2).replaceAll(',', '');
}

const withUnit = (text: string, unit: string) =>
  unit === '' ? text : unit.startsWith('/') ? `${text} per ${unit.slice(1)}` : `${text} ${unit}`;

/**
 * What is written down of a formula with its values put in, from the very node that is evaluated. With `digits` 'full' it
 * evaluates to the result again, before the whole is rounded; for people it is rounded, its units behind its numbers, in marks of school.
 */
export function substitute(step: Step, reader: Reader, digits: 'full' | 'short' = 'short'): string {
  const known = parse(step.formula);
  const between = digits === 'full' ? known.parts : known.marks;
  return between
    .map((part, index) => {
      const value = index % 2 === 0 ? undefined : step.with[part];
      if (value === undefined) return index % 2 === 0 ? part : speak(part);
      const unit = step.units[part] ?? '';
      const own = value * toOwn(unit, reader);
      if (digits === 'full') return own < 0 ? `(${own})` : String(own);
      const shown = withUnit(workingNumber(own), ownUnit(unit, reader));
      const raised = /^[²³^]/.test(between[index + 1] ?? '');
      return own < 0 || (raised && shown.includes(' ')) ? `(${shown})` : shown;
    })
    .join('');
}

/** A name of a formula as it is read. */
export const speak = (name: string): string => name.replaceAll('_', ' ');

/** In whose units a step is written: where a value of it was typed in others than the reader's own, the whole step is in those. */
export const readerOf = (step: Step, reader: Reader): Reader => {
  const units = typedUnits(step, reader);
  return units === undefined ? reader : { units, terms: reader.terms };
};

function typedUnits(step: Step, reader: Reader): Units | undefined {
  if (!reader.typed || reader.typed.size === 0) return undefined;
  return Object.entries(step.with)
    .map(([name, value]) => reader.typed?.get(`${value} ${step.units[name] ?? ''}`))
    .find((units) => units !== undefined && units !== reader.units);
}

/** The step's values as the reader measures. */
const ownValues = (step: Step, reader: Reader) =>
  Object.fromEntries(
    Object.entries(step.with).map(([name, value]) => [name, value * toOwn(step.units[name] ?? '', reader)]),
  );

/** The step's result in the maker's own units: evaluated anew from her own numbers, so that the line stands by itself. */
export const reckonForReader = (step: Step, reader: Reader): number =>
  reader.units === 'metric' ? step.result : evaluate(step.formula, ownValues(step, reader));

/** A formula in its names and marks of school; a name that is a unit says the reader's own: `in per yd` for `cm per m`. */
export function formulaText(
  { formula: text, units }: Pick<Step, 'formula' | 'units'>,
  reader: Reader,
): string {
  return parse(text)
    .marks.map((part, index) => {
      const unit = index % 2 === 0 ? undefined : units[part];
      return unit?.includes('/') && part === unit.replace('/', '_per_')
        ? ownUnit(unit, reader).replace('/', ' per ')
        : speak(part);
    })
    .join('');
}

/** The values of a step put in, and what they come to: `80 × 12 g ÷ 100 g = 9.6, so 10`. */
export function workedText(step: Step, reader: Reader): string {
  const typed = typedUnits(step, reader);
  if (typed !== undefined) {
    // In the units that were typed, and what comes of it in her own.
    const worked = workedText(step, { units: typed, terms: reader.terms });
    const own = withUnit(workingNumber(reckonForReader(step, reader)), ownUnit(step.unit, reader));
    return ownUnit(step.unit, reader) === ownUnit(step.unit, { ...reader, units: typed })
      ? worked
      : `${worked} = ${own}`;
  }
  const { inner, whole } = parse(step.formula);
  const result = withUnit(workingNumber(reckonForReader(step, reader)), ownUnit(step.unit, reader));
  const filled = substitute(step, reader);
  const before: unknown = whole === undefined ? undefined : inner.evaluate(ownValues(step, reader));
  const middle =
    typeof before === 'number' ? withUnit(workingNumber(before), ownUnit(step.unit, reader)) : undefined;
  const end = middle === undefined || middle === result ? result : `${middle}, so ${result}`;
  return filled === result || filled === end ? end : `${filled} = ${end}`;
}

/** One line a reader can repeat with a pencil: `2 × row + 1 = 2 × 9 + 1 = 19`. */
export function writeStep(step: Step, reader: Reader): string {
  const general = formulaText(step, readerOf(step, reader));
  const worked = workedText(step, reader);
  // A formula of numbers alone says nothing twice.
  return worked.startsWith(`${general} = `) ? worked : `${general} = ${worked}`;
}
