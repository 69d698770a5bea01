/** Finished sizes by which a blanket is recognised. No standards body has a table of them: all are conventions. */
import { CM_PER_INCH } from './units.ts';

/**
 * A blanket within this size may well be for a baby: the trade's crib blanket is about 45 × 60 in (sizes.com/home/cribs.htm);
 * charities ask for 30 × 36 in for babies and up to 42 × 48 in for older children (projectlinusoregon.org,
 * cthugsandkisses.org). A throw, 50 × 60 in, lies beyond it.
 */
export const BABY_BLANKET = { shortCm: 45 * CM_PER_INCH, longCm: 60 * CM_PER_INCH } as const satisfies Record<
  string,
  number
>;

/** More motifs than this are work for months: hands are cautioned (common practice; the number is our own choice). */
export const LONG_WORK = { motifs: 100 } as const satisfies Record<string, number>;
