import { Notice } from '@/parts/notice'
import type { PendingReading } from '@/store/device/schema'
import { dropTaken } from '@/store/outbox/pending-readings'
import { words } from '@/words/en'

/** Readings of a canal that are on this phone only. */
export function TakenReadings({ waiting }: { waiting: readonly PendingReading[] }) {
  return waiting.map((one) =>
    one.refused === undefined ? (
      <Notice key={one.seq} sign="waiting">
        <b>{nameOf(one)}</b> {words.phone.readingWaits}
      </Notice>
    ) : (
      <Notice key={one.seq} sign="stop" action={{ says: words.phone.throwAway, onDo: () => void dropTaken(one) }}>
        <b>{nameOf(one)}</b> {words.phone.readingRefused} {one.refused}
      </Notice>
    ),
  )
}

const nameOf = ({ reading }: PendingReading) => words.reading.short[reading?.method ?? 'junction']
