/** Units. Source: International Yard and Pound Agreement, 1 July 1959 (inch, yard, pound exact); ounce = pound ÷ 16. */
export const CM_PER_INCH = 2.54;
export const M_PER_YARD = 0.9144;
export const G_PER_POUND = 453.59237;
export const G_PER_OUNCE = G_PER_POUND / 16;
/** Tex: grams per kilometre. Source: ISO 1144 (tex system). */
export const M_PER_KM = 1000;
