import { useId } from 'preact/hooks'
import type { CanalChoice, CanalPlan, Kit } from '@/api/shapes'
import { sizeOf } from '@/parts/difference/compare'
import { TextField } from '@/parts/fields'
import { words } from '@/words/en'
import { sizesOf } from './asked'

interface Props {
  canal: CanalPlan
  kit: Kit | undefined
  choice: CanalChoice | undefined
  onChoose: (change: Partial<CanalChoice>) => void
}

/** The final size of one canal, the advised range with its reasons, and a reason asked for outside it. */
export function CanalSize({ canal, kit, choice, onChoose }: Props) {
  const id = useId()
  const size = choice?.final_size ?? canal.final_size
  const sizes = sizesOf(kit)
  const next = (by: -1 | 1) => (by > 0 ? sizes.find((s) => s > size) : sizes.findLast((s) => s < size))
  const { least, most, proposed, reasons } = canal.size_range
  const outside = size < least || size > most
  const step = (by: -1 | 1) => {
    const to = next(by)
    if (to !== undefined) onChoose({ final_size: to })
  }
  return (
    <section class="card stack canal-size" aria-labelledby={`${id}-name`}>
      <div class="row apart">
        <h2 id={`${id}-name`}>{words.planning.finalSize(canal.canal)}</h2>
        <p class="small soft">{words.planning.advised(least, most)}</p>
      </div>
      <div class="stepper">
        <button type="button" class="button" disabled={next(-1) === undefined} onClick={() => step(-1)}>
          <span aria-hidden="true">−</span>
          <span class="unseen">{words.planning.smaller(canal.canal)}</span>
        </button>
        <output class="size-now number" aria-live="polite">
          {choice?.final_size == null ? sizeOf(canal) : sizeOf({ ...canal, final_size: size })}
        </output>
        <button type="button" class="button" disabled={next(1) === undefined} onClick={() => step(1)}>
          <span aria-hidden="true">+</span>
          <span class="unseen">{words.planning.larger(canal.canal)}</span>
        </button>
      </div>
      {outside && (
        <TextField
          label={words.planning.outside}
          hint={words.planning.outsideHint}
          value={choice?.reason ?? ''}
          maxLength={300}
          onInput={(reason) => onChoose({ reason })}
        />
      )}
      {size !== proposed && (
        <button type="button" class="button plain" onClick={() => onChoose({ final_size: null, reason: '' })}>
          {words.planning.takeProposed(proposed)}
        </button>
      )}
      <details>
        <summary>{words.planning.reasons}</summary>
        <ul class="stack close">
          {reasons.map((reason) => (
            <li key={reason.says} class="small">
              {reason.says}
            </li>
          ))}
        </ul>
      </details>
    </section>
  )
}
