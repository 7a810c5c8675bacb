import { act, render } from '@testing-library/preact'
import { beforeEach, expect, test, vi } from 'vitest'
import { Viewer } from '@/parts/viewer/viewer'

class Loading {
  static last: Loading | undefined
  onload?: () => void
  onerror?: () => void
  naturalWidth = 60
  naturalHeight = 40
  constructor() {
    Loading.last = this
  }
}

beforeEach(() => vi.stubGlobal('Image', Loading))

/** What the viewer's places are taken by, from above. */
const places = (container: Element) =>
  [...(container.querySelector('.viewer')?.children ?? [])].map((child) => child.className)

test.each(['onload', 'onerror'] as const)('what is asked below keeps its place: %s', async (comes) => {
  const { container } = render(
    <Viewer address="/image" name="MB: length" onClose={() => 0}>
      <p>Which canal is it of?</p>
    </Viewer>,
  )
  const before = places(container)
  expect(before).toEqual(['row apart', 'image-board', 'viewer-tools'])
  await act(() => Loading.last?.[comes]?.())
  expect(container.querySelectorAll('.image-pane').length).toBe(comes === 'onload' ? 1 : 0)
  expect(places(container).filter((place) => !place.includes('viewer-note'))).toEqual(before)
})
