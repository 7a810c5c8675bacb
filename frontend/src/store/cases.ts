import * as calls from '@/api/calls'
import type * as S from '@/api/shapes'
import { refresh, replace } from './kept'
import { membership } from './session'
import { useKept } from './use'

const programme = (): string => membership.value?.programme.id ?? ''

const caseName = (id: string) => `case ${id}`
const CASES = 'cases'

export function useCases() {
  return useKept(CASES, async () => (await calls.listCases(programme())).results)
}

export function useCase(id: string) {
  return useKept(caseName(id), () => calls.getCase(id))
}

/** Asks for the case anew: something in it was changed. */
export function refreshCase(id: string): Promise<void> {
  return refresh(caseName(id), () => calls.getCase(id))
}

export async function openCase(body: calls.NewCase): Promise<string> {
  const made = await calls.openCase(programme(), body)
  await replace(caseName(made.id), made)
  return made.id
}

/** What is sent carries the revision that was on the screen; afterwards the case is asked for anew. */
export async function changeCase(of: S.CaseDetail, change: Partial<S.CaseDetail>): Promise<void> {
  await replace(caseName(of.id), await calls.changeCase(of.id, of.revision, change))
}

export async function addCanal(to: S.CaseDetail, body: Parameters<typeof calls.addCanal>[1]): Promise<void> {
  await calls.addCanal(to.id, body)
  await refreshCase(to.id)
}

export async function changeCanal(of: S.CaseDetail, canal: string, change: Partial<S.CaseCanal>): Promise<void> {
  await calls.changeCanal(canal, change)
  await refreshCase(of.id)
}

export async function removeCanal(of: S.CaseDetail, canal: string): Promise<void> {
  await calls.removeCanal(canal)
  await refreshCase(of.id)
}

export async function changeRoot(of: S.CaseDetail, root: string, body: Omit<S.CaseRoot, 'name'>): Promise<void> {
  await calls.changeRoot(of.id, root, body)
  await refreshCase(of.id)
}

export async function addReading(caseId: string, canal: string, id: string, reading: S.Reading): Promise<void> {
  await calls.addReading(canal, { id, reading })
  await refreshCase(caseId)
}

export async function addJunction(
  caseId: string,
  canal: string,
  body: Parameters<typeof calls.addJunction>[1],
): Promise<void> {
  await calls.addJunction(canal, body)
  await refreshCase(caseId)
}

export function useKits() {
  return useKept('kits', async () => (await calls.listKits(programme())).results)
}

export function useTechniques() {
  return useKept('techniques', async () => (await calls.listTechniques(programme())).results)
}

export function useTooth(iso: string) {
  return useKept(`tooth ${iso}`, () => calls.getTooth(iso))
}
