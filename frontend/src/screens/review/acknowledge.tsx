import type { Plan } from '@/api/shapes'
import { Tick } from '@/parts/fields'
import { Sign } from '@/parts/signs'
import type { Draft } from '@/store/session/drafts'
import { words } from '@/words/en'
import { type ReviewFields, toAcknowledge } from './review-fields'

interface Props {
  plan: Plan
  draft: Draft<ReviewFields>
}

/** Where the ticks are: what is missing is brought into sight. */
export const ACKNOWLEDGE = 'acknowledge'

/** All that must be put right, each with a tick of its own: nothing of it is approved unseen. */
export function Acknowledge({ plan, draft }: Props) {
  const bars = toAcknowledge(plan)
  if (bars.size === 0) return null
  const { acknowledged = [] } = draft.fields.value
  const tick = (name: string, on: boolean) =>
    draft.set({ acknowledged: on ? [...acknowledged, name] : acknowledged.filter((other) => other !== name) })
  return (
    <section class="card stack close remark" id={ACKNOWLEDGE}>
      <h2>
        <Sign name="stop" /> {words.acknowledge.title}
      </h2>
      {[...bars].map(([name, { canal, says }]) => (
        <Tick
          key={name}
          label={labelOf(canal, says)}
          checked={acknowledged.includes(name)}
          onChange={(on) => tick(name, on)}
        />
      ))}
    </section>
  )
}

/** Of which canal it is, once: most sentences begin with its name. */
function labelOf(canal: string | null, says: string): string {
  const where = canal ?? words.acknowledge.tooth
  return [`${where}:`, `${where} `].some((begins) => says.startsWith(begins)) ? says : `${where}: ${says}`
}

/** Where something has not been ticked yet: the canals, or the whole tooth, each once. */
export function unacknowledged(plan: Plan, { acknowledged = [] }: ReviewFields): readonly string[] {
  const open = [...toAcknowledge(plan)].filter(([name]) => !acknowledged.includes(name))
  return [...new Set(open.map(([, { canal }]) => canal ?? words.acknowledge.tooth))]
}
