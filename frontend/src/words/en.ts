import { cases } from './case'
import { common, waited, when } from './common'
import { drawing } from './drawing'
import { plan } from './plan'

/** Every word the reader sees. */
export const words = { ...common, ...drawing, ...cases, ...plan, when, waited } as const
