/** What an answer is, and how it is shown in a reader's own units and terms. No room's types in it. */
import type { AsTyped } from '../core/base/as-typed.ts';
import { writeOut, type Step, type StepInWords } from '../core/base/working.ts';
import type { Paper } from '../paper/paper.ts';
import { forReader, num, ownUnit, toOwn, type Unit, type Reader } from '../core/base/reader.ts';
import { writeLine, type RawOptions } from './line.ts';

/** A figure of the answer: a number in the core's unit under a key that stays the same. */
export interface Figure {
  readonly key: string;
  readonly label: string;
  readonly value: number;
  /** A core unit, or '%' or '°'. */
  readonly unit: Unit | '%' | '°';
}

/** A figure; none where there is no value. */
export function figure(key: string, label: string, value: number, unit?: Figure['unit']): Figure;
export function figure(
  key: string,
  label: string,
  value: number | undefined,
  unit?: Figure['unit'],
): Figure | undefined;
export function figure(key: string, label: string, value: number | undefined, unit: Figure['unit'] = '') {
  return value === undefined ? undefined : { key, label, value, unit };
}

/**
 * Figures, lines, buttons in one list; what is undefined or false is left out, and a list among them is taken apart.
 *
 * @example
 * gather('Row 9', false, ['Row 10', 'Row 11']) // → ['Row 9', 'Row 10', 'Row 11']
 */
export function gather<T>(...parts: readonly (T | readonly T[] | undefined | false)[]): T[] {
  const gathered: T[] = [];
  for (const part of parts) {
    if (part === undefined || part === false) continue;
    if (Array.isArray(part)) gathered.push(...(part as readonly T[]));
    else gathered.push(part as T);
  }
  return gathered;
}

/** Something to look at or keep: a drawing (SVG, shown as PNG), a sheet to print (shown as PDF), a text, a table. */
export interface AnswerFile {
  /** A file name with its ending, lower case, no folder. */
  readonly name: string;
  /** What it shows, in words: alt text for a picture, a caption for the rest. */
  readonly says: string;
  /** A sheet under a name that ends in .pdf; the room has its bytes made, as those of a drawing are. */
  readonly content: string | Paper;
}

/** A button: another question to ask, with its options. */
export interface Action {
  readonly label: string;
  /** The question's words: `progress next`. */
  readonly question: string;
  /** Its options, as they would be typed. */
  readonly options: RawOptions;
  /** What a button carries instead of these: it stands for months, and what is typed by a number today is another thing by then. */
  readonly lasting?: RawOptions;
  /** True where everybody may press it, each for herself; otherwise it is the asker's alone. */
  readonly forAnyone?: boolean;
  /** Options that are still to be typed: a room that has forms opens the question's own, the others filled in. */
  readonly asks?: readonly string[];
}

/** The line that asks what a button asks, without a maker's name: `/progress next`; `…` where something is still to be typed. */
export const actionLine = ({
  question,
  options,
  asks = [],
}: Pick<Action, 'question' | 'options' | 'asks'>): string =>
  [writeLine({ words: question.split(' '), options }), ...asks.map((option) => `${option}:…`)].join(' ');

/** Things to choose among, several at once or one: what is chosen becomes one option of another question. */
export interface Menu {
  /** The question's words. */
  readonly question: string;
  /** Its other options, as they would be typed. */
  readonly options: RawOptions;
  /** The option that takes what is chosen, with spaces between. */
  readonly option: string;
  /** What choosing does: `Accept …`. */
  readonly says: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  /** True where only one of them is chosen. */
  readonly single?: boolean;
}

/** What somebody else is to be told. */
export interface Telling {
  /** Her id. */
  readonly maker: string;
  /** For her alone. */
  readonly words: string;
  /** The channel of the blanket or the make-along that it is about. */
  readonly channel?: string | undefined;
  /** What it is about; a group blanket if not said. */
  readonly about?: 'group' | 'along';
}

/** What leads on from an answer: one of these, said or chosen, is an option of a question. */
export interface Choose {
  readonly question: string;
  readonly option: string;
  readonly says: string;
  readonly choices: readonly { readonly value: string; readonly label: string }[];
}

/** A message that shows motifs which are not handed in any more. */
export interface PhotoGone {
  /** The id of the group blanket. */
  readonly group: string;
  readonly channel: string;
  readonly message: string;
}

/** A picture that came along with the question, to be shown in the channel of a group blanket. */
export interface Photo {
  /** The id of the group blanket. */
  readonly group: string;
  readonly channel: string;
  /** The numbers of the motifs on it. */
  readonly pieces: readonly number[];
  /** What it shows, in words: its alt text. */
  readonly says: string;
}

/** What programs are told beside the figures. */
export type Data = Readonly<Record<string, unknown>>;

