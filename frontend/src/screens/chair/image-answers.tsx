import { imageOf } from '@/panels/images/step-images'
import { NotTaken, Picks, TakeImage, useTaking } from '@/panels/images/take-image'
import { CanalChips } from '@/parts/canal-chips'
import { Notice } from '@/parts/notice'
import { StepAnswers } from '@/parts/step-answers'
import { useAsked } from '@/parts/unhurried'
import type { Chair } from '@/store/chair/chair'
import { imageOfStep } from '@/store/chair/image-of-step'
import { pick, picked, recordFor, shownWith } from '@/store/chair/together'
import { actorOf } from '@/store/chair/visits'
import { wantedImages } from '@/store/chair/wanted-images'
import { words } from '@/words/en'
import { FELT_MS, type More, type StepProps } from './step'

type NoImage = keyof typeof words.card.noImage

/** An image step is left with its image, which may still wait on this phone, or with why there is none. */
export function ImageAnswers(props: StepProps) {
  const { chair, node } = props
  const canal = props.canal.canal
  const all = shownWith(chair, canal)
  const shown = picked(chair, node.id, all)
  const chips = (
    <CanalChips
      label={words.together.shows}
      canals={all}
      picked={shown}
      onPick={(name) => pick(chair, node.id, name)}
    />
  )
  const leave = (_: 'done', more: More) => {
    navigator.vibrate?.(FELT_MS)
    const nothingElse = { depth_um: null, stop_um: null, irrigant: null, volume_ml: null, together: '' }
    void recordFor(chair, shown, { kind: 'step', exit: 'done', ...nothingElse, ...more })
  }
  const taking = useTaking(imageOf({ chair, canal, node }))
  const image_id = imageOfStep(props.chair, props.canal.canal)
  useAsked(image_id)
  if (image_id !== undefined)
    return (
      <StepAnswers>
        {chips}
        <button type="button" class="button main" onClick={() => leave('done', { image_id })}>
          {words.chair.imageTaken}
        </button>
      </StepAnswers>
    )
  return (
    <StepAnswers>
      <div class="answers-above">
        {chips}
        <p class="small">{words.card.noImageYet}</p>
        <div class="no-image">
          {(Object.keys(words.card.noImage) as NoImage[]).map((no_image) => (
            <button key={no_image} type="button" class="button answer" onClick={() => leave('done', { no_image })}>
              {words.card.noImage[no_image]}
            </button>
          ))}
        </div>
        <NotTaken taking={taking} />
      </div>
      {taking.fit !== 0 && <Picks taking={taking} main />}
    </StepAnswers>
  )
}

/** A supervisor asks for an image: who and of which canal, and the way to take it. It stays until there is one. */
export function WantedImages({ chair }: { chair: Chair }) {
  return wantedImages(chair).map((event) => (
    <section key={event.id} class="stack close">
      <Notice sign="waiting">
        {words.look.wanted(actorOf(chair, event) || words.look.supervisor, event.canal)} {event.payload.note}
      </Notice>
      <TakeImage
        caseId={chair.caseId}
        canal={event.canal}
        purpose="other"
        onTaken={(image_id) => void chair.record(event.canal, '', { kind: 'image', image_id, purpose: 'other' })}
      />
    </section>
  ))
}
