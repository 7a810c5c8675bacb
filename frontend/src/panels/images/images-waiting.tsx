import { sendImages, waitingImages } from '@/store/images/images'
import { lookNow } from '@/store/images/look-first'
import { words } from '@/words/en'

function lookAndSend() {
  lookNow()
  void sendImages()
}

/** How many images of the case are still on this phone; a touch tries again at once. */
export function ImagesWaiting({ caseId }: { caseId: string }) {
  const many = waitingImages().value.filter((image) => image.caseId === caseId).length
  if (many === 0) return null
  return (
    <button type="button" class="button plain" onClick={lookAndSend}>
      {words.images.waiting(many)}
    </button>
  )
}
