/** Finished sizes by which a blanket is recognised. No standards body has a table of them: all are conventions. */

/**
 * A blanket no longer than this may well be for a baby: charities ask for 30 × 36 in (91 cm) for babies and 36 × 48 in for
 * younger children (projectlinusoregon.org, "Blanket making guidelines"; cthugsandkisses.org). The limit lies between: common practice.
 */
export const BABY_BLANKET = { longestCm: 100 } as const;
