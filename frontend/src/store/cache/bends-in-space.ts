import * as calls from '@/api/markings'
import type { BendsInSpaceShown, NewBendInSpace } from '@/api/shapes'
import { refresh } from './cached'
import { refreshCase } from './cases'
import { useCached } from './hooks'

const nameOf = (canalId: string) => `bends in space of ${canalId}`

/** Every bend in space of a canal, the last one counts. */
export function useBendsInSpace(canalId: string) {
  return useCached<BendsInSpaceShown>(nameOf(canalId), () => calls.listBendsInSpace(canalId))
}

/** Combines two views for good; the server charts what they come to. `id` is the same when it is tried again. */
export async function combineViews(caseId: string, canalId: string, id: string, body: NewBendInSpace): Promise<void> {
  await calls.combineViews(canalId, id, body)
  await refresh(nameOf(canalId), () => calls.listBendsInSpace(canalId))
  await refreshCase(caseId)
}
