import type { CanalPlan, Do, InstrumentName } from '@/api/shapes'
import { InstrumentLabel } from '@/parts/instrument'
import { mm } from '@/parts/millimetres'
import type { Chair } from '@/store/chair'
import type { CanalCourse } from '@/walk/course'
import { words } from '@/words/en'
import { StepImages } from '../images/step-images'
import { Answers } from './answers'
import { Withheld } from './withheld'

interface Props {
  chair: Chair
  canal: CanalPlan
  course: CanalCourse
}

/** The one step of a canal that is due: what, with which instrument, to which stop, and the answers to it. */
export function NowCard({ chair, canal, course }: Props) {
  const { node } = course.walk
  if (course.held || !course.released || node.kind === 'end')
    return <Withheld chair={chair} canal={canal.canal} course={course} />
  const stop = course.walk.stop()
  return (
    <section class="now-card" aria-label={canal.canal}>
      <p class="now-where">
        <b>{canal.canal}</b> · {words.phase(node.phase)}
      </p>
      <What node={node} instrument={instrumentOf(chair, node)} stop={stop} />
      {node.say && <p>{node.say}</p>}
      {(node.action === 'image' || node.action === 'sign_off') && (
        <StepImages chair={chair} canal={canal.canal} node={node} />
      )}
      <Answers chair={chair} canal={canal.canal} node={node} course={course} stop={stop} />
    </section>
  )
}

function detailsOf(node: Do, instrument: InstrumentName | undefined): string[] {
  return [
    instrument && words.order.action(node.action),
    node.target && words.chair.to[node.target],
    instrument && instrument.motion !== 'hand' && instrument.setting_says,
    node.volume_ml !== null && words.chair.millilitres(node.volume_ml),
    node.irrigant && words.irrigant(node.irrigant),
    node.needle_at_most_um !== null && words.chair.noFurther(mm(node.needle_at_most_um / 1000)),
  ].filter((said) => typeof said === 'string')
}

function instrumentOf({ plan }: Chair, node: Do): InstrumentName | undefined {
  return plan.tray_list.find((item) => item.instrument.key === node.instrument)?.instrument
}

function What({ node, instrument, stop }: { node: Do; instrument: InstrumentName | undefined; stop: number | null }) {
  return (
    <>
      <p class="now-what">
        {instrument ? (
          <InstrumentLabel name={instrument.name} colour={instrument.colour} />
        ) : (
          <span class="now-words">
            {node.hold_point ? words.order.holdPoint(node.hold_point, false) : words.order.action(node.action)}
          </span>
        )}
        {stop !== null && node.target && <span class="number now-stop">{mm(stop / 1000)}</span>}
      </p>
      <p>{detailsOf(node, instrument).join(' · ')}</p>
    </>
  )
}
