/**
 * An answer as a message. The headline, what to take care of and what to do stand in the message's own text, so that a
 * phone's notification, a screen reader and someone who switched embeds off all get the answer itself; what it rests on
 * stands in an embed below; the working folds. Whatever comes in, the message is within every limit of the platform.
 */
import {
  ButtonStyle,
  ComponentType,
  type APIActionRowComponent,
  type APIButtonComponentWithCustomId,
  type APIEmbed,
} from 'discord.js';
import type { Action, RenderedAnswer } from '../../chat/answer.ts';
import { writeAsked, type Asked } from './asked.ts';
import { coded, fitsInto, keptAt, writeButton, type Does } from './buttons.ts';
import { BUTTONS, EMBED, MESSAGE } from './limits.ts';
import { asFilledIn, clean, escaped, fit, oneLine, take } from './text.ts';

export type Row = APIActionRowComponent<APIButtonComponentWithCustomId>;

/** A text that had no room in the message. */
export interface TextFile {
  readonly name: string;
  readonly content: string;
  readonly says: string;
}

export interface Drawn {
  readonly content: string;
  readonly embeds: readonly APIEmbed[];
  readonly components: readonly Row[];
  readonly texts: readonly TextFile[];
}

export interface Setting {
  /** What asks this again and changes nothing; undefined where there is none. */
  readonly again?: Asked | undefined;
  /** The asker's id; undefined for a board, whose buttons are everybody's. */
  readonly asker?: string | undefined;
  /** Different each time the same message is drawn: digits and lower-case letters. */
  readonly serial: string;
  /** Whether the working is unfolded. */
  readonly open: boolean;
  /** Whether only the asker sees it and may show it to everyone. */
  readonly sharable: boolean;
  /** What is to be said of its files. */
  readonly notes?: readonly string[];
}

/** A muted green: the trim beside what an answer rests on. */
const COLOUR = 0x6b8f71;
/** The longest headline in the text; a longer one stands whole in the attached answer. */
const HEADLINE = 700;
const CARE = 700;
const READ_AS = 400;
/** Begins the line that says what plain words were read as. */
const READ = '-# Read as';
/** Whether a message’s text says what plain words were read as. */
export const saysReadAs = (content: string) => content.split('\n').some((line) => line.startsWith(READ));
const NOTES = 200;
const REST = 'The rest is in answer.txt.';
/** More actions than fit into the rows above the last one are written down instead. */
const MOST_ACTIONS = (BUTTONS.rows - 1) * BUTTONS.inRow;

const stepText = (step: RenderedAnswer['working'][number], dress: (text: string) => string = clean) =>
  `${dress(step.label)}: ${dress(step.shown)}`;

const WORKING = 'Working';
const workingSteps = (shown: RenderedAnswer) =>
  shown.working
    .map((step) => `${stepText(step, escaped)}\n-# ${escaped(oneLine(step.source))}`)
    .join('\n')
    .trim();
/** No working is longer than this once it is dressed: at most every character of it gets a backslash. */
const longestWorking = (shown: RenderedAnswer) =>
  shown.working.reduce(
    (sum, { label, shown: text, source }) => sum + 2 * (label.length + text.length + source.length) + 8,
    0,
  );

/** The working for people who keep it: plain text. */
export const workingText = (shown: RenderedAnswer) =>
  shown.working.map((step) => `${stepText(step)}\n    (${clean(step.source)})`).join('\n');

