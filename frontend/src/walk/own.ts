// A canal may be called anything its student types, `constructor` and `__proto__` too: such a name must find what was put
// there and nothing that every object has.

/** What was put under the name; undefined where nothing was. */
export function own<T>(of: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(of, name) ? of[name] : undefined
}

/** Things by name, and nothing under any other name. */
export function byName<T>(entries: Iterable<readonly [string, T]>): Record<string, T> {
  const things: Record<string, T> = Object.create(null)
  for (const [name, thing] of entries) things[name] = thing
  return things
}
