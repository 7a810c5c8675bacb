import type { RefObject } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'

interface ElementSize {
  width: number
  height: number
}

/** The room an element is given, followed as it changes; a guess until it was measured, so that it is drawn once. */
export function useElementSize(guess: ElementSize = { width: 328, height: 420 }): {
  room: ElementSize
  measured: boolean
  ref: RefObject<HTMLDivElement | null>
} {
  const ref = useRef<HTMLDivElement>(null)
  const [room, setRoom] = useState<ElementSize>()
  useLayoutEffect(() => {
    const element = ref.current
    const measure = () => {
      const { width = 0, height = 0 } = element?.getBoundingClientRect() ?? {}
      const now = { width: Math.floor(width), height: Math.floor(height) }
      setRoom((before = guess) => {
        const same = now.width === before.width && now.height === before.height
        return same || now.width === 0 || now.height === 0 ? before : now
      })
    }
    measure()
    if (!element || typeof ResizeObserver === 'undefined') return
    const watcher = new ResizeObserver(measure)
    watcher.observe(element)
    return () => watcher.disconnect()
  }, [])
  return { room: room ?? guess, measured: room !== undefined, ref }
}
