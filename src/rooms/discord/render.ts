/**
 * An answer as a message. Its short form stands in the message's own text, so that a phone's notification, a screen reader
 * and someone who switched embeds off all get the answer itself; the rest of it and its working unfold below. Whatever comes
 * in, the message is within every limit of the platform.
 */
import {
  ButtonStyle,
  ComponentType,
  type APIActionRowComponent,
  type APIStringSelectComponent,
  type APIButtonComponentWithCustomId,
  type APIEmbed,
} from 'discord.js';
import type { Action, RenderedAnswer } from '../../chat/answer.ts';
import { shorten, type Brief } from '../../chat/brief.ts';
import { gatherSteps } from '../../chat/steps.ts';
import { writeAsked, type Asked } from './asked.ts';
import { coded, keptAt, writeButton, type Button, type Does } from './buttons.ts';
import { BUTTONS, EMBED, MESSAGE, SELECT } from './limits.ts';
import { menuRow } from './menu.ts';
import { asFilledIn, clean, escaped, fit, oneLine, take } from './text.ts';

export type Row = APIActionRowComponent<APIButtonComponentWithCustomId>;
export type SelectRow = APIActionRowComponent<APIStringSelectComponent>;

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
  /** What leads on, above them. */
  readonly menu: readonly SelectRow[];
  readonly texts: readonly TextFile[];
}

