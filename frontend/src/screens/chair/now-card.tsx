import type { CanalPlan, InstrumentName, SheetStep } from '@/api/shapes'
import { beforeStep, instrumentOf, justOut, nameOf } from '@/panels/emergency/at-hand'
import { InSpite } from '@/panels/hold-point/answered'
import { StepImages } from '@/panels/images/step-images'
import { InstrumentLabel } from '@/parts/instrument'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair/chair'
import { mm } from '@/units/millimetres'
import type { CanalProgress } from '@/walk/course'
import { irrigantAt } from '@/walk/irrigants'
import { placeOf } from '@/walk/walk'
import { words } from '@/words/en'
import { Asked } from './asked'
import { HoldPoint } from './hold-point'
import { ContactTime } from './irrigate'
import { Discard, lookFor } from './look-first'
import { Withheld } from './withheld'
import './now-card.css'

interface Props {
  chair: Chair
  canal: CanalPlan
  course: CanalProgress
  /** The canal as it is, and the way to the others. */
  picture?: preact.ComponentChildren
  /** What else may be done from here. */
  children?: preact.ComponentChildren
}

/** The one step of a canal that is due: what, with which instrument, to which stop, and what that rests on. */
export function NowCard({ chair, canal, course, picture, children }: Props) {
  const { node } = course.walk
  if (course.held || course.toPlan || !course.released || course.state === 'waits' || node.kind === 'end')
    return (
      <>
        <Withheld chair={chair} canal={canal.canal} course={course} picture={picture} />
        {children}
      </>
    )
  const instrument = instrumentOf(chair, node.instrument)
  const stop = course.walk.stop()
  return (
    <section class="now-card" aria-label={words.card.now(canal.canal)}>
      <What chair={chair} node={node} instrument={instrument} stop={stop} />
      <Where canal={canal} course={course} node={node} />
      <p class="now-details">{detailsOf(node, instrument).join(' · ')}</p>
      {course.state === 'hold_point' && <p class="small soft">{restsOn(canal)}</p>}
      {course.state === 'hold_point' && <HoldPoint chair={chair} canal={canal.canal} node={node} />}
      {node.action === 'irrigate' && <ContactTime chair={chair} canal={canal} course={course} node={node} />}
      {beforeStep(chair, canal.canal, course)?.what === 'motor' && (
        <Notice sign="stop">{words.card.motorMissing}</Notice>
      )}
      <Asked chair={chair} canal={canal.canal} course={course} />
      {picture}
      <Out chair={chair} course={course} node={node} />
      {node.action === 'image' && <StepImages chair={chair} canal={canal.canal} node={node} />}
      {children}
    </section>
  )
}

/** What the step is for, and what its length rests on. */
export function AboutStep({ chair, canal, course }: Pick<Props, 'chair' | 'canal' | 'course'>) {
  const { node } = course.walk
  if (node.kind === 'end') return null
  // An irrigant that is another than planned is not what the plan speaks of.
  const asPlanned = irrigantAt(chair.course, node) === node.irrigant
  return (
    <>
      {node.action === 'sign_off' && <StepImages chair={chair} canal={canal.canal} node={node} />}
      <InSpite chair={chair} canal={canal.canal} />
      <p class="small soft">
        {asPlanned && node.say} {restsOn(canal)}
      </p>
    </>
  )
}

/** Which canal and phase, and how far one has come. */
export function Where({ canal, course, node }: Pick<Props, 'canal' | 'course'> & { node: SheetStep }) {
  const { step, about } = placeOf(canal, course.walk)
  return (
    <h2 class="now-where">
      <b>{canal.canal}</b> {words.phase(node.phase)}
      <span class="small soft">{words.card.place(step, about)}</span>
    </h2>
  )
}

function detailsOf(node: SheetStep, instrument: InstrumentName | undefined): string[] {
  return [
    instrument && node.action !== 'instrument' && words.order.action(node.action),
    node.target && words.chair.to[node.target],
    instrument &&
      instrument.motion !== 'hand' &&
      `${words.order.motion(instrument.motion)}, ${instrument.setting_says}`,
    node.irrigant && node.volume_ml !== null && words.chair.millilitres(node.volume_ml),
  ].filter((said) => typeof said === 'string')
}

export function restsOn({ length, provisional }: CanalPlan): string {
  const several = length.rests_on.length > 1 && length.apart_mm !== null
  const agree = several ? (length.apart_mm ? words.card.apart(mm(length.apart_mm)) : words.card.agree) : ''
  return words.card.restsOn(
    length.stop_mm === null ? '–' : mm(length.stop_mm),
    length.rests_on.map((method) => words.method(method)),
    provisional ? words.card.provisional : agree,
  )
}

interface WhatProps {
  chair: Chair
  node: SheetStep
  instrument: InstrumentName | undefined
  stop: number | null
}

/** What is in the hand, and the one number to set: read at arm's length. */
export function What({ chair, node, instrument, stop }: WhatProps) {
  const irrigant = irrigantAt(chair.course, node)
  const action = irrigant ? words.irrigant(irrigant) : words.order.action(node.action)
  const needle = node.needle_at_most_um
  return (
    <fieldset class="now-what" aria-label={words.card.what}>
      {instrument ? (
        <InstrumentLabel name={instrument.name} colour={instrument.colour} />
      ) : (
        <span class="now-words">{node.hold_point ? words.order.holdPoint(node.hold_point, false) : action}</span>
      )}
      {stop !== null && node.target && <Setting says={words.card.stop} um={stop} />}
      {needle !== null && <Setting says={words.card.needle} um={needle} />}
    </fieldset>
  )
}

function Setting({ says, um }: { says: string; um: number }) {
  return (
    <label class="now-set">
      <span class="small soft">{says}</span>
      <output class="number now-stop">{mm(um / 1000)}</output>
    </label>
  )
}

/** After an instrument has come out: what to look for while irrigating. */
function Out({ chair, course, node }: Pick<Props, 'chair' | 'course'> & { node: SheetStep }) {
  const instrument = node.action === 'irrigate' ? justOut(course) : undefined
  if (!instrument) return null
  return (
    <div class="just-out">
      <p class="small">
        <b>{words.card.lookAfter(nameOf(chair, instrument))}</b> {lookFor(chair)}
      </p>
      <Discard chair={chair} instruments={[instrument]} />
    </div>
  )
}
