import { useState } from 'preact/hooks'
import type { Shows } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { takeImage, useImages } from '@/store/images'
import { words } from '@/words/en'
import './images.css'

interface Props {
  caseId: string
  canal: string
  shows: Shows
  /** The image is on the phone's disk; what was done may be told of now. */
  onTaken?: (id: string) => void
}

const KINDS = 'image/*,.heic,.tif,.tiff,.dcm,application/dicom'
const LARGE_BYTES = 4_000_000 // of a photo; where less than this is left, a camera is not opened in vain

/** Takes a photo, or an image from the phone; kept here first, also with no connection. */
export function TakeImage({ caseId, canal, shows, onTaken }: Props) {
  const [busy, setBusy] = useState(false)
  const [wrong, setWrong] = useState<string>()
  const room = useImages(caseId).value?.room
  const full = room !== undefined && room.left_bytes < LARGE_BYTES
  const take = async (input: HTMLInputElement) => {
    setBusy(true)
    setWrong(undefined)
    for (const file of input.files ?? []) {
      if (room && file.size > room.most_bytes_each) setWrong(words.images.tooLarge(room.most_bytes_each / 1e6))
      else
        await takeImage(caseId, canal, shows, file).then(onTaken, () =>
          setWrong(isSecureContext ? words.images.notKept : words.images.insecure),
        )
    }
    // The same file may be chosen once more.
    input.value = ''
    setBusy(false)
  }
  if (full) return <Notice sign="caution">{words.images.full}</Notice>
  return (
    <div class="take-image">
      <Pick says={words.images.camera} busy={busy} accept="image/*" capture="environment" onPick={take} />
      <Pick says={words.images.choose} busy={busy} accept={KINDS} multiple onPick={take} />
      <p class="small soft" role="status">
        {busy ? words.images.taking : words.images.noNames}
      </p>
      {wrong && <Notice sign="stop">{wrong}</Notice>}
    </div>
  )
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
