import type { CourseEvent } from '@/walk/course-event'

/** The server says that this plan is in force, the first of its case. */
export const inForce = (plan: string): CourseEvent => ({
  id: '0',
  kind: 'replan',
  actor: 'v',
  plan,
  canal: '',
  node: '',
  body: { replaces: plan },
})
