import { useState } from 'preact/hooks'
import type { CanalPlan, SheetStep } from '@/api/shapes'
import { instrumentOf } from '@/panels/emergency/at-hand'
import { Trouble } from '@/panels/emergency/trouble'
import { Notice } from '@/parts/notice'
import { Unhurried } from '@/parts/unhurried'
import type { Chair } from '@/store/chair/chair'
import { useExpectedRest } from '@/store/chair/expected'
import { mayTell, partIn } from '@/store/chair/part'
import { wantedImages } from '@/store/chair/wanted-images'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { BandsBoard, LastDepth } from './bands'
import { ClosedVisit } from './closed-visit'
import { DoneList } from './done-list'
import { Halted, SalineOnly } from './halted'
import { Lapsed, missingSays, Revoked } from './may-start'
import { Note } from './note'
import { Outbox } from './outbox'
import { PhoneSays } from './phone-says'
import { SeenCanal } from './seen-canal'
import { StepPicture } from './step-picture'
import { TakeOver, useWorker } from './take-over'
import { UndoBar } from './undo-bar'
import { useUnhurriedChair } from './unhurried-chair'
import './looking-in.css'

interface Props {
  chair: Chair
  canals: readonly CanalPlan[]
}

/** A chair as whoever does not work it sees it: what its student is at, and what a supervisor may say to that. */
export function LookingIn({ chair: hurried, canals }: Props) {
  const inHand = canalInHand(hurried)
  const [picked, setPicked] = useState<string>()
  const [over, chair] = useUnhurriedChair(hurried, picked ?? inHand ?? '')
  const ahead = useExpectedRest(chair.caseId, chair)
  const who = useWorker(chair)
  const canal = canals.find((planned) => planned.canal === (picked ?? inHand)) ?? canals[0]
  const { course } = chair
  const halted = course.haltedBy !== null
  const coordinator = partIn(course) === 'coordinator'
  return (
    <Unhurried over={over} class="chair looking-in">
      {halted && <Halted chair={chair} />}
      <Notice>{coordinator ? words.look.inOnly(who) : words.look.in(who)}</Notice>
      <SalineOnly chair={chair} />
      <PhoneSays caseId={chair.caseId} />
      <Outbox chair={chair} />
      <section class="looking-at" aria-label={who}>
        <p class="strong">{atSays(chair, inHand, who)}</p>
        {course.missing.length > 0 && !halted && !course.visit.closed && (
          <p>{words.look.missing(who, missingSays(chair))}</p>
        )}
        {course.missing.includes('approval_lapsed') && <Lapsed chair={chair} />}
        {course.missing.includes('revoked') && <Revoked chair={chair} />}
      </section>
      {course.visit.closed && <ClosedVisit chair={chair} caseId={chair.caseId} />}
      {canal && <LastDepth chair={chair} ahead={ahead} canal={canal} />}
      {canal && <SeenCanal key={canal.canal} chair={chair} canal={canal} who={who} />}
      {canal && <StepPicture {...{ chair, canals, canal, ahead }} tip={undefined} onTurn={setPicked} />}
      {canal && <BandsBoard chair={chair} ahead={ahead} canal={canal} />}
      <DoneList chair={chair} />
      {mayTell(course, 'note') && <Note chair={chair} />}
      {canal && !coordinator && <Offers chair={chair} canal={canal.canal} />}
    </Unhurried>
  )
}

/** What a supervisor can do from here: ask, stop, take over. Answers stand with the canal that waits for them. */
function Offers({ chair, canal }: { chair: Chair; canal: string }) {
  const asked = wantedImages(chair).some((event) => event.canal === canal)
  const ask = () => void chair.record(canal, '', { kind: 'wanted', what: 'image', note: '' })
  const held = chair.course.canals[canal]?.held ?? null
  return (
    <div class="dock">
      <UndoBar chair={chair} canal={canal} onTurnedBack={() => undefined} />
      <div class="looking-offers">
        <button type="button" class="button answer" disabled={asked} onClick={ask}>
          {asked ? words.look.imageAsked(canal) : words.look.askImage(canal)}
        </button>
        <Trouble chair={chair} canal={canal} pausable={held === null} says={words.look.stop} />
        <TakeOver chair={chair} />
      </div>
    </div>
  )
}

/** The canal that whoever works it turned to or worked in last. */
function canalInHand({ events, course }: Chair): string | undefined {
  const worked = events.findLast(
    ({ id, kind, canal }) =>
      (kind === 'step' || kind === 'turn') && course.canals[canal] !== undefined && !course.undone.has(id),
  )
  return worked?.canal
}

/** In the third person: who is at what, in which canal. */
function atSays(chair: Chair, canal: string | undefined, who: string): string {
  const walk = canal === undefined ? undefined : chair.course.canals[canal]?.walk
  if (canal === undefined || !walk) return words.look.notBegun(who)
  const { node } = walk
  if (node.kind === 'end') return words.look.finished(who, canal)
  const stop = walk.stop()
  const to = stop !== null && node.target ? `, ${words.look.to(mm(stop / 1000))}` : ''
  return `${words.look.at(who, nameOfStep(chair, node), canal)}${to}`
}

function nameOfStep(chair: Chair, node: SheetStep): string {
  return instrumentOf(chair, node.instrument)?.name ?? words.look.step(node.action)
}
