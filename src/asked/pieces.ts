/**
 * What a phrase holds that an option could take: amounts with their units, balls, gauges, hooks, stitches, shapes, counts and
 * what they count. A piece says only what stands there; which option it belongs to is decided for each question.
 */
import { lookUpHook } from '../core/lookup/hook.ts';
import { SIZE_NAMES } from '../core/lookup/size.ts';
import { SIZE_WORDS } from '../standards/sizes.ts';
import type { DayFound } from './days.ts';
import { sensesIn, type Said } from './lexicon.ts';
import { CM, SHAPE_WORDS, STITCH_WORDS, UNIT_OF_LENGTH, UNIT_OF_WEIGHT, YARN_NAMES } from './tables.ts';
import { numberText, type Token } from './tokens.ts';
import type { SenseName } from './words.ts';

export type PieceKind =
  | 'length'
  | 'weight'
  | 'ball'
  | 'gauge'
  | 'dims'
  | 'pair'
  | 'count'
  | 'counts'
  | 'row'
  | 'multiple'
  | 'percent'
  | 'money'
  | 'minutes'
  | 'hook'
  | 'stitch'
  | 'shape'
  | 'yarn'
  | 'for'
  | 'name'
  | 'day'
  | 'aside';

export interface Piece {
  readonly kind: PieceKind;
  /** As the readers of options take it. */
  readonly text: string;
  /** The second amount of a pair. */
  readonly more?: string;
  /** What it is made of, where it need not be taken as a whole. */
  readonly parts?: readonly Piece[];
  /** Tokens, the last one left out. */
  readonly from: number;
  readonly to: number;
  /** True where a number is in it that must find its place before anything is answered. */
  readonly must: boolean;
  /** What the number counts: `12 rows`, `80 squares`. */
  readonly nouns: readonly SenseName[];
  readonly value?: number;
  readonly unit?: string;
}

const phrases = (pairs: readonly (readonly [string, string])[]) => {
  const byFirst = new Map<string, { words: string[]; value: string }[]>();
  for (const [name, value] of pairs) {
    const words = name.split(' ');
    const first = words[0] ?? '';
    const listed = byFirst.get(first);
    if (listed) listed.push({ words, value });
    else byFirst.set(first, [{ words, value }]);
  }
  for (const listed of byFirst.values()) listed.sort((a, b) => b.words.length - a.words.length);
  return byFirst;
};
const SHAPES_BY_FIRST = phrases(SHAPE_WORDS);
const STITCHES_BY_FIRST = phrases(STITCH_WORDS);
const YARNS_BY_FIRST = phrases(YARN_NAMES);
const BED_WORDS = new Map<string, string>([
  ...SIZE_NAMES.map((name) => [name, name] as const),
  ...Object.keys(SIZE_WORDS).map((name) => [name, name] as const),
]);
/** Names of sizes that are everyday words too: taken only beside a bed or the word size. */
const ONLY_BESIDE = new Set(['single', 'double', 'full', 'child', 'teen', 'knee', 'children', 'teenager']);

/** What a number counts, if one of these follows it. */
const NOUNS = new Set<SenseName>([
  'motif',
  'block',
  'cluster',
  'ball',
  'stitch',
  'row',
  'round',
  'increase',
  'decrease',
  'colour',
  'place',
  'across',
  'down',
  'corner',
  'minute',
  'spare',
  'kind',
  'blanket',
  'per-week',
  'chain',
  'repeat',
]);

