import { act, render as renderInPage } from '@testing-library/preact'
import { render } from 'preact'
import { afterEach, expect, test, vi } from 'vitest'
import { AfterDrawn, useAfterDrawn } from '@/parts/after-drawn'
import { DepthBoard } from '@/parts/depth-board/depth-board'
import { plan } from './sample-plan'
import { until } from './until'

afterEach(() => vi.unstubAllGlobals())

function Views({ chosen }: { chosen: string }) {
  return (
    <>
      <p key={chosen}>{chosen}, </p>
      <p>{useAfterDrawn(chosen)}</p>
    </>
  )
}

test('what was chosen is seen first, what it opens follows', async () => {
  const root = document.createElement('div')
  render(<Views chosen="depths" />, root)
  render(<Views chosen="stops" />, root)
  expect(root.textContent).toBe('stops, depths')
  await until(() => expect(root.textContent).toBe('stops, stops'))
  render(null, root)
})

test('what stands around comes first', async () => {
  const root = document.createElement('div')
  render(<AfterDrawn>choices</AfterDrawn>, root)
  expect(root.textContent).toBe('')
  await until(() => expect(root.textContent).toBe('choices'))
  render(null, root)
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
  const { container } = renderInPage(<DepthBoard canals={canals} silhouettes={silhouettes} />)
  await until(() => expect(container.querySelector('svg')?.getAttribute('width')).toBe('400'))
  // Resize Observer (W3C): of what is observed the first size is told, once the page was laid out.
  act(() => tellers.forEach((tell) => void tell()))
  // Its scales are laid out for a guess and for what was measured.
  expect(drawn).toHaveBeenCalledTimes(2)
})
