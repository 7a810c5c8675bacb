type Found = Map<string, unknown>

/** Every global as it stands. */
export function globals(): Found {
  return new Map(Object.getOwnPropertyNames(globalThis).map((name) => [name, globalThis[name as never]]))
}

/** What every class does: happy-dom's windows have most of their prototypes in common. */
export function deeds(): Found {
  const leftBehind: Found = new Map()
  for (const [name, value] of globals()) {
    if (typeof value !== 'function' || !value.prototype) continue
    const own: Record<string, PropertyDescriptor> = Object.getOwnPropertyDescriptors(value.prototype)
    for (const key of Object.keys(own)) leftBehind.set(`${name}.prototype.${key}`, own[key]?.value ?? own[key]?.get)
  }
  return leftBehind
}

/** Throws an error that names whatever came, went or was put in another's place. */
export function nothingLeft(before: Found, after: Found): void {
  const names = new Set([...before.keys(), ...after.keys()])
  const left = [...names].filter((name) => !Object.is(before.get(name), after.get(name)))
  if (left.length) throw new Error(`left behind for the next file: ${left.join(', ')}`)
}
