import { Refused } from './problem'

/**
 * What `send` comes to. Where the server works for others it is sent again, after as long as the server says; `waits` is
 * told when such a pause begins and when it is over. Once `left` is aborted nothing is sent any more: the refusal stands.
 */
export async function patiently<T>(
  send: () => Promise<T>,
  waits: (pausing: boolean) => void,
  left: AbortSignal,
): Promise<T> {
  for (;;) {
    try {
      return await send()
    } catch (error) {
      if (!(error instanceof Refused) || error.againMs === undefined || left.aborted) throw error
      waits(true)
      await pause(error.againMs, left)
      if (left.aborted) throw error
      waits(false)
    }
  }
}

function pause(ms: number, left: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    const over = () => {
      clearTimeout(timer)
      left.removeEventListener('abort', over)
      resolve()
    }
    const timer = setTimeout(over, ms)
    left.addEventListener('abort', over)
  })
}
