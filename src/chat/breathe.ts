/** Lets whoever waits be heard: asked for between two pieces of a long answer. */
export const breathe = (): Promise<void> =>
  new Promise((done) => {
    setImmediate(done);
  });

/** Does long work that pauses now and then; others are heard at each pause. */
export async function inPieces<T>(work: Generator<void, T>): Promise<T> {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
    await breathe();
  }
}
