import type { ImageShown } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { checkNames, removeImage } from '@/store/images'
import { useSending } from '@/store/sending'
import { words } from '@/words/en'
import { mayKeep, Remove } from './remove'

/** Why somebody has to look at the picture, or nothing. */
export function noteOf({ name_check, burnt_in_text }: ImageShown): string | undefined {
  if (name_check !== 'open') return undefined
  return burnt_in_text === 'stated' ? words.images.names.stated : words.images.names.unsaid
}

/** Asked where the picture is looked at: is somebody named in it? Below, the way to remove it. */
export function Names({ caseId, image }: { caseId: string; image: ImageShown }) {
  const [sending, run] = useSending()
  const { names, remove } = words.images
  const open = image.name_check === 'open' && mayKeep()
  const busy = sending.state === 'busy'
  return (
    <div class="stack close">
      {open && <p class="strong">{names.question}</p>}
      {open && (
        <button
          type="button"
          class="button"
          disabled={busy}
          onClick={() => void run(() => checkNames(caseId, image.id))}
        >
          {names.no}
        </button>
      )}
      {image.checked_by && image.checked_at && (
        <p class="small soft">{names.nobody(image.checked_by.name, words.when(image.checked_at))}</p>
      )}
      <Remove
        says={open ? names.yes : remove.open}
        busy={busy}
        onRemove={(reason) => void run(() => removeImage(caseId, image.id, reason))}
      />
      {sending.state === 'unsent' && <Notice sign="caution">{remove.unsent}</Notice>}
      {sending.state === 'refused' && <Notice sign="stop">{sending.problem?.message}</Notice>}
    </div>
  )
}
