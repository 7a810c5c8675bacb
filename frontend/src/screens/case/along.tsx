import type { CaseShown } from '@/api/shapes'
import { useKits, useTechniques } from '@/store/cases'
import { useTreatment } from '@/store/chair'
import { useVersion, useVersions } from '@/store/plans'

/** Brings along on the phone what planning and working this case need, so that both go on without a connection. */
export function Along({ of }: { of: CaseShown }) {
  const hash = useTreatment(of.id).value?.course?.plan_hash
  const worked = useVersions(of.id).value?.find((version) => version.hash === hash)
  useVersion(worked?.id)
  useVersion(of.version?.id)
  useKits(of.programme)
  useTechniques(of.programme)
  return null
}
