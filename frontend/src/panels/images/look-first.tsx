import { useEffect, useRef, useState } from 'preact/hooks'
import { ImageBoard } from '@/parts/image-board/image-board'
import { FIRST_LOOK } from '@/parts/image-board/picture'
import { useSizeOf } from '@/parts/image-board/size-of'
import { Notice } from '@/parts/notice'
import { usePlaceOfOwn } from '@/parts/place-of-own'
import { Unhurried, useUnhurry } from '@/parts/unhurried'
import { throwAway, useLocalImage, type WaitingImage } from '@/store/images/images'
import { blackOut, lookElsewhere, lookLater, nobodyNamed, toLookAt, type Wipe } from '@/store/images/look-first'
import { words } from '@/words/en'
import '@/parts/viewer/viewer.css'
import './look-first.css'
import { nameOf } from './name-of'
import { RemoveAlone } from './remove'

const says = words.images.lookFirst

/** Comes up over a screen of the case, for one picture after the other; put off, each waits at its tile. */
export function LooksFirst({ caseId }: { caseId: string }) {
  const image = toLookAt(caseId)
  return image ? <LookFirst image={image} onClose={() => lookLater(caseId)} /> : null
}

interface Props {
  image: WaitingImage
  onClose: () => void
  /** Where there is no next one to look at. */
  onAnswered?: () => void
}

/** Is somebody named in the picture? Asked before it leaves the phone, where a part of it can be made black. */
export function LookFirst({ image, onClose, onAnswered }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  const address = useLocalImage(image)
  const size = useSizeOf(address)
  const [wiping, setWiping] = useState(false)
  const over = useUnhurry(`${image.sha256} ${wiping}`)
  useEffect(() => dialog.current?.showModal(), [])
  usePlaceOfOwn(() => dialog.current?.close())
  const answered = (answer: () => Promise<void>) => {
    onAnswered?.()
    void answer()
  }
  const remove = <RemoveAlone key={image.id} onRemove={(reason) => answered(() => throwAway(image.id, reason))} />
  const drawn = address && size && size !== 'broken' ? { src: address, image: size } : undefined
  return (
    <dialog ref={dialog} class="viewer in-the-dark" aria-label={says.title} onClose={onClose}>
      <Unhurried over={over} class="look-first">
        <header class="row apart">
          <p class="strong grow">{nameOf(image)}</p>
          <button type="button" class="button" onClick={() => dialog.current?.close()}>
            {says.later}
          </button>
        </header>
        {size === 'broken' && (
          <div class="viewer-tools look-first-asks">
            <p>{says.unseen}</p>
            <button type="button" class="button answer" onClick={() => answered(() => lookElsewhere(image.id))}>
              {says.send}
            </button>
            {remove}
          </div>
        )}
        {drawn && wiping && <Wiping {...drawn} of={image} onDone={() => setWiping(false)} />}
        {drawn && !wiping && (
          <>
            <ImageBoard {...drawn} rowPerColumn={1} look={FIRST_LOOK} lines={[]} />
            <div class="viewer-tools look-first-asks">
              <p class="strong">{words.images.names.question}</p>
              <button type="button" class="button answer" onClick={() => answered(() => nobodyNamed(image.id))}>
                {says.no}
              </button>
              <button type="button" class="button answer" onClick={() => setWiping(true)}>
                {says.black}
              </button>
              {remove}
            </div>
          </>
        )}
      </Unhurried>
    </dialog>
  )
}

interface WipingProps {
  src: string
  image: { width: number; height: number }
  of: WaitingImage
  onDone: () => void
}

function Wiping({ src, image, of, onDone }: WipingProps) {
  // What came together is taken back together.
  const [drawn, setDrawn] = useState<readonly (readonly Wipe[])[]>([])
  const [state, setState] = useState<'open' | 'making' | 'failed'>('open')
  const making = state === 'making'
  const make = () => {
    setState('making')
    blackOut(of.id, of.type, drawn.flat()).then(onDone, () => setState('failed'))
  }
  return (
    <>
      <ImageBoard
        src={src}
        image={image}
        rowPerColumn={1}
        look={FIRST_LOOK}
        lines={[]}
        says={says.wiping}
        strokes={{ drawn: drawn.flat(), onDraw: (together) => setDrawn([...drawn, together]) }}
      />
      <div class="viewer-tools look-first-asks">
        <p class="small" role="status">
          {making ? says.making : says.how}
        </p>
        {state === 'failed' && <Notice sign="stop">{says.failed}</Notice>}
        <button type="button" class="button answer" disabled={making || drawn.length === 0} onClick={make}>
          {says.done}
        </button>
        <div class="row">
          <button
            type="button"
            class="button grow"
            disabled={making || drawn.length === 0}
            onClick={() => setDrawn(drawn.slice(0, -1))}
          >
            {says.back}
          </button>
          <button type="button" class="button grow" disabled={making} onClick={onDone}>
            {says.leave}
          </button>
        </div>
      </div>
    </>
  )
}
