import { useState } from 'preact/hooks'
import type { CanalShown, CaseShown } from '@/api/shapes'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { asksFor, go } from '@/router'
import { removeCanal, useCase } from '@/store/cache/cases'
import { useWorks } from '@/store/chair/chair'
import { useSending } from '@/store/forms/sending'
import { dropPendingReading, pendingReadingsOf } from '@/store/outbox/pending-readings'
import { words } from '@/words/en'
import { CanalFacts } from './canal-facts'
import { LengthNumber, LengthSays } from './canal-row'
import { Measure } from './measure/measure'
import { Readings } from './readings'
import { ReferencePoint } from './reference-point'
import './case.css'
import { Notice } from '@/parts/notice'
import type { PendingReading } from '@/store/device/schema'

/** One canal: its length and what it rests on, a further reading, and what was charted. */
export function Canal({ caseId, canalId }: { caseId: string; canalId: string }) {
  const cached = useCase(caseId)
  const canal = cached.value?.canals.find((c) => c.id === canalId)
  return (
    <Page
      title={canal ? words.chart.canal(canal.name) : words.chart.lengths}
      under={cached.value && canal && words.chart.from(cached.value.tooth.iso, canal.reference_point)}
      back={{ to: `/cases/${caseId}`, says: words.back }}
    >
      <Seen of={cached} rows={4}>
        {(it) => (canal ? <Charted canal={canal} of={it} /> : <p>{words.notFound.says}</p>)}
      </Seen>
    </Page>
  )
}

function Charted({ canal, of }: { canal: CanalShown; of: CaseShown }) {
  const [method, setMethod] = useState(() => (asksFor('?method=junction') ? ('junction' as const) : undefined))
  const [measures, setMeasures] = useState(method !== undefined)
  const close = () => {
    setMeasures(false)
    setMethod(undefined)
  }
  const works = useWorks(of.id)
  const waiting = pendingReadingsOf(of.id).value.filter((reading) => reading.canal === canal.id)
  return (
    <>
      <div class="length-head">
        <output aria-label={words.chart.length}>
          <LengthNumber of={canal.length} />
        </output>
        <div class="grow">
          <LengthSays of={canal} />
        </div>
      </div>
      {canal.reference_point === '' && <ReferencePoint canal={canal} of={of} />}
      {works ? (
        <button type="button" class="button main" onClick={() => setMeasures(true)}>
          {words.measure.openOne(canal.name)}
        </button>
      ) : (
        <p class="soft">{words.look.lengths}</p>
      )}
      {measures && works && <Measure of={of} begins={canal.id} method={method} onClose={close} />}
      <PendingReadings waiting={waiting} />
      <Readings canal={canal} caseId={of.id} />
      <CanalFacts canal={canal} of={of} />
      {canal.readings.length + canal.junctions.length + waiting.length === 0 && <Remove canal={canal} of={of} />}
    </>
  )
}

function Remove({ canal, of }: { canal: CanalShown; of: CaseShown }) {
  const [sending, run] = useSending()
  const remove = () =>
    void run(async () => {
      await removeCanal(of, canal.id)
      go(`/cases/${of.id}`, { replace: true })
    })
  return (
    <button type="button" class="button plain" disabled={sending.state === 'busy'} onClick={remove}>
      {words.chart.removeCanal}
    </button>
  )
}

/** Readings of a canal that are on this phone only. */
function PendingReadings({ waiting }: { waiting: readonly PendingReading[] }) {
  return waiting.map((reading) =>
    reading.refused === undefined ? (
      <Notice key={reading.seq} sign="waiting">
        <b>{nameOf(reading)}</b> {words.phone.readingWaits}
      </Notice>
    ) : (
      <Notice
        key={reading.seq}
        sign="stop"
        action={{ says: words.phone.throwAway, onDo: () => void dropPendingReading(reading) }}
      >
        <b>{nameOf(reading)}</b> {words.phone.readingRefused} {reading.refused}
      </Notice>
    ),
  )
}

const nameOf = ({ reading }: PendingReading) => words.reading.short[reading?.method ?? 'junction']
