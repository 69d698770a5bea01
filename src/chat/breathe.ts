/** Lets whoever waits be heard: asked for between two pieces of a long answer. */
export const breathe = (): Promise<void> =>
  new Promise((done) => {
    setImmediate(done);
  });

/** Work that has taken less than this, in ms, would keep nobody waiting that a pause could help. */
const SHORT_MS = 1;

/** ms of a clock that only goes on. `performance` is a module that Node loads when it is first used, and a single question waits for it. */
const moment = () => Number(process.hrtime.bigint()) / 1e6;

/** Pauses between pieces of work, unless the work since the pause before was short: most is, and a pause takes time too. */
export class Pauses {
  private since = moment();

  /** Whether the work since the last one was long. */
  get areDue(): boolean {
    return moment() - this.since >= SHORT_MS;
  }

  async breathe(): Promise<void> {
    await breathe();
    this.since = moment();
  }
}

/** Does long work that pauses now and then; others are heard at each pause. */
export async function inPieces<T>(work: Generator<void, T>): Promise<T> {
  for (;;) {
    const { done, value } = work.next();
    if (done) return value;
    await breathe();
  }
}
