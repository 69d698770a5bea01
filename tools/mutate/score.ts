/** What came of the mutants of a file. */
import type { Verdicts } from './judging.ts';
import type { Instrumented, Mutant } from './mutants.ts';
import type { TypeCheck } from './types.ts';

export interface Score {
  readonly file: string;
  readonly mutants: number;
  /** Noticed by a test, or, where no test does, by the type check. */
  readonly byTests: number;
  readonly byTypes: number;
  readonly formulas: number;
  readonly formulasKilled: number;
  readonly left: readonly { readonly mutant: Mutant; readonly reached: boolean }[];
}

const isText = ({ kind }: Mutant) => kind === 'Formula' || kind === 'Unit';

export function scoreOf(source: Instrumented, { killed, reached }: Verdicts, types: TypeCheck): Score {
  const survived = source.mutants.filter(({ id }) => !killed.has(id));
  const refused = survived.filter((mutant) => !isText(mutant) && types.refuses(mutant, source.source));
  const texts = source.mutants.filter(isText);
  return {
    file: source.file,
    mutants: source.mutants.length,
    byTests: source.mutants.length - survived.length,
    byTypes: refused.length,
    formulas: texts.length,
    formulasKilled: texts.filter(({ id }) => killed.has(id)).length,
    left: survived
      .filter((mutant) => !refused.includes(mutant))
      .map((mutant) => ({ mutant, reached: reached.has(mutant.id) })),
  };
}

/** The share that is noticed, in whole per cent rounded down. */
export const share = ({ mutants, byTests, byTypes }: Score): number =>
  mutants === 0 ? 100 : Math.floor((100 * (byTests + byTypes)) / mutants);

export function summary(score: Score): string {
  const { file, mutants, byTests, byTypes, formulas, formulasKilled, left } = score;
  const texts = formulas === 0 ? '' : `, formulas and units ${formulasKilled} of ${formulas}`;
  return `${file}: ${mutants} mutants, ${byTests} noticed by tests, ${byTypes} by types, ${left.length} left (${share(score)} %)${texts}`;
}

const TABLE_BEGINS = '<!-- faults: written by `npm run mutate -- --table FILE…` -->';
const TABLE_ENDS = '<!-- end of faults -->';
const CORE = 'src/core/';

const line = (cells: readonly (string | number)[]) => `| ${cells.join(' | ')} |`;

function rowOf(score: Score, bySome: boolean): string {
  const { mutants, byTests, byTypes, formulas, formulasKilled } = score;
  return line([
    score.file.replace(CORE, ''),
    mutants,
    byTests,
    byTypes,
    `${bySome ? '≥ ' : ''}${share(score)} %`,
    formulas === 0 ? '' : `${formulasKilled} of ${formulas}`,
  ]);
}

/**
 * The page with what was noticed of each of these files in its table. The rows of others stay as they were measured, those of
 * files that are not among `sources` any more go. A share that some of the tests noticed alone is at least so much.
 */
export function withTable(
  page: string,
  scores: readonly Score[],
  sources: readonly string[],
  bySome = false,
): string {
  const [before, rest] = page.split(TABLE_BEGINS);
  const [table, after] = rest?.split(TABLE_ENDS) ?? [];
  if (before === undefined || table === undefined || after === undefined)
    throw new Error('the page has lost its place for the table');
  const rows = new Map(
    [...table.matchAll(/^\| (\S+\.ts) \|.*$/gm)].map(([row, file = '']) => [`${CORE}${file}`, row]),
  );
  for (const score of scores) rows.set(score.file, rowOf(score, bySome));
  const kept = [...rows].filter(([file]) => sources.includes(file)).sort(([a], [b]) => (a < b ? -1 : 1));
  const written = [
    line(['file', 'faults', 'noticed by tests', 'by types', 'share', 'formulas and units']),
    line(['---', '--:', '--:', '--:', '--:', '--:']),
    ...kept.map(([, row]) => row),
  ];
  return `${before}${TABLE_BEGINS}\n\n${written.join('\n')}\n\n${TABLE_ENDS}${after}`;
}

const short = (text: string) => {
  const line = text.replace(/\s+/g, ' ');
  return line.length > 100 ? `${line.slice(0, 99)}…` : line;
};

export const survivors = ({ left }: Score): string[] =>
  left.map(
    ({ mutant: { line, kind, original, replacement }, reached }) =>
      `${line} ${kind}${reached ? '' : ' (never reached)'}: ${short(original)}  =>  ${short(replacement)}`,
  );
