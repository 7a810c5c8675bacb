import { Notice } from '@/parts/notice'
import { clockAhead_ms } from '@/store/device/clock'
import { spaceLeft_bytes } from '@/store/device/storage'
import { notRecorded } from '@/store/outbox/record'
import { words } from '@/words/en'
import { span } from '@/words/phone'
import './phone-says.css'

const MB = 1_000_000

/** What is wrong with this phone, before it costs an entry: an answer not written, space that runs out, a wrong clock. */
export function PhoneSays({ caseId }: { caseId: string }) {
  const lost = notRecorded.value
  const left = spaceLeft_bytes.value
  const ahead_ms = clockAhead_ms.value
  return (
    <>
      {lost?.caseId === caseId && (
        <div class="not-recorded">
          <Notice sign="stop" action={{ says: words.phone.recordAgain, onDo: () => void lost.again() }}>
            <b>{words.phone.notRecorded[lost.why]}</b>
          </Notice>
        </div>
      )}
      {left !== undefined && <Notice sign="caution">{words.phone.short(Math.floor(left / MB))}</Notice>}
      {ahead_ms !== 0 && (
        <Notice>
          {words.phone.clock(ahead_ms > 0 ? words.phone.ahead(span(ahead_ms)) : words.phone.behind(span(-ahead_ms)))}
        </Notice>
      )}
    </>
  )
}
