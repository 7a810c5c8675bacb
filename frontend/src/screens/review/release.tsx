import type { VersionShown } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { Sent } from '@/parts/sent'
import { releaseCanals } from '@/store/cache/review'
import { useSending } from '@/store/forms/sending'
import { words } from '@/words/en'

/** The canals that an approval left out, and a supervisor's way to let them go later. */
export function Release({ of, supervises }: { of: VersionShown; supervises: boolean }) {
  const [sending, run] = useSending()
  if (of.state !== 'approved' || of.not_released.length === 0) return null
  const go = () => void run(() => releaseCanals(of, of.not_released))
  const canals = of.not_released.join(', ')
  return (
    <>
      <Notice
        sign="returned"
        action={supervises && !of.stale ? { says: words.release.go(canals), onDo: go } : undefined}
      >
        {words.release.waits(canals)}
      </Notice>
      <Sent sending={sending} again={go} />
    </>
  )
}

/** The canals that end in one with a returned one: they would wait too. Each with that one. */
export function partners(of: VersionShown, returned: readonly string[]): Record<string, string> {
  const end = (canal: string) => of.plan.canals.find((planned) => planned.canal === canal)?.joins ?? canal
  return Object.fromEntries(
    of.plan.canals.flatMap(({ canal }) => {
      const partner = returned.find((other) => other !== canal && end(other) === end(canal))
      return partner === undefined || returned.includes(canal) ? [] : [[canal, partner]]
    }),
  )
}
