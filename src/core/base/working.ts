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
  type MathNode,
} from 'mathjs/number';
import { num, ownUnit, toOwn, type Unit, type Reader } from './reader.ts';

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
  /** The formula's text from its node, with what is between its names, and the names at every odd place. */
  readonly parts: readonly string[];
  /** The same as it is read aloud. */
  readonly spoken: readonly string[];
  /** The whole formula as it is read aloud. */
  readonly said: string;
}

/** Stands around a name in a formula's text; no formula holds it. */
const MARK = '\u0000';

function partsOf(node: MathNode): string[] {
  const text = node.toString({
    handler: (inner: MathNode & { name?: string }) =>
      inner.type === 'SymbolNode' && inner.name !== undefined ? `${MARK}${inner.name}${MARK}` : undefined,
  });
  return text.split(MARK);
}

const parsed = new Map<string, Parsed>();
function parse(text: string): Parsed {
  let known = parsed.get(text);
  if (!known) {
    const node = math.parse(text);
    const parts = partsOf(node);
    known = { run: node.compile(), parts, spoken: parts.map(spoken), said: spoken(text) };
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

const SPOKEN: Readonly<Record<string, string>> = { ceil: 'round up', floor: 'round down' };

/**
 * The formula with its values written in, from the very node that is evaluated. With `digits` 'full' it
 * evaluates to the result again; for people it is rounded and written with × and ÷.
 */
export function substituted(step: Step, reader: Reader, digits: 'full' | 'short' = 'short'): string {
  const known = parse(step.formula);
  const between = digits === 'full' ? known.parts : known.spoken;
  return known.parts
    .map((part, index) => {
      const value = index % 2 === 0 ? undefined : step.with[part];
      if (value === undefined) return between[index] ?? '';
      const own = value * toOwn(step.units[part] ?? '', reader);
      const shown = digits === 'full' ? String(own) : num(own, 4).replaceAll(',', '');
      return own < 0 ? `(${shown})` : shown;
    })
    .join('');
}

/** A formula as it is read aloud: × for *, ÷ for /, "round up" for ceil. */
export function spoken(text: string): string {
  return text
    .replace(/\b(ceil|floor)\b/g, (name) => SPOKEN[name] ?? name)
    .replace(/\bpi\b/g, 'π')
    .replace(/\bsqrt\b/g, '√')
    .replace(/ \* /g, ' × ')
    .replace(/ \/ /g, ' ÷ ')
    .replaceAll('_', ' ');
}

/** The step's result in the maker's own units: evaluated anew from her own numbers, so that the line stands by itself. */
export function resultForReader(step: Step, reader: Reader): number {
  if (reader.units === 'metric') return step.result;
  const own = Object.fromEntries(
    Object.entries(step.with).map(([name, value]) => [name, value * toOwn(step.units[name] ?? '', reader)]),
  );
  return evaluate(step.formula, own);
}

/** A name that is a unit says the reader's own: `cm per m` is `in per yd` to a reader in inches. */
function inOwnNames(said: string, { units }: Step, reader: Reader): string {
  if (reader.units === 'metric') return said;
  let text = said;
  for (const [name, unit] of Object.entries(units)) {
    if (unit.includes('/') && name === unit.replace('/', '_per_'))
      text = text.replaceAll(spoken(name), ownUnit(unit, reader).replace('/', ' per '));
  }
  return text;
}

/** One line a reader can repeat with a pencil: `2 × row + 1 = 2 × 9 + 1 = 19`. */
export function stepLine(step: Step, reader: Reader): string {
  const unit = ownUnit(step.unit, reader);
  const result = num(resultForReader(step, reader), 4);
  const filled = substituted(step, reader);
  const general = inOwnNames(parse(step.formula).said, step, reader);
  // A formula of one name, or of numbers alone, says nothing twice.
  const middle = filled === general || filled === result ? '' : ` = ${filled}`;
  return `${general}${middle} = ${result}${unit === '' ? '' : ` ${unit}`}`;
}
