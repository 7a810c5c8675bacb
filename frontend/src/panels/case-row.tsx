import type { CaseListed, PlanStatus } from '@/api/shapes'
import { Pill, type SignName } from '@/parts/signs'
import { words } from '@/words/en'
import './case-row.css'

const SIGNS: Record<PlanStatus['state'], SignName> = {
  none: 'draft',
  draft: 'draft',
  waiting: 'waiting',
  approved: 'approved',
  returned: 'returned',
  approval_void: 'caution',
  revoked: 'stop',
}

export function StatusPill({ of }: { of: PlanStatus }) {
  return <Pill sign={SIGNS[of.state]}>{words.state[of.state]}</Pill>
}

/** One case of the list: tooth, alias, setting, and where its plan stands. */
export function CaseRow({ of }: { of: CaseListed }) {
  return (
    <a class="entry" href={`/cases/${of.id}`}>
      <span class="tooth-number">{of.tooth.iso}</span>
      <span class="grow">
        <b class="block">{of.patient_alias}</b>
        <span class="small soft block">{words.setting[of.setting]}</span>
      </span>
      <StatusPill of={of.status} />
    </a>
  )
}
