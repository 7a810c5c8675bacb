import type { RefObject } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'

export interface ElementSize {
  width: number
  height: number
}

/** The room an element is given, followed as it changes. */
export function useElementSize(before: ElementSize = { width: 328, height: 420 }): {
  room: ElementSize
  ref: RefObject<HTMLDivElement | null>
} {
  const ref = useRef<HTMLDivElement>(null)
  const [room, setRoom] = useState(before)
  useLayoutEffect(() => {
    const element = ref.current
    if (!element || typeof ResizeObserver === 'undefined') return
    const measure = () => {
      const { width, height } = element.getBoundingClientRect()
      if (width > 0 && height > 0) setRoom({ width: Math.floor(width), height: Math.floor(height) })
    }
    const watcher = new ResizeObserver(measure)
    watcher.observe(element)
    measure()
    return () => watcher.disconnect()
  }, [])
  return { room, ref }
}
