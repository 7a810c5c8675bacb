import { useAsked } from '@/parts/unhurried'
import { imageOfStep } from '@/store/image-of-step'
import { words } from '@/words/en'
import { leaveBy, type StepProps } from './answers'

type NoImage = keyof typeof words.card.noImage

/** An image step is left with its image, which may still wait on this phone, or with why there is none. */
export function ImageAnswers(props: StepProps) {
  const leave = leaveBy(props)
  const image_id = imageOfStep(props.chair, props.canal.canal)
  useAsked(image_id)
  if (image_id !== undefined)
    return (
      <div class="step-answers">
        <button type="button" class="button main" onClick={() => leave('done', { image_id })}>
          {words.chair.imageTaken}
        </button>
      </div>
    )
  return (
    <div class="step-answers">
      <p class="small">{words.card.noImageYet}</p>
      {(Object.keys(words.card.noImage) as NoImage[]).map((no_image) => (
        <button key={no_image} type="button" class="button answer" onClick={() => leave('done', { no_image })}>
          {words.card.noImage[no_image]}
        </button>
      ))}
    </div>
  )
}
