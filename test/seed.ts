/** A property that fails names its seed; `SEED=…` before the command draws the same again. Otherwise every run draws anew. */
const { SEED } = process.env;
if (SEED !== undefined && SEED !== '') {
  const { configureGlobal } = await import('fast-check');
  configureGlobal({ seed: Number(SEED) });
}
