import { useState } from 'preact/hooks'
import type { ImagePurpose } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { takeImage, useImages, waitingImages } from '@/store/images/images'
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

/** Takes a photo, or an image from the phone; kept here first, also with no connection. */
export function TakeImage({ caseId, canal, purpose, onTaken }: Props) {
  const [busy, setBusy] = useState(false)
  const [wrong, setWrong] = useState<string>()
  const room = useImages(caseId).value?.room
  const fit = useImagesLeft(caseId)
  const take = async (input: HTMLInputElement) => {
    setBusy(true)
    setWrong(undefined)
    for (const file of input.files ?? []) {
      if (room && file.size > room.most_bytes_each) setWrong(words.images.tooLarge(room.most_bytes_each / 1e6))
      else
        await takeImage(caseId, canal, purpose, file).then(onTaken, () =>
          setWrong(isSecureContext ? words.images.notKept : words.images.insecure),
        )
    }
    // The same file may be chosen once more.
    input.value = ''
    setBusy(false)
  }
  if (fit === 0) return <Notice sign="caution">{words.images.full}</Notice>
  return (
    <div class="take-image">
      {fit !== undefined && fit < FEW && <Notice sign="caution">{words.images.few(fit)}</Notice>}
      <Pick says={words.images.camera} busy={busy} accept="image/*" capture="environment" onPick={take} />
      <Pick says={words.images.choose} busy={busy} accept={KINDS} multiple onPick={take} />
      <p class="small soft" role="status">
        {busy ? words.images.taking : words.images.noNames}{' '}
        {!busy && fit !== undefined && fit >= FEW && words.images.room(fit)}
      </p>
      {wrong && <Notice sign="stop">{wrong}</Notice>}
    </div>
  )
}

/** How many more photos the programme has room for, those that wait on this phone taken off; undefined: not known. */
function useImagesLeft(caseId: string): number | undefined {
  const list = useImages(caseId).value
  if (!list) return undefined
  const known = new Set(list.images.map(({ id }) => id))
  const coming = waitingImages().value.filter(({ id }) => !known.has(id))
  const left_bytes = list.room.left_bytes - coming.reduce((sum, { length }) => sum + length, 0)
  return Math.max(0, Math.floor(left_bytes / LARGE_BYTES))
}

interface PickProps {
  says: string
  busy: boolean
  accept: string
  capture?: 'environment'
  multiple?: boolean
  onPick: (input: HTMLInputElement) => void
}

function Pick({ says, busy, onPick, ...input }: PickProps) {
  return (
    <label class="button answer" aria-disabled={busy}>
      <input type="file" class="unseen" disabled={busy} {...input} onChange={(event) => onPick(event.currentTarget)} />
      <span>{says}</span>
    </label>
  )
}
