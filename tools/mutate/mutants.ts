/**
 * The faults that are put into a source file, one at a time: Stryker's for TypeScript (all of a file in one text, switched by the
 * name of the active one), and our own for the texts of formulas and the units of their names, which Stryker takes for words.
 */
import { readFileSync } from 'node:fs';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import {
  ConstantNode,
  FunctionNode,
  isConstantNode,
  isFunctionNode,
  isOperatorNode,
  OperatorNode,
  parse,
  type MathNode,
} from 'mathjs';
import ts from 'typescript';

export interface Mutant {
  /** Its name among all mutants of a run. */
  readonly id: string;
  readonly file: string;
  /** The line it begins in, from 1. */
  readonly line: number;
  /** Where it stands in the text: from, up to and without to. */
  readonly from: number;
  readonly to: number;
  /** What kind of fault: Stryker's name, or 'Formula' or 'Unit'. */
  readonly kind: string;
  /** What is noted as reached: the mutant itself, or the text that it changes. */
  readonly place: string;
  /** The changed text of a formula or a unit. */
  readonly formula?: string;
  readonly original: string;
  readonly replacement: string;
}

export interface Instrumented {
  readonly file: string;
  /** What the places of the mutants count in: the source, its loose arrows with braces. */
  readonly source: string;
  readonly text: string;
  readonly mutants: readonly Mutant[];
}

/** The global that instrumented sources look into; see watch.ts. */
const SWITCH = '__loopwrightMutants';

const HEADER =
  `function stryMutAct_9fa48(id) { return globalThis.${SWITCH}.isActive(id); }` +
  ` function stryCov_9fa48(...ids) { globalThis.${SWITCH}.cover(ids); }`;

const quiet = () => undefined;
const logger = {
  isTraceEnabled: () => false,
  isDebugEnabled: () => false,
  isInfoEnabled: () => false,
  isWarnEnabled: () => false,
  isErrorEnabled: () => false,
  isFatalEnabled: () => false,
  trace: quiet,
  debug: quiet,
  info: quiet,
  warn: quiet,
  error: quiet,
  fatal: quiet,
};

/** The text of `file` with all its mutants in it, none of them active. Names begin with `prefix`. */
export async function instrument(file: string, prefix: string): Promise<Instrumented> {
  const source = readFileSync(file, 'utf8');
  const text = withBodies(source);
  const instrumenter = new Instrumenter(logger);
  const { files, mutants } = await instrumenter.instrument([{ name: file, content: text, mutate: true }], {
    plugins: null,
    ignorers: [],
    excludedMutations: ['StringLiteral'],
    noHeader: true,
  });
  const lines = ts.createSourceFile(file, text, ts.ScriptTarget.Latest);
  const at = ({ line, column }: { line: number; column: number }) =>
    lines.getPositionOfLineAndCharacter(line, column);
  // Names are renumbered so that the mutants of several files do not share them.
  const formulas = formulaTexts(file, text);
  const own = mutants.flatMap((mutant): Mutant[] => {
    const [from, to] = [at(mutant.location.start), at(mutant.location.end)];
    // Words are left out; and the names of a formula taken away at once say no more than the units of each.
    const names = mutant.mutatorName === 'ObjectLiteral' && formulas.givens.has(from);
    if (mutant.status === 'Ignored' || names) return [];
    return [
      {
        id: `${prefix}${mutant.id}`,
        file,
        line: mutant.location.start.line + 1,
        from,
        to,
        kind: mutant.mutatorName,
        place: `${prefix}${mutant.id}`,
        original: text.slice(from, to),
        replacement: mutant.replacement,
      },
    ];
  });
  const renamed = (files[0]?.content ?? '').replace(
    /(stryMutAct_9fa48|stryCov_9fa48)\(([^)]*)\)/g,
    (_, name: string, ids: string) => `${name}(${ids.replace(/"(\d+)"/g, `"${prefix}$1"`)})`,
  );
  return {
    file,
    source: text,
    text: `${HEADER}\n${withSwitchedTexts(renamed, formulas.texts, prefix)}`,
    mutants: [
      ...own,
      ...formulas.texts.flatMap((one, index) => textMutants(file, one, `${prefix}t${index}.`)),
    ],
  };
}

/**
 * An arrow of the module itself is made when the module is loaded, so the mutant that takes its expression away would only act
 * on a fresh load. With a body in braces the same fault is a block that is emptied, and acts when the arrow is called.
 */
function withBodies(text: string): string {
  const source = ts.createSourceFile('a.ts', text, ts.ScriptTarget.Latest, true);
  const cuts: [at: number, put: string][] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionDeclaration(node) || ts.isFunctionExpression(node) || ts.isMethodDeclaration(node))
      return;
    if (ts.isArrowFunction(node)) {
      if (!ts.isBlock(node.body))
        cuts.push([node.body.getStart(source), '{ return '], [node.body.end, '; }']);
      return;
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return cuts.reduceRight((so, [at, put]) => `${so.slice(0, at)}${put}${so.slice(at)}`, text);
}

interface FormulaText {
  /** `formula`, or a name whose unit it is, or `unit`. */
  readonly role: 'formula' | 'unit';
  readonly from: number;
  readonly to: number;
  readonly name: string;
  readonly value: string;
  readonly line: number;
}

