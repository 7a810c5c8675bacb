import * as calls from '@/api/calls'
import type { Asked, VersionShown } from '@/api/shapes'
import { refresh } from '@/store/cache/cached'
import { refreshPlan } from '@/store/cache/plans'
import { treatmentName } from '@/store/outbox/outbox'
import { askTreatment } from '@/store/outbox/set-back'

/** Has the server work out the stops anew, all choices as they are; what came of it. */
export async function planAgain(caseId: string, id: string, { kit, technique, choices }: Asked): Promise<VersionShown> {
  try {
    return await calls.proposePlan(caseId, { id, kit, technique, choices })
  } finally {
    await refreshPlan(caseId)
    await refresh(treatmentName(caseId), () => askTreatment(caseId))
  }
}
