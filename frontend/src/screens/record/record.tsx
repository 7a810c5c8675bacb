import { useState } from 'preact/hooks'
import type { RecordAnswered, RecordValue } from '@/api/shapes'
import { AfterDrawn } from '@/parts/after-drawn'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { RecordBoard } from '@/parts/record-board/record-board'
import { Seen } from '@/parts/seen'
import { Sign } from '@/parts/signs'
import { Tooth } from '@/parts/tooth/tooth'
import { useRecord } from '@/store/cache/cases'
import { unsent } from '@/store/outbox/outbox'
import { words } from '@/words/en'
import { Canal } from './canal'
import { Deviations } from './deviations'
import { PutRights } from './put-rights'
import { Sums } from './sums'
import { Timeline } from './timeline'
import './record.css'

/** Everything that was planned, done and decided in a case; from the copy on the phone where there is no connection. */
export function Record({ id }: { id: string }) {
  const cached = useRecord(id)
  const of = cached.value?.record
  return (
    <Page
      title={words.record.title(of?.tooth.iso ?? '')}
      under={of && `${of.patient_alias} · ${words.setting[of.setting]}`}
      back={{ to: `/cases/${id}`, says: words.back }}
      aside={of && <Approval of={of} />}
      wide
      foot={of && <Dock id={id} />}
    >
      <Seen of={cached} rows={6}>
        {(value) => <Whole of={value} waiting={unsent(id).value.length} />}
      </Seen>
    </Page>
  )
}

/** The PDF, and where a phone can, handing its address on. */
function Dock({ id }: { id: string }) {
  const path = `/api/v1/cases/${id}/record.pdf`
  return (
    <div class="record-dock">
      {'share' in navigator && (
        <button
          type="button"
          class="button answer"
          // Whoever closes the phone's own sheet has said what to do.
          onClick={() => navigator.share({ url: new URL(path, location.href).href }).catch(() => undefined)}
        >
          {words.record.send}
        </button>
      )}
      <a class="button main" href={path} target="_blank" rel="noopener">
        {words.record.paper}
      </a>
    </div>
  )
}

/** Whether the plan that stands is approved. A record that was kept from before versions said so does not say. */
function Approval({ of: { versions } }: { of: RecordValue }) {
  const state = versions.at(-1)?.state
  if (!state || state === 'approved') return null
  return (
    <p class="row small strong">
      <Sign name="caution" /> {words.record.notApproved}
    </p>
  )
}

function Whole({ of: { record, hash }, waiting }: { of: RecordAnswered; waiting: number }) {
  const [touched, setTouched] = useState<string>()
  const deviations = record.deviations ?? []
  const graveOf = (canal: string) => {
    const signs = deviations.filter((each) => each.canal === canal).map(({ sign }) => sign)
    return signs.includes('stop') ? 'stop' : signs.includes('caution') ? 'caution' : undefined
  }
  const canal = record.canals.find((each) => each.canal === touched) ?? record.canals[0]
  return (
    <div class="record">
      <p class="only-on-paper strong">
        {words.record.title(record.tooth.iso)} · {record.patient_alias}
      </p>
      {waiting > 0 && <Notice sign="caution">{words.record.unsent(waiting)}</Notice>}
      <Tooth
        board={
          canal && <RecordBoard canals={record.canals} graveOf={graveOf} picked={canal.canal} onPick={setTouched} />
        }
      >
        {canal && <Canal of={canal} />}
        <Deviations of={deviations} begun={record.position > 0} />
        <AfterDrawn>
          <Sums of={record} />
          <PutRights of={record} />
          <Timeline of={record} />
          <p class="small soft">
            {record.notice} {record.invented && words.record.invented}
            <br />
            {record.programme} · {record.student.name}
            {record.supervisor && ` · ${record.supervisor.name}`} ·{' '}
            {words.record.entries(record.position, words.record.at(record.last_at))}
            <br />
            {words.record.hash} <span class="record-hash">{hash}</span>
          </p>
        </AfterDrawn>
      </Tooth>
    </div>
  )
}
