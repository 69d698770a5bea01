/**
 * Crochet hook sizes. Sources: matifs.com/crochet-hooks-size-chart; deborah.makarios.nz/tag/size (old UK numbers);
 * omgheart.com, 17 November 2010 (letters of the large hooks, steel hooks); homequestionsanswered.com. The millimetre
 * size governs: letter and number vary from maker to maker (from memory).
 */
export interface HookSize {
  readonly mm: number;
  /** US letter and number, as the US trade association lists it. */
  readonly US?: string;
  /** Old UK and Canadian number. */
  readonly oldUK?: string;
  /** True where the row is from memory, not read in a source. */
  readonly fromMemory?: boolean;
  /** Where sources differ, said in words. */
  readonly note?: string;
}

export const HOOKS: readonly HookSize[] = [
  { mm: 2, oldUK: '14', note: 'One page calls it US B/1.' },
  { mm: 2.25, US: 'B-1', oldUK: '13' },
  { mm: 2.5, oldUK: '12', fromMemory: true, note: 'Some older charts call it US C-2.' },
  {
    mm: 2.75,
    US: 'C-2',
    note: 'The old UK number is disputed: one chart says 12, many leave it blank.',
  },
  { mm: 3, oldUK: '11', fromMemory: true },
  { mm: 3.25, US: 'D-3', oldUK: '10' },
  { mm: 3.5, US: 'E-4', oldUK: '9' },
  { mm: 3.75, US: 'F-5', note: 'The old British system has no size between 3.5 and 4 mm.' },
  { mm: 4, US: 'G-6', oldUK: '8' },
  {
    mm: 4.25,
    oldUK: '8',
    note: 'Old UK 8 could be 4 or 4.25 mm; some lists call this one US G and 4 mm just 6.',
  },
  { mm: 4.5, US: '7', oldUK: '7', note: 'US and old UK numbers cross here; the US size has no letter.' },
  { mm: 5, US: 'H-8', oldUK: '6' },
  { mm: 5.25, US: 'I', fromMemory: true },
  { mm: 5.5, US: 'I-9', oldUK: '5' },
  { mm: 5.75, US: 'J', fromMemory: true },
  { mm: 6, US: 'J-10', oldUK: '4' },
  { mm: 6.5, US: 'K-10 1/2', oldUK: '3' },
  { mm: 7, oldUK: '2', fromMemory: true },
  { mm: 7.5, oldUK: '1', fromMemory: true },
  { mm: 8, US: 'L-11', oldUK: '0' },
  { mm: 9, US: 'M/N-13', oldUK: '00' },
  { mm: 10, US: 'N/P-15', oldUK: '000' },
  { mm: 11.5, US: 'P-16', fromMemory: true },
  { mm: 12, fromMemory: true },
  { mm: 15, US: 'P/Q' },
  { mm: 15.75, US: 'Q', fromMemory: true, note: 'Another list calls 16 mm Q.' },
  { mm: 16, US: 'Q' },
  { mm: 19, US: 'S' },
  { mm: 25, US: 'T/U/X', fromMemory: true, note: 'U in some lists.' },
  { mm: 30, US: 'T/X', fromMemory: true },
];

/** Where the hook table was read. */
export const HOOKS_SOURCE =
  'matifs.com/crochet-hooks-size-chart; deborah.makarios.nz (old UK); omgheart.com (large and steel hooks)';

export interface SteelHook {
  readonly US: string;
  readonly mm: number;
  /** Where sources differ, said in words. */
  readonly note?: string;
}

const LACE =
  'The yarn trade’s lace row pairs steel 6, 7 and 8 with 1.6 to 1.4 mm: steel sizes are not standardised.';

/** US steel hooks: the number rises as the size falls. Source: omgheart.com. */
export const STEEL_HOOKS: readonly SteelHook[] = [
  { US: '00', mm: 3.5 },
  { US: '0', mm: 3.25 },
  { US: '1', mm: 2.75 },
  { US: '2', mm: 2.5, note: 'Other tables give 2.25 mm (from memory).' },
  { US: '3', mm: 2.1 },
  { US: '4', mm: 2 },
  { US: '5', mm: 1.9 },
  { US: '6', mm: 1.8, note: LACE },
  { US: '7', mm: 1.65, note: LACE },
  { US: '8', mm: 1.5, note: LACE },
  { US: '9', mm: 1.4 },
  { US: '10', mm: 1.3 },
  { US: '11', mm: 1.1 },
  { US: '12', mm: 1 },
  { US: '13', mm: 0.85 },
  { US: '14', mm: 0.75 },
];
