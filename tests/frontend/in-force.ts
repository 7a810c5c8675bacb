import type { Happened } from '@/walk/happened'

/** The server says that this plan is in force, the first of its case. */
export const inForce = (plan: string): Happened => ({
  id: '0',
  kind: 'replan',
  actor: 'v',
  plan,
  canal: '',
  node: '',
  body: { replaces: plan },
})
