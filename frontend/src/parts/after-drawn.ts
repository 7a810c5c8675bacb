import { useEffect, useState } from 'preact/hooks'

// What a touch asks for is seen at once; what takes a phone longer comes with the next picture.

/** The value that the screen was last drawn with; where it is another now, that follows once the rest has been drawn. */
export function useAfterDrawn<T>(value: T): T {
  const [drawn, setDrawn] = useState<{ readonly value: T }>({ value })
  useEffect(() => {
    if (drawn.value !== value) setDrawn({ value })
  }, [value])
  return drawn.value
}

/** Comes up once what stands around it has been drawn. */
export function AfterDrawn({ children }: { children: preact.ComponentChildren }): preact.ComponentChildren {
  const [drawn, setDrawn] = useState(false)
  useEffect(() => setDrawn(true), [])
  return drawn && children
}
