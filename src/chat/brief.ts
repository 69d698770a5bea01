/**
 * The short form in which an answer is given first: what answers, what must be acted on, and as much of what it rests on
 * as changes the result. The rest is there for the asking.
 */
import type { RenderedAnswer } from './answer.ts';

export interface Brief {
  /** At most three lines, more where they are short. */
  readonly lines: readonly string[];
  /** The figures that neither the headline nor those lines say. */
  readonly figures: RenderedAnswer['figures'];
  readonly assumptions: readonly string[];
  /** What to take care of, without who says so; many cautions in one line. */
  readonly cautions: readonly string[];
  /** Whether lines, details, figures or assumptions are left out. */
  readonly more: boolean;
}

/** Characters of a line on a desktop. */
const WIDTH = 90;
/** Lines of an answer, in the middle of all of them. */
const WANTED = 6;
/** Lines of an answer at the most, as far as it can be helped. */
const MOST = 12;
/** Lines that must be acted on. */
const ACTED_ON = 3;
/** Lines of what an answer rests on. */
const RESTS_ON = 2;

const rowsOf = (text: string) => Math.max(1, Math.ceil(text.length / WIDTH));
const rowsIn = (texts: readonly string[]) => texts.reduce((sum, text) => sum + rowsOf(text), 0);

const isDigit = (text: string, at: number) => {
  const code = text.charCodeAt(at);
  return code >= 0x30 && code <= 0x39;
};
const isMark = (text: string, at: number) => {
  const code = text.charCodeAt(at);
  return code === 0x2e || code === 0x2c;
};

/** Whether a text says this amount, and not as a part of another number. */
function says(text: string, amount: string): boolean {
  for (let at = text.indexOf(amount); at >= 0; at = text.indexOf(amount, at + 1)) {
    const end = at + amount.length;
    const goesBefore = isDigit(text, at - 1) || isMark(text, at - 1);
    const goesOn = isDigit(text, end) || (isMark(text, end) && isDigit(text, end + 1));
    if (!goesBefore && !goesOn) return true;
  }
  return false;
}

/** A size names both its sides with one unit: `64.8 × 80.2 cm` says `64.8 cm`. */
const isSaid = (text: string, { text: amount, value, unit }: RenderedAnswer['figures'][number]) =>
  // “1 too few” says −1.
  says(text, amount.replace(/^[-−]/, '')) ||
  (unit !== '' && says(text, `${amount.slice(0, amount.lastIndexOf(' '))} ×`)) ||
  // None and no difference go without saying.
  value === 0;

/** As many texts from the first as fit into so many rows when they are written one behind the other. */
function within(texts: readonly string[], rows: number): readonly string[] {
  let characters = 0;
  const taken = texts.findIndex((text) => {
    characters += text.length + 3;
    return characters > rows * WIDTH;
  });
  return taken < 0 ? texts : texts.slice(0, taken);
}

/** Cautions beyond this many stand in one line. */
const CAUTIONS = 2;

/** A caution without the source in brackets behind it. */
const withoutSource = (caution: string) =>
  caution.endsWith(')') ? caution.replace(/ \((?:[^()]|\([^()]*\))*\)$/, '') : caution;

function shortCare(cautions: readonly string[]): readonly string[] {
  const short = cautions.map(withoutSource);
  return short.length <= CAUTIONS ? short : [short.join(' ')];
}

/** A row of a map: `A0 B1 A0`. */
const OF_MAP = /^(?:[A-Z][0-3]? ?){2,}$/;

/** The short form of an answer. */
export function shorten(shown: RenderedAnswer): Brief {
  const taken: string[] = [];
  const cautions = shortCare(shown.cautions);
  let rows = rowsOf(shown.headline) + rowsIn(cautions) + (shown.readAs === undefined ? 0 : 1);
  // Half a map is worse than none.
  const whole = rows + rowsIn(shown.lines) <= WANTED;
  for (const line of whole ? shown.lines : shown.lines.filter((one) => !OF_MAP.test(one))) {
    rows += rowsOf(line);
    if (rows > (taken.length < ACTED_ON ? MOST - 1 : WANTED)) break;
    taken.push(line);
  }
  // A first line that is longer than all that is left would leave an answer without its instruction.
  const lines = taken.length === 0 ? shown.lines.slice(0, 1) : taken;
  const said = [shown.headline, ...lines].join('\n');
  const unsaid = shown.figures.filter((figure) => !isSaid(said, figure));
  const left = MOST - rowsIn([shown.headline, ...cautions, ...lines]);
  const assumptions = within(shown.assumptions, Math.max(1, Math.min(RESTS_ON, left - 1)));
  const row = within(
    unsaid.map(({ label, text }) => `${label}: ${text}`),
    1,
  );
  const figures = left > 1 ? unsaid.slice(0, row.length) : [];
  return {
    lines,
    figures,
    assumptions,
    cautions,
    more:
      (shown.details ?? []).length > 0 ||
      lines.length < shown.lines.length ||
      figures.length < unsaid.length ||
      assumptions.length < shown.assumptions.length ||
      cautions.some((caution, index) => caution !== shown.cautions[index]),
  };
}
