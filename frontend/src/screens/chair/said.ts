import { nameOf } from '@/panels/emergency/at-hand'
import type { Chair } from '@/store/chair/chair'
import { mm } from '@/units/millimetres'
import type { CourseEvent, EventOf, PayloadOf } from '@/walk/course-event'
import { words } from '@/words/en'

/** What an event tells, in a few words. */
export function saidOf(chair: Chair, event: CourseEvent): string {
  const { kind, canal } = event
  switch (event.kind) {
    case 'step':
      return stepOf(chair, event)
    case 'emergency':
      return `${words.chair.kind.emergency}: ${words.chair.emergencies[event.payload.what]}`
    case 'corrected': {
      const { what } = event.payload
      return what ? `${words.chair.kind.corrected}: ${words.chair.emergencies[what]}` : words.chair.wasNotSo
    }
    case 'pause':
      return words.card.paused(event.payload.what ?? 'other')
    case 'inspected':
      return `${nameOf(chair, event.payload.instrument)} ${words.card.looked(event.payload.found, event.payload.why)}`
    case 'irrigated':
      return words.card.amount(event.payload.volume_ml, words.irrigant(event.payload.irrigant))
    case 'dam':
      return words.visit.dam[event.payload.state]
    case 'turn':
      return words.card.turned(canal)
    case 'struck':
      return event.payload.what === 'image' ? imagePutRight(event.payload) : words.chair.kind.struck
    case 'sign_off':
      return [words.chair.kind.sign_off, event.payload.exit, event.payload.reason].filter(Boolean).join(' ')
    case 'resume':
    case 'revoked':
      return [words.chair.kind[kind], event.payload.reason].filter(Boolean).join(' ')
    case 'replan':
      return event.plan === chair.version.hash ? words.newPlan.came(chair.version.number) : words.chair.kind.replan
    case 'note':
      return `${words.chair.kind.note} ${event.payload.text}`
    default:
      return words.chair.kind[kind]
  }
}

function stepOf(chair: Chair, { plan, canal, node, payload: { exit, depth_um } }: EventOf<'step'>): string {
  const step = chair.course.plans[plan]?.[canal]?.nodes[node]
  const named =
    step?.kind === 'do' && (step.instrument ? nameOf(chair, step.instrument) : words.order.action(step.action))
  const left = exit === 'short' && depth_um != null ? words.card.stopped(mm(depth_um / 1000)) : words.card.exit(exit)
  return `${named || node} ${left}`
}

function imagePutRight({ why, moved_to }: PayloadOf<'struck'>): string {
  const says = words.images.putRight
  const done = moved_to == null ? says.struck(says.why[why] ?? '') : says.to(moved_to || says.tooth)
  return `${words.images.purpose.other}: ${done}`
}

/** The same with the canal it was told of; a turn names it itself. */
export function withCanal(chair: Chair, event: CourseEvent): string {
  return [event.kind === 'turn' ? '' : event.canal, saidOf(chair, event)].filter(Boolean).join(' ')
}
