/** The steps of a working as they are written down: what is worked again and again by one formula stands in a table under it. */
import type { RenderedAnswer } from './answer.ts';

type ShownStep = RenderedAnswer['working'][number];

export interface Block {
  /** The formula that all its lines go by, where it stands above them. */
  readonly formula?: string;
  readonly lines: readonly string[];
  readonly source: string;
}

/** So many steps by one formula become a table. */
const REPEATED = 3;

/** The steps in their order; those of a table stand where the first of them does. */
export function gatherSteps(working: readonly ShownStep[]): readonly Block[] {
  const alike = new Map<string, ShownStep[]>();
  for (const step of working) {
    const key = `${step.formula}\u0000${step.source}`;
    alike.set(key, [...(alike.get(key) ?? []), step]);
  }
  return [...alike.values()].flatMap((steps): Block[] => {
    const [first] = steps;
    if (first === undefined) return [];
    const { source, general } = first;
    return steps.length < REPEATED
      ? steps.map(({ label, shown }) => ({ lines: [`${label}: ${shown}`], source }))
      : [{ formula: general, lines: steps.map(({ label, worked }) => `${label}: ${worked}`), source }];
  });
}
