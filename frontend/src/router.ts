import { signal } from '@preact/signals'
import { giveBackPlace, onceGivenBack } from '@/parts/place-of-own'

// Written by hand: of what a library does a list of addresses is used here, and a sheet's place in the history it does not know.

/** Where the app stands, as the address bar says it. */
export const address = signal(typeof location === 'undefined' ? '/' : location.pathname + location.search)

/** Goes to an address of the app, from under a sheet too; `replace` leaves no way back to the one before. */
export function go(to: string, { replace = false }: { replace?: boolean } = {}): void {
  giveBackPlace()
  onceGivenBack(() => {
    if (replace) history.replaceState(null, '', to)
    else history.pushState({ from: address.value }, '', to)
    address.value = location.pathname + location.search
    globalThis.scrollTo?.(0, 0)
  })
}

/** Whether the address asks for something on its screen, as `?measure`. It asks once: the way back does not ask again. */
export function asksFor(query: string): boolean {
  if (!address.peek().endsWith(query)) return false
  const path = address.peek().slice(0, -query.length)
  history.replaceState(history.state, '', path)
  address.value = path
  return true
}

/** The address that led here, where it begins with one of these; a screen that is reached from several goes back to it. */
export function cameFrom(...beginnings: readonly string[]): string | undefined {
  const from: unknown = history.state?.from
  return typeof from === 'string' && beginnings.some((start) => from.startsWith(start)) ? from : undefined
}

/** Follows the browser's own back and forward, and links inside the app. */
export function startRouter(): void {
  // Loaded anew with a sheet over the screen: the sheet is gone, its place is not.
  giveBackPlace()
  addEventListener('popstate', () => {
    address.value = location.pathname + location.search
  })
  document.addEventListener('click', (event) => {
    if (event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey) return
    const link = (event.target as Element).closest?.('a[href]')
    const href = link?.getAttribute('href')
    if (!href?.startsWith('/') || href.startsWith('/api/') || link?.hasAttribute('target')) return
    event.preventDefault()
    go(href)
  })
}

/** The named parts of `path` if it has the pattern's form: `/cases/:id` in `/cases/7` gives `{id: '7'}`. */
export function match(pattern: string, path: string): Record<string, string> | undefined {
  const wanted = pattern.split('/')
  const parts = (path.split('?')[0] ?? '').split('/')
  if (wanted.length !== parts.length) return undefined
  const params: Record<string, string> = {}
  for (const [i, part] of wanted.entries()) {
    const value = parts[i] ?? ''
    if (part.startsWith(':')) {
      if (!value) return undefined
      params[part.slice(1)] = decodeURIComponent(value)
    } else if (part !== value) return undefined
  }
  return params
}
