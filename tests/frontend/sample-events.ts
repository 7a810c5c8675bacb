import type { EventPayload } from '@/api/shapes'
import { type CourseEvent, courseEvent, type Kind } from '@/walk/course-event'

/** An event as tests and shared files write it: what is usual is left out, and its kind stands beside what it carries. */
export interface Written extends Partial<Omit<CourseEvent, 'kind' | 'payload'>> {
  readonly kind?: Kind
  readonly payload?: object
}

/** A step by the student `s` on the plan `A`, unless it is written otherwise. */
export const eventOf = ({ kind = 'step', payload = {}, ...written }: Written): CourseEvent =>
  courseEvent({ id: '1', actor: 's', plan: 'A', canal: '', node: '', ...written }, { kind, ...payload } as EventPayload)

/** In their order, numbered from 1. */
export const eventsOf = (all: readonly Written[], usual: Written = {}): CourseEvent[] =>
  all.map((written, i) => eventOf({ id: String(i + 1), ...usual, ...written }))

/** The server says that this plan is in force, the first of its case. */
export const inForce = (plan: string): CourseEvent =>
  eventOf({ id: '0', kind: 'replan', actor: 'v', plan, payload: { replaces: plan } })
