import { common, waited, when } from './common'
import { drawing } from './drawing'
import { plan } from './plan'

/** Every word the reader sees. */
export const words = { ...common, ...drawing, ...plan, when, waited } as const
