/** A phrase in pieces that can be looked at: words, numbers and marks, each with its place in what was typed. */

export interface Token {
  readonly kind: 'word' | 'number' | 'mark';
  /** Lower case; numbers as the readers of quantities take them. */
  readonly text: string;
  readonly value?: number;
  /** True where the number is written as a place in a row of them: `9th`, `ninth`. */
  readonly ordinal?: true;
  /** True for a number that stands for no amount where nobody asks for one: `a`, `one`, `another`. */
  readonly loose?: true;
  /** Characters of the phrase, the last one left out. */
  readonly from: number;
  readonly to: number;
}

const SIGNS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅛': '1/8',
};

const UNITS =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
/**
 * Own words, not a library’s: the one that was measured made “two and a half inches” of “2 and 1 half inches” and a cardinal
 * of “the second row”, and neither can be undone afterwards.
 */
const CARDINALS = new Map<string, number>([
  ...UNITS.map((word, value) => [word, value] as const),
  ...TENS.map((word, index) => [word, 20 + 10 * index] as const),
  ['fourty', 40],
  ['dozen', 12],
]);
const ORDINALS = new Map<string, number>(
  [
    'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth',
  ]
    .flatMap((words) => words.split(' '))
    .map((word, index) => [word, index + 1]),
);
ORDINALS.set('thirtieth', 30).set('fortieth', 40).set('fiftieth', 50);

const PARTS = new Map([
  ['half', 0.5],
  ['quarter', 0.25],
  ['quarters', 0.25],
  ['third', 1 / 3],
  ['thirds', 1 / 3],
]);

