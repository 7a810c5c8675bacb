import * as calls from '@/api/calls'
import { replace } from './cached'
import { useCached } from './hooks'

const CODES = 'codes for the bench'

/** Whether one-time codes of the reader's count at the bench. */
export function useCodes() {
  return useCached(CODES, calls.getBenchCode)
}

/** A new secret, shown once: it is given to the screen and kept nowhere. */
export const makeCodes = calls.makeBenchCode

export async function confirmCodes(code: string): Promise<void> {
  await replace(CODES, await calls.confirmBenchCode(code))
}

export async function removeCodes(): Promise<void> {
  await calls.removeBenchCode()
  await replace(CODES, await calls.getBenchCode())
}
