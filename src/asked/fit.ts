/** Which piece of a phrase belongs to which option of a question. */
import type { Asked, Mark } from '../chat/asked.ts';
import { metaOf, type OptionMeta } from '../chat/options.ts';
import type { Route } from '../chat/registry.ts';
import { ALL_TERM_WORDS, lookUpTerm } from '../core/lookup/term.ts';
import type { Heard } from './heard.ts';
import { COMMON } from './marks.ts';
import type { KnownName, Piece } from './pieces/piece.ts';
import { UNIT_OF_LENGTH } from './tables.ts';
import { tokensOf } from './tokens.ts';
import { SENSES, type SenseName } from './words.ts';

/** An option as a phrase can fill it. */
export interface Slot {
  readonly name: string;
  readonly takes: string;
  readonly mark: Mark;
  readonly nouns: readonly SenseName[];
  readonly near: readonly SenseName[];
  readonly not: readonly SenseName[];
  readonly meta: OptionMeta | undefined;
  readonly choices: readonly {
    readonly value: string;
    readonly senses: readonly SenseName[];
    readonly words: readonly string[];
  }[];
}

const names = (text = ''): SenseName[] =>
  text
    .split(' ')
    .filter((name) => name !== '')
    .map((name) => {
      if (!Object.hasOwn(SENSES, name)) throw new Error(`no sense is called ${name}`);
      return name as SenseName;
    });

const BY_KIND: Readonly<Record<string, string>> = {
  integer: 'count',
  number: 'count',
  length: 'length',
  weight: 'weight',
  gauge: 'gauge',
  ball: 'ball',
  stitch: 'stitch',
  stitches: 'stitches',
  choice: 'choice',
  yesno: 'choice',
  text: 'text',
};

function slotOf(name: string, mark: Mark, meta: OptionMeta | undefined): Slot {
  const merged: Mark = mark;
  return {
    name,
    takes: merged.takes ?? BY_KIND[meta?.kind ?? 'text'] ?? 'text',
    mark: merged,
    nouns: names(merged.nouns),
    near: names(merged.near),
    not: names(merged.not),
    meta,
    choices: Object.entries(merged.choices ?? {}).map(([value, said]) => ({
      value,
      senses: said.split(' ').filter((one) => Object.hasOwn(SENSES, one)) as SenseName[],
      words: said
        .split(' ')
        .filter((one) => one !== '' && !Object.hasOwn(SENSES, one))
        .map((one) => one.replaceAll('_', ' ')),
    })),
  };
}

/** What marks an option of a question: what is common to its name, and what the question says of it. */
export function markOf({ question }: Route, name: string): Mark | undefined {
  if (!Object.hasOwn(question.options, name)) return undefined;
  return { ...(Object.hasOwn(COMMON, name) ? COMMON[name] : {}), ...question.asked?.marks?.[name] };
}

/** The slots of a question, extras behind its options. */
export function slotsOf({ question }: Route, asked: Asked): Slot[] {
  const own = Object.entries(question.options).map(([name, schema]) => {
    const meta = metaOf(schema);
    const mark: Mark = { ...(Object.hasOwn(COMMON, name) ? COMMON[name] : {}), ...asked.marks?.[name] };
    return slotOf(name, mark, meta);
  });
  const extra = Object.entries(asked.extras ?? {}).map(([name, mark]) => slotOf(name, mark, undefined));
  return [...own, ...extra].filter(({ mark, meta }) => mark.never !== true && meta?.kind !== 'file');
}

export interface Fitted {
  readonly options: Record<string, string>;
  readonly extras: Record<string, string>;
  /** Pieces with numbers that found no place. */
  readonly unplaced: readonly Piece[];
  /** Names of saved things that found no place. */
  readonly unnamed: number;
  /** How well it fits altogether. */
  readonly score: number;
  /** What is said of how it was read. */
  readonly assumed: readonly string[];
}

const isAmount = (kind: string) => /^(length|weight)$/.test(kind);

