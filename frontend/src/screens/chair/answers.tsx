import { StepAnswers } from '@/parts/step-answers'
import { useAsked } from '@/parts/unhurried'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { ImageAnswers } from './image-answers'
import { IrrigateAnswers } from './irrigate'
import { leaveBy, type StepProps, type Tip } from './step'

/**
 * The answers a step can have, the first always in the same place. A depth is never filled in beforehand: what is
 * recorded is what was felt.
 */
export function Answers(props: StepProps & { tip: Tip }) {
  const { node, course, tip } = props
  const set = tip.depth_um !== undefined
  // Another answer comes under the thumb with the first touch on the strip.
  useAsked(String(set))
  const leave = leaveBy(props)
  const stop = course.walk.stop()
  if (node.action === 'irrigate') return <IrrigateAnswers {...props} />
  if (node.action === 'image') return <ImageAnswers {...props} />
  // At resistance what was felt is the usual answer, elsewhere the stop is until the strip was touched.
  const asksDepth = 'short' in node.exits && (set || node.target === 'to_resistance')
  const reached = 'reached' in node.exits && (
    <button
      type="button"
      class={asksDepth ? 'button answer' : 'button main'}
      onClick={() => leave('reached', { depth_um: stop })}
    >
      {node.action === 'recapitulate' ? words.chair.passes : reachedSays(stop, node.target)}
    </button>
  )
  const short = asksDepth && (
    <button
      type="button"
      class="button main"
      disabled={!set}
      onClick={() => leave('short', { depth_um: tip.depth_um ?? null })}
    >
      {tip.depth_um === undefined ? words.card.notTouched : words.chair.stoppedAtDepth(mm(tip.depth_um / 1000))}
    </button>
  )
  return (
    <StepAnswers>
      {short}
      {reached}
      {'done' in node.exits && (
        <button type="button" class="button main" onClick={() => leave('done')}>
          {words.chair.done}
        </button>
      )}
      {'blocked' in node.exits && (
        <button type="button" class="button answer" onClick={() => leave('blocked')}>
          {words.chair.blocked}
        </button>
      )}
    </StepAnswers>
  )
}

function reachedSays(stop: number | null, target: string | null): string {
  if (stop === null) return words.chair.reachedStop
  return target === 'to_length' ? words.chair.atLength(mm(stop / 1000)) : words.chair.reached(mm(stop / 1000))
}
