import { useState } from 'preact/hooks'
import type { CaseShown, ImageShown, MarkingsShown } from '@/api/shapes'
import { RemovedMarks } from '@/panels/images/removed'
import { EMPTY, pointsOf, SCALE } from '@/panels/marks/draft'
import { behindDraft } from '@/panels/marks/kept-lines'
import { ImageBoard, type Near } from '@/parts/image-board/image-board'
import type { Marked } from '@/parts/image-board/marked-line'
import { FIRST_LOOK, Picture } from '@/parts/image-board/picture'
import { useSizeOf } from '@/parts/image-board/size-of'
import type { Size } from '@/parts/image-board/view'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { cameFrom } from '@/router'
import { useCase } from '@/store/cache/cases'
import { useDraft, usePolling } from '@/store/cache/hooks'
import { useVersion } from '@/store/cache/plans'
import { imageAddress, useImages, useLocalImage, waitingImages } from '@/store/images/images'
import { useMarkings, waitingMarkings } from '@/store/images/markings'
import { words } from '@/words/en'
import { asksOf, tooFarOf } from './asks'
import { Foot } from './foot'
import { LineChips } from './line-chips'
import './marks.css'
import { markedLines } from '@/panels/marks/marked-lines'
import { unitOf } from '@/panels/marks/unit'
import { useMarks } from '@/panels/marks/use-marks'
import { Panel } from './panel'
import { Asked, LookCloser, Picking } from './picking'
import { draftName, PutRightUnderHand, RemovedUnderHand } from './says'

const SECONDS_3 = 3000 // whoever marks must soon see that the image was struck, moved or removed

/** An image with marks along its canals: lengths and bends come out; also with no connection. */
export function MarksScreen({ caseId, imageId }: { caseId: string; imageId: string }) {
  const cached = useCase(caseId)
  const markings = useMarkings(caseId, imageId)
  return (
    <Page
      title={words.marks.title}
      under={cached.value && `${cached.value.tooth.iso} · ${cached.value.patient_alias}`}
      back={{
        to: cameFrom(`/cases/${caseId}/chair`, `/cases/${caseId}/sign-off/`) ?? `/cases/${caseId}`,
        says: words.back,
      }}
      wide
    >
      <Seen of={cached} rows={5}>
        {(it) => <Shown of={it} imageId={imageId} markings={markings.value} />}
      </Seen>
    </Page>
  )
}

function Shown({ of, imageId, markings }: { of: CaseShown; imageId: string; markings: MarkingsShown | undefined }) {
  const images = useImages(of.id)
  usePolling(true, images, SECONDS_3)
  const stored = images.value?.images.find((image) => image.id === imageId)
  const here = waitingImages().value.find((image) => image.id === imageId)
  const local = useLocalImage(here)
  const src = here ? local : stored?.state === 'stored' ? imageAddress(of.id, imageId, 'content') : undefined
  const size = useSizeOf(src)
  if (!here && stored?.state === 'removed')
    return (
      <>
        <RemovedUnderHand imageId={imageId} />
        <RemovedMarks caseId={of.id} image={stored} markings={markings?.markings ?? []} />
      </>
    )
  if (!here && stored?.state !== 'stored') return <Notice sign="note">{words.marks.noImage}</Notice>
  if (size === 'broken') return <Notice sign="stop">{words.marks.noPicture}</Notice>
  if (!src || !size) return <p role="status">{words.loading}</p>
  const first = (stored ?? here)?.canal || undefined
  return <Marking of={of} imageId={imageId} stored={stored} first={first} markings={markings} src={src} size={size} />
}

interface Props {
  of: CaseShown
  imageId: string
  /** As the server has it. */
  stored: ImageShown | undefined
  /** The canal that the image was taken of. */
  first: string | undefined
  markings: MarkingsShown | undefined
  src: string
  size: Size
}

function Marking({ of, imageId, stored, first, markings, src, size }: Props) {
  const kept = useDraft(draftName(imageId), () => ({ draft: EMPTY }))
  const canals = of.canals.filter((canal) => canal.finding !== 'searched_not_found')
  const marks = useMarks(kept, canals.find(({ name }) => name === first)?.name ?? canals[0]?.name ?? SCALE)
  const [look, setLook] = useState(FIRST_LOOK)
  const unit = unitOf(marks.draft, markings?.scale, useImages(of.id).value?.marking)
  const plan = useVersion(of.version?.id).value?.plan
  const waiting = waitingMarkings().value.filter((marking) => marking.imageId === imageId)
  const behind = behindDraft(marks.draft, markings?.markings ?? [], waiting, canals, plan)
  const lines: readonly Marked[] = [...behind, ...markedLines(marks, canals, unit, plan)]
  const [near, setNear] = useState<Near>()
  const [beside, setBeside] = useState(false)
  const tooFar = tooFarOf(marks.draft, marks.active, marks.picked, unit, size)
  return (
    <div class="marking">
      <PutRightUnderHand image={stored} />
      <LineChips marks={marks} canals={canals} unit={unit} />
      <ImageBoard
        src={src}
        image={size}
        rowPerColumn={unit.rowPerColumn}
        look={look}
        lines={lines}
        near={near}
        edit={{
          // A tip lies beside marks: it is set wherever the finger lets go.
          marks: marks.tip ? [] : pointsOf(marks.draft, marks.active),
          picked: marks.picked,
          onPick: marks.pick,
          onMove: marks.move,
          onMoved: marks.moved,
          onPlace: (at) => {
            setBeside(false)
            marks.place(at)
          },
          onOutside: () => setBeside(true),
        }}
      >
        <button type="button" class="button" disabled={!marks.canUndo} onClick={marks.undo}>
          {words.marks.undo}
        </button>
        <button type="button" class="button" disabled={marks.picked === undefined} onClick={marks.remove}>
          {words.marks.remove}
        </button>
      </ImageBoard>
      <div class="stack">
        {beside && <Notice sign="note">{words.marks.besideImage}</Notice>}
        {tooFar && <LookCloser tooFar={tooFar} onNear={setNear} />}
        <Picking marks={marks} />
        <Panel marks={marks} canals={canals} unit={unit} scale={markings?.scale} />
        <Asked asks={asksOf(marks.draft, marks.active, unit, size)} marks={marks} />
      </div>
      <Picture look={look} onLook={setLook} />
      <Foot
        of={of}
        imageId={imageId}
        struck={stored?.struck ?? false}
        size={size}
        marks={marks}
        canals={canals}
        unit={unit}
        markings={markings}
        kept={kept}
      />
    </div>
  )
}
