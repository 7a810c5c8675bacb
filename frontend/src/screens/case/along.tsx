import type { CaseShown } from '@/api/shapes'
import { useKits, useTechniques } from '@/store/cache/cases'
import { useVersion, useVersions } from '@/store/cache/plans'
import { useEarlier, useTreatment } from '@/store/chair/chair'

/** Brings along on the phone what planning and working this case need, so that both go on without a connection. */
export function Along({ of }: { of: CaseShown }) {
  const treatment = useTreatment(of.id).value
  const versions = useVersions(of.id).value
  const hash = treatment?.course?.plan_hash
  useVersion(versions?.find((version) => version.hash === hash)?.id)
  useEarlier(of.id, versions, treatment)
  useVersion(of.version?.id)
  useKits(of.programme)
  useTechniques(of.programme)
  return null
}
