import * as calls from '@/api/calls'
import { Refused, Unreachable } from '@/api/problem'
import type * as S from '@/api/shapes'
import type { Tooth, ToothName } from '@/api/shapes'
import { read, write } from '@/store/device/database'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import { cachedSignal, refresh, replace } from './cached'
import { useCached } from './hooks'

const programme = (): string => membership.value?.programme.id ?? ''

const caseName = (id: string) => `case ${id}`
const CASES = 'cases'

/** The newest cases, and where older ones begin. */
export function useCases() {
  return useCached(CASES, () => calls.listCases(programme()))
}

/** The last cases of a student, the newest first. */
export function useCasesOf(student: string) {
  return useCached(`cases of ${student}`, () => calls.listCasesOf(programme(), student))
}

/** The page of cases that begins where `next` says. */
export function olderCases(next: string) {
  return calls.listCases(programme(), new URL(next).searchParams.get('cursor') ?? undefined)
}

export function useCase(id: string) {
  return useCached(caseName(id), () => calls.getCase(id))
}

/** Asks for the case anew: something in it was changed. */
export function refreshCase(id: string): Promise<void> {
  return refresh(caseName(id), () => calls.getCase(id))
}

export async function openCase(body: S.NewCase): Promise<string> {
  const made = await calls.openCase(programme(), body)
  await replace(caseName(made.id), made)
  return made.id
}

/** What is sent carries the revision that was last seen; afterwards the case is asked for anew. */
export async function changeCase(id: string, change: S.CaseChanges): Promise<void> {
  const seen = cachedSignal<S.CaseShown>(caseName(id)).peek().value?.revision ?? 0
  await replace(caseName(id), await calls.changeCase(id, seen, change))
}

export async function addCanal(to: S.CaseShown, body: Parameters<typeof calls.addCanal>[1]): Promise<void> {
  await calls.addCanal(to.id, body)
  await refreshCase(to.id)
}

export async function changeCanal(of: S.CaseShown, canal: string, change: S.CanalFacts): Promise<void> {
  await calls.changeCanal(canal, change)
  await refreshCase(of.id)
}

export async function removeCanal(of: S.CaseShown, canal: string): Promise<void> {
  await calls.removeCanal(canal)
  await refreshCase(of.id)
}

/** Strikes a reading that was a mistake. It needs the connection: what rests on it is worked out on the server. */
export async function strike(
  caseId: string,
  kind: 'readings' | 'junctions',
  id: string,
  why: S.StruckWhy,
): Promise<void> {
  await (kind === 'readings' ? calls.strikeReading(id, why) : calls.strikeJunction(id, why))
  await refreshCase(caseId)
}

export async function changeRoot(of: S.CaseShown, root: string, body: Omit<S.RootInput, 'name'>): Promise<void> {
  await calls.changeRoot(of.id, root, body)
  await refreshCase(of.id)
}

export function useKits(of: string | undefined) {
  return useCached(of && `kits of ${of}`, async () =>
    (await calls.listKits(of ?? '')).results.map(({ id, kit }) => ({ id, ...kit })),
  )
}

export function useTechniques(of: string | undefined) {
  return useCached(of && `techniques of ${of}`, async () =>
    (await calls.listTechniques(of ?? '')).results.map((shown) => shown.technique),
  )
}

const OF_LENGTHS = /^(lengths|set_back|allowance|locator)\./

/** The programme's figures that lengths are settled by [mm], by their keys. */
export function useLengthFigures(of: string | undefined) {
  return useCached(of && `figures of lengths in ${of}`, async () => {
    const figures = (await calls.listFigures(of ?? '')).results.filter(({ key }) => OF_LENGTHS.test(key))
    return Object.fromEntries(figures.map(({ key, value }) => [key, value]))
  })
}

export function useTooth(iso: string) {
  return useCached(`tooth ${iso}`, () => calls.getTooth(iso))
}

/** What can make a case difficult. */
export function useFactors() {
  return useCached('factors of difficulty', async () => [...(await calls.listFactors()).results])
}

/** The record of a case as the server last gave it, kept on the phone. */
export function useRecord(caseId: string) {
  return useCached(`record ${caseId}`, () => calls.getRecord(caseId))
}

export interface ToothSearch {
  readonly tooth?: Tooth
  /** Why there is none. */
  readonly wrong?: string
}

const EVERYONE = 'everyone' // teeth belong to nobody

/** The tooth of that name: from the server, or as this phone saw it before. */
export async function findTooth(name: ToothName): Promise<ToothSearch> {
  const key = `tooth ${name.notation} ${name.designation}`
  try {
    const tooth = await calls.findTooth(name)
    await write('kept', EVERYONE, key, tooth).catch(() => undefined)
    return { tooth }
  } catch (error) {
    if (error instanceof Refused) return { wrong: error.fields[0]?.detail ?? error.message }
    if (!(error instanceof Unreachable)) throw error
    const copy = await read('kept', EVERYONE, key).catch(() => undefined)
    return copy ? { tooth: copy.value as Tooth } : { wrong: words.signIn.unreachable }
  }
}
