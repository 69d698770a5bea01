/** An answer as plain text, and as one JSON object a line. */
import { defined } from '../../core/base/defined.ts';
import { actionLine, type RenderedAnswer } from '../../chat/answer.ts';
import { shorten } from '../../chat/brief.ts';
import { gatherSteps } from '../../chat/steps.ts';
import { QUESTION } from '../../core/base/problem.ts';

/** What a room says instead of an answer. */
export interface Refusal {
  readonly problem: string;
  readonly code: string;
  readonly option?: string | undefined;
  readonly hint: string;
  /** The line that plain words were taken for, as far as they were understood. */
  readonly readAs?: string | undefined;
}

/** What would move the cursor, ring, or hide text in a terminal: nothing of that comes out of here. */
const UNSEEN = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/g;
const visible = (text: string) => text.replace(UNSEEN, '\ufffd');
/** Some readers part lines at these as well. */
const BREAKS = /[\u0085\u2028\u2029]/g;

/** The text in one line, for one answer a line. */
export const oneLine = (text: string) =>
  visible(
    text
      .split(/[\n\r\u0085\u2028\u2029]/)
      .map((line, index, { length }) =>
        length === 1
          ? line
          : index === 0
            ? line.trimEnd()
            : index === length - 1
              ? line.trimStart()
              : line.trim(),
      )
      .filter((line, index, { length }) => line !== '' || index === 0 || index === length - 1)
      .join(' '),
  );

/** The answer in one line; what a colon leads up to stands in its lines. */
export const inBrief = ({ headline, lines }: Pick<RenderedAnswer, 'headline' | 'lines'>): string =>
  oneLine(headline.endsWith(':') ? [headline, ...lines].join(' ') : headline);

/** JSON in one line for every reader, with nothing unprintable in it. */
const jsonLine = (value: unknown) =>
  JSON.stringify(value).replace(
    new RegExp(`${BREAKS.source}|[\\u007f-\\u009f]`, 'g'),
    (unseen) => `\\u${unseen.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

const block = (title: string, lines: readonly string[]) =>
  lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];

export interface Fullness {
  /** With the working, and all that was taken for granted. */
  readonly whole: boolean;
  /** How to see those, where they are left out. */
  readonly how: string;
}

const workingBlocks = ({ details = [], working, assumptions }: RenderedAnswer): string[] => [
  ...block('In detail', details),
  ...block(
    'Working',
    gatherSteps(working).flatMap(({ formula, lines, source }) => [
      ...(formula === undefined ? lines : [formula, ...lines.map((line) => `  ${line}`)]),
      `    (${source})`,
    ]),
  ),
  ...block('Taken for granted', assumptions),
];

/** What an answer rests on, without the answer. */
export const workingText = (shown: RenderedAnswer): string =>
  visible(workingBlocks(shown).join('\n').trim()) || 'Nothing was reckoned for that.';

/** For people: the answer first, then what it rests on. */
export function asText(shown: RenderedAnswer, written: readonly string[], { whole, how }: Fullness): string {
  const { assumptions } = shorten(shown);
  const more =
    !whole &&
    (shown.working.length > 0 ||
      shown.details !== undefined ||
      assumptions.length < shown.assumptions.length);
  const text = [
    shown.headline,
    ...(shown.readAs === undefined ? [] : [`  Read as ${shown.readAs.line}`]),
    ...shown.lines.map((line) => `  ${line}`),
    ...(whole ? workingBlocks(shown) : []),
    ...(whole ? [] : block('Taken for granted', assumptions)),
    ...block('Take care', shown.cautions),
    ...block('Files', written),
    ...block(
      'Next',
      shown.actions.map((action) => `${action.label}: ${actionLine(action)}`),
    ),
    ...(more ? ['', `${shown.details === undefined ? 'The working' : 'More, and the working'}: ${how}`] : []),
  ].join('\n');
  return visible(text);
}

export function asJson(question: string, shown: RenderedAnswer, written: readonly string[] = []): string {
  return jsonLine({
    ok: true,
    question: shown.readAs === undefined ? question : `/${shown.readAs.path}`,
    ...(shown.readAs === undefined ? {} : { read_as: shown.readAs.line }),
    headline: shown.headline,
    figures: Object.fromEntries(shown.figures.map(({ key, value, unit }) => [key, { value, unit }])),
    data: shown.data?.() ?? {},
    ...(shown.lines.length === 0 ? {} : { lines: [...shown.lines, ...(shown.details ?? [])] }),
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
  visible(`${problem}${option === undefined || option === QUESTION ? '' : ` (${option})`}\n  ${hint}`);

export const refusalJson = ({ problem, code, option, hint, readAs }: Refusal) =>
  jsonLine({
    ok: false,
    problem,
    code,
    option: option ?? null,
    hint,
    ...defined({ read_as: readAs }),
  });
