import { act, fireEvent, render, screen } from '@testing-library/preact'
import { expect, test } from 'vitest'
import { Refused } from '@/api/problem'
import { Tick } from '@/parts/fields'
import { Sent } from '@/parts/sent'
import { useAutoSave } from '@/store/forms/auto-save'

interface Facts {
  isolated: boolean
  perforation: boolean
}

function Form({ charted, send }: { charted: Facts; send: (all: Facts) => Promise<void> }) {
  const [facts, sending, change] = useAutoSave(charted, send)
  return (
    <>
      <Tick label="Dam" checked={facts.isolated} onChange={(isolated) => change({ isolated })} />
      <Tick label="Perforation" checked={facts.perforation} onChange={(perforation) => change({ perforation })} />
      <Sent sending={sending} />
    </>
  )
}

/** Sendings that are answered when the test says so. */
function postbox() {
  const sent: { all: Facts; answer: (error?: Error) => void }[] = []
  const send = (all: Facts) =>
    new Promise<void>((resolve, reject) => {
      sent.push({ all, answer: (error) => (error ? reject(error) : resolve()) })
    })
  const answer = async (n: number, error?: Error) => {
    await act(async () => {
      sent[n]?.answer(error)
      // What follows waits for promises alone: a turn later it is done.
      await new Promise((resolve) => setTimeout(resolve, 0))
    })
  }
  return { sent, send, answer }
}

const none: Facts = { isolated: false, perforation: false }
const ticked = (label: string) => (screen.getByLabelText(label) as HTMLInputElement).checked
const tick = (label: string) =>
  act(async () => {
    fireEvent.click(screen.getByLabelText(label))
    await Promise.resolve()
  })

test('a fact is shown as chosen while it is on its way', async () => {
  const { send, sent } = postbox()
  render(<Form charted={none} send={send} />)
  await tick('Dam')
  expect(ticked('Dam')).toBe(true)
  expect(sent[0]?.all).toEqual({ isolated: true, perforation: false })
})

test('a second choice before the first is answered does not take the first back, and waits for its turn', async () => {
  const { send, sent, answer } = postbox()
  render(<Form charted={none} send={send} />)
  await tick('Dam')
  await tick('Perforation')
  expect(sent).toHaveLength(1)
  await answer(0)
  expect(sent[1]?.all).toEqual({ isolated: true, perforation: true })
  expect([ticked('Dam'), ticked('Perforation')]).toEqual([true, true])
})

test('a refused fact is shown as it is charted, with the reason', async () => {
  const { send, answer } = postbox()
  render(<Form charted={none} send={send} />)
  await tick('Dam')
  await answer(0, new Refused(403, { detail: 'A case is changed by its own student.' }))
  expect(ticked('Dam')).toBe(false)
  expect(screen.getByText('A case is changed by its own student.')).toBeTruthy()
})
