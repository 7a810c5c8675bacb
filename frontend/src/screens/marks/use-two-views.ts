import { useEffect, useState } from 'preact/hooks'
import { Refused } from '@/api/problem'
import type { TwoViewsRead, Views } from '@/api/shapes'
import { readTwoViews } from '@/store/images/markings'
import { words } from '@/words/en'

const PAUSE_MS = 300 // between one touch of a stepper and the next

/** The server's answer to what is asked, or why there is none; neither while something is missing or on its way. */
export function useTwoViews(views: Views | undefined): readonly [TwoViewsRead | undefined, string | undefined] {
  const [answer, setAnswer] = useState<TwoViewsRead>()
  const [problem, setProblem] = useState<string>()
  const key = JSON.stringify(views)
  useEffect(() => {
    setAnswer(undefined)
    setProblem(undefined)
    if (!views) return
    let over = false
    const timer = setTimeout(() => {
      readTwoViews(views).then(
        (read) => over || setAnswer(read),
        (error: Error) => over || setProblem(saidOf(error)),
      )
    }, PAUSE_MS)
    return () => {
      over = true
      clearTimeout(timer)
    }
  }, [key])
  return [answer, problem]
}

const saidOf = (error: Error): string =>
  error instanceof Refused ? (error.fields[0]?.detail ?? error.message) : words.marks.needsConnection
