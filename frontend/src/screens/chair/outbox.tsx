import { ImagesWaiting } from '@/panels/images/images-waiting'
import { SetAside } from '@/panels/set-aside'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair/chair'
import { send, sendAgain } from '@/store/outbox/sender'
import { lostOf, setBack } from '@/store/outbox/set-back'
import { words } from '@/words/en'
import { PhoneSays } from './phone-says'

/** What the server does not know yet, and what it would not take. */
export function Outbox({ chair }: { chair: Chair }) {
  const refused = chair.waiting.find((entry) => entry.refused !== undefined)
  const back = setBack.value.get(chair.caseId)
  const still = lostOf(chair.caseId).length
  return (
    <>
      <PhoneSays caseId={chair.caseId} />
      {back && <Notice sign="caution">{words.phone.setBack(back.mine, back.others, still)}</Notice>}
      {refused && (
        <Notice sign="stop" action={{ says: words.tryAgain, onDo: () => void sendAgain(refused) }}>
          {words.chair.refused} {refused.refused}
        </Notice>
      )}
      {refused && <SetAside of={refused} />}
      <p class="row apart wrap small soft">
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