/** How far a sense stands from a piece, in words; other sentences are far away. */
function distanceTo(heard: Heard, from: number, to: number, sense: { from: number; to: number }): number {
  const gap = sense.to <= from ? [sense.to, from] : sense.from >= to ? [to, sense.from] : undefined;
  if (!gap) return 0;
  let steps = gap[1]! - gap[0]!; // eslint-disable-line @typescript-eslint/no-non-null-assertion
  for (let at = gap[0] ?? 0; at < (gap[1] ?? 0); at++) {
    const token = heard.tokens[at];
    if (token?.kind === 'mark' && /^[,;:]$/.test(token.text)) steps += 2;
    if (/^(and|but|so|with)$/.test(token?.text ?? '')) steps += 1;
    if (heard.mood.sentence[at] !== heard.mood.sentence[at + 1]) steps += 4;
  }
  return steps;
}

/** Whether one of the words that lead to an option stands right before a piece. */
export function leads(heard: Heard, piece: Piece, lead: string | undefined): boolean {
  if (lead === undefined) return false;
  const forms = lead.split(' ').map((word) => ` ${word.replaceAll('_', ' ')}`);
  for (let at = piece.from - 1; at >= 0; at--) {
    const before = ` ${heard.words.slice(Math.max(0, at - 4), at + 1).join(' ')}`;
    if (forms.some((form) => before.endsWith(form))) return true;
    if (!/^(a|an|the|about|round|row|of)$/.test(heard.words[at] ?? '')) return false;
  }
  return false;
}

/** Whether it is asked how many there are of one of these; “how many do I need” is asked of anything. */
const isAsked = (heard: Heard, nouns: readonly SenseName[]) =>
  heard.goals.some(
    ({ by, senses }) =>
      by === 'how-many' && (senses.length === 0 || senses.some((sense) => nouns.includes(sense))),
  );

/** How strongly some senses stand near a piece: 2 beside it, fading with the words between. */
function nearness(heard: Heard, piece: Pick<Piece, 'from' | 'to'>, senses: readonly SenseName[]): number {
  let best = 0;
  for (const sense of senses)
    for (const one of heard.present.get(sense) ?? []) {
      // What follows close is nearer than what was said before.
      const behind = one.from >= piece.to;
      const far = distanceTo(heard, piece.from, piece.to, one) + (behind ? 0 : 0.5);
      best = Math.max(best, 2 / (1 + far / 2.5));
    }
  return best;
}

const wholeNumber = (piece: Piece) => piece.value === undefined || Number.isInteger(piece.value);

/** What of a piece a slot takes, as text, and how gladly; undefined where it is not of its kind. */
export function takes(slot: Slot, piece: Piece, heard: Heard): { text: string; glad: number } | undefined {
  const { takes: kind } = slot;
  if (kind === piece.kind && kind !== 'count' && kind !== 'row') return { text: piece.text, glad: 2 };
  switch (kind) {
    case 'length': {
      if (
        piece.kind === 'length' &&
        !(piece.unit === 'mm' && (piece.value ?? 99) <= 30 && heard.present.has('hook'))
      )
        return { text: piece.text, glad: 2 };
      if (piece.kind === 'count' && piece.nouns.length === 0 && !slot.mark.takes?.includes('!'))
        return { text: piece.text, glad: 0.2 };
      return undefined;
    }
    case 'weight':
      return undefined;
    case 'hook':
      if (piece.kind === 'length' && piece.unit === 'mm' && (piece.value ?? 99) <= 30)
        return { text: piece.text, glad: 2 };
      return undefined;
    case 'gauge':
      if (piece.kind === 'pair') return { text: `${piece.text}x${piece.more ?? ''}`, glad: 0.8 };
      if (piece.kind === 'counts' && piece.parts?.length === 2 && !piece.text.includes('-'))
        return { text: piece.text.replace(' ', 'x'), glad: 0.4 };
      if (piece.kind === 'count' && (piece.nouns.length === 0 || piece.nouns.includes('stitch')))
        return { text: piece.text, glad: 0.2 };
      return undefined;
    case 'count':
      if (piece.kind === 'count' && wholeNumber(piece)) return { text: piece.text, glad: 1 };
      return undefined;
    case 'row':
      // “rows 1 to 5” says which rows some counts are of, and no single row.
      if (piece.more !== undefined) return undefined;
      if (piece.kind === 'row') return { text: piece.text, glad: 2 };
      if (
        piece.kind === 'count' &&
        piece.nouns.some((noun) => noun === 'row' || noun === 'round') &&
        slot.nouns.length > 0
      )
        return { text: piece.text, glad: 1 };
      return undefined;
    case 'counts':
      if (piece.kind === 'counts' && !piece.text.includes('-')) return { text: piece.text, glad: 2 };
      if (
        piece.kind === 'count' &&
        wholeNumber(piece) &&
        piece.nouns.some((noun) => noun === 'stitch' || noun === 'cluster')
      )
        return { text: piece.text, glad: 0.6 };
      if (piece.kind === 'count' && wholeNumber(piece) && piece.nouns.length === 0)
        return { text: piece.text, glad: 0.2 };
      return undefined;
    case 'numbers':
      if (piece.kind === 'counts') return { text: piece.text, glad: 2 };
      if (piece.kind === 'count' && wholeNumber(piece)) return { text: piece.text, glad: 1 };
      return undefined;
    case 'money':
      if (piece.kind === 'count' && piece.nouns.length === 0) return { text: piece.text, glad: 0.5 };
      // “moss costs 4.25 a ball”
      if (piece.kind === 'count' && piece.nouns.includes('ball') && heard.present.has('cost'))
        return { text: piece.text, glad: 1 };
      return undefined;
    case 'yarn-or-ball':
      if (piece.kind === 'yarn' || piece.kind === 'ball') return { text: piece.text, glad: 2 };
      return undefined;
    case 'multiple':
      if (piece.kind === 'multiple') return { text: piece.text, glad: 2 };
      return undefined;
    default:
      return undefined;
  }
}

