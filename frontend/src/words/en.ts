import { because } from './because'
import { cases } from './case'
import { common, when } from './common'
import { drawing } from './drawing'
import { expected } from './expected'
import { plan } from './plan'
import { planning } from './planning'
import { review } from './review'

/** Every word the reader sees. */
export const words = {
  ...common,
  ...drawing,
  ...cases,
  ...plan,
  ...planning,
  ...review,
  ...because,
  ...expected,
  when,
} as const
