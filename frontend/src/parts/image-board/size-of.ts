import { useEffect, useState } from 'preact/hooks'
import type { Size } from './view'

/** How many pixels an image has, as the browser draws it; `broken` where it cannot. */
export function useSizeOf(src: string | undefined): Size | 'broken' | undefined {
  const [size, setSize] = useState<Size | 'broken'>()
  useEffect(() => {
    // Once the image is on the server its address changes, and not its size: what is marked stays in sight.
    if (!src) return
    const image = new Image()
    image.onload = () => setSize({ width: image.naturalWidth, height: image.naturalHeight })
    image.onerror = () => setSize('broken')
    image.src = src
    return () => {
      image.onload = image.onerror = null
    }
  }, [src])
  return size
}
