import { signal } from '@preact/signals'
import { uuid7 } from '@/store/device/uuid7'
import type { PayloadOf } from '@/walk/course-event'
import type { Chair } from './chair'

/** Canals that a person has taken out of what is done for several at once, by case, plan and step. */
const leftOut = signal<Readonly<Record<string, readonly string[]>>>({})

const placeOf = ({ caseId, course }: Chair, node: string) => `${caseId} ${course.plan} ${node}`

/** The canals that stand at the same step as this one, this one first; at a hold point all that wait at any. */
export function standingWith(chair: Chair, canal: string): readonly string[] {
  const here = chair.course.canals[canal]
  if (!here) return []
  const others = Object.entries(chair.course.canals).filter(
    ([name, { walk, state }]) =>
      name !== canal && state === here.state && (state === 'hold_point' || walk.node.id === here.walk.node.id),
  )
  return [canal, ...others.map(([name]) => name)]
}

/** For whom a canal is left out of what is done at once: a step's name, or what holds for every hold point. */
export const HOLD_POINTS = 'hold points'

/** Those of them that one exposure shows apart by the plan; this one alone in a plan from before that was told. */
export function shownWith(chair: Chair, canal: string): readonly string[] {
  const exposures = stageOf(chair, canal)?.exposures ?? []
  const mates = exposures.find(({ canals }) => canals.includes(canal))?.canals ?? [canal]
  return standingWith(chair, canal).filter((name) => mates.includes(name))
}

/** Whether the plan has the canal shown from another angle at this step. */
export const turned = (chair: Chair, canal: string): boolean =>
  stageOf(chair, canal)?.exposures.some((exposure) => exposure.turned && exposure.canals.includes(canal)) ?? false

/** The canals that come to the same point and are not there yet. */
export function stillComing(chair: Chair, canal: string): readonly string[] {
  const at = chair.course.canals[canal]?.walk.node.id ?? ''
  return (stageOf(chair, canal)?.canals ?? []).filter((name) => {
    const other = chair.course.canals[name]
    if (!other || other.walk.node.id === at || !other.released) return false
    // In a sheet that begins in mid-course what lies behind is not there any more.
    const ahead = Object.hasOwn(other.walk.sheet.nodes, at) && !other.walk.left.some(({ node }) => node === at)
    return ahead && other.walk.node.kind !== 'end'
  })
}

function stageOf({ plan, course }: Chair, canal: string) {
  const node = course.canals[canal]?.walk.node
  const phase = node && node.kind !== 'end' ? node.phase : ''
  return plan?.asks?.stages.find((stage) => stage.phase === phase && stage.canals.includes(canal))
}

/** Those of the canals that the next answer is for; always the first one. */
export function picked(chair: Chair, node: string, canals: readonly string[]): readonly string[] {
  const out = leftOut.value[placeOf(chair, node)] ?? []
  return canals.filter((name, i) => i === 0 || !out.includes(name))
}

export function pick(chair: Chair, node: string, canal: string): void {
  const at = placeOf(chair, node)
  const out = leftOut.value[at] ?? []
  const now = out.includes(canal) ? out.filter((name) => name !== canal) : [...out, canal]
  leftOut.value = { ...leftOut.value, [at]: now }
}

/** Records one act for several canals, each at its own step: an event for each canal, with an id in common. */
export async function recordFor(
  chair: Chair,
  canals: readonly string[],
  payload: PayloadOf<'step' | 'sign_off' | 'ask' | 'come'>,
): Promise<void> {
  const isOne = canals.length > 1 && payload.kind !== 'come' // who comes, comes to each
  const shared = isOne ? { ...payload, together: uuid7() } : payload
  const at = canals.map((canal) => [canal, chair.course.canals[canal]?.walk.at ?? ''] as const)
  for (const [canal, node] of at) await chair.record(canal, node, shared)
}
