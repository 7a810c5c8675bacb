import * as calls from '@/api/calls'
import { Refused } from '@/api/problem'
import type { NewOverride, NewReview, Override, VersionShown } from '@/api/shapes'
import { membership } from '@/store/session/session'
import { refresh, replace } from './cached'
import { refreshCase } from './cases'
import { useCached, usePolling } from './hooks'
import { askVersion, useChanges, useVersion, useVersions, versionName } from './plans'

const LIVE_MS = 4000 // a supervisor knows within five seconds of what waits

/** The plans that wait and whether there are more than are listed, asked for anew while the screen is looked at. */
export function useWaiting() {
  const waiting = useCached('plans that wait, listed', () => calls.listWaiting(membership.value?.programme.id ?? ''))
  usePolling(true, waiting, LIVE_MS)
  return waiting
}

/** The work that goes on at the chairs of the programme, and whether there is more than is listed. */
export function useRunning() {
  const running = useCached('running work, listed', () => calls.listRunning(membership.value?.programme.id ?? ''))
  usePolling(true, running, LIVE_MS)
  return running
}

/** Lets canals go that the approval of the version had left out. */
export async function releaseCanals(version: VersionShown, canals: readonly string[]): Promise<void> {
  const released = await calls.release(version.id, version.hash, [...canals])
  await replace(versionName(version.id), { ...version, ...released })
}

/** Withdraws the approval of the version whose hash was on the screen. */
export async function revoke(version: VersionShown, body: { id: string; reason: string }): Promise<void> {
  const revoked = await calls.revoke(version.id, version.hash, body)
  await replace(versionName(version.id), { ...version, ...revoked })
}

/** A version to decide on, what changed since the last one decided on, and that one to lay under it. */
export function useReview(id: string) {
  const version = useVersion(id)
  const { changes } = useChanges(id).value ?? {}
  const versions = useVersions(version.value?.case_id).value
  const earlier = versions?.find((v) => v.number === changes?.from_number)
  const before = useVersion(earlier?.id).value
  return { version, versions, changes: changes ?? undefined, before: changes ? before : undefined }
}

/** A supervisor decides on the version whose hash was on the screen. Where somebody was first, it is shown as it is now. */
export async function decide(version: VersionShown, body: NewReview): Promise<void> {
  const again = () => refresh(versionName(version.id), () => askVersion(version.id))
  try {
    await calls.review(version.id, version.hash, body)
  } catch (error) {
    if (error instanceof Refused && (error.status === 409 || error.status === 412)) await again()
    throw error
  }
  await again()
}

const CODES = 'codes for the bench'

/** Whether one-time codes of the reader's count at the bench. */
export function useCodes() {
  return useCached(CODES, calls.getOneTimeCode)
}

/** A new secret, shown once: it is given to the screen and kept nowhere. */
export const makeCodes = calls.makeOneTimeCode

export async function confirmCodes(code: string): Promise<void> {
  await replace(CODES, await calls.confirmOneTimeCode(code))
}

export async function removeCodes(): Promise<void> {
  await calls.removeOneTimeCode()
  await replace(CODES, await calls.getOneTimeCode())
}

interface Version {
  readonly id: string
  readonly case_id: string
}

/** A supervisor lets the work go on in spite of a caution; the plan has to be made again with it. */
export async function addOverride(version: Version, body: NewOverride): Promise<void> {
  await calls.addOverride(version.case_id, body)
  await again(version)
}

/** Takes it back: the next plan withholds again. */
export async function withdrawOverride(version: Version, override: Override): Promise<void> {
  await calls.withdrawOverride(override.id)
  await again(version)
}

async function again(version: Version): Promise<void> {
  await refreshCase(version.case_id)
  await refresh(versionName(version.id), () => askVersion(version.id))
}
