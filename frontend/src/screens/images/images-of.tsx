import type { ImageShown } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { sendImageAgain, throwAway, thrownImages, useImages, type WaitingImage, waitingImages } from '@/store/images'
import { usePolling } from '@/store/use'
import { words } from '@/words/en'
import { ImageTile } from './image-tile'
import './images.css'
import { Remove } from './remove'
import { Removed, Thrown } from './removed'

interface Props {
  caseId: string
  /** Those meant, as events name them; left out: every image of the case. */
  ids?: readonly string[] | undefined
}

const SECONDS_3 = 3000 // an image that comes in is seen by who waits for it

/** Images in a row, each opening in the viewer; one that is not here says where it is, or who removed it. */
export function ImagesOf({ caseId, ids }: Props) {
  const found = useImages(caseId)
  const all = found.value?.images ?? []
  const ofCase = (images: readonly WaitingImage[]) => images.filter((image) => image.caseId === caseId)
  const here = ofCase(waitingImages().value)
  const thrown = ofCase(thrownImages().value)
  const meant = ids ?? [...new Set([...all, ...here, ...thrown].map((image) => image.id))]
  const byId = <T extends { id: string }>(images: readonly T[], id: string) => images.find((image) => image.id === id)
  const gone = (id: string) => byId(all, id)?.state === 'removed' || byId(thrown, id) !== undefined
  usePolling(
    meant.some((id) => ['awaited', undefined].includes(byId(all, id)?.state)),
    found.again,
    SECONDS_3,
  )
  if (meant.length === 0) return null
  return (
    <>
      <ul class="images">
        {meant.map((id) =>
          gone(id) ? null : (
            <li key={id}>
              <ImageTile caseId={caseId} stored={byId(all, id)} here={byId(here, id)} />
            </li>
          ),
        )}
      </ul>
      {here.map((image) => meant.includes(image.id) && image.refused !== undefined && <NotKept image={image} />)}
      {meant.filter(gone).map((id) => (
        <Gone key={id} caseId={caseId} removed={byId(all, id)} thrown={byId(thrown, id)} />
      ))}
    </>
  )
}

interface GoneProps {
  caseId: string
  removed: ImageShown | undefined
  thrown: WaitingImage | undefined
}

function Gone({ caseId, removed, thrown }: GoneProps) {
  if (removed?.state !== 'removed') return thrown ? <Thrown image={thrown} /> : null
  return (
    <Removed image={removed}>
      <a class="button plain" href={`/cases/${caseId}/images/${removed.id}`}>
        {words.images.remove.marked}
      </a>
    </Removed>
  )
}

function NotKept({ image }: { image: WaitingImage }) {
  return (
    <Notice sign="stop" action={{ says: words.tryAgain, onDo: () => void sendImageAgain(image.id) }}>
      <p>
        {words.images.refused} {image.refused}
      </p>
      <Remove onRemove={(reason) => void throwAway(image.id, reason)} />
    </Notice>
  )
}