/** The literals of every `formula({ … })` in a text: the formula, the units of its names and its result; where its names begin. */
function formulaTexts(
  file: string,
  text: string,
): { readonly texts: readonly FormulaText[]; readonly givens: ReadonlySet<number> } {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found: FormulaText[] = [];
  const givens = new Set<number>();
  const note = (property: ts.ObjectLiteralElementLike, role: FormulaText['role']) => {
    if (!ts.isPropertyAssignment(property) || !ts.isStringLiteralLike(property.initializer)) return;
    found.push({
      role,
      from: property.getStart(source),
      to: property.end,
      name: property.name.getText(source),
      value: property.initializer.text,
      line: source.getLineAndCharacterOfPosition(property.getStart(source)).line + 1,
    });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && node.expression.getText(source) === 'formula') {
      const declared = objectIn(node);
      for (const property of declared?.properties ?? []) {
        const name = property.name?.getText(source);
        if (name === 'formula') note(property, 'formula');
        else if (name === 'unit') note(property, 'unit');
        else if (name === 'given' && ts.isPropertyAssignment(property)) {
          const given = objectIn(property);
          if (given) givens.add(given.getStart(source));
          for (const one of given?.properties ?? []) note(one, 'unit');
        }
      }
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return { texts: found, givens };
}

/** The fullest object literal under a node: beside it may stand the emptied one of a mutant. */
function objectIn(node: ts.Node): ts.ObjectLiteralExpression | undefined {
  let found: ts.ObjectLiteralExpression | undefined;
  const visit = (inner: ts.Node): void => {
    if (ts.isObjectLiteralExpression(inner)) {
      if (!found && inner.properties.length > 0) found = inner;
      return;
    }
    ts.forEachChild(inner, visit);
  };
  ts.forEachChild(node, visit);
  return found;
}

/** Each of these texts read through the switch: a getter, so that a mutant acts without loading the module again. */
function withSwitchedTexts(text: string, expected: readonly FormulaText[], prefix: string): string {
  const found = formulaTexts('instrumented.ts', text).texts;
  if (found.length !== expected.length || found.some((one, index) => one.value !== expected[index]?.value))
    throw new Error('the formulas of the instrumented text are not those of the source');
  let switched = text;
  for (let index = found.length - 1; index >= 0; index--) {
    const one = found[index]!;
    const read = `get ${one.name}() { return globalThis.${SWITCH}.text(${JSON.stringify(`${prefix}t${index}.`)}, ${JSON.stringify(one.value)}); }`;
    switched = switched.slice(0, one.from) + read + switched.slice(one.to);
  }
  return switched;
}

function textMutants(file: string, text: FormulaText, place: string): Mutant[] {
  const changed = text.role === 'formula' ? formulaMutants(text.value) : [text.value === '' ? 'cm' : ''];
  return changed.map((replacement, index) => ({
    id: `${place}${index}`,
    file,
    line: text.line,
    from: text.from,
    to: text.to,
    kind: text.role === 'formula' ? 'Formula' : 'Unit',
    place,
    formula: replacement,
    original: text.role === 'formula' ? text.value : `${text.name}: '${text.value}'`,
    replacement: text.role === 'formula' ? replacement : `${text.name}: '${replacement}'`,
  }));
}

const OPERATORS = new Map<string, readonly [sign: string, name: string]>([
  ['+', ['-', 'subtract']],
  ['-', ['+', 'add']],
  ['*', ['/', 'divide']],
  ['/', ['*', 'multiply']],
  ['^', ['*', 'multiply']],
]);
const FUNCTIONS = new Map([
  ['ceil', 'floor'],
  ['floor', 'ceil'],
  ['round', 'floor'],
  ['min', 'max'],
  ['max', 'min'],
  ['smaller', 'larger'],
  ['larger', 'smaller'],
]);
/** Functions that are left out: their value stands alone. */
const DROPPED = ['abs', 'sqrt', 'atan'];

/** The formula with one operator exchanged, one constant one more, or one function exchanged or left out. */
export function formulaMutants(formula: string): string[] {
  let places = 0;
  parse(formula).traverse(() => places++);
  const mutants = new Set<string>();
  for (let place = 0; place < places; place++) {
    let at = 0;
    mutants.add(
      parse(formula)
        .transform((node) => (at++ === place ? exchanged(node) : node))
        .toString(),
    );
  }
  mutants.delete(parse(formula).toString());
  return [...mutants];
}

function exchanged(node: MathNode): MathNode {
  if (isConstantNode(node) && typeof node.value === 'number') return new ConstantNode(node.value + 1);
  if (isOperatorNode(node)) {
    const [one, other] = node.args;
    if (one && !other) return one;
    const [sign, name] = OPERATORS.get(node.op) ?? [node.op, node.fn];
    return new OperatorNode(sign as never, name as never, node.args);
  }
  if (isFunctionNode(node)) {
    const { name } = node.fn as unknown as { name: string };
    const [one] = node.args;
    if (one && DROPPED.includes(name)) return one;
    return new FunctionNode(FUNCTIONS.get(name) ?? name, node.args);
  }
  return node;
}
