import { useEffect } from 'preact/hooks'

/**
 * A place of its own in the history for what lies over the screen: the phone's way back closes it and leaves the screen,
 * which stays where it is scrolled to.
 */
export function usePlaceOfOwn(close: () => void): void {
  useEffect(() => {
    // Else the browser scrolls back to where the screen was, and what came onto it meanwhile is out of sight.
    history.scrollRestoration = 'manual'
    history.pushState({ sheet: true }, '')
    addEventListener('popstate', close)
    return () => {
      removeEventListener('popstate', close)
      const asBefore = () => {
        history.scrollRestoration = 'auto'
      }
      if (!history.state?.sheet) return asBefore()
      // It is read once more after this event.
      addEventListener('popstate', () => setTimeout(asBefore), { once: true })
      history.back()
    }
  }, [])
}
