/** Colours: reading them, how far apart two are, and whether everyone can tell them apart. */
import {
  COLOUR_VISION,
  COLOUR_WORDS,
  D65,
  LUMINANCE,
  PALETTE,
  SHADES,
  SRGB_TO_XYZ,
} from '../../standards/colours.ts';

/** CIE L*a*b* under D65. */
export type Lab = readonly [l: number, a: number, b: number];
type Triple = readonly [number, number, number];

/** How somebody sees: with all cones, or with one kind missing. */
export type Sight = 'usual' | keyof typeof COLOUR_VISION;
export const SIGHTS: readonly Sight[] = ['usual', 'protanopia', 'deuteranopia', 'tritanopia'];

/** `#rrggbb` or `#rgb`, with or without the `#`, as lower-case `#rrggbb`; undefined where it is none. */
export function readHex(text: string): string | undefined {
  const digits = /^#?([0-9a-f]{6}|[0-9a-f]{3})$/i.exec(text.trim())?.[1]?.toLowerCase();
  if (digits === undefined) return undefined;
  return `#${digits.length === 3 ? [...digits].map((digit) => digit + digit).join('') : digits}`;
}

/** The hex of a plain colour word, with or without a shade before it ("pale moss"); undefined where none is known. */
export function wordColour(name: string): string | undefined {
  const words = name
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '');
  const main = words.findLast((word) => Object.hasOwn(COLOUR_WORDS, word));
  const found = main === undefined ? undefined : COLOUR_WORDS[main];
  if (found === undefined) return undefined;
  const shade = words.find((word) => Object.hasOwn(SHADES, word));
  const change = shade === undefined ? undefined : SHADES[shade];
  return change ? mix(found, change.towards, change.share) : found;
}

/** A colour between two: `share` 0 gives the first, 1 the second. Mixed in sRGB. */
export function mix(first: string, second: string, share: number): string {
  const a = channels(first);
  const b = channels(second);
  return toHex([0, 1, 2].map((i) => (a[i] ?? 0) * (1 - share) + (b[i] ?? 0) * share));
}

/** Whether nothing tells how a yarn of this name looks, so that it is drawn in a colour that is made up. */
export const isMadeUp = (name: string, hex?: string): boolean =>
  (readHex(hex ?? '') ?? readHex(name) ?? wordColour(name)) === undefined;

/**
 * How a yarn called `name` is drawn, as #rrggbb: its own `hex` where one is given and can be read, the colour that its
 * name says, or else one of a palette of ours, always the same for the same name.
 */
export function colourOf(name: string, hex?: string): string {
  return readHex(hex ?? '') ?? readHex(name) ?? wordColour(name) ?? paletteFrom(name)[0] ?? PALETTE[0];
}

/**
 * The same for the yarns of one piece together: names that say no colour get palette colours that differ from each
 * other and from the colours already there as far as the palette goes. Keys are the names.
 */
export function coloursOf(
  yarns: readonly { readonly name: string; readonly hex?: string | undefined }[],
): Record<string, string> {
  // Names are whatever somebody wrote: none of them is looked up in a prototype.
  const given = Object.create(null) as Record<string, string>;
  const used = new Set<string>();
  const nearest = new Map<string, number>(PALETTE.map((hex) => [hex, Infinity]));
  const use = (name: string, hex: string) => {
    given[name] = hex;
    if (used.has(hex) || used.size >= MOST_KEPT_APART) return;
    used.add(hex);
    for (const [own, before] of nearest)
      if (before > 0) nearest.set(own, Math.min(before, measureDifference(own, hex)));
  };
  for (const { name, hex } of yarns) {
    if (given[name] !== undefined) continue;
    const known = readHex(hex ?? '') ?? readHex(name) ?? wordColour(name);
    if (known !== undefined) use(name, known);
  }
  const apart = (hex: string) => nearest.get(hex) ?? 0;
  for (const { name } of yarns) {
    if (given[name] !== undefined) continue;
    const choices = paletteFrom(name);
    const chosen =
      choices.find((hex) => apart(hex) >= HARD_TO_TELL) ??
      choices.reduce((best, hex) => (apart(hex) > apart(best) ? hex : best));
    use(name, chosen);
  }
  return given;
}

