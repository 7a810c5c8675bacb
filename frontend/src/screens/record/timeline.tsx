import type { RecordValue, TimelineEntry } from '@/api/shapes'
import { words } from '@/words/en'

const APART_MS = 60_000 // a clock that is off, or an entry that was sent late

/** Every entry once, in order. What was taken back or moved nothing stays, and says so in words. */
export function Timeline({ of }: { of: RecordValue }) {
  return (
    <details class="record-part">
      <summary>
        <h2>{words.record.timeline}</h2> <span class="soft">{of.timeline.length}</span>
      </summary>
      <a class="button plain" href={`/api/v1/cases/${of.case_id}/course.pdf`} target="_blank" rel="noopener">
        {words.record.course}
      </a>
      {of.timeline.length === 0 && <p class="soft">{words.record.nothing}</p>}
      <ol class="ledger">
        {of.timeline.map((entry) => (
          <li key={entry.event_id}>
            <Entry of={entry} />
          </li>
        ))}
      </ol>
    </details>
  )
}

function Entry({ of }: { of: TimelineEntry }) {
  const says = (
    <>
      {of.canal && <b>{of.canal} </b>}
      {of.says}
    </>
  )
  return (
    <div class="record-entry">
      <span class="number soft">{of.position}</span>
      <div>
        <p>{of.undone ? <del>{says}</del> : says}</p>
        {of.undone && <p class="small strong">{words.record.takenBack}</p>}
        {of.not_checked_says && <p class="small strong">{words.record.notChecked(of.not_checked_says)}</p>}
        {of.out_of_course && <p class="small strong">{words.record.outOfCourse(of.out_of_course_says)}</p>}
        <p class="small soft">
          {words.record.at(of.at)} · {of.who.name}
          {Math.abs(Date.parse(of.device_time) - Date.parse(of.at)) > APART_MS &&
            ` · ${words.record.device(words.record.at(of.device_time))}`}
        </p>
      </div>
    </div>
  )
}