/** How far a phrase's units hold for a bare number beside them. */
function inUnitOf(text: string, heard: Heard, avoid: Piece): { text: string; unit?: string } {
  if (!/^[\d.]+$/.test(text)) return { text };
  const units = heard.pieces.flatMap((piece) =>
    piece === avoid
      ? []
      : [piece, ...(piece.parts ?? [])]
          .filter(({ kind }) => kind === 'length' || kind === 'dims')
          .flatMap(({ unit }) => (unit === undefined || unit === 'mm' ? [] : [unit])),
  );
  const words =
    heard.said.length > 0
      ? heard.words.flatMap((word) =>
          /^(inches|inch|cm|centimetres|centimeters|feet)$/.test(word)
            ? [UNIT_OF_LENGTH.get(word) ?? '']
            : [],
        )
      : [];
  const all = [...new Set([...units, ...words])];
  const system = new Set(all.map((unit) => (/^(in|ft|yd)$/.test(unit) ? 'in' : 'cm')));
  if (system.size !== 1) return { text };
  const value = Number(text);
  const [only] = system;
  const unit =
    only === 'in'
      ? value <= 12 && all.length === 1 && all[0] === 'ft'
        ? 'ft'
        : 'in'
      : value < 5 && all.includes('m')
        ? 'm'
        : 'cm';
  return { text: `${text}${unit}`, unit };
}

interface Offer {
  readonly piece: Piece;
  readonly slots: readonly string[];
  readonly texts: readonly string[];
  readonly score: number;
  readonly said?: string;
}

/** Senses that make a gauge of stitches and rows that name no length. */
const GAUGE_SAID: readonly SenseName[] = [
  'gauge',
  'swatch',
  'wanted',
  'getting',
  'pattern',
  'measure',
  'blocked',
];

/** Pieces as a question can use them: what is put together and has no place as a whole is taken apart. */
function usable(heard: Heard, slots: readonly Slot[], asked: Asked): Piece[] {
  const wanted = new Set(slots.map((slot) => slot.takes));
  const gaugeSaid = GAUGE_SAID.some((sense) => heard.present.has(sense));
  const whole = ({ kind, unit, parts, text }: Piece): boolean => {
    if (kind === 'dims') return asked.pairs?.dims !== undefined;
    if (kind === 'pair') return asked.pairs !== undefined || wanted.has('gauge');
    if (kind === 'gauge') return wanted.has('gauge') && (unit === 'over' || unit === 'at' || gaugeSaid);
    if (kind === 'ball') return wanted.has('ball') || wanted.has('yarn-or-ball');
    if (kind === 'counts')
      return (
        (asked.pairs?.counts !== undefined && parts?.length === 2 && !text.includes('-')) ||
        wanted.has('counts') ||
        wanted.has('numbers') ||
        (wanted.has('gauge') &&
          (heard.present.has('gauge') || heard.pieces.some(({ kind }) => kind === 'gauge')))
      );
    if (kind === 'multiple') return wanted.has('multiple');
    return true;
  };
  const open = (piece: Piece): Piece[] =>
    whole(piece) || piece.parts === undefined ? [piece] : piece.parts.flatMap(open);
  return heard.pieces.flatMap(open);
}

