import type { CanalShown, CaseShown, Length } from '@/api/shapes'
import { lengthSays } from '@/parts/lengths-board/lengths-board'
import { Notice } from '@/parts/notice'
import { Sign, type SignName } from '@/parts/signs'
import { CanalPanel } from '@/parts/tooth/tooth'
import { go } from '@/router'
import { removeCanal } from '@/store/cache/cases'
import type { PendingReading } from '@/store/device/schema'
import { useSending } from '@/store/forms/sending'
import { dropPendingReading, pendingReadingsOf } from '@/store/outbox/pending-readings'
import { tenth } from '@/units/millimetres'
import { words } from '@/words/en'
import { CanalFacts } from './canal-facts'
import { Readings } from './readings'
import { ReferencePoint } from './reference-point'

export const SIGNS: Record<Length['state'], SignName> = {
  missing: 'draft',
  estimated: 'waiting',
  settled: 'approved',
  to_settle: 'caution',
  unsettled: 'stop',
}

interface Props {
  canal: CanalShown
  of: CaseShown
  /** With its readings and all that was charted of it. */
  unfolded: boolean
}

/** The selected canal as far as it was measured: its length, what that rests on, and what is next. */
export function MeasuredPanel({ canal, of, unfolded }: Props) {
  const waiting = pendingReadingsOf(of.id).value.filter((reading) => reading.canal === canal.id)
  return (
    <>
      <CanalPanel
        canal={canal.name}
        from={canal.reference_point && words.chart.from(canal.reference_point)}
        number={<LengthNumber of={canal.length} />}
      >
        <LengthSays of={canal} />
        {canal.reference_point === '' && <ReferencePoint canal={canal} of={of} />}
        {!unfolded && <More canal={canal} of={of} />}
      </CanalPanel>
      {unfolded && (
        <>
          <PendingReadings waiting={waiting} />
          <Readings canal={canal} caseId={of.id} />
          <CanalFacts key={canal.id} canal={canal} of={of} />
          {canal.readings.length + canal.junctions.length + waiting.length === 0 && <Remove canal={canal} of={of} />}
        </>
      )}
    </>
  )
}

/** To the readings of the canal, and to all else that was charted of it. */
export function More({ canal, of }: { canal: CanalShown; of: CaseShown }) {
  return (
    <a class="button plain" href={`/cases/${of.id}/canals/${canal.id}`}>
      {words.chart.more(canal.name)}
    </a>
  )
}

/** The length as it stands under its canal on the board. */
function LengthNumber({ of }: { of: Length | null }) {
  return (
    <output class="length-number number" aria-label={words.chart.length}>
      {lengthSays(of).join(' ')}
    </output>
  )
}

/** State of the length, what it rests on, and what to do. */
function LengthSays({ of: { length: of, length_problem } }: { of: CanalShown }) {
  if (!of) return <p class="small strong">{length_problem}</p>
  const methods = of.rests_on.map((m) => words.method(m))
  return (
    <>
      <p class="small">
        <b class="length-state" data-state={of.state}>
          <Sign name={SIGNS[of.state]} /> {words.lengthState(of.state)}
        </b>
        {methods.length > 0 && `, ${words.chart.restsOn(methods)}`}
        {of.state === 'estimated' &&
          of.estimated &&
          `. ${words.chart.estimatedBetween(
            tenth(of.estimated.least_mm),
            tenth(of.estimated.most_mm),
            words.chart.scaleBy(of.estimated.rests_on),
          )}`}
      </p>
      {of.state !== 'settled' && of.what_to_do && <p class="small">{of.what_to_do}</p>}
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
