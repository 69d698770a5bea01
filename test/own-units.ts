import { expect } from 'vitest';
import { toOwn } from '../src/core/base/reader.ts';
import { reckonForReader, type Working } from '../src/core/base/working.ts';

const INCHES = { units: 'imperial', terms: 'US' } as const;

/** Holds every step to its own result in inches, yards and ounces: a number with a hidden unit in a formula would show. */
export function expectOwnUnits({ steps }: Working): void {
  for (const step of steps) {
    const own = step.result * toOwn(step.unit, INCHES);
    expect(Math.abs(reckonForReader(step, INCHES) - own), step.label).toBeLessThanOrEqual(
      1e-9 * Math.max(1, Math.abs(own)),
    );
  }
}
