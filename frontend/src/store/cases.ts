import * as calls from '@/api/calls'
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

export function useKits() {
  return useKept('kits', async () => (await calls.listKits(programme())).results)
}

export function useTechniques() {
  return useKept('techniques', async () => (await calls.listTechniques(programme())).results)
}

export function useTooth(iso: string) {
  return useKept(`tooth ${iso}`, () => calls.getTooth(iso))
}
