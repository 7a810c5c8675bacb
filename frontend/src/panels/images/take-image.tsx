import { useState } from 'preact/hooks'
import type { ImagePurpose } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { useImages, waitingImages } from '@/store/images/images'
import { takeImage } from '@/store/images/take'
import { words } from '@/words/en'
import './images.css'

interface Props {
  caseId: string
  canal: string
  purpose: ImagePurpose
  /** The image is on the phone's disk; what was done may be told of now. */
  onTaken?: (id: string) => void
}

const KINDS = 'image/*,.heic,.tif,.tiff,.dcm,application/dicom'
const LARGE_BYTES = 4_000_000 // of a photo; where less than this is left, a camera is not opened in vain
const FEW = 25 // a teaching session's images: time to ask for more before they are used up

/** Taking a photo, or an image from the phone; kept here first, also with no connection. */
export function useTaking({ caseId, canal, purpose, onTaken }: Props) {
  const [busy, setBusy] = useState(false)
  const [wrong, setWrong] = useState<string>()
  const quota = useImages(caseId).value?.quota
  const fit = useImagesLeft(caseId)
  const take = async (input: HTMLInputElement) => {
    setBusy(true)
    setWrong(undefined)
    for (const file of input.files ?? []) {
      if (quota && file.size > quota.most_bytes_each) setWrong(words.images.tooLarge(quota.most_bytes_each / 1e6))
      else
        await takeImage(caseId, canal, purpose, file).then(onTaken, () =>
          setWrong(isSecureContext ? words.images.notKept : words.images.insecure),
        )
    }
    // The same file may be chosen once more.
    input.value = ''
    setBusy(false)
  }
  return { busy, wrong, fit, take }
}

type Taking = ReturnType<typeof useTaking>

export function TakeImage(props: Props) {
  const taking = useTaking(props)
  if (taking.fit === 0) return <QuotaLeft fit={0} />
  return (
    <div class="take-image">
      <Picks taking={taking} />
      <QuotaLeft fit={taking.fit} busy={taking.busy} />
      <NotTaken taking={taking} />
    </div>
  )
}

/** The camera, which is usually wanted, and what is already on the phone. */
export function Picks({ taking: { busy, take }, main = false }: { taking: Taking; main?: boolean }) {
  const camera = main ? 'main' : 'answer'
  return (
    <>
      <Pick as={camera} says={words.images.camera} busy={busy} accept="image/*" capture="environment" onPick={take} />
      <Pick as="answer" says={words.images.choose} busy={busy} accept={KINDS} multiple onPick={take} />
    </>
  )
}

/** What an image may show, and how many more there is room for. */
export function QuotaLeft({ fit, busy = false }: { fit: number | undefined; busy?: boolean }) {
  if (fit === 0) return <Notice sign="caution">{words.images.full}</Notice>
  return (
    <>
      {fit !== undefined && fit < FEW && <Notice sign="caution">{words.images.few(fit)}</Notice>}
      <p class="small soft" role="status">
        {busy ? words.images.taking : words.images.noNames}{' '}
        {!busy && fit !== undefined && fit >= FEW && words.images.left(fit)}
      </p>
    </>
  )
}

export function NotTaken({ taking: { wrong } }: { taking: Taking }) {
  return wrong ? <Notice sign="stop">{wrong}</Notice> : null
}

/** How many more photos the programme has room for, those that wait on this phone taken off; undefined: not known. */
export function useImagesLeft(caseId: string): number | undefined {
  const list = useImages(caseId).value
  if (!list) return undefined
  const known = new Set(list.images.map(({ id }) => id))
  const coming = waitingImages().value.filter(({ id }) => !known.has(id))
  const left_bytes = list.quota.left_bytes - coming.reduce((sum, { length }) => sum + length, 0)
  return Math.max(0, Math.floor(left_bytes / LARGE_BYTES))
}

interface PickProps {
  as: 'main' | 'answer'
  says: string
  busy: boolean
  accept: string
  capture?: 'environment'
  multiple?: boolean
  onPick: (input: HTMLInputElement) => void
}

function Pick({ as, says, busy, onPick, ...input }: PickProps) {
  return (
    <label class={`button ${as}`} aria-disabled={busy}>
      <input type="file" class="unseen" disabled={busy} {...input} onChange={(event) => onPick(event.currentTarget)} />
      <span>{says}</span>
    </label>
  )
}
