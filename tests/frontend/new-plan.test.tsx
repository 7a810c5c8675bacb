import { fireEvent, render, screen, waitFor } from '@testing-library/preact'
import { beforeEach, describe, expect, test } from 'vitest'
import { usePlanSeen } from '@/store/cache/plan-seen'
import { writeDevice } from '@/store/device/database'
import { personId } from '@/store/session/session'
import { signedIn } from './people'

let seen: ReturnType<typeof usePlanSeen>

function Phone({ of, inForce }: { of: string; inForce: string | undefined }) {
  seen = usePlanSeen(of, inForce)
  return (
    <button type="button" onClick={seen.acknowledge}>
      read
    </button>
  )
}

beforeEach(() => signedIn('Ines', 'student'))

describe('the plan that was last worked by on this phone', () => {
  test('the first one is taken as it is', async () => {
    render(<Phone of="k1" inForce="A" />)
    await waitFor(() => expect(seen.known).toBe(true))
    expect(seen.older).toBeUndefined()
  })

  test('another one is over until it was read, and stays read', async () => {
    await writeDevice(`plan worked by ${personId()} in k2`, 'A')
    const { rerender } = render(<Phone of="k2" inForce="B" />)
    await waitFor(() => expect(seen.older).toBe('A'))
    fireEvent.click(screen.getByRole('button'))
    await waitFor(() => expect(seen.older).toBeUndefined())
    rerender(<Phone of="k2" inForce="C" />)
    await waitFor(() => expect(seen.older).toBe('B'))
  })

  test('before it is heard which one is in force none is over', async () => {
    await writeDevice(`plan worked by ${personId()} in k3`, 'A')
    render(<Phone of="k3" inForce={undefined} />)
    await waitFor(() => expect(seen.known).toBe(true))
    expect(seen.older).toBeUndefined()
  })
})
