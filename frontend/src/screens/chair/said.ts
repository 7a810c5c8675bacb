import { nameOf } from '@/panels/emergency/at-hand'
import type { Chair } from '@/store/chair/chair'
import { mm } from '@/units/millimetres'
import type { CourseEvent } from '@/walk/course-event'
import { concernsImage } from '@/walk/put-right'
import type { Dam } from '@/walk/visit'
import { words } from '@/words/en'

/** What an event tells, in a few words. */
export function saidOf(chair: Chair, { kind, plan, canal, node, body }: CourseEvent): string {
  if (kind === 'emergency') return `${words.chair.kind.emergency}: ${words.chair.emergencies[String(body.what)]}`
  if (kind === 'corrected')
    return body.what
      ? `${words.chair.kind.corrected}: ${words.chair.emergencies[String(body.what)]}`
      : words.chair.wasNotSo
  if (kind === 'pause') return words.card.paused(String(body.what))
  if (kind === 'inspected')
    return `${nameOf(chair, String(body.instrument))} ${words.card.looked(body.found, body.why)}`
  if (kind === 'irrigated') return words.card.amount(Number(body.volume_ml), words.irrigant(String(body.irrigant)))
  if (kind === 'dam') return words.visit.dam[body.state as Dam]
  if (kind === 'turn') return words.card.turned(canal)
  if (concernsImage({ kind, body })) return imagePutRight(body)
  if (kind !== 'step') return [words.chair.kind[kind], body.exit, body.reason, body.text].filter(Boolean).join(' ')
  const step = chair.course.plans[plan]?.[canal]?.nodes[node]
  const named =
    step?.kind === 'do' && (step.instrument ? nameOf(chair, step.instrument) : words.order.action(step.action))
  const depth = body.exit === 'short' && typeof body.depth_um === 'number'
  return `${named || node} ${depth ? words.card.stopped(mm(Number(body.depth_um) / 1000)) : words.card.exit(String(body.exit))}`
}

function imagePutRight({ why, moved_to }: CourseEvent['body']): string {
  const says = words.images.putRight
  const done = typeof moved_to === 'string' ? says.to(moved_to || says.tooth) : says.struck(says.why[String(why)] ?? '')
  return `${words.images.purpose.other}: ${done}`
}

/** The same with the canal it was told of; a turn names it itself. */
export function withCanal(chair: Chair, event: CourseEvent): string {
  return [event.kind === 'turn' ? '' : event.canal, saidOf(chair, event)].filter(Boolean).join(' ')
}
