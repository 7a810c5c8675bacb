import { useState } from 'preact/hooks'
import type { CaseShown } from '@/api/shapes'
import { nameOf } from '@/panels/images/name-of'
import { keptLines } from '@/panels/marks/kept-lines'
import { MarkedList } from '@/panels/marks/marked-list'
import { Select, Tick } from '@/parts/fields'
import { ImageBoard } from '@/parts/image-board/image-board'
import { FIRST_LOOK, Picture } from '@/parts/image-board/picture'
import { useSizeOf } from '@/parts/image-board/size-of'
import { type Link, WHOLE } from '@/parts/image-board/view'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { useCase } from '@/store/cache/cases'
import { useVersion } from '@/store/cache/plans'
import { imageAddress, useImages } from '@/store/images/images'
import { useMarkings } from '@/store/images/markings'
import { words } from '@/words/en'
import { BendInSpace } from './bend-in-space'
import './marks.css'
import { WhichSide } from './which-side'

/** Two images of a case side by side, with what was marked on each. */
export function Compare({ caseId }: { caseId: string }) {
  const cached = useCase(caseId)
  return (
    <Page
      title={words.marks.sideBySide}
      under={cached.value && `${cached.value.tooth.iso} · ${cached.value.patient_alias}`}
      back={{ to: `/cases/${caseId}`, says: words.back }}
      wide
    >
      <Seen of={cached} rows={5}>
        {(it) => <Both of={it} />}
      </Seen>
    </Page>
  )
}

function Both({ of }: { of: CaseShown }) {
  const images = (useImages(of.id).value?.images ?? []).filter((image) => image.state === 'stored')
  const [picked, setPicked] = useState<readonly (string | undefined)[]>([])
  const [link, setLink] = useState<Link>(WHOLE)
  const [together, setTogether] = useState(true)
  const [marks, setMarks] = useState(true)
  const [look, setLook] = useState(FIRST_LOOK)
  if (images.length < 2) return <Notice sign="note">{words.marks.twoNeeded}</Notice>
  const shown = [0, 1].map((side) => picked[side] ?? images[side]?.id)
  return (
    <div class="stack">
      <div class="row wrap">
        <Tick label={words.marks.together} checked={together} onChange={setTogether} />
        <Tick label={words.marks.showMarks} checked={marks} onChange={setMarks} />
      </div>
      <div class="compare">
        {shown.map((id, side) => (
          <div key={side === 0 ? 'left' : 'right'} class="stack">
            <Select
              label={words.marks.side[side === 0 ? 'left' : 'right']}
              options={images.map((image, i) => ({ value: image.id, says: `${i + 1} · ${nameOf(image)}` }))}
              value={id ?? ''}
              onChoose={(chosen) => setPicked(shown.map((other, i) => (i === side ? chosen : other)))}
            />
            {id && (
              <OneSide
                key={id}
                of={of}
                imageId={id}
                marks={marks}
                look={look}
                link={together ? link : undefined}
                onLink={together ? setLink : undefined}
              />
            )}
          </div>
        ))}
      </div>
      <Picture look={look} onLook={setLook} />
      <TwoViews of={of} left={shown[0]} right={shown[1]} />
    </div>
  )
}

/** What the last marks on both images say together. */
function TwoViews({ of, left, right }: { of: CaseShown; left: string | undefined; right: string | undefined }) {
  const first = useMarkings(of.id, left ?? '').value?.markings.at(-1)
  const second = useMarkings(of.id, right ?? '').value?.markings.at(-1)
  if (left === right) return null
  return (
    <>
      <WhichSide key={`${first?.id} ${second?.id}`} left={first} right={second} />
      {first && second && <BendInSpace of={of} left={first} right={second} />}
    </>
  )
}

interface SideProps {
  of: CaseShown
  imageId: string
  marks: boolean
  look: typeof FIRST_LOOK
  link: Link | undefined
  onLink: ((link: Link) => void) | undefined
}

function OneSide({ of, imageId, marks, look, link, onLink }: SideProps) {
  const src = imageAddress(of.id, imageId, 'content')
  const size = useSizeOf(src)
  const { scale, markings = [] } = useMarkings(of.id, imageId).value ?? {}
  const plan = useVersion(of.version?.id).value?.plan
  if (size === 'broken') return <Notice sign="stop">{words.marks.noPicture}</Notice>
  if (!size) return <p role="status">{words.loading}</p>
  return (
    <>
      <ImageBoard
        src={src}
        image={size}
        rowPerColumn={scale?.row_per_column ?? 1}
        look={look}
        lines={marks ? keptLines(markings, of.canals, plan) : []}
        link={link}
        {...(onLink && { onLink })}
      />
      <MarkedList caseId={of.id} markings={markings} />
    </>
  )
}
