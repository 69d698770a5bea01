/** Numbers of every spelling: in digits, in words, in halves and dozens. */

/** A piece of what was typed: a word in lower case, a number in digits, a mark. */
export interface Raw {
  readonly kind: 'word' | 'number' | 'mark';
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

/** A number where it stands. */
export interface Spelt {
  readonly value: number;
  /** The first piece behind it. */
  readonly next: number;
  /** How it is written, where it is not as the value is. */
  readonly text?: string;
  /** True where the number is written as a place in a row of them: `9th`, `ninth`. */
  readonly ordinal?: true;
  /** True for a number that stands for no amount where nobody asks for one: `one`. */
  readonly loose?: true;
  /** What of the pieces stays as it is, behind the number: the unit in “an inch and a half”. */
  readonly unit?: Raw;
}

type Reads = (raw: readonly Raw[], at: number) => Spelt | undefined;

/** One way of spelling numbers. */
interface Spelling {
  /** As it is typed, and the number that it is. */
  readonly example: readonly [typed: string, value: number];
  readonly read: Reads;
}

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

const wordAt = (raw: readonly Raw[], at: number) => (raw[at]?.kind === 'word' ? raw[at].text : undefined);

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

/** `and a half`, `and three quarters` behind a number. */
function andHalf(raw: readonly Raw[], at: number): { value: number; next: number } | undefined {
  if (raw[at]?.text !== 'and') return undefined;
  const times = CARDINALS.get(raw[at + 1]?.text ?? '') ?? (raw[at + 1]?.text === 'a' ? 1 : undefined);
  const part = PARTS.get(raw[at + 2]?.text ?? '');
  return times === undefined || part === undefined ? undefined : { value: times * part, next: at + 3 };
}

/** What may stand behind a whole number in digits or words: “and a half”, also behind its unit. */
function withHalf(raw: readonly Raw[], whole: Spelt): Spelt | undefined {
  const and = andHalf(raw, whole.next);
  if (and) return { value: whole.value + and.value, next: and.next };
  const behind = halfBehindUnit(raw, whole.next);
  return behind && { value: whole.value + behind.value, next: behind.next, unit: behind.unit };
}

function isOrdinal(value: number, ending: string): boolean {
  const last = value % 10;
  const teen = value % 100 >= 11 && value % 100 <= 13;
  return ending === (teen || last === 0 || last > 3 ? 'th' : last === 1 ? 'st' : last === 2 ? 'nd' : 'rd');
}

/** The value of a number in digits: `1,200` and `2,5` have commas of two kinds. */
const valueOf = (text: string) => Number(text.replace(/,(?=\d{3}(\D|$))/g, '').replace(',', '.'));

const digitsAt = (raw: readonly Raw[], at: number): Spelt | undefined =>
  raw[at]?.kind === 'number' ? { value: valueOf(raw[at].text), next: at + 1 } : undefined;

/** The ways of spelling numbers; at a piece the first that reads something there has it. */
export const SPELLINGS: readonly Spelling[] = [
  { example: ['1/2', 0.5], read: fraction },
  {
    example: ['9th', 9],
    read: (raw, at) => {
      const digits = digitsAt(raw, at);
      const ending = raw[at + 1];
      if (!digits || ending?.kind !== 'word' || ending.from !== raw[at]?.to) return undefined;
      if (!/^(st|nd|rd|th)$/.test(ending.text) || !Number.isInteger(digits.value)) return undefined;
      return isOrdinal(digits.value, ending.text) ? { ...digits, next: at + 2, ordinal: true } : undefined;
    },
  },
  {
    example: ['6-1/2', 6.5],
    read: (raw, at) => {
      const digits = digitsAt(raw, at);
      if (!digits || !Number.isInteger(digits.value)) return undefined;
      const part = fraction(raw, raw[at + 1]?.text === '-' ? at + 2 : at + 1);
      return part && { value: digits.value + part.value, next: part.next };
    },
  },
  {
    example: ['2 and a half', 2.5],
    read: (raw, at) => {
      const digits = digitsAt(raw, at);
      return digits && withHalf(raw, digits);
    },
  },
  {
    example: ['2 dozen', 24],
    read: (raw, at) => {
      const digits = digitsAt(raw, at);
      return digits && wordAt(raw, at + 1) === 'dozen'
        ? { value: digits.value * 12, next: at + 2 }
        : undefined;
    },
  },
  {
    example: ['1200', 1200],
    read: (raw, at) => {
      const digits = digitsAt(raw, at);
      const text = raw[at]?.text ?? '';
      // What may be a thousand or a decimal stays as it was typed: the readers refuse it and say why.
      return digits && (/^\d{1,3},\d{3}$/.test(text) ? { ...digits, text } : digits);
    },
  },
  { example: ['three quarters of an ounce', 0.75], read: severalParts },
  {
    example: ['a hundred and twenty', 120],
    read: (raw, at) => {
      const spelt = cardinal(raw, at);
      if (!spelt) return undefined;
      const half = withHalf(raw, spelt);
      if (half) return half;
      return spelt.value === 1 && raw[at]?.text === 'one' ? { ...spelt, loose: true } : spelt;
    },
  },
  {
    example: ['second row', 2],
    read: (raw, at) => {
      const word = wordAt(raw, at) ?? '';
      const value = ORDINALS.get(word);
      // A second is a time, or another one, unless a row follows.
      if (value === undefined || (word === 'second' && !/^(row|round|rnd)$/.test(raw[at + 1]?.text ?? '')))
        return undefined;
      return { value, next: at + 1, ordinal: true };
    },
  },
  {
    // A half that belongs to no number before it is a number of its own: nothing is answered as if it were not there.
    example: ['and a half', 0.5],
    read: (raw, at) => {
      const stray = andHalf(raw, at);
      return stray && /^(double|treble|dc|tr)s?$/.test(raw[stray.next]?.text ?? '') ? undefined : stray;
    },
  },
  { example: ['half an ounce', 0.5], read: partOf },
  {
    example: ['an inch', 1],
    read: (raw, at) => {
      const unit = raw[at + 1];
      if (!/^an?$/.test(wordAt(raw, at) ?? '') || !unit || !UNIT_WORD.test(unit.text)) return undefined;
      const behind = halfBehindUnit(raw, at + 1);
      return { value: 1 + (behind?.value ?? 0), next: behind?.next ?? at + 2, unit };
    },
  },
];

/** The number that stands at a piece, however it is spelt. */
export function numberAt(raw: readonly Raw[], at: number): Spelt | undefined {
  for (const { read } of SPELLINGS) {
    const spelt = read(raw, at);
    if (spelt) return spelt;
  }
  return undefined;
}
