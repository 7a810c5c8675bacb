import { useMemo } from 'preact/hooks'
import { beforeStep } from '@/panels/emergency/at-hand'
import { useUnhurry } from '@/parts/unhurried'
import type { Unhurry } from '@/parts/unhurry'
import type { Chair } from '@/store/chair/chair'

/** Watches over what is asked of the canal, and the chair whose every record holds up the next tap until it is shown. */
export function useUnhurriedChair(hurried: Chair, canal: string): readonly [Unhurry, Chair] {
  const over = useUnhurry(askedOf(hurried, canal))
  const chair = useMemo(
    () => ({ ...hurried, record: (...of: Parameters<Chair['record']>) => over.during(hurried.record(...of)) }),
    [hurried, over],
  )
  return [over, chair]
}

/** What is asked on the screen, so that it changes with whatever a tap would be an answer to. */
function askedOf(chair: Chair, canal: string): string {
  const { haltedBy, salineBy, missing, visit, plan, canals, undone } = chair.course
  const course = canals[canal]
  const of = course && [
    course.walk.at,
    course.walk.left.length,
    course.state,
    course.askedBy,
    course.asking,
    course.coming,
  ]
  const before = course && beforeStep(chair, canal, course)
  const { closed, onSite, dam, checkDue } = visit
  const room = [closed, onSite, dam, checkDue, missing]
  return JSON.stringify([canal, of, before, plan, haltedBy, salineBy, room, [...undone].at(-1)])
}
