/** The languages beside English in which questions are found. Another is a file beside this, and its name here. */
import { de } from './de.ts';
import { fr } from './fr.ts';
import type { Tongue } from './tongue.ts';

export type { Part, Tongue } from './tongue.ts';

export const TONGUES: readonly Tongue[] = [de, fr];
