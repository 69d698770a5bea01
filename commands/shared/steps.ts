/** The steps of a working as they are shown. */
import type { Step } from '../../src/core/base/working.ts';

/** The steps without those that say the same once more: kinds of one gauge share theirs. */
export function distinct(steps: readonly Step[]): Step[] {
  const told = new Map<string, Step[]>();
  return steps.filter((step) => {
    const before = told.get(step.label);
    if (before?.some((one) => saysTheSame(one, step)) === true) return false;
    if (before) before.push(step);
    else told.set(step.label, [step]);
    return true;
  });
}

/** Whether two steps of one label say the same. */
function saysTheSame(one: Step, other: Step): boolean {
  if (one.formula !== other.formula) return false;
  const [names, others] = [Object.keys(one.with), Object.keys(other.with)];
  return (
    names.length === others.length &&
    names.every((name, at) => name === others[at] && one.with[name] === other.with[name])
  );
}
