import type { ImageShown } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { usePolling } from '@/store/cache/hooks'
import {
  sendImageAgain,
  throwAway,
  thrownImages,
  useImages,
  type WaitingImage,
  waitingImages,
} from '@/store/images/images'
import { words } from '@/words/en'
import { ImageTile } from './image-tile'
import './images.css'
import { PutRightSays } from './put-right'
import { RemoveAlone } from './remove'
import { Removed, Thrown } from './removed'

interface Props {
  caseId: string
  /** Those meant, as events name them; left out: every image of the case. */
  ids?: readonly string[] | undefined
}

const SECONDS_3 = 3000 // an image that comes in is seen by who waits for it
const SECONDS_10 = 10_000

/** Images in a row, each opening in the viewer; one that is not here says where it is, or who removed it. */
export function ImagesOf({ caseId, ids }: Props) {
  const list = useImages(caseId)
  const all = list.value?.images ?? []
  const ofCase = (images: readonly WaitingImage[]) => images.filter((image) => image.caseId === caseId)
  const here = ofCase(waitingImages().value)
  const thrown = ofCase(thrownImages().value)
  const meant = ids ?? [...new Set([...all, ...here, ...thrown].map((image) => image.id))]
  const byId = <T extends { id: string }>(images: readonly T[], id: string) => images.find((image) => image.id === id)
  const gone = (id: string) => byId(all, id)?.state === 'removed' || byId(thrown, id) !== undefined
  const coming = meant.some((id) => ['awaited', undefined].includes(byId(all, id)?.state))
  // Of the case's whole list others may add what this phone has never heard of; unchanged it is a few bytes.
  usePolling(coming || ids === undefined, list, coming ? SECONDS_3 : SECONDS_10)
  if (meant.length === 0) return null
  return (
    <>
      {!meant.every(gone) && (
        <ul class="images">
          {meant
            .filter((id) => !gone(id))
            .map((id) => (
              <li key={id}>
                <ImageTile caseId={caseId} stored={byId(all, id)} here={byId(here, id)} />
              </li>
            ))}
        </ul>
      )}
      {here.map((image) => meant.includes(image.id) && image.refused !== undefined && <NotKept image={image} />)}
      {meant.map((id) => {
        const image = byId(all, id)
        return image && <PutRightSays key={id} image={image} />
      })}
      {meant.filter(gone).map((id) => (
        <Gone key={id} removed={byId(all, id)} thrown={byId(thrown, id)} marksOf={ids ? undefined : caseId} />
      ))}
    </>
  )
}

interface GoneProps {
  removed: ImageShown | undefined
  thrown: WaitingImage | undefined
  /** The case in whose list it stands: the way to what was marked on it. */
  marksOf: string | undefined
}

function Gone({ removed, thrown, marksOf }: GoneProps) {
  if (removed?.state !== 'removed') return thrown ? <Thrown image={thrown} /> : null
  return (
    <div>
      <Removed image={removed} />
      {marksOf && (
        <a class="button plain" href={`/cases/${marksOf}/images/${removed.id}`}>
          {words.images.remove.marked}
        </a>
      )}
    </div>
  )
}

function NotKept({ image }: { image: WaitingImage }) {
  return (
    <Notice sign="stop" action={{ says: words.tryAgain, onDo: () => void sendImageAgain(image.id) }}>
      <p>
        {words.images.refused} {image.refused}
      </p>
      <RemoveAlone onRemove={(reason) => void throwAway(image.id, reason)} />
    </Notice>
  )
}
