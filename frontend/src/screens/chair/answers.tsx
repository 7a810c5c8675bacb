import { useState } from 'preact/hooks'
import type { Do, Told } from '@/api/shapes'
import { Stepper } from '@/parts/fields'
import { mm, readMm } from '@/parts/millimetres'
import type { Chair } from '@/store/chair'
import type { CanalCourse } from '@/walk/course'
import { words } from '@/words/en'
import { HoldPoint } from './hold-point'

interface Props {
  chair: Chair
  canal: string
  node: Do
  course: CanalCourse
  stop: number | null
}

const HALF_MM_UM = 500 // the resolution of a stop
const FELT_MS = 40 // just long enough to be felt through a glove

/** The answers a step can have. A depth is never filled in beforehand: what is recorded is what was felt. */
export function Answers({ chair, canal, node, course, stop }: Props) {
  const [asking, setAsking] = useState(node.target === 'to_resistance')
  const leave = (exit: string, more: Partial<Extract<Told, { kind: 'step' }>> = {}) => {
    navigator.vibrate?.(FELT_MS)
    const { irrigant = null, volume_ml = null } = node
    const told = { kind: 'step', exit, depth_um: null, stop_um: stop, irrigant, volume_ml, ...more } as Told
    void chair.record(canal, node.id, told)
  }
  if (node.action === 'sign_off') return <HoldPoint chair={chair} canal={canal} node={node} />
  const small = node.action === 'recapitulate'
  return (
    <>
      {asking && (
        <Depth stop={stop} last={course.walk.last(node.id)} onDepth={(depth_um) => leave('short', { depth_um })} />
      )}
      <div class="step-answers">
        {'reached' in node.exits && (
          <button type="button" class="button main" onClick={() => leave('reached', { depth_um: stop })}>
            {small
              ? words.chair.passes
              : stop === null
                ? words.chair.reachedStop
                : words.chair.reached(mm(stop / 1000))}
          </button>
        )}
        {'done' in node.exits && (
          <button type="button" class="button main" onClick={() => leave('done')}>
            {node.action === 'image' ? words.chair.imageTaken : words.chair.done}
          </button>
        )}
        {'short' in node.exits && !asking && (
          <button type="button" class="button answer" onClick={() => setAsking(true)}>
            {words.chair.short}
          </button>
        )}
        {'short' in node.exits && asking && (
          <button type="button" class="button answer" onClick={() => leave('short')}>
            {words.chair.noDepth}
          </button>
        )}
        {'blocked' in node.exits && (
          <button type="button" class="button answer" onClick={() => leave('blocked')}>
            {words.chair.blocked}
          </button>
        )}
      </div>
    </>
  )
}

interface DepthProps {
  stop: number | null
  /** Where this instrument stopped the time before. */
  last: number | null
  onDepth: (depth_um: number) => void
}

function Depth({ stop, last, onDepth }: DepthProps) {
  const [typed, setTyped] = useState('')
  const depth = readMm(typed)
  // Stepping begins where it stopped the time before, else one step short of its stop: never at what is expected.
  const from = (last ?? Math.max(0, (stop ?? 0) - HALF_MM_UM)) / 1000
  return (
    <div class="felt stack">
      <Stepper label={words.chair.depth} value={typed} onInput={setTyped} from={from} />
      <button
        type="button"
        class="button answer"
        disabled={depth === undefined || depth < 0}
        onClick={() => depth !== undefined && onDepth(Math.round(depth * 1000))}
      >
        {depth === undefined ? words.chair.notTouched : words.chair.stoppedAtDepth(mm(depth))}
      </button>
    </div>
  )
}
