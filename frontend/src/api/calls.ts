import { ask } from './client'
import type * as S from './shapes'

/** One page of a list, and where the next begins. */
interface Listed<T> {
  results: T[]
  next: string | null
}

export const listCases = (programme: string) => ask<Listed<S.CaseSummary>>(`programmes/${programme}/cases`)
export const getCase = (id: string) => ask<S.CaseDetail>(`cases/${id}`)

export interface NewCase {
  id: string
  patient_alias: string
  tooth: S.ToothName
  setting: S.Setting
  canals: string[]
}
export const openCase = (programme: string, body: NewCase) =>
  ask<S.CaseDetail>(`programmes/${programme}/cases`, { method: 'POST', body })

export const changeCase = (id: string, revision: number, body: Partial<S.CaseDetail>) =>
  ask<S.CaseDetail>(`cases/${id}`, { method: 'PATCH', body, ifMatch: `"${revision}"` })

export const findTooth = (name: S.ToothName) => ask<S.Tooth>('compute/tooth', { method: 'POST', body: name })
export const getTooth = (iso: string) => ask<S.Tooth>(`teeth/${iso}`)

export const addCanal = (id: string, body: { id: string; name: string; root: string; reference_point: string }) =>
  ask<S.CaseCanal>(`cases/${id}/canals`, { method: 'POST', body })
export const changeCanal = (id: string, body: Partial<S.CaseCanal>) =>
  ask<S.CaseCanal>(`canals/${id}`, { method: 'PATCH', body })
export const removeCanal = (id: string) => ask<void>(`canals/${id}`, { method: 'DELETE' })
export const changeRoot = (id: string, root: string, body: { pattern: S.Pattern; main_canal: string | null }) =>
  ask<S.CaseRoot>(`cases/${id}/roots/${root}`, { method: 'PUT', body })
export const addReading = (canal: string, body: { id: string; reading: S.Reading }) =>
  ask<S.StoredReading>(`canals/${canal}/readings`, { method: 'POST', body })
export const addJunction = (canal: string, body: { id: string; from_terminus_mm: number; method: string }) =>
  ask<unknown>(`canals/${canal}/junctions`, { method: 'POST', body })

export const listKits = (programme: string) => ask<Listed<S.Kit>>(`programmes/${programme}/kits`)
export const listTechniques = (programme: string) => ask<Listed<S.Technique>>(`programmes/${programme}/techniques`)

export const previewPlan = (id: string, asked: S.PlanAsked) =>
  ask<S.Plan>(`cases/${id}/preview`, { method: 'POST', body: asked })
export const listVersions = (id: string) => ask<Listed<S.Version>>(`cases/${id}/plan-versions`)
export const proposePlan = (id: string, body: S.PlanAsked & { id: string }) =>
  ask<S.Version>(`cases/${id}/plan-versions`, { method: 'POST', body })
export const getVersion = (id: string) => ask<S.Version>(`plan-versions/${id}`)
export const submitPlan = (id: string, hash: string) =>
  ask<S.Version>(`plan-versions/${id}/submit`, { method: 'POST', ifMatch: `"${hash}"` })
export const withdrawPlan = (id: string) => ask<S.Version>(`plan-versions/${id}/withdraw`, { method: 'POST' })

export interface NewReview {
  id: string
  decision: 'approved' | 'returned'
  note: string
  remarks: { canal: string; text: string }[]
}
export const review = (id: string, hash: string, body: NewReview) =>
  ask<S.Review>(`plan-versions/${id}/reviews`, { method: 'POST', body, ifMatch: `"${hash}"` })
