import { card } from './card'
import { cases } from './case'
import { chair } from './chair'
import { clock, common, when } from './common'
import { drawing } from './drawing'
import { emergency } from './emergency'
import { expected } from './expected'
import { figures } from './figures'
import { hold } from './hold'
import { images } from './images'
import { look } from './look'
import { marks } from './marks'
import { newPlan } from './new-plan'
import { phone } from './phone'
import { plan } from './plan'
import { planning } from './planning'
import { push } from './push'
import { rationale } from './rationale'
import { record } from './record'
import { review } from './review'
import { together } from './together'
import { visit } from './visit'

/** Every word the reader sees. */
export const words = {
  ...common,
  ...drawing,
  ...cases,
  ...chair,
  ...emergency,
  ...card,
  ...images,
  ...hold,
  ...look,
  ...marks,
  ...newPlan,
  ...phone,
  ...plan,
  ...planning,
  ...push,
  ...record,
  ...review,
  ...rationale,
  ...expected,
  ...figures,
  ...together,
  ...visit,
  when,
  clock,
} as const
