import { useState } from 'preact/hooks'
import type { ImageShown } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { useSending } from '@/store/forms/sending'
import { checkNames, removeImage } from '@/store/images/put-right'
import { words } from '@/words/en'
import { mayKeep, Remove } from './remove'

/** Why somebody has to look at the picture, or nothing. */
export function noteOf({ name_check, burnt_in_text }: ImageShown): string | undefined {
  if (name_check !== 'open') return undefined
  return burnt_in_text === 'stated' ? words.images.names.stated : words.images.names.unsaid
}

/** Asked where the picture is looked at: is somebody named in it? Also the way to remove it. */
export function Names({ caseId, image }: { caseId: string; image: ImageShown }) {
  const [sending, run] = useSending()
  const [asked, setAsked] = useState(false)
  const busy = sending.state === 'busy'
  return (
    <div class="stack close">
      {image.checked_by && image.checked_at && (
        <p class="small soft">{words.images.names.nobody(image.checked_by.name, words.when(image.checked_at))}</p>
      )}
      {image.name_check === 'open' && mayKeep() && !asked ? (
        <Question busy={busy} onNo={() => void run(() => checkNames(caseId, image.id))} onYes={() => setAsked(true)} />
      ) : (
        <Remove
          asked={asked}
          onAsk={setAsked}
          busy={busy}
          onRemove={(reason) => void run(() => removeImage(caseId, image.id, reason))}
        />
      )}
      {sending.state === 'unsent' && <Notice sign="caution">{words.images.remove.unsent}</Notice>}
      {sending.state === 'refused' && <Notice sign="stop">{sending.problem?.message}</Notice>}
    </div>
  )
}

function Question({ busy, onNo, onYes }: { busy: boolean; onNo: () => void; onYes: () => void }) {
  const { question, no, yes } = words.images.names
  return (
    <>
      <p class="strong">{question}</p>
      <div class="row">
        <button type="button" class="button grow" disabled={busy} onClick={onNo}>
          {no}
        </button>
        <button type="button" class="button grow" disabled={busy} onClick={onYes}>
          {yes}
        </button>
      </div>
    </>
  )
}
