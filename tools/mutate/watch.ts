/** What instrumented sources look into while tests run: which mutant is active, what is reached, how long it may take. */
export interface Watch {
  active: string | undefined;
  /** Where what is reached is noted; undefined while a mutant is active. */
  reached: Set<string> | undefined;
  /** When the test at hand is taken for endless, in the time of performance.now. */
  deadline: number;
  readonly isActive: (id: string) => boolean;
  readonly cover: (ids: readonly string[]) => void;
  /** The text of a formula, or what the active mutant makes of it. */
  readonly text: (place: string, original: string) => string;
}

/** How many looks pass between two looks at the clock. */
const BETWEEN = 512;

/** `texts` holds what each mutant of a formula's text makes of it. */
export function makeWatch(texts: ReadonlyMap<string, string>): Watch {
  let looks = 0;
  const tick = () => {
    if (watch.active !== undefined && ++looks % BETWEEN === 0 && performance.now() > watch.deadline)
      throw new Error('This does not come to an end.');
  };
  const watch: Watch = {
    active: undefined,
    reached: undefined,
    deadline: Infinity,
    isActive: (id) => {
      tick();
      return watch.active === id;
    },
    cover: (ids) => {
      tick();
      if (watch.reached) for (const id of ids) watch.reached.add(id);
    },
    text: (place, original) => {
      watch.reached?.add(place);
      return watch.active?.startsWith(place) ? (texts.get(watch.active) ?? original) : original;
    },
  };
  return watch;
}
