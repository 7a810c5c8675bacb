import { useState } from 'preact/hooks'
import { StepAnswers } from '@/parts/step-answers'
import { useAsked } from '@/parts/unhurried'
import { mm } from '@/units/millimetres'
import { words } from '@/words/en'
import { DepthRuler } from './depth-ruler'
import { ImageAnswers } from './image-answers'
import { IrrigateAnswers } from './irrigate'
import { leaveBy, type StepProps } from './step'

/**
 * The answers a step can have, each always in the same place. A depth is never filled in beforehand: what is recorded is
 * what was felt.
 */
export function Answers(props: StepProps) {
  const { node, course, canal } = props
  const [asking, setAsking] = useState(node.target === 'to_resistance')
  const [depth, setDepth] = useState<number>()
  useAsked(String(asking))
  const leave = leaveBy(props)
  const stop = course.walk.stop()
  if (node.action === 'irrigate') return <IrrigateAnswers {...props} />
  if (node.action === 'image') return <ImageAnswers {...props} />
  const ruler = asking && 'short' in node.exits
  // At resistance what was felt is the usual answer, elsewhere its stop is: told by weight, not by place.
  const [main, second] = ruler && node.target === 'to_resistance' ? ['answer', 'main'] : ['main', 'answer']
  return (
    <>
      {ruler && (
        <DepthRuler
          depth={depth}
          stop={stop}
          last={course.walk.last(node.id)}
          orifice={(canal.outline[0]?.from_reference_mm ?? 0) * 1000}
          onDepth={setDepth}
        />
      )}
      <StepAnswers>
        {'reached' in node.exits && (
          <button type="button" class={`button ${main}`} onClick={() => leave('reached', { depth_um: stop })}>
            {node.action === 'recapitulate' ? words.chair.passes : reachedSays(stop)}
          </button>
        )}
        {'done' in node.exits && (
          <button type="button" class="button main" onClick={() => leave('done')}>
            {words.chair.done}
          </button>
        )}
        {ruler && (
          <button
            type="button"
            class={`button ${second}`}
            disabled={depth === undefined}
            onClick={() => leave('short', { depth_um: depth ?? null })}
          >
            {depth === undefined ? words.card.notTouched : words.chair.stoppedAtDepth(mm(depth / 1000))}
          </button>
        )}
        {'short' in node.exits && !asking && (
          <button type="button" class="button answer" onClick={() => setAsking(true)}>
            {words.chair.short}
          </button>
        )}
        {'blocked' in node.exits && (
          <button type="button" class="button answer" onClick={() => leave('blocked')}>
            {words.chair.blocked}
          </button>
        )}
      </StepAnswers>
    </>
  )
}

function reachedSays(stop: number | null): string {
  return stop === null ? words.chair.reachedStop : words.chair.reached(mm(stop / 1000))
}
