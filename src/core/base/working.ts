/**
 * Named steps, each a formula that is evaluated and shown: what is printed as working is what was computed.
 * A formula is text of our own; nothing that a person typed ever reaches the evaluator.
 */
import { prepare, speak } from './prepared-formula.ts';
import { bareNum, ownUnit, toOwn, type Unit, type Units, type Reader } from './reader.ts';

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

/** Evaluates a formula at these values. Throws a plain Error (a fault of ours) when the result is not a finite number. */
export function evaluate(text: string, values: Readonly<Record<string, number>>): number {
  const result = prepare(text).run(values);
  if (!Number.isFinite(result)) {
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
  return bareNum(value, size < 1 ? 4 : size < 100 ? 3 : 2);
}

const withUnit = (text: string, unit: string) =>
  unit === '' ? text : unit.startsWith('/') ? `${text} per ${unit.slice(1)}` : `${text} ${unit}`;

/**
 * What is written down of a formula with its values put in, from the very node that is evaluated. With `digits` 'full' it
 * evaluates to the result again, before the whole is rounded; for people it is rounded, its units behind its numbers, in marks of school.
 */
export function substitute(step: Step, reader: Reader, digits: 'full' | 'short' = 'short'): string {
  const known = prepare(step.formula);
  const between = digits === 'full' ? known.parts : known.marks;
  return between
    .map((part, index) => {
      const value = index % 2 === 0 ? undefined : step.with[part];
      if (value === undefined) return index % 2 === 0 ? part : speak(part);
      const unit = step.units[part] ?? '';
      const own = value * toOwn(unit, reader);
      if (digits === 'full') return own < 0 ? `(${own})` : String(own);
      const shown = withUnit(workingNumber(own), ownUnit(unit, reader));
      const raised = () => /^[²³^]/.test(between[index + 1] ?? '');
      return own < 0 || (shown.includes(' ') && raised()) ? `(${shown})` : shown;
    })
    .join('');
}

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
  const { general, marks } = prepare(text);
  return (
    general ??
    marks
      .map((part, index) => {
        const unit = index % 2 === 0 ? undefined : units[part];
        return unit?.includes('/') && part === unit.replace('/', '_per_')
          ? ownUnit(unit, reader).replace('/', ' per ')
          : speak(part);
      })
      .join('')
  );
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
  const { inner, whole } = prepare(step.formula);
  const result = withUnit(workingNumber(reckonForReader(step, reader)), ownUnit(step.unit, reader));
  const filled = substitute(step, reader);
  const before = whole === undefined ? undefined : inner(ownValues(step, reader));
  const middle =
    before === undefined ? undefined : withUnit(workingNumber(before), ownUnit(step.unit, reader));
  const end = middle === undefined || middle === result ? result : `${middle}, so ${result}`;
  return filled === result || filled === end ? end : `${filled} = ${end}`;
}

/** A step written out. */
export interface StepInWords {
  /** One line that a reader can repeat with a pencil: `2 × row + 1 = 2 × 9 + 1 = 19`. */
  readonly shown: string;
  /** Its formula alone, and its values put in with what they come to: where many steps share a formula, it stands above them. */
  readonly general: string;
  readonly worked: string;
}

/** A step in words, in the reader's own units. */
export function writeOut(step: Step, reader: Reader): StepInWords {
  const general = formulaText(step, readerOf(step, reader));
  const worked = workedText(step, reader);
  // A formula of numbers alone says nothing twice.
  const shown = worked.startsWith(`${general} = `) ? worked : `${general} = ${worked}`;
  return { shown, general, worked };
}

/** One line a reader can repeat with a pencil: `2 × row + 1 = 2 × 9 + 1 = 19`. */
export const writeStep = (step: Step, reader: Reader): string => writeOut(step, reader).shown;
