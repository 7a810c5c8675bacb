import { useState } from 'preact/hooks'
import { Notice } from '@/parts/notice'
import { Sheet } from '@/parts/rationale/sheet'
import { type OfEmergency, type Way, wayOf } from '@/store/outbox/emergencies'
import type { Ready } from '@/store/outbox/emergency-store'
import type { PayloadOf } from '@/walk/course-event'
import type { Emergency } from '@/walk/emergencies'
import { words } from '@/words/en'
import { FirstSteps } from './first-steps'
import { Ways } from './ways'

type What = PayloadOf<'emergency'>['what']

interface Props {
  caseId: string
  emergencies: readonly Emergency[]
  advice: Ready['advice']
  /** Name of who told an event. */
  by: (event: string) => string
  /** Whoever reads it stands at the chair; else they are told to go there. */
  there: boolean
  /** What cannot happen here is not offered. */
  canHappen?: ((what: string) => boolean) | undefined
  onTell: ((event: OfEmergency) => void) | undefined
}

/** What halts the tooth: first the person in the room, then whether anybody elsewhere knows, then what to do. */
export function ToldEmergencies({ caseId, emergencies, advice, by, there, canHappen, onTell }: Props) {
  const way = wayOf(caseId)
  const whats = [...new Set(emergencies.flatMap(({ what }) => (what === '' ? [] : [what])))]
  const coming = [...new Set(emergencies.flatMap(({ comingBy }) => (comingBy === '' ? [] : [by(comingBy)])))]
  return (
    <>
      <h2>{there ? words.chair.callNow : words.look.emergency(by(emergencies[0]?.id ?? '') || words.look.somebody)}</h2>
      {(there || way) && <HowSent way={way} />}
      {coming.length > 0 && <Notice sign="approved">{words.emergency.comes(coming.join(', '))}</Notice>}
      {emergencies.map((emergency) => (
        <div key={emergency.id} class="row apart wrap">
          <SaidOf of={emergency} by={by} />
          {onTell && <Correct of={emergency} canHappen={canHappen} onTell={onTell} />}
        </div>
      ))}
      <p>{words.chair.halted}</p>
      {whats.map((what) => (
        <section key={what} class="stack close">
          {whats.length > 1 && <h3>{words.chair.emergencies[what]}</h3>}
          <FirstSteps advice={advice} about="emergency" what={what} />
        </section>
      ))}
      <p class="small">{words.chair.whose}</p>
    </>
  )
}

function HowSent({ way }: { way: Way | undefined }) {
  if (!way) return <Notice sign="approved">{words.chair.sent}</Notice>
  if (way.why === 'on the way') return <Notice sign="waiting">{words.emergency.onTheWay}</Notice>
  const online = globalThis.navigator?.onLine !== false
  return <Notice sign="stop">{words.emergency.notSent(way.why, way.says, online)}</Notice>
}

function SaidOf({ of, by }: { of: Emergency; by: (event: string) => string }) {
  const said = of.what === '' ? words.emergency.notSo(by(of.correctedBy)) : words.chair.emergencies[of.what]
  return (
    <span class="grow">
      <b>{said}.</b>
      {of.what !== '' && of.correctedBy !== '' && (
        <span class="block small">{words.emergency.corrected(by(of.correctedBy))}</span>
      )}
    </span>
  )
}

interface CorrectProps extends Pick<Props, 'canHappen'> {
  of: Emergency
  onTell: (event: OfEmergency) => void
}

/** It was something else, or it was not so: said to everybody it was told to. The tooth stands still all the same. */
function Correct({ of, canHappen, onTell }: CorrectProps) {
  const [open, setOpen] = useState(false)
  const correct = (what: string | null) => {
    setOpen(false)
    onTell({ kind: 'corrected', corrects: of.id, what: what as What | null, note: '' })
  }
  const others = Object.fromEntries(Object.entries(words.chair.emergencies).filter(([what]) => what !== of.what))
  return (
    <>
      <button type="button" class="button" onClick={() => setOpen(true)}>
        {words.emergency.correct}
      </button>
      {open && (
        <Sheet title={words.emergency.wasSomethingElse} onClose={() => setOpen(false)}>
          <Ways says={others} canHappen={canHappen} sign="stop" onChoose={correct} />
          {of.what !== '' && (
            <div class="ways">
              <button type="button" class="button answer" onClick={() => correct(null)}>
                {words.emergency.wasNotSo}
              </button>
            </div>
          )}
          <p class="small">{words.emergency.correctSays}</p>
        </Sheet>
      )}
    </>
  )
}
