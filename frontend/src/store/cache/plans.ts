import { type Signal, signal } from '@preact/signals'
import { useEffect, useMemo, useState } from 'preact/hooks'
import * as calls from '@/api/calls'
import { patiently } from '@/api/patiently'
import { Refused, Unreachable } from '@/api/problem'
import type { Asked, CaseShown, GivenChanges, Plan, VersionListed, VersionShown } from '@/api/shapes'
import { read, write } from '@/store/device/database'
import { personId } from '@/store/session/session'
import { cachedSignal, refresh } from './cached'
import { refreshCase } from './cases'
import { useCached } from './hooks'

const versionsName = (caseId: string) => `versions of ${caseId}`

export const versionName = (id: string) => `version ${id}`

/** The versions of a case's plan, newest first. */
export function useVersions(caseId: string | undefined) {
  return useCached(caseId && versionsName(caseId), async () => (await calls.listVersions(caseId ?? '')).results)
}

export function useVersion(id: string | undefined) {
  return useCached(id && versionName(id), () => askVersion(id ?? ''))
}

/** What it is made from and says never changes: what this phone has of that is not asked for again. */
export const askVersion = (id: string) => calls.getVersion(id, cachedSignal<VersionShown>(versionName(id)).peek().value)

/** What changed in a version since the one that was last decided on. */
export function useChanges(id: string | undefined) {
  return useCached(id && `changes of ${id}`, () => calls.getChanges(id ?? ''))
}

export interface Preview {
  readonly plan?: Plan
  /** What the plan on the screen was computed from. */
  readonly asked?: Asked
  /** What went in otherwise than into the version it is compared with. */
  readonly inputChanges?: GivenChanges | undefined
  /** `computing` and `offline`: the figures are those of the choices before. */
  readonly state: 'none' | 'computing' | 'computed' | 'offline' | 'refused'
  readonly problem?: Refused
  /** It takes longer than usual, or the server said that it works for others. */
  readonly crowded?: boolean
}

const AGAIN_MS = 5000 // how soon a preview without an answer is asked for again

const LONG_MS = 3000 // most plans are there by then

const PAUSE_MS = 250 // between one tap on a stepper and the next

/** The plan as it would be with these choices, computed by the server after each change of them. */
export function usePreview(
  of: CaseShown | undefined,
  asked: Asked | undefined,
  against?: number,
): Preview & { readonly again: () => void } {
  const id = of?.id
  const preview = useMemo(() => signal<Preview>({ state: 'none' }), [id])
  const [tries, setTries] = useState(0)
  const again = () => setTries((n) => n + 1)
  const key = asked && of ? JSON.stringify([of.revision, asked, against, tries]) : undefined
  useEffect(() => {
    if (!id || !asked) return
    const turn = new AbortController()
    preview.value = { ...preview.value, state: 'computing' }
    const timer = setTimeout(
      () => void compute(preview, id, asked, against, turn.signal),
      preview.value.plan ? PAUSE_MS : 0,
    )
    return () => {
      turn.abort()
      clearTimeout(timer)
    }
  }, [id, key])
  const { state } = preview.value
  useEffect(() => {
    if (state !== 'offline') return
    const timer = setTimeout(again, AGAIN_MS)
    addEventListener('online', again)
    return () => {
      clearTimeout(timer)
      removeEventListener('online', again)
    }
  }, [state, tries])
  return { ...preview.value, again }
}

async function compute(
  preview: Signal<Preview>,
  id: string,
  asked: Asked,
  against: number | undefined,
  left: AbortSignal,
): Promise<void> {
  const name = `preview of ${id}`
  const crowded = () => {
    if (!left.aborted) preview.value = { ...preview.value, crowded: true }
  }
  const long = setTimeout(crowded, LONG_MS)
  try {
    const planned = () =>
      Promise.all([
        calls.previewPlan(id, asked),
        // An older server knows this one not; the plan is shown all the same.
        against === undefined ? undefined : calls.previewChanges(id, asked, against).catch(() => undefined),
      ])
    const [plan, inputChanges] = await patiently(planned, crowded, left)
    if (!left.aborted) preview.value = { plan, asked, inputChanges, state: 'computed' }
    await write('kept', personId(), name, { plan, asked }).catch(() => undefined)
  } catch (error) {
    if (left.aborted) return
    const { crowded: _, ...before } = preview.value
    if (error instanceof Refused) preview.value = { ...before, state: 'refused', problem: error }
    else if (error instanceof Unreachable) {
      const copy = await read('kept', personId(), name).catch(() => undefined)
      const last = (copy?.value ?? {}) as Pick<Preview, 'plan' | 'asked'>
      preview.value = { ...last, ...before, state: 'offline' }
    } else throw error
  } finally {
    clearTimeout(long)
  }
}

/** Makes the plan of these choices the case's version and asks for its approval. */
export async function askForApproval(of: CaseShown, id: string, asked: Asked): Promise<void> {
  try {
    const version = await calls.proposePlan(of.id, { id, ...asked })
    // Where nothing but lengths moved in the middle of the work, the approval has been carried over.
    if (version.state !== 'approved') await calls.submitPlan(version.id)
  } finally {
    await refreshPlan(of.id)
  }
}

export async function withdraw(version: VersionListed): Promise<void> {
  await calls.withdrawPlan(version.id)
  await refreshPlan(version.case_id)
}

/** Asks for the versions and the case anew. */
export async function refreshPlan(caseId: string): Promise<void> {
  await refresh(versionsName(caseId), async () => (await calls.listVersions(caseId)).results)
  await refreshCase(caseId)
}
