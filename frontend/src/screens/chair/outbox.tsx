import { SetAside } from '@/panels/set-aside'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair/chair'
import { sendImages, waitingImages } from '@/store/images/images'
import { lookNow } from '@/store/images/look-first'
import { send, sendAgain } from '@/store/outbox/sender'
import { lostOf, setBack } from '@/store/outbox/set-back'
import { words } from '@/words/en'

/** What the server does not know yet, and what it would not take. */
export function Outbox({ chair }: { chair: Chair }) {
  const refused = chair.waiting.find((entry) => entry.refused !== undefined)
  const back = setBack.value.get(chair.caseId)
  const still = lostOf(chair.caseId).length
  return (
    <>
      {back && <Notice sign="caution">{words.phone.setBack(back.mine, back.others, still)}</Notice>}
      {refused && (
        <Notice sign="stop" action={{ says: words.tryAgain, onDo: () => void sendAgain(refused) }}>
          {words.chair.refused} {refused.refused}
        </Notice>
      )}
      {refused && <SetAside of={refused} />}
      <p class="row apart wrap small soft outbox">
        <ImagesWaiting caseId={chair.caseId} />
        {chair.waiting.length > 0 && (
          <button type="button" class="button plain" onClick={() => void send()}>
            {words.chair.waiting(chair.waiting.length)}
          </button>
        )}
      </p>
    </>
  )
}

function lookAndSend() {
  lookNow()
  void sendImages()
}

/** How many images of the case are still on this phone; a touch tries again at once. */
function ImagesWaiting({ caseId }: { caseId: string }) {
  const many = waitingImages().value.filter((image) => image.caseId === caseId).length
  if (many === 0) return null
  return (
    <button type="button" class="button plain" onClick={lookAndSend}>
      {words.images.waiting(many)}
    </button>
  )
}
