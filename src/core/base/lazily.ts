/** What is made when it is first asked for, and is the same ever after: a start does not wait for what it does not need. */
export function lazily<T>(make: () => T): () => T {
  let made: { readonly it: T } | undefined;
  return () => (made ??= { it: make() }).it;
}