export interface Answer {
  /** One sentence that already answers. */
  readonly headline: string;
  readonly figures?: readonly Figure[];
  /** What belongs under the headline, line by line: an instruction, a list of choices. */
  readonly lines?: readonly string[];
  /** More of the same, for who wants it: it unfolds with the working. */
  readonly details?: readonly string[];
  readonly working?: readonly Step[];
  readonly assumptions?: readonly string[];
  readonly cautions?: readonly string[];
  /** Whatever is not a single number, for programs. */
  readonly data?: Data | (() => Data);
  readonly files?: readonly AnswerFile[];
  readonly actions?: readonly Action[];
  readonly choose?: Choose;
  /** A room that has menus shows it; the same can be typed. */
  readonly menu?: Menu;
  /** The id of a group blanket that this answer changed: its board is to be shown anew. */
  readonly board?: string;
  /** The id of a make-along that this answer changed: its parts may be given out at another time, or taken back. */
  readonly along?: string;
  /** The picture of what was handed in. A room that has it shows it. */
  readonly photo?: Photo;
  /** Photos of what was taken back. A room that shows them takes them away. */
  readonly photosGone?: readonly PhotoGone[];
  /** Whom else it concerns. A room that reaches people tells them; everybody else finds it where she looks. */
  readonly tells?: readonly Telling[];
  /** True where all that is kept of the asker is gone: what a room remembers of her goes too. */
  readonly forgets?: boolean;
  /** True for what only the asker should see, whatever her setting: her own data, a confirmation. */
  readonly private?: boolean;
  /** The question that plain words were taken for: its path, and its whole line. */
  readonly readAs?: { readonly path: string; readonly line: string };
  /** The measures that were typed, which are shown as they were. */
  readonly typed?: AsTyped;
}

/** An answer with every token filled in, ready for a room. */
export interface RenderedAnswer {
  readonly headline: string;
  readonly figures: readonly (Figure & { readonly text: string })[];
  readonly lines: readonly string[];
  readonly details?: readonly string[] | undefined;
  readonly working: readonly (Step & StepInWords)[];
  readonly assumptions: readonly string[];
  readonly cautions: readonly string[];
  /** What only programs are told, in her ways: made for those that ask. */
  readonly data?: (() => Data) | undefined;
  readonly files: readonly AnswerFile[];
  readonly actions: readonly Action[];
  readonly choose?: Choose | undefined;
  readonly menu?: Menu | undefined;
  readonly board?: string | undefined;
  readonly along?: string | undefined;
  readonly photo?: Photo | undefined;
  readonly photosGone?: readonly PhotoGone[] | undefined;
  readonly tells?: readonly Telling[] | undefined;
  readonly forgets?: boolean | undefined;
  readonly private: boolean;
  readonly readAs?: { readonly path: string; readonly line: string } | undefined;
}

/** A figure's value with its unit in the reader's own units. */
export function figureText({ value, unit }: Pick<Figure, 'value' | 'unit'>, reader: Reader): string {
  if (unit === '%' || unit === '°') return `${num(value, 1)}${unit === '%' ? ' %' : '°'}`;
  const own = ownUnit(unit, reader);
  return `${num(value * toOwn(unit, reader))}${own === '' ? '' : ` ${own}`}`;
}

/** The same value with every text in it said anew: data for programs speaks the reader's ways too. */
function within(value: unknown, say: (text: string) => string): unknown {
  if (typeof value === 'string') return say(value);
  if (Array.isArray(value)) return value.map((one) => within(one, say));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, within(one, say)]));
}

/** A step for a reader. It is put into words when somebody looks: most answers are read folded. */
class ShownStep implements Step, StepInWords {
  private words: StepInWords | undefined;

  constructor(
    private readonly step: Step,
    private readonly reader: Reader,
  ) {}

  get label() {
    return forReader(this.step.label, this.reader);
  }
  get source() {
    return forReader(this.step.source, this.reader);
  }
  get formula() {
    return this.step.formula;
  }
  get with() {
    return this.step.with;
  }
  get units() {
    return this.step.units;
  }
  get result() {
    return this.step.result;
  }
  get unit() {
    return this.step.unit;
  }
  get shown() {
    return this.inWords.shown;
  }
  get general() {
    return this.inWords.general;
  }
  get worked() {
    return this.inWords.worked;
  }

  private get inWords(): StepInWords {
    return (this.words ??= writeOut(this.step, this.reader));
  }
}

type Say = (text: string) => string;

const menuIn = (menu: Menu, say: Say): Menu => ({
  ...menu,
  choices: menu.choices.map(({ value, label }) => ({ value, label: say(label) })),
});

/** A button with its label filled in, which most have nothing to fill in for. */
function actionIn(action: Action, say: Say): Action {
  const label = say(action.label);
  return label === action.label ? action : { ...action, label };
}

const NONE: readonly never[] = [];

/**
 * Fills an answer's tokens in, for one reader. What only some rooms show is made when it is looked at. Every answer has the same parts in
 * the same order, those that are not there as well: whatever looks at one finds them in the same places.
 */
export function show(answer: Answer, reader: Reader, assumed: readonly string[] = NONE): RenderedAnswer {
  const say = (text: string) => forReader(text, reader);
  const { details, data, menu, photo, tells } = answer;
  return {
    headline: say(answer.headline),
    figures: (answer.figures ?? NONE).map((figure) => {
      const { key, label, value, unit } = figure;
      return { key, label: say(label), value, unit, text: figureText(figure, reader) };
    }),
    lines: (answer.lines ?? NONE).map(say),
    details: details?.map(say),
    working: (answer.working ?? NONE).map((step) => new ShownStep(step, reader)),
    assumptions: [...assumed, ...(answer.assumptions ?? NONE)].map(say),
    cautions: (answer.cautions ?? NONE).map(say),
    data: data && (() => within(typeof data === 'function' ? data() : data, say) as Data),
    files: (answer.files ?? NONE).map((file) => ({ ...file, says: say(file.says) })),
    actions: (answer.actions ?? NONE).map((action) => actionIn(action, say)),
    choose: answer.choose,
    menu: menu && menuIn(menu, say),
    board: answer.board,
    along: answer.along,
    photo: photo && { ...photo, says: say(photo.says) },
    photosGone: answer.photosGone,
    tells: tells?.map((telling) => ({ ...telling, words: say(telling.words) })),
    forgets: answer.forgets,
    private: answer.private ?? false,
    readAs: answer.readAs,
  };
}
