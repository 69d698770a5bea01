import { expect } from 'vitest';

/** A problem of a kind, by its code, with whatever else is said of it: `toThrow(refused('no-such-row', { option: 'row' }))`. */
export const refused = (code: string, about: Readonly<Record<string, unknown>> = {}): unknown =>
  expect.objectContaining({ name: 'Problem', code, ...about });
