import { useRef, useState } from 'preact/hooks'
import type { ExerciseShown, NewAct, StepDue } from '@/api/shapes'
import { CanalPicture } from '@/parts/canal-picture/canal-picture'
import { Select, Tick } from '@/parts/fields'
import { Page } from '@/parts/page'
import { Sent } from '@/parts/sent'
import { actIn, endExercise } from '@/store/cache/practice'
import { hand } from '@/store/device/preferences'
import { uuid7 } from '@/store/device/uuid7'
import { useSending } from '@/store/forms/sending'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { LastAct, nameOf } from './last-act'
import './practice.css'

interface Props {
  of: ExerciseShown
  due: StepDue
  back: { to: string; says: string }
  children: preact.ComponentChildren
}

type Act = NewAct['act']

const PAST_MM = 1

/** The step that is due: where its instrument will rest is said first, then it is worked, or skipped. */
export function StepToDo({ of, due, back, children }: Props) {
  const [depth_um, setDepth] = useState<number>()
  const [force, setForce] = useState(false)
  const [past, setPast] = useState(false)
  const id = useRef(uuid7())
  const sentLast = useRef('')
  const renew = () => {
    id.current = uuid7()
  }
  const [sending, run] = useSending(renew)
  const send = (act: Act) => {
    const text = JSON.stringify(act)
    if (sentLast.current !== '' && sentLast.current !== text) renew()
    sentLast.current = text
    void run(() => actIn(of, { id: id.current, act }))
  }
  const busy = sending.state === 'busy'
  const name = nameOf(of, due.instrument)
  const canal = of.canals.find((each) => each.canal === due.canal)
  const item = canal?.instruments.find(({ instrument }) => instrument.key === due.instrument)
  const said = due.judged ? depth_um : undefined
  const work = () =>
    send({
      kind: 'work',
      force,
      past_mm: past ? PAST_MM : 0,
      predicted_mm: said === undefined ? null : said / 1000,
      instrument: null,
    })
  return (
    <Page
      title={due.judged ? words.practice.ask(name) : primary(due, name)}
      under={words.practice.step(of.done.length + 1, due.canal)}
      back={back}
      foot={
        <div class="row">
          {due.action !== 'gauge' && (
            <button type="button" class="button answer" disabled={busy} onClick={() => send({ kind: 'skip' })}>
              {words.practice.skip}
            </button>
          )}
          <button
            type="button"
            class="button main grow"
            disabled={busy || (due.judged && said === undefined)}
            onClick={work}
          >
            {!due.judged
              ? primary(due, name)
              : said === undefined
                ? words.practice.first
                : words.practice.rests(mm(said / 1000))}
          </button>
        </div>
      }
    >
      {children}
      <LastAct of={of} />
      <Sent sending={sending} />
      <div class="practice-picture">
        <CanalPicture
          canal={{
            canal: due.canal,
            wall: canal?.usual ?? [],
            end_mm: canal?.working_length_mm ?? null,
            stop_um: Math.round(due.stop_mm * 1000),
          }}
          instrument={item && { name, outline: item.outline }}
          depth_um={depth_um}
          onDepth={due.judged ? setDepth : undefined}
          hand={hand.value}
        />
      </div>
      <p class="small soft">{words.practice.usual}</p>
      <details class="stack">
        <summary>{words.practice.otherwise}</summary>
        <div class="stack">
          {due.action === 'instrument' && (
            <>
              <Tick label={words.practice.force} checked={force} onChange={setForce} />
              <Tick label={words.practice.past} checked={past} onChange={setPast} />
            </>
          )}
          <Another of={of} due={due} busy={busy} send={send} />
          <button type="button" class="button plain" disabled={busy} onClick={() => void run(() => endExercise(of))}>
            {words.practice.endEarly}
          </button>
        </div>
      </details>
    </Page>
  )
}

function primary({ action, stop_mm }: StepDue, name: string): string {
  if (action === 'recapitulate') return words.practice.recapitulate(name)
  return action === 'gauge' ? words.practice.gauge(name) : words.practice.work(name, mm(stop_mm))
}

interface AnotherProps {
  of: ExerciseShown
  due: StepDue
  busy: boolean
  send: (act: Act) => void
}

/** An instrument that is not due. */
function Another({ of, due, busy, send }: AnotherProps) {
  const [key, setKey] = useState(due.instrument)
  const items = of.canals.find((each) => each.canal === due.canal)?.instruments ?? []
  const label = (each: (typeof items)[number]) =>
    `${each.instrument.name} ${each.instrument.motion === 'hand' ? words.practice.hand : words.practice.engine}`
  const picked = items.find(({ instrument }) => instrument.key === key)
  return (
    <>
      <Select
        label={words.practice.insert}
        options={items.map((each) => ({ value: each.instrument.key, says: label(each) }))}
        value={key}
        onChoose={setKey}
      />
      <button type="button" class="button" disabled={busy} onClick={() => send({ kind: 'insert', instrument: key })}>
        {words.practice.insertIt(picked ? label(picked) : key)}
      </button>
    </>
  )
}