/**
 * Two gauges in one phrase, “my gauge is 14x10, the pattern wants 13 and 10”: each belongs to the words of its own clause
 * that lead up to it. Empty where those words do not tell the two apart.
 */
function gaugesByClause(
  heard: Heard,
  pieces: readonly Piece[],
  slots: readonly Slot[],
): (readonly [name: string, piece: Piece, text: string])[] {
  const [one, other, ...more] = slots.filter(({ takes: kind }) => kind === 'gauge');
  const typed = pieces.filter(({ kind, parts }) =>
    kind === 'counts' ? parts?.length === 2 : kind === 'gauge' || kind === 'pair',
  );
  // “15 stitches to 10 cm and I need 13”: the other one in stitches alone, where it is the only number left.
  const [only] = typed;
  const bare = pieces.filter(
    ({ kind, nouns, must }) =>
      kind === 'count' && must && nouns.every((noun) => noun === 'stitch' || noun === 'increase'),
  );
  const alike = ({ value = NaN }: Piece) => {
    const of = Number.parseFloat(only?.text ?? '');
    return value >= of / 2 && value <= of * 2;
  };
  const gauges =
    only && typed.length === 1 && bare.length === 1
      ? [only, ...bare.filter(alike)].sort((a, b) => a.from - b.from)
      : typed;
  const [first, second] = gauges;
  if (!one || !other || !first || !second || more.length > 0 || gauges.length > 2) return [];
  const slotOfClause = (from: number, piece: Piece): Slot | undefined => {
    const led = [one, other].filter(({ mark }) => piece.kind === 'count' && leads(heard, piece, mark.lead));
    if (led.length === 1) return led[0];
    const says = (slot: Slot) =>
      slot.near.some((sense) =>
        heard.present.get(sense)?.some((said) => said.to > from && said.to <= piece.from),
      );
    return says(one) === says(other) ? undefined : says(one) ? one : other;
  };
  const silent = (from: number, piece: Piece) =>
    ![...one.near, ...other.near].some((sense) =>
      heard.present.get(sense)?.some((said) => said.to > from && said.to <= piece.from),
    );
  let clause = second.from;
  while (clause > first.to && !/^(,|;|\.|and|but|while|whereas)$/.test(heard.words[clause - 1] ?? ''))
    clause--;
  const led = [slotOfClause(0, first), slotOfClause(clause, second)];
  // “18 over 4 inches, need 16”: what nothing leads up to is the other one.
  if (!led[0] && led[1] && silent(0, first)) led[0] = led[1] === one ? other : one;
  if (!led[0] || !led[1] || led[0] === led[1]) return [];
  // “16 and 20 over 4 inches, I get 18 and 22”: over the same length, where it is said of one.
  const over = [first, second].flatMap(({ text }) => / over .+$/.exec(text)?.[0] ?? [])[0] ?? '';
  return [first, second].flatMap((piece, index) => {
    const slot = led[index];
    const taken = slot && takes(slot, piece, heard);
    return taken
      ? [[slot.name, piece, taken.text.includes(' over ') ? taken.text : `${taken.text}${over}`] as const]
      : [];
  });
}

