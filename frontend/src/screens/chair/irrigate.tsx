import { useEffect, useRef, useState } from 'preact/hooks'
import type { Plan, SheetStep } from '@/api/shapes'
import { Choice } from '@/parts/fields'
import { Notice } from '@/parts/notice'
import { Sheet } from '@/parts/rationale/sheet'
import { StepAnswers } from '@/parts/step-answers'
import { useAsked } from '@/parts/unhurried'
import type { Chair } from '@/store/chair/chair'
import { contact_s, endContact, startContact } from '@/store/chair/contact-time'
import { mm } from '@/units/millimetres'
import type { CanalProgress } from '@/walk/course'
import { givenIn, irrigantAt, irrigantsOf } from '@/walk/irrigants'
import { words } from '@/words/en'
import { leaveBy, type StepProps } from './step'
import { useNow } from './use-now'

const SECOND_MS = 1000
const ENOUGH_MS = [200, 100, 200] // two long pulses: unlike an answer's short one
const AMOUNTS_ML = [1, 2, 5] // what a syringe is emptied by; any more is told by another touch

/** Where the time of this step is kept. */
const placeOf = ({ chair, canal, node }: StepProps) => [chair.caseId, canal.canal, node.id]

function contactOf({ chair, node }: StepProps): NonNullable<Plan['at_the_chair']>['contacts'][number] | undefined {
  const irrigant = irrigantAt(chair.course, node)
  return chair.plan.at_the_chair?.contacts.find((contact) => contact.irrigant === irrigant)
}

/** The answers to an irrigation: done, and how long the irrigant stayed where that was counted. */
export function IrrigateAnswers(props: StepProps) {
  const { node } = props
  const place = placeOf(props)
  useNow(SECOND_MS)
  const seconds = contact_s(place)
  const contact = contactOf(props)
  useAsked(String(seconds === undefined))
  const leave = leaveBy(props)
  const done = () => {
    const stayed_s = contact_s(place)
    endContact(place)
    leave('done', { contact_s: stayed_s ?? null })
  }
  const start = () => startContact(place)
  if (seconds !== undefined)
    return (
      <StepAnswers>
        <button type="button" class="button main" onClick={done}>
          {seconds === null ? words.card.doneUnknown : words.card.doneTimed(seconds)}
        </button>
      </StepAnswers>
    )
  return (
    <StepAnswers>
      {contact && (
        <button type="button" class="button main" onClick={start}>
          {words.card.startTime}
        </button>
      )}
      <button type="button" class={contact ? 'button answer' : 'button main'} onClick={done}>
        {contact ? words.card.doneUntimed : doneSays(node)}
      </button>
      {!contact && (
        <button type="button" class="button answer" onClick={start}>
          {words.card.countTime}
        </button>
      )}
    </StepAnswers>
  )
}

const doneSays = ({ volume_ml }: SheetStep) =>
  volume_ml === null ? words.chair.done : words.chair.irrigated(volume_ml)

/** How long the irrigant has been in, large enough for arm's length; felt once when it is long enough. */
export function ContactTime(props: StepProps) {
  useNow(SECOND_MS)
  const seconds = contact_s(placeOf(props))
  const contact = contactOf(props)
  const enough = seconds != null && contact !== undefined && seconds >= contact.about_s
  const felt = useRef(enough)
  useEffect(() => {
    if (enough && !felt.current) navigator.vibrate?.(ENOUGH_MS)
    felt.current = enough
  }, [enough])
  if (seconds === undefined) return null
  if (seconds === null) return <Notice sign="caution">{words.card.timeUnknown}</Notice>
  const over = contact !== undefined && seconds > contact.most_s
  return (
    <div class="stack close">
      <p class="contact-time number" role="timer">
        {words.card.time(seconds, contact?.about_s)}
      </p>
      {over && <Notice sign="stop">{words.card.timeOver(contact.most_s)}</Notice>}
      {enough && !over && <Notice sign="note">{words.card.timeEnough}</Notice>}
    </div>
  )
}

/** Irrigation beside what the order of work asks for, one touch away at every step. */
export function IrrigateMore({ chair, canal, course }: { chair: Chair; canal: string; course: CanalProgress }) {
  const [open, setOpen] = useState(false)
  return (
    <>
      <button type="button" class="button answer" onClick={() => setOpen(true)}>
        {words.card.irrigateMore}
      </button>
      {open && (
        <Sheet title={words.card.moreTitle(canal)} onClose={() => setOpen(false)}>
          <More chair={chair} canal={canal} course={course} onDone={() => setOpen(false)} />
        </Sheet>
      )}
    </>
  )
}

interface MoreProps {
  chair: Chair
  canal: string
  course: CanalProgress
  onDone: () => void
}

function More({ chair, canal, course, onDone }: MoreProps) {
  const may = irrigantsOf(chair.course)
  const usual = may.includes(chair.plan.irrigant) ? chair.plan.irrigant : (may[0] ?? '')
  const [irrigant, setIrrigant] = useState(usual)
  const volumes = Object.entries(givenIn(canal, chair.events, chair.course.undone))
  const needle = needleAt(course)
  const record = (volume_ml: number) => {
    void chair.record(canal, '', { kind: 'irrigated', irrigant, volume_ml, contact_s: null })
    onDone()
  }
  return (
    <>
      {may.length > 1 && (
        <Choice
          label={words.card.which}
          value={irrigant}
          options={may.map((value) => ({ value, says: words.irrigant(value) }))}
          onChoose={setIrrigant}
          down
        />
      )}
      <fieldset class="amounts" aria-label={words.card.howMuch}>
        {AMOUNTS_ML.map((ml) => (
          <button key={ml} type="button" class="button answer" onClick={() => record(ml)}>
            {words.card.ml(ml)}
          </button>
        ))}
      </fieldset>
      {needle !== undefined && <p>{words.chair.noFurther(mm(needle / 1000))}</p>}
      <p class="small soft">
        {words.card.soFar(volumes.map(([name, ml]) => words.card.amount(ml, words.irrigant(name))))}
      </p>
    </>
  )
}

/** How deep the needle may go now: as the present step says, else as the last irrigation here did. */
function needleAt({ walk }: CanalProgress): number | undefined {
  const steps = [walk.at, ...walk.left.map(({ node }) => node).reverse()]
  const step = steps
    .map((id) => walk.sheet.nodes[id])
    .find((step) => step?.kind === 'do' && step.needle_at_most_um !== null)
  return step?.kind === 'do' ? (step.needle_at_most_um ?? undefined) : undefined
}
