import type { ImagePurpose, RecordValue } from '@/api/shapes'
import { words } from '@/words/en'

/** What other systems entered, and what was put right since. */
export function PutRights({ of }: { of: RecordValue }) {
  return (
    <>
      <Entered of={of} />
      <Struck of={of} />
      <PutRight of={of} />
    </>
  )
}

/** What other systems entered for people. */
function Entered({ of }: { of: RecordValue }) {
  // A record that was kept from before there were services has none.
  const rows = of.entered ?? []
  if (rows.length === 0) return null
  return (
    <>
      <h2>{words.record.entered}</h2>
      <ul class="ledger">
        {rows.map((row, number) => (
          <li key={number} class="small">
            {row.says}{' '}
            <span class="block soft">
              {words.record.enteredBy(row.service, row.person.name)}, {words.record.at(row.at)}
            </span>
          </li>
        ))}
      </ul>
    </>
  )
}

/** Images that were put to another canal, or struck. */
function PutRight({ of }: { of: RecordValue }) {
  const says = words.images.putRight
  // A record that was kept from before images could be put right has none.
  const rows = of.images_put_right ?? []
  if (rows.length === 0) return null
  return (
    <>
      <h2>{says.title}</h2>
      <ul class="ledger">
        {rows.map((row) => (
          <li key={`${row.image_id}${row.at}`} class="small">
            <b>{row.canal || says.tooth}</b> {words.images.purpose[row.purpose as ImagePurpose]}:{' '}
            {row.moved_to === null
              ? says.struck(says.why[row.why] ?? '')
              : says.moved(row.canal || says.tooth, row.moved_to || says.tooth)}{' '}
            <span class="block soft">
              {row.who.name}, {words.record.at(row.at)}
            </span>
          </li>
        ))}
      </ul>
    </>
  )
}

/** Readings that were mistakes: who struck them, when and why. */
function Struck({ of: { struck } }: { of: RecordValue }) {
  if (struck.length === 0) return null
  return (
    <>
      <h2>{words.struck.title}</h2>
      <ul class="ledger">
        {struck.map((reading) => (
          <li key={`${reading.canal}${reading.taken_at}`} class="small">
            <b>{reading.canal}</b> <del>{reading.says}</del>{' '}
            <span class="block soft">
              {words.struck.by(reading.who.name, words.record.at(reading.at), words.struck.why[reading.why])}
            </span>
          </li>
        ))}
      </ul>
    </>
  )
}
