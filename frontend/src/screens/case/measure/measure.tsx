import { useId, useLayoutEffect, useState } from 'preact/hooks'
import type { CanalShown, CaseShown, Setting } from '@/api/shapes'
import type { Method } from '@/panels/readings/reading-fields'
import { lengthSays } from '@/parts/lengths-board/lengths-board'
import { useDialog } from '@/parts/rationale/sheet'
import { Sign } from '@/parts/signs'
import { Unhurried, useUnhurry } from '@/parts/unhurried'
import type { PendingReading } from '@/store/device/schema'
import { pendingReadingsOf } from '@/store/outbox/pending-readings'
import { membership } from '@/store/session/session'
import { words } from '@/words/en'
import { SIGNS } from '../canal-panel'
import { type Chosen, Entry } from './entry'
import './measure.css'

interface Props {
  of: CaseShown
  /** The canal to begin with; without one the first that has no reading. */
  begins?: string | undefined
  /** How it is taken; without it as it usually is. */
  method?: Method | undefined
  onClose: () => void
  /** Every canal was measured: its student goes on to the plan. */
  onMeasured: () => void
}

/** A sheet in which the canals are measured one after another; their lengths stay in sight over its keys. */
export function Measure({ of, begins, method, onClose, onMeasured }: Props) {
  const { ref, close } = useDialog()
  // A dialog that opens takes the focus to its first button, after what lies in it was drawn.
  useLayoutEffect(() => ref.current?.querySelector<HTMLElement>('[data-field]')?.focus(), [])
  const id = useId()
  const pending = pendingReadingsOf(of.id).value
  const first = of.canals.find((c) => c.id === begins) ?? of.canals.find((c) => c.readings.length === 0) ?? of.canals[0]
  const [at, setAt] = useState(first?.id)
  const canal = of.canals.find((c) => c.id === at)
  const [chosen, setChosen] = useState<Chosen>(() => ({
    method: method ?? usualMethod(of.setting, first),
    mark: '',
    after_flaring: false,
  }))
  const [said, setSaid] = useState('')
  const over = useUnhurry(`${at}`)
  if (!canal) return null
  const next = nextOf(of, canal, chosen.method, pending)
  const plans = membership.value?.role === 'student'
  const kept = (goesOn: boolean, onPhone: boolean) => {
    setSaid(`${canal.name}: ${onPhone ? words.phone.keptReading : words.measure.kept}`)
    if (!goesOn) return
    if (next) setAt(next.id)
    else if (plans) onMeasured()
    else close()
  }
  return (
    <dialog ref={ref} class="sheet measure" aria-labelledby={id} onClose={onClose}>
      <Unhurried over={over} class="measure-in">
        <header class="row apart">
          <h2 id={id}>{words.measure.title(canal.name, canal.reference_point)}</h2>
          <button type="button" class="button plain" data-at-once onClick={close}>
            {words.measure.close}
          </button>
        </header>
        <Canals of={of} at={canal} pending={pending} onPick={setAt} />
        <p class="unseen" role="status">
          {said}
        </p>
        <Entry
          key={canal.id}
          of={of}
          canal={canal}
          pending={pending.filter((reading) => reading.canal === canal.id)}
          methods={methodsOf(of, canal, method)}
          chosen={chosen}
          onChosen={setChosen}
          says={next ? words.measure.next(next.name) : plans ? words.measure.plan : words.measure.keep}
          during={(written) => over.during(written)}
          onKept={kept}
        />
      </Unhurried>
    </dialog>
  )
}

/** The canal to go on with: after this one, and around, the first that was not measured in this way. */
function nextOf(of: CaseShown, after: CanalShown, method: Method, pending: readonly PendingReading[]) {
  const at = of.canals.indexOf(after)
  const others = [...of.canals.slice(at + 1), ...of.canals.slice(0, at)]
  return others.find((canal) => {
    const waits = pending.filter((taken) => taken.canal === canal.id && taken.refused === undefined)
    if (method === 'junction')
      return joins(of, canal) && !canal.junction && !waits.some((taken) => taken.junction !== undefined)
    const read = canal.readings.filter(({ struck }) => !struck)
    return ![...read, ...waits].some(({ reading }) => reading?.method === method)
  })
}

interface CanalsProps {
  of: CaseShown
  at: CanalShown
  pending: readonly PendingReading[]
  onPick: (id: string) => void
}

/** All canals with their lengths so far; the one in hand is chosen. */
function Canals({ of, at, pending, onPick }: CanalsProps) {
  return (
    <fieldset class="measure-canals">
      <legend class="unseen">{words.measure.canals}</legend>
      {of.canals.map((canal) => {
        const waits = pending.some((reading) => reading.canal === canal.id)
        return (
          <label key={canal.id}>
            <input
              type="radio"
              name="measured-canal"
              checked={canal.id === at.id}
              aria-label={sentence(canal, waits)}
              onChange={() => onPick(canal.id)}
            />
            <b>{canal.name}</b>
            <span class="row wrap">
              <Sign name={waits ? 'note' : SIGNS[canal.length?.state ?? 'missing']} />
              {waits ? words.measure.here : lengthSays(canal.length).map((says) => <b key={says}>{says}</b>)}
            </span>
          </label>
        )
      })}
    </fieldset>
  )
}

const sentence = ({ name, length }: CanalShown, waits: boolean) =>
  [name, length ? words.lengthState(length.state) : words.measure.none, waits && words.measure.notSent]
    .filter(Boolean)
    .join(', ')

const METHODS: readonly Method[] = ['pre_operative_image', 'confirming_image', 'apex_locator', 'direct_sight', 'ratio']

/** The canal joins another one of its root: where it does can be measured too. */
function joins(of: CaseShown, canal: CanalShown): boolean {
  const root = of.roots.find((r) => r.name === canal.root)
  const joined = root !== undefined && ['2-1', '1-2-1'].includes(root.pattern)
  return joined && root.main_canal != null && root.main_canal !== canal.name
}

/** How a canal can be measured; the end of a patient's canal is not seen. What was asked for is among it. */
function methodsOf(of: CaseShown, canal: CanalShown, asked: Method | undefined): readonly Method[] {
  const seen = METHODS.filter((method) => method !== 'direct_sight' || of.setting !== 'clinic')
  return joins(of, canal) || asked === 'junction' ? [...seen, 'junction'] : seen
}

/** What is usually taken next: an image before treatment, then the confirming one; in a block the end is seen. */
function usualMethod(setting: Setting, canal: CanalShown | undefined): Method {
  if (setting === 'block') return 'direct_sight'
  return canal?.readings.length === 0 ? 'pre_operative_image' : 'confirming_image'
}
