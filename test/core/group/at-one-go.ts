/** Work that pauses, done without its pauses. */
export function atOneGo<T>(work: Generator<void, T>): T {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
  }
}