const PIECE =
  /\s+|(\d{1,3}(?:,\d{3})+(?![\d,])(?:\.\d+)?|\d+[.]\d+|(?<!\d,)\d+,\d{1,2}(?![\d,])|\.\d+|\d+)|([½¼¾⅓⅔⅛])|([\p{L}][\p{L}\p{M}]*(?:['’](?!\s)[\p{L}]+)?)|(.)/gsu;

/** A number as the readers take it: six decimals at most, no trailing zeros. */
export const numberText = (value: number) => String(Number(value.toFixed(6)));

interface Raw {
  readonly kind: Token['kind'];
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

function split(phrase: string): Raw[] {
  const raw: Raw[] = [];
  for (const match of phrase.matchAll(PIECE)) {
    const [whole, number, sign, word, mark] = match;
    const from = match.index;
    const to = from + whole.length;
    if (number !== undefined) raw.push({ kind: 'number', text: number, from, to });
    else if (sign !== undefined) raw.push({ kind: 'number', text: SIGNS[sign] ?? sign, from, to });
    else if (word !== undefined)
      raw.push({ kind: 'word', text: word.toLowerCase().replaceAll('’', "'"), from, to });
    else if (mark !== undefined)
      raw.push({
        kind: 'mark',
        text: mark === '″' || mark === '”' || mark === '“' ? '"' : /[’‘′`]/.test(mark) ? "'" : mark,
        from,
        to,
      });
  }
  return raw;
}

/** `1/2` of a sign or typed with its slash. */
function fraction(raw: readonly Raw[], at: number): { value: number; next: number } | undefined {
  const [top, slash, bottom] = [raw[at], raw[at + 1], raw[at + 2]];
  if (top?.kind !== 'number') return undefined;
  const sign = /^(\d)\/(\d)$/.exec(top.text);
  if (sign) return { value: Number(sign[1]) / Number(sign[2]), next: at + 1 };
  if (slash?.text !== '/' || bottom?.kind !== 'number') return undefined;
  // Written close together, a half is `1/2`; `100/170` and `8 / 6` are something else.
  if (top.to !== slash.from || slash.to !== bottom.from) return undefined;
  if (!/^\d$/.test(top.text) || !/^(2|3|4|8|16)$/.test(bottom.text)) return undefined;
  if (Number(top.text) >= Number(bottom.text)) return undefined;
  return { value: Number(top.text) / Number(bottom.text), next: at + 3 };
}

/** `two`, `twenty-five`, `a hundred and twenty`, `two dozen`; the tokens it takes. */
function cardinal(raw: readonly Raw[], at: number): { value: number; next: number } | undefined {
  const word = (index: number) => (raw[index]?.kind === 'word' ? raw[index].text : undefined);
  let next = at;
  let value: number | undefined;
  const small = (index: number): { value: number; next: number } | undefined => {
    const first = CARDINALS.get(word(index) ?? '');
    if (first === undefined || word(index) === 'dozen') return undefined;
    const after = index + 1;
    if (first >= 20) {
      const dash = raw[after]?.text === '-' ? after + 1 : after;
      const unit = CARDINALS.get(word(dash) ?? '');
      if (unit !== undefined && unit >= 1 && unit <= 9) return { value: first + unit, next: dash + 1 };
    }
    return { value: first, next: after };
  };
  const begun = small(next);
  const article = word(next) === 'a' || word(next) === 'one';
  if (begun) ({ value, next } = begun);
  else if (article && (word(next + 1) === 'hundred' || word(next + 1) === 'dozen')) {
    value = 1;
    next++;
  } else if (word(next) === 'dozen' || word(next) === 'hundred') value = 1;
  if (value === undefined) return undefined;
  if (word(next) === 'dozen') return { value: value * 12, next: next + 1 };
  if (word(next) === 'hundred') {
    value *= 100;
    next++;
    const and = word(next) === 'and' ? next + 1 : next;
    const rest = small(and);
    if (rest) {
      value += rest.value;
      ({ next } = rest);
    }
  }
  return { value, next };
}

/** The phrase as tokens: numbers of every spelling are read, words are in lower case. */
export function tokensOf(phrase: string): Token[] {
  const raw = split(phrase);
  const tokens: Token[] = [];
  const put = (at: number, next: number, value: number, more: Partial<Token> = {}) => {
    const first = raw[at];
    const last = raw[next - 1];
    if (first && last)
      tokens.push({
        kind: 'number',
        text: numberText(value),
        value,
        from: first.from,
        to: last.to,
        ...more,
      });
    return next;
  };
  let at = 0;
  while (at < raw.length) {
    const one = raw[at];
    if (!one) break;
    const half = fraction(raw, at);
    if (half) {
      at = put(at, half.next, half.value);
      continue;
    }
    if (one.kind === 'number') {
      const value = Number(one.text.replace(/,(?=\d{3}(\D|$))/g, '').replace(',', '.'));
      let next = at + 1;
      const ending = raw[next];
      if (ending?.kind === 'word' && ending.from === one.to && /^(st|nd|rd|th)$/.test(ending.text)) {
        const whole = Number.isInteger(value) && isOrdinal(value, ending.text);
        if (whole) {
          at = put(at, next + 1, value, { ordinal: true });
          continue;
        }
      }
      const unclear = /^\d{1,3},\d{3}$/.test(one.text);
      const dash = raw[next]?.text === '-' ? next + 1 : next;
      const part = fraction(raw, dash);
      if (part && Number.isInteger(value)) {
        at = put(at, part.next, value + part.value);
        continue;
      }
      const and = andHalf(raw, next);
      if (and) {
        at = put(at, and.next, value + and.value);
        continue;
      }
      const behind = halfBehindUnit(raw, next);
      if (behind) {
        put(at, next, value + behind.value);
        tokens.push(behind.unit);
        at = behind.next;
        continue;
      }
      if (raw[next]?.kind === 'word' && raw[next]?.text === 'dozen') {
        at = put(at, next + 1, value * 12);
        continue;
      }
      next = at + 1;
      tokens.push({
        kind: 'number',
        // What may be a thousand or a decimal stays as it was typed: the readers refuse it and say why.
        text: unclear ? one.text : numberText(value),
        value,
        from: one.from,
        to: one.to,
      });
      at = next;
      continue;
    }
    if (one.kind === 'word') {
      const several = severalParts(raw, at);
      if (several) {
        at = put(at, several.next, several.value);
        continue;
      }
      const spelt = cardinal(raw, at);
      if (spelt) {
        const and = andHalf(raw, spelt.next);
        if (and) {
          at = put(at, and.next, spelt.value + and.value);
          continue;
        }
        const behind = halfBehindUnit(raw, spelt.next);
        if (behind) {
          put(at, spelt.next, spelt.value + behind.value);
          tokens.push(behind.unit);
          at = behind.next;
          continue;
        }
        at = put(at, spelt.next, spelt.value, spelt.value === 1 && one.text === 'one' ? { loose: true } : {});
        continue;
      }
      const place = ORDINALS.get(one.text);
      if (place !== undefined && one.text !== 'second') {
        at = put(at, at + 1, place, { ordinal: true });
        continue;
      }
      if (one.text === 'second' && /^(row|round|rnd)$/.test(raw[at + 1]?.text ?? '')) {
        at = put(at, at + 1, 2, { ordinal: true });
        continue;
      }
      // A half that belongs to no number before it is a number of its own: nothing is answered as if it were not there.
      const stray = andHalf(raw, at);
      if (stray && !/^(double|treble|dc|tr)s?$/.test(raw[stray.next]?.text ?? '')) {
        at = put(at, stray.next, stray.value);
        continue;
      }
      // Three quarters of an ounce, a quarter inch: parts of what is measured.
      const parted = partOf(raw, at);
      if (parted) {
        at = put(at, parted.next, parted.value);
        continue;
      }
      // An inch, an inch and a half, a foot: one of it.
      if (/^an?$/.test(one.text) && UNIT_WORD.test(raw[at + 1]?.text ?? '')) {
        const behind = halfBehindUnit(raw, at + 1);
        put(at, at + 1, 1 + (behind?.value ?? 0));
        const unit = raw[at + 1];
        if (unit) tokens.push(unit);
        at = behind?.next ?? at + 2;
        continue;
      }
    }
    tokens.push(one);
    at++;
  }
  return tokens;
}

/** What halves are taken of. */
const MEASURED =
  /^(oz|ounces?|in|inch|inches|foot|feet|ft|pounds?|lbs?|kilos?|kg|met(?:re|er)s?|yards?|yds?)$/;

/** `half an`, `quarter of an`, `a third of a`, before something that is measured; without the measure itself. */
function partOf(raw: readonly Raw[], at: number): { value: number; next: number } | undefined {
  let next = raw[at]?.text === 'a' ? at + 1 : at;
  const word = raw[next]?.text ?? '';
  const part = /^(half|quarter|third)$/.test(word) ? PARTS.get(word) : undefined;
  if (part === undefined) return undefined;
  next++;
  if (raw[next]?.text === 'of') next++;
  if (/^an?$/.test(raw[next]?.text ?? '')) next++;
  return MEASURED.test(raw[next]?.text ?? '') ? { value: part, next } : undefined;
}

/** `three quarters of an`, `two thirds of a`, before something that is measured. */
function severalParts(raw: readonly Raw[], at: number): { value: number; next: number } | undefined {
  const times = CARDINALS.get(raw[at]?.text ?? '');
  const dash = raw[at + 1]?.text === '-' ? at + 2 : at + 1;
  const part = /^(quarters|thirds)$/.test(raw[dash]?.text ?? '')
    ? PARTS.get(raw[dash]?.text ?? '')
    : undefined;
  if (times === undefined || part === undefined || times * part >= 1) return undefined;
  let next = dash + 1;
  if (raw[next]?.text === 'of') next++;
  if (/^an?$/.test(raw[next]?.text ?? '')) next++;
  return MEASURED.test(raw[next]?.text ?? '') ? { value: times * part, next } : undefined;
}

/** Units in full, of which “an” is one. */
const UNIT_WORD = /^(inch|foot|yard|ounce|pound|met(?:re|er)|centimet(?:re|er))(?:es|s)?$|^feet$/;

/** `inches and a half`: the half belongs to the number before the unit. */
function halfBehindUnit(
  raw: readonly Raw[],
  at: number,
): { unit: Raw; value: number; next: number } | undefined {
  const unit = raw[at];
  if (!unit || !UNIT_WORD.test(unit.text)) return undefined;
  const and = andHalf(raw, at + 1);
  return and && { unit, ...and };
}

function isOrdinal(value: number, ending: string): boolean {
  const last = value % 10;
  const teen = value % 100 >= 11 && value % 100 <= 13;
  return ending === (teen || last === 0 || last > 3 ? 'th' : last === 1 ? 'st' : last === 2 ? 'nd' : 'rd');
}

/** `and a half`, `and three quarters` behind a number. */
function andHalf(raw: readonly Raw[], at: number): { value: number; next: number } | undefined {
  if (raw[at]?.text !== 'and') return undefined;
  const times = CARDINALS.get(raw[at + 1]?.text ?? '') ?? (raw[at + 1]?.text === 'a' ? 1 : undefined);
  const part = PARTS.get(raw[at + 2]?.text ?? '');
  return times === undefined || part === undefined ? undefined : { value: times * part, next: at + 3 };
}
