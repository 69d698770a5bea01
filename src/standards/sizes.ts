/**
 * Sizes of beds, cribs and blankets. No body has set a table of blanket sizes: all of these are conventions of the
 * place or the source named beside each.
 */
import { CM_PER_INCH } from './units.ts';

export interface StandardSize {
  /** What it is of, as people ask: `queen`, `crib`, `lap`. */
  readonly of: string;
  readonly kind: 'mattress' | 'cover' | 'crib' | 'blanket';
  /** Where, or what exactly. */
  readonly what: string;
  /** In cm. */
  readonly width: number;
  readonly height: number;
  readonly source: string;
  /** True for the sizes of small children's things. */
  readonly baby?: boolean;
}

const inches = (width: number, height: number) => ({
  width: width * CM_PER_INCH,
  height: height * CM_PER_INCH,
});

const TABLE = 'table of bed sizes, liquisearch.com';
const HANDBOOK = 'a homekeeping handbook quoted at homesteady.com; covers differ from maker to maker';
const CRIBS = 'sizes.com/home/cribs.htm';
const TRADE = 'from memory: common trade size';
const NA = 'mattress, North America';
const UK = 'mattress, UK and Ireland';
const EU = 'mattress, continental Europe';
const VARIANT = 'mattress, North America, another list';
const HOMEKEEPING = 'a homekeeping handbook quoted at homesteady.com';

