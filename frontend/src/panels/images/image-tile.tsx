import type { ImageShown } from '@/api/shapes'
import { Sign } from '@/parts/signs'
import { Viewer } from '@/parts/viewer/viewer'
import { imageAddress, throwAway, useLocalImage, type WaitingImage } from '@/store/images/images'
import { words } from '@/words/en'
import { LookFirst } from './look-first'
import { MarkedViewer } from './marked-viewer'
import { nameOf } from './name-of'
import { Names, noteOf } from './names'
import { PutRight, PutRightSays } from './put-right'
import { RemoveAlone } from './remove'
import { Tile } from './tile'

interface OneProps {
  caseId: string
  stored: ImageShown | undefined
  here: WaitingImage | undefined
}

/** One image, small, opening in the viewer: of the server, else of this phone; where it is neither, where it is. */
export function ImageTile({ caseId, stored, here }: OneProps) {
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
          note={noteOf(image)}
          onClose={onClose}
        >
          <Names caseId={caseId} image={image} />
          <PutRightSays image={image} />
          <PutRight caseId={caseId} image={image} />
        </MarkedViewer>
      )}
    >
      {image.struck && (
        <span class="image-state small">
          <Sign name="stop" /> {words.images.putRight.tile}
        </span>
      )}
      {image.name_check === 'open' && (
        <span class="image-state small">
          <Sign name="caution" /> {words.images.names.look}
        </span>
      )}
    </Tile>
  )
}

function Here({ image }: { image: WaitingImage }) {
  const address = useLocalImage(image)
  return (
    <Tile
      name={nameOf(image)}
      small={address}
      opened={(onClose) =>
        address &&
        (image.look === 'open' ? (
          <LookFirst image={image} onClose={onClose} onAnswered={onClose} />
        ) : (
          <Viewer address={address} name={nameOf(image)} onClose={onClose}>
            <RemoveAlone onRemove={(reason) => void throwAway(image.id, reason)} />
          </Viewer>
        ))
      }
    >
      <span class="image-state small">
        <Sign name={image.refused === undefined ? 'waiting' : 'stop'} />{' '}
        {image.look === 'open' ? words.images.lookFirst.held : words.images.onThisPhone}
      </span>
    </Tile>
  )
}