/** From so many colours on the palette has nothing left that differs from all of them. */
const MOST_KEPT_APART = 200;

/** The palette, beginning at a place that depends on the name alone. */
function paletteFrom(name: string): readonly string[] {
  let hash = 7;
  for (const char of name.trim().toLowerCase()) hash = (hash * 31 + (char.codePointAt(0) ?? 0)) % 1_000_003;
  const from = hash % PALETTE.length;
  return [...PALETTE.slice(from), ...PALETTE.slice(0, from)];
}

function channels(hex: string): Triple {
  const value = Number.parseInt((readHex(hex) ?? '').slice(1), 16);
  if (Number.isNaN(value)) throw new Error(`${hex} is not a colour`);
  return [(value >> 16) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255];
}

const toHex = (rgb: readonly number[]) =>
  `#${rgb
    .map((c) =>
      Math.round(Math.min(1, Math.max(0, c)) * 255)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;

const linear = (c: number) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
const encoded = (c: number) => (c <= 0.0031308 ? 12.92 * c : 1.055 * Math.max(0, c) ** (1 / 2.4) - 0.055);
const linearOf = (hex: string) => channels(hex).map(linear) as unknown as Triple;

function times(matrix: readonly number[], [x, y, z]: Triple): Triple {
  const at = (row: number) =>
    (matrix[3 * row] ?? 0) * x + (matrix[3 * row + 1] ?? 0) * y + (matrix[3 * row + 2] ?? 0) * z;
  return [at(0), at(1), at(2)];
}

/** L*a*b* under D65 of an sRGB colour (IEC 61966-2-1, CIE 15). */
export function labOf(hex: string): Lab {
  const f = (value: number) =>
    value > (6 / 29) ** 3 ? Math.cbrt(value) : value / (3 * (6 / 29) ** 2) + 4 / 29;
  const xyz = times(SRGB_TO_XYZ, linearOf(hex));
  const [x, y, z] = [f(xyz[0] / D65[0]), f(xyz[1] / D65[1]), f(xyz[2] / D65[2])];
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

const degrees = (radians: number) => (radians * 180) / Math.PI;
const radians = (angle: number) => (angle * Math.PI) / 180;

/**
 * CIEDE2000 with kL = kC = kH = 1, as worked out step by step by G. Sharma, W. Wu and E. N. Dalal, "The CIEDE2000
 * Color-Difference Formula", Color Research & Application 30(1), 2005.
 */
export function ciede2000([l1, a1, b1]: Lab, [l2, a2, b2]: Lab): number {
  const meanChroma = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2;
  const g = 0.5 * (1 - Math.sqrt(meanChroma ** 7 / (meanChroma ** 7 + 25 ** 7)));
  const [p1, p2] = [(1 + g) * a1, (1 + g) * a2];
  const [c1, c2] = [Math.hypot(p1, b1), Math.hypot(p2, b2)];
  const hue = (p: number, b: number) => (p === 0 && b === 0 ? 0 : (degrees(Math.atan2(b, p)) + 360) % 360);
  const [h1, h2] = [hue(p1, b1), hue(p2, b2)];

  const grey = c1 * c2 === 0;
  const apart = h2 - h1;
  const turn = grey ? 0 : apart > 180 ? apart - 360 : apart < -180 ? apart + 360 : apart;
  const dL = l2 - l1;
  const dC = c2 - c1;
  const dH = 2 * Math.sqrt(c1 * c2) * Math.sin(radians(turn / 2));

  const l = (l1 + l2) / 2;
  const c = (c1 + c2) / 2;
  const sum = h1 + h2;
  const h = grey ? sum : Math.abs(apart) <= 180 ? sum / 2 : sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
  const t =
    1 -
    0.17 * Math.cos(radians(h - 30)) +
    0.24 * Math.cos(radians(2 * h)) +
    0.32 * Math.cos(radians(3 * h + 6)) -
    0.2 * Math.cos(radians(4 * h - 63));
  const sL = 1 + (0.015 * (l - 50) ** 2) / Math.sqrt(20 + (l - 50) ** 2);
  const sC = 1 + 0.045 * c;
  const sH = 1 + 0.015 * c * t;
  const rotation = 30 * Math.exp(-(((h - 275) / 25) ** 2));
  const rT = -2 * Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7)) * Math.sin(radians(2 * rotation));
  return Math.sqrt((dL / sL) ** 2 + (dC / sC) ** 2 + (dH / sH) ** 2 + rT * (dC / sC) * (dH / sH));
}

/** CIEDE2000 between two sRGB colours. */
export const measureDifference = (first: string, second: string) => ciede2000(labOf(first), labOf(second));

/** Relative luminance, 0 to 1 (WCAG 2). */
export function reckonLuminance(hex: string): number {
  const [r, g, b] = linearOf(hex);
  return LUMINANCE[0] * r + LUMINANCE[1] * g + LUMINANCE[2] * b;
}

/** Contrast ratio, 1 to 21, whichever is the lighter (WCAG 2). Not rounded: 4.499 does not reach 4.5. */
export function reckonContrast(first: string, second: string): number {
  const [a, b] = [reckonLuminance(first), reckonLuminance(second)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

/** Which of two inks is easier to read on a ground. */
export const chooseInk = (ground: string, dark = '#1d1d1f', light = '#ffffff') =>
  reckonContrast(ground, dark) >= reckonContrast(ground, light) ? dark : light;

/** How a colour looks to somebody without one kind of cones (the matrices in the table of standards, on linear light). */
export function simulateSight(hex: string, sight: Sight): string {
  return sight === 'usual'
    ? toHex(channels(hex))
    : toHex(times(COLOUR_VISION[sight], linearOf(hex)).map(encoded));
}

/**
 * Below this CIEDE2000 two yarns are called hard to tell apart. Our own choice: about 1 is just seen with both side by
 * side (from memory); yarns lie apart in a basket, in lamplight, and their texture mottles them, so ten times that.
 */
export const HARD_TO_TELL = 10;

/** Two things that somebody would mix up. */
export interface Alike {
  readonly first: string;
  readonly second: string;
  /** Who would: the first sight, in the order of SIGHTS, for which they are too near. */
  readonly sight: Sight;
  /** CIEDE2000 as that person sees them. */
  readonly difference: number;
  /** WCAG contrast as that person sees them. */
  readonly contrast: number;
}

/** So many colours are compared, each with each: more than anybody keeps apart by eye, and still answered at once. */
export const MOST_COMPARED = 60;

/** Pairs of colours that are hard to tell apart, each told for every sight for which it is; of the first `MOST_COMPARED`. */
export function findHardToTell(colours: readonly { readonly name: string; readonly hex: string }[]): Alike[] {
  return findKindsHardToTell(
    colours.slice(0, MOST_COMPARED).map(({ name, hex }) => ({ name, bands: [{ hex, share: 1 }] })),
  );
}

/**
 * The same for pieces in several colours: two are told apart when they differ anywhere along their rows, so the
 * places compared are a row's share of the whole, and the largest difference counts. Only pieces of one look (the
 * caller's word, a shape for instance) are compared.
 */
export function findKindsHardToTell(
  kinds: readonly {
    readonly name: string;
    readonly look?: string;
    readonly bands: readonly { readonly hex: string; readonly share: number }[];
  }[],
): Alike[] {
  const found: Alike[] = [];
  const seen = new Map(SIGHTS.map((sight) => [sight, new Seen(sight)]));
  const pairs = new Pairs(kinds.map(({ bands }) => bands));
  for (const [index, one] of kinds.entries()) {
    for (let at = index + 1; at < kinds.length; at++) {
      const other = kinds[at];
      if (!other || one.look !== other.look) continue;
      const places = pairs.of(index, at);
      for (const [sight, eyes] of seen) {
        const apart = eyes.apart(places);
        if (apart >= HARD_TO_TELL) continue;
        const ratio = places.reduce(
          (most, [a, b]) => Math.max(most, reckonContrast(eyes.see(a), eyes.see(b))),
          1,
        );
        found.push({ first: one.name, second: other.name, sight, difference: apart, contrast: ratio });
      }
    }
  }
  return found;
}

/** One sight's look at many pairs of colours: each colour is turned, and each pair measured, once. */
class Seen {
  private readonly looks = new Map<string, { readonly hex: string; readonly lab: Triple }>();
  private readonly measured = new Map<string, number>();

  constructor(private readonly sight: Sight) {}

  private look(hex: string) {
    let look = this.looks.get(hex);
    if (!look) {
      const shown = simulateSight(hex, this.sight);
      this.looks.set(hex, (look = { hex: shown, lab: labOf(shown) }));
    }
    return look;
  }

  see(hex: string): string {
    return this.look(hex).hex;
  }

  /** The largest difference at any place; looked for no further where one is large enough to tell them apart. */
  apart(places: readonly (readonly [string, string])[]): number {
    let apart = 0;
    for (const [a, b] of places) {
      const pair = `${a}${b}`;
      let difference = this.measured.get(pair);
      if (difference === undefined) {
        difference = ciede2000(this.look(a).lab, this.look(b).lab);
        this.measured.set(pair, difference);
      }
      apart = Math.max(apart, difference);
      if (apart >= HARD_TO_TELL) break;
    }
    return apart;
  }
}

type Bands = readonly { readonly hex: string; readonly share: number }[];

/** The pairs of colours that lie at the same place along two pieces, each pair once. Colours are numbered: there may be many places. */
class Pairs {
  private readonly hexes: readonly string[];
  private readonly pieces: readonly { readonly colours: Uint16Array; readonly shares: Float64Array }[];
  /** By pair of colours, for which comparison it was met last. */
  private readonly met: Uint32Array;
  private comparison = 0;

  constructor(pieces: readonly Bands[]) {
    const numbers = new Map<string, number>();
    for (const { hex } of pieces.flat()) if (!numbers.has(hex)) numbers.set(hex, numbers.size);
    this.hexes = [...numbers.keys()];
    this.met = new Uint32Array(numbers.size ** 2);
    this.pieces = pieces.map((bands) => ({
      colours: Uint16Array.from(bands, ({ hex }) => numbers.get(hex) ?? 0),
      shares: Float64Array.from(bands, ({ share }) => share),
    }));
  }

  of(one: number, other: number): [string, string][] {
    const first = this.pieces[one];
    const second = this.pieces[other];
    const pairs: [string, string][] = [];
    if (!first || !second) return pairs;
    this.comparison += 1;
    let [i, j, doneFirst, doneSecond] = [0, 0, 0, 0];
    while (i < first.colours.length && j < second.colours.length) {
      const [a = 0, b = 0] = [first.colours[i], second.colours[j]];
      const pair = a * this.hexes.length + b;
      if (this.met[pair] !== this.comparison) {
        this.met[pair] = this.comparison;
        pairs.push([this.hexes[a] ?? '', this.hexes[b] ?? '']);
      }
      const endA = doneFirst + (first.shares[i] ?? 0);
      const endB = doneSecond + (second.shares[j] ?? 0);
      // Shares are sums of fractions: ends that meet may differ in the last digit.
      if (endA <= endB + 1e-9) {
        i += 1;
        doneFirst = endA;
      }
      if (endB <= endA + 1e-9) {
        j += 1;
        doneSecond = endB;
      }
    }
    return pairs;
  }
}
