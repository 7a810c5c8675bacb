import type { ImagePurpose, RunSheet, SheetStep } from '@/api/shapes'
import { Notice } from '@/parts/notice'
import type { Chair } from '@/store/chair/chair'
import { imageOfStep, imagesTaken } from '@/store/chair/image-of-step'
import { picked, shownWith, stillComing, turned } from '@/store/chair/together'
import { words } from '@/words/en'
import { ImagesOf } from './images-of'
import { QuotaLeft, TakeImage, useImagesLeft } from './take-image'

interface Props {
  chair: Chair
  canal: string
  node: SheetStep
}

/** Images at a step that asks for one and at its hold point: those taken of the canal, and more. */
export function StepImages({ chair, canal, node }: Props) {
  const atImage = node.action === 'image'
  const coming = atImage ? stillComing(chair, canal) : []
  const fit = useImagesLeft(chair.version.case_id)
  // Until there is one, it is taken where the step is answered.
  const asked = atImage && imageOfStep(chair, canal) === undefined
  return (
    <div class="stack">
      {coming.length > 0 && <Notice>{words.together.imageToCome(coming)}</Notice>}
      {atImage && turned(chair, canal) && <Notice>{words.together.turned}</Notice>}
      <ImagesOf caseId={chair.version.case_id} ids={imagesTaken(chair, canal)} />
      {asked ? <QuotaLeft fit={fit} /> : <TakeImage {...imageOf({ chair, canal, node })} />}
    </div>
  )
}

/** Whose image it is, what it shows, and that it is told of for every canal it shows. */
export function imageOf({ chair, canal, node }: Props) {
  const sheet = chair.plan.canals.find((planned) => planned.canal === canal)?.run_sheet
  const purpose = showsOf(node, sheet)
  const onTaken = (image_id: string) => {
    const shown = node.action === 'image' ? picked(chair, node.id, shownWith(chair, canal)) : [canal]
    void (async () => {
      for (const name of shown) await chair.record(name, node.id, { kind: 'image', image_id, purpose })
    })()
  }
  return { caseId: chair.caseId, canal, purpose, onTaken }
}

/** What an image at this step shows: what its hold point is about. */
function showsOf(node: SheetStep, sheet: RunSheet | undefined): ImagePurpose {
  const next = sheet?.nodes[node.exits.done ?? '']
  const about = node.hold_point ?? (next?.kind === 'do' ? next.hold_point : null) ?? node.phase
  if (about.startsWith('length')) return 'length'
  if (about === 'final size') return 'final_size'
  if (about.startsWith('cone')) return 'cone'
  return about.startsWith('final') ? 'final' : 'other'
}
