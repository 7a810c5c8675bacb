import { useState } from 'preact/hooks'
import type { ImageShown } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import { Sign } from '@/parts/signs'
import { Viewer } from '@/parts/viewer/viewer'
import {
  imageAddress,
  sendImageAgain,
  throwAway,
  useImages,
  useLocalImage,
  type WaitingImage,
  waitingImages,
} from '@/store/images'
import { usePolling } from '@/store/use'
import { words } from '@/words/en'
import './images.css'
import { MarkedViewer } from './marked-viewer'

interface Props {
  caseId: string
  /** Those meant, as events name them; left out: every image of the case. */
  ids?: readonly string[] | undefined
}

const SECONDS_3 = 3000 // an image that comes in is seen by who waits for it

/** Images in a row, each opening in the viewer; one that is not here yet says where it is. */
export function ImagesOf({ caseId, ids }: Props) {
  const found = useImages(caseId)
  const stored = found.value?.images ?? []
  const here = waitingImages().value.filter((image) => image.caseId === caseId)
  const meant = ids ?? [...new Set([...stored, ...here].map((image) => image.id))]
  usePolling(
    meant.some((id) => stored.find((image) => image.id === id)?.state !== 'stored'),
    found.again,
    SECONDS_3,
  )
  if (meant.length === 0) return null
  return (
    <>
      <ul class="images">
        {meant.map((id) => (
          <li key={id}>
            <OneImage
              caseId={caseId}
              stored={stored.find((image) => image.id === id)}
              here={here.find((image) => image.id === id)}
            />
          </li>
        ))}
      </ul>
      {here.map((image) => meant.includes(image.id) && image.refused !== undefined && <NotKept image={image} />)}
    </>
  )
}

interface OneProps {
  caseId: string
  stored: ImageShown | undefined
  here: WaitingImage | undefined
}

function OneImage({ caseId, stored, here }: OneProps) {
  if (stored?.state === 'stored' || here) {
    return (
      <>
        {stored?.state === 'stored' ? <Stored caseId={caseId} image={stored} /> : here && <Here image={here} />}
        {here?.refused === undefined && (
          <a class="button plain" href={`/cases/${caseId}/images/${stored?.id ?? here?.id}`}>
            {words.marks.mark}
          </a>
        )}
      </>
    )
  }
  return (
    <p class="image-plate small">
      <Sign name={stored?.state === 'refused' ? 'stop' : 'waiting'} />{' '}
      {words.images.absent[stored?.state ?? 'elsewhere']}
    </p>
  )
}

const nameOf = ({ shows, canal, device_time }: Pick<ImageShown, 'shows' | 'canal' | 'device_time'>) =>
  words.images.alt(words.images.shows[shows], canal, words.when(device_time))

function Stored({ caseId, image }: { caseId: string; image: ImageShown }) {
  return (
    <Tile
      name={nameOf(image)}
      small={imageAddress(caseId, image.id, 'thumbnail')}
      opened={(onClose) => (
        <MarkedViewer
          caseId={caseId}
          imageId={image.id}
          address={imageAddress(caseId, image.id, 'content')}
          name={nameOf(image)}
          note={image.burnt_in_text === 'stated' ? words.images.burntIn : undefined}
          onClose={onClose}
        />
      )}
    />
  )
}

function Here({ image }: { image: WaitingImage }) {
  const address = useLocalImage(image)
  return (
    <Tile
      name={nameOf(image)}
      small={address}
      opened={(onClose) => address && <Viewer address={address} name={nameOf(image)} onClose={onClose} />}
    >
      <span class="image-state small">
        <Sign name={image.refused === undefined ? 'waiting' : 'stop'} /> {words.images.onThisPhone}
      </span>
    </Tile>
  )
}

function NotKept({ image }: { image: WaitingImage }) {
  return (
    <Notice sign="stop" action={{ says: words.tryAgain, onDo: () => void sendImageAgain(image.id) }}>
      <p>
        {words.images.refused} {image.refused}
      </p>
      <button type="button" class="button plain" onClick={() => void throwAway(image.id)}>
        {words.images.throwAway}
      </button>
    </Notice>
  )
}

interface TileProps {
  name: string
  small: string | undefined
  opened: (onClose: () => void) => preact.ComponentChildren
  children?: preact.ComponentChildren
}

function Tile({ name, small, opened, children }: TileProps) {
  const [open, setOpen] = useState(false)
  const [broken, setBroken] = useState(false)
  return (
    <>
      <button type="button" class="image-tile" aria-label={words.images.open(name)} onClick={() => setOpen(true)}>
        {small && !broken ? (
          <img src={small} alt="" onError={() => setBroken(true)} />
        ) : (
          <span class="image-plate small">{broken && words.images.noPicture}</span>
        )}
        {children}
        <span class="image-name small">{name}</span>
      </button>
      {open && opened(() => setOpen(false))}
    </>
  )
}