const section = (title: string, lines: readonly string[]) =>
  lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${clean(line)}`)];

/** The whole answer without its working: plain text. */
function answerText(shown: RenderedAnswer): string {
  return [
    clean(shown.headline),
    ...shown.lines.map(clean),
    ...section('Take care', shown.cautions),
    ...section(
      'Figures',
      shown.figures.map(({ label, text }) => `${label}: ${text}`),
    ),
    ...section('Taken for granted', shown.assumptions),
    '',
  ].join('\n');
}

const says = (lines: readonly string[]) => lines.some((line) => line.trim() !== '');

const sizeOf = ({ title = '', description = '', footer, fields = [] }: APIEmbed) =>
  title.length +
  description.length +
  (footer?.text.length ?? 0) +
  fields.reduce((sum, { name, value }) => sum + name.length + value.length, 0);

/** Draws an answer. Never throws for any answer. */
export function render(shown: RenderedAnswer, setting: Setting): Drawn {
  const texts: TextFile[] = [];
  let cut = false;

  // The text: headline, cautions, what is said of files, then as many lines as fit.
  const headline = oneLine(shown.headline);
  const bold = fit(headline, HEADLINE, escaped);
  cut ||= bold !== escaped(headline);
  const parts = bold === '' ? [] : [`**${bold}**`];
  if (shown.readAs !== undefined)
    parts.push(`${READ} ${fit(asFilledIn(shown.readAs.line), READ_AS, escaped)}`);
  const care = take(
    shown.cautions.map((caution) => `Take care: ${escaped(oneLine(caution))}`),
    CARE,
  );
  cut ||= care.left.length > 0;
  const notes = take((setting.notes ?? []).map(escaped), NOTES).taken;
  const lines = shown.lines.map((line) => escaped(line.startsWith('/') ? asFilledIn(line) : line).trimEnd());
  const room =
    MESSAGE.content -
    [...parts, ...care.taken, ...notes, REST].reduce((sum, text) => sum + text.length + 2, 0);

  // The embed: figures, assumptions; and the lines, where the text has no room for them.
  const fields = (
    [
      ['Figures', shown.figures.map(({ label, text }) => `${escaped(oneLine(label))}: **${escaped(text)}**`)],
      ['Taken for granted', shown.assumptions.map((text) => escaped(oneLine(text)))],
    ] as const
  ).flatMap(([name, all]) => {
    const { taken, left } = take(all, EMBED.fieldValue);
    cut ||= left.length > 0;
    return says(taken) ? [{ name, value: taken.join('\n') }] : [];
  });
  const main: APIEmbed = { color: COLOUR, ...(fields.length === 0 ? {} : { fields }) };
  const keeper = new Keeper(setting);
  const again = keeper.again();
  const listed = actionButtons(shown.actions, setting, keeper);
  const { footer } = keeper;
  const used = sizeOf(main) + (footer?.length ?? 0);

  let below = take(lines, room);
  if (below.left.length > 0) {
    const inEmbed = take(lines, Math.min(EMBED.description, EMBED.total - used));
    if (inEmbed.left.length === 0 && says(lines)) {
      below = { taken: [], left: [] };
      main.description = lines.join('\n');
    } else cut = true;
  }
  if (says(below.taken)) parts.push(below.taken.join('\n'));
  parts.push(...care.taken, ...notes);

  // The working: in an embed of its own when it fits there, otherwise a file. Folded, and sure to fit, it waits undressed.
  const has = shown.working.length > 0;
  const left = Math.min(
    EMBED.description,
    EMBED.total - used - (main.description?.length ?? 0) - WORKING.length,
  );
  const waits = again !== undefined && !setting.open && longestWorking(shown) <= left;
  const working: APIEmbed = { color: COLOUR, title: WORKING, description: waits ? '' : workingSteps(shown) };
  const fits = (working.description?.length ?? 0) <= left;
  const folds = has && fits && again !== undefined;
  if (has && !fits)
    texts.push({
      name: 'working.txt',
      content: `${workingText(shown)}\n`,
      says: 'The working, step by step',
    });
  const embeds = [
    ...(sizeOf(main) > 0 ? [main] : []),
    ...(has && fits && (setting.open || !folds) ? [working] : []),
  ];
  if (footer !== undefined) {
    const last = embeds.at(-1);
    if (last) last.footer = { text: footer };
    // A footer needs something above it.
    else embeds.push({ color: COLOUR, description: 'Asked with', footer: { text: footer } });
  }

  if (cut) {
    texts.unshift({ name: 'answer.txt', content: answerText(shown), says: 'The whole answer' });
    parts.push(REST);
  }
  if (listed.written.length > 0) {
    texts.push({
      name: 'next.txt',
      content: listed.written
        .map((action) => `${oneLine(action.label)}: ${clean(lineOf(action))}\n`)
        .join(''),
      says: 'More to ask from here',
    });
  }
  return {
    content: parts.join('\n'),
    embeds,
    components: rows(listed.buttons, [
      ...(folds ? [control(setting.open ? 'fold' : 'working', setting, again)] : []),
      ...(setting.sharable ? [control('everyone', setting, again)] : []),
    ]),
    texts,
  };
}

type Style = ButtonStyle.Primary | ButtonStyle.Secondary;
const button = (label: string, id: string, style: Style): APIButtonComponentWithCustomId => ({
  type: ComponentType.Button,
  style,
  label: fit(oneLine(label), BUTTONS.label) || '…',
  custom_id: id,
});

const CONTROLS: Partial<Record<Does, string>> = {
  working: 'Show the working',
  fold: 'Fold the working',
  everyone: 'Show everyone',
};

function control(does: Does, setting: Setting, again: string | undefined) {
  const id = writeButton({ does, ...bearing(setting), payload: again ?? '' }) ?? does;
  return button(CONTROLS[does] ?? does, id, ButtonStyle.Secondary);
}

const bearing = ({ asker, serial }: Setting, forAnyone = false) => ({
  owner: forAnyone || asker === undefined ? '' : coded(asker),
  serial,
});

/** A question as people see it filled in. Nobody reads it back. */
export const lineOf = ({ question, options }: Asked) =>
  oneLine([`/${question}`, ...Object.entries(options).map(([name, value]) => `${name}:${value}`)].join(' '));

/** Between a button's label and what it means, in the footer, which people read too. */
export const KEPT = ' ▸ ';
/** The label of what asks the message itself again. */
const ASKED_WITH = 'Asked with';

/** The footer: the asked line for people, and the questions of buttons that do not fit into their ids, one each. */
class Keeper {
  private readonly lines: string[] = [];
  private kept = 0;
  private left: number = EMBED.footer;

  constructor(private readonly setting: Setting) {}

  get footer(): string | undefined {
    return this.lines.length === 0 ? undefined : this.lines.join('\n');
  }

  /** Keeps what asks again; returns what its buttons carry of it, undefined where it has no room anywhere. */
  again(): string | undefined {
    const { again } = this.setting;
    if (again === undefined) return undefined;
    const line = lineOf(again);
    if (fitsInto(again, { does: 'working', ...bearing(this.setting) }) === undefined)
      return this.keep(ASKED_WITH, again);
    if (line.length <= this.left) this.put(line);
    return writeAsked(again);
  }

  /** Keeps a question under a label; returns its place, undefined where there is no room. */
  keep(label: string, asked: Asked): string | undefined {
    const line = `${label}${KEPT}${writeAsked(asked)}`;
    if (line.length > this.left) return undefined;
    this.put(line);
    this.kept += 1;
    return keptAt(this.kept - 1);
  }

  private put(line: string): void {
    this.lines.push(line);
    this.left -= line.length + 1;
  }
}

interface Actions {
  readonly buttons: readonly APIButtonComponentWithCustomId[];
  /** No room for a button: written down in a file. */
  readonly written: readonly Action[];
}

function actionButtons(actions: readonly Action[], setting: Setting, keeper: Keeper): Actions {
  const buttons: APIButtonComponentWithCustomId[] = [];
  const written: Action[] = [];
  const seen = new Set<string>();
  for (const action of actions) {
    const asked: Asked = { question: action.question, options: action.options };
    const meaning = writeAsked(asked);
    if (seen.has(meaning)) continue;
    seen.add(meaning);
    const carries = { does: 'ask', ...bearing(setting, action.forAnyone) } as const;
    const style = buttons.length === 0 ? ButtonStyle.Primary : ButtonStyle.Secondary;
    const id = buttons.length < MOST_ACTIONS ? (fitsInto(asked, carries) ?? kept(action.label)) : undefined;
    if (id === undefined) written.push(action);
    else buttons.push(button(action.label, id, style));

    function kept(label: string): string | undefined {
      const short = fit(oneLine(label).replace(/^\/+|▸/g, ''), BUTTONS.label) || '…';
      const payload = keeper.keep(short, asked);
      return payload === undefined ? undefined : writeButton({ ...carries, payload });
    }
  }
  return { buttons, written };
}

function rows(
  actions: readonly APIButtonComponentWithCustomId[],
  controls: readonly APIButtonComponentWithCustomId[],
): Row[] {
  const made: Row[] = [];
  for (let start = 0; start < actions.length; start += BUTTONS.inRow)
    made.push({ type: ComponentType.ActionRow, components: actions.slice(start, start + BUTTONS.inRow) });
  const last = made.at(-1);
  // A row half empty takes the controls too: fewer rows on a phone.
  if (last && last.components.length + controls.length <= BUTTONS.inRow) last.components.push(...controls);
  else if (controls.length > 0) made.push({ type: ComponentType.ActionRow, components: [...controls] });
  return made;
}

/** Reads back the questions that `render` kept in a message's footer, as they were written. */
export function keptIn(
  embeds: readonly { readonly footer?: { readonly text: string } | null }[],
): readonly string[] {
  const text = embeds.map((embed) => embed.footer?.text).findLast((footer) => footer !== undefined) ?? '';
  // The asked line, for people, begins like every line with a slash; a label never does.
  return text
    .split('\n')
    .filter((line) => !line.startsWith('/') && line.includes(KEPT))
    .map((line) => line.slice(line.indexOf(KEPT) + KEPT.length));
}
