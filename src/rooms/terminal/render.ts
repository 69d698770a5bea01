/** An answer as plain text, and as one JSON object a line. */
import type { Shown } from '../../chat/answer.ts';

/** What a room says instead of an answer. */
export interface Refusal {
  readonly problem: string;
  readonly option?: string | undefined;
  readonly hint: string;
}

const block = (title: string, lines: readonly string[]) =>
  lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];

/** For people: the answer first, then what it rests on. */
export function asText(shown: Shown, written: readonly string[] = []): string {
  return [
    shown.headline,
    ...shown.lines.map((line) => `  ${line}`),
    ...block(
      'Working',
      shown.working.flatMap((step) => [`${step.label}: ${step.shown}`, `    (${step.source})`]),
    ),
    ...block('Taken for granted', shown.assumptions),
    ...block('Take care', shown.cautions),
    ...block('Files', written),
    ...block(
      'Next',
      shown.actions.map((action) => `${action.label}: ${action.line}`),
    ),
  ].join('\n');
}

export function asJson(question: string, shown: Shown, written: readonly string[] = []): string {
  return JSON.stringify({
    ok: true,
    question,
    headline: shown.headline,
    figures: Object.fromEntries(shown.figures.map(({ key, value, unit }) => [key, { value, unit }])),
    data: shown.data,
    ...(shown.lines.length === 0 ? {} : { lines: shown.lines }),
    working: shown.working.map(({ label, formula, with: values, result, unit, source, shown: text }) => ({
      label,
      formula,
      with: values,
      result,
      unit,
      source,
      shown: text,
    })),
    assumptions: shown.assumptions,
    cautions: shown.cautions,
    files: written,
  });
}

export const refusalText = ({ problem, option, hint }: Refusal) =>
  `${problem}${option === undefined ? '' : ` (${option})`}\n  ${hint}`;

export const refusalJson = ({ problem, option, hint }: Refusal) =>
  JSON.stringify({ ok: false, problem, option: option ?? null, hint });