export interface Setting {
  /** What asks this again and changes nothing; undefined where there is none. */
  readonly again?: Asked | undefined;
  /** What the answer is remembered by where it cannot be asked again. */
  readonly kept?: string | undefined;
  /** The asker's id; undefined for a board, whose buttons are everybody's. */
  readonly asker?: string | undefined;
  /** Different each time the same message is drawn: digits and lower-case letters. */
  readonly serial: string;
  /** Whether its rest and its working are unfolded. */
  readonly open: boolean;
  /** Whether only the asker sees it and may show it to everyone. */
  readonly sharable: boolean;
  /** What is to be said of its files. */
  readonly notes?: readonly string[];
  /** The id under which the platform knows a command: questions that are listed can be clicked then. */
  readonly commandId?: ((name: string) => string | undefined) | undefined;
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
const PRINT = 500;
const REST = 'The rest is in answer.txt.';
/** More actions than fit into the rows above the last one are written down instead. */
const MOST_ACTIONS = (BUTTONS.rows - 1) * BUTTONS.inRow;

const small = (text: string) => `-# ${text}`;

const WORKING = 'Working';
/** The working as an embed shows it; undefined where it is longer than there is room for: nobody need dress the rest. */
function workingSteps(shown: RenderedAnswer, room: number): string | undefined {
  const parts: string[] = [];
  let length = 0;
  for (const { formula, lines, source } of gatherSteps(shown.working)) {
    const part = [
      ...(formula === undefined ? [] : [`**${escaped(oneLine(formula))}**`]),
      ...lines.map(escaped),
      small(escaped(oneLine(source))),
    ].join('\n');
    parts.push(part);
    length += part.trim().length + 1;
    if (length > room + 1) return undefined;
  }
  const text = parts.join('\n').trim();
  return text.length <= room ? text : undefined;
}

/** The working for people who keep it: plain text. */
export const workingText = (shown: RenderedAnswer) =>
  gatherSteps(shown.working)
    .map(({ formula, lines, source }) =>
      [
        ...(formula === undefined ? [] : [clean(formula)]),
        ...lines.map((line) => (formula === undefined ? clean(line) : `  ${clean(line)}`)),
        `    (${clean(source)})`,
      ].join('\n'),
    )
    .join('\n');

const section = (title: string, lines: readonly string[]) =>
  lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${clean(line)}`)];

const everyLine = ({ lines, details = [] }: RenderedAnswer) => [...lines, ...details];

/** The whole answer without its working: plain text. */
function answerText(shown: RenderedAnswer): string {
  return [
    clean(shown.headline),
    ...everyLine(shown).map(clean),
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

/** What a short answer rests on, in small print. */
const smallPrint = ({ figures, assumptions }: Pick<Brief, 'figures' | 'assumptions'>) =>
  [
    figures.map(({ label, text }) => `${escaped(oneLine(label))}: **${escaped(text)}**`).join(' · '),
    assumptions.map((text) => escaped(oneLine(text))).join(' '),
  ].filter((line) => line !== '');

/** An answer with nothing to unfold it by says all that it has at once. */
const whole = ({ lines, details = [], figures, assumptions, cautions }: RenderedAnswer): Brief => ({
  lines: [...lines, ...details],
  figures,
  assumptions,
  cautions,
  more: false,
});

/** The lines of an answer as they stand in a message. */
const dress = (shown: RenderedAnswer, setting: Setting, lines: readonly string[]) =>
  lines.map(
    (line) =>
      (shown.choose && clickable(line, setting)) ??
      escaped(line.startsWith('/') ? asFilledIn(line) : line).trimEnd(),
  );

interface Written {
  readonly parts: readonly string[];
  /** What it rests on, in small print: it stands in an embed where there is one for what buttons mean. */
  readonly print: readonly string[];
  /** Lines that are in the text; whether there are more, and whether the headline or a caution is cut. */
  readonly lines: number;
  readonly more: boolean;
  readonly cut: boolean;
}

/** The text: headline, lines, cautions, what is said of files; what it rests on in small print, where it can be unfolded. */
function writeText(
  shown: RenderedAnswer,
  setting: Setting,
  brief: Brief,
  { unfolds, footed }: { readonly unfolds: boolean; readonly footed: boolean },
): Written {
  const headline = oneLine(shown.headline);
  const dressed = escaped(headline);
  const bold = dressed.length <= HEADLINE ? dressed : fit(headline, HEADLINE, escaped);
  const parts = bold === '' ? [] : [`**${bold}**`];
  if (shown.readAs !== undefined)
    parts.push(`${READ} ${fit(asFilledIn(shown.readAs.line), READ_AS, escaped)}`);
  const care = take(
    brief.cautions.map((caution) => `Take care: ${escaped(oneLine(caution))}`),
    CARE,
  );
  const notes = take((setting.notes ?? []).map(escaped), NOTES).taken;
  const print = unfolds ? take(smallPrint(brief).map(small), PRINT).taken : [];
  const room =
    MESSAGE.content -
    [...parts, ...care.taken, ...notes, ...print, REST].reduce((sum, text) => sum + text.length + 2, 0);
  const below = take(dress(shown, setting, brief.lines), room);
  if (says(below.taken)) parts.push(below.taken.join('\n'));
  parts.push(...care.taken, ...notes);
  // What keeps the meanings of buttons stands in an embed, and the small print then above it rather than nothing.
  if (!footed) parts.push(...print);
  return {
    parts,
    print,
    lines: below.taken.length,
    more: below.left.length > 0,
    cut: bold !== dressed || care.left.length > 0,
  };
}

/** All that the answer rests on, where it is unfolded or cannot be: embeds, and as a file what they have no room for. */
function writeBelow(
  shown: RenderedAnswer,
  setting: Setting,
  text: Written,
  { open, footer }: { readonly open: boolean; readonly footer: string | undefined },
): { readonly embeds: APIEmbed[]; readonly texts: TextFile[]; readonly cut: boolean } {
  const rest = restOf(
    shown,
    open || text.more ? dress(shown, setting, everyLine(shown).slice(text.lines)) : [],
    open ? shown.cautions : [],
  );
  const embeds = sizeOf(rest.embed) > 0 ? [rest.embed] : [];
  if (shown.working.length === 0) return { embeds, texts: [], cut: rest.cut };
  const left = Math.min(
    EMBED.description,
    EMBED.total - sizeOf(rest.embed) - WORKING.length - (footer?.length ?? 0),
  );
  const description = workingSteps(shown, left);
  return description !== undefined
    ? {
        embeds: [...embeds, { color: COLOUR, title: WORKING, description }],
        texts: [],
        cut: rest.cut,
      }
    : {
        embeds,
        texts: [
          { name: 'working.txt', content: `${workingText(shown)}\n`, says: 'The working, step by step' },
        ],
        cut: rest.cut,
      };
}

/** What keeps the meanings of buttons stands below the last embed, or below the small print in one of its own. */
function footed(embeds: readonly APIEmbed[], print: readonly string[], footer: string): APIEmbed[] {
  const last = embeds.at(-1);
  if (last) return [...embeds.slice(0, -1), { ...last, footer: { text: footer } }];
  const description = print.length === 0 ? ASKED_WITH : print.join('\n');
  return [{ color: COLOUR, description, footer: { text: footer } }];
}

const nextFile = (written: readonly Action[]): TextFile => ({
  name: 'next.txt',
  content: written.map((action) => `${oneLine(action.label)}: ${clean(lineOf(action))}\n`).join(''),
  says: 'More to ask from here',
});

/** Draws an answer. Never throws for any answer. */
export function render(shown: RenderedAnswer, setting: Setting): Drawn {
  const mine = bearing(setting);
  const keeper = new Keeper(setting, mine);
  const again = keeper.again();
  const unfolds = again !== undefined;
  const { asker, serial } = setting;
  const several =
    shown.menu && asker !== undefined
      ? menuRow(shown.menu, { asker, serial, keep: (label, meant) => keeper.keep(label, meant) })
      : undefined;
  const listed = actionButtons(
    shown.actions,
    mine,
    keeper,
    several ? MOST_ACTIONS - BUTTONS.inRow : MOST_ACTIONS,
  );
  const brief = unfolds ? shorten(shown) : whole(shown);
  const text = writeText(shown, setting, brief, { unfolds, footed: keeper.footer !== undefined });
  const folds = unfolds && (brief.more || text.more || shown.working.length > 0);
  const open = setting.open && folds;
  if (open) keeper.tell();
  const { footer } = keeper;
  const below =
    open || !unfolds
      ? writeBelow(shown, setting, text, { open, footer })
      : { embeds: [], texts: [], cut: false };
  const cut = text.cut || below.cut;
  return {
    content: [...text.parts, ...(cut ? [REST] : [])].join('\n'),
    embeds: footer === undefined ? below.embeds : footed(below.embeds, text.print, footer),
    components: rows(listed.buttons, [
      ...(folds ? [control(open ? 'fold' : 'working', shown, mine, again)] : []),
      ...(setting.sharable ? [control('everyone', shown, mine, setting.again && again)] : []),
    ]),
    menu: several ? [several] : menu(shown, mine),
    texts: [
      ...(cut ? [{ name: 'answer.txt', content: answerText(shown), says: 'The whole answer' }] : []),
      ...below.texts,
      ...(listed.written.length > 0 ? [nextFile(listed.written)] : []),
    ],
  };
}

/** The embed with all that an answer rests on, these lines of it, and these cautions with who says them. */
function restOf(
  shown: RenderedAnswer,
  lines: readonly string[],
  care: readonly string[],
): { embed: APIEmbed; cut: boolean } {
  const parts = (
    [
      ['Figures', shown.figures.map(({ label, text }) => `${escaped(oneLine(label))}: **${escaped(text)}**`)],
      ['Taken for granted', shown.assumptions.map((text) => escaped(oneLine(text)))],
      ['Take care', care.map((text) => escaped(oneLine(text)))],
    ] as const
  ).map(([name, all]) => ({ name, ...take(all, EMBED.fieldValue) }));
  const fields = parts.flatMap(({ name, taken }) => (says(taken) ? [{ name, value: taken.join('\n') }] : []));
  const embed: APIEmbed = { color: COLOUR, ...(fields.length === 0 ? {} : { fields }) };
  const { taken, left } = take(
    lines,
    Math.min(EMBED.description, EMBED.total - sizeOf(embed) - EMBED.footer),
  );
  if (says(taken)) embed.description = taken.join('\n');
  return { embed, cut: [left, ...parts.map((part) => part.left)].some((one) => one.length > 0) };
}

type Style = ButtonStyle.Primary | ButtonStyle.Secondary;
const button = (label: string, id: string, style: Style): APIButtonComponentWithCustomId => ({
  type: ComponentType.Button,
  style,
  label: fit(oneLine(label), BUTTONS.label) || '…',
  custom_id: id,
});

const CONTROLS: Partial<Record<Does, string>> = {
  fold: 'Fold it up',
  everyone: 'Show everyone',
};

function control(does: Does, { working }: RenderedAnswer, mine: Bearing, again: string | undefined) {
  const id = writeButton({ does, ...mine, payload: again ?? '' }) ?? does;
  const label = CONTROLS[does] ?? (working.length > 0 ? 'Show the working' : 'Show all of it');
  return button(label, id, ButtonStyle.Secondary);
}

/** What each button of a message bears: whose it is, and which drawing it belongs to. */
type Bearing = Pick<Button, 'owner' | 'serial'>;
const bearing = ({ asker, serial }: Setting): Bearing => ({
  owner: asker === undefined ? '' : coded(asker),
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

  constructor(
    private readonly setting: Setting,
    private readonly mine: Bearing,
  ) {}

  get footer(): string | undefined {
    return this.lines.length === 0 ? undefined : this.lines.join('\n');
  }

  /** Keeps what asks again; returns what its buttons carry of it, undefined where there is nothing or no room for it. */
  again(): string | undefined {
    const { again, kept } = this.setting;
    if (again === undefined) return kept;
    const payload = writeAsked(again);
    return writeButton({ does: 'working', ...this.mine, payload }) === undefined
      ? this.keep(ASKED_WITH, again)
      : payload;
  }

  /** Tells people what was asked. */
  tell(): void {
    const { again } = this.setting;
    const line = again && lineOf(again);
    if (line !== undefined && this.kept === 0 && line.length <= this.left) this.put(line);
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

function actionButtons(actions: readonly Action[], mine: Bearing, keeper: Keeper, most: number): Actions {
  const buttons: APIButtonComponentWithCustomId[] = [];
  const written: Action[] = [];
  const seen = new Set<string>();
  for (const action of actions) {
    const asked: Asked = { question: action.question, options: { ...action.options, ...action.lasting } };
    const does = action.asks === undefined ? 'ask' : 'form';
    const payload = writeAsked(asked);
    const meaning = `${does} ${payload}`;
    if (seen.has(meaning)) continue;
    seen.add(meaning);
    const carries = { does, ...mine, ...(action.forAnyone === true ? { owner: '' } : {}) } as const;
    const style = buttons.length === 0 ? ButtonStyle.Primary : ButtonStyle.Secondary;
    const id =
      buttons.length < most ? (writeButton({ ...carries, payload }) ?? kept(action.label)) : undefined;
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

/** `/stitches row: …` as a question that can be clicked; undefined for any other line, and while its id is not known. */
function clickable(line: string, { commandId }: Setting): string | undefined {
  const [, path = '', says = ''] = /^\/([a-z]+(?: [a-z]+)?): (.*)$/.exec(line) ?? [];
  const id = commandId?.(path.split(' ')[0] ?? '');
  return id !== undefined && /^\d+$/.test(id) ? `</${path}:${id}>: ${escaped(says)}`.trimEnd() : undefined;
}

/** The menu of what leads on from an answer; none where it has none, or its choices are too many or too long for one. */
function menu({ choose, actions }: RenderedAnswer, mine: Bearing): SelectRow[] {
  if (!choose || actions.length > 0 || choose.choices.length > SELECT.options) return [];
  const { question, option, says: asks, choices } = choose;
  const customId = writeButton({
    ...mine,
    does: 'missing',
    payload: `${option}=${writeAsked({ question, options: {} })}`,
  });
  if (customId === undefined || choices.some(({ value }) => value.length > SELECT.option)) return [];
  return [
    {
      type: ComponentType.ActionRow,
      components: [
        {
          type: ComponentType.StringSelect,
          custom_id: customId,
          placeholder: fit(oneLine(asks), SELECT.placeholder),
          options: choices.map(({ value, label }) => ({ value, label: fit(oneLine(label), SELECT.option) })),
        },
      ],
    },
  ];
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
