import { useLayoutEffect } from 'preact/hooks'

/** No history turns back as late as this; one that was asked too often does not turn back at all. */
const LATEST_MS = 1000

// It turns back some time after it is asked to, and from wherever it stands by then.
let givingBack = false
const waiting: (() => void)[] = []

/** Does what changes the history: at once, or when a place in it that is being given back has been. */
export function onceGivenBack(change: () => void): void {
  if (givingBack) waiting.push(change)
  else change()
}

/** Gives back the place of a sheet that is closed or about to be, if it has one. */
export function giveBackPlace(): void {
  if (givingBack || !history.state?.sheet) return
  givingBack = true
  const end = () => {
    clearTimeout(atTheLatest)
    removeEventListener('popstate', soon)
    history.scrollRestoration = 'auto'
    givingBack = false
    for (const change of waiting.splice(0)) onceGivenBack(change)
  }
  // How to scroll is read once more after this event.
  const soon = () => setTimeout(end)
  const atTheLatest = setTimeout(end, LATEST_MS)
  addEventListener('popstate', soon, { once: true })
  history.back()
}

/**
 * A place of its own in the history for what lies over the screen: the phone's way back closes it and leaves the screen,
 * which stays where it is scrolled to.
 */
export function usePlaceOfOwn(close: () => void): void {
  useLayoutEffect(() => {
    let over = false
    onceGivenBack(() => {
      if (over) return
      // Else the browser scrolls back to where the screen was, and what came onto it meanwhile is out of sight.
      history.scrollRestoration = 'manual'
      history.pushState({ sheet: true }, '')
      addEventListener('popstate', close)
    })
    return () => {
      over = true
      removeEventListener('popstate', close)
      if (history.state?.sheet) giveBackPlace()
      else history.scrollRestoration = 'auto'
    }
  }, [])
}
