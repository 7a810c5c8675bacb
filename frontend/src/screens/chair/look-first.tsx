import { useState } from 'preact/hooks'
import { adviceOf, nameOf } from '@/panels/emergency/at-hand'
import { Sheet } from '@/parts/rationale/sheet'
import { StepAnswers } from '@/parts/step-answers'
import { useAsked } from '@/parts/unhurried'
import type { Chair } from '@/store/chair/chair'
import type { PayloadOf } from '@/walk/course-event'
import { words } from '@/words/en'

function inspected(chair: Chair, instrument: string, state: PayloadOf<'inspected'>['found'], why = '') {
  // Of the tooth, not of a canal: what was found on an instrument must not stand between a step and its taking back.
  return chair.record('', '', { kind: 'inspected', instrument, found: state, why })
}

/** What one looks for on an instrument that has come out. */
export function lookFor(chair: Chair): string {
  const clinic = chair.plan.setting === 'clinic' ? adviceOf(chair, 'look', 'clinic') : []
  return [...adviceOf(chair, 'look', 'every'), ...clinic].map(({ says }) => says).join(' ')
}

/** Instruments that have to be looked at before the step is worked. */
export function LookFirst({ chair, instruments }: { chair: Chair; instruments: readonly string[] }) {
  const whole = async () => {
    for (const instrument of instruments) await inspected(chair, instrument, 'whole')
  }
  return (
    <>
      <div class="stack close">
        <p class="strong">{words.card.look(instruments.map((key) => nameOf(chair, key)))}</p>
        <p class="small">{lookFor(chair)}</p>
      </div>
      <StepAnswers>
        <button type="button" class="button main" onClick={() => void whole()}>
          {words.card.allWhole(instruments.length)}
        </button>
        <Discard chair={chair} instruments={instruments} />
      </StepAnswers>
    </>
  )
}

/** An instrument that was discarded is due again. */
export function TakeNew({ chair, instrument, why }: { chair: Chair; instrument: string; why: string }) {
  return (
    <>
      <div class="stack close">
        <p class="strong">{words.card.takeNew(nameOf(chair, instrument))}</p>
        <p class="small">{words.card.wasDiscarded(why)}</p>
      </div>
      <StepAnswers>
        <button
          type="button"
          class="button main"
          onClick={() => void inspected(chair, instrument, 'whole', words.card.newOne)}
        >
          {words.card.newTaken}
        </button>
      </StepAnswers>
    </>
  )
}

/** Discards an instrument and says why; a missing piece is an emergency. */
export function Discard({ chair, instruments }: { chair: Chair; instruments: readonly string[] }) {
  const [open, setOpen] = useState(false)
  const [picked, setPicked] = useState<string>()
  const which = instruments.length === 1 ? instruments[0] : picked
  useAsked(which)
  const close = () => {
    setOpen(false)
    setPicked(undefined)
  }
  return (
    <>
      <button type="button" class="button answer" onClick={() => setOpen(true)}>
        {words.card.discard}
      </button>
      {open && (
        <Sheet title={which ? words.card.whyDiscard(nameOf(chair, which)) : words.card.discardTitle} onClose={close}>
          {which ? (
            <WhyDiscard chair={chair} instrument={which} onDone={close} />
          ) : (
            <div class="ways">
              {instruments.map((key) => (
                <button key={key} type="button" class="button answer" onClick={() => setPicked(key)}>
                  {nameOf(chair, key)}
                </button>
              ))}
            </div>
          )}
        </Sheet>
      )}
    </>
  )
}

function WhyDiscard({ chair, instrument, onDone }: { chair: Chair; instrument: string; onDone: () => void }) {
  const discard = (why: string) => {
    onDone()
    void inspected(chair, instrument, 'discarded', why)
  }
  const missing = () => {
    onDone()
    void chair.record('', '', { kind: 'emergency', what: 'instrument_separated', note: '', before: [] })
  }
  return (
    <div class="ways">
      {adviceOf(chair, 'discard').map(({ key, says }) => (
        <button key={key} type="button" class="button answer" onClick={() => discard(says)}>
          {says}
        </button>
      ))}
      <button type="button" class="button answer" data-sign="stop" data-at-once onClick={missing}>
        {words.card.pieceMissing}
      </button>
    </div>
  )
}
