/** The units and terms that somebody new begins with: those of the language that her platform is set to. */
import type { Terms, Units } from '../core/base/reader.ts';

export interface FirstWays {
  readonly units: Units;
  readonly terms: Terms;
  /** What is said of them, once. */
  readonly says: string;
}

/** Countries whose English is written in UK terms. */
const UK_TERMS = new Set(['GB', 'IE', 'AU', 'NZ', 'ZA']);

/**
 * The ways of a locale (`en-US`, `en_GB.UTF-8`); undefined where they are those that everybody begins with. Inches and pounds are in daily
 * use in the United States alone; the terms are those of English patterns there.
 */
export function waysOf(locale: string): FirstWays | undefined {
  const [, language, country = ''] = /^([a-z]{2,3})[-_]([A-Z]{2})\b/.exec(locale) ?? [];
  const said = (units: string, terms: Terms) =>
    `Shown in ${units} and in ${terms} terms, as your language is set to ${language ?? ''}-${country}; /settings change makes it otherwise.`;
  if (country === 'US') return { units: 'imperial', terms: 'US', says: said('inches', 'US') };
  if (language === 'en' && UK_TERMS.has(country))
    return { units: 'metric', terms: 'UK', says: said('centimetres', 'UK') };
  return undefined;
}
