import type { RecordAnswered } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { useRecord } from '@/store/cache/cases'
import { unsent } from '@/store/outbox/outbox'
import { words } from '@/words/en'
import { Canals } from './canals'
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
      wide
      foot={
        of && (
          <a class="button answer" href={`/api/v1/cases/${id}/record.pdf`} target="_blank" rel="noopener">
            {words.record.paper}
          </a>
        )
      }
    >
      <Seen of={cached} rows={6}>
        {(value) => <Whole of={value} waiting={unsent(id).value.length} />}
      </Seen>
    </Page>
  )
}

function Whole({ of: { record, hash }, waiting }: { of: RecordAnswered; waiting: number }) {
  return (
    <div class="record">
      <header class="stack">
        <p class="only-on-paper strong">
          {words.record.title(record.tooth.iso)} · {record.patient_alias}
        </p>
        <p class="strong record-notice">{record.notice}</p>
        {record.invented && <p class="small">{words.record.invented}</p>}
        {waiting > 0 && <Notice sign="caution">{words.record.unsent(waiting)}</Notice>}
        <p class="small soft">
          {record.programme} · {record.student.name}
          {record.supervisor && ` · ${record.supervisor.name}`} ·{' '}
          {words.record.entries(record.position, words.record.at(record.last_at))}
        </p>
      </header>
      <div class="record-sums">
        <Canals of={record} />
        <Sums of={record} />
      </div>
      <Timeline of={record} />
      <p class="small soft record-hash">
        {words.record.hash} {hash}
      </p>
    </div>
  )
}
