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
import { coded, writeButton, type Does } from './buttons.ts';
import { BUTTONS, EMBED, MESSAGE } from './limits.ts';
import { clean, escaped, fit, oneLine, take } from './text.ts';

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
  /** The line that asks this again and changes nothing; undefined where there is none. */
  readonly line?: string | undefined;
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
  const care = take(
    shown.cautions.map((caution) => `Take care: ${escaped(oneLine(caution))}`),
    CARE,
  );
  cut ||= care.left.length > 0;
  const notes = take((setting.notes ?? []).map(escaped), NOTES).taken;
  const lines = shown.lines.map((line) => escaped(line).trimEnd());
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
  const listed = actionLines(shown.actions, setting);
  const main: APIEmbed = { color: COLOUR, ...(fields.length === 0 ? {} : { fields }) };
  const footer = footerOf(setting.line, listed.lines);
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
  const again = footer !== undefined && setting.line !== undefined && footer.startsWith(setting.line);
  const left = Math.min(
    EMBED.description,
    EMBED.total - used - (main.description?.length ?? 0) - WORKING.length,
  );
  const waits = again && !setting.open && longestWorking(shown) <= left;
  const working: APIEmbed = { color: COLOUR, title: WORKING, description: waits ? '' : workingSteps(shown) };
  const fits = (working.description?.length ?? 0) <= left;
  const folds = has && fits && again;
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
      content: listed.written.map(({ label, line }) => `${oneLine(label)}: ${clean(line)}\n`).join(''),
      says: 'More to ask from here',
    });
  }
  return {
    content: parts.join('\n'),
    embeds,
    components: rows(listed.buttons, [
      ...(folds ? [control(setting.open ? 'fold' : 'working', setting)] : []),
      ...(setting.sharable ? [control('everyone', setting)] : []),
    ]),
    texts,
  };
}

/** The line that is asked again, then the lines of buttons that do not fit into their ids, one each. */
function footerOf(line: string | undefined, lines: readonly string[]): string | undefined {
  const text = [...(line === undefined || line.length > EMBED.footer ? [] : [line]), ...lines].join('\n');
  return text === '' ? undefined : text;
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

function control(does: Does, setting: Setting) {
  const owner = setting.asker === undefined ? '' : coded(setting.asker);
  const id = writeButton({ does, owner, serial: setting.serial, payload: '' }) ?? does;
  return button(CONTROLS[does] ?? does, id, ButtonStyle.Secondary);
}

/** Between a button's label and its line in the footer, which people read too. */
const LISTED = ' ▸ ';

interface Actions {
  readonly buttons: readonly APIButtonComponentWithCustomId[];
  /** Kept in the footer. */
  readonly lines: readonly string[];
  /** No room for a button: written down in a file. */
  readonly written: readonly Action[];
}

function actionLines(actions: readonly Action[], setting: Setting): Actions {
  const buttons: APIButtonComponentWithCustomId[] = [];
  const lines: string[] = [];
  const written: Action[] = [];
  const seen = new Set<string>();
  // The room that the footer has beside the asked line; where that is too long, it is not there at all.
  const asked = setting.line !== undefined && setting.line.length <= EMBED.footer ? setting.line.length : 0;
  let left = Math.min(EMBED.footer - asked - 1, MESSAGE.content);
  for (const action of actions) {
    const line = oneLine(action.line);
    if (seen.has(line)) continue;
    seen.add(line);
    const owner = action.forAnyone || setting.asker === undefined ? '' : coded(setting.asker);
    const style = buttons.length === 0 ? ButtonStyle.Primary : ButtonStyle.Secondary;
    if (buttons.length >= MOST_ACTIONS) {
      written.push(action);
      continue;
    }
    const { serial } = setting;
    const short = writeButton({ does: 'ask', owner, serial, payload: line });
    if (short !== undefined) {
      buttons.push(button(action.label, short, style));
      continue;
    }
    const label = fit(oneLine(action.label).replace(/^\/+|▸/g, ''), BUTTONS.label);
    const kept = `${label}${LISTED}${line}`;
    const id = writeButton({ does: 'listed', owner, serial, payload: String(lines.length) });
    if (id === undefined || kept.length + 1 > left) written.push(action);
    else {
      left -= kept.length + 1;
      lines.push(kept);
      buttons.push(button(action.label, id, style));
    }
  }
  return { buttons, lines, written };
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

/** What a message of this room keeps in its footer. */
export interface Kept {
  /** The asked line. */
  readonly line: string | undefined;
  /** Lines of buttons that did not fit into their ids. */
  readonly listed: readonly string[];
}

/** Reads back what `render` kept in a message. */
export function keptIn(embeds: readonly { readonly footer?: { readonly text: string } | null }[]): Kept {
  const text = embeds.map((embed) => embed.footer?.text).findLast((footer) => footer !== undefined) ?? '';
  const all = text.split('\n');
  const line = all[0]?.startsWith('/') ? all[0] : undefined;
  const rest = line === undefined ? all : all.slice(1);
  return { line, listed: rest.map((kept) => kept.slice(kept.indexOf(LISTED) + LISTED.length)) };
}
