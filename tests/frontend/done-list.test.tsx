import { fireEvent, render } from '@testing-library/preact'
import { expect, test } from 'vitest'
import { DoneList } from '@/screens/chair/done-list'
import { chairAfter } from './sample-chair'
import { until } from './until'

test('which plan came into force is said by its number', async () => {
  const replan = (plan: string, replaces: string) =>
    ({ kind: 'replan', canal: '', plan, actor: 'v', payload: { replaces } }) as const
  const { chair } = chairAfter([replan('B', 'A'), replan('C', 'B')])
  Object.assign(chair, { version: { number: 3, hash: 'C' } })
  const { container } = render(<DoneList chair={chair} />)
  const list = container.querySelector('details') as HTMLDetailsElement
  // Nobody reads it while it is shut, and each answer would have it written anew.
  expect(container.querySelectorAll('li')).toHaveLength(0)
  list.open = true
  fireEvent(list, new Event('toggle'))
  await until(() => expect(container.querySelectorAll('li')).toHaveLength(2))
  const said = [...container.querySelectorAll('li')].map((element) => element.textContent?.trim())
  expect(said[0]).toContain('plan 3 came into force')
  expect(said[1]).toContain('a plan came into force')
})
