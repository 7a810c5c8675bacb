import { type Signal, signal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import * as calls from '@/api/calls'
import { Refused, Unreachable } from '@/api/problem'
import type { CaseDetail, Plan, PlanAsked, Version } from '@/api/shapes'
import { refreshCase } from './cases'
import { read, write } from './database'
import { refresh, replace } from './kept'
import { personId } from './session'
import { useKept } from './use'

const versionsName = (caseId: string) => `versions of ${caseId}`

/** The versions of a case's plan, newest first. */
export function useVersions(caseId: string) {
  return useKept(versionsName(caseId), async () => (await calls.listVersions(caseId)).results)
}

export function useVersion(id: string) {
  return useKept(`version ${id}`, () => calls.getVersion(id))
}

export interface Preview {
  readonly plan?: Plan
  /** What the plan on the screen was computed from. */
  readonly asked?: PlanAsked
  /** `computing` and `offline`: the figures are those of the choices before. */
  readonly state: 'none' | 'computing' | 'computed' | 'offline' | 'refused'
  readonly problem?: Refused
}

const PAUSE_MS = 250 // between one tap on a stepper and the next

/** The plan as it would be with these choices, computed by the server after each change of them. */
export function usePreview(of: CaseDetail | undefined, asked: PlanAsked | undefined): Preview {
  const id = of?.id
  const preview = useMemo(() => signal<Preview>({ state: 'none' }), [id])
  const key = asked && of ? JSON.stringify([of.revision, asked]) : undefined
  useEffect(() => {
    if (!id || !asked) return
    const turn = { over: false }
    preview.value = { ...preview.value, state: 'computing' }
    const timer = setTimeout(() => void compute(preview, id, asked, turn), preview.value.plan ? PAUSE_MS : 0)
    return () => {
      turn.over = true
      clearTimeout(timer)
    }
  }, [id, key])
  return preview.value
}

async function compute(preview: Signal<Preview>, id: string, asked: PlanAsked, turn: { over: boolean }): Promise<void> {
  const name = `preview of ${id}`
  try {
    const plan = await calls.previewPlan(id, asked)
    if (!turn.over) preview.value = { plan, asked, state: 'computed' }
    await write('kept', personId(), name, { plan, asked }).catch(() => undefined)
  } catch (error) {
    if (turn.over) return
    if (error instanceof Refused) preview.value = { ...preview.value, state: 'refused', problem: error }
    else if (error instanceof Unreachable) {
      const copy = await read('kept', personId(), name).catch(() => undefined)
      const last = (copy?.value ?? {}) as Pick<Preview, 'plan' | 'asked'>
      preview.value = { ...last, ...preview.value, state: 'offline' }
    } else throw error
  }
}

/** Makes the plan of these choices the case's version and asks for its approval. */
export async function askForApproval(of: CaseDetail, id: string, asked: PlanAsked): Promise<void> {
  try {
    const version = await calls.proposePlan(of.id, { id, ...asked })
    await calls.submitPlan(version.id, version.hash)
  } finally {
    await refreshPlan(of.id)
  }
}

export async function withdraw(version: Version): Promise<void> {
  await calls.withdrawPlan(version.id)
  await refreshPlan(version.case)
}

async function refreshPlan(caseId: string): Promise<void> {
  await refresh(versionsName(caseId), async () => (await calls.listVersions(caseId)).results)
  await refreshCase(caseId)
}

/** A supervisor decides on the version whose hash was on the screen. */
export async function decide(version: Version, body: calls.NewReview): Promise<void> {
  await calls.review(version.id, version.hash, body)
  await replace(`version ${version.id}`, await calls.getVersion(version.id))
}
