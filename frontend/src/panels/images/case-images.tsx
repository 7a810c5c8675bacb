import { useState } from 'preact/hooks'
import type { CaseShown, ImagePurpose } from '@/api/shapes'
import { Select } from '@/parts/fields'
import { useWorks } from '@/store/chair/chair'
import { useImages } from '@/store/images/images'
import { words } from '@/words/en'
import { ImagesOf } from './images-of'
import { TakeImage } from './take-image'

const WHOLE_TOOTH = ''

/** Every image of a case, and a further one. */
export function CaseImages({ of }: { of: CaseShown }) {
  const [canal, setCanal] = useState(WHOLE_TOOTH)
  const [purpose, setShows] = useState<ImagePurpose>('pre_operative')
  const stored = useImages(of.id).value?.images.filter((image) => image.state === 'stored') ?? []
  const works = useWorks(of.id)
  const canals = of.canals.map(({ name }) => ({ value: name, says: name }))
  return (
    <section class="stack">
      <h2>{words.images.title}</h2>
      <ImagesOf caseId={of.id} />
      {stored.length > 1 && (
        <a class="button" href={`/cases/${of.id}/images`}>
          {words.marks.sideBySide}
        </a>
      )}
      {works && (
        <details>
          <summary>{words.images.add}</summary>
          <div class="stack">
            <Select
              label={words.images.canal}
              options={[{ value: WHOLE_TOOTH, says: words.images.tooth }, ...canals]}
              value={canal}
              onChoose={setCanal}
            />
            <Select
              label={words.images.what}
              options={Object.entries(words.images.purpose).map(([value, says]) => ({ value, says }))}
              value={purpose}
              onChoose={(value) => setShows(value as ImagePurpose)}
            />
            <TakeImage caseId={of.id} canal={canal} purpose={purpose} />
          </div>
        </details>
      )}
    </section>
  )
}