export const SIZES: readonly StandardSize[] = [
  { of: 'twin', kind: 'mattress', what: NA, ...inches(39, 75), source: TABLE },
  { of: 'full', kind: 'mattress', what: NA, ...inches(54, 75), source: TABLE },
  { of: 'queen', kind: 'mattress', what: NA, ...inches(60, 80), source: TABLE },
  { of: 'king', kind: 'mattress', what: NA, ...inches(76, 80), source: TABLE },
  { of: 'california king', kind: 'mattress', what: NA, ...inches(72, 84), source: TABLE },
  { of: 'twin', kind: 'mattress', what: VARIANT, ...inches(38, 75), source: HOMEKEEPING },
  { of: 'extra long twin', kind: 'mattress', what: NA, ...inches(38, 79.5), source: HOMEKEEPING },
  { of: 'full', kind: 'mattress', what: VARIANT, ...inches(53, 75), source: HOMEKEEPING },
  { of: 'queen', kind: 'mattress', what: VARIANT, ...inches(60, 79.5), source: HOMEKEEPING },
  { of: 'king', kind: 'mattress', what: VARIANT, ...inches(76, 79), source: HOMEKEEPING },
  { of: 'single', kind: 'mattress', what: UK, ...inches(36, 75), source: TABLE },
  { of: 'double', kind: 'mattress', what: UK, ...inches(54, 75), source: TABLE },
  { of: 'king', kind: 'mattress', what: UK, ...inches(60, 78), source: TABLE },
  { of: 'super king', kind: 'mattress', what: UK, ...inches(72, 78), source: TABLE },
  { of: 'single', kind: 'mattress', what: EU, width: 90, height: 200, source: TABLE },
  { of: 'double', kind: 'mattress', what: EU, width: 140, height: 200, source: TABLE },
  { of: 'double', kind: 'mattress', what: `${EU}, wider`, width: 160, height: 200, source: TABLE },
  { of: 'double', kind: 'mattress', what: `${EU}, widest`, width: 180, height: 200, source: TABLE },
  { of: 'twin', kind: 'cover', what: 'bed cover, US', ...inches(68, 86), source: HANDBOOK },
  { of: 'full', kind: 'cover', what: 'bed cover, US', ...inches(76, 86), source: HANDBOOK },
  { of: 'queen', kind: 'cover', what: 'bed cover, US', ...inches(86, 86), source: HANDBOOK },
  { of: 'king', kind: 'cover', what: 'bed cover, US', ...inches(100, 90), source: HANDBOOK },
  {
    of: 'crib',
    kind: 'crib',
    what: 'inside of a full-size crib, US, ± ⟦1.5875~1 cm⟧',
    ...inches(28, 52.375),
    source: `16 CFR 1219, quoted at ${CRIBS}`,
    baby: true,
  },
  {
    of: 'crib',
    kind: 'crib',
    what: 'crib mattress, usual; the minimum length is given as ⟦131.1275~1 cm⟧ or ⟦130.175~1 cm⟧ (engineerfix.com and cervefest.com.mx differ)',
    ...inches(27.25, 52),
    source: CRIBS,
    baby: true,
  },
  {
    of: 'crib',
    kind: 'blanket',
    what: 'crib blanket, trade, about',
    ...inches(45, 60),
    source: CRIBS,
    baby: true,
  },
  {
    of: 'baby',
    kind: 'blanket',
    what: 'charity, baby, at least',
    ...inches(30, 36),
    source: 'projectlinusoregon.org; cthugsandkisses.org says the same',
    baby: true,
  },
  {
    of: 'preemie',
    kind: 'blanket',
    what: 'very small babies, about',
    ...inches(15, 15),
    source: 'crochetcabana.com, “Sizing”',
    baby: true,
  },
  {
    of: 'preemie',
    kind: 'blanket',
    what: 'very small babies, smallest of another list',
    ...inches(20, 20),
    source: 'fromtheheartstitchers.org',
    baby: true,
  },
  {
    of: 'preemie',
    kind: 'blanket',
    what: 'very small babies, largest of that list',
    ...inches(28, 28),
    source: 'fromtheheartstitchers.org',
    baby: true,
  },
  {
    of: 'child',
    kind: 'blanket',
    what: 'charity, child, smallest',
    ...inches(40, 55),
    source: 'projectlinusoregon.org',
  },
  {
    of: 'child',
    kind: 'blanket',
    what: 'charity, child, largest',
    ...inches(40, 60),
    source: 'projectlinusoregon.org',
  },
  {
    of: 'child',
    kind: 'blanket',
    what: 'another charity, younger child',
    ...inches(36, 48),
    source: 'cthugsandkisses.org',
  },
  {
    of: 'child',
    kind: 'blanket',
    what: 'another charity, older child',
    ...inches(42, 48),
    source: 'cthugsandkisses.org',
  },
  {
    of: 'teen',
    kind: 'blanket',
    what: 'charity, teenager, smallest',
    ...inches(45, 65),
    source: 'projectlinusoregon.org',
  },
  {
    of: 'teen',
    kind: 'blanket',
    what: 'charity, teenager, largest',
    ...inches(45, 72),
    source: 'projectlinusoregon.org',
  },
  { of: 'lap', kind: 'blanket', what: 'lap blanket', ...inches(27, 36), source: 'fromtheheartstitchers.org' },
  {
    of: 'lap',
    kind: 'blanket',
    what: 'lap blanket, another list',
    ...inches(36, 36),
    source: 'crochetcabana.com, “Sizing”',
  },
  {
    of: 'lap',
    kind: 'blanket',
    what: 'lap blanket, longer',
    ...inches(36, 48),
    source: 'crochetcabana.com, “Sizing”',
  },
  { of: 'throw', kind: 'blanket', what: 'throw', ...inches(50, 60), source: TRADE },
  { of: 'twin', kind: 'blanket', what: 'bed blanket', ...inches(66, 90), source: TRADE },
  { of: 'queen', kind: 'blanket', what: 'bed blanket', ...inches(90, 90), source: TRADE },
  { of: 'queen', kind: 'blanket', what: 'bed blanket, longer', ...inches(90, 100), source: TRADE },
  { of: 'king', kind: 'blanket', what: 'bed blanket', ...inches(108, 90), source: TRADE },
  { of: 'king', kind: 'blanket', what: 'bed blanket, longer', ...inches(108, 100), source: TRADE },
];

/** Other words people ask with. */
export const SIZE_WORDS: Readonly<Record<string, string>> = {
  cot: 'crib',
  pram: 'baby',
  newborn: 'baby',
  babies: 'baby',
  premature: 'preemie',
  lapghan: 'lap',
  knee: 'lap',
  sofa: 'throw',
  afghan: 'throw',
  children: 'child',
  toddler: 'child',
  teenager: 'teen',
  superking: 'super king',
  'cal king': 'california king',
  'xl twin': 'extra long twin',
};
