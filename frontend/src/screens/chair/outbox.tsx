import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair'
import { send, sendAgain } from '@/store/sender'
import { words } from '@/words/en'
import { ImagesWaiting } from '../images/images-waiting'
import { PhoneSays } from './phone-says'

/** What the server does not know yet, when it was last heard, and what it would not take. */
export function Outbox({ chair, at }: { chair: Chair; at: number | undefined }) {
  const refused = chair.waiting.find((entry) => entry.refused !== undefined)
  return (
    <>
      <PhoneSays caseId={chair.caseId} />
      {refused && (
        <Notice sign="stop" action={{ says: words.tryAgain, onDo: () => void sendAgain(refused) }}>
          {words.chair.refused} {refused.refused}
        </Notice>
      )}
      <p class="row apart wrap small soft">
        <span>{at !== undefined && words.chair.lastHeard(words.when(at))}</span>
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
