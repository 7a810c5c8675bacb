import { expect, test, vi } from 'vitest'
import { later } from '@/app/later'

// What is brought here waits for promises alone: a turn later it has come.
const settled = () => new Promise((resolve) => setTimeout(resolve))

test('a part is loaded once, when it is first wanted', async () => {
  const bring = vi.fn(async () => ({ says: 'here' }))
  const part = later(bring)
  expect(bring).not.toHaveBeenCalled()
  expect([part.get(), part.get()]).toEqual([undefined, undefined])
  await settled()
  part.load()
  expect(part.get()).toEqual({ says: 'here' })
  expect(bring).toHaveBeenCalledTimes(1)
})

test('what could not be brought says so, is not asked for by itself, and comes when it is tried again', async () => {
  const bring = vi.fn<() => Promise<string>>().mockRejectedValueOnce(new TypeError('no line')).mockResolvedValue('here')
  const part = later(bring)
  part.load()
  await settled()
  expect([part.get(), part.failed()]).toEqual([undefined, true])
  expect(bring).toHaveBeenCalledTimes(1)
  part.load()
  expect(part.failed()).toBe(false)
  await settled()
  expect([part.get(), part.failed()]).toEqual(['here', false])
})
