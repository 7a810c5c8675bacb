import { useEffect, useState } from 'preact/hooks'
import type { ImagePurpose, Running } from '@/api/shapes'
import { Tile } from '@/panels/images/tile'
import { Select } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { Viewer } from '@/parts/viewer/viewer'
import { go } from '@/router'
import { useCases } from '@/store/cache/cases'
import { useRunning } from '@/store/cache/review'
import { leaveShared, putToCase, sharedImages } from '@/store/images/take'
import { membership, personId } from '@/store/session/session'
import { words } from '@/words/en'

/** The cases that take images from this person: a student's own, those that a supervisor has taken over. */
function ToWhich({ onPut }: { onPut: (caseId: string) => void }) {
  if (membership.value?.role === 'student') return <Own onPut={onPut} />
  return <TakenOver onPut={onPut} />
}

function Own({ onPut }: { onPut: (caseId: string) => void }) {
  return (
    <Seen of={useCases()} rows={4}>
      {({ results }) => <Offered cases={results.map((row) => ({ ...row, case_id: row.id }))} onPut={onPut} />}
    </Seen>
  )
}

function TakenOver({ onPut }: { onPut: (caseId: string) => void }) {
  return (
    <Seen of={useRunning()} rows={2}>
      {({ results }) => <Offered cases={results.filter((work) => work.taken_over?.id === personId())} onPut={onPut} />}
    </Seen>
  )
}

type Offer = Pick<Running, 'case_id' | 'patient_alias' | 'tooth'>

function Offered({ cases, onPut }: { cases: readonly Offer[]; onPut: (caseId: string) => void }) {
  if (cases.length === 0) return <Notice>{words.share.none}</Notice>
  return (
    <section class="stack" aria-label={words.share.which}>
      <h2>{words.share.which}</h2>
      {cases.map((offer) => (
        <button key={offer.case_id} type="button" class="button answer" onClick={() => onPut(offer.case_id)}>
          {offer.tooth.iso} · {offer.patient_alias}
        </button>
      ))}
    </section>
  )
}

/** What was shared, each with an address for as long as the screen shows it. */
function useShared(): readonly string[] | undefined {
  const [images, setImages] = useState<readonly string[]>()
  useEffect(() => {
    let made: readonly string[] = []
    let gone = false
    void sharedImages().then((images) => {
      if (gone) return
      made = images.map((image) => URL.createObjectURL(image))
      setImages(made)
    })
    return () => {
      gone = true
      for (const address of made) URL.revokeObjectURL(address)
    }
  }, [])
  return images
}

/** Looked at before they are put anywhere: whose case it is, and whether somebody is named in them. */
function Previews({ of }: { of: readonly string[] }) {
  return (
    <ul class="images">
      {of.map((address, i) => (
        <li key={address}>
          <Tile
            name={words.share.one(i + 1, of.length)}
            small={address}
            opened={(onClose) => (
              <Viewer address={address} name={words.share.one(i + 1, of.length)} onClose={onClose} />
            )}
          />
        </li>
      ))}
    </ul>
  )
}

/** Photos shared with the app from another one: to which case they belong. */
export function Share() {
  const images = useShared()
  const [purpose, setShows] = useState<ImagePurpose>('pre_operative')
  const [wrong, setWrong] = useState(false)
  const put = (caseId: string) =>
    putToCase(caseId, purpose).then(
      () => go(`/cases/${caseId}`, { replace: true }),
      () => setWrong(true),
    )
  const leave = () => void leaveShared().then(() => go('/', { replace: true }))
  return (
    <Page title={words.share.title} back={{ to: '/cases', says: words.back }}>
      {wrong && <Notice sign="stop">{words.images.notKept}</Notice>}
      {images?.length === 0 && <Notice>{words.share.nothing}</Notice>}
      {images !== undefined && images.length > 0 && (
        <>
          <p>{words.share.many(images.length)}</p>
          <Previews of={images} />
          <p class="small soft">{words.images.noNames}</p>
          <Select
            label={words.images.what}
            options={Object.entries(words.images.purpose).map(([value, says]) => ({ value, says }))}
            value={purpose}
            onChoose={(value) => setShows(value as ImagePurpose)}
          />
          <ToWhich onPut={(id) => void put(id)} />
          <button type="button" class="button plain" onClick={leave}>
            {words.share.leave}
          </button>
        </>
      )}
    </Page>
  )
}
