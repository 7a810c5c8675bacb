import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { useState } from 'preact/hooks'
import { beforeEach, expect, test, vi } from 'vitest'
import { Sheet } from '@/parts/rationale/sheet'
import { address, go, startRouter } from '@/router'
import { until } from './until'

// A browser turns back some time after it was asked to, and from wherever it stands by then: the HTML standard,
// 'traverse the history by a delta', https://html.spec.whatwg.org/multipage/nav-history-apis.html#dom-history-back
const back = history.back.bind(history)

// What must not come cannot be waited for: three times as long as a turn back takes here.
const later = () => new Promise((resolve) => setTimeout(resolve, 60))

/** It comes to that, and a turn back that was still to come does not change it. */
async function comesTo(look: () => void): Promise<void> {
  await until(look)
  await later()
  look()
}

/** Two sheets, each with a button that opens it, the second from within the first as well, and a link beside them. */
function Screen() {
  const [open, setOpen] = useState<'one' | 'two'>()
  return (
    <main>
      <button type="button" onClick={() => setOpen('one')}>
        Open
      </button>
      <a href="/elsewhere">Elsewhere</a>
      {open && (
        <Sheet key={open} title={open} onClose={() => setOpen(undefined)}>
          <button type="button" onClick={() => setOpen('two')}>
            Next
          </button>
          <a href="/further">Further</a>
        </Sheet>
      )}
    </main>
  )
}

startRouter()

beforeEach(() => {
  vi.spyOn(history, 'back').mockImplementation(() => void setTimeout(back, 20))
  history.pushState(null, '', '/before')
  history.pushState(null, '', '/here')
  render(<Screen />)
})

const name = (role: string, says: string) => screen.getByRole(role, { name: says, hidden: true })
const opened = async () => {
  fireEvent.click(name('button', 'Open'))
  await screen.findByText('Next')
  await until(() => expect(history.state).toEqual({ sheet: true }))
}

test('a link touched while a sheet gives its place back leads where it says', async () => {
  await opened()
  fireEvent.click(name('button', 'Close'))
  fireEvent.click(name('link', 'Elsewhere'))
  await comesTo(() => expect([location.pathname, address.value]).toEqual(['/elsewhere', '/elsewhere']))
  back()
  expect([location.pathname, history.state]).toEqual(['/here', null])
})

test('a link on a sheet leaves no place of the sheet behind', async () => {
  await opened()
  fireEvent.click(name('link', 'Further'))
  await comesTo(() => expect(location.pathname).toBe('/further'))
  back()
  expect([location.pathname, history.state]).toEqual(['/here', null])
})

test('what is put in the place of a screen under a sheet is not put in the place of the sheet', async () => {
  await opened()
  go('/instead', { replace: true })
  await comesTo(() => expect(location.pathname).toBe('/instead'))
  back()
  expect(location.pathname).toBe('/before')
})

test('a sheet that follows another stays, and the way back closes it alone', async () => {
  await opened()
  fireEvent.click(name('button', 'Next'))
  await comesTo(() => expect(screen.getByRole('heading', { name: 'two' })).toBeTruthy())
  expect(history.state).toEqual({ sheet: true })
  back()
  await waitFor(() => expect(screen.queryByRole('heading', { name: 'two' })).toBeNull())
  expect([location.pathname, history.state]).toEqual(['/here', null])
})

test('the place of a sheet that was open when the app was loaded anew is given back', async () => {
  history.pushState({ sheet: true }, '')
  startRouter()
  await comesTo(() => expect([location.pathname, history.state]).toEqual(['/here', null]))
})

test('a browser that does not turn back holds nobody up', async () => {
  vi.spyOn(history, 'back').mockImplementation(() => {})
  await opened()
  vi.useFakeTimers()
  fireEvent.click(name('button', 'Close'))
  go('/elsewhere')
  vi.advanceTimersByTime(1000)
  expect(location.pathname).toBe('/elsewhere')
  vi.useRealTimers()
})