/** What a phrase says of a question's options. */
export function fit(heard: Heard, route: Route, asked: Asked, slots: readonly Slot[]): Fitted {
  const pieces = usable(heard, slots, asked);
  const options: Record<string, string> = {};
  const extras: Record<string, string> = {};
  const assumed: string[] = [];
  let score = 0;
  const used = new Set<Piece>();
  const put = (name: string, text: string) => {
    if (asked.extras !== undefined && Object.hasOwn(asked.extras, name)) extras[name] = text;
    else options[name] = text;
  };
  const filled = (name: string) => Object.hasOwn(options, name) || Object.hasOwn(extras, name);

  // What is read off the phrase as it stands.
  for (const slot of slots) {
    if (slot.mark.none?.test(heard.phrase)) {
      put(slot.name, '0');
      continue;
    }
    const match = slot.mark.capture?.exec(heard.phrase);
    const [, ...groups]: (string | undefined)[] = match ?? [];
    const value = groups.find((group) => group !== undefined)?.trim();
    if (match && value !== undefined && value !== '') {
      put(slot.name, value.replace(/^["“”'‘’]|["“”'‘’]$/g, ''));
      score += 1;
      const from = match.index;
      const to = from + match[0].length;
      for (const piece of heard.pieces)
        if ((heard.tokens[piece.from]?.from ?? 0) >= from && (heard.tokens[piece.to - 1]?.to ?? 0) <= to)
          used.add(piece);
    }
  }

  // Names of what is saved.
  let unnamed = 0;
  const byName = new Map<string, string[]>();
  const seen: { from: number; to: number }[] = [];
  for (const { known, from, to } of heard.names) {
    const slot = slots.find(
      ({ takes: kind, name }) => kind === `saved-${known.of}` && !(filled(name) && !byName.has(name)),
    );
    if (slot) {
      const listed = byName.get(slot.name) ?? [];
      if (!listed.includes(known.name)) listed.push(known.name);
      byName.set(slot.name, listed);
      seen.push({ from, to });
    }
  }
  for (const { from, to } of heard.names) if (!seen.some((one) => one.from < to && from < one.to)) unnamed++;
  for (const [name, listed] of byName) {
    const slot = slots.find((one) => one.name === name);
    if (slot?.mark.with === 'several' || listed.length === 1) {
      put(name, listed.join(', '));
      score += 1;
    } else unnamed += listed.length;
  }

  // Choices by the words that mean them.
  for (const slot of slots) {
    if (filled(slot.name) || (slot.takes !== 'choice' && slot.choices.length === 0)) continue;
    const needed = slot.mark.with === undefined || slot.mark.with === 'first' ? [] : names(slot.mark.with);
    if (needed.length > 0 && !needed.some((sense) => heard.present.has(sense))) continue;
    const lower = ` ${heard.words.join(' ')} `;
    const explicit = slot.choices.filter(
      ({ senses, words }) =>
        senses.some((sense) => heard.present.has(sense)) || words.some((word) => lower.includes(` ${word} `)),
    );
    const literal =
      slot.choices.length > 0
        ? []
        : (slot.meta?.choices ?? []).filter(({ value, label }) =>
            [value, value.replaceAll('-', ' '), label ?? value].some((form) =>
              lower.includes(` ${form.toLowerCase()} `),
            ),
          );
    const found = explicit.length > 0 ? explicit : literal;
    const [first] = found;
    if (first && (found.length === 1 || slot.mark.with === 'first')) {
      put(slot.name, first.value);
      score += 1;
    }
  }

  for (const [name, piece, text] of gaugesByClause(heard, pieces, slots)) {
    if (filled(name) || used.has(piece)) continue;
    put(name, text);
    used.add(piece);
    score += 1.6;
  }

  // Amounts and counts.
  const offers: Offer[] = [];
  // Two shapes by their names: which one is meant is asked.
  const manyShapes = new Set(pieces.filter(({ kind }) => kind === 'shape').map(({ text }) => text)).size > 1;
  const sized = asked.pairs?.other === undefined && pieces.some(({ kind }) => kind === 'dims');
  for (const piece of pieces) {
    if (piece.kind === 'shape' && manyShapes) continue;
    if (used.has(piece) || piece.kind === 'aside' || piece.kind === 'name') continue;
    for (const slot of slots) {
      if (filled(slot.name)) continue;
      if (slot.takes === 'stitches') continue;
      // Where a whole size is said, no single length is one half of it.
      if (sized && piece.kind !== 'dims' && asked.pairs?.dims?.includes(slot.name)) continue;
      const taken = takes(slot, piece, heard);
      if (!taken) continue;
      const counted = piece.nouns.some((noun) => slot.nouns.includes(noun));
      const led = leads(heard, piece, slot.mark.lead);
      if (!piece.must && piece.kind === 'count' && slot.mark.loose !== true) continue;
      if (slot.mark.not_words?.split(' ').includes(piece.text)) continue;
      if (piece.kind === 'count' || (piece.kind === 'row' && slot.takes !== 'row')) {
        if (slot.nouns.length > 0 && piece.nouns.length > 0 && !counted && !led) continue;
      }
      const close = nearness(heard, piece, slot.near) + (led ? 3 : 0);
      const against = nearness(heard, piece, slot.not);
      if (slot.mark.led === true && !led) continue;
      if (slot.mark.unasked === true && piece.kind === 'count' && isAsked(heard, slot.nouns)) continue;
      if (slot.mark.only === true && !counted && close < 0.45) continue;
      if (taken.glad < 0.5 && !counted && close < 0.6) continue;
      let { text } = taken;
      let said: string | undefined;
      if (slot.takes === 'length' && piece.kind === 'count') {
        const unit = inUnitOf(text, heard, piece);
        if (unit.unit !== undefined)
          said = `${text} is read in ${UNIT_WORD[unit.unit] ?? unit.unit}, like the lengths beside it.`;
        ({ text } = unit);
      }
      offers.push({
        piece,
        slots: [slot.name],
        texts: [text],
        score: taken.glad + (counted ? 2 : 0) + close - against * 0.8,
        ...(said === undefined ? {} : { said }),
      });
    }
    const pairs = asked.pairs;
    if (pairs?.dims && (piece.kind === 'dims' || piece.kind === 'pair')) {
      const bare = piece.kind === 'pair';
      const isGrid = piece.nouns.some(
        (noun) => noun === 'motif' || noun === 'block' || noun === 'across' || noun === 'ball',
      );
      const first: { text: string; unit?: string } = bare
        ? inUnitOf(piece.text, heard, piece)
        : { text: piece.text };
      const second = bare ? inUnitOf(piece.more ?? '', heard, piece) : { text: piece.more ?? '' };
      const near = nearness(heard, piece, ['blanket', 'across', 'down', 'size', 'how-big', 'piece']);
      const small = bare && Number(piece.text) <= 20 && first.text === piece.text;
      // “14.2 cm a square, 8 x 11”: nothing is made of pieces that are longer than itself.
      const tooSmall =
        bare &&
        first.unit !== undefined &&
        heard.pieces.some(
          (other) =>
            other.kind === 'length' && other.unit === first.unit && (other.value ?? 0) >= Number(piece.text),
        );
      if (!isGrid && !tooSmall && !(small && pairs.grid))
        offers.push({
          piece,
          slots: pairs.dims,
          texts: [first.text, second.text],
          score:
            (bare ? 1 + near * 0.6 : 2.5) +
            (pairs.other ? near : 0) +
            (piece.nouns.includes('blanket') ? 1.5 : 0),
          ...(bare && first.unit !== undefined
            ? {
                said: `${piece.text} by ${piece.more ?? ''} is read in ${UNIT_WORD[first.unit] ?? first.unit}, like the lengths beside it.`,
              }
            : {}),
        });
    }
    if (pairs?.other && (piece.kind === 'dims' || piece.kind === 'pair')) {
      const [first, second, sense] = pairs.other;
      const near = nearness(heard, piece, names(sense));
      const bare = piece.kind === 'pair';
      offers.push({
        piece,
        slots: [first, second],
        texts: [
          bare ? inUnitOf(piece.text, heard, piece).text : piece.text,
          bare ? inUnitOf(piece.more ?? '', heard, piece).text : (piece.more ?? ''),
        ],
        score: 1 + near * 2,
      });
    }
    if (pairs?.counts && piece.kind === 'counts') {
      const [first, second] = piece.parts ?? [];
      if (first && second)
        offers.push({ piece, slots: pairs.counts, texts: [first.text, second.text], score: 2 });
    }
    if (pairs?.grid && piece.kind === 'pair') {
      const isGrid = piece.nouns.some((noun) => noun === 'motif' || noun === 'block' || noun === 'across');
      offers.push({
        piece,
        slots: pairs.grid,
        texts: [piece.text, piece.more ?? ''],
        score: (isGrid ? 3 : 1.4) + nearness(heard, piece, ['motif', 'layout', 'across']) * 0.5,
      });
    }
    if (piece.kind === 'multiple' && slots.some(({ name }) => name === 'multiple')) {
      offers.push({
        piece,
        slots: piece.more === undefined ? ['multiple'] : ['multiple', 'plus'],
        texts: piece.more === undefined ? [piece.text] : [piece.text, piece.more],
        score: 4,
      });
    }
  }
  // Gladly taken first; among equals what stands first belongs to the option that is declared first.
  const order = new Map(slots.map(({ name }, index) => [name, index]));
  offers.sort(
    (a, b) =>
      b.score - a.score ||
      a.piece.from - b.piece.from ||
      (order.get(a.slots[0] ?? '') ?? 0) - (order.get(b.slots[0] ?? '') ?? 0),
  );
  for (const offer of offers) {
    if (used.has(offer.piece) || offer.slots.some(filled)) continue;
    if (offer.score < 0.6) continue;
    offer.slots.forEach((name, index) => put(name, offer.texts[index] ?? ''));
    used.add(offer.piece);
    if (offer.said !== undefined) assumed.push(offer.said);
    score += Math.min(2, 0.6 + offer.score / 4);
  }

  // A swatch of one measure, “a 4 inch swatch”, is a square one.
  if (asked.pairs?.other) {
    const [first, second, sense] = asked.pairs.other;
    const named = names(sense);
    const one = pieces.find(
      (piece) => used.has(piece) && piece.kind === 'length' && piece.text === options[first],
    );
    const next = one && (heard.words[one.to] === '-' ? one.to + 1 : one.to);
    const squared = next !== undefined && heard.words[next] === 'square' ? next + 1 : next;
    if (
      !filled(second) &&
      one &&
      named.some((name) =>
        heard.present
          .get(name)
          ?.some(
            ({ from, to }) => from === squared || (squared !== next && to <= one.from && one.from - to <= 3),
          ),
      )
    ) {
      put(second, one.text);
      assumed.push(`A ${sense} of ${one.text} is read as square, ${one.text} each way.`);
      score += 0.6;
    }
  }

  // Stitches round by round.
  const rounds = slots.find(({ takes: kind }) => kind === 'stitches');
  if (rounds && !filled(rounds.name)) {
    const listed = pieces.filter(({ kind }) => kind === 'stitch');
    const text: string[] = [];
    const ofRounds = pieces.filter(({ kind, nouns }) => kind === 'count' && nouns.includes('round'));
    // “3 rounds, sc hdc sc”: the number says how many are listed, not how often the first is worked.
    const [total] =
      listed.length > 1 && ofRounds.length === 1 && ofRounds[0]?.value === listed.length ? ofRounds : [];
    for (const piece of listed) {
      const before = pieces.filter(({ to }) => to <= piece.from).at(-1);
      const times =
        before?.kind === 'count' &&
        before !== total &&
        before.nouns.includes('round') &&
        piece.from - before.to <= 3 &&
        (before.value ?? 99) <= 12
          ? (before.value ?? 1)
          : 1;
      if (times > 1 && before) used.add(before);
      if (before?.kind === 'count' && before.nouns.includes('round')) used.add(before);
      for (let time = 0; time < times; time++) text.push(piece.text);
    }
    if (text.length > 0) {
      const uk = text.every((one) => one.startsWith('UK '));
      put(rounds.name, uk ? `UK ${text.map((one) => one.slice(3)).join(' ')}` : text.join(' '));
      score += 1.5;
      for (const piece of listed) used.add(piece);
    }
  }

  // A term that is asked after.
  const term = slots.find(({ takes: kind }) => kind === 'term');
  if (term && !filled(term.name)) {
    const word = termIn(heard);
    if (word !== undefined) {
      put(term.name, word.text);
      score += 2;
      for (const piece of pieces) if (piece.from >= word.from && piece.to <= word.to) used.add(piece);
    }
  }

  const texts = new Set(
    [...Object.values(options), ...Object.values(extras)].flatMap((value) => [
      value,
      ...value.split(/[ /x]/),
    ]),
  );
  // “the last three rows had 7, 9 and 10”: how many counts there are is no amount of its own.
  const listed = pieces.find((piece) => piece.kind === 'counts' && used.has(piece));
  if (listed)
    for (const piece of pieces)
      if (
        piece.kind === 'count' &&
        piece.value === listed.parts?.length &&
        piece.nouns.some((noun) => noun === 'row' || noun === 'round')
      )
        used.add(piece);
  // “rows 3 to 5 came out 7 8 11”: where the counts begin, if there are as many.
  const range = pieces.find((piece) => piece.kind === 'row' && piece.more !== undefined);
  if (range && listed && Number(range.more) - Number(range.text) + 1 === listed.parts?.length) {
    const begins = slots.find(({ name }) => name === 'from_row');
    if (begins && !filled(begins.name)) {
      if (range.text !== '1') put(begins.name, range.text);
      used.add(range);
      score += 0.6;
    }
  }
  // “is DK the same as 8 ply”: what it is held against is seen in the answer to the first.
  if (/\b(same( \w+)? as|equal to|equivalent to)\b/i.test(heard.phrase)) {
    const yarns = pieces.filter(({ kind }) => kind === 'yarn');
    if (yarns.length === 2 && yarns.some((piece) => used.has(piece))) for (const one of yarns) used.add(one);
  }
  const unplaced = pieces.filter(
    (piece) => piece.must && !used.has(piece) && !texts.has(piece.text) && piece.kind !== 'name',
  );
  // Words that go by more than one name are no loss: a shape that a question has no use for.
  const unheeded = pieces.filter(
    (piece) =>
      !piece.must &&
      !used.has(piece) &&
      (piece.kind === 'stitch' || piece.kind === 'yarn' || piece.kind === 'hook'),
  ).length;
  return { options, extras, unplaced, unnamed, score: score - unheeded * 0.4, assumed };
}

const UNIT_WORD: Readonly<Record<string, string>> = {
  in: 'inches',
  ft: 'feet',
  cm: 'centimetres',
  m: 'metres',
};

/** Words that are terms too, but are said of everything. */
const SAID_OF_ALL = new Set([
  'st',
  'sts',
  'stitch',
  'round',
  'row',
  'rnd',
  'in',
  'to',
  'and',
  'work',
  'each',
  'square',
  'block',
  'color',
  'colour',
  'pattern',
  'hook',
  'yarn',
  'us',
  'uk',
  'same',
  'next',
  'rep',
  'repeat',
  'beginning',
  'right side',
  'wrong side',
  'inch',
  'inches',
  'm',
  'cm',
  'mm',
  'g',
  'oz',
  'yard',
  'together',
  'increase',
  'decrease',
  'skip',
  'rounds',
  'gauge',
  'border',
]);

/** The word of the trade that a phrase asks after: the longest that stands in the table of terms. */
export function termIn(heard: Heard): Term | undefined {
  // Every question about words asks for it.
  let found = terms.get(heard);
  if (!found) {
    found = { term: longestTerm(heard) };
    terms.set(heard, found);
  }
  return found.term;
}

interface Term {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

const terms = new WeakMap<Heard, { readonly term: Term | undefined }>();

/** What a term may begin with: its first word, whose it is, or what stitches at a post and foundation stitches begin with. */
const BEGINS: ReadonlySet<string> = new Set([
  ...ALL_TERM_WORDS.map((name) => tokensOf(name)[0]?.text ?? ''),
  'us',
  'uk',
]);
const JOINED = /^(fp|bp|f)(sc|hdc|dc|htr|tr|dtr)?$/;

function longestTerm(heard: Heard): Term | undefined {
  const { tokens } = heard;
  for (let length = 4; length >= 1; length--)
    for (let at = 0; at + length <= tokens.length; at++) {
      const first = tokens[at]?.text ?? '';
      if (!BEGINS.has(first) && !JOINED.test(first)) continue;
      const parts = tokens.slice(at, at + length);
      if (parts.some(({ kind }, index) => kind === 'mark' && (index === 0 || index === length - 1))) continue;
      const text = heard.phrase
        .slice(parts[0]?.from ?? 0, parts.at(-1)?.to ?? 0)
        .toLowerCase()
        .replace(/\s+/g, ' ');
      if (SAID_OF_ALL.has(text) || text.length < 2) continue;
      // “ch 31, turn” is a line of a pattern, unless somebody asks what it means.
      if (/^ch\b/.test(text) && /\d/.test(text) && !heard.present.has('mean') && parts.length < tokens.length)
        continue;
      if (lookUpTerm(text).length > 0) return { text, from: at, to: at + length };
    }
  return undefined;
}

export const isSaved = (known: KnownName, of: KnownName['of']) => known.of === of;
export { isAmount };
