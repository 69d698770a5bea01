/** Numbers in [0, 1), spread evenly, the same in every run: when something falls ill is no matter of luck. */
export function spread(seed = 0): () => number {
  let n = seed;
  return () => (++n * 0.618_033_988_75) % 1;
}
