import { useEffect, useState } from 'preact/hooks'
import type { Shows } from '@/api/shapes'
import { Select } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Page } from '@/parts/page'
import { Seen } from '@/parts/seen'
import { go } from '@/router'
import { useCases } from '@/store/cases'
import { leaveShared, putToCase, sharedImages } from '@/store/shared'
import { words } from '@/words/en'

/** Photos shared with the app from another one: to which case they belong. */
export function Share() {
  const cases = useCases()
  const [many, setMany] = useState<number>()
  const [shows, setShows] = useState<Shows>('pre_operative')
  const [wrong, setWrong] = useState(false)
  useEffect(() => void sharedImages().then((found) => setMany(found.length)), [])
  const put = (caseId: string) =>
    putToCase(caseId, shows).then(
      () => go(`/cases/${caseId}`, { replace: true }),
      () => setWrong(true),
    )
  const leave = () => void leaveShared().then(() => go('/', { replace: true }))
  return (
    <Page title={words.share.title} back={{ to: '/cases', says: words.back }}>
      {wrong && <Notice sign="stop">{words.images.notKept}</Notice>}
      {many === 0 && <Notice>{words.share.nothing}</Notice>}
      {many !== undefined && many > 0 && (
        <>
          <p>{words.share.many(many)}</p>
          <p class="small soft">{words.images.noNames}</p>
          <Select
            label={words.images.what}
            options={Object.entries(words.images.shows).map(([value, says]) => ({ value, says }))}
            value={shows}
            onChoose={(value) => setShows(value as Shows)}
          />
          <Seen of={cases} rows={4}>
            {(page) => (
              <section class="stack">
                <h2>{words.share.which}</h2>
                {page.results.map((one) => (
                  <button key={one.id} type="button" class="button answer" onClick={() => void put(one.id)}>
                    {one.tooth.iso} · {one.patient_alias}
                  </button>
                ))}
              </section>
            )}
          </Seen>
          <button type="button" class="button plain" onClick={leave}>
            {words.share.leave}
          </button>
        </>
      )}
    </Page>
  )
}
