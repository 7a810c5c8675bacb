import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, describe, expect, test } from 'vitest'
import type { Caution, Plan, VersionListed, VersionShown } from '@/api/shapes'
import { Acknowledge } from '@/screens/review/acknowledge'
import { Answer } from '@/screens/review/answer'
import { Chips } from '@/screens/review/chips'
import { emptyReview, type ReviewFields } from '@/screens/review/review-fields'
import { SaidLast } from '@/screens/review/said-last'
import { useDraft } from '@/store/cache/hooks'
import { signedIn } from './people'
import { canal, plan as samplePlan } from './sample-plan'
import { serve } from './server'

const bar = (code: string, canal: string | null, says: string, over: Partial<Caution> = {}) =>
  ({ code, canal, says, severity: 'stop', overridden: null, may_override: true, ...over }) as Caution

const plan: Plan = {
  ...samplePlan(1),
  canals: [canal('MB', 19), canal('DB', 18)],
  cautions: [
    bar('curve-supervisor', 'DB', 'It bends much.'),
    bar('difficulty-high', null, 'The case is hard.'),
    bar('wall-thin', 'MB', 'The wall is thin.', { overridden: 'Measured again.' }),
    bar('final-size-above', 'MB', 'Large.', { severity: 'caution' }),
  ],
}
const of = { id: 'v2', case_id: 'k1', number: 2, hash: 'h', state: 'waiting', plan } as VersionShown

const before = { ...plan, canals: [canal('MB', 18.5), canal('DB', 18)] }

const agree = (canal: string) => fireEvent.click(screen.getByRole('button', { name: `${canal}: open` }))

/** Once a further touch is no double tap. */
async function ready(name: string) {
  const button = await screen.findByRole('button', { name })
  await expect.poll(() => button.getAttribute('aria-disabled')).toBe('false')
  return button
}

function Review({ name }: { name: string }) {
  const draft = useDraft<ReviewFields>(name, () => emptyReview('r1'))
  return (
    <>
      <Chips plan={plan} before={before} picked="MB" onPick={() => undefined} draft={draft} />
      <Acknowledge plan={plan} draft={draft} />
      <Answer of={of} draft={draft} />
    </>
  )
}

beforeEach(() => signedIn('Dr Vale', 'supervisor'))

describe('what must be put right', () => {
  test('is said of its canal once', () => {
    const said = ['DB: a wide canal.', 'DB curves by 36 degrees.', 'DBX is no canal of this name.']
    const bars = said.map((says, i) => bar(`code-${i}`, 'DB', says))
    const draft = { fields: { value: emptyReview('r1') } } as ReturnType<typeof useDraft<ReviewFields>>
    render(<Acknowledge plan={{ ...plan, cautions: bars }} draft={draft} />)
    expect(screen.getAllByRole('checkbox').map((box) => box.closest('label')?.textContent)).toEqual([
      'DB: a wide canal.',
      'DB curves by 36 degrees.',
      'DB: DBX is no canal of this name.',
    ])
  })

  test('has a tick of its own each; until all are set nothing is approved and the button says what is missing', async () => {
    const sent = serve(({ method }) => (method === 'POST' ? { status: 201, body: {} } : { body: of }))
    render(<Review name="one" />)
    expect(screen.getAllByRole('checkbox')).toHaveLength(2)
    agree('MB')
    agree('DB')
    fireEvent.click(await screen.findByRole('button', { name: 'Approve plan 2 to tick: DB, Whole tooth' }))
    expect(await screen.findByText(/Tick each that must be put right before you approve/)).toBeTruthy()
    fireEvent.click(screen.getByRole('checkbox', { name: 'DB: It bends much.' }))
    fireEvent.click(await screen.findByRole('button', { name: 'Approve plan 2 to tick: Whole tooth' }))
    expect(sent).toHaveLength(0)
    fireEvent.click(screen.getByRole('checkbox', { name: 'Whole tooth: The case is hard.' }))
    fireEvent.click(await screen.findByRole('button', { name: 'Approve plan 2' }))
    await waitFor(() => expect(sent[0]?.path).toBe('plan-versions/v2/reviews'))
    expect(sent[0]?.body).toMatchObject({
      decision: 'approved',
      acknowledged: [
        { code: 'curve-supervisor', canal: 'DB' },
        { code: 'difficulty-high', canal: null },
      ],
    })
  })

  test('a tick taken back is missing again', async () => {
    render(<Review name="two" />)
    const tick = screen.getByRole('checkbox', { name: 'DB: It bends much.' })
    fireEvent.click(tick)
    await screen.findByRole('button', { name: /to tick: Whole tooth/ })
    fireEvent.click(tick)
    expect(await screen.findByRole('button', { name: /to tick: DB, Whole tooth/ })).toBeTruthy()
  })
})

describe('the decision on each canal', () => {
  test('is agreed, to be changed and open again by touches; while one is open nothing is approved', async () => {
    const sent = serve(() => ({ status: 201, body: {} }))
    render(<Review name="three" />)
    agree('MB')
    fireEvent.click(await ready('MB: agreed'))
    fireEvent.click(await ready('MB: to be changed'))
    expect(await screen.findByRole('button', { name: 'MB: open' })).toBeTruthy()
    fireEvent.click(screen.getByRole('button', { name: /Approve plan 2 open: MB, DB/ }))
    expect(await screen.findByText('Decide on MB, DB.')).toBeTruthy()
    expect(sent).toHaveLength(0)
  })

  test('takes a double tap as one', async () => {
    render(<Review name="five" />)
    const chip = screen.getByRole('button', { name: 'MB: open' })
    fireEvent.click(chip)
    fireEvent.click(chip)
    expect(await ready('MB: agreed')).toBeTruthy()
  })

  test('stands under what moved in the canal since the plan before', () => {
    render(<Review name="four" />)
    expect(screen.getByRole('group', { name: 'Decide on each canal' }).textContent).toContain('18.5 → 19.0')
    expect(screen.queryByText('18.0 → 18.0')).toBeNull()
  })
})

describe('what was said last stands on the plan that answers it', () => {
  const review = (decision: 'approved' | 'returned', at: string, returned = false) => ({
    id: at,
    decision,
    asked: 1,
    supervisor: { id: 's', name: 'Dr Vale' },
    at: `2026-03-05T${at}:00Z`,
    note: 'Look again.',
    remarks: [{ canal: 'DB', text: 'Shorter, please.', returned }],
    acknowledged: [],
  })
  const version = (number: number, ...reviews: ReturnType<typeof review>[]) =>
    ({ number, reviews }) as unknown as VersionListed

  test('the last return, by whom, with its note and the remark on each canal', () => {
    const versions = [version(2), version(1, review('returned', '10:00'))]
    const { container } = render(<SaidLast of={of} versions={versions} />)
    expect(container.textContent).toMatch(/Plan 1 returned by Dr Vale.*Look again\..*DB:.*Shorter, please\./)
  })

  test('also of the same plan, submitted once more as it was', () => {
    const { container } = render(<SaidLast of={of} versions={[version(2, review('returned', '10:00'))]} />)
    expect(container.textContent).toContain('Plan 2 returned by Dr Vale')
  })

  test('canals that an approval returned', () => {
    const { container } = render(<SaidLast of={of} versions={[version(1, review('approved', '10:00', true))]} />)
    expect(container.textContent).toContain('Shorter, please.')
  })

  test('a return that was answered by an approval since is over', () => {
    const versions = [version(1, review('returned', '10:00'), review('approved', '11:00'))]
    const { container } = render(<SaidLast of={of} versions={versions} />)
    expect(container.textContent).toBe('')
  })
})
