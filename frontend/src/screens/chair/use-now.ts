import { useEffect, useState } from 'preact/hooks'

/** The time, brought up to date every so often while the screen shows it. */
export function useNow(every_ms: number, wanted = true): number {
  const [now, setNow] = useState(Date.now)
  useEffect(() => {
    if (!wanted) return
    setNow(Date.now())
    const timer = setInterval(() => setNow(Date.now()), every_ms)
    return () => clearInterval(timer)
  }, [every_ms, wanted])
  return now
}
