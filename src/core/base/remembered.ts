/** What is found out of a thing of a table again and again, found out once. */

/**
 * The same function, which keeps what it gave for each thing. For things that never change, as those of tables and declarations, and
 * for results that nobody changes.
 *
 * @example
 * remembered((words) => words.join(' '))(['solid', 'square']) // → 'solid square'
 */
export function remembered<Thing extends object, Found>(
  find: (thing: Thing) => Found,
): (thing: Thing) => Found {
  const known = new WeakMap<Thing, { readonly found: Found }>();
  return (thing) => {
    const before = known.get(thing);
    if (before) return before.found;
    const found = find(thing);
    known.set(thing, { found });
    return found;
  };
}
