import { useState } from 'preact/hooks'
import type { ImageShown, ImageStruckWhy } from '@/api/shapes'
import { Sent } from '@/parts/sent'
import { Sign } from '@/parts/signs'
import { useCase } from '@/store/cache/cases'
import { useSending } from '@/store/forms/sending'
import { moveImage, strikeImage } from '@/store/images/put-right'
import { words } from '@/words/en'
import './images.css'
import { mayKeep } from './remove'

const says = words.images.putRight

interface Props {
  caseId: string
  image: ImageShown
}

/** Puts an image that is of another canal where it belongs, or strikes it: one touch asks, the answer is the second. */
export function PutRight({ caseId, image }: Props) {
  const [open, setOpen] = useState(false)
  const [sending, run] = useSending()
  if (!mayKeep() || image.struck) return null
  const answer = (how: () => Promise<void>) => void run(() => how().then(() => setOpen(false)))
  return (
    <div class="stack close">
      {open && <Ways caseId={caseId} image={image} busy={sending.state === 'busy'} onAnswer={answer} />}
      <button type="button" class="button" onClick={() => setOpen(!open)}>
        {open ? says.keep : says.open}
      </button>
      <Sent sending={sending} />
    </div>
  )
}

interface WaysProps extends Props {
  busy: boolean
  onAnswer: (how: () => Promise<void>) => void
}

function Ways({ caseId, image, busy, onAnswer }: WaysProps) {
  const canals = useCase(caseId).value?.canals.map(({ name }) => name) ?? []
  const elsewhere = ['', ...canals].filter((name) => name !== image.canal)
  return (
    <div class="stack close image-remove">
      <p class="strong">{says.which}</p>
      <p class="small soft">{says.rests}</p>
      <div class="row wrap">
        {elsewhere.map((name) => (
          <button
            key={name}
            type="button"
            class="button grow"
            disabled={busy}
            onClick={() => onAnswer(() => moveImage(caseId, image.id, name))}
          >
            {name || says.tooth}
          </button>
        ))}
      </div>
      {(Object.keys(says.strike) as ImageStruckWhy[]).map((why) => (
        <button
          key={why}
          type="button"
          class="button"
          disabled={busy}
          onClick={() => onAnswer(() => strikeImage(caseId, image.id, why))}
        >
          {says.strike[why]}
        </button>
      ))}
    </div>
  )
}

/** What was put right with an image: what, why, who and when. */
export function PutRightSays({ image }: { image: ImageShown }) {
  // An answer that was kept from before images could be put right says nothing of it.
  return (image.put_right ?? []).map(({ at, by, canal, moved_to, struck, why }) => (
    <p key={at} class="image-removed small">
      <Sign name={struck ? 'stop' : 'note'} />
      <span class="grow">
        <b>{words.images.purpose[image.purpose]}.</b>{' '}
        {struck ? says.struck(says.why[why] ?? '') : says.moved(canal || says.tooth, moved_to || says.tooth)}{' '}
        {words.images.remove.by(by.name, words.when(at))}
      </span>
    </p>
  ))
}
