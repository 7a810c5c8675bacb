import { beforeEach, expect, test, vi } from 'vitest'
import { openDraft } from '@/store/session/drafts'
import { signedIn } from './people'

beforeEach(() => signedIn('Priya'))

const empty = { alias: '', tooth: '' }

test('what was typed is there again after the app was closed', async () => {
  const first = openDraft('new case', empty)
  first.set({ alias: 'Reed' })
  first.set({ tooth: '26' })
  await first.settled()
  const again = openDraft('new case', empty)
  await again.settled()
  expect(again.fields.value).toEqual({ alias: 'Reed', tooth: '26' })
  expect(again.restored.value).toBe(true)
})

test('what changes faster than it can be written is written once, as it was last', async () => {
  const puts = vi.spyOn(IDBObjectStore.prototype, 'put')
  const drag = openDraft('marks', empty)
  for (let at = 0; at <= 60; at++) drag.set({ alias: `${at}` })
  await drag.settled()
  expect(puts.mock.calls.length).toBeLessThan(3)
  puts.mockRestore()
  const again = openDraft('marks', empty)
  await again.settled()
  expect(again.fields.value.alias).toBe('60')
})

test('nothing typed, nothing restored', async () => {
  const draft = openDraft('new case', empty)
  await draft.settled()
  expect([draft.restored.value, draft.ready.value]).toEqual([false, true])
})

test('what is typed before the store has answered is not overwritten by it', async () => {
  const first = openDraft('new case', empty)
  first.set({ alias: 'Old' })
  await first.settled()
  const second = openDraft('new case', empty)
  second.set({ alias: 'New' })
  await second.settled()
  expect(second.fields.value.alias).toBe('New')
  expect(second.restored.value).toBe(false)
})

test('once the server has it, the draft is gone', async () => {
  const draft = openDraft('new case', empty)
  draft.set({ alias: 'Reed' })
  await draft.clear(empty)
  const again = openDraft('new case', empty)
  await again.settled()
  expect(again.fields.value).toEqual(empty)
})

test('another person on the phone does not see it, and it is there for the first again', async () => {
  const draft = openDraft('new case', empty)
  draft.set({ alias: 'Reed' })
  await draft.settled()
  signedIn('Tom')
  const other = openDraft('new case', empty)
  await other.settled()
  expect(other.fields.value).toEqual(empty)
  signedIn('Priya')
  const again = openDraft('new case', empty)
  await again.settled()
  expect(again.fields.value.alias).toBe('Reed')
})

test('a draft belongs to who began it, also when somebody else signs in while it is written', async () => {
  const draft = openDraft('new case', empty)
  signedIn('Tom')
  draft.set({ alias: 'Reed' })
  await draft.settled()
  const other = openDraft('new case', empty)
  await other.settled()
  expect(other.fields.value).toEqual(empty)
})

test('a form that grew a field opens an older draft with that field empty', async () => {
  const draft = openDraft<{ alias: string }>('new case', { alias: '' })
  draft.set({ alias: 'Reed' })
  await draft.settled()
  const grown = openDraft('new case', { ...empty, setting: '' })
  await grown.settled()
  expect(grown.fields.value).toEqual({ alias: 'Reed', tooth: '', setting: '' })
})
