/** Lets whoever waits be heard: asked for between two pieces of a long answer. */
export const breathe = (): Promise<void> =>
  new Promise((done) => {
    setImmediate(done);
  });