/** What numbers of a story count: years, children, days. */
const ASIDE =
  /^(years?|yrs?|yo|months?|weeks?|wks?|days?|kids?|children|grandchildren|grandkids|daughters?|sons?|girls?|boys?|cats?|dogs?|people|friends?|times|am|pm|oclock|o'clock|members|nieces?|nephews?|evenings?|nights?|questions?|sisters?|brothers?|patterns?|episodes?|tries|attempts?|ladies|women|of us|percent off|sizes?|rooms?|weekends?)$/;

const STOP = new Set(
  'of in for with at on to from over by per into and or but so is are was were has have i my we as that which than if using'.split(
    ' ',
  ),
);

/** Shapes that are not reckoned here, behind the name of one that is: “granny triangle”. */
const OTHER_SHAPES =
  /^(stripes?|triangles?|octagons?|pentagons?|hearts?|stars?|rectangles?|flowers?|ripples?)$/;

interface Found extends Piece {
  readonly mm?: true;
}

/** Known names, each with what it is a name of; the tokens of a name in lower case. */
export interface KnownName {
  readonly words: readonly string[];
  readonly name: string;
  readonly of: 'motif' | 'blanket' | 'kind' | 'group' | 'colour' | 'maker';
}

export interface Pieces {
  readonly pieces: readonly Piece[];
  readonly names: readonly { readonly known: KnownName; readonly from: number; readonly to: number }[];
  readonly said: readonly Said[];
}

/** The US size of a letter where only one has it: H is H-8. */
function hookOfLetter(letter: string): string {
  const found = lookUpHook(`US ${letter}`);
  return found.length === 1 ? (found[0]?.US ?? letter.toUpperCase()) : letter.toUpperCase();
}

const singular = (word: string) =>
  word.length > 3 && word.endsWith('s') && !word.endsWith('ss') ? word.slice(0, -1) : word;

/** Everything in the tokens that an option could take; `words` are the tokens' words as they are meant. */
export function piecesOf(
  tokens: readonly Token[],
  words: readonly string[],
  known: readonly KnownName[] = [],
  days: readonly DayFound[] = [],
): Pieces {
  const said = sensesIn(words);
  const taken = new Array<boolean>(tokens.length).fill(false);
  const pieces: Found[] = [];
  const names: { known: KnownName; from: number; to: number }[] = [];
  const word = (at: number) => words[at] ?? '';
  const put = (piece: Omit<Found, 'nouns'> & { nouns?: readonly SenseName[] }) => {
    for (let at = piece.from; at < piece.to; at++) taken[at] = true;
    pieces.push({ nouns: [], ...piece });
  };
  const sensesAt = (at: number) =>
    said.filter(({ from, to }) => from <= at && at < to).map(({ sense }) => sense);
  const near = (sense: SenseName, at: number, within: number) =>
    said.some((one) => one.sense === sense && Math.abs(one.from - at) <= within);

  // Names that are saved come first: a motif may be called “six inch square”.
  for (let at = 0; at < tokens.length; at++) {
    const found = known
      .filter(({ words: parts }) =>
        parts.every(
          (part, index) =>
            word(at + index) === part ||
            tokens[at + index]?.text === part ||
            (index === parts.length - 1 && singular(word(at + index)) === singular(part)),
        ),
      )
      .sort((a, b) => b.words.length - a.words.length)[0];
    if (!found) continue;
    for (const one of known)
      if (one.words.join(' ') === found.words.join(' '))
        names.push({ known: one, from: at, to: at + one.words.length });
    for (let inside = at; inside < at + found.words.length; inside++)
      if (tokens[inside]?.kind === 'number') taken[inside] = true;
    at += found.words.length - 1;
  }

  for (const { day, from, to } of days) {
    const first = tokens.findIndex((token) => token.to > from);
    const last = tokens.findLastIndex((token) => token.from < to);
    if (first >= 0 && last >= first) put({ kind: 'day', text: day, from: first, to: last + 1, must: true });
  }

  // Something in quotes is a name as it stands.
  for (let at = 0; at < tokens.length; at++) {
    if (tokens[at]?.text !== '"' || tokens[at - 1]?.to === tokens[at]?.from) continue;
    if (tokens[at + 1]?.from !== tokens[at]?.to) continue;
    const end = tokens.findIndex((one, index) => index > at + 1 && one.text === '"');
    if (end < 0 || end - at > 16) continue;
    put({ kind: 'name', text: '', from: at, to: end + 1, must: false });
    at = end;
  }

  const named = (table: ReturnType<typeof phrases>, at: number) => {
    for (const { words: parts, value } of table.get(word(at)) ?? []) {
      let next = at;
      const fits = parts.every((part) => {
        if (next > at && word(next) === '-') next++;
        return word(next++) === part;
      });
      if (fits) return { value, to: next };
    }
    return undefined;
  };

  const amountAt = (at: number): { unit: string; kind: 'length' | 'weight'; to: number } | undefined => {
    let next = at + 1;
    if (tokens[next]?.text === '-' && tokens[next + 1]?.kind === 'word') next++;
    const unitToken = tokens[next];
    if (!unitToken || taken[next]) return undefined;
    const text = unitToken.text;
    const length = UNIT_OF_LENGTH.get(text);
    const dot =
      tokens[next + 1]?.text === '.' &&
      tokens[next + 1]?.from === unitToken.to &&
      tokens[next + 2] !== undefined &&
      /^(in|ft|oz|yd|lb|g|cm|mm|m)$/.test(text)
        ? 2
        : 1;
    if (length !== undefined) {
      if (text === '"' || text === "'") {
        if (tokens[at]?.to !== unitToken.from) return undefined;
        return { unit: length, kind: 'length', to: next + 1 };
      }
      if (text === 'in' && unitToken.from !== tokens[at]?.to) {
        const after = tokens[next + 1];
        if (after === undefined) return { unit: length, kind: 'length', to: next + 1 };
        if (after.kind === 'number' && tokens[at - 1]?.text !== 'x') return undefined;
        if (
          /^(each|a|an|the|my|total|all|one|every|row|rows|round|rnd|this|that|our|it|them|your|his|her|both|between|uk|us|crochet|hdc|sc|dc|tr|dk|worsted|aran|half|double|single|treble|there|these|those|half-double|cotton|acrylic|time)$/.test(
            after.text,
          )
        )
          return undefined;
      }
      return { unit: length, kind: 'length', to: next + dot };
    }
    const weight = UNIT_OF_WEIGHT.get(text);
    return weight === undefined ? undefined : { unit: weight, kind: 'weight', to: next + dot };
  };

  // Numbers with their units, and what goes by a name.
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at];
    if (!token || taken[at]) continue;
    if (token.kind === 'number') {
      const value = token.value ?? NaN;
      const before = tokens[at - 1];
      const after = tokens[at + 1];
      if (before && /^[£$€]$/.test(before.text)) {
        put({ kind: 'money', text: token.text, value, from: at - 1, to: at + 1, must: true });
        continue;
      }
      if (after && /^(£|€|dollars?|euros?|quid|pence|bucks)$/.test(after.text)) {
        put({ kind: 'money', text: token.text, value, from: at, to: at + 2, must: true });
        continue;
      }
      if (after?.text === '%' || /^(percent|pct)$/.test(after?.text ?? '')) {
        put({ kind: 'percent', text: token.text, value, from: at, to: at + 2, must: true });
        continue;
      }
      if (after?.text === 'per' && tokens[at + 2]?.text === 'cent') {
        put({ kind: 'percent', text: token.text, value, from: at, to: at + 3, must: true });
        continue;
      }
      if (/^(wpi|wraps?)$/.test(after?.text ?? '')) {
        const to = tokens[at + 2]?.text === 'per' ? at + 4 : tokens[at + 2]?.text === 'to' ? at + 5 : at + 2;
        put({
          kind: 'yarn',
          text: `${token.text}wpi`,
          value,
          from: at,
          to: Math.min(to, tokens.length),
          must: true,
        });
        continue;
      }
      const dash = tokens[at + 1]?.text === '-' ? at + 2 : at + 1;
      if (tokens[dash]?.text === 'ply') {
        put({ kind: 'yarn', text: `${token.text} ply`, value, from: at, to: dash + 1, must: true });
        continue;
      }
      const amount = token.ordinal ? undefined : amountAt(at);
      if (amount) {
        // 4 ft 2 in, 5'6"
        const second = tokens[amount.to];
        const inches = amount.unit === 'ft' && second?.kind === 'number' ? amountAt(amount.to) : undefined;
        if (second && inches?.unit === 'in') {
          const total = value * 12 + (second.value ?? 0);
          put({
            kind: 'length',
            text: `${numberText(total)}in`,
            value: total,
            unit: 'in',
            from: at,
            to: inches.to,
            must: true,
          });
          continue;
        }
        put({
          kind: amount.kind,
          text: `${token.text}${amount.unit}`,
          value,
          unit: amount.unit,
          from: at,
          to: amount.to,
          must: true,
        });
        continue;
      }
      if (/^(minutes?|mins?)$/.test(tokens[dash]?.text ?? '')) {
        put({ kind: 'minutes', text: token.text, value, from: at, to: dash + 1, must: true });
        continue;
      }
      if (/^(hours?|hrs?)$/.test(tokens[dash]?.text ?? '')) {
        put({
          kind: 'minutes',
          text: numberText(value * 60),
          value: value * 60,
          from: at,
          to: dash + 1,
          must: true,
        });
        continue;
      }
      if (
        ASIDE.test(tokens[dash]?.text ?? '') &&
        !token.ordinal &&
        !/^(x|×|by|\*)$/.test(before?.text ?? '')
      ) {
        put({ kind: 'aside', text: token.text, value, from: at, to: dash + 1, must: false });
        continue;
      }
      continue;
    }
    if (token.kind !== 'word') continue;
    const shape = named(SHAPES_BY_FIRST, at);
    // A granny stripe is no granny square: what is not known here is no shape at all.
    if (shape?.value === 'clusters' && OTHER_SHAPES.test(word(shape.to))) {
      put({
        kind: 'aside',
        text: `${token.text} ${word(shape.to)}`,
        from: at,
        to: shape.to + 1,
        must: true,
      });
      at = shape.to;
      continue;
    }
    if (shape && !(word(shape.to) === '-' && word(shape.to + 1) === 'free')) {
      put({ kind: 'shape', text: shape.value, from: at, to: shape.to, must: false });
      // The words stay readable as what they name: squares, hexagons.
      for (let inside = at; inside < shape.to; inside++) taken[inside] = false;
      at = shape.to - 1;
      continue;
    }
    const stitch = named(STITCHES_BY_FIRST, at);
    if (stitch) {
      const before = word(at - 1);
      const after = word(stitch.to);
      const whose = /^(uk|british)$/.test(before)
        ? 'UK '
        : /^(us|american|usa)$/.test(before) && !/^(of|in)$/.test(word(at - 2))
          ? 'US '
          : /^(uk|british)$/.test(after) ||
              (after === '(' && /^(uk|british)$/.test(word(stitch.to + 1))) ||
              (after === 'in' && /^(uk|british)$/.test(word(stitch.to + 1)))
            ? 'UK '
            : '';
      put({
        kind: 'stitch',
        text: `${whose}${stitch.value}`,
        from: whose !== '' && /^(uk|british|us|american|usa)$/.test(before) ? at - 1 : at,
        to: stitch.to,
        must: false,
      });
      at = stitch.to - 1;
      continue;
    }
    const yarn = named(YARNS_BY_FIRST, at);
    if (yarn) {
      put({ kind: 'yarn', text: yarn.value, from: at, to: yarn.to, must: false });
      at = yarn.to - 1;
      continue;
    }
    const two = `${token.text} ${word(at + 1)}`;
    const three = `${two} ${word(at + 2)}`;
    const bed = BED_WORDS.has(three) ? 3 : BED_WORDS.has(two) ? 2 : BED_WORDS.has(token.text) ? 1 : 0;
    if (bed > 0) {
      const name = bed === 3 ? three : bed === 2 ? two : token.text;
      const beside =
        /^(bed|beds|size|sized|mattress|blanket|-)$/.test(word(at + bed)) || word(at - 1) === 'size';
      if (!ONLY_BESIDE.has(name) || beside) {
        const before = word(at - 1);
        const whose = /^(uk|british)$/.test(before) ? 'uk ' : /^(us|american)$/.test(before) ? 'us ' : '';
        put({
          kind: 'for',
          text: `${whose}${BED_WORDS.get(name) ?? name}`,
          from: at,
          to: at + bed,
          must: false,
        });
        for (let inside = at; inside < at + bed; inside++) taken[inside] = false;
        at += bed - 1;
        continue;
      }
    }
  }

  const inShape = (at: number) =>
    pieces.some(({ kind, from, to }) => kind === 'shape' && from <= at && at < to);

  // Hooks: letters with their numbers, and numbers beside the word.
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at];
    if (!token || taken[at] || inShape(at)) continue;
    if (token.kind === 'word' && /^[b-u]$/.test(token.text)) {
      const joint = /^[-/]$/.test(word(at + 1)) ? at + 2 : at + 1;
      const number = tokens[joint];
      const numbered =
        number?.kind === 'number' &&
        !taken[joint] &&
        (number.value ?? 99) <= 19 &&
        (joint === at + 2 || number.from - token.to <= 1);
      const beside =
        sensesAt(at + 1).includes('hook') ||
        sensesAt(at - 1).includes('hook') ||
        // “what hook is a K”
        (/^(a|an)$/.test(word(at - 1)) && word(at - 2) === 'is' && near('hook', at, 4)) ||
        (word(at - 1) === 'size' && (near('hook', at, 5) || token.text !== 'a')) ||
        (numbered && sensesAt(joint + 1).includes('hook')) ||
        (word(at + 1) === 'crochet' && sensesAt(at + 2).includes('hook'));
      if (
        numbered &&
        (token.text !== 'i' || joint === at + 2 || number.from === token.to) &&
        (beside || near('hook', at, 8) || (number.from - token.to <= 1 && Number.isFinite(number.value)))
      ) {
        put({
          kind: 'hook',
          text: `${token.text.toUpperCase()}-${number.value === 10.5 ? '10 1/2' : number.text}`,
          from: at,
          to: joint + 1,
          must: true,
        });
        at = joint;
        continue;
      }
      if (beside && (token.text !== 'i' || (word(at - 1) === 'size' && sensesAt(at + 1).includes('hook')))) {
        put({ kind: 'hook', text: hookOfLetter(token.text), from: at, to: at + 1, must: false });
        continue;
      }
    }
    if (token.kind === 'number' && !token.loose && !token.ordinal && (token.value ?? 99) <= 30) {
      let first = at;
      if (/^(size|number|no|nr|#)$/.test(word(first - 1))) first--;
      const owner = word(first - 1);
      const which =
        owner === 'steel' || word(first - 2) === 'steel'
          ? 'steel'
          : /^(uk|british|canadian)$/.test(owner)
            ? 'UK'
            : /^(us|american)$/.test(owner)
              ? 'US'
              : '';
      if (which !== '' && owner !== 'the') {
        const close = near('hook', at, 5) || which === 'steel';
        if (close) {
          put({ kind: 'hook', text: `${which} ${token.text}`, from: first - 1, to: at + 1, must: true });
          continue;
        }
      }
      if (
        word(at + 1) === 'hook' ||
        word(at + 1) === 'hooks' ||
        (word(at + 1) === 'crochet' && word(at + 2) === 'hook') ||
        (/^hooks?$/.test(word(first - 1)) && first < at) ||
        (word(at - 1) === 'hook' && !Number.isInteger(token.value))
      ) {
        const old = word(first - 1) === 'uk' || word(first - 2) === 'uk';
        put({
          kind: 'hook',
          text: `${old ? 'UK ' : ''}${token.text}`,
          value: token.value ?? NaN,
          from: first,
          to: at + 1,
          must: true,
        });
        continue;
      }
    }
  }

  // Categories of yarn: category 4, number 5 yarn, weight 4.
  for (let at = 0; at < tokens.length; at++) {
    const token = tokens[at];
    if (token?.kind !== 'number' || taken[at] || (token.value ?? 9) > 7 || !Number.isInteger(token.value))
      continue;
    const before = word(at - 1);
    const before2 = word(at - 2);
    const after = word(at + 1);
    const after2 = word(at + 2);
    const isYarn =
      before === 'category' ||
      (before === 'weight' && before2 !== 'the') ||
      (before2 === 'category' && /^(number|no|#)$/.test(before)) ||
      (before2 === 'weight' && before === 'category') ||
      (/^(size|number|no|#|weight|a)$/.test(before) && /^(yarn|wool|weight)$/.test(after)) ||
      (after === 'weight' && /^(yarn|wool)$/.test(after2)) ||
      (/^(yarn|wool)$/.test(before2) && /^(size|number|no|#)$/.test(before));
    if (isYarn)
      put({
        kind: 'yarn',
        text: token.text,
        value: token.value ?? NaN,
        from: /^(category|weight|number|no|size|#)$/.test(before) ? at - 1 : at,
        to: at + 1,
        must: true,
      });
  }

  const at1 = (index: number) => pieces.find(({ from }) => from === index);
  /** What a saved name is called counts like what it is the name of: 4 furrow, a trellis. */
  const nounsOfName = (at: number): SenseName[] | undefined => {
    const name = names.find(({ from, to }) => from <= at && at < to);
    if (!name) return undefined;
    return name.known.of === 'kind' || name.known.of === 'motif' ? ['motif'] : undefined;
  };
  /** `six-round grannies`: what is counted of each stands between the number and its noun. */
  const pastAdjective = (at: number): number => {
    if (tokens[at]?.kind !== 'number') return at;
    const next = word(at + 1) === '-' ? at + 2 : at + 1;
    return /^(row|round|rnd|block|st|stitch)$/.test(word(next)) ? next + 1 : at;
  };
  const nounsFrom = (start: number): SenseName[] => {
    let skipped = 0;
    start = pastAdjective(start);
    for (let at = start; at < tokens.length && skipped < 5; at++) {
      const piece = at1(at);
      if (piece && (piece.kind === 'length' || piece.kind === 'weight' || piece.kind === 'yarn')) {
        at = piece.to - 1;
        continue;
      }
      if (piece?.kind === 'stitch') return ['stitch'];
      const called = nounsOfName(at);
      if (called) return called;
      const text = word(at);
      if (tokens[at]?.kind === 'mark' && !/^[-x×@(]$/.test(text)) return [];
      if (tokens[at]?.kind === 'number') return [];
      const here = sensesAt(at).filter((sense) => NOUNS.has(sense));
      const shape = piece?.kind === 'shape' ? piece : undefined;
      if (here.length > 0) {
        const next = sensesAt(at + 1);
        // “14 increase rows” counts rows.
        if (
          here.every((sense) => sense === 'increase' || sense === 'decrease') &&
          next.some((sense) => sense === 'row' || sense === 'round')
        )
          continue;
        // “7 squares across” counts what lies side by side, not the squares of a blanket.
        const along = next.filter((sense) => sense === 'across' || sense === 'down');
        if (along.length > 0 && here.includes('motif')) return along;
        if (along.length > 0 && here.includes('block')) return [...here, ...along];
        // The last noun of a string is what is counted: 12 row square counts rows, 5 granny squares squares.
        return here;
      }
      if (shape) {
        at = shape.to - 1;
        continue;
      }
      if (text === 'of' && /^(them|these|those|'em|em)$/.test(word(at + 1))) return ['motif'];
      if (text === 'of' && /^(my|the|your|our)$/.test(word(at + 1))) {
        at++;
        continue;
      }
      if (STOP.has(text)) return [];
      skipped++;
    }
    return [];
  };

  // row 9, the 9th row; multiple of 8 plus 2; pairs; runs of numbers; counts.
  const isNumber = (at: number) => tokens[at]?.kind === 'number' && !taken[at] && !inShape(at);
  const of = (at: number, to: number, extra: Partial<Piece> = {}): Piece => ({
    kind: 'count',
    text: tokens[at]?.text ?? '',
    value: tokens[at]?.value ?? NaN,
    nouns: nounsFrom(to),
    from: at,
    to,
    must: tokens[at]?.loose !== true,
    ...extra,
  });
  /** The number in “, plus 2” that follows upon a multiple. */
  const plusBehind = (start: number): number | undefined => {
    const at = /^[,(]$/.test(word(start)) ? start + 1 : start;
    if (!/^(plus|\+)$/.test(word(at))) return undefined;
    const number = /^(a|an|another|extra|of)$/.test(word(at + 1)) ? at + 2 : at + 1;
    return isNumber(number) ? number : undefined;
  };
  for (let at = 0; at < tokens.length; at++) {
    if (!isNumber(at)) continue;
    const token = tokens[at];
    if (!token) continue;
    // rows 1 to 5: where counts begin, and how many there are
    if (
      /^(rows|rounds|rnds)$/.test(word(at - 1)) &&
      /^(to|-|–|through|till|until)$/.test(word(at + 1)) &&
      isNumber(at + 2) &&
      (token.value ?? NaN) < (tokens[at + 2]?.value ?? NaN)
    ) {
      put({
        kind: 'row',
        text: token.text,
        more: tokens[at + 2]?.text ?? '',
        value: token.value ?? NaN,
        from: at - 1,
        to: at + 3,
        must: true,
        nouns: [word(at - 1) === 'rows' ? 'row' : 'round'],
      });
      continue;
    }
    // row 9; row number 9; row #9
    const marked =
      /^(number|no|#|nr|to|is)$/.test(word(at - 1)) && /^(row|round|rnd)$/.test(word(at - 2))
        ? at - 2
        : at - 1;
    if (
      /^(rows?|rounds?|rnds?|rnd|rd|r)$/.test(word(marked)) &&
      (word(marked) !== 'r' || marked >= 0) &&
      !/^(x|×|by|and)$/.test(word(at + 1))
    ) {
      const counted =
        tokens[marked - 1]?.kind === 'number' &&
        marked === at - 1 &&
        taken[marked - 1] !== true &&
        !/^(in|of|on|to|from|for|at|is)$/.test(word(marked - 1));
      if (!counted) {
        put({
          kind: 'row',
          text: token.text,
          value: token.value ?? NaN,
          from: marked,
          to: at + 1,
          must: true,
          nouns: [/^r(ou)?n?d/.test(word(marked)) ? 'round' : 'row'],
        });
        continue;
      }
    }
    if (token.ordinal) {
      const senses = sensesAt(at + 1);
      if (senses.includes('row') || senses.includes('round'))
        put({
          kind: 'row',
          text: token.text,
          value: token.value ?? NaN,
          from: at,
          to: at + 2,
          must: true,
          nouns: [senses.includes('round') ? 'round' : 'row'],
        });
      else
        put({
          kind: 'aside',
          text: token.text,
          value: token.value ?? NaN,
          from: at,
          to: at + 1,
          must: false,
        });
      continue;
    }
    // multiple of 8 plus 2; 8 + 2
    const plusAt = /^(stitch|stitches|sts|st)$/.test(word(at + 1)) ? at + 2 : at + 1;
    const isPlus = /^(plus|\+|add|and)$/.test(word(plusAt));
    const multiple =
      [1, 2, 3, 4].some((back) => sensesAt(at - back).includes('repeat')) &&
      !pieces.some(({ kind }) => kind === 'multiple');
    if (
      (multiple && isPlus && isNumber(plusAt + 1)) ||
      (/^(plus|\+)$/.test(word(plusAt)) && isNumber(plusAt + 1))
    ) {
      put({
        kind: 'multiple',
        text: token.text,
        more: tokens[plusAt + 1]?.text ?? '0',
        from: at,
        to: plusAt + 2,
        must: true,
      });
      continue;
    }
    // “a repeat near 100 stitches” is a wish.
    if (
      multiple &&
      !isNumber(at + 1) &&
      !/^(near|about|around|roughly|approx|approximately|to)$/.test(word(at - 1))
    ) {
      const plus = plusBehind(plusAt);
      put({
        ...(plus === undefined ? {} : { more: tokens[plus]?.text ?? '0' }),
        kind: 'multiple',
        text: token.text,
        value: token.value ?? NaN,
        from: at,
        to: (plus ?? at) + 1,
        must: true,
        ...(plus === undefined ? { parts: [of(at, at + 1)] } : {}),
      });
      continue;
    }
    // 8 stitch repeat, an 8-stitch repeat
    const repeatAt = [at + 1, at + 2, at + 3].find((index) => sensesAt(index).includes('repeat'));
    if (
      repeatAt !== undefined &&
      /^(stitch|stitches|sts?|-)$/.test(word(at + 1)) &&
      !/^(plus|\+)$/.test(word(at - 1))
    ) {
      let said = repeatAt;
      while (sensesAt(said + 1).includes('repeat')) said++;
      const plus = plusBehind(said + 1);
      put({
        kind: 'multiple',
        text: token.text,
        value: token.value ?? NaN,
        ...(plus === undefined ? {} : { more: tokens[plus]?.text ?? '0' }),
        from: at,
        to: (plus ?? said) + 1,
        must: true,
      });
      continue;
    }
    // 8 x 11, 8 by 11, 8 squares by 11
    const by = sensesAt(at + 1).some((sense) => sense === 'motif' || sense === 'block') ? at + 2 : at + 1;
    if (/^(x|×|by|\*)$/.test(word(by)) && isNumber(by + 1) && !tokens[by + 1]?.ordinal) {
      const nouns = by === at + 1 ? nounsFrom(at + 3) : nounsFrom(at + 1);
      const pair: Found = {
        kind: 'pair',
        text: token.text,
        more: tokens[by + 1]?.text ?? '',
        from: at,
        to: by + 2,
        must: true,
        nouns,
      };
      // “a 12 row square at 13x10” says a gauge; “comes out at 50 x 60” a size.
      const atGauge =
        word(at - 1) === 'at' &&
        !/^(out|comes?|finish(es|ed)?|measures?)$/.test(word(at - 2)) &&
        (!/^(be|is|it)$/.test(word(at - 2)) ||
          said.some(({ sense }) => sense === 'row' || sense === 'gauge')) &&
        nouns.length === 0 &&
        amountAt(by + 1) === undefined &&
        (token.value ?? 99) <= 40 &&
        (tokens[by + 1]?.value ?? 99) <= 40;
      put(
        atGauge
          ? { ...pair, kind: 'gauge', text: `${pair.text}x${pair.more ?? ''}`, unit: 'at', parts: [pair] }
          : pair,
      );
      continue;
    }
    // 3 5 7 8; 3, 5, 7 and 8; 3 then 5 then 7
    let end = at;
    const members = [at];
    for (;;) {
      let next = end + 1;
      let steps = 0;
      while (
        /^(,|;|and|then|&|\/|-|–|to)$/.test(word(next)) &&
        steps < 3 &&
        (steps === 0 || !/^(to|-|–|\/)$/.test(word(next)))
      ) {
        next++;
        steps++;
      }
      const joints = words.slice(end + 1, next);
      if (joints.some((joint) => /^(to|-|–)$/.test(joint)) || (joints.includes('/') && members.length > 20))
        break;
      if (
        !isNumber(next) ||
        tokens[next]?.ordinal ||
        !Number.isInteger(tokens[next]?.value) ||
        !Number.isInteger(token.value)
      )
        break;
      // 8 x 11 begins something else.
      if (/^(x|×|by|\*)$/.test(word(next + 1)) && isNumber(next + 2)) break;
      if (taken[next]) break;
      members.push(next);
      end = next;
    }
    // Two numbers with nothing between, 150 four-round grannies, are no list.
    const bareTwo = members.length === 2 && end === at + 1;
    // “in rows 5 and 9” names two rows, and counts nothing.
    if (members.length === 2 && !bareTwo && /^(rows|rounds|rnds)$/.test(word(at - 1))) {
      put({
        kind: 'row',
        text: token.text,
        more: `and ${tokens[end]?.text ?? ''}`,
        from: at - 1,
        to: end + 1,
        must: true,
        nouns: [word(at - 1) === 'rows' ? 'row' : 'round'],
      });
      continue;
    }
    if (members.length > 1 && !bareTwo) {
      put({
        kind: 'counts',
        text: members.map((index) => tokens[index]?.text ?? '').join(' '),
        from: at,
        to: end + 1,
        must: true,
        nouns: nounsFrom(end + 1),
        parts: members.map((index) =>
          of(index, index + 1, index === end ? {} : { nouns: nounsFrom(end + 1) }),
        ),
      });
      continue;
    }
    // 3 to 6, 3-6: a range
    if (/^(to|-|–)$/.test(word(at + 1)) && isNumber(at + 2) && !tokens[at + 2]?.ordinal) {
      const nouns = nounsFrom(at + 3);
      put({
        kind: 'counts',
        text: `${token.text}-${tokens[at + 2]?.text ?? ''}`,
        from: at,
        to: at + 3,
        must: true,
        nouns,
        parts: [of(at, at + 1, { nouns }), of(at + 2, at + 3, { nouns })],
      });
      continue;
    }
    put(of(at, at + 1));
  }

  // “a trellis square”, “another furrow”: one of them, where an option asks for a number.
  for (const { known: one, from } of names) {
    if (
      one.of === 'kind' &&
      /^(a|an|another|one)$/.test(word(from - 1)) &&
      !pieces.some((piece) => piece.from < from && from <= piece.to)
    )
      put({ kind: 'count', text: '1', value: 1, from: from - 1, to: from, must: false, nouns: ['motif'] });
  }
  pieces.sort((a, b) => a.from - b.from);
  return { pieces: together(pieces, tokens, words, sensesAt), names, said };
}

const BALL_GLUE =
  /^(\/|per|to|for|in|=|is|are|and|of|balls?|skeins?|hanks?|weigh|weighs|weighing|each|a|an|the|at|with|has|have|that|which|it's|its|it|they|they're|come|comes|,|\(|\)|-|–|yarn|wool|on|ones|says|band|about|:|@|length|long|i|get|gives?|every|worth|long|put|up|being|holding|containing|contains|cakes?|from)$/;
const STRONG = /^(\/|per|to|=|for|in|of|\()$/;
const GAUGE_GLUE = /^(and|,|x|×|by|&|\+|\/|;|-)$/;
const OVER = /^(to|over|in|per|=|for|on|\/|every|is|across|equals|makes?|gives?|at|:|an|a|the|each|within)$/;

/** Puts together what belongs together: balls, gauges, sizes. */
function together(
  found: readonly Found[],
  tokens: readonly Token[],
  words: readonly string[],
  sensesAt: (at: number) => SenseName[],
): Piece[] {
  let pieces: Found[] = [...found];
  const between = (a: Piece, b: Piece) => words.slice(a.to, b.from);
  const merge = (made: Found) => {
    pieces = [...pieces.filter(({ from, to }) => to <= made.from || from >= made.to), made].sort(
      (a, b) => a.from - b.from,
    );
  };

  // Gauges first: they are close-knit.
  for (let index = 0; index < pieces.length; index++) {
    const stitches = pieces[index];
    if (!stitches) break;
    const countsStitches =
      stitches.kind === 'count' &&
      stitches.must &&
      (stitches.nouns.includes('stitch') || stitches.nouns.length === 0);
    if (!(
      countsStitches ||
      stitches.kind === 'pair' ||
      (stitches.kind === 'counts' && stitches.parts?.length === 2)
    ))
      continue;
    const afterNoun = (piece: Piece) => {
      let to = piece.to;
      while (
        to < words.length &&
        (words[to] === '-' ||
          sensesAt(to).some((sense) => sense === 'stitch' || sense === 'row') ||
          isStitchPiece(pieces, to)) &&
        tokens[to]?.kind !== 'number'
      )
        to++;
      return to;
    };
    let to = afterNoun(stitches);
    let first = stitches.text;
    let second: string | undefined;
    const members: Piece[] = [stitches];
    if (stitches.kind === 'pair') second = stitches.more;
    if (stitches.kind === 'counts') {
      if (stitches.text.includes('-')) continue;
      first = stitches.parts?.[0]?.text ?? '';
      second = stitches.parts?.[1]?.text;
    }
    if (second === undefined) {
      let next = to;
      while (GAUGE_GLUE.test(words[next] ?? '') && next - to < 2) next++;
      const rows = pieces.find(({ from, kind }) => from === next && kind === 'count');
      if (rows && rows !== stitches && rows.nouns.includes('row') && stitches.nouns.includes('stitch')) {
        second = rows.text;
        members.push(rows);
        to = afterNoun(rows);
      }
    }
    // over 4 in; to the inch
    let next = to;
    while (OVER.test(words[next] ?? '') && next - to < 3) next++;
    const over = pieces.find(({ from, kind }) => from === next && kind === 'length');
    const overShort =
      over?.unit !== undefined &&
      over.unit !== 'mm' &&
      over.value !== undefined &&
      over.value * (CM[over.unit] ?? 1) <= 31 &&
      over.unit !== 'm' &&
      over.unit !== 'yd';
    const bare = UNIT_OF_LENGTH.get(words[next] ?? '');
    const text = second === undefined ? first : `${first}x${second}`;
    const plausible = next > to || stitches.nouns.includes('stitch');
    if (
      over &&
      overShort &&
      plausible &&
      !stitches.nouns.includes('row') &&
      (next > to || members.length > 1)
    ) {
      merge({
        kind: 'gauge',
        text: `${text} over ${over.text}`,
        parts: [...members.flatMap((one) => (one.kind === 'counts' ? (one.parts ?? [one]) : [one])), over],
        from: stitches.from,
        to: over.to,
        must: true,
        nouns: [],
        unit: 'over',
      });
    } else if (
      bare !== undefined &&
      next > to &&
      (bare === 'in' || bare === 'cm') &&
      words[next] !== '"' &&
      words[next - 1] !== '=' &&
      words[next] !== 'in' &&
      stitches.kind !== 'pair' &&
      /^(per|an|the|a|each|every|\/|to)$/.test(words[next - 1] ?? '')
    ) {
      merge({
        kind: 'gauge',
        text: `${text} over 1${bare}`,
        parts: members,
        from: stitches.from,
        to: next + 1,
        must: true,
        nouns: [],
        unit: 'over',
      });
    } else if (members.length > 1) {
      // 10 cm is 14 stitches and 10 rows
      const before = pieces.filter(({ to: end }) => end <= stitches.from).at(-1);
      const glue = before ? between(before, stitches) : [];
      const led =
        before?.kind === 'length' &&
        before.value !== undefined &&
        before.value * (CM[before.unit ?? 'cm'] ?? 1) <= 31 &&
        glue.length <= 5 &&
        glue.every((one) =>
          /^(is|=|i|get|have|got|gives?|to|has|there|are|,|:|equals|square|my|measures|count|counted)$/.test(
            one,
          ),
        );
      if (led)
        merge({
          kind: 'gauge',
          text: `${text} over ${before.text}`,
          parts: [before, ...members],
          from: before.from,
          to,
          must: true,
          nouns: [],
          unit: 'over',
        });
      else merge({ kind: 'gauge', text, parts: members, from: stitches.from, to, must: true, nouns: [] });
    } else if (stitches.kind === 'count' && stitches.nouns.includes('stitch')) {
      const before = pieces.filter(({ to: end }) => end <= stitches.from).at(-1);
      const glue = before ? between(before, stitches) : [];
      if (
        before?.kind === 'length' &&
        before.value !== undefined &&
        before.value * (CM[before.unit ?? 'cm'] ?? 1) <= 31 &&
        glue.length >= 1 &&
        glue.length <= 3 &&
        glue.every((one) => /^(is|=|i|get|gives?|equals|has|:|,)$/.test(one))
      )
        merge({
          kind: 'gauge',
          text: `${text} over ${before.text}`,
          parts: [before, stitches],
          from: before.from,
          to,
          must: true,
          nouns: [],
          unit: 'over',
        });
    }
  }

  // Balls: a length of yarn and a weight, in either order, with nothing but small words between.
  const isLong = (piece: Piece) =>
    piece.kind === 'length' && (piece.unit === 'm' || piece.unit === 'yd') && (piece.value ?? 0) >= 10;
  const candidates: { a: Found; b: Found; cost: number }[] = [];
  for (let index = 0; index + 1 < pieces.length; index++) {
    const [a, b] = [pieces[index], pieces[index + 1]];
    if (!a || !b) continue;
    if (!((isLong(a) && b.kind === 'weight') || (a.kind === 'weight' && isLong(b)))) continue;
    const glue = between(a, b);
    if (glue.length > 8 || !glue.every((one) => BALL_GLUE.test(one))) continue;
    const strong = glue.some((one) => STRONG.test(one));
    candidates.push({ a, b, cost: glue.length - (strong ? 3 : 0) + (glue.includes(',') ? 2 : 0) });
  }
  for (const { a, b } of candidates.sort((x, y) => x.cost - y.cost)) {
    if (!pieces.includes(a) || !pieces.includes(b)) continue;
    const [length, weight] = a.kind === 'weight' ? [b, a] : [a, b];
    merge({
      kind: 'ball',
      text: `${length.text}/${weight.text}`,
      parts: [a, b],
      from: a.from,
      to: b.to,
      must: true,
      nouns: [],
    });
  }

  // Sizes: 4 by 5 foot, 4 ft x 5 ft, 50 wide and 60 long.
  for (let index = 0; index < pieces.length; index++) {
    const a = pieces[index];
    const b = pieces[index + 1];
    if (!a) break;
    // 60 inch square blanket, 90 cm square
    if (a.kind === 'length') {
      const next = words[a.to] === '-' ? a.to + 1 : a.to;
      if (
        words[next] === 'square' ||
        (words[next] === 'each' && words[next + 1] === 'way') ||
        words[next] === 'sq'
      ) {
        const blanketAfter = [1, 2].some((ahead) => sensesAt(next + ahead).includes('blanket'));
        const blanketBefore = lastSense(sensesAt, a.from, ['motif', 'blanket', 'block']) === 'blanket';
        const article = /^(a|one|each|per|every)$/.test(words[a.from - 1] ?? '') && !blanketAfter;
        // “72 inches square, 9 inch motifs”: the motif has a length of its own.
        const other = pieces.some(
          (piece) =>
            piece.kind === 'length' &&
            piece !== a &&
            sensesAt(piece.to).some((sense) => sense === 'motif' || sense === 'block'),
        );
        const alone = /^([,.;:–(-]|and|with|made|out|from|using)?$/.test(words[next + 1] ?? '');
        if (
          blanketAfter ||
          (other && alone && !article) ||
          (blanketBefore && !article) ||
          words[next] === 'each'
        ) {
          merge({
            kind: 'dims',
            text: a.text,
            more: a.text,
            unit: a.unit ?? 'cm',
            parts: [a],
            from: a.from,
            to: next + (words[next] === 'each' ? 2 : 1),
            must: true,
            nouns: [],
          });
        }
      }
    }
    if (pieces[index] !== a) continue;
    if (a.kind === 'length' && b?.kind === 'length' && (a.unit === 'mm') === (b.unit === 'mm')) {
      const glue = between(a, b).filter(
        (one) =>
          !/^(wide|long|tall|high|deep|in|width|length|across|down|about|,|and|by|x|×|\*|a|of|approx|roughly|around|the|-)$/.test(
            one,
          ),
      );
      const joined =
        between(a, b).some((one) => /^(x|×|by|\*)$/.test(one)) ||
        (between(a, b).some((one) => /^(wide|long|tall|high|across|width)$/.test(one)) &&
          between(a, b).some((one) => /^(and|by|,)$/.test(one)));
      if (glue.length === 0 && joined && between(a, b).length <= 5) {
        const turned =
          /^(long|tall|high|length|deep)$/.test(words[a.to] ?? '') &&
          /^(wide|across|width)$/.test(words[b.to] ?? '');
        merge({
          kind: 'dims',
          text: (turned ? b : a).text,
          more: (turned ? a : b).text,
          unit: a.unit ?? 'cm',
          parts: [a, b],
          from: a.from,
          to: b.to,
          must: true,
          nouns: [],
        });
      }
      continue;
    }
    // 4 by 5 foot: the unit stands once
    if (a.kind === 'count' && b?.kind === 'length' && b.unit !== undefined) {
      const glue = between(a, b);
      const joined =
        glue.length > 0 &&
        glue.length <= 3 &&
        glue.some((one) => /^(x|×|by|\*)$/.test(one)) &&
        glue.every((one) => /^(x|×|by|\*|wide|a|about)$/.test(one));
      if (joined) {
        merge({
          kind: 'dims',
          text: `${a.text}${b.unit}`,
          more: b.text,
          unit: b.unit,
          parts: [{ ...a, kind: 'length', text: `${a.text}${b.unit}`, unit: b.unit }, b],
          from: a.from,
          to: b.to,
          must: true,
          nouns: [],
        });
        continue;
      }
    }
    // 4ft by 5
    if (a.kind === 'length' && b?.kind === 'count' && a.unit !== undefined) {
      const glue = between(a, b);
      if (glue.length === 1 && /^(x|×|by|\*)$/.test(glue[0] ?? '') && b.nouns.length === 0) {
        merge({
          kind: 'dims',
          text: a.text,
          more: `${b.text}${a.unit}`,
          unit: a.unit,
          parts: [a, { ...b, kind: 'length', text: `${b.text}${a.unit}`, unit: a.unit }],
          from: a.from,
          to: b.to,
          must: true,
          nouns: [],
        });
        continue;
      }
    }
  }
  return pieces;
}

const isStitchPiece = (pieces: readonly Piece[], at: number) =>
  pieces.some(({ kind, from, to }) => kind === 'stitch' && from <= at && at < to);

function lastSense(
  sensesAt: (at: number) => SenseName[],
  before: number,
  among: readonly SenseName[],
): SenseName | undefined {
  for (let at = before - 1; at >= 0; at--) {
    const found = sensesAt(at).find((sense) => among.includes(sense));
    if (found !== undefined) return found;
  }
  return undefined;
}
