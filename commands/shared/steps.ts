/** The steps of a working as they are shown. */
import type { Step } from '../../src/core/base/working.ts';

/** The steps without those that say the same once more: kinds of one gauge share theirs. */
export function distinct(steps: readonly Step[]): Step[] {
  const told = new Set<string>();
  return steps.filter((step) => {
    const key = JSON.stringify([step.label, step.formula, step.with]);
    if (told.has(key)) return false;
    told.add(key);
    return true;
  });
}
