import { cases } from './case'
import { common, waited, when } from './common'
import { drawing } from './drawing'
import { plan } from './plan'
import { planning } from './planning'

/** Every word the reader sees. */
export const words = { ...common, ...drawing, ...cases, ...plan, ...planning, when, waited } as const
