import { useState } from 'preact/hooks'
import type { ActDone, ExerciseShown, PracticeScore } from '@/api/shapes'
import { Page } from '@/parts/page'
import { Sent } from '@/parts/sent'
import { go } from '@/router'
import { beginExercise } from '@/store/cache/practice'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import { membership } from '@/store/session/session'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { nameOf } from './last-act'
import { RevealedPicture } from './revealed-picture'

interface Props {
  of: ExerciseShown
  back: { to: string; says: string }
}

/** The canals as they were over what was worked, each mistake in its place, and the score. */
export function Revealed({ of, back }: Props) {
  const [sending, run] = useSending()
  const [id] = useState(uuid7)
  const next = () => void run(async () => go(`/practice/${await beginExercise({ id })}`))
  const own = membership.value?.role === 'student'
  const wrong = of.done.filter(({ mistakes }) => mistakes.length > 0)
  return (
    <Page
      title={words.practice.ended}
      under={own ? undefined : of.student.name}
      back={back}
      foot={
        own && (
          <button type="button" class="button main" disabled={sending.state === 'busy'} onClick={next}>
            {words.practice.next}
          </button>
        )
      }
    >
      <Sent sending={sending} again={next} />
      {of.score ? <ScoreCard of={of.score} /> : <p class="soft">{words.practice.endedEarly}</p>}
      {of.reveal === null && <p>{words.practice.notShown}</p>}
      {of.reveal?.canals.map((canal) => (
        <RevealedPicture key={canal.canal} of={canal} wrong={wrong.filter((each) => each.canal === canal.canal)} />
      ))}
      <section class="stack close">
        <h2>{words.practice.mistakes}</h2>
        {wrong.length === 0 ? <p>{words.practice.noMistakes}</p> : <Mistakes of={of} wrong={wrong} />}
      </section>
    </Page>
  )
}

function Mistakes({ of, wrong }: { of: ExerciseShown; wrong: readonly ActDone[] }) {
  return (
    <ul class="ledger">
      {wrong.map(({ number, instrument, mistakes }) => (
        <li key={number} class="stack close">
          <span class="strong">{words.practice.at(number, nameOf(of, instrument))}</span>
          {mistakes.map(({ code, says }) => (
            <span key={code}>{says}</span>
          ))}
        </li>
      ))}
    </ul>
  )
}

/** One number, and what it is made of. */
function ScoreCard({ of }: { of: PracticeScore }) {
  const { parts } = words.practice
  return (
    <section class="card stack close">
      <h2>{words.practice.points(of.points)}</h2>
      <p>
        {parts.prediction} {of.prediction}
        {of.error_mm !== null && <span class="small soft"> {words.practice.error(mm(of.error_mm))}</span>}
      </p>
      <p>
        {parts.steps} {of.steps}{' '}
        <span class="small soft">{words.practice.steps(of.steps_taken, of.steps_planned)}</span>
      </p>
      <p>
        {parts.needless} {of.needless}{' '}
        <span class="small soft">{words.practice.insertions(of.insertions_needless)}</span>
      </p>
      <p>
        {parts.consequences} {of.consequences}{' '}
        <span class="small soft">{words.practice.mistakeCount(of.mistakes)}</span>
      </p>
    </section>
  )
}
