import { act, render } from '@testing-library/preact'
import { afterEach, expect, test, vi } from 'vitest'
import { AfterDrawn, useAfterDrawn } from '@/parts/after-drawn'
import { DepthBoard } from '@/parts/depth-board/depth-board'
import { plan } from './sample-plan'
import { until } from './until'

afterEach(() => vi.unstubAllGlobals())

test('what was chosen is seen first, what it opens follows', () => {
  const drawn: string[] = []
  function Views({ chosen }: { chosen: string }) {
    drawn.push(`${chosen}, ${useAfterDrawn(chosen)}`)
    return null
  }
  const { rerender } = render(<Views chosen="depths" />)
  rerender(<Views chosen="stops" />)
  expect(drawn).toEqual(['depths, depths', 'stops, depths', 'stops, stops'])
})

test('what stands around comes first', () => {
  const around: (string | null)[] = []
  function Choices() {
    around.push(document.body.textContent)
    return <p>choices</p>
  }
  const { container } = render(
    <>
      <p>board</p>
      <AfterDrawn>
        <Choices />
      </AfterDrawn>
    </>,
  )
  expect(around).toEqual(['board'])
  expect(container.textContent).toBe('boardchoices')
})

test('a board is drawn once, at the size that it has', async () => {
  const tellers: (() => void)[] = []
  class Watcher {
    constructor(tell: () => void) {
      tellers.push(tell)
    }
    observe() {}
    disconnect() {}
  }
  vi.stubGlobal('ResizeObserver', Watcher)
  vi.spyOn(Element.prototype, 'getBoundingClientRect').mockReturnValue(new DOMRect(0, 0, 400, 500))
  const { canals } = plan(3)
  const drawn = vi.fn(() => [].values())
  const silhouettes = Object.assign(new Map(), { values: drawn })
  const { container } = render(<DepthBoard canals={canals} silhouettes={silhouettes} />)
  await until(() => expect(container.querySelector('svg')?.getAttribute('width')).toBe('400'))
  // Resize Observer (W3C): of what is observed the first size is told, once the page was laid out.
  act(() => tellers.forEach((tell) => void tell()))
  // Its scales are laid out for a guess and for what was measured.
  expect(drawn).toHaveBeenCalledTimes(2)
})
