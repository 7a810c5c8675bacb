import type { Do, RunSheet, Shows } from '@/api/shapes'
import type { Chair } from '@/store/chair'
import { imagesTaken } from '@/store/image-of-step'
import { ImagesOf } from './images-of'
import { TakeImage } from './take-image'

interface Props {
  chair: Chair
  canal: string
  node: Do
}

/** Images at a step that asks for one and at its hold point: those taken of the canal, and more. */
export function StepImages({ chair, canal, node }: Props) {
  const sheet = chair.plan.canals.find((one) => one.canal === canal)?.run_sheet
  const shows = showsOf(node, sheet)
  return (
    <div class="stack">
      <ImagesOf caseId={chair.version.case} ids={imagesTaken(chair, canal)} />
      <TakeImage
        caseId={chair.version.case}
        canal={canal}
        shows={shows}
        onTaken={(image_id) => void chair.record(canal, node.id, { kind: 'image', image_id, shows })}
      />
    </div>
  )
}

/** What an image at this step shows: what its hold point is about. */
export function showsOf(node: Do, sheet: RunSheet | undefined): Shows {
  const next = sheet?.nodes[node.exits.done ?? '']
  const about = node.hold_point ?? (next?.kind === 'do' ? next.hold_point : null) ?? ''
  if (about.startsWith('length')) return 'length'
  if (about === 'final size') return 'final_size'
  if (about === 'cone') return 'cone'
  return about.startsWith('final') ? 'final' : 'other'
}
